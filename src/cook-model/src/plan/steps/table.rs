//! At the table and after it.

use super::{Made, cautions, context};
use crate::plan::day::Day;
use crate::plan::hands;
use crate::plan::outlook::{Step, StepKind, Window};
use crate::safety::out_of_fridge_limit;
use crate::units::{Moment, TimeSpan};

/// What is left is in hand so long before its time on the table is over.
const BEFORE_THE_LIMIT: TimeSpan = TimeSpan::from_minutes(30.0);

pub(super) fn add(day: &Day<'_>, made: &mut Made) {
    if day.placed().next().is_none() {
        return;
    }
    let serving = day.plan.serving.moment();
    let chill = serving + out_of_fridge_limit(day.plan.place.air) - BEFORE_THE_LIMIT;
    made.add(step(day, StepKind::Serve, serving, hands::SERVE));
    made.add(step(day, StepKind::Chill, chill, hands::CHILL));
}

fn step(day: &Day<'_>, kind: StepKind, at: Moment, takes: TimeSpan) -> Step {
    // The strictest dish speaks for the table: one with a target below the minimum.
    let below = |placed: &&_| context(day, Some(placed), None).below_minimum;
    let speaks = day.placed().find(below).or_else(|| day.placed().next());
    Step {
        cautions: cautions(kind, &context(day, speaks, None)),
        ..Step::new(kind, Window::at(at), takes)
    }
}
