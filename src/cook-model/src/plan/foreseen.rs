//! What the clocks of safety want to know of a dish beforehand.

use super::day::Placed;
use super::method::CutMethod;
use super::outlook::{FindingKind, StepKind};
use super::steps::Made;
use super::{Plan, hands};
use crate::forecast::time_quantile;
use crate::provisions::Weights;
use crate::safety::watch::Standard;
use crate::safety::{Concern, Foreseen, PlannedFood, judge_planned};
use crate::units::{Mass, Moment, Temperature, TimeSpan};

/// The careful end of an ensemble: one member in ten is later.
const CAREFUL: f64 = 0.9;

/// What is foreseen of a dish that has its place on the clock.
pub(super) fn foreseen(plan: &Plan, placed: &Placed<'_>, made: &Made) -> Foreseen {
    let id = placed.settled.id;
    let Some(method) = placed.settled.cut() else {
        return Foreseen::nothing(id);
    };
    let members = || placed.members.iter();
    let one = |piece| Weights::of_one(method.cut.id, piece).on_plate;
    let lightest = |a: Mass, b: Mass| if b < a { b } else { a };
    Foreseen {
        dish: id,
        leaves_the_cold: leaves_the_cold(placed, made),
        out_before_on: hands::rub(method.cut, method.all()),
        surface_takes: time_quantile(members().map(|member| member.surface_hot), CAREFUL),
        core_takes: time_quantile(members().map(|member| member.slow_core), CAREFUL),
        piece: method.all().map(one).reduce(lightest),
        concerns: concerns(plan, placed, method, made),
    }
}

/// The first hand on it, by the plan. None where it is on already.
fn leaves_the_cold(placed: &Placed<'_>, made: &Made) -> Option<Moment> {
    let hands_on = |kind| {
        matches!(
            kind,
            StepKind::Trim | StepKind::Salt | StepKind::Rub | StepKind::On
        )
    };
    let steps = made.steps.iter().filter(|step| {
        step.dish == Some(placed.settled.id) && hands_on(step.kind) && !placed.is_on
    });
    steps.map(|step| step.when.likely()).min()
}

fn concerns(plan: &Plan, placed: &Placed<'_>, method: &CutMethod<'_>, made: &Made) -> Vec<Concern> {
    let id = placed.settled.id;
    let not_thawed = |what: &FindingKind| {
        matches!(
            what,
            FindingKind::NotThawed {
                cold_water: None,
                ..
            }
        )
    };
    let rub = hands::rub(method.cut, method.all());
    let trim = hands::trim(method.cut, method.untrimmed());
    let salt = method
        .salt
        .map_or(TimeSpan::ZERO, |_| hands::salt(method.all()));
    let food = PlannedFood {
        sort: method.sort,
        standard: match method.below_minimum {
            Some(below) if below.by_table.is_some() => Standard::Table,
            _ => Standard::Minimum,
        },
        hands_on: trim + salt + rub,
        out_before_on: rub,
        air: plan.place.air,
        coolest_pit: coolest(placed),
        target: method.wanted,
        goes_on_frozen: made
            .findings
            .iter()
            .any(|finding| finding.dish == Some(id) && not_thawed(&finding.what)),
    };
    let mut worst: Vec<Concern> = Vec::new();
    for piece in &placed.pieces {
        for concern in judge_planned(&food, piece.members()) {
            match worst.iter_mut().find(|other| other.rule == concern.rule) {
                Some(other) if other.members < concern.members => *other = concern,
                Some(_) => {}
                None => worst.push(concern),
            }
        }
    }
    worst.sort_by_key(|concern| core::cmp::Reverse(concern.severity));
    worst
}

/// The lowest air that it sees, by its own temperature or by the programme of its cooker.
fn coolest(placed: &Placed<'_>) -> Temperature {
    let programme = placed
        .cooker
        .into_iter()
        .flat_map(|(_, cooker)| &cooker.programme);
    let lower = |a: Temperature, b: Temperature| if b < a { b } else { a };
    let coolest = placed
        .settled
        .dish
        .pit
        .or_else(|| programme.map(|step| step.set).reduce(lower));
    coolest.unwrap_or(Temperature::from_celsius(f64::INFINITY))
}
