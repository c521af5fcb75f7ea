//! The gathering: when it is served, who comes, how much they eat, and where it happens.

use crate::units::{Length, Mass, Moment, Temperature};
use chrono::{DateTime, NaiveDateTime, TimeDelta};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The serving moment as it was chosen: on the local clock, with the zone and its offset at that moment.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Serving {
    /// On the clock on the wall.
    pub local: NaiveDateTime,
    /// Name of the zone in the tz database, such as `Europe/London`.
    pub zone: String,
    /// Seconds by which that clock is ahead of UTC at that moment, as it was when chosen; −50,400 to 50,400.
    pub offset_seconds: i32,
}

impl Serving {
    /// The serving moment in UTC.
    #[must_use]
    pub fn moment(&self) -> Moment {
        Moment::from_unix_seconds(self.local.and_utc().timestamp() - i64::from(self.offset_seconds))
    }
}

/// A change of a zone's offset.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ZoneChange {
    /// The new offset holds from this moment on.
    pub from: Moment,
    /// Seconds ahead of UTC.
    pub offset_seconds: i32,
}

/// The local clock around a plan, as the device knows it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Zone {
    /// Seconds ahead of UTC before the first change.
    pub offset_seconds: i32,
    /// Changes in rising order.
    pub changes: Vec<ZoneChange>,
}

impl Zone {
    /// A zone that keeps one offset, in seconds ahead of UTC.
    #[must_use]
    pub const fn fixed(offset_seconds: i32) -> Self {
        Self {
            offset_seconds,
            changes: Vec::new(),
        }
    }

    /// Seconds ahead of UTC at a moment.
    #[must_use]
    pub fn offset_seconds_at(&self, moment: Moment) -> i32 {
        let changed = self
            .changes
            .iter()
            .rev()
            .find(|change| change.from <= moment);
        changed.map_or(self.offset_seconds, |change| change.offset_seconds)
    }

    /// The clock on the wall at a moment; the ends of the calendar stand in for moments beyond it.
    #[must_use]
    pub fn local(&self, moment: Moment) -> NaiveDateTime {
        let seconds = moment
            .unix_seconds()
            .saturating_add(i64::from(self.offset_seconds_at(moment)));
        let end = if seconds < 0 {
            NaiveDateTime::MIN
        } else {
            NaiveDateTime::MAX
        };
        TimeDelta::try_seconds(seconds)
            .and_then(|since| DateTime::UNIX_EPOCH.naive_utc().checked_add_signed(since))
            .unwrap_or(end)
    }
}

/// Who comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Guests {
    /// Grown eaters.
    pub grown: u32,
    /// Small eaters: children.
    pub small: u32,
    /// Of the grown, so many eat a quarter more.
    #[serde(default)]
    pub hearty: u32,
    /// Of the grown, so many eat a quarter less.
    #[serde(default)]
    pub light: u32,
}

impl Default for Guests {
    fn default() -> Self {
        Self::of(6, 0)
    }
}

/// How much more a hearty eater takes, and how much less a light one. Common practice.
const MORE_OR_LESS: f64 = 0.25;

impl Guests {
    /// So many grown and so many small, of usual appetite.
    #[must_use]
    pub const fn of(grown: u32, small: u32) -> Self {
        Self {
            grown,
            small,
            hearty: 0,
            light: 0,
        }
    }

    /// The grown counted by what they eat: a hearty one for a quarter more, a light one for a quarter less. More hearty
    /// and light ones than there are grown count as many as there are, the hearty first.
    #[must_use]
    pub fn grown_by_appetite(self) -> f64 {
        let hearty = self.hearty.min(self.grown);
        let light = self.light.min(self.grown - hearty);
        f64::from(self.grown) + MORE_OR_LESS * (f64::from(hearty) - f64::from(light))
    }

    /// Everybody at the table.
    #[must_use]
    pub const fn count(self) -> u32 {
        self.grown.saturating_add(self.small)
    }
}

/// Cooked food wanted on the plate.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Appetite {
    /// For each grown eater, all dishes with meat together.
    pub grown: Mass,
    /// For each small eater.
    pub small: Mass,
    /// Wanted over.
    pub leftovers: Mass,
}

impl Default for Appetite {
    /// 200 g of cooked meat a grown head and 100 g a small one (common practice: 150 to 200 g with sides; 300 g where
    /// meat is the meal), nothing over.
    fn default() -> Self {
        Self {
            grown: Mass::from_grams(200.0),
            small: Mass::from_grams(100.0),
            leftovers: Mass::ZERO,
        }
    }
}

impl Appetite {
    /// Cooked food wanted in all.
    #[must_use]
    pub fn wanted(&self, guests: Guests) -> Mass {
        self.grown * guests.grown_by_appetite()
            + self.small * f64::from(guests.small)
            + self.leftovers
    }
}

/// Where it happens, and the weather expected there.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Place {
    /// Height above the sea, −430 to 5,000 m.
    pub altitude: Length,
    /// Air outside while it cooks, −40 to 50 °C.
    pub air: Temperature,
    /// Relative humidity outside, 0 to 1.
    pub relative_humidity: f64,
    /// Wind at the cooker, m/s, 0 to 25.
    pub wind_metres_per_second: f64,
}

impl Default for Place {
    /// A mild day at the sea.
    fn default() -> Self {
        Self {
            altitude: Length::ZERO,
            air: Temperature::from_celsius(15.0),
            relative_humidity: 0.6,
            wind_metres_per_second: 2.0,
        }
    }
}

/// Who is served. Serving the public brings in local codes and licences.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Audience {
    /// Family and friends.
    #[default]
    Household,
    /// Sold or served to the public.
    Public,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_night_with_a_clock_change_keeps_elapsed_time() {
        // Europe/London, 28 March 2027: at 01:00 UTC the clock goes from 01:00 to 02:00 (tz database).
        let change = ZoneChange {
            from: Moment::from_unix_seconds(1_806_195_600),
            offset_seconds: 3600,
        };
        let zone = Zone {
            offset_seconds: 0,
            changes: vec![change],
        };
        let before = zone.local(Moment::from_unix_seconds(1_806_195_599));
        let after = zone.local(Moment::from_unix_seconds(1_806_195_600));
        assert_eq!(before.to_string(), "2027-03-28 00:59:59");
        assert_eq!(after.to_string(), "2027-03-28 02:00:00");
    }

    #[test]
    fn serving_is_reckoned_from_the_offset_of_its_day() {
        let local = "2026-09-12T18:00:00".parse().expect("a date and time");
        let serving = Serving {
            local,
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        };
        assert_eq!(
            Zone::fixed(0).local(serving.moment()).to_string(),
            "2026-09-12 17:00:00"
        );
    }

    #[test]
    fn more_guests_never_want_less() {
        let appetite = Appetite::default();
        let few = appetite.wanted(Guests::of(4, 1));
        let many = appetite.wanted(Guests::of(4, 2));
        assert!(many > few);
    }

    #[test]
    fn hearty_ones_want_more_and_light_ones_less_but_nobody_counts_twice() {
        let of = |hearty, light| {
            let guests = Guests {
                hearty,
                light,
                ..Guests::of(4, 0)
            };
            guests.grown_by_appetite()
        };
        assert_eq!(of(0, 0), 4.0);
        assert_eq!(of(2, 1), 4.25);
        assert_eq!(of(9, 9), 5.0);
    }
}
