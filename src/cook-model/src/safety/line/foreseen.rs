//! What the model foresees of a dish, as far as the clocks want it.

use crate::handover::identity::DishId;
use crate::safety::Concern;
use crate::safety::watch::Track;
use crate::units::{Mass, Moment, TimeSpan};
use serde::{Deserialize, Serialize};

/// What the model foresees of a dish. Each figure is the careful end of its ensemble: one member in ten is worse.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Foreseen {
    /// Which dish.
    pub dish: DishId,
    /// When it first leaves the cold, by the plan.
    pub leaves_the_cold: Option<Moment>,
    /// Time out of the fridge right before it goes on, by the plan.
    pub out_before_on: TimeSpan,
    /// From on to a hot surface of its slowest piece, with the fire as planned.
    pub surface_takes: Option<TimeSpan>,
    /// From on to a core past 60 °C of its slowest piece, with the fire as planned.
    pub core_takes: Option<TimeSpan>,
    /// Cooked weight of its lightest piece: what is kept together at the least.
    pub piece: Option<Mass>,
    /// What a careful friend would say of the plan, the gravest first.
    pub concerns: Vec<Concern>,
}

impl Foreseen {
    /// Nothing is foreseen.
    #[must_use]
    pub const fn nothing(dish: DishId) -> Self {
        Self {
            dish,
            leaves_the_cold: None,
            out_before_on: TimeSpan::ZERO,
            surface_takes: None,
            core_takes: None,
            piece: None,
            concerns: Vec::new(),
        }
    }

    /// A track with what is foreseen. A surface that is foreseen to be slow counts as slow; one that is foreseen to be
    /// quick does not count as quicker than without a model.
    pub(super) fn with(&self, track: Track) -> Track {
        let slow = self.surface_takes.unwrap_or(TimeSpan::ZERO);
        Track {
            surface_takes: track.surface_takes.max(slow),
            out_before_on: self.out_before_on,
            mass: self.piece.or(track.mass),
            ..track
        }
    }
}
