//! The shop has another piece: what it does to the plates, the price and the day, before it is bought.

pub mod fields;
pub mod outcome;
pub mod ways;

use super::Listed;
use crate::device::ids::Ids;
use crate::device::money;
use crate::parts::Slip;
use crate::store::{Edit, Store, ToTry, use_store};
use crate::words::{dishes, swap as words};
use cook_model::handover::identity::{CookerId, DishId, PieceId};
use cook_model::meat::CutId;
use cook_model::plan::outlook::{DishTimes, StepKind};
use cook_model::plan::{Food, Plan, StepKey, in_order};
use cook_model::provisions::fuel::LearnedFactor;
use cook_model::provisions::shopping::Item;
use cook_model::provisions::{Instead, Offer, OfferError, SwapWay, Weights, take_offer};
use fields::OfferFields;
use leptos::prelude::*;
use outcome::Outcome;
use std::collections::BTreeMap;
use std::sync::Arc;
use ways::Ways;

/// The dish whose piece is looked for; shared by everything on the screen.
#[derive(Clone, Copy)]
pub(crate) struct LookingFor(pub(crate) RwSignal<Option<DishId>>);

/// What the shop has, and the plans that would come of it.
#[derive(Clone, Copy)]
pub(super) struct Swap {
    pub(super) store: Store,
    pub(super) dish: DishId,
    pub(super) offer: RwSignal<Offer>,
    pub(super) instead: RwSignal<Instead>,
    pub(super) chosen: RwSignal<Chosen>,
    pub(super) plans: Memo<Result<Tries, OfferError>>,
    pub(super) learned: Memo<BTreeMap<CookerId, LearnedFactor>>,
}

/// What is done with the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Chosen {
    /// On when the promise is kept.
    Kept,
    /// On when it was planned.
    Same,
    /// Cut in two, and on when the promise is kept.
    InTwo,
}

impl Chosen {
    /// What is done with the piece.
    pub(super) const fn way(self) -> SwapWay {
        match self {
            Self::Kept | Self::Same => SwapWay::Whole,
            Self::InTwo => SwapWay::CutInTwo,
        }
    }
}

/// The plan with the offer taken, each way, on when the promise is kept.
#[derive(Clone, PartialEq)]
pub(super) struct Tries {
    pub(super) whole: Arc<Plan>,
    pub(super) in_two: Arc<Plan>,
}

impl Tries {
    pub(super) const fn of(&self, way: SwapWay) -> &Arc<Plan> {
        match way {
            SwapWay::Whole => &self.whole,
            SwapWay::CutInTwo => &self.in_two,
        }
    }
}

/// The number of a way among those that are tried side by side.
pub(super) const fn number(way: SwapWay) -> u32 {
    match way {
        SwapWay::Whole => 0,
        SwapWay::CutInTwo => 1,
    }
}

impl Swap {
    fn new(store: Store, dish: DishId, offer: Offer, instead: Instead) -> Self {
        let offer = RwSignal::new(offer);
        let instead = RwSignal::new(instead);
        let piece = Ids.piece();
        let plans = Memo::new(move |_| {
            let plan = store.plan.get().ok_or(OfferError::NoSuchDish)?;
            let (offer, instead) = (offer.get(), instead.get());
            let take = |way| taken(&plan, dish, &offer, way, instead, piece).map(Arc::new);
            Ok(Tries {
                whole: take(SwapWay::Whole)?,
                in_two: take(SwapWay::CutInTwo)?,
            })
        });
        Self {
            store,
            dish,
            offer,
            instead,
            chosen: RwSignal::new(Chosen::Kept),
            plans,
            learned: expect_context::<Listed>().learned,
        }
    }

    /// The times of the dish as planned.
    pub(super) fn planned(self) -> Option<DishTimes> {
        self.store.forecast().with(|forecast| {
            let dishes = &forecast.outlook.as_ref()?.dishes;
            let found = dishes.iter().find(|other| other.dish == self.dish)?;
            found.forecast.as_ref().ok().cloned()
        })
    }
}

/// The plan with an offer taken, on when the promise is kept: a pin on its start goes. A name that the person has not touched follows the cut.
fn taken(
    plan: &Plan,
    dish: DishId,
    offer: &Offer,
    way: SwapWay,
    instead: Instead,
    piece: PieceId,
) -> Result<Plan, OfferError> {
    let before = plan.dishes.get(&dish).and_then(|dish| cut_of(&dish.food));
    let mut taken = take_offer(plan, dish, offer, way, instead, piece)?;
    if let (Some(before), Some(named)) = (before, taken.dishes.get_mut(&dish))
        && named.name == dishes::dish_name(before)
    {
        dishes::dish_name(offer.cut).clone_into(&mut named.name);
    }
    taken.pin(StepKey::dish(dish, StepKind::On), None);
    Ok(taken)
}

