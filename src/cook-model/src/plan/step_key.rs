//! What a step is called: a name that stays the same however often the day is worked out anew.

use super::outlook::StepKind;
use crate::handover::identity::{CookerId, DishId, OwnStepId};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// What a step belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StepOf {
    /// The whole table.
    Table,
    /// A dish.
    Dish(DishId),
    /// A cooker.
    Cooker(CookerId),
    /// The person, who added it.
    Own(OwnStepId),
}

/// A step by what it belongs to, what is done, and which round of several. Kept in a plan as text:
/// `d01ARZ3NDEKTSV4RRFFQ69G5FAV_0_wrap`.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(into = "String", try_from = "String")]
#[schemars(with = "String", extend("pattern" = "^(t|[dcs][0-7][0-9A-HJKMNP-TV-Z]{25})_[0-9]{1,4}_[a-z_]{2,16}$"))]
pub struct StepKey {
    /// What it belongs to.
    pub of: StepOf,
    /// What is done.
    pub kind: StepKind,
    /// Which round of several, from 1; 0 where there is only one.
    pub round: u32,
}

impl StepKey {
    /// A step of a dish that comes once.
    #[must_use]
    pub const fn dish(dish: DishId, kind: StepKind) -> Self {
        Self {
            of: StepOf::Dish(dish),
            kind,
            round: 0,
        }
    }

    /// A step of the person's own.
    #[must_use]
    pub const fn own(id: OwnStepId) -> Self {
        Self {
            of: StepOf::Own(id),
            kind: StepKind::Own,
            round: 0,
        }
    }

    /// The same kind of step whatever its round: what a changed duration is kept under.
    #[must_use]
    pub const fn any_round(self) -> Self {
        Self { round: 0, ..self }
    }
}

/// Text that names no step.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("“{0}” names no step: a letter with an id, a round and a kind of step are wanted")]
pub struct NotAStep(pub String);

impl fmt::Display for StepKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.of {
            StepOf::Table => write!(f, "t"),
            StepOf::Dish(id) => write!(f, "d{id}"),
            StepOf::Cooker(id) => write!(f, "c{id}"),
            StepOf::Own(id) => write!(f, "s{id}"),
        }?;
        write!(f, "_{}_{}", self.round, self.kind.slug())
    }
}

impl FromStr for StepKey {
    type Err = NotAStep;

    fn from_str(text: &str) -> Result<Self, NotAStep> {
        parse(text).ok_or_else(|| NotAStep(text.to_owned()))
    }
}

fn parse(text: &str) -> Option<StepKey> {
    let mut parts = text.splitn(3, '_');
    let (of, round, kind) = (parts.next()?, parts.next()?, parts.next()?);
    let (letter, id) = of.split_at_checked(1)?;
    let of = match letter {
        "t" if id.is_empty() => StepOf::Table,
        "d" => StepOf::Dish(id.parse().ok()?),
        "c" => StepOf::Cooker(id.parse().ok()?),
        "s" => StepOf::Own(id.parse().ok()?),
        _ => return None,
    };
    let round = round.parse().ok().filter(|round| *round < 10_000)?;
    let kind = StepKind::of_slug(kind)?;
    Some(StepKey { of, kind, round })
}

impl From<StepKey> for String {
    fn from(key: StepKey) -> Self {
        key.to_string()
    }
}

impl TryFrom<String> for StepKey {
    type Error = NotAStep;
    fn try_from(text: String) -> Result<Self, NotAStep> {
        text.parse()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_comes_back_from_its_text() {
        for kind in StepKind::ALL {
            for of in [
                StepOf::Table,
                StepOf::Dish(DishId::new(7, 1)),
                StepOf::Cooker(CookerId::new(7, 2)),
                StepOf::Own(OwnStepId::new(7, 3)),
            ] {
                let key = StepKey {
                    of,
                    kind,
                    round: 12,
                };
                let text = key.to_string();
                assert_eq!(text.parse(), Ok(key), "{text}");
                assert!(
                    text.len() <= 64
                        && text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'_')
                );
            }
        }
    }

    #[test]
    fn other_text_is_refused() {
        for text in [
            "",
            "t",
            "t_0",
            "t_x_serve",
            "x_0_serve",
            "t_0_dance",
            "d1_0_on",
            "t_10000_serve",
            "é_0_on",
        ] {
            assert!(text.parse::<StepKey>().is_err(), "{text}");
        }
    }
}
