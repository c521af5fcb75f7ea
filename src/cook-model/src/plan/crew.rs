//! The crew: who lends a hand, and when they sleep.

use super::Order;
use chrono::NaiveTime;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Somebody who lends a hand.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CrewMember {
    /// What they are called.
    pub name: String,
    /// Place among the crew.
    #[serde(default)]
    pub order: Order,
    /// When nobody wakes them. None: always to be had.
    #[serde(default)]
    pub quiet: Option<QuietHours>,
}

/// Hours of every night, on the local clock, in which somebody is not woken for steps. They may pass midnight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct QuietHours {
    /// They begin.
    pub from: NaiveTime,
    /// They end.
    pub to: NaiveTime,
}
