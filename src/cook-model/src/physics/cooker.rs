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
    /// Insulated or upright cabinet over charcoal, water pans included.
    Cabinet,
    /// Electric cabinet: nothing burns in it, so hardly any air passes through, and what the meat gives off stays.
    Electric,
    /// Anything that stirs its air a little and holds its temperature: pellet, gas, and the unknown.
    Generic,
    /// Kitchen oven, fan off.
    StillOven,
    /// Kitchen oven, fan on.
    FanOven,
}

/// Air of a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Climate {
    /// Speed of the air along the meat, m/s.
    pub(crate) speed: f64,
    /// Humidity ratio of the air that comes in.
    pub(crate) humidity: f64,
    /// Air that passes through, kg/s.
    pub(crate) draught: f64,
    /// Walls above the air outside, relative to the air inside.
    pub(crate) walls: f64,
    /// True in the rest box.
    pub(crate) boxed: bool,
}

impl Climate {
    const fn new(speed: f64, humidity: f64, draught: f64, walls: f64) -> Self {
        Self {
            speed,
            humidity,
            draught,
            walls,
            boxed: false,
        }
    }

    /// In the open.
    pub(crate) const COUNTER: Self = Self::new(0.15, 0.008, 1.0, 1.0);

    /// In an oven that keeps warm.
    pub(crate) const WARM_OVEN: Self = Self::new(0.2, 0.03, 0.003, 1.0);

    /// In the rest box.
    pub(crate) const REST_BOX: Self = Self {
        boxed: true,
        ..Self::new(0.02, 0.008, 0.0, 1.0)
    };
}

impl CookerClass {
    /// Its air, set by hand unless said otherwise: no measurement was found.
    pub(crate) const fn climate(self) -> Climate {
        match self {
            Self::Offset => Climate::new(0.9, 0.030, 0.012, 0.80),
            Self::Kettle => Climate::new(0.35, 0.028, 0.003, 0.92),
            Self::Drum => Climate::new(0.45, 0.028, 0.003, 0.92),
            Self::Ceramic => Climate::new(0.20, 0.035, 0.0016, 0.94),
            Self::Cabinet => Climate::new(0.25, 0.030, 0.0025, 0.95),
            // Speed and draught fitted to real cooks; the air comes in as it is outside.
            Self::Electric => Climate::new(0.18, 0.012, 1.15e-4, 0.95),
            Self::Generic => Climate::new(0.60, 0.030, 0.004, 0.98),
            Self::StillOven => Climate::new(0.60, 0.015, 0.003, 1.04),
            Self::FanOven => Climate::new(1.5, 0.012, 0.004, 1.00),
        }
    }

    /// Opening the lid: the share of the air's excess over outside that is lost, and the minutes in which two thirds of
    /// it come back. Set by hand.
    pub(crate) const fn lid(self) -> (f64, f64) {
        match self {
            Self::Offset => (0.35, 6.0),
            Self::Kettle | Self::Drum => (0.5, 6.0),
            Self::Ceramic => (0.35, 4.0),
            Self::Cabinet | Self::Electric => (0.4, 8.0),
            Self::Generic => (0.45, 6.0),
            Self::StillOven | Self::FanOven => (0.4, 4.0),
        }
    }
}

/// Forced convection along a body, W/m² K: Hilpert's correlation with the Prandtl number of air (from memory), lowered by
/// 0.88 for blunt bodies; speed in m/s, length in m.
pub(crate) fn forced_convection(speed: f64, length: f64) -> f64 {
    let reynolds = speed * length / 2.3e-5;
    let nusselt = if reynolds > 4000.0 {
        0.193 * libm::pow(reynolds, 0.618)
    } else {
        0.683 * libm::pow(reynolds, 0.466)
    };
    0.030 / length * 0.88 * nusselt
}

/// Convection on a surface, W/m² K: natural and forced together. Speed in m/s, length in m, difference in K.
#[must_use]
pub fn convection(speed: f64, length: f64, difference: f64) -> f64 {
    let driving = (difference * difference + 4.0).sqrt();
    let natural = super::constants::NATURAL_CONVECTION * libm::pow(driving / length, 0.25);
    super::real::root_of_cubes(natural, forced_convection(speed, length))
}
