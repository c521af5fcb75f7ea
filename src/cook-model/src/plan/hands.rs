//! How long hands are at each step. Common practice throughout; a dish's own figures come before these.

use super::CookerKind;
use super::Piece;
use crate::meat::{Cut, CutId, Make};
use crate::units::{Mass, TimeSpan};

const fn minutes(minutes: f64) -> TimeSpan {
    TimeSpan::from_minutes(minutes)
}

/// Lighting: a chimney of charcoal, or a burner and a look at it.
pub(super) const LIGHT: TimeSpan = minutes(20.0);
/// A look at the fire before anything goes on.
pub(super) const STEADY_FIRE: TimeSpan = minutes(5.0);
/// One round of fuel.
pub(super) const FEED: TimeSpan = minutes(5.0);
/// A change of the pit.
pub(super) const PIT_CHANGE: TimeSpan = minutes(5.0);
/// Putting a dish on.
pub(super) const ON: TimeSpan = minutes(5.0);
/// Probe in.
pub(super) const PROBE_IN: TimeSpan = minutes(3.0);
/// Turning.
pub(super) const TURN: TimeSpan = minutes(5.0);
/// Spraying.
pub(super) const SPRAY: TimeSpan = minutes(2.0);
/// A round of probing for tenderness.
pub(super) const PROBE: TimeSpan = minutes(5.0);
/// Off.
pub(super) const OFF: TimeSpan = minutes(5.0);
/// Into the box or the warm oven.
pub(super) const HOLD: TimeSpan = minutes(5.0);
/// Serving.
pub(super) const SERVE: TimeSpan = minutes(10.0);
/// What is left, into shallow pans and into the fridge.
pub(super) const CHILL: TimeSpan = minutes(15.0);
/// Venting before a box: until the core is at about 80 °C, at most so long.
pub(super) const VENT: TimeSpan = minutes(15.0);

const SALT: TimeSpan = minutes(5.0);
const RUB: TimeSpan = minutes(10.0);
const WRAP: TimeSpan = minutes(10.0);

/// Lighter pieces than this are handled by the kilogram: links, quarters.
const HANDFUL: Mass = Mass::from_grams(500.0);

/// Minutes for all pieces of a dish at so many for one.
fn for_all<'a>(one: TimeSpan, pieces: impl IntoIterator<Item = &'a Piece>) -> TimeSpan {
    let times = |piece: &Piece| {
        let count = f64::from(piece.count);
        if piece.mass >= HANDFUL {
            count
        } else {
            (piece.mass.kilograms() * count).max(1.0)
        }
    };
    pieces.into_iter().map(|piece| one * times(piece)).sum()
}

/// Trimming the pieces that were weighed as bought.
pub(super) fn trim<'a>(cut: &Cut, untrimmed: impl IntoIterator<Item = &'a Piece>) -> TimeSpan {
    for_all(cut.trim, untrimmed)
}

/// Salting.
pub(super) fn salt<'a>(pieces: impl IntoIterator<Item = &'a Piece>) -> TimeSpan {
    for_all(SALT, pieces)
}

/// Rubbing; sausages are not rubbed.
pub(super) fn rub<'a>(cut: &Cut, pieces: impl IntoIterator<Item = &'a Piece>) -> TimeSpan {
    if cut.make == Make::Ground {
        TimeSpan::ZERO
    } else {
        for_all(RUB, pieces)
    }
}

/// Wrapping.
pub(super) fn wrap<'a>(pieces: impl IntoIterator<Item = &'a Piece>) -> TimeSpan {
    for_all(WRAP, pieces)
}

/// Slicing or pulling; links and quarters go to the table whole, so once is enough for all.
pub(super) fn slicing<'a>(cut: &Cut, pieces: impl IntoIterator<Item = &'a Piece>) -> TimeSpan {
    match cut.id {
        CutId::SausageLinks | CutId::ChickenQuarters => cut.slice,
        _ => for_all(cut.slice, pieces),
    }
}

/// From lighting to a clean steady fire, or a hot oven.
pub(super) const fn to_steady_fire(kind: CookerKind) -> TimeSpan {
    match kind {
        CookerKind::Offset | CookerKind::Ceramic | CookerKind::Cabinet => minutes(60.0),
        CookerKind::Drum => minutes(45.0),
        CookerKind::Kettle => minutes(40.0),
        CookerKind::Pellet
        | CookerKind::Gas
        | CookerKind::Electric
        | CookerKind::Oven
        | CookerKind::FanOven => minutes(20.0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{BasisOfWeight, Intact, Order};

    fn pieces(grams: f64, count: u32) -> Piece {
        Piece {
            order: Order::default(),
            count,
            mass: Mass::from_grams(grams),
            weighed: BasisOfWeight::Bought,
            thickness: None,
            intact: Intact::Yes,
            frozen: false,
        }
    }

    #[test]
    fn each_big_piece_takes_its_time_and_links_go_by_weight() {
        let butts = pieces(3800.0, 2);
        let cut = CutId::PorkShoulderButt.cut();
        assert_eq!(trim(cut, [&butts]), cut.trim * 2.0);
        assert_eq!(slicing(cut, [&butts]).minutes(), 40.0);
        let links = pieces(80.0, 18);
        let sausage = CutId::SausageLinks.cut();
        assert_eq!(slicing(sausage, [&links]).minutes(), 5.0);
        assert_eq!(rub(sausage, [&links]), TimeSpan::ZERO);
        let quarters = pieces(400.0, 10);
        assert!((rub(CutId::ChickenQuarters.cut(), [&quarters]).minutes() - 40.0).abs() < 1e-9);
    }
}
