//! When and by whom an entry is told: now by default, five minutes ago in one tap, or any time of the clock.

use crate::device::clock::now;
use crate::store::Store;
use chrono::{Days, NaiveTime};
use cook_model::handover::identity::CrewId;
use cook_model::plan::Zone;
use cook_model::units::{Moment, TimeSpan};
use leptos::prelude::*;

/// A moment ago.
const FIVE_MINUTES: TimeSpan = TimeSpan::from_minutes(5.0);
/// A time of the clock that lies so little ahead is meant ahead: clocks differ. Later ones were yesterday's.
const AHEAD: TimeSpan = TimeSpan::from_minutes(10.0);

/// When something happened.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum When {
    /// Just now.
    #[default]
    Now,
    /// Five minutes ago.
    FiveAgo,
    /// The last time that the clock showed this.
    At(NaiveTime),
}

/// The last time, or just ahead, at which a local clock showed a time.
#[must_use]
pub fn last_at(time: NaiveTime, now: Moment, zone: &Zone) -> Moment {
    let today = zone.local(now).date();
    let days = [
        today.succ_opt(),
        Some(today),
        today.checked_sub_days(Days::new(1)),
    ];
    let moments = days.into_iter().flatten().map(|day| {
        let as_utc = Moment::from_unix_seconds(day.and_time(time).and_utc().timestamp());
        // The offset of the place just there: once by the present offset, then by its own.
        let offset = |at: Moment| TimeSpan::from_seconds(f64::from(zone.offset_seconds_at(at)));
        let about = as_utc - offset(now);
        as_utc - offset(about)
    });
    let mut past = moments.filter(|moment| *moment <= now + AHEAD);
    past.next().unwrap_or(now)
}

/// The choice for the next entry.
#[derive(Clone, Copy)]
pub struct Telling {
    store: Store,
    /// When.
    pub when: RwSignal<When>,
    /// Who.
    pub who: Memo<Option<CrewId>>,
}

impl Telling {
    /// Now, by whoever has told the last one.
    #[must_use]
    pub fn new(store: Store) -> Self {
        let who = Memo::new(move |_| {
            let teller = store.preferences().with(|preferences| preferences.teller);
            store.plan.with(|plan| {
                let crew = &plan.as_ref()?.crew;
                teller.filter(|teller| crew.contains_key(teller))
            })
        });
        Self {
            store,
            when: RwSignal::new(When::Now),
            who,
        }
    }

    /// Back to now.
    pub fn reset(self) {
        self.when.set(When::Now);
    }

    /// Somebody else holds the phone.
    pub fn hand_to(self, who: Option<CrewId>) {
        self.store
            .set_preferences(|preferences| preferences.teller = who);
    }

    /// When and by whom.
    #[must_use]
    pub fn told(self) -> (Moment, Option<CrewId>) {
        let now = now();
        let at = match self.when.get_untracked() {
            When::Now => now,
            When::FiveAgo => now - FIVE_MINUTES,
            When::At(time) => last_at(time, now, &self.store.zone.get_untracked()),
        };
        (at, self.who.get_untracked())
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::run_sheet::sample::at;
    use super::*;
    use cook_model::plan::ZoneChange;

    fn clock(hour: u32, minute: u32) -> NaiveTime {
        NaiveTime::from_hms_opt(hour, minute, 0).expect("a time")
    }

    #[test]
    fn a_time_of_the_clock_is_the_last_one_that_was() {
        let zone = Zone::fixed(3600);
        let now = at("2026-09-12T00:20:00");
        assert_eq!(last_at(clock(1, 5), now, &zone), at("2026-09-12T00:05:00"));
        assert_eq!(
            last_at(clock(23, 50), now, &zone),
            at("2026-09-11T22:50:00")
        );
        assert_eq!(last_at(clock(1, 25), now, &zone), at("2026-09-12T00:25:00"));
        assert_eq!(last_at(clock(2, 0), now, &zone), at("2026-09-11T01:00:00"));
    }

    #[test]
    fn a_time_before_the_clock_was_put_back_is_found() {
        // Summer time ends on 25 October 2026 at 01:00 UTC.
        let mut zone = Zone::fixed(3600);
        zone.changes.push(ZoneChange {
            from: at("2026-10-25T01:00:00"),
            offset_seconds: 0,
        });
        let now = at("2026-10-25T05:00:00");
        assert_eq!(last_at(clock(0, 30), now, &zone), at("2026-10-24T23:30:00"));
        assert_eq!(last_at(clock(4, 0), now, &zone), at("2026-10-25T04:00:00"));
    }
}
