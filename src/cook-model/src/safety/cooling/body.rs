//! A piece of cooked meat as the conduction sees it.

use crate::units::{Length, Mass};
use serde::{Deserialize, Serialize};

/// Conductivity of cooked meat, W/(m K). Choi and Okos (1986) at 40 °C for 60 % water, 27 % protein, 12 % fat and 1 %
/// ash, computed here.
pub(super) const CONDUCTIVITY_W_PER_M_K: f64 = 0.476;

/// Heat capacity of cooked meat by volume, J/(m³ K). The same: 1,053 kg/m³ and 3,319 J/(kg K).
pub(super) const HEAT_CAPACITY_J_PER_M3_K: f64 = 1053.0 * 3319.0;

/// Heat capacity of cooked meat by mass, J/(kg K). The same.
pub(super) const HEAT_CAPACITY_J_PER_KG_K: f64 = 3319.0;

/// Mass of pulled or sliced meat in a pan by volume, kg/m³, with the air between it. Set by hand.
const LOOSE_DENSITY_KG_PER_M3: f64 = 750.0;

/// The shape that heat has to cross.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Form {
    /// Flat: a layer in a pan, a bag laid flat, a rack, a brisket.
    Layer,
    /// Long and round: a loin, a rolled roast.
    Round,
    /// As long as wide as thick: a shoulder butt.
    Lump,
}

/// A piece or a layer of cooked meat.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Body {
    /// Its shape.
    pub form: Form,
    /// Its thickness, through and through. 5 to 400 mm.
    pub thickness: Length,
}

impl Body {
    /// A layer of sliced or pulled meat.
    #[must_use]
    pub const fn layer(depth: Length) -> Self {
        Self {
            form: Form::Layer,
            thickness: depth,
        }
    }

    /// A lump of meat of this mass, as thick as a ball of it would be.
    #[must_use]
    pub fn lump(mass: Mass) -> Self {
        let volume = mass.kilograms() / 1053.0;
        let thickness = libm::cbrt(volume * 6.0 / core::f64::consts::PI);
        Self {
            form: Form::Lump,
            thickness: Length::from_metres(thickness),
        }
    }

    /// Power of the distance from the middle with which a face grows.
    pub(super) const fn power(self) -> u8 {
        match self.form {
            Form::Layer => 0,
            Form::Round => 1,
            Form::Lump => 2,
        }
    }
}

/// Area that a mass of sliced or pulled meat covers at a depth, m².
pub(super) fn spread(mass: Mass, depth: Length) -> f64 {
    mass.kilograms() / LOOSE_DENSITY_KG_PER_M3 / depth.metres()
}
