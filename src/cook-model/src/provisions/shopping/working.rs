//! How a line was worked out: the figures behind it, for words in any unit.

use super::super::cold_and_hot_box::HotBox;
use super::super::fuel::FuelNeed;
use super::super::salt::SaltAmount;
use super::super::salt_diffusion::EvenOut;
use super::super::spraying::SprayNeed;
use super::super::weights::Weights;
use super::super::wrapping::{Roll, WrapNeed};
use crate::handover::identity::{CookerId, DishId};
use crate::units::{Area, Energy, Mass};
use serde::{Deserialize, Serialize};

/// Salt for one dish.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SaltPart {
    /// Which.
    pub dish: DishId,
    /// How much, or why none.
    pub amount: SaltAmount,
    /// How long it takes until the centre of the thickest piece has nine tenths of its share.
    pub even: Option<EvenOut>,
}

/// The figures behind a line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum Working {
    /// The pieces of a dish: as bought, as it goes on, on the plate.
    Pieces {
        /// Number and weight of each as bought.
        pieces: Vec<(u32, Mass)>,
        /// All of it along its way.
        weights: Weights,
        /// Where the yield is from.
        source: &'static str,
    },
    /// Counted on the plan.
    Counted,
    /// Salt by trimmed weight, each dish.
    Salt {
        /// Each dish.
        parts: Vec<SaltPart>,
        /// Level teaspoons of the kind named, fewest and most; none where no kind is named.
        teaspoons: Option<(f64, f64)>,
    },
    /// A weight on each square metre.
    Surface {
        /// kg/m².
        rate: f64,
        /// Of all dishes.
        surface: Area,
    },
    /// Rounds of spraying, each dish.
    Sprayed {
        /// Each dish.
        parts: Vec<(DishId, SprayNeed)>,
    },
    /// Wrapped pieces, each kind: how many and what one takes.
    Wrapped {
        /// The roll.
        roll: Roll,
        /// Number and need of one.
        parts: Vec<(DishId, u32, WrapNeed)>,
    },
    /// Pans under so much grate.
    UnderFootprint {
        /// Covered by the meat.
        footprint: Area,
    },
    /// Pans for so much cooked meat.
    ForCooked {
        /// On the plate.
        cooked: Mass,
    },
    /// Fires, each cooker. A first bed of charcoal counts for lump where the fire is of wood.
    Fires {
        /// Each cooker with what it burns.
        fires: Vec<(CookerId, FuelNeed)>,
        /// First beds of charcoal under wood fires.
        first_beds: Mass,
    },
    /// Current for cookers with a plug.
    Current {
        /// Each cooker with what it draws.
        fires: Vec<(CookerId, FuelNeed)>,
        /// In all.
        energy: Energy,
    },
    /// A box for what waits hot: all dishes that rest in one.
    Held {
        /// Room and hot water.
        need: HotBox,
    },
    /// Ice for the way and for what is left over.
    Ice {
        /// To keep raw food cold on the way.
        on_the_way: Mass,
        /// To chill what is left over.
        leftovers: Mass,
    },
}
