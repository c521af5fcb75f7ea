//! Durations that the person changed.

use crate::plan::outlook::Step;
use crate::plan::{Plan, range};

/// Puts changed durations in the place of the usual ones. One that is kept under no round holds for all of them. One
/// that cannot be is left out: the plan's check speaks of it.
pub(super) fn durations(plan: &Plan, steps: &mut [Step]) {
    for step in steps {
        let wished = [step.key, step.key.any_round()].into_iter();
        let takes = wished.filter_map(|key| plan.steps.get(&key)?.takes).next();
        if let Some(takes) = takes.filter(|takes| range::STEP_TAKES.holds(takes.seconds())) {
            step.takes = takes;
        }
    }
}
