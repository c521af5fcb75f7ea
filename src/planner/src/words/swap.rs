//! The piece swap in words: what the shop has, what changes, and what the day does.

use crate::format::{self, Formats, number};
use crate::reckon::Effort;
use cook_model::plan::outlook::Odds;
use cook_model::plan::{Dish, Food, in_order};
use cook_model::provisions::{OfferError, SwapWay, Weights};
use cook_model::units::{Length, Mass, Moment, TimeSpan};

/// The slip.
pub const TITLE: &str = "What does the shop have?";
/// The key on the line of a dish.
pub const ANOTHER_PIECE: &str = "The shop has another piece";
/// What else there is to say.
pub const MORE: &str = "Another cut, intact or not";
/// It is frozen.
pub const FROZEN: &str = "Frozen";
/// The cut that the shop has.
pub const ANOTHER_CUT: &str = "Another cut instead";
/// Bones of one piece.
pub const BONES: &str = "Bones of one";
/// What it stands in for.
pub const INSTEAD: &str = "It stands in for";
/// All of the dish.
pub const INSTEAD_OF_ALL: &str = "All of the dish";
/// The price of a plate.
pub const A_PLATE: &str = "a plate";
/// On the plates.
pub const COOKED: &str = "cooked, all dishes";
/// How long it takes.
pub const TAKES: &str = "until ready";
/// There is none.
pub const NO_PRICE: &str = "no price";
/// What the day does.
pub const THE_DAY: &str = "What the day does";
/// Leave it.
pub const KEEP_LOOKING: &str = "Keep looking";
/// Take it.
pub const TAKE_IT: &str = "Take this piece";

/// How sure the figures are yet.
#[must_use]
pub const fn standing(worth: Option<Effort>) -> &'static str {
    match worth {
        None => "being worked out",
        Some(Effort::Rough) => "first estimate",
        Some(Effort::Fair) => "being worked out in full",
        Some(Effort::Full) => "",
    }
}

/// One of several: `one of 2 of 3.8 kg`.
#[must_use]
pub fn instead_of_one(of: u32, mass: &str) -> String {
    if of == 1 {
        format!("The one of {mass}")
    } else {
        format!("One of {of} of {mass}")
    }
}

/// What is planned: `Pork shoulder butts. Planned: 2 of 3.8 kg, 11 cm`.
#[must_use]
pub fn planned(dish: &Dish, formats: &Formats) -> String {
    let cut = match &dish.food {
        Food::Cut { cut } => cut.parse().ok(),
        Food::Own { .. } => None,
    };
    let pieces: Vec<String> = in_order(&dish.pieces, |piece| &piece.order)
        .into_iter()
        .filter_map(|(_, piece)| {
            let mass = formats.mass(Weights::of_one(cut?, piece).bought);
            let thick = piece.thickness.map_or_else(String::new, |thickness| {
                format!(", {} thick", formats.thickness(thickness))
            });
            Some(format!("{} of {mass}{thick}", piece.count))
        })
        .collect();
    format!(
        "{}. Planned: {}.",
        super::gathering::dish_name(&dish.name),
        super::list(&pieces)
    )
}

/// Why an offer cannot be reckoned with, in the person's units.
#[must_use]
pub fn error(error: &OfferError, formats: &Formats) -> String {
    match error {
        OfferError::NoWeight => "How heavy is it? For ribs the number of bones will do.".to_owned(),
        OfferError::Weight {
            cut, least, most, ..
        } => format!(
            "No {} weighs that. One piece has {} to {}; say how many there are beside it.",
            cut.to_lowercase(),
            formats.mass(Mass::from_kilograms(*least)),
            formats.mass(Mass::from_kilograms(*most))
        ),
        OfferError::Thickness { most, .. } => format!(
            "Too thick, or too thin, for its weight: at most {}. Measure again, bones under it included.",
            formats.thickness(Length::from_millimetres(*most))
        ),
        OfferError::Count(_) => "Enter 1 to 200 pieces.".to_owned(),
        OfferError::NoSuchDish => {
            "This dish has no piece of meat to swap; choose a dish with a cut.".to_owned()
        }
        OfferError::NoSuchPiece => {
            "The piece that it was to stand in for is no longer planned; choose again.".to_owned()
        }
    }
}

/// As it was: `was £7.35`.
#[must_use]
pub fn was(before: &str) -> String {
    format!("was {before}")
}

/// Wanted on the plates.
#[must_use]
pub fn wanted(wanted: &str) -> String {
    format!("{wanted} wanted")
}

/// How much longer: `+1 h 10`, `−25 min`, `the same`.
#[must_use]
pub fn longer(by: TimeSpan, formats: &Formats) -> String {
    let minutes = by.minutes();
    if minutes.abs() < 1.0 {
        "the same".to_owned()
    } else if minutes > 0.0 {
        format!("+{}", formats.span(by))
    } else {
        format!("−{}", formats.span(by))
    }
}

/// The start moves: `1 h 10 earlier.`
#[must_use]
pub fn moved(by: TimeSpan, formats: &Formats) -> String {
    let span = formats.span(by);
    if by < TimeSpan::ZERO {
        format!("{span} earlier than planned.")
    } else {
        format!("{span} later than planned.")
    }
}

/// A way before its forecast is there.
#[must_use]
pub const fn way_working(way: SwapWay) -> &'static str {
    match way {
        SwapWay::Whole => "As it is: being worked out",
        SwapWay::CutInTwo => "Cut in two: being worked out",
    }
}

/// A way by its start: `On at Fri 23:20`.
#[must_use]
pub fn on_at(way: SwapWay, on: Moment, formats: &Formats) -> String {
    let on = formats.day_time(on);
    match way {
        SwapWay::Whole => format!("On at {on}"),
        SwapWay::CutInTwo => format!("Cut in two, on at {on}"),
    }
}

/// The start as planned.
#[must_use]
pub fn same_start(on: Moment, formats: &Formats) -> String {
    format!("Same start, {}", formats.day_time(on))
}

/// The odds of a start, and whether they keep the promise: `By 18:00: 19 in 20.`
#[must_use]
pub fn odds(odds: Odds, kept: bool, time: &str) -> String {
    let odds = format::odds(odds);
    if kept {
        format!("By {time}: {odds}.")
    } else {
        format!("By {time}: {odds}, under the promise.")
    }
}

/// How full the grate is: `84 % of the grate.`
#[must_use]
pub fn room(share: f64) -> String {
    format!("{} % of the grate.", number(share * 100.0, 0))
}

/// The change, for the key that takes it back.
#[must_use]
pub fn taken(name: &str) -> String {
    format!("another piece of {}", super::gathering::lower(name))
}
