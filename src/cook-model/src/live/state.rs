//! What is known of a dish that is on, as of now.

use crate::handover::identity::{CookerId, EntryId, PieceId};
use crate::plan::outlook::{Odds, Window};
use crate::units::{Moment, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// How far a dish is, by what was logged.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Stage {
    /// Not on yet.
    #[default]
    NotOn,
    /// On its cooker, or in an oven that cooks, bare.
    On,
    /// The same, wrapped.
    Wrapped,
    /// Off, in the open.
    Resting,
    /// Off, in a box or a warm oven.
    Held,
    /// Sliced, pulled or served.
    Sliced,
}

/// A dish under way: the forecast that rests on everything logged. Times are windows of 10 to 90 %.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Live {
    /// Since when it is in its stage.
    pub since: Moment,
    /// Ready to come off. None once it is off.
    pub ready: Option<Window>,
    /// Rested and sliced. None once it is sliced.
    pub table_ready: Option<Window>,
    /// Table-ready by serving.
    pub odds: Odds,
    /// What each entry did to the ready window, oldest first.
    pub moved: Vec<Moved>,
    /// Tenderness and core from the moment it went on to the end of the window.
    pub curves: Vec<LivePoint>,
    /// The readings that went into it, each with what the forecast makes of it.
    pub readings: Vec<ReadingFit>,
    /// Where it is in its stall.
    pub stall: Stall,
    /// Water, juice and fat lost so far of the weight that went on: the 10, 50 and 90 % points, 0 to 1.
    pub loss: [f64; 3],
    /// Its bark.
    pub bark: Bark,
    /// How old the news is.
    pub news: News,
    /// Readings that are wanted next, the soonest first.
    pub wanted: Vec<Wanted>,
}

/// What an entry did to the ready window.
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
    /// A pit reading.
    Pit,
    /// A probe by hand.
    Feel,
    /// Something done: wrapped, pit set, lid open, fire out, moved, off.
    Done,
}

/// A point of the live picture.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LivePoint {
    /// When.
    pub at: Moment,
    /// Tenderness, 1 is tender: the 10, 50 and 90 % points. The bare integral for a cut cooked to temperature.
    pub tenderness: [f64; 3],
    /// Coldest point: the 10, 50 and 90 % points.
    pub core: [Temperature; 3],
}

/// A core reading against the forecast.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReadingFit {
    /// Which entry.
    pub entry: EntryId,
    /// Which piece.
    pub piece: PieceId,
    /// When it was read.
    pub at: Moment,
    /// What was read.
    pub reading: Temperature,
    /// What the forecast expected there before this piece's readings, likely.
    pub expected: Temperature,
    /// How much it counts, 0 to 1: one that cannot be so, or is marked doubtful, counts little.
    pub weight: f64,
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
    /// It sets, if it stays bare. None: not before it is ready or wrapped, in half of the members or more.
    pub sets: Option<Window>,
}

/// How old the news is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct News {
    /// The last core reading or probe by hand that counts.
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
