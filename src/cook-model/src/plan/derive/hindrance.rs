//! Why a dish cannot be forecast, before any physics.

use crate::handover::identity::DishId;
use crate::plan::method::Kind;
use crate::plan::method::Settled;
use crate::plan::outlook::Hindrance;
use crate::plan::{Dish, Food, OwnPlace, Plan, Problem, Trouble};
use crate::safety::Units;

/// Fields that no forecast rests on.
const BESIDE: [&str; 12] = [
    "appetite",
    "cookers",
    "crew",
    "currency",
    "extras",
    "guests",
    "kitchen",
    "own_steps",
    "purchases",
    "serving",
    "steps",
    "supplies",
];

/// Settles a dish, or says what hinders it. `problems` are those of the whole plan.
pub(super) fn settle<'a>(
    plan: &Plan,
    id: DishId,
    dish: &'a Dish,
    problems: &[Problem],
) -> Result<Settled<'a>, Hindrance> {
    if let Some(problem) = problems.iter().find(|problem| hinders(problem, id, dish)) {
        return Err(hindrance(problem));
    }
    let unknown = || match &dish.food {
        Food::Cut { cut } => cut.clone(),
        Food::Own { .. } => String::new(),
    };
    let settled =
        Settled::of(plan, id, dish).ok_or_else(|| Hindrance::UnknownCut { cut: unknown() })?;
    match &settled.kind {
        Kind::Cut(method) if method.pieces.is_empty() => Err(Hindrance::NoPieces),
        Kind::Own(own) if own.place != OwnPlace::Cooker => Ok(settled),
        Kind::Cut(_) | Kind::Own(_) if dish.cooker.is_none() => Err(Hindrance::NoCooker),
        Kind::Cut(_) | Kind::Own(_) => Ok(settled),
    }
}

/// Whether a problem stands in the way of this dish: one of its own, of its cooker, or of the place of the cook.
fn hinders(problem: &Problem, id: DishId, dish: &Dish) -> bool {
    let at = problem.at.as_str();
    if at.ends_with("/name") || at == "name" {
        return false;
    }
    let dishes = format!("dishes/{id}/");
    let cooker = dish.cooker.map(|cooker| format!("cookers/{cooker}/"));
    if at.starts_with("dishes/") {
        return at.starts_with(&dishes);
    }
    if at.starts_with("cookers/") {
        return cooker.is_some_and(|cooker| at.starts_with(&cooker));
    }
    let first = at.split('/').next().unwrap_or(at);
    !BESIDE.contains(&first)
}

fn hindrance(problem: &Problem) -> Hindrance {
    match &problem.what {
        Trouble::UnknownCut { cut } => Hindrance::UnknownCut { cut: cut.clone() },
        Trouble::PitBelowTarget { pit, target } => Hindrance::PitBelowTarget {
            pit: *pit,
            target: *target,
        },
        _ => Hindrance::OutOfRange {
            message: problem.message(Units::default()),
        },
    }
}
