//! Why a step is where it is. Words are the screen's.

use crate::handover::identity::{CookerId, CrewId, DishId};
use crate::plan::StepKey;
use crate::plan::outlook::Odds;
use crate::units::{Moment, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// Between which moments hard rules let a step begin, other steps staying where they are. None: nothing holds on that
/// side.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Allowed {
    /// Not sooner.
    pub earliest: Option<Moment>,
    /// Not later.
    pub latest: Option<Moment>,
}

/// What became of a pin.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Pin {
    /// There is none.
    #[default]
    Free,
    /// The step is where it was pinned.
    Kept,
    /// A hard rule does not allow it there any more: it stands as near as it may.
    Collides {
        /// Where it was pinned.
        pinned: Moment,
        /// The rule.
        with: Reason,
    },
}

/// What a rule between two steps is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Rule {
    /// One cannot be done before the other: trimmed before salted, rubbed before put on.
    Sequence,
    /// Salt wants its time.
    Salting,
    /// Frozen meat wants its time in the fridge.
    Thawing,
    /// Raw meat keeps only so long.
    RawKeeps,
    /// A fire wants its time to get clean and steady.
    SteadyFire,
    /// A fire is fed within its hours.
    Feeding,
    /// It goes by the clock since the dish went on.
    SinceOn,
    /// Meat rests before it is sliced.
    Rest,
    /// What was on the table is chilled in time.
    Chilling,
    /// The person wants it before or after the other.
    Own,
}

/// A place with room for so much.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(tag = "in", rename_all = "snake_case")]
pub enum Room {
    /// The grates of a cooker, in m².
    Grate {
        /// Which.
        cooker: CookerId,
    },
    /// The ovens of the kitchen, in m².
    Oven,
    /// Boxes that keep hot, in m³.
    RestBox,
    /// The fridge, in m³.
    Fridge,
}

/// Why a step is where it is, or why it cannot be elsewhere.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "because", rename_all = "snake_case")]
pub enum Reason {
    /// The table is served then.
    Serving {
        /// When.
        at: Moment,
    },
    /// It has to be over so long before another step begins.
    Before {
        /// The other.
        step: StepKey,
        /// How long.
        least: TimeSpan,
        /// What that is about.
        rule: Rule,
    },
    /// It cannot begin sooner than so long after another is over.
    After {
        /// The other.
        step: StepKey,
        /// How long.
        least: TimeSpan,
        /// What that is about.
        rule: Rule,
    },
    /// It may be over no longer than so long before another begins.
    NotLongBefore {
        /// The other.
        step: StepKey,
        /// How long at most.
        most: TimeSpan,
        /// What that is about.
        rule: Rule,
    },
    /// It may begin no later than so long after another is over.
    NotLongAfter {
        /// The other.
        step: StepKey,
        /// How long at most.
        most: TimeSpan,
        /// What that is about.
        rule: Rule,
    },
    /// It goes by the meat: so long after the dish went on, in the likely member.
    Meat {
        /// The step that puts the dish on.
        on: StepKey,
        /// How long after, likely.
        after: TimeSpan,
        /// Core temperature at which it is due.
        core: Option<Temperature>,
    },
    /// Until then the promise is kept.
    Promise {
        /// Which dish.
        dish: DishId,
        /// The latest put-on time that keeps it.
        latest: Moment,
        /// Odds where it stands.
        odds: Odds,
    },
    /// Sooner, it would wait longer than it stays hot and good.
    HoldLimit {
        /// Which dish.
        dish: DishId,
        /// The earliest put-on time at which nine in ten stay hot and good.
        earliest: Moment,
    },
    /// Nobody who may do it is up.
    NobodyUp {
        /// From.
        from: Moment,
        /// To.
        to: Moment,
    },
    /// Whoever could do it is busy with another step.
    HandsBusy {
        /// Who.
        who: CrewId,
        /// With what.
        with: StepKey,
    },
    /// A place is full.
    Full {
        /// Which.
        room: Room,
        /// With which dish.
        with: DishId,
        /// Wanted in all, in the unit of the room.
        wanted: f64,
        /// There.
        there: f64,
    },
    /// A cooker has one pit temperature at a time.
    OneAir {
        /// Which.
        cooker: CookerId,
        /// The dish that wants another.
        with: DishId,
        /// The one.
        low: Temperature,
        /// The other.
        high: Temperature,
    },
    /// Shops are open from nine to seven.
    ShopHours,
    /// It would be done in the night, and can be done by day.
    ByDay,
    /// It lies in the past.
    Past {
        /// The present.
        now: Moment,
    },
    /// It has happened.
    Happened {
        /// When.
        at: Moment,
    },
    /// The person pinned it.
    Pinned {
        /// To when.
        at: Moment,
    },
    /// The person wants it in this order.
    PersonsOrder {
        /// The neighbour in the order.
        step: StepKey,
    },
    /// Nothing holds it: it is best there.
    Best,
}