fn cut_of(food: &Food) -> Option<CutId> {
    match food {
        Food::Cut { cut } => cut.parse().ok(),
        Food::Own { .. } => None,
    }
}

/// What is planned, as if the shop had just that: where the search begins.
fn as_planned(plan: &Plan, dish: DishId) -> Option<(Offer, Instead)> {
    let planned = plan.dishes.get(&dish)?;
    let cut = cut_of(&planned.food)?;
    let pieces = in_order(&planned.pieces, |piece| &piece.order);
    let (id, first) = pieces.first()?;
    let alone = pieces.len() == 1;
    let offer = Offer {
        cut,
        count: if alone { first.count } else { 1 },
        mass: Some(Weights::of_one(cut, first).bought),
        bones: None,
        thickness: first.thickness,
        price: plan
            .purchases
            .get(&Item::Meat(dish))
            .and_then(|purchase| purchase.price),
        frozen: first.frozen,
        intact: first.intact,
    };
    let instead = if alone {
        Instead::All
    } else {
        Instead::OneOf { piece: *id }
    };
    Some((offer, instead))
}

/// The slip.
#[component]
pub fn SwapSlip(
    /// The dish whose piece is looked for.
    dish: DishId,
) -> impl IntoView {
    let store = use_store();
    let LookingFor(looking) = expect_context();
    let planned = store
        .plan
        .with_untracked(|plan| as_planned(plan.as_ref()?, dish));
    let close = move |()| looking.set(None);
    planned.map(|(offer, instead)| {
        let swap = Swap::new(store, dish, offer, instead);
        provide_context(swap);
        try_them(swap);
        view! {
            <Slip title=Signal::stored(words::TITLE.to_owned()) on_close=close>
                <p class="note">{move || planned_in_words(swap)}</p>
                <OfferFields />
                <Outcome />
                <Ways />
                <Keys />
            </Slip>
        }
    })
}

fn planned_in_words(swap: Swap) -> String {
    let formats = swap.store.formats.get();
    swap.store.plan.with(|plan| {
        let dish = plan.as_ref().and_then(|plan| plan.dishes.get(&swap.dish));
        dish.map_or_else(String::new, |dish| words::planned(dish, &formats))
    })
}

/// Asks what the day does, again with every change of the offer or the plan.
fn try_them(swap: Swap) {
    let store = swap.store;
    let planned_on = Memo::new(move |_| swap.planned().map(|times| times.on));
    Effect::new(move |_| {
        let also = planned_on.get();
        let tries = swap.plans.get();
        let way = |tries: &Tries, way| ToTry {
            way: number(way),
            plan: Plan::clone(tries.of(way)),
            dish: swap.dish,
            also,
        };
        store.try_plans(tries.map_or_else(
            |_| Vec::new(),
            |tries| vec![way(&tries, SwapWay::Whole), way(&tries, SwapWay::CutInTwo)],
        ));
    });
    on_cleanup(move || store.try_plans(Vec::new()));
}

/// Keep looking, or take it.
#[component]
fn Keys() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let LookingFor(looking) = expect_context();
    let store = swap.store;
    let take = move |_| {
        let Ok(tries) = swap.plans.get_untracked() else {
            return;
        };
        let chosen = swap.chosen.get_untracked();
        let taken = tries.of(chosen.way());
        // A start that is left where it was is pinned, or the plan would move it.
        let pin = match chosen {
            Chosen::Same => swap.planned().map(|times| times.on),
            Chosen::Kept | Chosen::InTwo => None,
        };
        let name = store.plan.with_untracked(|plan| {
            let dish = plan.as_ref()?.dishes.get(&swap.dish)?;
            Some(dish.name.clone())
        });
        let priced = swap.offer.with_untracked(|offer| offer.price.is_some());
        store.edit(Edit::PieceTaken(name.unwrap_or_default()), |plan| {
            *plan = Plan::clone(taken);
            if pin.is_some() {
                plan.pin(StepKey::dish(swap.dish, StepKind::On), pin);
            }
            if priced && plan.currency.is_none() {
                plan.currency = Some(money::usual());
            }
        });
        looking.set(None);
    };
    view! {
        <div class="pair take">
            <button type="button" class="btn" on:click=move |_| looking.set(None)>{words::KEEP_LOOKING}</button>
            <button type="button" class="btn act" disabled=move || swap.plans.with(Result::is_err) on:click=take>
                {words::TAKE_IT}
            </button>
        </div>
    }
}
