//! What is to be done, when, and by whom.

mod cooking;
mod fire;
mod kitchen;
mod own;
mod own_steps;
mod remembered;
mod table;
mod who;

use super::day::{Day, Placed};
use super::outlook::{Finding, FindingKind, Gravity, Step, StepKind, Window};
use crate::handover::identity::CookerId;
use crate::meat::Make;
use crate::plan::{Cooker, Intact, StepKey, StepOf};
use crate::safety::{CautionContext, cautions_for};
use crate::units::TimeSpan;

/// Steps and what came up while they were laid out.
#[derive(Debug, Default)]
pub(super) struct Made {
    pub(super) steps: Vec<Step>,
    pub(super) findings: Vec<Finding>,
}

/// All steps of the day in order of likely time, each with who does it.
pub(super) fn steps(day: &Day<'_>) -> Made {
    let mut made = Made::default();
    let mut first_hands = Vec::new();
    for placed in day.placed() {
        if placed.settled.cut().is_some() {
            let first = kitchen::add(day, placed, &mut made);
            first_hands.extend(first.map(|first| (placed, first)));
            cooking::add(day, placed, &mut made);
        } else {
            own::add(day, placed, &mut made);
        }
    }
    kitchen::shop(day, &first_hands, &mut made);
    fire::add(day, &mut made);
    table::add(day, &mut made);
    for step in &mut made.steps {
        step.key = key(step);
    }
    own_steps::add(day, &mut made);
    remembered::durations(day.plan, &mut made.steps);
    // A stable sort: what falls at the same time stays in the order in which it was laid out.
    made.steps.sort_by_key(|step| step.when.likely());
    who::assign(day, &mut made);
    made
}

/// What a step is called. Steps of one's own have their key already.
fn key(step: &Step) -> StepKey {
    let of = match (step.dish, step.cooker) {
        (Some(dish), _) => StepOf::Dish(dish),
        (None, Some(cooker)) => StepOf::Cooker(cooker),
        (None, None) => StepOf::Table,
    };
    StepKey {
        of,
        kind: step.kind,
        round: step.round,
    }
}

impl Made {
    fn add(&mut self, step: Step) {
        self.steps.push(step);
    }

    fn find(&mut self, gravity: Gravity, placed: &Placed<'_>, what: FindingKind) {
        self.findings.push(Finding {
            gravity,
            dish: Some(placed.settled.id),
            cooker: None,
            what,
        });
    }
}

/// A step of a dish, with its cautions.
fn of_dish(
    day: &Day<'_>,
    placed: &Placed<'_>,
    kind: StepKind,
    when: Window,
    takes: TimeSpan,
) -> Step {
    let at_fire = !matches!(
        kind,
        StepKind::Buy
            | StepKind::Thaw
            | StepKind::Trim
            | StepKind::Salt
            | StepKind::Rub
            | StepKind::Hold
            | StepKind::Slice
    );
    Step {
        dish: Some(placed.settled.id),
        cooker: placed.cooker.map(|(id, _)| id).filter(|_| at_fire),
        cautions: cautions(kind, &context(day, Some(placed), placed.cooker)),
        ..Step::new(kind, when, takes)
    }
}

/// A step of a cooker, with its cautions. `first` is a dish that lies on it.
fn of_cooker(
    day: &Day<'_>,
    cooker: (CookerId, &Cooker),
    first: Option<&Placed<'_>>,
    kind: StepKind,
    when: Window,
    takes: TimeSpan,
) -> Step {
    Step {
        cooker: Some(cooker.0),
        cautions: cautions(kind, &context(day, first, Some(cooker))),
        ..Step::new(kind, when, takes)
    }
}

fn cautions(kind: StepKind, context: &CautionContext) -> Vec<String> {
    let rules = cautions_for(kind, context);
    rules.into_iter().map(|rule| rule.to_string()).collect()
}

fn context(
    day: &Day<'_>,
    placed: Option<&Placed<'_>>,
    cooker: Option<(CookerId, &Cooker)>,
) -> CautionContext {
    let method = placed.and_then(|placed| placed.settled.cut());
    let make: Option<Make> = method.map(|method| method.cut.make);
    CautionContext {
        make,
        intact: method.map_or(Intact::Unknown, |method| method.intact),
        frozen: method.is_some_and(|method| method.all().any(|piece| piece.frozen)),
        cooker: cooker.map(|(_, cooker)| cooker.kind),
        hold: placed.map(|placed| placed.settled.hold),
        audience: day.plan.audience,
        below_minimum: method.is_some_and(|method| method.below_minimum.is_some()),
        air: day.plan.place.air,
        wind_metres_per_second: day.plan.place.wind_metres_per_second,
    }
}

#[cfg(test)]
mod tests;
