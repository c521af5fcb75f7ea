//! When a field was last changed: a hybrid logical clock.
//!
//! A stamp is the wall clock in milliseconds, a counter and the replica. Later stamps win; ties go by replica, so any
//! two copies agree. A phone with a wrong clock cannot lose its own later edits: a new stamp is always after every
//! stamp that the clock has seen (Kulkarni and others, "Logical Physical Clocks", OPODIS 2014).

use super::identity::ReplicaId;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// A point of the hybrid logical clock. Orders by time, then count, then replica.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(into = "String", try_from = "String")]
#[schemars(with = "String")]
pub struct Stamp {
    milliseconds: u64,
    count: u32,
    replica: ReplicaId,
}

/// Text that is not a stamp.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "“{0}” is not a stamp: time, count and replica in hexadecimal with dashes between are wanted"
)]
pub struct NotAStamp(String);

impl Stamp {
    /// Wall clock of the replica, at least as late as everything it had seen, in milliseconds since 1970, UTC.
    #[must_use]
    pub const fn milliseconds(self) -> u64 {
        self.milliseconds
    }

    /// The copy of the app that made the change.
    #[must_use]
    pub const fn replica(self) -> ReplicaId {
        self.replica
    }
}

impl fmt::Display for Stamp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:012x}-{:08x}-{}",
            self.milliseconds, self.count, self.replica
        )
    }
}

impl From<Stamp> for String {
    fn from(stamp: Stamp) -> Self {
        stamp.to_string()
    }
}

impl FromStr for Stamp {
    type Err = NotAStamp;
    fn from_str(text: &str) -> Result<Self, NotAStamp> {
        let parsed = || {
            let (milliseconds, rest) = text.split_once('-')?;
            let (count, replica) = rest.split_once('-')?;
            (milliseconds.len() == 12 && count.len() == 8 && replica.len() == 16).then_some(())?;
            Some(Self {
                milliseconds: u64::from_str_radix(milliseconds, 16).ok()?,
                count: u32::from_str_radix(count, 16).ok()?,
                replica: ReplicaId::new(u64::from_str_radix(replica, 16).ok()?),
            })
        };
        parsed().ok_or_else(|| NotAStamp(text.to_owned()))
    }
}

impl TryFrom<String> for Stamp {
    type Error = NotAStamp;
    fn try_from(text: String) -> Result<Self, NotAStamp> {
        text.parse()
    }
}

/// The clock of one replica. It needs the wall clock from outside and never goes back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clock {
    replica: ReplicaId,
    milliseconds: u64,
    count: u32,
}

impl Clock {
    /// A clock that has seen nothing.
    #[must_use]
    pub const fn new(replica: ReplicaId) -> Self {
        Self {
            replica,
            milliseconds: 0,
            count: 0,
        }
    }

    /// The replica whose clock this is.
    #[must_use]
    pub const fn replica(&self) -> ReplicaId {
        self.replica
    }

    /// Takes note of a stamp, so that the next one made here is after it.
    pub fn see(&mut self, stamp: Stamp) {
        if (stamp.milliseconds, stamp.count) > (self.milliseconds, self.count) {
            (self.milliseconds, self.count) = (stamp.milliseconds, stamp.count);
        }
    }

    /// The next stamp, given the wall clock in milliseconds since 1970, UTC.
    pub fn tick(&mut self, wall_milliseconds: u64) -> Stamp {
        const LAST: u64 = (1 << 48) - 1;
        let wall = wall_milliseconds.min(LAST);
        if wall > self.milliseconds {
            (self.milliseconds, self.count) = (wall, 0);
        } else if self.count == u32::MAX {
            (self.milliseconds, self.count) = (self.milliseconds + 1, 0);
        } else {
            self.count += 1;
        }
        Stamp {
            milliseconds: self.milliseconds,
            count: self.count,
            replica: self.replica,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_that_runs_backwards_still_makes_later_stamps() {
        let mut clock = Clock::new(ReplicaId::new(7));
        let first = clock.tick(5_000);
        let second = clock.tick(1_000);
        assert!(second > first);
    }

    #[test]
    fn a_stamp_from_a_fast_phone_is_overtaken() {
        let mut fast = Clock::new(ReplicaId::new(1));
        let mut slow = Clock::new(ReplicaId::new(2));
        let ahead = fast.tick(9_000_000);
        slow.see(ahead);
        assert!(slow.tick(1_000) > ahead);
    }

    #[test]
    fn text_and_back() {
        let stamp = Clock::new(ReplicaId::new(0xfeed)).tick(1_789_000_000_123);
        assert_eq!(stamp.to_string().parse(), Ok(stamp));
        assert!("12-3-4".parse::<Stamp>().is_err());
    }

    #[test]
    fn text_sorts_as_the_stamps_do() {
        let mut clock = Clock::new(ReplicaId::new(3));
        let stamps: Vec<_> = [5, 5, 900, 70_000].map(|wall| clock.tick(wall)).into();
        let texts: Vec<_> = stamps.iter().map(ToString::to_string).collect();
        assert!(texts.is_sorted());
    }
}
