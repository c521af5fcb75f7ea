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
    /// Whether they handle food: trim, put on, wrap, slice.
    #[serde(default = "yes")]
    pub hands_on: bool,
    /// Whether they mind a fire: light, feed, change the pit.
    #[serde(default = "yes")]
    pub fire: bool,
    /// Whether they take a watch at the fire in their quiet hours, awake and sober.
    #[serde(default)]
    pub night_watch: bool,
}

const fn yes() -> bool {
    true
}

impl CrewMember {
    /// Somebody who does everything, and sleeps in their quiet hours.
    #[must_use]
    pub fn new(name: &str, order: Order, quiet: Option<QuietHours>) -> Self {
        Self {
            name: name.to_owned(),
            order,
            quiet,
            hands_on: true,
            fire: true,
            night_watch: false,
        }
    }
}

/// Hours of every night, on the local clock, in which somebody is not woken for steps. They may pass midnight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct QuietHours {
    /// They begin.
    pub from: NaiveTime,
    /// They end.
    pub to: NaiveTime,
}
