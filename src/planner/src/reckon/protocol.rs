//! What page and worker say to each other, as JSON text.
//!
//! Every question is asked with rising effort under one generation: roughly, for an answer at once, then better, and in
//! full. There are two lines of questions: the outlook of the plan, and plans that are only tried. A question of a newer
//! generation ends everything older of its own line, in the worker at its next chunk and in the page when an answer
//! comes late.

use cook_model::handover::identity::DishId;
use cook_model::plan::outlook::{Hindrance, Outlook};
use cook_model::plan::{Plan, Situation, Trial};
use cook_model::units::Moment;
use serde::{Deserialize, Serialize};

/// How much work an answer is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Effort {
    /// A few members, within the blink of an eye.
    Rough,
    /// Enough members to go by while the rest is on its way.
    Fair,
    /// All members.
    Full,
}

impl Effort {
    /// All, in the order in which they are asked for.
    pub const ALL: [Self; 3] = [Self::Rough, Self::Fair, Self::Full];
}

/// What is wanted of a plan in its situation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Wanted {
    /// All that is derived from it.
    Outlook,
    /// It is only tried: what becomes of one of its dishes.
    Trial {
        /// Which of the plans that are tried side by side.
        way: u32,
        /// Which dish.
        dish: DishId,
        /// A second start that is asked about.
        also: Option<Moment>,
    },
}

/// A line of questions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// Plans that are only tried: somebody stands at a counter and waits.
    Trial,
    /// The outlook of the plan.
    Outlook,
}

impl Wanted {
    /// The line in which it is asked.
    #[must_use]
    pub const fn line(self) -> Line {
        match self {
            Self::Outlook => Line::Outlook,
            Self::Trial { .. } => Line::Trial,
        }
    }
}

/// Everything that an answer is derived from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Question {
    /// The plan.
    pub plan: Plan,
    /// The moment, the local clock, and what has happened.
    pub situation: Situation,
    /// What is wanted.
    pub wanted: Wanted,
}

/// From the page to the worker.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Request {
    /// Counts requests.
    pub id: u32,
    /// Counts questions of its line.
    pub generation: u32,
    /// How much work.
    pub effort: Effort,
    /// What is asked.
    pub question: Question,
}

/// What comes out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Answer {
    /// All that is derived from the plan.
    Outlook(Box<Outlook>),
    /// What became of a dish in a plan that was tried.
    Trial {
        /// Which of the plans.
        way: u32,
        /// What became of it, or why nothing could.
        trial: Box<Result<Trial, Hindrance>>,
    },
}

impl Answer {
    /// The line in which it was asked.
    #[must_use]
    pub const fn line(&self) -> Line {
        match self {
            Self::Outlook(_) => Line::Outlook,
            Self::Trial { .. } => Line::Trial,
        }
    }
}

/// From the worker to the page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Reply {
    /// Ready for requests.
    Ready,
    /// The answer to a request.
    Answer {
        /// To which request.
        id: u32,
        /// Of which generation.
        generation: u32,
        /// How much work.
        effort: Effort,
        /// The answer.
        answer: Answer,
    },
}
