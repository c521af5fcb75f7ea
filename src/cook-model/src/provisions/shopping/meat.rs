//! Lines for the pieces of each dish.

use super::super::quantity::Quantity;
use super::super::weights::{Weights, dish_weights};
use super::item::Item;
use super::list::Draft;
use super::working::Working;
use crate::meat::CutId;
use crate::plan::{Dish, Food, Plan, in_order};

/// A line for each dish, in the person's order. Sausages and other things of a count are sold by weight as well: the
/// count is in the working.
pub(super) fn lines(plan: &Plan) -> Vec<Draft> {
    in_order(&plan.dishes, |dish| &dish.order)
        .into_iter()
        .map(|(id, dish)| {
            let cut = match &dish.food {
                Food::Cut { cut } => cut.parse::<CutId>().ok(),
                Food::Own { .. } => None,
            };
            match (cut, dish_weights(dish)) {
                (Some(cut), Some(weights)) => Draft {
                    item: Item::Meat(id),
                    dishes: vec![id],
                    amount: Some(Quantity::Mass(weights.bought)),
                    working: Some(Working::Pieces {
                        pieces: pieces(cut, dish),
                        weights,
                        source: cut.cut().edible_yield.source,
                    }),
                },
                _ => own(id, dish),
            }
        })
        .collect()
}

fn pieces(cut: CutId, dish: &Dish) -> Vec<(u32, crate::units::Mass)> {
    in_order(&dish.pieces, |piece| &piece.order)
        .into_iter()
        .map(|(_, piece)| (piece.count, Weights::of_one(cut, piece).bought))
        .collect()
}

fn own(id: crate::handover::identity::DishId, dish: &Dish) -> Draft {
    let count: u32 = dish
        .pieces
        .values()
        .fold(0, |sum, piece| sum.saturating_add(piece.count));
    let counted = count > 0;
    Draft {
        item: Item::OwnDish(id),
        dishes: vec![id],
        amount: counted.then_some(Quantity::Count(count)),
        working: counted.then_some(Working::Counted),
    }
}
