//! What is kept where: one record a plan, one for each two hundred journal entries, one index, one of the device.

use cook_model::handover::identity::PlanId;
use std::fmt;
use std::str::FromStr;

/// Begins the name of every record of this app.
pub const PREFIX: &str = "longcook.";

/// The name of a record. Both stores use the same names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Key {
    /// Which plans were taken away.
    Index,
    /// What belongs to this device: its replica id, units, light, the open plan.
    Device,
    /// The fields of a plan.
    Plan(PlanId),
    /// A chunk of a plan's journal, counted from 0.
    Journal(PlanId, u32),
    /// A record that could not be read and was kept aside, named after its checksum.
    Aside(u32),
}

impl Key {
    /// What the envelope of such a record says it is.
    #[must_use]
    pub const fn kind(self) -> &'static str {
        match self {
            Self::Index => "index",
            Self::Device => "device",
            Self::Plan(_) => "plan",
            Self::Journal(..) => "journal",
            Self::Aside(_) => "aside",
        }
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{PREFIX}{}", self.kind())?;
        match self {
            Self::Index | Self::Device => Ok(()),
            Self::Plan(plan) => write!(f, ".{plan}"),
            Self::Journal(plan, chunk) => write!(f, ".{plan}.{chunk}"),
            Self::Aside(checksum) => write!(f, ".{checksum:08x}"),
        }
    }
}

/// Text that names no record of this version.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("“{0}” names no record of this version")]
pub struct NotAKey(pub String);

impl FromStr for Key {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<Self, NotAKey> {
        let parse = || {
            let mut parts = text.strip_prefix(PREFIX)?.split('.');
            let key = match (parts.next()?, parts.next(), parts.next()) {
                ("index", None, None) => Self::Index,
                ("device", None, None) => Self::Device,
                ("plan", Some(plan), None) => Self::Plan(plan.parse().ok()?),
                ("journal", Some(plan), Some(chunk)) => {
                    Self::Journal(plan.parse().ok()?, chunk.parse().ok()?)
                }
                ("aside", Some(checksum), None) => {
                    Self::Aside(u32::from_str_radix(checksum, 16).ok()?)
                }
                _ => return None,
            };
            parts.next().is_none().then_some(key)
        };
        parse().ok_or_else(|| NotAKey(text.to_owned()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_and_back() {
        let plan = PlanId::new(1_789_000_000_000, 7);
        for key in [
            Key::Index,
            Key::Device,
            Key::Plan(plan),
            Key::Journal(plan, 12),
            Key::Aside(0xfeed),
        ] {
            assert_eq!(key.to_string().parse(), Ok(key));
        }
    }

    #[test]
    fn foreign_names_are_left_alone() {
        for name in [
            "theme",
            "longcook.",
            "longcook.plan.1",
            "longcook.index.2",
            "longcook.song",
        ] {
            assert!(name.parse::<Key>().is_err(), "{name}");
        }
    }
}
