//! Cookers: what kind, how much room, and the pit temperature they are run at.

use super::Order;
use crate::handover::identity::DishId;
use crate::provisions::fuel::{Fuel, Shape};
use crate::units::{Area, Length, Temperature, TemperatureDifference, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A cooker and how it is run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Cooker {
    /// What the person calls it.
    pub name: String,
    /// Place among the cookers.
    #[serde(default)]
    pub order: Order,
    /// What kind it is.
    pub kind: CookerKind,
    /// Cooking grate, all racks together, 0.02 to 4 m².
    pub grate: Area,
    /// Pit temperatures: the first at the start, the others in the order in which they come.
    pub programme: Vec<PitStep>,
    /// What it burns. None: what its kind usually burns.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fuel: Option<Fuel>,
    /// Outer shape of its chamber by the ruler. None: reckoned from the kind and the grate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chamber: Option<Shape>,
    /// Its racks from below, where it has several; none: one grate.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub racks: Vec<Rack>,
    /// How much hotter its hot side is than the place where the thermometer hangs, 0 to 80 K. None: as usual for its kind.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hot_side: Option<TemperatureDifference>,
    /// Whether it holds its temperature with nobody near. None: as usual for its kind.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub holds_itself: Option<bool>,
    /// How often it wants fuel, 10 min to 48 h. None: as usual for its kind.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub feed_every: Option<TimeSpan>,
}

/// One rack of a cooker.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Rack {
    /// Its area, 0.01 to 2 m².
    pub area: Area,
    /// Free height above it, 0.02 to 1 m.
    pub height: Length,
}

impl Cooker {
    /// A cooker of a kind, with everything else as usual for it.
    #[must_use]
    pub fn new(
        name: &str,
        order: Order,
        kind: CookerKind,
        grate: Area,
        programme: Vec<PitStep>,
    ) -> Self {
        Self {
            name: name.to_owned(),
            order,
            kind,
            grate,
            programme,
            fuel: None,
            chamber: None,
            racks: Vec::new(),
            hot_side: None,
            holds_itself: None,
            feed_every: None,
        }
    }

    /// What it burns: as the person says, else what its kind usually burns. None for a kitchen oven.
    #[must_use]
    pub fn burns(&self) -> Option<Fuel> {
        Fuel::usual(self.kind).map(|usual| self.fuel.unwrap_or(usual))
    }
}

/// The kinds of cooker that the trade tells apart.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum CookerKind {
    /// A firebox beside a steel chamber, fed with splits.
    Offset,
    /// A round lidded grill with charcoal.
    Kettle,
    /// A steel drum with charcoal at the bottom.
    Drum,
    /// A thick-walled ceramic cooker with lump charcoal.
    Ceramic,
    /// An insulated or upright cabinet with charcoal, with or without a water pan.
    Cabinet,
    /// A cooker that feeds itself with wood pellets.
    Pellet,
    /// A cooker with a gas burner.
    Gas,
    /// An electric cabinet.
    Electric,
    /// A kitchen oven without its fan.
    Oven,
    /// A kitchen oven with its fan on.
    FanOven,
}

/// One step of a pit programme.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PitStep {
    /// When it begins.
    pub when: PitWhen,
    /// Air at the meat, 60 to 260 °C.
    pub set: Temperature,
}

/// When a step of a pit programme begins.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "at", rename_all = "snake_case")]
pub enum PitWhen {
    /// From the first dish on.
    Start,
    /// So long after this dish went on.
    AfterOn {
        /// Which dish.
        dish: DishId,
        /// How long after.
        span: TimeSpan,
    },
    /// When the core of this dish reaches a temperature.
    CoreReaches {
        /// Which dish.
        dish: DishId,
        /// Core temperature.
        core: Temperature,
    },
}
