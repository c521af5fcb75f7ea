//! What page and worker say to each other, as JSON text.
//!
//! Every question is asked with rising effort under one generation: roughly, for an answer at once, then better, and in
//! full. A question of a newer generation ends everything older, in the worker at its next chunk and in the page when
//! an answer comes late.

use cook_model::plan::outlook::Outlook;
use cook_model::plan::{Plan, Situation};
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

/// Everything that an outlook is derived from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Question {
    /// The plan.
    pub plan: Plan,
    /// The moment, the local clock, and what has happened.
    pub situation: Situation,
}

/// From the page to the worker.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Request {
    /// Counts requests.
    pub id: u32,
    /// Counts questions.
    pub generation: u32,
    /// How much work.
    pub effort: Effort,
    /// What is asked.
    pub question: Question,
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
        outlook: Box<Outlook>,
    },
}
