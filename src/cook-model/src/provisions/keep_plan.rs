//! For a dish of the plan: the days on which to buy it, how long it keeps raw, and how its frozen pieces thaw.

use super::keeping::{
    BuyWindow, Frozen, Thaw, ThawPlace, ThawRefusal, buy_fresh, buy_frozen, thaw,
};
use crate::handover::identity::DishId;
use crate::meat::CutId;
use crate::plan::outlook::{Outlook, StepKind};
use crate::plan::{Dish, Food, Plan};
use crate::safety::{ThawSpan, keeps_raw};
use crate::units::{Moment, TimeSpan};
use serde::Serialize;

/// Buying, keeping and thawing a dish.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Keeping {
    /// When it can be bought.
    pub buy: BuyWindow,
    /// How long it keeps raw in the fridge: by the shorter and by the longer published figure.
    pub keeps: ThawSpan,
    /// When the first hand is laid on it: by then it is thawed.
    pub wanted: Moment,
    /// Every place to thaw, with what it takes or why not; empty where nothing is frozen.
    pub thaw: Vec<(ThawPlace, Result<Thaw, ThawRefusal>)>,
}

/// Buying, keeping and thawing a dish, seen from now. None for a dish of one's own, without a forecast, and where it is on
/// already.
#[must_use]
pub fn keeping(plan: &Plan, outlook: &Outlook, dish: DishId, now: Moment) -> Option<Keeping> {
    let planned = plan.dishes.get(&dish)?;
    let Food::Cut { cut } = &planned.food else {
        return None;
    };
    let cut: CutId = cut.parse().ok()?;
    let forecast = outlook.dishes.iter().find(|other| other.dish == dish)?;
    let on = forecast.forecast.as_ref().ok()?.on;
    let at = |kind| {
        let mut steps = outlook.steps.iter();
        let step = steps.find(|step| step.dish == Some(dish) && step.kind == kind)?;
        Some(step.when.likely())
    };
    let hands = [StepKind::Trim, StepKind::Salt, StepKind::Rub].map(at);
    let wanted = hands.into_iter().flatten().min().unwrap_or(on);
    if wanted <= now {
        return None;
    }
    let salted_ahead = at(StepKind::Salt).map_or(TimeSpan::ZERO, |salt| on - salt);
    let thaw = ways_to_thaw(planned, cut, wanted, salted_ahead, now);
    let chosen = ThawPlace::from(planned.thaw.unwrap_or_default());
    let frozen = thaw.iter().find(|(place, _)| *place == chosen);
    let buy = match frozen {
        Some((_, Ok(thaw))) => buy_frozen(thaw),
        // It cannot thaw in time: all that is left is to buy it fresh.
        Some((_, Err(_))) | None => {
            let fresh = buy_fresh(cut.cut().make, wanted, on);
            let planned = at(StepKind::Buy).filter(|buy| Some(*buy) >= fresh.earliest);
            BuyWindow {
                latest: planned.unwrap_or(wanted).min(wanted),
                ..fresh
            }
        }
    };
    Some(Keeping {
        buy,
        keeps: keeps_raw(cut.cut().make),
        wanted,
        thaw,
    })
}

fn ways_to_thaw(
    dish: &Dish,
    cut: CutId,
    wanted: Moment,
    salted_ahead: TimeSpan,
    now: Moment,
) -> Vec<(ThawPlace, Result<Thaw, ThawRefusal>)> {
    let frozen = dish.pieces.values().filter(|piece| piece.frozen);
    let heaviest = frozen
        .map(|piece| piece.mass)
        .reduce(crate::units::Mass::max);
    let Some(mass) = heaviest else {
        return Vec::new();
    };
    ThawPlace::ALL
        .into_iter()
        .map(|place| {
            // In water it would be salted as it goes on, unless the person says a time of their own.
            let own = dish.salt.map(|salt| salt.ahead);
            let salted_ahead = match place {
                ThawPlace::ColdWater => own.unwrap_or(TimeSpan::ZERO),
                ThawPlace::Fridge | ThawPlace::Counter => salted_ahead,
            };
            let frozen = Frozen {
                cut,
                mass,
                wanted,
                salted_ahead,
            };
            (place, thaw(&frozen, place, now))
        })
        .collect()
}
