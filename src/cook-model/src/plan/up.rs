//! Who is up when: quiet hours on the local clock.

use super::{Plan, QuietHours, Zone, in_order};
use crate::handover::identity::CrewId;
use crate::units::{Moment, TimeSpan};
use chrono::NaiveTime;

impl QuietHours {
    /// Whether a time of day falls into them. They begin on their first minute and are over on their last.
    #[must_use]
    pub fn hold(&self, clock: NaiveTime) -> bool {
        if self.from <= self.to {
            self.from <= clock && clock < self.to
        } else {
            self.from <= clock || clock < self.to
        }
    }
}

/// A stretch of time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stretch {
    pub(super) from: Moment,
    pub(super) to: Moment,
}

/// The crew and the clock on their wall. Without a crew somebody is always up: whoever made the plan.
#[derive(Clone, Debug)]
pub(super) struct Crew<'a> {
    people: Vec<(CrewId, Option<QuietHours>)>,
    zone: &'a Zone,
}

/// Quiet hours begin and end on a minute of the clock.
const MINUTE: TimeSpan = TimeSpan::from_minutes(1.0);

impl<'a> Crew<'a> {
    pub(super) fn of(plan: &Plan, zone: &'a Zone) -> Self {
        let people = in_order(&plan.crew, |member| &member.order)
            .into_iter()
            .map(|(id, member)| (id, member.quiet))
            .collect();
        Self { people, zone }
    }

    /// Everybody, in the person's order, with whether they are up at a moment.
    pub(super) fn people_at(&self, moment: Moment) -> impl Iterator<Item = (CrewId, bool)> {
        let clock = self.clock(moment);
        self.people
            .iter()
            .map(move |(id, quiet)| (*id, !quiet.is_some_and(|quiet| quiet.hold(clock))))
    }

    /// Whether somebody is up.
    pub(super) fn somebody_up(&self, moment: Moment) -> bool {
        self.people.is_empty() || self.people_at(moment).any(|(_, up)| up)
    }

    /// Whether the same person is up from beginning to end: looked at at both ends.
    pub(super) fn somebody_up_for(&self, moment: Moment, span: TimeSpan) -> bool {
        self.people.is_empty() || self.who_is_up_for(moment, span).next().is_some()
    }

    /// Who is up at both ends of a span.
    pub(super) fn who_is_up_for(
        &self,
        moment: Moment,
        span: TimeSpan,
    ) -> impl Iterator<Item = CrewId> {
        let end = self.people_at(moment + span);
        self.people_at(moment)
            .zip(end)
            .filter(|((_, at_start), (_, at_end))| *at_start && *at_end)
            .map(|((id, _), _)| id)
    }

    /// How much of a stretch nobody is up, looked at every ten minutes.
    pub(super) fn nobody_up(&self, stretch: Stretch) -> TimeSpan {
        const EVERY: TimeSpan = TimeSpan::from_minutes(10.0);
        let mut moment = stretch.from;
        let mut alone = TimeSpan::ZERO;
        while moment < stretch.to {
            if !self.somebody_up(moment) {
                alone += EVERY;
            }
            moment = moment + EVERY;
        }
        alone
    }

    /// The stretches within a stretch in which nobody is up.
    pub(super) fn nobody_up_in(&self, stretch: Stretch) -> Vec<Stretch> {
        let mut alone: Vec<Stretch> = Vec::new();
        let mut moment = stretch.from;
        while moment < stretch.to {
            let next = (moment + MINUTE).min(stretch.to);
            if !self.somebody_up(moment) {
                match alone.last_mut().filter(|last| last.to == moment) {
                    Some(last) => last.to = next,
                    None => alone.push(Stretch {
                        from: moment,
                        to: next,
                    }),
                }
            }
            moment = next;
        }
        alone
    }

    /// The latest moment, not after the one given, at which somebody is up for the whole span and it is neither before
    /// seven nor after ten at night on the local clock; the one given if there is none within a day.
    pub(super) fn by_day(&self, latest: Moment, span: TimeSpan) -> Moment {
        self.latest_where(latest, |moment| {
            self.somebody_up_for(moment, span) && self.is_day(moment) && self.is_day(moment + span)
        })
    }

    /// The moment nearest to the one liked, within a stretch, at which somebody is up for the whole span: by day if it can
    /// be, in the night else; the one liked if nobody is.
    pub(super) fn near(&self, liked: Moment, within: Stretch, span: TimeSpan) -> Moment {
        const STEP: TimeSpan = TimeSpan::from_minutes(5.0);
        let candidates: Vec<Moment> = (0..576)
            .map(|steps| STEP * f64::from(steps))
            .flat_map(|away| [liked - away, liked + away])
            .filter(|moment| within.from <= *moment && *moment <= within.to)
            .filter(|moment| self.somebody_up_for(*moment, span))
            .collect();
        let by_day = |moment: &&Moment| self.is_day(**moment) && self.is_day(**moment + span);
        let best = candidates.iter().find(by_day).or(candidates.first());
        best.copied().unwrap_or(liked)
    }

    /// The latest moment, not after the one given, at which shops are open.
    pub(super) fn while_shops_are_open(&self, latest: Moment) -> Moment {
        self.latest_where(latest, |moment| {
            let clock = self.clock(moment);
            clock_time(9) <= clock && clock <= clock_time(19)
        })
    }

    fn latest_where(&self, latest: Moment, good: impl Fn(Moment) -> bool) -> Moment {
        (0..288)
            .map(|steps| latest - TimeSpan::from_minutes(5.0) * f64::from(steps))
            .find(|moment| good(*moment))
            .unwrap_or(latest)
    }

