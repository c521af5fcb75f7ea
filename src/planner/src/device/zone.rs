//! The local clock: which zone the device is in, and when a zone's clocks change around a plan.

use chrono::{NaiveDateTime, TimeDelta};
use cook_model::plan::{Serving, Zone, ZoneChange};
use cook_model::units::{Moment, TimeSpan};
use js_sys::{Array, Date, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};

/// How far ahead of serving a plan looks: thawing a turkey takes days.
const BEFORE: TimeSpan = TimeSpan::from_hours(24.0 * 14.0);
/// How far behind.
const AFTER: TimeSpan = TimeSpan::from_hours(24.0 * 3.0);
/// Zones do not change twice within this; each step is one question to the browser.
const STEP: TimeSpan = TimeSpan::from_hours(24.0);

/// The name of the device's zone in the tz database; `UTC` where the browser does not say.
#[must_use]
pub fn device_zone_name() -> String {
    let format = js_sys::Intl::DateTimeFormat::new(&Array::new(), &Object::new());
    Reflect::get(&format.resolved_options(), &"timeZone".into())
        .ok()
        .and_then(|name| name.as_string())
        .unwrap_or_else(|| "UTC".to_owned())
}

/// The local clock around a serving moment, in the zone of the plan.
#[must_use]
pub fn around(serving: &Serving) -> Zone {
    let clock = ZoneClock::new(&serving.zone);
    let moment = serving.moment();
    changes(moment - BEFORE, moment + AFTER, |at| {
        clock.offset_seconds(at)
    })
}

/// A zone's clock, as the browser knows it.
pub struct ZoneClock {
    format: Option<js_sys::Intl::DateTimeFormat>,
}

impl ZoneClock {
    /// The clock of a zone by its name. Where the browser does not know the zone, the device's own clock stands in.
    #[must_use]
    pub fn new(zone: &str) -> Self {
        let options = Object::new();
        let wanted = [
            ("timeZone", zone),
            ("hourCycle", "h23"),
            ("year", "numeric"),
            ("month", "numeric"),
            ("day", "numeric"),
            ("hour", "numeric"),
            ("minute", "numeric"),
            ("second", "numeric"),
        ];
        for (name, value) in wanted {
            // A fresh plain object takes every property.
            Reflect::set(&options, &name.into(), &value.into()).ok();
        }
        let locales = Array::of1(&"en-US".into());
        Self {
            format: date_time_format(&locales, &options),
        }
    }

    /// Seconds ahead of UTC at a moment.
    #[must_use]
    pub fn offset_seconds(&self, moment: Moment) -> i32 {
        self.format
            .as_ref()
            .and_then(|format| named_offset(format, moment))
            .unwrap_or_else(|| device_offset(moment))
    }
}

/// Makes a format; none where the browser refuses the zone.
fn date_time_format(locales: &Array, options: &Object) -> Option<js_sys::Intl::DateTimeFormat> {
    let intl = Reflect::get(&js_sys::global(), &"Intl".into()).ok()?;
    let make: js_sys::Function = Reflect::get(&intl, &"DateTimeFormat".into())
        .ok()?
        .dyn_into()
        .ok()?;
    let arguments = Array::of2(locales, options);
    Reflect::construct(&make, &arguments).ok()?.dyn_into().ok()
}

fn named_offset(format: &js_sys::Intl::DateTimeFormat, moment: Moment) -> Option<i32> {
    let parts = format.format_to_parts(&date(moment));
    let mut fields = [0_u32; 6];
    for part in parts.iter() {
        let text = |name: &str| {
            Reflect::get(&part, &JsValue::from_str(name))
                .ok()?
                .as_string()
        };
        let at = match text("type")?.as_str() {
            "year" => 0,
            "month" => 1,
            "day" => 2,
            "hour" => 3,
            "minute" => 4,
            "second" => 5,
            _ => continue,
        };
        fields[at] = text("value")?.parse().ok()?;
    }
    let [year, month, day, hour, minute, second] = fields;
    let local = chrono::NaiveDate::from_ymd_opt(i32::try_from(year).ok()?, month, day)?
        .and_hms_opt(hour % 24, minute, second)?;
    i32::try_from(local.and_utc().timestamp() - moment.unix_seconds()).ok()
}

fn device_offset(moment: Moment) -> i32 {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "at most fourteen hours either way"
    )]
    let seconds = (-date(moment).get_timezone_offset() * 60.0).round() as i32;
    seconds
}

fn date(moment: Moment) -> Date {
    #[expect(
        clippy::cast_precision_loss,
        reason = "seconds of any calendar are far below 2^53"
    )]
    let milliseconds = moment.unix_seconds() as f64 * 1000.0;
    Date::new(&JsValue::from_f64(milliseconds))
}

