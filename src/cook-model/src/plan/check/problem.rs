//! What is wrong with a plan, where, and what to do about it.

use crate::plan::range::Range;
use crate::safety::{Units, say};
use crate::units::{Length, Mass, Moment, Temperature};
use serde::Serialize;
use thiserror::Error;

/// Something in a plan that cannot be reckoned with.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Problem {
    /// The field, as it stands in a document: `dishes/ID/pieces/ID/mass`.
    pub at: String,
    /// What is wrong with it.
    pub what: Trouble,
}

impl Problem {
    /// What is wrong and what to do, on the scales that the person reads.
    #[must_use]
    pub fn message(&self, units: Units) -> String {
        say(&self.what.to_string(), units)
    }
}

/// What is wrong with a field. Figures in the text stand on both scales: see [`say`].
#[derive(Clone, Debug, PartialEq, Error, Serialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Trouble {
    /// A quantity outside its range.
    #[error(
        "{} is {}; between {} and {} can be planned. {}",
        range.quantity, range.figure(*value), range.figure(range.low), range.figure(range.high), range.advice
    )]
    OutOfRange {
        /// Its bounds.
        range: Range,
        /// Its value.
        value: f64,
    },
    /// Thicker than a lump of that weight can be.
    #[error(
        "A piece of {} cannot be {} thick: that weight in one lump is {} thick. Measure it again, or leave the thickness empty.",
        Kilograms(*mass), Millimetres(*thickness), Millimetres(*most)
    )]
    TooThick {
        /// As told.
        thickness: Length,
        /// The thickest that such a weight can be.
        most: Length,
        /// Weight of the piece.
        mass: Mass,
    },
    /// So thin that it is not that cut any more.
    #[error(
        "A piece of {} that is {} thick would be as wide as a tray: at least {} is usual. Measure it again, or leave the thickness empty.",
        Kilograms(*mass), Millimetres(*thickness), Millimetres(*least)
    )]
    TooThin {
        /// As told.
        thickness: Length,
        /// The thinnest reckoned with.
        least: Length,
        /// Weight of the piece.
        mass: Mass,
    },
    /// No such cut.
    #[error(
        "No cut is called “{cut}”. Choose one from the list, or make it a dish of your own with its minutes."
    )]
    UnknownCut {
        /// As it stands.
        cut: String,
    },
    /// Serving lies in the past.
    #[error("The serving time is past. Choose a later one.")]
    ServingPast {
        /// It was at.
        serving: Moment,
    },
    /// The air never brings the core to the target.
    #[error(
        "The pit is at most {}, which never brings the core to {}. Raise the pit, or lower the target.",
        Degrees(*pit), Degrees(*target)
    )]
    PitBelowTarget {
        /// Hottest air that the dish sees.
        pit: Temperature,
        /// Core aimed for.
        target: Temperature,
    },
    /// Minutes of a dish of one's own that are not in rising order.
    #[error(
        "The shortest, the likely and the longest time must rise in that order. Put them in order."
    )]
    TimesOutOfOrder,
    /// No pit temperature from the start.
    #[error(
        "The cooker has no pit temperature for the start. Give its first step a temperature from the start."
    )]
    NoPitAtStart,
    /// A second temperature for the start.
    #[error("Only the first pit temperature can be for the start. Say when this one begins.")]
    SecondStart,
    /// Something refers to a thing that is not there.
    #[error("This {thing} is no longer in the plan. Choose another.")]
    Missing {
        /// What sort of thing.
        thing: &'static str,
    },
    /// Steps of one's own that go by one another in a circle.
    #[error(
        "This step goes by itself, by way of the steps that it goes by. Let one of them go by a time on the clock."
    )]
    GoesByItself,
    /// Quiet hours that begin and end at the same time.
    #[error(
        "Quiet hours that begin and end at {from} have no length. Change one of them, or take them out."
    )]
    QuietWithoutLength {
        /// Both ends, on the clock.
        from: String,
    },
}

struct Degrees(Temperature);
struct Kilograms(Mass);
struct Millimetres(Length);

impl std::fmt::Display for Degrees {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&crate::plan::range::PIT.figure(self.0.celsius()))
    }
}

impl std::fmt::Display for Kilograms {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&crate::plan::range::PIECE_MASS.figure(self.0.kilograms()))
    }
}

impl std::fmt::Display for Millimetres {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&crate::plan::range::THICKNESS.figure(self.0.metres()))
    }
}
