//! The time axis of the sheet: elapsed hours since its start, with the local clock written along it.

use chrono::{NaiveDateTime, Timelike};
use cook_model::plan::Zone;
use cook_model::units::Moment;

const HOUR: i64 = 3600;

/// A stretch of time that begins and ends on a full hour of the local clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Axis {
    /// Its start.
    pub start: Moment,
    /// Its end, at least an hour after the start.
    pub end: Moment,
}

/// A mark on the axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tick {
    /// Hours since the start of the axis.
    pub at: f64,
    /// The clock on the wall there.
    pub local: NaiveDateTime,
    /// The first one, or midnight: the day is written too.
    pub names_day: bool,
    /// Seconds by which the clock is put on (or back, when negative) just here.
    pub clock_moves: Option<i32>,
}

impl Axis {
    /// The shortest axis of full local hours that holds both moments.
    #[must_use]
    pub fn around(first: Moment, last: Moment, zone: &Zone) -> Self {
        let start = hour_before(first, zone);
        let end = hour_from(last.max(first), zone);
        let least = Moment::from_unix_seconds(start.unix_seconds().saturating_add(HOUR));
        Self {
            start,
            end: end.max(least),
        }
    }

    /// Its length in hours.
    #[must_use]
    pub fn hours(self) -> f64 {
        (self.end - self.start).hours()
    }

    /// Where a moment lies: hours since the start, negative before it.
    #[must_use]
    pub fn at(self, moment: Moment) -> f64 {
        (moment - self.start).hours()
    }

    /// Where a moment lies, moments outside put at the nearer end.
    #[must_use]
    pub fn within(self, moment: Moment) -> f64 {
        self.at(moment).clamp(0.0, self.hours())
    }

    /// Whether a moment lies on the axis.
    #[must_use]
    pub fn holds(self, moment: Moment) -> bool {
        self.start <= moment && moment <= self.end
    }

    /// Full hours of the local clock along the axis, and the places where that clock is changed.
    #[must_use]
    pub fn ticks(self, zone: &Zone) -> Vec<Tick> {
        let mut ticks = Vec::new();
        let mut next = hour_from(self.start, zone);
        while next <= self.end {
            ticks.push(self.tick(next, zone, ticks.is_empty()));
            let full = hour_from(second_after(next), zone);
            let changes = zone.changes.iter().map(|change| change.from);
            let between = changes.filter(|from| next < *from && *from < full).min();
            next = between.unwrap_or(full);
        }
        ticks
    }

    fn tick(self, moment: Moment, zone: &Zone, first: bool) -> Tick {
        let local = zone.local(moment);
        let just_before = Moment::from_unix_seconds(moment.unix_seconds() - 1);
        let moved = zone.offset_seconds_at(moment) - zone.offset_seconds_at(just_before);
        Tick {
            at: self.at(moment),
            local,
            names_day: first || (local.hour() == 0 && local.minute() == 0),
            clock_moves: (moved != 0).then_some(moved),
        }
    }
}

const fn second_after(moment: Moment) -> Moment {
    Moment::from_unix_seconds(moment.unix_seconds().saturating_add(1))
}

/// Seconds since the last full hour of the local clock.
fn past_the_hour(moment: Moment, zone: &Zone) -> i64 {
    let local = moment
        .unix_seconds()
        .saturating_add(i64::from(zone.offset_seconds_at(moment)));
    local.rem_euclid(HOUR)
}

/// The last full local hour at or before a moment.
#[must_use]
pub fn hour_before(moment: Moment, zone: &Zone) -> Moment {
    Moment::from_unix_seconds(
        moment
            .unix_seconds()
            .saturating_sub(past_the_hour(moment, zone)),
    )
}

