//! What could be done now, and what it would change.

use crate::handover::KnownEvent;
use crate::plan::Cover;
use crate::plan::outlook::{Odds, Window};
use crate::units::{Mass, Moment, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// Something that could be done to a dish now.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lever {
    /// What.
    pub pull: Pull,
    /// What would come of it. All levers are reckoned in the same possible worlds.
    pub effect: Effect,
    /// The entries that pulling it writes; none for one that changes the plan instead.
    pub writes: Vec<KnownEvent>,
}

/// A lever.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Pull {
    /// Leave everything as it is planned: what the others are measured against.
    Wait,
    /// Wrap every piece now.
    Wrap {
        /// In what.
        cover: Cover,
    },
    /// Run the pit at another temperature from now on.
    Pit {
        /// Air at the meat.
        set: Temperature,
    },
    /// Move it into a kitchen oven, in foil if it is bare.
    Oven {
        /// Air of the oven.
        air: Temperature,
    },
    /// Take it off now.
    TakeOff,
    /// Take it off when it is ready and hold it hot until then.
    HoldUntil {
        /// Slicing begins.
        until: Moment,
    },
    /// Serve at another time.
    ServeAt {
        /// When.
        serving: Moment,
    },
}

/// What comes of a lever.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Effect {
    /// Ready to come off.
    pub ready: Option<Window>,
    /// Rested and sliced.
    pub table_ready: Option<Window>,
    /// The likely ready time lies so much later than with [`Pull::Wait`]; negative: sooner.
    pub later: TimeSpan,
    /// Table-ready by serving.
    pub odds: Odds,
    /// Water, juice and fat lost of the weight that went on, when it comes off: the 10, 50 and 90 % points.
    pub loss: [f64; 3],
    /// Tenderness when it comes off, 1 is tender: the 10, 50 and 90 % points. None for a cut cooked to temperature.
    pub tenderness: Option<[f64; 3]>,
    /// The bark has set when it comes off.
    pub bark: Odds,
    /// Past the safety minimum at the coldest point when it comes off, by the model. Whether it is safe rests on a
    /// reading.
    pub past_minimum: Odds,
    /// Stays hot and good until it is sliced.
    pub holds: Odds,
    /// Fuel from now on, more than with [`Pull::Wait`]; negative: less. None where the model has none for the cooker.
    pub fuel: Option<Mass>,
}
