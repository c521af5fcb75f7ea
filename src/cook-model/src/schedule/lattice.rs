//! The day as its rules bind it. Small, plain values: it travels with every outlook.

use super::reason::{Reason, Room, Rule};
use crate::handover::identity::{CrewId, DishId};
use crate::plan::outlook::Odds;
use crate::plan::{Order, StepKey};
use crate::units::{Moment, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// Steps, the rules between them, people and rooms.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lattice {
    /// The present moment.
    pub now: Moment,
    /// The table is served then.
    pub serving: Moment,
    /// Every step that is planned, in the order of its time.
    pub tasks: Vec<Task>,
    /// Rules between two of them.
    pub links: Vec<Link>,
    /// The crew. Nobody: somebody is always up, and has as many hands as are wanted.
    pub people: Vec<Person>,
    /// Rooms that can be full.
    pub rooms: Vec<RoomSize>,
    /// Who lies where, from when to when.
    pub stays: Vec<Stay>,
    /// The dishes.
    pub dishes: Vec<DishSpans>,
    /// Quiet hours of the whole crew: stretches in which nobody at all is up.
    pub nobody_up: Vec<Stretch>,
    /// Nights on the local clock, ten to seven.
    pub nights: Vec<Stretch>,
    /// When shops are shut: seven to nine.
    pub shops_shut: Vec<Stretch>,
}

impl Default for Lattice {
    /// A day with nothing in it.
    fn default() -> Self {
        let never = Moment::from_unix_seconds(0);
        Self {
            now: never,
            serving: never,
            tasks: Vec::new(),
            links: Vec::new(),
            people: Vec::new(),
            rooms: Vec::new(),
            stays: Vec::new(),
            dishes: Vec::new(),
            nobody_up: Vec::new(),
            nights: Vec::new(),
            shops_shut: Vec::new(),
        }
    }
}

/// A stretch of time, its end not included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stretch {
    /// It begins.
    pub from: Moment,
    /// It ends.
    pub to: Moment,
}

impl Stretch {
    /// How much of it two stretches share.
    #[must_use]
    pub fn shared(&self, other: &Self) -> TimeSpan {
        (self.to.min(other.to) - self.from.max(other.from)).max(TimeSpan::ZERO)
    }

    /// Whether they share any time.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        self.from < other.to && other.from < self.to
    }
}

/// What somebody must be able to do for a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Skill {
    /// Handle food.
    Food,
    /// Mind a fire.
    Fire,
    /// Anything at all.
    Any,
}

/// What a step's time hangs on.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Tie {
    /// It can be moved within its rules, and stays where it is liked when others move.
    Free,
    /// It can be moved within its rules; where it is liked goes by another step.
    Near {
        /// Place of the other in the list.
        task: usize,
        /// How long after that begins; negative before.
        after: TimeSpan,
    },
    /// It goes by another step: so long after that begins. A little later is no harm, sooner is not possible.
    With {
        /// Place of the other in the list.
        task: usize,
        /// How long after that begins.
        after: TimeSpan,
    },
    /// It stands: serving, or what has happened.
    Fixed,
}

/// At which hours a step is done, if that can be chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Hours {
    /// At any.
    Any,
    /// By day.
    Day,
    /// While shops are open.
    Shop,
}

/// A bound with its reason.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bound {
    /// When.
    pub at: Moment,
    /// Why.
    pub why: Reason,
}

/// One step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Task {
    /// Which.
    pub key: StepKey,
    /// How long it takes.
    pub takes: TimeSpan,
    /// Hands of the crew that are at it: 0, 1 or 2.
    pub hands: u8,
    /// What they must be able to do.
    pub skill: Skill,
    /// Told who does it.
    pub told: Option<CrewId>,
    /// What its time hangs on.
    pub tie: Tie,
    /// Where it is best, before hands and rooms have their say.
    pub liked: Moment,
    /// Where it is.
    pub begins: Moment,
    /// Who does it; the second pair of hands behind the first.
    pub who: Vec<CrewId>,
    /// Not sooner, whatever other steps do.
    pub earliest: Option<Bound>,
    /// Not later, whatever other steps do.
    pub latest: Option<Bound>,
    /// At which hours.
    pub hours: Hours,
    /// Where the person pinned it.
    pub pinned: Option<Moment>,
    /// Its place in the person's own order.
    pub order: Option<Order>,
}

