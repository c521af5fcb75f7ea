//! Where meat is kept while it waits.

use crate::safety::cooling::Container;
use crate::units::Temperature;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Where it is kept.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "in", rename_all = "snake_case")]
pub enum Keep {
    /// A lidded box with towels, warmed before.
    Box,
    /// An oven or warming drawer.
    WarmOven {
        /// Its air.
        air: Temperature,
    },
    /// Wrapped, on a counter or on the road without a box.
    Wrapped,
    /// An insulated cabinet or ceramic cooker without heat, shut.
    ShutCabinet,
    /// A thin steel cooker without heat, shut.
    ShutCooker,
    /// A kitchen oven, off, shut.
    ShutOven,
}

impl Keep {
    /// How it loses heat when nothing heats it.
    pub(super) const fn container(self) -> Container {
        match self {
            Self::Box => Container::RestBox,
            Self::WarmOven { .. } | Self::ShutOven => Container::ShutOven,
            Self::Wrapped => Container::Wrapped,
            Self::ShutCabinet => Container::ShutCabinet,
            Self::ShutCooker => Container::ShutCooker,
        }
    }
}
