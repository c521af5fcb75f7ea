//! What the model refuses, with the numbers.

use thiserror::Error;

/// Input that the model cannot reckon with, or a march that could not go on.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ModelError {
    /// A quantity outside its range. Not a number is outside every range.
    #[error("{quantity} is {value} {unit}; the model reckons with {low} to {high} {unit}")]
    OutOfRange {
        /// Which quantity, in words.
        quantity: &'static str,
        /// Its value.
        value: f64,
        /// Lowest value reckoned with.
        low: f64,
        /// Highest value reckoned with.
        high: f64,
        /// Unit of all three.
        unit: &'static str,
    },
    /// The pit programme does not begin when the piece goes on.
    #[error(
        "the pit programme has no temperature for the start; give its first step the time zero"
    )]
    NoPitAtStart,
    /// No air in the cook is hot enough for the target.
    #[error(
        "the pit is at most {pit} °C, which never brings the core to {target} °C; raise the pit or lower the target"
    )]
    PitBelowTarget {
        /// Hottest air of the programme, °C.
        pit: f64,
        /// Wanted core, °C.
        target: f64,
    },
    /// More steps were needed than any sound cook takes.
    #[error(
        "the march stopped after {steps} steps at {hours} h; this is a fault of the model, not of the plan"
    )]
    TooManySteps {
        /// Steps taken.
        steps: u32,
        /// Hours since it went on.
        hours: f64,
    },
}

impl ModelError {
    /// Passes a value that lies within `low..=high`.
    ///
    /// # Errors
    /// [`ModelError::OutOfRange`] if it does not, or is not a number.
    pub(crate) fn check(
        quantity: &'static str,
        value: f64,
        low: f64,
        high: f64,
        unit: &'static str,
    ) -> Result<(), Self> {
        if (low..=high).contains(&value) {
            return Ok(());
        }
        Err(Self::OutOfRange {
            quantity,
            value,
            low,
            high,
            unit,
        })
    }
}
