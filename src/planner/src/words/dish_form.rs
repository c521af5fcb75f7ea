//! What is said where a dish is made or changed.

use crate::format::Formats;
use crate::parts::Way;
use cook_model::meat::{Cut, CutId, Make};
use cook_model::plan::{BasisOfWeight, Intact, OwnPlace};
use cook_model::units::Mass;

/// Heading over a new dish.
pub const NEW_DISH: &str = "A new dish";
/// The first question.
pub const WHAT: &str = "What is it?";
/// Any cut that is not offered at once.
pub const ANOTHER_CUT: &str = "Another cut";
/// A dish of one's own.
pub const OWN: &str = "Your own dish";
/// After “another cut”.
pub const WHICH_ANIMAL: &str = "Of what?";
/// After the animal.
pub const WHICH_CUT: &str = "Which cut?";
/// Its name until it has one.
pub const OWN_NAME: &str = "My dish";
/// The next question.
pub const ON_WHICH_COOKER: &str = "On which cooker?";
/// A kind of cooker that is not in the plan yet.
pub const A_NEW_ONE: &str = "a new one";
/// No cooker yet.
pub const NOT_SAID: &str = "Not settled";
/// The last question.
pub const IS_IT_INTACT: &str = "Is it intact? Not injected, not blade-tenderised, not boned and rolled, not stuffed, not minced.";

/// Its minutes, in a sentence.
pub const OWN_TIMES: &str = "How long it takes";
/// One in ten is quicker.
pub const LEAST: &str = "Seldom less than";
/// The middle.
pub const LIKELY: &str = "Mostly";
/// One in ten is slower.
pub const MOST: &str = "Seldom more than";
/// Where a dish of one's own is made.
pub const HOW_MANY: &str = "How many of it";
/// Where it is made.
pub const WHERE_MADE: &str = "Where is it made?";

/// The answers to that.
#[must_use]
pub fn own_places() -> Vec<Way<OwnPlace>> {
    vec![
        Way::new(OwnPlace::Cooker, "On its cooker"),
        Way::new(OwnPlace::Kitchen, "In the kitchen"),
        Way::new(OwnPlace::Bench, "Made cold"),
    ]
}

/// The dish's own name.
pub const NAME: &str = "Name";
/// Which cut it is.
pub const CUT: &str = "Cut";
/// Pit where it lies.
pub const OWN_PIT: &str = "Air where it lies, if not the cooker’s";
/// Heading over the pieces.
pub const PIECES: &str = "Pieces";
/// Weight of a piece.
pub const WEIGHT: &str = "Weight of one";
/// How many alike.
pub const ALIKE: &str = "How many alike";
/// Thickness of a piece.
pub const THICKNESS: &str = "Thickness";
/// What a thickness left empty means.
pub const THICKNESS_NOTE: &str =
    "The thickest place, by the ruler. Empty: guessed from the weight.";
/// What the weight was taken of.
pub const WEIGHED: &str = "Weighed";

/// The answers to that.
#[must_use]
pub fn weighed_ways() -> Vec<Way<BasisOfWeight>> {
    vec![
        Way::new(BasisOfWeight::Bought, "As bought"),
        Way::new(BasisOfWeight::Trimmed, "Trimmed"),
    ]
}

/// A frozen piece.
pub const FROZEN: &str = "Frozen, has to thaw";
/// The key that adds a piece.
pub const ADD_PIECE: &str = "Add a piece of another size";
/// The key that takes a piece out.
pub const TAKE_PIECE_OUT: &str = "Take this piece out";

/// The heading of a piece, counted from 1.
#[must_use]
pub fn piece(number: usize) -> String {
    format!("Piece {number}")
}

/// The key that takes a meant weight.
#[must_use]
pub fn use_weight(weight: &str) -> String {
    format!("Use {weight}")
}

/// Heading over the method.
pub const METHOD: &str = "How it is cooked";
/// What an empty method means.
pub const METHOD_NOTE: &str = "What is left as usual follows the cut.";
/// Core aimed for.
pub const TARGET: &str = "Core aimed for";
/// The question about the wrap.
pub const WRAP: &str = "Wrap";

/// How a dish is wrapped, without when.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WrapKind {
    /// As the cut usually is.
    Usual,
    /// Never.
    Bare,
    /// In paper.
    Paper,
    /// In foil.
    Foil,
}

/// The answers to it.
#[must_use]
pub fn wrap_ways() -> Vec<Way<WrapKind>> {
    vec![
        Way::new(WrapKind::Usual, "As usual"),
        Way::new(WrapKind::Bare, "Bare"),
        Way::new(WrapKind::Paper, "Paper"),
        Way::new(WrapKind::Foil, "Foil"),
    ]
}

/// When it is wrapped.
pub const WRAP_WHEN: &str = "Wrapped";
/// By the core.
pub const BY_CORE: &str = "At a core of";
/// By time.
pub const BY_TIME: &str = "After so many hours";
/// The core at which.
pub const WRAP_CORE: &str = "Core at the wrap";
/// The time after which.
pub const WRAP_AFTER: &str = "Hours after it went on";
/// Salt ahead.
pub const SALT: &str = "Salt";

/// How a dish is salted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SaltKind {
    /// As the cut usually is.
    Usual,
    /// So long ahead.
    Ahead,
    /// The label says that a solution was added.
    SolutionAdded,
}

