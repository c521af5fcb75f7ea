//! Lines for salt, rub, binder and spray, merged over dishes.

use super::super::coating::{CoatingRate, rubbed_surface};
use super::super::quantity::Quantity;
use super::super::salt::salt_for;
use super::super::spoons::teaspoons;
use super::super::spraying::spray_need;
use super::item::Item;
use super::list::{Draft, Times};
use super::supplies::Supplies;
use super::working::{SaltPart, Working};
use crate::handover::identity::DishId;
use crate::plan::{Dish, Plan, in_order};
use crate::units::{Area, Mass, Volume};

pub(super) fn lines(plan: &Plan, supplies: &Supplies, times: &Times) -> Vec<Draft> {
    let dishes = in_order(&plan.dishes, |dish| &dish.order);
    [
        salt(&dishes, supplies),
        coat(&dishes, Item::Rub, supplies.rub),
        coat(&dishes, Item::Binder, supplies.binder),
        spray(&dishes, times),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn salt(dishes: &[(DishId, &Dish)], supplies: &Supplies) -> Option<Draft> {
    let parts: Vec<SaltPart> = dishes
        .iter()
        .filter_map(|(id, dish)| {
            let rub = rubbed_surface(dish)
                .map_or(Mass::ZERO, |surface| coating(supplies.rub).on(surface));
            let (amount, even) = salt_for(dish, rub * supplies.salt_in_rub)?;
            Some(SaltPart {
                dish: *id,
                amount,
                even,
            })
        })
        .collect();
    let all: Mass = parts.iter().map(|part| part.amount.salt()).sum();
    (all > Mass::ZERO).then(|| Draft {
        item: Item::Salt,
        dishes: parts.iter().map(|part| part.dish).collect(),
        amount: Some(Quantity::Mass(all)),
        working: Some(Working::Salt {
            teaspoons: supplies.salt.map(|kind| teaspoons(all, kind)),
            parts,
        }),
    })
}

const fn coating(rate: f64) -> CoatingRate {
    CoatingRate {
        least: rate,
        usual: rate,
        most: rate,
    }
}

fn coat(dishes: &[(DishId, &Dish)], item: Item, rate: f64) -> Option<Draft> {
    let surfaces: Vec<(DishId, Area)> = dishes
        .iter()
        .filter_map(|(id, dish)| Some((*id, rubbed_surface(dish)?)))
        .collect();
    let surface: Area = surfaces.iter().map(|(_, surface)| *surface).sum();
    let amount = coating(rate).on(surface);
    (amount > Mass::ZERO).then(|| Draft {
        item,
        dishes: surfaces.iter().map(|(id, _)| *id).collect(),
        amount: Some(Quantity::Mass(amount)),
        working: Some(Working::Surface { rate, surface }),
    })
}

/// Needs to know when each dish is wrapped or off: until then the line waits without an amount.
fn spray(dishes: &[(DishId, &Dish)], times: &Times) -> Option<Draft> {
    let sprayed: Vec<(DishId, &Dish)> = dishes
        .iter()
        .filter(|(_, dish)| dish.spray.is_some() && rubbed_surface(dish).is_some())
        .copied()
        .collect();
    if sprayed.is_empty() {
        return None;
    }
    let parts: Option<Vec<_>> = sprayed
        .iter()
        .map(|(id, dish)| {
            let need = spray_need(rubbed_surface(dish)?, dish.spray?, times.dish(*id)?.bare);
            Some((*id, need))
        })
        .collect();
    let volume = parts
        .as_ref()
        .map(|parts| parts.iter().map(|(_, need)| need.volume).sum::<Volume>());
    Some(Draft {
        item: Item::Spray,
        dishes: sprayed.iter().map(|(id, _)| *id).collect(),
        amount: volume.map(Quantity::Volume),
        working: parts.map(|parts| Working::Sprayed { parts }),
    })
}
