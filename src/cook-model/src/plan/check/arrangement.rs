//! Bad input about the run sheet: pins, changed durations, steps of one's own, room in the kitchen.

use super::{Found, Trouble, count};
use crate::handover::identity::OwnStepId;
use crate::plan::{OwnStep, OwnStepPlace, OwnWhen, Plan, StepKey, StepOf, range};
use crate::units::Moment;

pub(super) fn check(plan: &Plan, found: &mut Found) {
    let kitchen = &plan.kitchen;
    let oven = kitchen.oven.square_metres();
    found.hold("kitchen", range::OVEN_ROOM, oven);
    let rest_box = kitchen.rest_box.cubic_metres();
    found.hold("kitchen", range::BOX_ROOM, rest_box);
    found.hold("kitchen", range::FRIDGE_ROOM, kitchen.fridge.cubic_metres());
    for (key, wish) in &plan.steps {
        if let Some(pin) = wish.pin {
            ahead(plan, format!("steps/{key}/pin"), pin, found);
        }
        if let Some(takes) = wish.takes {
            let at = format!("steps/{key}/takes");
            found.hold(at, range::STEP_TAKES, takes.seconds());
        }
    }
    found.hold("own_steps", range::OWN_STEPS, count(plan.own_steps.len()));
    for (id, own) in &plan.own_steps {
        own_step(plan, *id, own, found);
    }
}

fn ahead(plan: &Plan, at: String, moment: Moment, found: &mut Found) {
    let ahead = plan.serving.moment() - moment;
    found.hold(at, range::PIN_AHEAD, ahead.seconds());
}

fn own_step(plan: &Plan, id: OwnStepId, own: &OwnStep, found: &mut Found) {
    let at = |field: &str| format!("own_steps/{id}/{field}");
    found.name(at("name"), &own.name);
    found.hold(at("takes"), range::OWN_STEP_TAKES, own.takes.seconds());
    found.hold(at("hands"), range::OWN_STEP_HANDS, f64::from(own.hands));
    match own.when {
        OwnWhen::Clock { moment } => ahead(plan, at("when"), moment, found),
        OwnWhen::BeforeServing { span } | OwnWhen::AfterServing { span } => {
            found.hold(at("when"), range::OWN_STEP_APART, span.seconds());
        }
        OwnWhen::Before { step, span } | OwnWhen::After { step, span } => {
            found.hold(at("when"), range::OWN_STEP_APART, span.seconds());
            if !is_there(plan, step) {
                found.say(at("when"), Trouble::Missing { thing: "step" });
            } else if goes_by_itself(plan, id) {
                found.say(at("when"), Trouble::GoesByItself);
            }
        }
    }
    if let OwnStepPlace::Cooker { cooker } = own.place
        && !plan.cookers.contains_key(&cooker)
    {
        found.say(at("place"), Trouble::Missing { thing: "cooker" });
    }
    if own.who.is_some_and(|who| !plan.crew.contains_key(&who)) {
        found.say(at("who"), Trouble::Missing { thing: "person" });
    }
}

/// Whether what a step belongs to is still in the plan.
fn is_there(plan: &Plan, step: StepKey) -> bool {
    match step.of {
        StepOf::Table => true,
        StepOf::Dish(id) => plan.dishes.contains_key(&id),
        StepOf::Cooker(id) => plan.cookers.contains_key(&id),
        StepOf::Own(id) => plan.own_steps.contains_key(&id),
    }
}

fn goes_by_itself(plan: &Plan, id: OwnStepId) -> bool {
    let mut at = id;
    for _ in 0..=plan.own_steps.len() {
        let Some(OwnWhen::Before { step, .. } | OwnWhen::After { step, .. }) =
            plan.own_steps.get(&at).map(|own| own.when)
        else {
            return false;
        };
        let StepOf::Own(next) = step.of else {
            return false;
        };
        if next == id {
            return true;
        }
        at = next;
    }
    // It leads into a circle of others: those say so.
    false
}
