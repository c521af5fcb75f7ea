//! What page and worker say to each other, as JSON text.
//!
//! Every question is asked twice under one generation: roughly, for an answer at once, and in full. A question of a
//! newer generation ends everything older, in the worker at its next chunk and in the page when an answer comes late.

use cook_model::plan::outlook::Outlook;
use cook_model::plan::{Plan, Situation};
use serde::{Deserialize, Serialize};

/// How much work an answer is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Effort {
    /// A few members, within the blink of an eye.
    Rough,
    /// All members.
    Full,
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
    /// Rough or full.
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
        /// Rough or full.
        effort: Effort,
        /// The answer.
        outlook: Box<Outlook>,
    },
}