/// The answers to it.
#[must_use]
pub fn salt_ways() -> Vec<Way<SaltKind>> {
    vec![
        Way::new(SaltKind::Usual, "As usual"),
        Way::new(SaltKind::Ahead, "My way"),
        Way::new(SaltKind::SolutionAdded, "None").with_note("a solution was added"),
    ]
}

/// How long ahead.
pub const SALT_AHEAD: &str = "Hours before it goes on";
/// How much.
pub const SALT_RATE: &str = "Salt of the trimmed weight";
/// Spraying.
pub const SPRAY: &str = "Spray";
/// No spraying.
pub const NO_SPRAY: &str = "No";
/// With spraying.
pub const WITH_SPRAY: &str = "Yes";
/// The first round.
pub const SPRAY_FIRST: &str = "First after";
/// Between rounds.
pub const SPRAY_EVERY: &str = "Then every";
/// The least rest.
pub const REST: &str = "Least rest";
/// Slicing.
pub const SLICING: &str = "Slicing or pulling, all of it";
/// Where it waits.
pub const HOLD: &str = "Where it waits, hot";

/// Where a dish waits, without the air.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HoldKind {
    /// As usual.
    Usual,
    /// A box.
    Box,
    /// A warm oven.
    Oven,
    /// The counter.
    Counter,
}

/// The answers to it.
#[must_use]
pub fn hold_ways() -> Vec<Way<HoldKind>> {
    vec![
        Way::new(HoldKind::Usual, "As usual"),
        Way::new(HoldKind::Box, "Rest box"),
        Way::new(HoldKind::Oven, "Warm oven"),
        Way::new(HoldKind::Counter, "Counter"),
    ]
}

/// Air of the warm oven.
pub const OVEN_AIR: &str = "Air in the oven";
/// The first time with this cut.
pub const FIRST_TIME: &str = "My first time with this cut";
/// What that does.
pub const FIRST_TIME_NOTE: &str = "The window is then wider.";
/// Words of one's own.
pub const NOTE: &str = "Note";

/// The key that takes a dish off the menu.
#[must_use]
pub fn take_off(name: &str) -> String {
    format!(
        "Take {} off the menu",
        super::gathering::lower(super::gathering::dish_name(name))
    )
}

/// The answers to whether it is intact.
#[must_use]
pub fn intact_ways() -> Vec<Way<Intact>> {
    vec![
        Way::new(Intact::Yes, "Yes, intact")
            .with_note("The surface governs: it must be hot within 4 h"),
        Way::new(Intact::No, "No").with_note("The middle governs: it must be hot within 4 h"),
        Way::new(Intact::Unknown, "I don’t know").with_note("Treated as no, until you know"),
    ]
}

/// Whether the question makes sense: ground meat, birds and fish have rules of their own.
#[must_use]
pub fn is_red_muscle(cut: CutId) -> bool {
    cut.cut().make == Make::WholeMuscle
}

/// The usual weight of a cut.
#[must_use]
pub fn usual(cut: &Cut, formats: &Formats) -> String {
    let (low, high) = cut.usual_mass;
    format!("{} to {}", formats.mass(low), formats.mass(high))
}

/// The key that adds the dish.
#[must_use]
pub fn add(name: Option<&str>, ready: bool) -> String {
    match name {
        _ if !ready => "Say what it is first".to_owned(),
        Some(name) => format!("Add: {name}"),
        None => "Add my dish".to_owned(),
    }
}

/// A weight that no piece of this cut is likely to have, with the one that was perhaps meant: a slip of the point.
#[must_use]
pub fn odd_weight(cut: CutId, mass: Mass, formats: &Formats) -> Option<(String, Option<Mass>)> {
    let (low, high) = cut.cut().usual_mass;
    if mass <= Mass::ZERO || (low * 0.4 <= mass && mass <= high * 2.0) {
        return None;
    }
    let meant = [0.1, 10.0, 0.01, 100.0, 0.001, 1000.0]
        .map(|factor| mass * factor)
        .into_iter()
        .find(|meant| low <= *meant && *meant <= high);
    let usual = format!("{} to {}", formats.mass(low), formats.mass(high));
    let told = match meant {
        Some(meant) => format!(
            "{usual} is usual for one piece. Did you mean {}?",
            formats.mass(meant)
        ),
        None => format!("{usual} is usual for one piece. It is kept as you typed it."),
    };
    Some((told, meant))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::{ClockStyle, Units};
    use cook_model::plan::Zone;
    use std::sync::Arc;

    #[test]
    fn a_slip_of_the_point_is_asked_about_and_an_ordinary_weight_is_not() {
        let formats = Formats {
            units: Units::METRIC,
            clock: ClockStyle::Hours24,
            zone: Arc::new(Zone::fixed(0)),
        };
        let odd = |kilograms| {
            let mass = Mass::from_kilograms(kilograms);
            odd_weight(CutId::PorkShoulderButt, mass, &formats)
        };
        assert_eq!(odd(3.8), None);
        assert_eq!(odd(6.0), None);
        let (told, meant) = odd(38.0).expect("a question");
        assert!(told.ends_with("Did you mean 3.8\u{a0}kg?"), "{told}");
        assert!((meant.expect("a weight").kilograms() - 3.8).abs() < 1e-9);
        assert_eq!(odd(15.0).expect("a question").1, None);
        assert_eq!(odd(0.0), None);
    }
}
