//! What the model needs to know of each class of cooker.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Classes of cooker that differ in how they bring heat and damp air to the meat.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum CookerClass {
    /// Thin steel chamber beside a firebox.
    Offset,
    /// Round lidded grill with charcoal.
    Kettle,
    /// Steel drum over charcoal.
    Drum,
    /// Thick-walled ceramic.
    Ceramic,
    /// Insulated, upright or electric cabinet, water pans included.
    Cabinet,
    /// Anything that stirs its air a little and holds its temperature: pellet, gas, and the unknown.
    Generic,
    /// Kitchen oven, fan off.
    StillOven,
    /// Kitchen oven, fan on.
    FanOven,
}