impl Task {
    /// When it is over.
    #[must_use]
    pub fn ends(&self) -> Moment {
        self.begins + self.takes
    }

    /// From when to when it lasts.
    #[must_use]
    pub fn lasts(&self) -> Stretch {
        Stretch {
            from: self.begins,
            to: self.ends(),
        }
    }
}

/// A rule between two steps: the later begins no sooner than `least` and no later than `most` after the sooner is over.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Link {
    /// Place of the sooner in the list.
    pub sooner: usize,
    /// Place of the later.
    pub later: usize,
    /// At least.
    pub least: TimeSpan,
    /// At most.
    pub most: Option<TimeSpan>,
    /// What it is about.
    pub rule: Rule,
}

/// Somebody of the crew.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Person {
    /// Who.
    pub who: CrewId,
    /// Handles food.
    pub food: bool,
    /// Minds fires.
    pub fire: bool,
    /// Takes a watch at the fire in their quiet hours.
    pub night_watch: bool,
    /// Quiet hours over the days of the plan.
    pub asleep: Vec<Stretch>,
}

/// How much a room holds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct RoomSize {
    /// Which.
    pub room: Room,
    /// In the unit of the room.
    pub size: f64,
    /// How far the air of two places in it may differ, K. None: its air does not matter.
    pub zones: Option<f64>,
    /// Whether its fire is minded by somebody who is awake.
    pub minded: bool,
    /// It is lit so long before something goes on.
    pub lit_before: TimeSpan,
}

/// A moment that goes by a step.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Edge {
    /// Place of the step in the list.
    pub task: usize,
    /// So long after it begins.
    pub after: TimeSpan,
}

/// Something lies somewhere.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stay {
    /// What.
    pub dish: DishId,
    /// Where.
    pub room: Room,
    /// How much room it takes.
    pub takes: f64,
    /// The pit temperatures it may be cooked at; none: it does not matter.
    pub airs: Vec<Temperature>,
    /// From.
    pub from: Edge,
    /// To, likely.
    pub to: Edge,
    /// To, at the latest in nine of ten.
    pub at_most: Edge,
}

/// A dish's times by its put-on time.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DishSpans {
    /// Which.
    pub dish: DishId,
    /// The step that puts it on, by its place in the list.
    pub on: usize,
    /// From on to table-ready, s, for each member that gets there, rising.
    pub table_ready: Vec<f64>,
    /// From on until it is no longer hot and good, s, for each member that gets ready, rising.
    pub stays_good: Vec<f64>,
    /// Members in all.
    pub members: u32,
    /// Members that must be in time for the promise.
    pub wanted: u32,
    /// Slicing takes so long before serving.
    pub slicing: TimeSpan,
    /// From here on nine in ten stay hot and good until serving.
    pub earliest_on: Moment,
    /// Until here the promise is kept.
    pub latest_on: Moment,
}

impl DishSpans {
    /// Members that stay hot and good until it is sliced for serving, if it goes on at a moment.
    #[must_use]
    pub fn hold_odds(&self, on: Moment, serving: Moment) -> Odds {
        let waits = (serving - on - self.slicing).seconds();
        let spoilt = self.stays_good.partition_point(|span| *span < waits);
        let kept = self.stays_good.len() - spoilt;
        Odds {
            kept: u32::try_from(kept).unwrap_or(u32::MAX),
            of: u32::try_from(self.stays_good.len()).unwrap_or(u32::MAX),
        }
    }

    /// Table-ready by a moment, if it goes on at another.
    #[must_use]
    pub fn odds(&self, on: Moment, by: Moment) -> Odds {
        let room = (by - on).seconds();
        let kept = self.table_ready.partition_point(|span| *span <= room);
        Odds {
            kept: u32::try_from(kept).unwrap_or(u32::MAX),
            of: self.members,
        }
    }
}