/// The first full local hour at or after a moment.
fn hour_from(moment: Moment, zone: &Zone) -> Moment {
    match past_the_hour(moment, zone) {
        0 => moment,
        past => Moment::from_unix_seconds(moment.unix_seconds().saturating_add(HOUR - past)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::plan::ZoneChange;
    use cook_model::units::TimeSpan;

    fn moment(utc: &str) -> Moment {
        let utc: NaiveDateTime = utc.parse().expect("a date and time");
        Moment::from_unix_seconds(utc.and_utc().timestamp())
    }

    fn labels(axis: Axis, zone: &Zone) -> Vec<String> {
        let ticks = axis.ticks(zone);
        ticks
            .iter()
            .map(|tick| format!("{:.2} {}", tick.at, tick.local.format("%H:%M")))
            .collect()
    }

    #[test]
    fn an_axis_begins_and_ends_on_full_local_hours() {
        let zone = Zone::fixed(3600);
        let axis = Axis::around(
            moment("2026-09-11T22:20:00"),
            moment("2026-09-12T17:40:00"),
            &zone,
        );
        assert_eq!(axis.start, moment("2026-09-11T22:00:00"));
        assert_eq!(axis.end, moment("2026-09-12T18:00:00"));
        let ticks = axis.ticks(&zone);
        assert_eq!(ticks.len(), 21);
        assert!(ticks[0].names_day);
        let midnights = ticks.iter().skip(1).filter(|tick| tick.names_day);
        assert_eq!(midnights.map(|tick| tick.at).collect::<Vec<_>>(), [1.0]);
    }

    #[test]
    fn a_zone_off_the_full_hour_has_its_ticks_on_its_own_hours() {
        // India: 5 h 30 min ahead of UTC (tz database).
        let zone = Zone::fixed(19_800);
        let axis = Axis::around(
            moment("2026-09-12T06:00:00"),
            moment("2026-09-12T08:00:00"),
            &zone,
        );
        assert_eq!(
            labels(axis, &zone),
            ["0.00 11:00", "1.00 12:00", "2.00 13:00", "3.00 14:00"]
        );
    }

    #[test]
    fn an_hour_that_does_not_exist_has_no_tick_and_no_length() {
        // Europe/London, 28 March 2027: 01:00 UTC goes from 01:00 to 02:00 local (tz database).
        let zone = Zone {
            offset_seconds: 0,
            changes: vec![ZoneChange {
                from: moment("2027-03-28T01:00:00"),
                offset_seconds: 3600,
            }],
        };
        let axis = Axis::around(
            moment("2027-03-28T00:00:00"),
            moment("2027-03-28T03:00:00"),
            &zone,
        );
        assert_eq!(
            labels(axis, &zone),
            ["0.00 00:00", "1.00 02:00", "2.00 03:00", "3.00 04:00"]
        );
        assert_eq!(axis.ticks(&zone)[1].clock_moves, Some(3600));
        assert_eq!(axis.hours(), 3.0);
    }

    #[test]
    fn an_hour_that_comes_twice_has_two_ticks() {
        // Europe/London, 25 October 2026: 01:00 UTC goes from 02:00 back to 01:00 local (tz database).
        let zone = Zone {
            offset_seconds: 3600,
            changes: vec![ZoneChange {
                from: moment("2026-10-25T01:00:00"),
                offset_seconds: 0,
            }],
        };
        let axis = Axis::around(
            moment("2026-10-24T23:00:00"),
            moment("2026-10-25T02:00:00"),
            &zone,
        );
        assert_eq!(
            labels(axis, &zone),
            ["0.00 00:00", "1.00 01:00", "2.00 01:00", "3.00 02:00"]
        );
        let moves: Vec<_> = axis
            .ticks(&zone)
            .iter()
            .map(|tick| tick.clock_moves)
            .collect();
        assert_eq!(moves, [None, None, Some(-3600), None]);
    }

    #[test]
    fn a_change_by_half_an_hour_shifts_the_ticks() {
        // Lord Howe Island moves its clock by 30 minutes: 4 October 2026, 15:30 UTC the day before (tz database).
        let zone = Zone {
            offset_seconds: 37_800,
            changes: vec![ZoneChange {
                from: moment("2026-10-03T15:30:00"),
                offset_seconds: 39_600,
            }],
        };
        let axis = Axis::around(
            moment("2026-10-03T14:30:00"),
            moment("2026-10-03T17:00:00"),
            &zone,
        );
        assert_eq!(
            labels(axis, &zone),
            ["0.00 01:00", "1.00 02:30", "1.50 03:00", "2.50 04:00"]
        );
    }

    #[test]
    fn an_axis_is_never_shorter_than_an_hour() {
        let zone = Zone::fixed(0);
        let noon = moment("2026-09-12T12:00:00");
        let axis = Axis::around(noon, noon - TimeSpan::from_hours(2.0), &zone);
        assert_eq!(axis.hours(), 1.0);
        assert!(axis.holds(noon));
        assert_eq!(axis.within(noon + TimeSpan::from_hours(9.0)), 1.0);
    }
}