    fn is_day(&self, moment: Moment) -> bool {
        let clock = self.clock(moment);
        clock_time(7) <= clock && clock <= clock_time(22)
    }

    fn clock(&self, moment: Moment) -> NaiveTime {
        self.zone.local(moment).time()
    }
}

fn clock_time(hour: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, 0, 0).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::ZoneChange;
    use proptest::prelude::*;

    fn quiet(from: &str, to: &str) -> QuietHours {
        QuietHours {
            from: from.parse().expect("a time"),
            to: to.parse().expect("a time"),
        }
    }

    fn at(utc: &str) -> Moment {
        let utc: chrono::NaiveDateTime = utc.parse().expect("a date and time");
        Moment::from_unix_seconds(utc.and_utc().timestamp())
    }

    fn crew<'a>(quiet: &[Option<QuietHours>], zone: &'a Zone) -> Crew<'a> {
        let people = (1..)
            .zip(quiet)
            .map(|(number, quiet)| (CrewId::new(0, number), *quiet))
            .collect();
        Crew { people, zone }
    }

    #[test]
    fn quiet_hours_across_midnight() {
        let night = quiet("22:00:00", "03:00:00");
        for (clock, held) in [
            ("21:59:00", false),
            ("22:00:00", true),
            ("00:00:00", true),
            ("02:59:59", true),
            ("03:00:00", false),
        ] {
            assert_eq!(night.hold(clock.parse().expect("a time")), held, "{clock}");
        }
    }

    #[test]
    fn two_people_leave_a_gap_in_the_night() {
        let zone = Zone::fixed(3600);
        let both = [
            Some(quiet("22:00:00", "03:00:00")),
            Some(quiet("01:00:00", "08:00:00")),
        ];
        let crew = crew(&both, &zone);
        let night = Stretch {
            from: at("2026-09-11T20:00:00"),
            to: at("2026-09-12T09:00:00"),
        };
        let gap = Stretch {
            from: at("2026-09-12T00:00:00"),
            to: at("2026-09-12T02:00:00"),
        };
        assert_eq!(crew.nobody_up_in(night), [gap]);
        assert_eq!(crew.nobody_up(night).hours(), 2.0);
        assert!(!crew.somebody_up_for(at("2026-09-11T23:55:00"), TimeSpan::from_minutes(10.0)));
    }

    #[test]
    fn a_lone_cook_is_always_up() {
        let zone = Zone::fixed(0);
        assert!(crew(&[], &zone).somebody_up(at("2026-09-12T03:00:00")));
    }

    #[test]
    fn the_clock_goes_forward_in_the_quiet_hours() {
        // Europe/London, 28 March 2027 (tz database): the hour from 01:00 to 02:00 is left out.
        let zone = Zone {
            offset_seconds: 0,
            changes: vec![ZoneChange {
                from: at("2027-03-28T01:00:00"),
                offset_seconds: 3600,
            }],
        };
        let crew = crew(&[Some(quiet("23:00:00", "06:00:00"))], &zone);
        let night = Stretch {
            from: at("2027-03-27T20:00:00"),
            to: at("2027-03-28T08:00:00"),
        };
        let alone = crew.nobody_up_in(night);
        assert_eq!(alone.len(), 1);
        assert_eq!((alone[0].to - alone[0].from).hours(), 6.0);
    }

    #[test]
    fn kitchen_work_is_put_into_the_day() {
        let zone = Zone::fixed(0);
        let crew = crew(&[Some(quiet("20:00:00", "06:00:00"))], &zone);
        let span = TimeSpan::from_minutes(30.0);
        let morning = crew.by_day(at("2026-09-12T06:30:00"), span);
        assert_eq!(morning, at("2026-09-11T19:25:00"));
        let noon = at("2026-09-12T12:00:00");
        assert_eq!(crew.by_day(noon, span), noon);
        let shop = crew.while_shops_are_open(at("2026-09-12T03:00:00"));
        assert_eq!(shop, at("2026-09-11T19:00:00"));
    }

    #[test]
    fn what_has_room_is_put_where_somebody_is_up() {
        let zone = Zone::fixed(0);
        let crew = crew(&[Some(quiet("23:00:00", "06:00:00"))], &zone);
        let span = TimeSpan::from_minutes(20.0);
        let within = Stretch {
            from: at("2026-09-11T20:00:00"),
            to: at("2026-09-12T08:00:00"),
        };
        let liked = at("2026-09-12T02:00:00");
        assert_eq!(crew.near(liked, within, span), at("2026-09-11T21:40:00"));
        let night = Stretch {
            from: at("2026-09-11T22:30:00"),
            to: at("2026-09-12T06:30:00"),
        };
        assert_eq!(crew.near(liked, night, span), at("2026-09-11T22:35:00"));
        let deep = Stretch {
            from: at("2026-09-12T00:30:00"),
            to: at("2026-09-12T04:30:00"),
        };
        assert_eq!(crew.near(liked, deep, span), liked);
    }

    proptest! {
        #[test]
        fn quiet_hours_have_the_length_that_they_say(from in 0..1440u32, to in 0..1440u32) {
            prop_assume!(from != to);
            let clock = |minutes: u32| NaiveTime::from_hms_opt(minutes / 60, minutes % 60, 0).expect("a time");
            let hours = QuietHours { from: clock(from), to: clock(to) };
            let held = (0..1440).filter(|minute| hours.hold(clock(*minute))).count();
            prop_assert_eq!(held as u32, (to + 1440 - from) % 1440);
        }
    }
}
