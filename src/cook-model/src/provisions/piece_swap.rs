//! The shop has another piece: what it does to portions, price and room, and the plan with it.

use super::offer::{Offer, OfferError, SwapWay};
use super::portions::portions;
use super::shopping::{Bill, Item, Purchase, bill, shopping_list};
use super::size::grate_room;
use super::weights::{Weights, dish_weights};
use crate::handover::identity::{CookerId, DishId, PieceId};
use crate::plan::outlook::{Outlook, Portions};
use crate::plan::{Food, Plan};
use crate::provisions::fuel::LearnedFactor;
use crate::units::Area;
use serde::Serialize;
use std::collections::BTreeMap;

/// The plan with the offer taken: its pieces replace those of the dish, its price that of the line on the list. `piece`
/// is a new id from the caller.
///
/// # Errors
/// If the offer cannot be reckoned with, or the dish has no cut.
pub fn take_offer(
    plan: &Plan,
    dish: DishId,
    offer: &Offer,
    way: SwapWay,
    piece: PieceId,
) -> Result<Plan, OfferError> {
    let mass = offer.checked()?;
    let mut plan = plan.clone();
    let planned = plan.dishes.get_mut(&dish).ok_or(OfferError::NoSuchDish)?;
    let Food::Cut { cut } = &mut planned.food else {
        return Err(OfferError::NoSuchDish);
    };
    if *cut != offer.cut.slug() {
        offer.cut.slug().clone_into(cut);
        // What was chosen for the other cut does not hold for this one.
        planned.target = None;
        planned.wrap = None;
        planned.rest = None;
        planned.slicing = None;
    }
    planned.pieces = BTreeMap::from([(piece, offer.piece(mass, way))]);
    if let Some(price) = offer.price {
        let purchase = plan.purchases.entry(Item::Meat(dish)).or_default();
        *purchase = Purchase {
            price: Some(price),
            amount: None,
            ..*purchase
        };
    }
    Ok(plan)
}

/// One side of the comparison.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Side {
    /// The dish along its way.
    pub weights: Weights,
    /// All dishes on the plate.
    pub portions: Portions,
    /// What everything costs.
    pub bill: Bill,
    /// Room that all dishes on the dish's cooker want.
    pub room: Area,
}

/// Before and after, without a forecast: the day's move comes from planning the changed plan.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SwapEffect {
    /// As planned.
    pub before: Side,
    /// With the offer.
    pub after: Side,
    /// Grate of the dish's cooker; none without one.
    pub grate: Option<Area>,
}

/// What an offer changes at once. Amounts that hang on a forecast stay as in `outlook`.
///
/// # Errors
/// If the offer cannot be reckoned with, or the dish has no cut.
pub fn swap_effect(
    plan: &Plan,
    outlook: Option<&Outlook>,
    learned: &BTreeMap<CookerId, LearnedFactor>,
    dish: DishId,
    changed: &Plan,
) -> Result<SwapEffect, OfferError> {
    let side = |plan: &Plan| {
        let planned = plan.dishes.get(&dish).ok_or(OfferError::NoSuchDish)?;
        let list = shopping_list(plan, outlook, learned);
        let shares = plan
            .dishes
            .values()
            .filter(|other| other.cooker == planned.cooker);
        Ok(Side {
            weights: dish_weights(planned).ok_or(OfferError::NoSuchDish)?,
            portions: portions(plan),
            bill: bill(&list, plan.guests),
            room: shares.filter_map(grate_room).sum(),
        })
    };
    let cooker = plan.dishes.get(&dish).and_then(|dish| dish.cooker);
    Ok(SwapEffect {
        before: side(plan)?,
        after: side(changed)?,
        grate: cooker
            .and_then(|cooker| plan.cookers.get(&cooker))
            .map(|cooker| cooker.grate),
    })
}
