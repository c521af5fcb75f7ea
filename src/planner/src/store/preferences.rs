//! What belongs to this device and not to a plan.

use crate::format::Units;
use cook_model::handover::identity::{CrewId, PlanId, ReplicaId};
use serde::{Deserialize, Serialize};

/// The three lights.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Light {
    /// Cream.
    Day,
    /// Deep navy, nothing bright.
    Night,
    /// High contrast, for glare.
    Sun,
}

impl Light {
    /// All, in the order of the switch.
    pub const ALL: [Self; 3] = [Self::Day, Self::Night, Self::Sun];

    /// Its name in the style sheets.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Day => "day",
            Self::Night => "night",
            Self::Sun => "sun",
        }
    }
}

/// Settings of this device.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Preferences {
    /// Units of everything shown.
    #[serde(default)]
    pub units: Units,
    /// Light chosen. None: as the device is set.
    #[serde(default)]
    pub light: Option<Light>,
    /// The plan that was open last.
    #[serde(default)]
    pub open: Option<PlanId>,
    /// Who held this phone when something was logged last.
    #[serde(default)]
    pub teller: Option<CrewId>,
    /// The made-up supper, while it is there.
    #[serde(default)]
    pub sample: Option<PlanId>,
}

impl Preferences {
    /// What is guessed at the first start.
    #[must_use]
    pub fn first(locale: &str) -> Self {
        Self {
            units: Units::usual_in(locale),
            light: None,
            open: None,
            teller: None,
            sample: None,
        }
    }
}

/// The device's record.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Device {
    /// The number of this copy of the app, in hexadecimal, made once.
    pub replica: String,
    /// Settings.
    pub preferences: Preferences,
}

impl Device {
    /// A record for a new copy.
    #[must_use]
    pub fn new(replica: ReplicaId, preferences: Preferences) -> Self {
        Self {
            replica: replica.to_string(),
            preferences,
        }
    }

    /// The number of this copy; none where the record does not hold one.
    #[must_use]
    pub fn replica(&self) -> Option<ReplicaId> {
        u64::from_str_radix(&self.replica, 16)
            .ok()
            .map(ReplicaId::new)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_replica_is_read_as_it_was_written() {
        let replica = ReplicaId::new(0x00fe_ed00_0000_0007);
        let device = Device::new(replica, Preferences::first("en-GB"));
        let text = serde_json::to_string(&device).expect("json");
        let read: Device = serde_json::from_str(&text).expect("a record");
        assert_eq!(read.replica(), Some(replica));
        assert_eq!(read, device);
    }

    #[test]
    fn settings_of_an_older_version_are_filled_up() {
        let read: Preferences = serde_json::from_str("{}").expect("settings");
        assert_eq!(read, Preferences::first("en-GB"));
    }
}
