//! The shop has another piece: what it does to portions, price and room, and the plan with it.

use super::offer::{Instead, Offer, OfferError, SwapWay};
use super::portions::portions;
use super::shopping::{Bill, Item, Purchase, bill, shopping_list};
use super::size::grate_room;
use super::weights::{Weights, dish_weights};
use crate::handover::identity::{CookerId, DishId, PieceId};
use crate::plan::outlook::{Outlook, Portions};
use crate::plan::{Dish, Food, Order, Plan};
use crate::provisions::fuel::LearnedFactor;
use crate::units::Area;
use serde::Serialize;
use std::collections::BTreeMap;

/// The plan with the offer taken: its pieces stand in for those of the dish, or for one of them, and its price for that
/// of the line on the list. `piece` is a new id from the caller.
///
/// # Errors
/// If the offer cannot be reckoned with, the dish has no cut, or the piece that it is to stand in for is not there.
pub fn take_offer(
    plan: &Plan,
    dish: DishId,
    offer: &Offer,
    way: SwapWay,
    instead: Instead,
    piece: PieceId,
) -> Result<Plan, OfferError> {
    let mass = offer.checked()?;
    let mut plan = plan.clone();
    let planned = plan.dishes.get_mut(&dish).ok_or(OfferError::NoSuchDish)?;
    let Food::Cut { cut } = &mut planned.food else {
        return Err(OfferError::NoSuchDish);
    };
    let another = *cut != offer.cut.slug();
    if another {
        offer.cut.slug().clone_into(cut);
        // What was chosen for the other cut does not hold for this one.
        planned.target = None;
        planned.wrap = None;
        planned.rest = None;
        planned.slicing = None;
    }
    let mut taken = offer.piece(mass, way);
    match instead {
        // A dish is of one cut: where that is another, every piece is.
        Instead::OneOf { piece: one } if !another => {
            taken.order = leave_out_one(planned, one)?;
            planned.pieces.insert(piece, taken);
        }
        Instead::All | Instead::OneOf { .. } => {
            planned.pieces = BTreeMap::from([(piece, taken)]);
        }
    }
    if let Some(price) = offer.price {
        let purchase = plan.purchases.entry(Item::Meat(dish)).or_default();
        *purchase = Purchase {
            price: Some(price),
            ..*purchase
        };
    }
    // The person's own amount was for the pieces that are no longer wanted.
    if let Some(purchase) = plan.purchases.get_mut(&Item::Meat(dish)) {
        purchase.amount = None;
    }
    Ok(plan)
}

/// Takes one of a piece's count out of a dish. The place in the order for what stands in for it: just behind.
fn leave_out_one(dish: &mut Dish, one: PieceId) -> Result<Order, OfferError> {
    let left_out = dish.pieces.get_mut(&one).ok_or(OfferError::NoSuchPiece)?;
    let place = left_out.order.clone();
    left_out.count = left_out.count.saturating_sub(1);
    if left_out.count == 0 {
        dish.pieces.remove(&one);
    }
    let behind = dish.pieces.values().map(|piece| &piece.order);
    let next = behind.filter(|order| **order > place).min();
    Ok(Order::between(Some(&place), next))
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
