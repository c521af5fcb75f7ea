//! A serving time from its fields: on the local clock of the plan's zone, with what that clock makes of it.

use crate::device::zone::{Meaning, after_gap};
use chrono::{NaiveDate, NaiveDateTime, NaiveTime};
use cook_model::plan::Serving;

/// What is typed, and what it means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Typed {
    /// One serving moment.
    Clear(Serving),
    /// The clocks are put on over it; the same moment by the new clock.
    Skipped {
        /// As typed.
        local: NaiveDateTime,
        /// What was perhaps meant.
        instead: Serving,
    },
    /// The clocks are put back over it: the earlier and the later of the two.
    Twice([Serving; 2]),
}

/// Reads a date and a time of day in a zone.
pub(super) fn typed(local: NaiveDateTime, zone: &str, meaning: &Meaning) -> Typed {
    let serving = |local, offset_seconds| Serving {
        local,
        zone: zone.to_owned(),
        offset_seconds,
    };
    match *meaning {
        Meaning::Once(offset) => Typed::Clear(serving(local, offset)),
        Meaning::Never { before, after } => Typed::Skipped {
            local,
            instead: serving(after_gap(local, before, after), after),
        },
        Meaning::Twice { first, second } => {
            Typed::Twice([serving(local, first), serving(local, second)])
        }
    }
}

/// A date as a browser writes it.
pub(super) fn read_date(text: &str) -> Option<NaiveDate> {
    text.parse().ok()
}

/// A date and a time put together.
pub(super) fn together(date: NaiveDate, time: NaiveTime) -> NaiveDateTime {
    date.and_time(time)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_skipped_time_offers_the_same_moment_on_the_new_clock() {
        // Europe/London, 28 March 2027 (tz database): 01:30 does not exist.
        let local = "2027-03-28T01:30:00".parse().expect("a date and time");
        let meaning = Meaning::Never {
            before: 0,
            after: 3600,
        };
        let Typed::Skipped { instead, .. } = typed(local, "Europe/London", &meaning) else {
            panic!("it does not exist");
        };
        assert_eq!(instead.local.to_string(), "2027-03-28 02:30:00");
        assert_eq!(instead.moment().unix_seconds(), 1_806_197_400);
    }

    #[test]
    fn a_time_that_comes_twice_is_two_moments_an_hour_apart() {
        let local = "2027-10-31T01:30:00".parse().expect("a date and time");
        let meaning = Meaning::Twice {
            first: 3600,
            second: 0,
        };
        let Typed::Twice([first, second]) = typed(local, "Europe/London", &meaning) else {
            panic!("it comes twice");
        };
        assert_eq!((second.moment() - first.moment()).hours(), 1.0);
    }
}
