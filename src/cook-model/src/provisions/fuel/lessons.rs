//! What a shelf of plans with their journals teaches about each cooker's hunger.

use super::super::fires::burnt;
use super::burn::fuel_need;
use super::fed::fed;
use super::learned::LearnedFactor;
use crate::handover::Journal;
use crate::handover::identity::CookerId;
use crate::plan::{Cooker, Plan};
use crate::provisions::Quantity;
use std::collections::BTreeMap;

/// Whether two plans speak of the same cooker: by its id, which a copied plan keeps, or by its kind and the name that the
/// person gave it.
fn is_same(here: (CookerId, &Cooker), there: (CookerId, &Cooker)) -> bool {
    let name = here.1.name.trim();
    here.0 == there.0
        || (here.1.kind == there.1.kind && !name.is_empty() && name == there.1.name.trim())
}

/// What each cooker of a plan has taught, from cooks whose journals tell when everything on it went on and came off, and
/// what its fire was fed. Cooks are taken in the order in which they come: the oldest first.
#[must_use]
pub fn learned<'a>(
    plan: &Plan,
    cooks: impl Iterator<Item = (&'a Plan, &'a Journal)> + Clone,
) -> BTreeMap<CookerId, LearnedFactor> {
    plan.cookers
        .iter()
        .filter_map(|(id, cooker)| {
            let mut factor = LearnedFactor::default();
            for (cook, journal) in cooks.clone() {
                for there in cook.cookers.iter().map(|(id, cooker)| (*id, cooker)) {
                    if is_same((*id, cooker), there) {
                        factor = after(factor, cook, journal, there);
                    }
                }
            }
            (factor.cooks > 0).then_some((*id, factor))
        })
        .collect()
}

fn after(
    factor: LearnedFactor,
    plan: &Plan,
    journal: &Journal,
    (id, cooker): (CookerId, &Cooker),
) -> LearnedFactor {
    let fed = fed(journal, id, cooker.kind);
    let modelled = burnt(plan, journal, id).map(|burn| fuel_need(&burn).likely);
    match modelled {
        Some(Quantity::Mass(modelled)) => factor.after_cook(fed, modelled),
        _ => factor,
    }
}
