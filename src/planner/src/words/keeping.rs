//! Buying, keeping raw and thawing, in words. The rules and their sources are the model's.

use crate::format::{Formats, Span};
use cook_model::provisions::{Keeping, Thaw, ThawPlace, ThawRefusal};
use cook_model::units::{Temperature, TimeSpan};

/// Where it thaws.
pub const WHERE: &str = "It comes frozen. Where does it thaw?";
/// A way that is not taken.
pub const REFUSED: &str = "Not like this";

/// A place to thaw.
#[must_use]
pub const fn place(place: ThawPlace) -> &'static str {
    match place {
        ThawPlace::Fridge => "In the fridge",
        ThawPlace::ColdWater => "Under cold water",
        ThawPlace::Counter => "On the counter",
    }
}

/// For the line of the list: `buy by Thu 26 Nov`.
#[must_use]
pub fn buy_by(keeping: &Keeping, formats: &Formats) -> String {
    let day = formats.date(keeping.buy.latest);
    match (keeping.thaw.is_empty(), keeping.buy.earliest) {
        (true, _) => format!("buy by {day}"),
        (false, None) => format!("frozen: thawing begins {day}"),
        (false, Some(_)) => format!("frozen: too late to thaw, buy it fresh by {day}"),
    }
}

/// When to buy and how long it keeps, a sentence a line.
#[must_use]
pub fn keeps(keeping: &Keeping, formats: &Formats) -> Vec<String> {
    let latest = formats.day_time(keeping.buy.latest);
    let days = |span: TimeSpan| (span.hours() / 24.0).round();
    let keeps = format!(
        "Raw it keeps {} to {} days at {} or below (FoodSafety.gov, cold food storage chart).",
        days(keeping.keeps.least),
        days(keeping.keeps.most),
        formats.temperature(Temperature::from_celsius(4.0))
    );
    match (keeping.buy.earliest, keeping.buy.earliest_at_the_longest) {
        (Some(earliest), Some(longest)) => vec![
            format!(
                "Buy it by {latest} at the latest: work on it begins {}.",
                formats.day_time(keeping.wanted)
            ),
            format!(
                "Not before {}, and never before {}. {keeps}",
                formats.date(earliest),
                formats.date(longest)
            ),
        ],
        _ => vec![format!(
            "Frozen it can be bought any day, and begins to thaw by {latest} at the latest: work on it begins {}.",
            formats.day_time(keeping.wanted)
        )],
    }
}

/// A way of thawing, or why not.
#[must_use]
pub fn thaw(thaw: &Result<Thaw, ThawRefusal>, formats: &Formats) -> String {
    let thaw = match thaw {
        Err(refusal) => return refusal_in_short(refusal),
        Ok(thaw) => thaw,
    };
    let takes = if thaw.least == thaw.most {
        Span(thaw.most).to_string()
    } else {
        format!("{} to {}", Span(thaw.least), Span(thaw.most))
    };
    let begins = formats.day_time(thaw.begins);
    match thaw.then_keeps {
        Some(keeps) => format!(
            "{takes} (USDA FSIS), in by {begins}; thawed early it keeps {} more",
            Span(keeps)
        ),
        None => format!(
            "{takes} (USDA FSIS), in at {begins}; change the water every 30 min, {} times; salt, rub and on at once",
            thaw.water_changes
        ),
    }
}

fn refusal_in_short(refusal: &ThawRefusal) -> String {
    match refusal {
        ThawRefusal::Counter => "Never: tap for the reason".to_owned(),
        ThawRefusal::WaterThenWait { .. } => {
            "Not with salt hours ahead: tap for the reason".to_owned()
        }
        ThawRefusal::TooLate { takes, .. } => format!("Too late: it takes up to {}", Span(*takes)),
    }
}

/// Why a way of thawing is refused, and what to do.
#[must_use]
pub fn refusal(refusal: &ThawRefusal, formats: &Formats) -> String {
    match refusal {
        ThawRefusal::Counter => format!(
            "On the counter the outside warms past {} and spoils for hours while the inside is still frozen. Thaw it in \
             the fridge, or under cold water that is changed every 30 min.",
            formats.temperature(Temperature::from_celsius(4.0))
        ),
        ThawRefusal::WaterThenWait { ahead } => format!(
            "Thawed under water it has to be cooked at once, and this dish is salted {} ahead. Thaw it in the fridge, or \
             leave its salt as usual: then it is salted as it goes on.",
            Span(*ahead)
        ),
        ThawRefusal::TooLate { left, takes } => format!(
            "{} are left and it takes up to {}. Thaw it another way, serve later, or buy it fresh.",
            Span(*left),
            Span(*takes)
        ),
    }
}
