//! Times of day on a clock of twelve or twenty-four hours, and spans of time.

use super::NO_BREAK;
use chrono::{NaiveTime, Timelike};
use cook_model::units::TimeSpan;
use std::fmt;

/// How many hours the clock on the wall has.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ClockStyle {
    /// `14:40`.
    #[default]
    Hours24,
    /// `2:40 pm`.
    Hours12,
}

impl ClockStyle {
    /// A time of day.
    #[must_use]
    pub fn time(self, time: NaiveTime) -> String {
        match self {
            Self::Hours24 => time.format("%H:%M").to_string(),
            Self::Hours12 => format!("{}{NO_BREAK}{}", time.format("%-I:%M"), half(time)),
        }
    }

    /// A time of day without its half of the day, for large print: `14:40`, `2:40`.
    #[must_use]
    pub fn digits(self, time: NaiveTime) -> String {
        match self {
            Self::Hours24 => time.format("%H:%M").to_string(),
            Self::Hours12 => time.format("%-I:%M").to_string(),
        }
    }

    /// The half of the day, where the clock needs it said.
    #[must_use]
    pub fn half_of_day(self, time: NaiveTime) -> Option<&'static str> {
        (self == Self::Hours12).then(|| half(time))
    }

    /// A full hour on an axis: `14`, `2 pm`.
    #[must_use]
    pub fn hour(self, time: NaiveTime) -> String {
        match self {
            Self::Hours24 => time.format("%H").to_string(),
            Self::Hours12 => format!("{}{NO_BREAK}{}", time.format("%-I"), half(time)),
        }
    }

    /// Two times with a dash; the half of the day once where both share it.
    #[must_use]
    pub fn from_to(self, from: NaiveTime, to: NaiveTime) -> String {
        let first = if self.half_of_day(from) == self.half_of_day(to) {
            self.digits(from)
        } else {
            self.time(from)
        };
        format!("{first}–{}", self.time(to))
    }
}

fn half(time: NaiveTime) -> &'static str {
    if time.hour() < 12 { "am" } else { "pm" }
}

/// A span of time in words: whole minutes to two hours, then hours with five minutes, days from two on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span(pub TimeSpan);

impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let minutes = self.0.minutes().abs().round();
        if minutes < 60.0 {
            return write!(f, "{minutes}{NO_BREAK}min");
        }
        if minutes >= 2880.0 {
            return write!(f, "{}{NO_BREAK}days", (minutes / 1440.0).round());
        }
        let minutes = if minutes > 120.0 {
            (minutes / 5.0).round() * 5.0
        } else {
            minutes
        };
        let (hours, rest) = ((minutes / 60.0).floor(), minutes % 60.0);
        write!(f, "{hours}{NO_BREAK}h")?;
        if rest > 0.0 {
            write!(f, "{NO_BREAK}{rest:02}")?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn time(hour: u32, minute: u32) -> NaiveTime {
        NaiveTime::from_hms_opt(hour, minute, 0).expect("a time of day")
    }

    #[test]
    fn midnight_and_noon_on_twelve_hours() {
        let style = ClockStyle::Hours12;
        assert_eq!(style.time(time(0, 5)), "12:05\u{a0}am");
        assert_eq!(style.time(time(12, 0)), "12:00\u{a0}pm");
        assert_eq!(style.hour(time(15, 0)), "3\u{a0}pm");
    }

    #[test]
    fn the_half_of_the_day_is_said_once() {
        let style = ClockStyle::Hours12;
        assert_eq!(
            style.from_to(time(14, 0), time(17, 30)),
            "2:00–5:30\u{a0}pm"
        );
        assert_eq!(
            ClockStyle::Hours24.from_to(time(0, 0), time(1, 30)),
            "00:00–01:30"
        );
    }

    #[test]
    fn spans_grow_coarser_as_they_grow() {
        let say = |minutes: f64| Span(TimeSpan::from_minutes(minutes)).to_string();
        assert_eq!(say(45.2), "45\u{a0}min");
        assert_eq!(say(60.0), "1\u{a0}h");
        assert_eq!(say(65.0), "1\u{a0}h\u{a0}05");
        assert_eq!(say(163.0), "2\u{a0}h\u{a0}45");
        assert_eq!(say(179.0), "3\u{a0}h");
        assert_eq!(say(4300.0), "3\u{a0}days");
    }
}
