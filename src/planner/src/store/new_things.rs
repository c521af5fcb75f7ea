//! What a new cooker, dish, piece or helper starts from: usual values, all of them changeable.

use crate::format::{MassUnit, Units};
use crate::words::{cookers, dishes};
use chrono::NaiveTime;
use cook_model::handover::identity::{CookerId, PieceId};
use cook_model::meat::CutId;
use cook_model::plan::{
    BasisOfWeight, Cooker, CookerKind, CrewMember, Dish, Food, Intact, Order, OwnPlace, Piece,
    PitStep, PitWhen, QuietHours,
};
use cook_model::units::{Area, Mass, Temperature, TimeSpan};

/// A new place behind all others.
#[must_use]
pub fn behind<'a>(others: impl Iterator<Item = &'a Order>) -> Order {
    Order::between(others.max(), None)
}

/// Room on the grates of a usual cooker of a kind. Common practice: an offset of 90 by 45 cm, a kettle of 57 cm, a drum of
/// 55 cm, a ceramic cooker of 46 cm, a cabinet of four racks of 40 by 40 cm, a pellet cooker of 70 by 50 cm, a gas grill of
/// 60 by 45 cm, an electric cabinet of four racks of 36 by 30 cm, a kitchen oven with two racks of 45 by 36 cm.
#[must_use]
pub const fn usual_grate(kind: CookerKind) -> Area {
    Area::from_square_centimetres(match kind {
        CookerKind::Offset => 4050.0,
        CookerKind::Kettle => 2550.0,
        CookerKind::Drum => 2400.0,
        CookerKind::Ceramic => 1650.0,
        CookerKind::Cabinet => 6400.0,
        CookerKind::Pellet => 3500.0,
        CookerKind::Gas => 2700.0,
        CookerKind::Electric => 4300.0,
        CookerKind::Oven | CookerKind::FanOven => 3240.0,
    })
}

/// The pit of a cooker on which no cut says otherwise. Common practice.
pub const USUAL_PIT: Temperature = Temperature::from_fahrenheit(250.0);

/// A new cooker that is run at one temperature.
#[must_use]
pub fn cooker(kind: CookerKind, pit: Temperature, order: Order) -> Cooker {
    let programme = vec![PitStep {
        when: PitWhen::Start,
        set: pit,
    }];
    Cooker::new(
        cookers::kind(kind),
        order,
        kind,
        usual_grate(kind),
        programme,
    )
}

/// A weight that reads as a round number in the person's units.
fn round(mass: Mass, units: Units) -> Mass {
    match units.mass {
        MassUnit::Kilograms if mass.kilograms() < 1.0 => {
            Mass::from_grams((mass.grams() / 10.0).round() * 10.0)
        }
        MassUnit::Kilograms => Mass::from_kilograms((mass.kilograms() * 10.0).round() / 10.0),
        MassUnit::Pounds if mass.pounds() < 1.0 => {
            Mass::from_pounds((mass.pounds() * 32.0).round() / 32.0)
        }
        MassUnit::Pounds => Mass::from_pounds((mass.pounds() * 2.0).round() / 2.0),
    }
}

/// A new piece: about the cut's reference weight, as bought.
#[must_use]
pub fn piece(cut: CutId, order: Order, intact: Intact, units: Units) -> Piece {
    Piece {
        order,
        // One link feeds nobody.
        count: if cut == CutId::SausageLinks { 12 } else { 1 },
        mass: round(cut.cut().shape.mass, units),
        weighed: BasisOfWeight::Bought,
        thickness: None,
        intact,
        frozen: false,
    }
}

/// A new dish of a cut, with one piece.
#[must_use]
pub fn cut_dish(
    cut: CutId,
    cooker: Option<CookerId>,
    intact: Intact,
    order: Order,
    piece_id: PieceId,
    units: Units,
) -> Dish {
    let mut dish = empty_dish(dishes::dish_name(cut), order);
    dish.food = Food::Cut {
        cut: cut.slug().to_owned(),
    };
    dish.cooker = cooker;
    let first = piece(cut, Order::between(None, None), intact, units);
    dish.pieces.insert(piece_id, first);
    dish
}

/// A new dish of one's own: a quarter of an hour, give or take five minutes.
#[must_use]
pub fn own_dish(name: &str, cooker: Option<CookerId>, order: Order) -> Dish {
    let mut dish = empty_dish(name, order);
    dish.food = Food::Own {
        least: TimeSpan::from_minutes(10.0),
        likely: TimeSpan::from_minutes(15.0),
        most: TimeSpan::from_minutes(20.0),
        place: if cooker.is_some() {
            OwnPlace::Cooker
        } else {
            OwnPlace::Kitchen
        },
    };
    dish.cooker = cooker;
    dish
}

fn empty_dish(name: &str, order: Order) -> Dish {
    Dish::new(name, Food::Cut { cut: String::new() }, order)
}

/// Somebody new, who sleeps from ten to six.
#[must_use]
pub fn crew_member(name: &str, order: Order) -> CrewMember {
    CrewMember::new(name, order, Some(usual_quiet()))
}

/// Ten in the evening to six in the morning.
#[must_use]
pub fn usual_quiet() -> QuietHours {
    let at = |hour| NaiveTime::from_hms_opt(hour, 0, 0).unwrap_or_default();
    QuietHours {
        from: at(22),
        to: at(6),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_new_piece_weighs_a_round_usual_weight() {
        for units in [Units::METRIC, Units::CUSTOMARY] {
            for cut in CutId::ALL {
                let mass = piece(*cut, Order::default(), Intact::Unknown, units).mass;
                let (low, high) = cut.cut().usual_mass;
                let slack = Mass::from_grams(120.0);
                assert!(
                    low - slack <= mass && mass <= high + slack,
                    "{cut}: {mass:?}"
                );
            }
        }
        let butt = piece(
            CutId::PorkShoulderButt,
            Order::default(),
            Intact::Yes,
            Units::CUSTOMARY,
        );
        assert_eq!(butt.mass.pounds() * 2.0 % 1.0, 0.0);
    }

    #[test]
    fn things_come_in_the_order_in_which_they_are_made() {
        let first = behind(std::iter::empty());
        let second = behind([&first].into_iter());
        let third = behind([&second, &first].into_iter());
        assert!(first < second && second < third);
    }

    #[test]
    fn every_kind_of_cooker_has_room() {
        for kind in cookers::KINDS {
            let room = usual_grate(kind).square_metres();
            assert!((0.02..=4.0).contains(&room), "{kind:?}");
        }
    }
}
