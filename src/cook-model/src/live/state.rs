//! What is known of a dish that went on, as of now, beside its times.

use crate::handover::identity::{CookerId, EntryId, PieceId};
use crate::plan::outlook::{Odds, Window};
use crate::units::{Moment, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// What the readings say of a dish that went on. Times are windows of 10 to 90 %. Its times, its course and its odds are
/// where they always are, and rest on the same members.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Live {
    /// Since when it is in its stage.
    pub since: Moment,
    /// Ready to come off, as it was foreseen before anything was read.
    pub foreseen: Option<Window>,
    /// What each entry did to the ready window, oldest first.
    pub moved: Vec<Moved>,
    /// The core readings and probes by hand that went into it, oldest first.
    pub readings: Vec<ReadingFit>,
    /// Where it is in its stall.
    pub stall: Stall,
    /// Water, juice and fat lost so far of the weight that went on: the 10, 50 and 90 % points, 0 to 1.
    pub loss: [f64; 3],
    /// Tenderness now, 1 is tender: the 10, 50 and 90 % points. None for a cut cooked to temperature.
    pub tenderness: Option<[f64; 3]>,
    /// Its bark.
    pub bark: Bark,
    /// How old the news is.
    pub news: News,
    /// Readings that are wanted next, the soonest first. None once it is off.
    pub wanted: Vec<Wanted>,
}

/// What an entry did to the ready window of its piece.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Moved {
    /// Which entry.
    pub entry: EntryId,
    /// When what it tells happened.
    pub at: Moment,
    /// What kind of entry.
    pub what: MovedBy,
    /// The window became so much narrower; negative: wider.
    pub narrowed: TimeSpan,
    /// The likely time moved so much later; negative: sooner.
    pub later: TimeSpan,
}

/// Kinds of entry that move a window.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MovedBy {
    /// A core reading.
    Core,
    /// A probe by hand.
    Feel,
    /// The pit as it was read, together with what was done: what the readings of the meat leave to be explained.
    Pit,
    /// Something done: wrapped, pit set, lid open, fire out, moved, off; likewise what is left.
    Done,
}

/// A core reading or a probe by hand against the forecast.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReadingFit {
    /// Which entry.
    pub entry: EntryId,
    /// Which piece.
    pub piece: PieceId,
    /// When.
    pub at: Moment,
    /// What was likely there before anything was read.
    pub expected: Expected,
    /// How much it counts, 0 to 1: what cannot be so, or is marked doubtful, counts little.
    pub weight: f64,
}

/// What was expected of a reading.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Expected {
    /// A core temperature.
    Core {
        /// What the probe would show.
        probe: Temperature,
    },
    /// A tenderness.
    Tenderness {
        /// 1 is tender.
        tenderness: f64,
    },
}

/// Where a dish is in its stall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Stall {
    /// There is none, in half of the members or more.
    None,
    /// Not yet.
    Ahead {
        /// It begins.
        begins: Window,
        /// It is over.
        ends: Window,
    },
    /// In it.
    Begun {
        /// Since, likely.
        since: Moment,
        /// It is over.
        ends: Window,
    },
    /// Over.
    Over {
        /// Since, likely.
        since: Moment,
    },
}

/// The bark so far.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bark {
    /// It holds under a spray: members in which it does by now.
    pub firm: Odds,
    /// It has set: members in which it has by now.
    pub set: Odds,
    /// It sets. None: not before it is ready, in half of the members or more.
    pub sets: Option<Window>,
}

/// How old the news is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct News {
    /// The last core reading or probe by hand.
    pub last: Option<Moment>,
    /// By so much a core reading now would likely narrow the ready window. None once it is off.
    pub would_narrow: Option<TimeSpan>,
}

/// A reading that is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Wanted {
    /// What is to be read.
    pub what: Reading,
    /// By when.
    pub by: Moment,
}

/// What can be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Reading {
    /// The core of a piece.
    Core {
        /// Which.
        piece: PieceId,
    },
    /// The air of a cooker.
    Pit {
        /// Which.
        cooker: CookerId,
    },
    /// How the probe goes in.
    Feel {
        /// Which piece.
        piece: PieceId,
    },
}
