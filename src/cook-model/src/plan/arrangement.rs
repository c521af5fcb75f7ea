//! The person's own arrangement of the day: pins, order, changed durations, and steps of one's own.

use super::step_key::StepKey;
use super::{Order, Plan, range};
use crate::handover::identity::{CookerId, CrewId};
use crate::units::{Area, Moment, TimeSpan, Volume};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the person wishes of one step. Each part is a field of its own, so that two phones may change different parts.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StepWish {
    /// It is to begin then. None: wherever the day wants it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pin: Option<Moment>,
    /// Its place in the person's own order. None: no wish.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub order: Option<Order>,
    /// How long hands are at it, 1 min to 6 h. None: the usual time.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub takes: Option<TimeSpan>,
}

impl StepWish {
    /// Whether nothing is wished.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// A step that the person added: beans on at three, collect the bread, guests arrive.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct OwnStep {
    /// What the person calls it.
    pub name: String,
    /// When it falls.
    pub when: OwnWhen,
    /// How long it takes, zero to 48 h.
    pub takes: TimeSpan,
    /// How many hands of the crew are at it all the time: 0, 1 or 2.
    #[serde(default = "one")]
    pub hands: u8,
    /// Where it takes room.
    #[serde(default)]
    pub place: OwnStepPlace,
    /// Who does it. None: whoever is free.
    #[serde(default)]
    pub who: Option<CrewId>,
    /// Words of one's own.
    #[serde(default)]
    pub note: String,
}

const fn one() -> u8 {
    1
}

impl Plan {
    /// Pins a step, or takes its pin out. A wish with nothing left in it goes.
    pub fn pin(&mut self, step: StepKey, at: Option<Moment>) {
        let wish = self.steps.entry(step).or_default();
        wish.pin = at;
        if wish.is_empty() {
            self.steps.remove(&step);
        }
    }

    /// Where a step is pinned. None too for a pin so far from serving that it cannot be meant: the check speaks of it.
    #[must_use]
    pub fn pinned(&self, step: StepKey) -> Option<Moment> {
        let pin = self.steps.get(&step)?.pin;
        pin.filter(|pin| self.is_near(*pin))
    }

    /// Whether a moment is near enough to serving to be planned.
    pub(super) fn is_near(&self, moment: Moment) -> bool {
        let ahead = self.serving.moment() - moment;
        range::PIN_AHEAD.holds(ahead.seconds())
    }
}

/// When a step of one's own falls.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "at", rename_all = "snake_case")]
pub enum OwnWhen {
    /// It begins at a moment.
    Clock {
        /// Which.
        moment: Moment,
    },
    /// It is over so long before serving, and no sooner than it must be.
    BeforeServing {
        /// How long.
        span: TimeSpan,
    },
    /// It begins so long after serving.
    AfterServing {
        /// How long.
        span: TimeSpan,
    },
    /// It is over so long before another step begins.
    Before {
        /// Which step.
        step: StepKey,
        /// How long.
        span: TimeSpan,
    },
    /// It begins so long after another step is over.
    After {
        /// Which step.
        step: StepKey,
        /// How long.
        span: TimeSpan,
    },
}

/// Where a step of one's own takes room.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "in", rename_all = "snake_case")]
pub enum OwnStepPlace {
    /// Nowhere that could be full.
    #[default]
    Anywhere,
    /// The kitchen's oven.
    Oven,
    /// A box that keeps hot.
    RestBox,
    /// The fridge.
    Fridge,
    /// On a cooker.
    Cooker {
        /// Which.
        cooker: CookerId,
    },
}

/// Room in the kitchen, beside the cookers.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Kitchen {
    /// Shelves of the ovens, all together, 0 to 4 m².
    pub oven: Area,
    /// Boxes that keep hot, all together, 0 to 1 m³.
    pub rest_box: Volume,
    /// Free room in the fridge for raw meat, 0 to 2 m³.
    pub fridge: Volume,
}

impl Default for Kitchen {
    /// One kitchen oven with two shelves of 0.16 m², a box of 50 litres and 60 litres of fridge. Common practice.
    fn default() -> Self {
        Self {
            oven: Area::from_square_metres(0.32),
            rest_box: Volume::from_litres(50.0),
            fridge: Volume::from_litres(60.0),
        }
    }
}
