//! From plan and forecast to the fires: what burns where, for how long, at which temperatures.

use super::fuel::{
    Burn, FireWeather, Fuel, FuelNeed, LearnedFactor, Stretch, Vessel, fuel_need, meat_heat,
};
use super::weights::dish_weights;
use crate::handover::identity::CookerId;
use crate::plan::outlook::{DishTimes, Outlook, StepKind};
use crate::plan::{Cooker, Dish, Food, OwnPlace, Plan, in_order};
use crate::units::{Energy, Moment, Temperature, TimeSpan};
use serde::Serialize;
use std::collections::BTreeMap;

/// What a cooker burns.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FireNeed {
    /// The fuel.
    pub fuel: Fuel,
    /// How much. None: it waits for a forecast.
    pub need: Option<FuelNeed>,
}

/// The fire of each cooker that is fed and that a dish is cooked on, in the person's order.
#[must_use]
pub fn fires(
    plan: &Plan,
    outlook: Option<&Outlook>,
    learned: &BTreeMap<CookerId, LearnedFactor>,
) -> Vec<(CookerId, FireNeed)> {
    in_order(&plan.cookers, |cooker| &cooker.order)
        .into_iter()
        .filter(|(id, _)| plan.dishes.values().any(|dish| dish.cooker == Some(*id)))
        .filter_map(|(id, cooker)| {
            let fuel = cooker.burns()?;
            let factor = learned.get(&id).copied().unwrap_or_default();
            let need = burn(plan, outlook, id, cooker, fuel, factor).map(|burn| fuel_need(&burn));
            Some((id, FireNeed { fuel, need }))
        })
        .collect()
}

fn burn(
    plan: &Plan,
    outlook: Option<&Outlook>,
    id: CookerId,
    cooker: &Cooker,
    fuel: Fuel,
    learned: LearnedFactor,
) -> Option<Burn> {
    let mut span = Span::default();
    let mut own = TimeSpan::ZERO;
    let mut meat = Energy::ZERO;
    for (dish_id, dish) in plan
        .dishes
        .iter()
        .filter(|(_, dish)| dish.cooker == Some(id))
    {
        match &dish.food {
            Food::Own {
                likely,
                place: OwnPlace::Cooker,
                ..
            } => own = own.max(*likely),
            Food::Own { .. } => {}
            Food::Cut { .. } => {
                let forecast = outlook?
                    .dishes
                    .iter()
                    .find(|other| other.dish == *dish_id)?;
                let times = forecast.forecast.as_ref().ok()?;
                span.take_in(times.on, times.ready.likely(), times.ready.to());
                meat += heat_of(dish, times);
            }
        }
    }
    // A dish of one's own alone: its minutes are the fire.
    let lasts = span.likely().max(own);
    if lasts <= TimeSpan::ZERO {
        return None;
    }
    let longer = if span.likely() >= own {
        span.late() / lasts
    } else {
        1.0
    };
    Some(Burn {
        kind: cooker.kind,
        vessel: vessel(cooker)?,
        fuel,
        weather: FireWeather::from(&plan.place),
        stretches: stretches(cooker, outlook, id, span.from, lasts),
        longer: longer.clamp(1.0, 3.0),
        meat,
        learned,
    })
}

fn vessel(cooker: &Cooker) -> Option<Vessel> {
    let vessel = Vessel::for_grate(cooker.kind, cooker.grate)?;
    Some(match cooker.chamber {
        Some(chamber) => vessel.with_chamber(chamber),
        None => vessel,
    })
}

fn heat_of(dish: &Dish, times: &DishTimes) -> Energy {
    let (Some(weights), Some(target)) = (dish_weights(dish), times.target) else {
        return Energy::ZERO;
    };
    let fridge = Temperature::from_celsius(4.0);
    meat_heat(weights.trimmed, times.loss[1], fridge, target)
}

/// From the first dish on to the last one off.
#[derive(Default)]
struct Span {
    from: Option<Moment>,
    to: Option<Moment>,
    latest: Option<Moment>,
}

impl Span {
    fn take_in(&mut self, on: Moment, likely: Moment, late: Moment) {
        self.from = Some(self.from.map_or(on, |from| from.min(on)));
        self.to = Some(self.to.map_or(likely, |to| to.max(likely)));
        self.latest = Some(self.latest.map_or(late, |latest| latest.max(late)));
    }

    fn since(&self, end: Option<Moment>) -> TimeSpan {
        match (self.from, end) {
            (Some(from), Some(end)) => end - from,
            _ => TimeSpan::ZERO,
        }
    }

    fn likely(&self) -> TimeSpan {
        self.since(self.to)
    }

    fn late(&self) -> TimeSpan {
        self.since(self.latest)
    }
}

/// The programme with the likely moments of its changes, in order; a change without a moment is left out.
fn stretches(
    cooker: &Cooker,
    outlook: Option<&Outlook>,
    id: CookerId,
    from: Option<Moment>,
    lasts: TimeSpan,
) -> Vec<Stretch> {
    let changes: Vec<TimeSpan> = match (outlook, from) {
        (Some(outlook), Some(from)) => outlook
            .steps
            .iter()
            .filter(|step| step.kind == StepKind::PitChange && step.cooker == Some(id))
            .map(|step| (step.when.likely() - from).max(TimeSpan::ZERO).min(lasts))
            .collect(),
        _ => Vec::new(),
    };
    let sets: Vec<Temperature> = cooker.programme.iter().map(|step| step.set).collect();
    let ends = changes.iter().copied().chain([lasts]);
    let mut begun = TimeSpan::ZERO;
    sets.into_iter()
        .zip(ends)
        .map(|(pit, end)| {
            let stretch = Stretch {
                pit,
                lasts: (end - begun).max(TimeSpan::ZERO),
            };
            begun = begun.max(end);
            stretch
        })
        .collect()
}
