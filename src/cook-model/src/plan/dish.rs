//! Dishes: what is cooked, in which pieces, and by which method.

use super::Order;
use crate::handover::identity::{CookerId, PieceId};
use crate::units::{Length, Mass, Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A dish on the table. Where a field of the method is none, the cut's usual value holds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Dish {
    /// What the person calls it.
    pub name: String,
    /// Place among the dishes.
    #[serde(default)]
    pub order: Order,
    /// What it is.
    pub food: Food,
    /// What it is cooked on. None: not settled yet.
    #[serde(default)]
    pub cooker: Option<CookerId>,
    /// Air where it lies, if that is not the cooker's own programme: a cool end, a hot side.
    #[serde(default)]
    pub pit: Option<Temperature>,
    /// The pieces. A dish of one's own may have none.
    #[serde(default)]
    pub pieces: BTreeMap<PieceId, Piece>,
    /// Core temperature at which it is done, or near which it is probed for tenderness.
    #[serde(default)]
    pub target: Option<Temperature>,
    /// Where its frozen pieces thaw. None: in the fridge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thaw: Option<Thawing>,
    /// Salt ahead of the cook.
    #[serde(default)]
    pub salt: Option<SaltAhead>,
    /// Wrapping.
    #[serde(default)]
    pub wrap: Option<Wrap>,
    /// Spraying while it is bare.
    #[serde(default)]
    pub spray: Option<Spray>,
    /// Least rest between off and slicing.
    #[serde(default)]
    pub rest: Option<TimeSpan>,
    /// Where it waits, hot, until it is sliced.
    #[serde(default)]
    pub hold: Option<HoldPlace>,
    /// Minutes, all pieces together, for slicing or pulling.
    #[serde(default)]
    pub slicing: Option<TimeSpan>,
    /// The first time this cook makes this cut: the window is wider.
    #[serde(default)]
    pub first_time: bool,
    /// Words of one's own.
    #[serde(default)]
    pub note: String,
}

impl Dish {
    /// A dish with a name and nothing settled: every field of its method is the cut's usual one.
    #[must_use]
    pub fn new(name: &str, food: Food, order: Order) -> Self {
        Self {
            name: name.to_owned(),
            order,
            food,
            cooker: None,
            pit: None,
            pieces: BTreeMap::new(),
            target: None,
            thaw: None,
            salt: None,
            wrap: None,
            spray: None,
            rest: None,
            hold: None,
            slicing: None,
            first_time: false,
            note: String::new(),
        }
    }
}

/// What a dish is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Food {
    /// A cut of the catalogue, by its slug; the physics says how long it takes.
    Cut {
        /// Slug, such as `pork-shoulder-butt`.
        cut: String,
    },
    /// A dish of one's own (corn, beans): so long with a spread, no physics.
    Own {
        /// Nine in ten take longer.
        least: TimeSpan,
        /// As many take longer as shorter.
        likely: TimeSpan,
        /// One in ten takes longer.
        most: TimeSpan,
        /// Where it is made.
        place: OwnPlace,
    },
}

/// Where a dish of one's own is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum OwnPlace {
    /// On the dish's cooker.
    Cooker,
    /// On the hob or in the oven of the kitchen.
    Kitchen,
    /// Cold: it needs hands, no heat.
    Bench,
}

/// One piece of a dish.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Piece {
    /// Place among the pieces.
    #[serde(default)]
    pub order: Order,
    /// How many alike: sausages, quarters. 1 to 200.
    #[serde(default = "one")]
    pub count: u32,
    /// Weight of one.
    pub mass: Mass,
    /// Whether that is as bought or after trimming.
    #[serde(default)]
    pub weighed: BasisOfWeight,
    /// Greatest thickness by the ruler. None: reckoned from the weight.
    #[serde(default)]
    pub thickness: Option<Length>,
    /// Whether it is intact: not injected, blade-tenderised, boned and rolled, stuffed or ground.
    #[serde(default)]
    pub intact: Intact,
    /// Whether it comes frozen and has to thaw.
    #[serde(default)]
    pub frozen: bool,
}

const fn one() -> u32 {
    1
}

/// What a weight was taken of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BasisOfWeight {
    /// As bought.
    #[default]
    Bought,
    /// After trimming.
    Trimmed,
}

/// The answer to: is it intact? Unknown counts as no.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Intact {
    /// Nobody has put a needle, a blade or a hand into it.
    Yes,
    /// Injected, blade-tenderised, boned and rolled, stuffed or ground.
    No,
    /// Not asked yet, or not known.
    #[default]
    Unknown,
}

/// Where frozen pieces thaw. There is no other place: the counter is never planned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Thawing {
    /// In the fridge, for days.
    #[default]
    Fridge,
    /// Under cold water that is changed every half hour; then it is cooked at once.
    ColdWater,
}

/// Salt ahead of the cook.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SaltAhead {
    /// How long before it goes on. Zero: salted as it goes on.
    pub ahead: TimeSpan,
    /// Salt per trimmed weight, 0 to 0.03.
    pub rate: f64,
    /// The label says that a solution was added: then no salt is added.
    #[serde(default)]
    pub solution_added: bool,
}

/// What a piece is wrapped in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Cover {
    /// Butcher paper, unwaxed.
    Paper,
    /// Foil, or a covered pan.
    Foil,
}

/// Whether and when a piece is wrapped.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "cover", rename_all = "snake_case")]
pub enum Wrap {
    /// Never.
    Bare,
    /// In paper.
    Paper {
        /// When.
        when: WrapWhen,
    },
    /// In foil.
    Foil {
        /// When.
        when: WrapWhen,
    },
}

/// When a piece is wrapped.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "at", rename_all = "snake_case")]
pub enum WrapWhen {
    /// When the core reaches a temperature.
    Core {
        /// Core temperature.
        core: Temperature,
    },
    /// So long after it went on.
    AfterOn {
        /// How long after.
        span: TimeSpan,
    },
}

/// Spraying.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Spray {
    /// First round so long after it went on.
    pub first: TimeSpan,
    /// Then every so often, until it is wrapped or off.
    pub every: TimeSpan,
}

/// Where a dish waits, hot, until it is sliced.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "in", rename_all = "snake_case")]
pub enum HoldPlace {
    /// A lidded box with towels.
    RestBox,
    /// An oven or warming drawer at this air temperature.
    WarmOven {
        /// Air.
        air: Temperature,
    },
    /// On the counter: rests and is sliced at once.
    Counter,
}
