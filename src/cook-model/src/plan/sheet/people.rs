//! Who sleeps when, over all the days of a plan, on the local clock.

use crate::plan::day::Day;
use crate::plan::outlook::Step;
use crate::plan::{QuietHours, Zone, in_order};
use crate::schedule::{Person, Stretch};
use crate::units::{Moment, TimeSpan};
use chrono::NaiveTime;

/// Looked at every five minutes of the clock: quiet hours that begin in between begin a little early.
const EVERY: i64 = 300;
/// So much is looked at before the first step and after the last.
const AROUND: TimeSpan = TimeSpan::from_hours(18.0);
/// The longest plan looked at.
const LONGEST: TimeSpan = TimeSpan::from_hours(24.0 * 14.0);

/// The clock on the wall over the days of a plan.
pub(super) struct Clock<'a> {
    day: &'a Day<'a>,
    local: Vec<(Moment, NaiveTime)>,
}

impl<'a> Clock<'a> {
    pub(super) fn of(day: &'a Day<'a>, steps: &[Step]) -> Self {
        let serving = day.plan.serving.moment();
        let first = steps.iter().map(|step| step.when.likely()).min();
        let last = steps.iter().map(|step| step.when.likely()).max();
        let from = first.unwrap_or(serving).min(serving).max(serving - LONGEST) - AROUND;
        let to = last.unwrap_or(serving).max(serving).min(serving + LONGEST) + AROUND;
        Self {
            day,
            local: clock_times(&day.situation.zone, from, to),
        }
    }

    pub(super) fn people(&self) -> Vec<Person> {
        let person = |(who, member): (_, &crate::plan::CrewMember)| Person {
            who,
            food: member.hands_on,
            fire: member.fire,
            night_watch: member.night_watch,
            asleep: member
                .quiet
                .map_or_else(Vec::new, |quiet| self.asleep(quiet)),
        };
        in_order(&self.day.plan.crew, |member| &member.order)
            .into_iter()
            .map(person)
            .collect()
    }

    fn asleep(&self, quiet: QuietHours) -> Vec<Stretch> {
        self.stretches(|clock| quiet.hold(clock))
    }

    /// Stretches in which the whole crew sleeps.
    pub(super) fn nobody_up(&self) -> Vec<Stretch> {
        let crew = &self.day.plan.crew;
        let asleep = |clock| {
            crew.values()
                .all(|member| member.quiet.is_some_and(|quiet| quiet.hold(clock)))
        };
        self.stretches(|clock| !crew.is_empty() && asleep(clock))
    }

    pub(super) fn nights(&self) -> Vec<Stretch> {
        self.stretches(|clock| clock < hour(7) || clock >= hour(22))
    }

    pub(super) fn shops_shut(&self) -> Vec<Stretch> {
        self.stretches(|clock| clock < hour(9) || clock >= hour(19))
    }

    fn stretches(&self, holds: impl Fn(NaiveTime) -> bool) -> Vec<Stretch> {
        let mut stretches: Vec<Stretch> = Vec::new();
        for (from, clock) in &self.local {
            if !holds(*clock) {
                continue;
            }
            let to = Moment::from_unix_seconds(from.unix_seconds() + EVERY);
            match stretches.last_mut().filter(|last| last.to == *from) {
                Some(last) => last.to = to,
                None => stretches.push(Stretch { from: *from, to }),
            }
        }
        stretches
    }
}

fn clock_times(zone: &Zone, from: Moment, to: Moment) -> Vec<(Moment, NaiveTime)> {
    let first = from.unix_seconds().div_euclid(EVERY);
    let last = to.unix_seconds().div_euclid(EVERY);
    (first..last)
        .map(|step| Moment::from_unix_seconds(step * EVERY))
        .map(|moment| (moment, zone.local(moment).time()))
        .collect()
}

fn hour(hour: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, 0, 0).unwrap_or_default()
}
