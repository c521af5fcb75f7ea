//! Two clocks: that of the yard, and that of a member whose rates are all a little slower or quicker.

use crate::physics::{MemberRun, Scenario, Span, When};
use crate::units::TimeSpan;

/// How fast a member's cook goes against the model's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pace {
    /// Multiplies the model's times, 0.25 to 4.
    pub(super) factor: f64,
    /// The present on the clock of the yard.
    pub(super) now: TimeSpan,
    /// Multiplies what is still ahead of it on top: what happened so far does not tell all about what comes.
    pub(super) ahead: f64,
}

impl Pace {
    /// From the clock of the yard to the model's.
    pub(super) fn to_model(self, yard: TimeSpan) -> TimeSpan {
        let beyond = (yard - self.now).max(TimeSpan::ZERO);
        (yard.min(self.now) + beyond / self.ahead) / self.factor
    }

    /// From the model's clock to that of the yard.
    pub(super) fn to_yard(self, model: TimeSpan) -> TimeSpan {
        let yard = model * self.factor;
        let beyond = (yard - self.now).max(TimeSpan::ZERO);
        yard.min(self.now) + beyond * self.ahead
    }

    /// A scenario told on the clock of the yard, on the model's. Its finish must not go by the clock, or else lies at the
    /// end of what is marched before the stages after it, which keep their length.
    pub(super) fn scenario(self, told: &Scenario) -> Scenario {
        let mut scenario = told.clone();
        let when = |when: &mut When| {
            if let When::AfterOn(span) = when {
                *span = self.to_model(*span).min(LONGEST);
            }
        };
        scenario
            .pit
            .iter_mut()
            .for_each(|change| when(&mut change.when));
        scenario
            .wraps
            .iter_mut()
            .for_each(|wrap| when(&mut wrap.when));
        for departure in &mut scenario.departures {
            departure.after = self.to_model(departure.after).min(LONGEST);
        }
        for lid in &mut scenario.lid_openings {
            *lid = self.to_model(*lid);
        }
        if let Some(spray) = &mut scenario.spray {
            spray.first = self.to_model(spray.first);
            spray.every = spray.every.max(SHORTEST_SPRAY * self.factor) / self.factor;
        }
        if let crate::physics::Finish::AfterOn(span) = &mut scenario.finish {
            *span = self.to_model(*span);
        }
        scenario
    }

    /// A run of that scenario, on the clock of the yard. Stages after it came off keep their length.
    pub(super) fn run(self, run: &mut MemberRun) {
        let off = run.ready;
        let moved = |time: TimeSpan| match off {
            Some(off) if time > off => self.to_yard(off) + (time - off),
            _ => self.to_yard(time),
        };
        let lists = [&mut run.covered, &mut run.pit_changed];
        let listed = lists.into_iter().flatten();
        let single = [
            &mut run.ready,
            &mut run.target_reached,
            &mut run.bark_firm,
            &mut run.bark_set,
            &mut run.lethality_met,
            &mut run.surface_hot,
            &mut run.core_past_4,
            &mut run.core_past_60,
            &mut run.core_below_73_9,
            &mut run.core_below_60,
        ];
        for time in listed.chain(single) {
            *time = time.map(moved);
        }
        run.stall = run.stall.map(|stall| Span {
            from: moved(stall.from),
            to: moved(stall.to),
        });
        run.stage_ends.iter_mut().for_each(|end| *end = moved(*end));
        for sample in &mut run.samples {
            sample.after = moved(sample.after);
        }
    }
}

/// What a scenario's times may be at most.
const LONGEST: TimeSpan = TimeSpan::from_hours(72.0);
/// What the time between two sprays may be at least.
const SHORTEST_SPRAY: TimeSpan = TimeSpan::from_minutes(5.0);
