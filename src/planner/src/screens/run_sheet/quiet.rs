//! Quiet hours laid along the axis.

use super::axis::Axis;
use chrono::{Days, NaiveDateTime};
use cook_model::plan::{QuietHours, Zone};
use cook_model::units::Moment;

/// The stretches of the axis in which somebody is not woken, in order. Hours that begin and end at the same time of day
/// are quiet all day long.
#[must_use]
pub fn quiet_stretches(quiet: QuietHours, axis: Axis, zone: &Zone) -> Vec<(Moment, Moment)> {
    let mut stretches: Vec<(Moment, Moment)> = Vec::new();
    for (start, end) in evenly_running(axis, zone) {
        let offset = i64::from(zone.offset_seconds_at(start));
        let (local_start, local_end) = (clock(start, offset), clock(end, offset));
        let mut day = local_start.date() - Days::new(1);
        while day <= local_end.date() {
            let last = if quiet.to > quiet.from {
                day
            } else {
                day + Days::new(1)
            };
            let from = day.and_time(quiet.from).max(local_start);
            let to = last.and_time(quiet.to).min(local_end);
            if from < to {
                let (from, to) = (moment(from, offset), moment(to, offset));
                match stretches.last_mut() {
                    Some(before) if before.1 == from => before.1 = to,
                    _ => stretches.push((from, to)),
                }
            }
            day = day + Days::new(1);
        }
    }
    stretches
}

/// The axis cut at every change of the clock.
fn evenly_running(axis: Axis, zone: &Zone) -> Vec<(Moment, Moment)> {
    let changes = zone.changes.iter().map(|change| change.from);
    let inside = changes.filter(|from| axis.start < *from && *from < axis.end);
    let mut parts = Vec::new();
    let mut start = axis.start;
    for change in inside {
        parts.push((start, change));
        start = change;
    }
    parts.push((start, axis.end));
    parts
}

fn clock(moment: Moment, offset_seconds: i64) -> NaiveDateTime {
    Zone::fixed(0).local(Moment::from_unix_seconds(
        moment.unix_seconds().saturating_add(offset_seconds),
    ))
}

fn moment(local: NaiveDateTime, offset_seconds: i64) -> Moment {
    Moment::from_unix_seconds(local.and_utc().timestamp() - offset_seconds)
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::NaiveTime;
    use cook_model::plan::ZoneChange;

    fn at(utc: &str) -> Moment {
        moment(utc.parse().expect("a date and time"), 0)
    }

    fn hours(from: u32, to: u32) -> QuietHours {
        let time = |hour| NaiveTime::from_hms_opt(hour, 0, 0).expect("an hour of the day");
        QuietHours {
            from: time(from),
            to: time(to),
        }
    }

    fn stretches(quiet: QuietHours, from: &str, to: &str, zone: &Zone) -> Vec<(f64, f64)> {
        let axis = Axis::around(at(from), at(to), zone);
        quiet_stretches(quiet, axis, zone)
            .iter()
            .map(|(from, to)| (axis.at(*from), axis.at(*to)))
            .collect()
    }

    #[test]
    fn hours_past_midnight_are_one_stretch() {
        let zone = Zone::fixed(3600);
        let found = stretches(
            hours(22, 3),
            "2026-09-11T20:00:00",
            "2026-09-12T18:00:00",
            &zone,
        );
        assert_eq!(found, [(1.0, 6.0)]);
    }

    #[test]
    fn the_axis_cuts_them() {
        let zone = Zone::fixed(0);
        let found = stretches(
            hours(22, 8),
            "2026-09-11T23:00:00",
            "2026-09-12T23:00:00",
            &zone,
        );
        assert_eq!(found, [(0.0, 9.0), (23.0, 24.0)]);
    }

    #[test]
    fn a_night_that_loses_an_hour_is_shorter() {
        // Europe/London, 28 March 2027 (tz database): 22 to 6 lasts seven hours.
        let zone = Zone {
            offset_seconds: 0,
            changes: vec![ZoneChange {
                from: at("2027-03-28T01:00:00"),
                offset_seconds: 3600,
            }],
        };
        let found = stretches(
            hours(22, 6),
            "2027-03-27T20:00:00",
            "2027-03-28T12:00:00",
            &zone,
        );
        assert_eq!(found, [(2.0, 9.0)]);
    }

    #[test]
    fn a_night_that_gains_an_hour_is_longer() {
        // Europe/London, 25 October 2026 (tz database).
        let zone = Zone {
            offset_seconds: 3600,
            changes: vec![ZoneChange {
                from: at("2026-10-25T01:00:00"),
                offset_seconds: 0,
            }],
        };
        let found = stretches(
            hours(22, 6),
            "2026-10-24T20:00:00",
            "2026-10-25T12:00:00",
            &zone,
        );
        assert_eq!(found, [(1.0, 10.0)]);
    }

    #[test]
    fn the_same_hour_twice_is_all_day() {
        let zone = Zone::fixed(0);
        let found = stretches(
            hours(7, 7),
            "2026-09-11T20:00:00",
            "2026-09-12T18:00:00",
            &zone,
        );
        assert_eq!(found, [(0.0, 22.0)]);
    }
}