/// The changes of an offset between two moments, found to the second.
fn changes(from: Moment, to: Moment, offset_at: impl Fn(Moment) -> i32) -> Zone {
    let mut zone = Zone::fixed(offset_at(from));
    let (mut low, mut before) = (from, zone.offset_seconds);
    while low < to {
        let high = low + STEP;
        let after = offset_at(high);
        if after != before {
            let change = first_with(low, high, |at| offset_at(at) != before);
            zone.changes.push(ZoneChange {
                from: change,
                offset_seconds: after,
            });
        }
        (low, before) = (high, after);
    }
    zone
}

/// The first second at which something holds, given that it does not at `low` and does at `high`.
fn first_with(mut low: Moment, mut high: Moment, holds: impl Fn(Moment) -> bool) -> Moment {
    while high.unix_seconds() - low.unix_seconds() > 1 {
        let middle = Moment::from_unix_seconds(low.unix_seconds().midpoint(high.unix_seconds()));
        if holds(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

/// What a local date and time means in a zone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// One moment, at this offset in seconds ahead of UTC.
    Once(i32),
    /// None: the clocks are put on over it. The same time read with the offset before and after the change.
    Never {
        /// Offset before the change.
        before: i32,
        /// Offset after.
        after: i32,
    },
    /// Two moments: the clocks are put back over it.
    Twice {
        /// Offset of the earlier moment.
        first: i32,
        /// Offset of the later moment.
        second: i32,
    },
}

/// Asks a zone's clock what a local date and time means.
#[must_use]
pub fn meaning(local: NaiveDateTime, offset_at: impl Fn(Moment) -> i32) -> Meaning {
    let utc =
        |offset: i32| Moment::from_unix_seconds(local.and_utc().timestamp() - i64::from(offset));
    let day = TimeSpan::from_hours(24.0);
    let before = offset_at(utc(0) - day);
    let after = offset_at(utc(0) + day);
    let holds = |offset: i32| offset_at(utc(offset)) == offset;
    match (holds(before), holds(after)) {
        (true, true) if before != after => Meaning::Twice {
            first: before,
            second: after,
        },
        (true, _) => Meaning::Once(before),
        (false, true) => Meaning::Once(after),
        (false, false) => Meaning::Never { before, after },
    }
}

/// The first local time after a gap in the clock, for a time inside it read with the offset before the change.
#[must_use]
pub fn after_gap(local: NaiveDateTime, before: i32, after: i32) -> NaiveDateTime {
    local + TimeDelta::seconds(i64::from(after - before))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(utc: &str) -> Moment {
        let utc: NaiveDateTime = utc.parse().expect("a date and time");
        Moment::from_unix_seconds(utc.and_utc().timestamp())
    }

    fn local(text: &str) -> NaiveDateTime {
        text.parse().expect("a date and time")
    }

    /// Europe/London in 2027 (tz database): summer time from 28 March to 31 October, 01:00 UTC.
    fn london(moment: Moment) -> i32 {
        let summer = at("2027-03-28T01:00:00") <= moment && moment < at("2027-10-31T01:00:00");
        if summer { 3600 } else { 0 }
    }

    #[test]
    fn changes_are_found_to_the_second() {
        let zone = changes(at("2027-03-15T12:34:56"), at("2027-04-03T00:00:00"), london);
        assert_eq!(zone.offset_seconds, 0);
        assert_eq!(
            zone.changes,
            [ZoneChange {
                from: at("2027-03-28T01:00:00"),
                offset_seconds: 3600
            }]
        );
        let none = changes(at("2027-06-01T00:00:00"), at("2027-06-20T00:00:00"), london);
        assert_eq!(none, Zone::fixed(3600));
    }

    #[test]
    fn an_ordinary_time_means_one_moment() {
        assert_eq!(
            meaning(local("2027-06-05T18:00:00"), london),
            Meaning::Once(3600)
        );
        assert_eq!(
            meaning(local("2027-12-05T18:00:00"), london),
            Meaning::Once(0)
        );
        assert_eq!(
            meaning(local("2027-03-28T00:59:59"), london),
            Meaning::Once(0)
        );
        assert_eq!(
            meaning(local("2027-03-28T02:00:00"), london),
            Meaning::Once(3600)
        );
    }

    #[test]
    fn a_time_that_the_clocks_skip_means_none() {
        let skipped = local("2027-03-28T01:30:00");
        let found = meaning(skipped, london);
        assert_eq!(
            found,
            Meaning::Never {
                before: 0,
                after: 3600
            }
        );
        assert_eq!(after_gap(skipped, 0, 3600), local("2027-03-28T02:30:00"));
    }

    #[test]
    fn a_time_that_comes_twice_means_two() {
        let twice = Meaning::Twice {
            first: 3600,
            second: 0,
        };
        assert_eq!(meaning(local("2027-10-31T01:30:00"), london), twice);
        assert_eq!(
            meaning(local("2027-10-31T02:00:00"), london),
            Meaning::Once(0)
        );
    }
}
