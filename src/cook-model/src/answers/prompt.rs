//! How the facts of a question are asked for, one by one, and what they may be.

use super::Question;
use crate::safety::Units;
use crate::safety::wording::say;
use serde_json::{Map, Value};
use thiserror::Error;

/// One fact to be asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prompt {
    /// Its key among the facts.
    pub key: &'static str,
    /// The question for it, short.
    pub words: &'static str,
    /// What it is.
    pub kind: PromptKind,
    /// Without it there is no answer.
    pub needed: bool,
    /// The plan may know it already.
    pub from_plan: bool,
}

/// What a fact is. Ranges are inclusive and in the unit named; what lies outside is asked about again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PromptKind {
    /// A cut of the catalogue.
    Cut,
    /// Whole, with nothing put inside it: yes, no, not known.
    Intact,
    /// Household or public.
    Audience,
    /// A temperature, °C.
    Temperature(f64, f64),
    /// Several temperatures of one thing, °C each.
    Temperatures(f64, f64),
    /// A span of time, s.
    Span(f64, f64),
    /// Shortest, likely and longest span, s each.
    ThreeSpans(f64, f64),
    /// A weight, kg.
    Mass(f64, f64),
    /// Least, likely and most weight, kg each.
    ThreeMasses(f64, f64),
    /// A length, m.
    Length(f64, f64),
    /// A wind, m/s.
    Wind(f64, f64),
    /// A whole number.
    Count(f64, f64),
    /// A share, 0 to 1.
    Share(f64, f64),
    /// Yes or no.
    YesNo,
    /// One of a few, each with its words.
    Choice(&'static [(&'static str, &'static str)]),
    /// Where it is kept.
    Keep,
    /// Loads of a cooker.
    Loads,
    /// A moment.
    Moment,
    /// The local clock.
    Zone,
}

impl PromptKind {
    /// Lowest and highest number, and how the unit is said. None for what is no number.
    #[must_use]
    pub const fn range(&self) -> Option<(f64, f64, &'static str)> {
        match *self {
            Self::Temperature(low, high) | Self::Temperatures(low, high) => Some((low, high, "°C")),
            Self::Span(low, high) | Self::ThreeSpans(low, high) => Some((low, high, "s")),
            Self::Mass(low, high) | Self::ThreeMasses(low, high) => Some((low, high, "kg")),
            Self::Length(low, high) => Some((low, high, "m")),
            Self::Wind(low, high) => Some((low, high, "m/s")),
            Self::Count(low, high) | Self::Share(low, high) => Some((low, high, "")),
            _ => None,
        }
    }
}

/// Facts that make no question.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FactsError {
    /// No such question.
    #[error("there is no question \"{0}\"")]
    UnknownQuestion(String),
    /// A fact that is needed is not there.
    #[error("this is needed: {words}")]
    Missing {
        /// Its key.
        key: &'static str,
        /// The question for it.
        words: &'static str,
    },
    /// A number outside its range.
    #[error(
        "{words} {value} {unit} cannot be: {low} to {high} {unit} is asked for; look at it again"
    )]
    OutOfRange {
        /// Its key.
        key: &'static str,
        /// The question for it.
        words: &'static str,
        /// As told.
        value: f64,
        /// Lowest.
        low: f64,
        /// Highest.
        high: f64,
        /// Unit.
        unit: &'static str,
    },
    /// A fact that is not what it should be.
    #[error("a fact cannot be read: {0}")]
    Unreadable(String),
}

impl Question {
    /// The facts that a kind of question asks for, in the order in which to ask. None for a kind that there is not.
    #[must_use]
    pub fn prompts(kind: &str) -> Option<&'static [Prompt]> {
        super::prompts::of(kind)
    }

    /// A question from its kind and the facts told. Facts that are null count as not told.
    ///
    /// # Errors
    /// [`FactsError`] says which fact is missing, out of range or unreadable, and what to do.
    pub fn of(kind: &str, facts: &Map<String, Value>) -> Result<Self, FactsError> {
        let prompts =
            Self::prompts(kind).ok_or_else(|| FactsError::UnknownQuestion(kind.to_owned()))?;
        let mut told: Map<String, Value> = facts
            .iter()
            .filter(|(_, fact)| !fact.is_null())
            .map(|(key, fact)| (key.clone(), fact.clone()))
            .collect();
        for prompt in prompts {
            match told.get(prompt.key) {
                Some(fact) => in_range(prompt, fact)?,
                None if prompt.needed => {
                    return Err(FactsError::Missing {
                        key: prompt.key,
                        words: prompt.words,
                    });
                }
                None => {}
            }
        }
        told.insert("asks".to_owned(), Value::from(kind));
        serde_json::from_value(Value::Object(told))
            .map_err(|error| FactsError::Unreadable(error.to_string()))
    }
}

fn in_range(prompt: &Prompt, fact: &Value) -> Result<(), FactsError> {
    let Some((low, high, unit)) = prompt.kind.range() else {
        return Ok(());
    };
    let numbers: Vec<f64> = match fact {
        Value::Array(several) => several.iter().filter_map(Value::as_f64).collect(),
        one => one.as_f64().into_iter().collect(),
    };
    let words = prompt.words;
    let outside = numbers
        .into_iter()
        .find(|value| !(low..=high).contains(value));
    outside.map_or(Ok(()), |value| {
        Err(FactsError::OutOfRange {
            key: prompt.key,
            words,
            value,
            low,
            high,
            unit,
        })
    })
}

impl Prompt {
    /// The question for it, on the scales that the person reads.
    #[must_use]
    pub fn say(&self, units: Units) -> String {
        say(self.words, units)
    }
}
