//! Which point of a piece governs while it heats up: the surface or the core.
//!
//! Bacteria sit on the surface of intact muscle, and inside where something has carried them there. A large intact piece
//! over low heat takes longer than 4 h to warm through; the surface, where they are, is hot within one or two. So for
//! intact muscle the surface governs and a slow core is a caution; for everything else the core governs and a slow core
//! is a stop.

use super::{RuleId, Sort};
use crate::units::{Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// The surface must be past this (common practice, after the lowest row of the table for roasts: 130 °F).
pub const SURFACE_HOT: Temperature = Temperature::from_celsius(54.4);

/// It must be so within this of leaving the cold (common practice, after the four hours of time control in the Food
/// Code, 3-501.19).
pub const SURFACE_LIMIT: TimeSpan = TimeSpan::from_hours(4.0);

/// The core may be between 4 and 60 °C for no longer (common practice, after the same).
pub const CORE_LIMIT: TimeSpan = TimeSpan::from_hours(4.0);

/// What governs, by which rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Governs {
    /// The surface past [`SURFACE_HOT`] within [`SURFACE_LIMIT`]; a slow core is a caution.
    Surface,
    /// The core between 4 and 60 °C for no longer than [`CORE_LIMIT`]: a stop.
    Core,
}

impl Governs {
    /// The rule that it is.
    #[must_use]
    pub const fn rule(self) -> RuleId {
        match self {
            Self::Surface => RuleId::SurfaceHotInTime,
            Self::Core => RuleId::CoreHotInTime,
        }
    }
}

/// Which point governs for a sort of food.
#[must_use]
pub const fn governing(sort: Sort) -> Governs {
    match sort {
        Sort::IntactMuscle => Governs::Surface,
        Sort::PiercedMuscle
        | Sort::Ground
        | Sort::Poultry
        | Sort::Stuffed
        | Sort::Fish
        | Sort::Leftovers => Governs::Core,
    }
}
