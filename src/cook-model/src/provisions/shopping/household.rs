//! Lines for paper, foil, pans and ice, merged over dishes.

use super::super::cold_and_hot_box::{hot_box, ice_to_chill, ice_to_keep_cold};
use super::super::pans::{drip_pans, serving_pans};
use super::super::portions::portions;
use super::super::quantity::Quantity;
use super::super::size::Size;
use super::super::wrapping::wrap_need;
use super::item::Item;
use super::list::Draft;
use super::supplies::Supplies;
use super::working::Working;
use crate::handover::identity::DishId;
use crate::meat::CutId;
use crate::plan::{Cover, Dish, Food, HoldPlace, Plan, Wrap, in_order};
use crate::units::{Area, Length, Mass, Volume};

pub(super) fn lines(plan: &Plan, supplies: &Supplies) -> Vec<Draft> {
    let dishes = in_order(&plan.dishes, |dish| &dish.order);
    [
        wrapping(&dishes, Item::Paper, Cover::Paper, supplies),
        wrapping(&dishes, Item::Foil, Cover::Foil, supplies),
        supplies.pans.then(|| under(&dishes)).flatten(),
        supplies.pans.then(|| serving(plan, &dishes)).flatten(),
        rest_box(&dishes),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// The cover of a dish: as planned, else as its cut is usually wrapped.
fn cover(dish: &Dish, cut: CutId) -> Option<Cover> {
    match dish.wrap {
        Some(Wrap::Bare) => None,
        Some(Wrap::Paper { .. }) => Some(Cover::Paper),
        Some(Wrap::Foil { .. }) => Some(Cover::Foil),
        None => match cut.cut().programme.wrap?.0 {
            crate::physics::Cover::Bare => None,
            crate::physics::Cover::Paper => Some(Cover::Paper),
            crate::physics::Cover::Foil => Some(Cover::Foil),
        },
    }
}

/// Every piece of the cuts that the catalogue has, with its size.
fn sizes<'a>(
    dishes: &'a [(DishId, &'a Dish)],
) -> impl Iterator<Item = (DishId, &'a Dish, CutId, u32, Size)> {
    dishes.iter().flat_map(|(id, dish)| {
        let cut = match &dish.food {
            Food::Cut { cut } => cut.parse::<CutId>().ok(),
            Food::Own { .. } => None,
        };
        cut.into_iter().flat_map(move |cut| {
            dish.pieces
                .values()
                .map(move |piece| (*id, *dish, cut, piece.count, Size::of_one(cut, piece)))
        })
    })
}

fn wrapping(
    dishes: &[(DishId, &Dish)],
    item: Item,
    wanted: Cover,
    supplies: &Supplies,
) -> Option<Draft> {
    let roll = supplies.roll(wanted);
    let parts: Vec<_> = sizes(dishes)
        .filter(|(_, dish, cut, ..)| cover(dish, *cut) == Some(wanted))
        .map(|(id, _, _, count, size)| (id, count, wrap_need(&size, roll)))
        .collect();
    let length: Length = parts
        .iter()
        .map(|(_, count, need)| need.length * f64::from(*count))
        .sum();
    (length > Length::ZERO).then(|| Draft {
        item,
        dishes: unique(parts.iter().map(|(id, ..)| *id)),
        amount: Some(Quantity::Length(length)),
        working: Some(Working::Wrapped { roll, parts }),
    })
}

fn under(dishes: &[(DishId, &Dish)]) -> Option<Draft> {
    let footprint: Area = sizes(dishes)
        .map(|(_, _, _, count, size)| size.footprint() * f64::from(count))
        .sum();
    let pans = drip_pans(footprint);
    (pans > 0).then(|| Draft {
        item: Item::DripPans,
        dishes: unique(sizes(dishes).map(|(id, ..)| id)),
        amount: Some(Quantity::Count(pans)),
        working: Some(Working::UnderFootprint { footprint }),
    })
}

fn serving(plan: &Plan, dishes: &[(DishId, &Dish)]) -> Option<Draft> {
    let cooked = portions(plan).planned;
    let pans = serving_pans(cooked);
    (pans > 0).then(|| Draft {
        item: Item::ServingPans,
        dishes: unique(sizes(dishes).map(|(id, ..)| id)),
        amount: Some(Quantity::Count(pans)),
        working: Some(Working::ForCooked { cooked }),
    })
}

/// A box for the pieces of all dishes that wait in one: as planned, else as cuts that are cooked to tenderness usually do.
fn rest_box(dishes: &[(DishId, &Dish)]) -> Option<Draft> {
    let held: Vec<_> = sizes(dishes)
        .filter(|(_, dish, cut, ..)| match dish.hold {
            Some(hold) => hold == HoldPlace::RestBox,
            None => cut.cut().cooks_to_tenderness(),
        })
        .collect();
    let pieces: Vec<(Size, u32)> = held
        .iter()
        .map(|(_, _, _, count, size)| (*size, *count))
        .collect();
    let need = hot_box(&pieces);
    (need.room > Volume::ZERO).then(|| Draft {
        item: Item::RestBox,
        dishes: unique(held.iter().map(|(id, ..)| *id)),
        amount: Some(Quantity::Volume(need.room)),
        working: Some(Working::Held { need }),
    })
}

/// Ice for the way home and for what is wanted over.
pub(super) fn ice(plan: &Plan, supplies: &Supplies) -> Option<Draft> {
    let on_the_way = ice_to_keep_cold(supplies.cold_travel, plan.place.air);
    let leftovers = ice_to_chill(plan.appetite.leftovers);
    let all = on_the_way + leftovers;
    (all > Mass::ZERO).then(|| Draft {
        item: Item::Ice,
        dishes: Vec::new(),
        amount: Some(Quantity::Mass(all)),
        working: Some(Working::Ice {
            on_the_way,
            leftovers,
        }),
    })
}

fn unique(ids: impl Iterator<Item = DishId>) -> Vec<DishId> {
    let mut seen: Vec<DishId> = Vec::new();
    for id in ids {
        if !seen.contains(&id) {
            seen.push(id);
        }
    }
    seen
}
