//! Each step as a task: what its time hangs on, what it needs, and what the person wishes of it.

use super::place_of_on;
use crate::plan::day::Day;
use crate::plan::outlook::{Step, StepKind};
use crate::plan::{OwnWhen, StepKey, StepOf};
use crate::schedule::{Bound, Hours, Reason, Skill, Task, Tie};
use crate::units::Moment;

/// More hands than this are at no step.
const MOST_HANDS: u8 = 2;

pub(super) fn tasks(day: &Day<'_>, steps: &[Step]) -> Vec<Task> {
    (0..steps.len())
        .map(|place| task(day, steps, place))
        .collect()
}

fn task(day: &Day<'_>, steps: &[Step], place: usize) -> Task {
    let step = &steps[place];
    let own = match step.key.of {
        StepOf::Own(id) => day.plan.own_steps.get(&id),
        StepOf::Table | StepOf::Dish(_) | StepOf::Cooker(_) => None,
    };
    let wish = day.plan.steps.get(&step.key);
    let clock = own.and_then(|own| match own.when {
        OwnWhen::Clock { moment } => Some(moment).filter(|moment| day.plan.is_near(*moment)),
        _ => None,
    });
    let begins = step.when.likely();
    let now = day.situation.now;
    let tie = tie(day, steps, place);
    let free = !matches!(tie, Tie::Fixed | Tie::With { .. });
    Task {
        key: step.key,
        takes: step.takes,
        hands: own.map_or(1, |own| own.hands.min(MOST_HANDS)),
        skill: skill(step.kind),
        told: own.and_then(|own| own.who),
        tie,
        liked: begins,
        begins,
        who: step.who.into_iter().collect(),
        earliest: free.then_some(Bound {
            at: now.min(begins),
            why: Reason::Past { now },
        }),
        latest: None,
        hours: hours(step.kind),
        pinned: day.plan.pinned(step.key).or(clock),
        order: wish.and_then(|wish| wish.order.clone()),
    }
}

fn tie(day: &Day<'_>, steps: &[Step], place: usize) -> Tie {
    use StepKind as K;
    let step = &steps[place];
    let begins = step.when.likely();
    if step.kind == K::Serve || has_happened(day, step) {
        return Tie::Fixed;
    }
    let near = |task: Option<usize>| {
        let task = task.filter(|task| *task != place);
        task.map_or(Tie::Free, |task| Tie::Near {
            task,
            after: begins - steps[task].when.likely(),
        })
    };
    let on = step.dish.and_then(|dish| place_of_on(day, steps, dish));
    match step.kind {
        K::On | K::Make | K::Buy => Tie::Free,
        K::PitChange => with(steps, begins, drives(day, steps, step)),
        kind if kind.goes_by_the_meat() => with(steps, begins, on),
        K::Light | K::SteadyFire | K::Feed => near(fire_of(day, steps, step)),
        K::Chill => near(steps.iter().position(|step| step.kind == K::Serve)),
        K::Own => near(own_anchor(day, steps, step)),
        _ => near(on),
    }
}

fn with(steps: &[Step], begins: Moment, task: Option<usize>) -> Tie {
    task.map_or(Tie::Fixed, |task| Tie::With {
        task,
        after: begins - steps[task].when.likely(),
    })
}

/// What lies in the past, or is on already, stands.
fn has_happened(day: &Day<'_>, step: &Step) -> bool {
    let is_on = step
        .dish
        .is_some_and(|dish| day.situation.went_on().contains_key(&dish));
    let on = matches!(step.kind, StepKind::On | StepKind::Make) && is_on;
    on || step.when.likely() < day.situation.now
}

/// The step that puts on the dish by which a change of the pit goes.
fn drives(day: &Day<'_>, steps: &[Step], step: &Step) -> Option<usize> {
    use crate::plan::PitWhen;
    let cooker = day.plan.cookers.get(&step.cooker?)?;
    match cooker
        .programme
        .get(usize::try_from(step.round).ok()?)?
        .when
    {
        PitWhen::Start => None,
        PitWhen::AfterOn { dish, .. } | PitWhen::CoreReaches { dish, .. } => {
            place_of_on(day, steps, dish)
        }
    }
}

/// The step that puts the first dish onto the fire that a step belongs to: the last to go on that the fire was lit for.
fn fire_of(day: &Day<'_>, steps: &[Step], step: &Step) -> Option<usize> {
    let on_it = day
        .placed()
        .filter(|placed| placed.on_a_fire().map(|(id, _)| id) == step.cooker);
    let before_it = step.kind == StepKind::Feed;
    let fits = |on: Moment| {
        if before_it {
            on <= step.when.likely()
        } else {
            on >= step.when.likely()
        }
    };
    let first = on_it
        .filter(|placed| fits(placed.on))
        .min_by_key(|placed| placed.on)?;
    place_of_on(day, steps, first.settled.id)
}

/// What a step of one's own goes by.
pub(super) fn own_anchor(day: &Day<'_>, steps: &[Step], step: &Step) -> Option<usize> {
    let StepOf::Own(id) = step.key.of else {
        return None;
    };
    let place = |key: StepKey| steps.iter().position(|step| step.key == key);
    match day.plan.own_steps.get(&id)?.when {
        OwnWhen::Clock { .. } => None,
        OwnWhen::BeforeServing { .. } | OwnWhen::AfterServing { .. } => {
            steps.iter().position(|step| step.kind == StepKind::Serve)
        }
        OwnWhen::Before { step, .. } | OwnWhen::After { step, .. } => place(step),
    }
}

const fn skill(kind: StepKind) -> Skill {
    use StepKind as K;
    match kind {
        K::Light | K::SteadyFire | K::Feed | K::PitChange => Skill::Fire,
        K::Buy | K::Serve | K::Own => Skill::Any,
        _ => Skill::Food,
    }
}

const fn hours(kind: StepKind) -> Hours {
    use StepKind as K;
    match kind {
        K::Buy => Hours::Shop,
        K::Thaw | K::Trim | K::Salt => Hours::Day,
        _ => Hours::Any,
    }
}
