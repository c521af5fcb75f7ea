//! The kinds of event that this version knows. A new field has a default, so that older files read; a kind or field of a
//! later version is kept as it came.

use super::identity::{CookerId, DishId, EntryId, PieceId};
use crate::plan::StepKey;
use crate::units::{Length, Mass, Moment, Temperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Where the probe sat when a core was read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ProbePlace {
    /// Nobody said.
    #[default]
    NotSaid,
    /// In the middle of the thickest part.
    ThickMiddle,
    /// In the thin end, which is ahead of the middle.
    ThinEnd,
}

impl ProbePlace {
    /// Whether nobody said.
    #[must_use]
    pub const fn is_not_said(&self) -> bool {
        matches!(self, Self::NotSaid)
    }
}

/// How a probe goes into the meat.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum ProbeFeel {
    /// It has to be pushed.
    Tight,
    /// It goes in, but the meat holds on to it.
    Drags,
    /// Like soft butter: tender.
    SoftButter,
}

/// With which gauge the air of a cooker was read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Gauge {
    /// Nobody said.
    #[default]
    NotSaid,
    /// A probe on the grate beside the meat.
    AtMeat,
    /// The gauge in the lid.
    Lid,
    /// The cooker's own display.
    Own,
}

impl Gauge {
    /// Whether nobody said.
    #[must_use]
    pub const fn is_not_said(&self) -> bool {
        matches!(self, Self::NotSaid)
    }
}

/// What a fire is fed with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FuelKind {
    /// Splits or chunks of wood.
    Wood,
    /// Lump charcoal.
    Lump,
    /// Briquettes.
    Briquettes,
    /// Pellets.
    Pellets,
}

/// How a cooker lost its heat.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum HeatLoss {
    /// The fire went out.
    #[default]
    Fire,
    /// The power failed.
    Power,
    /// The lid was off, or the door open.
    LidOff,
}

impl HeatLoss {
    /// Whether the fire went out.
    #[must_use]
    pub const fn is_fire(&self) -> bool {
        matches!(self, Self::Fire)
    }
}

#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde passes what it may leave out by reference"
)]
const fn is_false(value: &bool) -> bool {
    !*value
}

/// The kinds of event that this version knows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "is", rename_all = "snake_case", deny_unknown_fields)]
pub enum KnownEvent {
    /// A dish went on.
    On {
        /// Which.
        dish: DishId,
    },
    /// A probe went into a piece.
    ProbeIn {
        /// Which piece.
        piece: PieceId,
    },
    /// A core was read.
    Core {
        /// Which piece.
        piece: PieceId,
        /// The reading.
        reading: Temperature,
        /// Where the probe sat.
        #[serde(default, skip_serializing_if = "ProbePlace::is_not_said")]
        place: ProbePlace,
        /// The probe may have touched bone or air.
        #[serde(default)]
        doubtful: bool,
    },
    /// A piece was probed by hand for tenderness.
    Felt {
        /// Which piece.
        piece: PieceId,
        /// How the probe went in.
        feel: ProbeFeel,
    },
    /// The air of a cooker was read.
    Pit {
        /// Which cooker.
        cooker: CookerId,
        /// The reading.
        reading: Temperature,
        /// With which gauge.
        #[serde(default, skip_serializing_if = "Gauge::is_not_said")]
        gauge: Gauge,
        /// The gauge may have been wrong: in a flame, in the open door.
        #[serde(default, skip_serializing_if = "is_false")]
        doubtful: bool,
    },
    /// The weather around the cookers was looked at.
    Surroundings {
        /// Air outside.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        air: Option<Temperature>,
        /// Wind, m/s.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        wind_metres_per_second: Option<f64>,
        /// Whether it rains.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rain: Option<bool>,
    },
    /// A cooker was set to a temperature.
    PitSet {
        /// Which cooker.
        cooker: CookerId,
        /// The setting.
        set: Temperature,
    },
    /// The fire was fed.
    Fed {
        /// Which cooker.
        cooker: CookerId,
        /// How much fuel.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        fuel: Option<Mass>,
        /// What fuel.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        kind: Option<FuelKind>,
    },
    /// A lid was opened and shut again.
    LidOpen {
        /// Which cooker.
        cooker: CookerId,
        /// It stood open until then. None: shut again at once.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        until: Option<Moment>,
    },
    /// A dish was turned.
    Turned {
        /// Which.
        dish: DishId,
    },
    /// A dish was sprayed.
    Sprayed {
        /// Which.
        dish: DishId,
    },
    /// A piece was wrapped.
    Wrapped {
        /// Which.
        piece: PieceId,
        /// In what.
        cover: crate::plan::Cover,
    },
    /// A piece was unwrapped.
    Unwrapped {
        /// Which.
        piece: PieceId,
    },
    /// A dish was moved into an oven.
    MovedToOven {
        /// Which.
        dish: DishId,
        /// Air of the oven.
        air: Temperature,
    },
    /// A dish went back on its cooker.
    MovedBack {
        /// Which.
        dish: DishId,
    },
    /// A dish came off.
    Off {
        /// Which.
        dish: DishId,
    },
    /// A dish was left to vent.
    Vented {
        /// Which.
        dish: DishId,
    },
    /// A dish went into the box.
    Boxed {
        /// Which.
        dish: DishId,
    },
    /// A dish came out of the box.
    Unboxed {
        /// Which.
        dish: DishId,
    },
    /// A dish was sliced or pulled.
    Sliced {
        /// Which.
        dish: DishId,
    },
    /// A dish was taken out of the fridge, raw.
    TakenOut {
        /// Which.
        dish: DishId,
    },
    /// A dish went back into the fridge, raw.
    PutBack {
        /// Which.
        dish: DishId,
    },
    /// A cooker lost its heat.
    FireOut {
        /// Which cooker.
        cooker: CookerId,
        /// By what.
        #[serde(default, skip_serializing_if = "HeatLoss::is_fire")]
        by: HeatLoss,
        /// The entry's time is not when it was lost, which nobody saw, but the last at which all was well.
        #[serde(default, skip_serializing_if = "is_false")]
        unseen: bool,
    },
    /// The fire of a cooker burns again.
    FireBack {
        /// Which cooker.
        cooker: CookerId,
    },
    /// A dish came to the table, without heat.
    Served {
        /// Which.
        dish: DishId,
    },
    /// What is left of a dish was put away to get cold.
    Chilled {
        /// Which.
        dish: DishId,
        /// Depth of the layer, or thickness of the piece.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        depth: Option<Length>,
        /// In ice water.
        #[serde(default)]
        ice: bool,
    },
    /// What was cold is heated up again.
    Reheating {
        /// Which.
        dish: DishId,
    },
    /// Nothing is left of a dish to watch over: eaten, given away, or thrown away.
    Gone {
        /// Which.
        dish: DishId,
        /// Thrown away, uneaten.
        #[serde(default)]
        thrown_away: bool,
    },
    /// A step of the plan that has no event of its own was done: salting, lighting, serving.
    Done {
        /// Which.
        step: StepKey,
    },
    /// Words of one's own.
    Note {
        /// The words.
        text: String,
    },
    /// An earlier entry is struck out.
    Struck {
        /// Which.
        entry: EntryId,
    },
}
