//! Steps that the person added.

use super::Made;
use crate::plan::day::Day;
use crate::plan::outlook::{Step, StepKind, Window};
use crate::plan::{OwnStep, OwnStepPlace, OwnWhen, StepKey, range};
use crate::units::{Moment, TimeSpan};

pub(super) fn add(day: &Day<'_>, made: &mut Made) {
    // One may go by another of one's own: as many rounds as there are find every one that goes by anything.
    let mut left: Vec<_> = day.plan.own_steps.iter().collect();
    while !left.is_empty() {
        let (placed, waiting): (Vec<_>, Vec<_>) = left
            .iter()
            .map(|(id, own)| (*id, *own, begins(day, own, &made.steps)))
            .partition(|(_, _, at)| at.is_some());
        let stuck = placed.is_empty();
        for (id, own, at) in placed
            .into_iter()
            .chain(waiting.iter().copied().filter(|_| stuck))
        {
            // What goes by a step that is not there any more, or cannot be planned, falls at serving.
            let takes = takes(own);
            let near = at.filter(|at| day.plan.is_near(*at));
            let at = near.unwrap_or_else(|| day.plan.serving.moment() - takes);
            let mut step = Step::new(StepKind::Own, Window::at(at), takes);
            step.key = StepKey::own(*id);
            step.cooker = match own.place {
                OwnStepPlace::Cooker { cooker } => Some(cooker),
                _ => None,
            };
            made.add(step);
        }
        if stuck {
            return;
        }
        left = waiting.into_iter().map(|(id, own, _)| (id, own)).collect();
    }
}

/// How long it takes; nothing where it takes longer than can be planned, of which the plan's check speaks.
fn takes(own: &OwnStep) -> TimeSpan {
    let held = range::OWN_STEP_TAKES.holds(own.takes.seconds());
    if held { own.takes } else { TimeSpan::ZERO }
}

fn begins(day: &Day<'_>, own: &OwnStep, steps: &[Step]) -> Option<Moment> {
    let serving = day.plan.serving.moment();
    let find = |key: StepKey| steps.iter().find(|step| step.key == key);
    match own.when {
        OwnWhen::Clock { moment } => Some(moment),
        OwnWhen::BeforeServing { span } => Some(serving - span - takes(own)),
        OwnWhen::AfterServing { span } => Some(serving + span),
        OwnWhen::Before { step, span } => Some(find(step)?.when.likely() - span - takes(own)),
        OwnWhen::After { step, span } => {
            let step = find(step)?;
            Some(step.when.likely() + step.takes + span)
        }
    }
}
