//! What a careful friend would say about the plan.

mod fire;
pub(super) use fire::zones;
mod safety;
mod time;

use super::day::{Day, Placed};
use super::outlook::{Finding, FindingKind, Gravity, Portions};
use crate::handover::identity::CookerId;
use crate::physics::air::{boiling_point, pressure_at};
use crate::provisions::{portions, short_by};
use crate::units::{Mass, TimeSpan};

/// Everything there is to say beside what came up with the steps, in no order.
pub(super) fn findings(day: &Day<'_>, portions: Portions) -> Vec<Finding> {
    let mut said = Said(Vec::new());
    let serving = day.plan.serving.moment();
    if serving < day.situation.now {
        said.of_all(Gravity::Heed, FindingKind::ServingPast);
    }
    for placed in day.placed() {
        time::say(day, placed, &mut said);
        safety::say(placed, &mut said);
        target(day, placed, &mut said);
    }
    fire::say(day, &mut said);
    food(portions, &mut said);
    said.0
}

/// The gravest first; equally grave ones stay in their order.
pub(super) fn sort(findings: &mut [Finding]) {
    findings.sort_by_key(|finding| finding.gravity);
}

/// Food wanted and planned, as figures that a reader can rely on: what is not a number counts as nothing.
pub(super) fn food_planned(plan: &super::Plan) -> Portions {
    let Portions { wanted, planned } = portions(plan);
    let sound = |mass: Mass| {
        if mass.kilograms().is_finite() {
            mass
        } else {
            Mass::ZERO
        }
    };
    Portions {
        wanted: sound(wanted),
        planned: sound(planned),
    }
}

struct Said(Vec<Finding>);

impl Said {
    fn of_all(&mut self, gravity: Gravity, what: FindingKind) {
        self.0.push(Finding {
            gravity,
            dish: None,
            cooker: None,
            what,
        });
    }

    fn of_dish(&mut self, gravity: Gravity, placed: &Placed<'_>, what: FindingKind) {
        self.0.push(Finding {
            gravity,
            dish: Some(placed.settled.id),
            cooker: None,
            what,
        });
    }

    fn of_cooker(&mut self, gravity: Gravity, cooker: CookerId, what: FindingKind) {
        self.0.push(Finding {
            gravity,
            dish: None,
            cooker: Some(cooker),
            what,
        });
    }
}

fn target(day: &Day<'_>, placed: &Placed<'_>, said: &mut Said) {
    let Some(method) = placed.settled.cut() else {
        return;
    };
    if method.lowered().is_some() {
        let what = FindingKind::TargetLowered {
            from: method.wanted,
            to: method.target,
            boiling: boiling_point(pressure_at(day.plan.place.altitude)),
        };
        said.of_dish(Gravity::Note, placed, what);
    }
    if let Some(what) = method.target_below_minimum() {
        let by_table = method.below_minimum.and_then(|below| below.by_table);
        let gravity = if by_table.is_some() {
            Gravity::Heed
        } else {
            Gravity::Stop
        };
        said.of_dish(gravity, placed, what);
    }
}

/// Too little food; a plan without any is only begun.
fn food(portions: Portions, said: &mut Said) {
    let Portions { wanted, planned } = portions;
    if planned > Mass::ZERO && short_by(portions) > Mass::ZERO {
        said.of_all(
            Gravity::Heed,
            FindingKind::TooLittleFood { wanted, planned },
        );
    }
}

/// The point below which a share of spans lies. Zero without spans.
fn point(spans: impl Iterator<Item = TimeSpan>, share: f64) -> TimeSpan {
    let mut seconds: Vec<f64> = spans.map(TimeSpan::seconds).collect();
    let point = crate::forecast::quantile(&mut seconds, share);
    TimeSpan::from_seconds(point.unwrap_or(0.0))
}

#[cfg(test)]
mod tests;
