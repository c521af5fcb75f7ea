//! How much of something, in the kind of unit that it is reckoned in.

use crate::units::{Energy, Length, Mass, Volume};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// An amount of something. Stored in SI units.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "in", content = "is", rename_all = "snake_case")]
pub enum Quantity {
    /// By weight, kg.
    Mass(Mass),
    /// By volume, m³.
    Volume(Volume),
    /// By length, m.
    Length(Length),
    /// By count.
    Count(u32),
    /// By current, J.
    Energy(Energy),
}

/// Two amounts that cannot be reckoned together, as the kinds of their units.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
#[error(
    "an amount by {one} cannot be set against one by {other}; enter both in the same kind of unit"
)]
pub struct UnlikeQuantities {
    /// The one.
    pub one: &'static str,
    /// The other.
    pub other: &'static str,
}

impl Quantity {
    /// The kind of its unit, as a word.
    #[must_use]
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::Mass(_) => "weight",
            Self::Volume(_) => "volume",
            Self::Length(_) => "length",
            Self::Count(_) => "count",
            Self::Energy(_) => "current",
        }
    }

    /// The bare number in its SI unit.
    #[must_use]
    pub fn number(&self) -> f64 {
        match self {
            Self::Mass(mass) => mass.kilograms(),
            Self::Volume(volume) => volume.cubic_metres(),
            Self::Length(length) => length.metres(),
            Self::Count(count) => f64::from(*count),
            Self::Energy(energy) => energy.joules(),
        }
    }

    /// The same kind of unit with another number; counts are rounded up.
    #[must_use]
    pub fn with_number(&self, number: f64) -> Self {
        match self {
            Self::Mass(_) => Self::Mass(Mass::from_kilograms(number)),
            Self::Volume(_) => Self::Volume(Volume::from_cubic_metres(number)),
            Self::Length(_) => Self::Length(Length::from_metres(number)),
            Self::Count(_) => Self::Count(super::counting::whole(number)),
            Self::Energy(_) => Self::Energy(Energy::from_joules(number)),
        }
    }

    /// Both numbers, if the units are of one kind.
    ///
    /// # Errors
    /// If they are not.
    pub fn numbers(&self, other: &Self) -> Result<(f64, f64), UnlikeQuantities> {
        if self.kind() == other.kind() {
            Ok((self.number(), other.number()))
        } else {
            Err(UnlikeQuantities {
                one: self.kind(),
                other: other.kind(),
            })
        }
    }

    /// What is left when so much is there already; never less than nothing.
    ///
    /// # Errors
    /// If the units are not of one kind.
    pub fn less(&self, already: &Self) -> Result<Self, UnlikeQuantities> {
        let (wanted, there) = self.numbers(already)?;
        Ok(self.with_number((wanted - there).max(0.0)))
    }
}
