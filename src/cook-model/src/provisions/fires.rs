//! From plan and forecast to the fires: what burns where, for how long, at which temperatures.

use super::fuel::{
    Burn, FireWeather, Fuel, FuelNeed, LearnedFactor, Stretch, Vessel, fuel_need, meat_heat,
};
use super::weights::dish_weights;
use crate::handover::identity::CookerId;
use crate::handover::{Event, Journal, KnownEvent};
use crate::meat::CutId;
use crate::plan::outlook::{DishTimes, Outlook, StepKind};
use crate::plan::{Cooker, Dish, Food, OwnPlace, Plan, in_order};
use crate::units::{Energy, Moment, Temperature, TimeSpan};
use serde::Serialize;
use std::collections::BTreeMap;

/// Meat goes on from the fridge.
const FRIDGE: Temperature = Temperature::from_celsius(4.0);

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

/// The fire of a cook that is over, by its journal: from the first dish on to the last one off, with nothing learned. None
/// while a dish that went on this cooker is not known to be off, and for a cooker that is not fed.
#[must_use]
pub fn burnt(plan: &Plan, journal: &Journal, id: CookerId) -> Option<Burn> {
    let cooker = plan.cookers.get(&id)?;
    let (mut first, mut last) = (None::<Moment>, None::<Moment>);
    let mut meat = Energy::ZERO;
    for (dish_id, dish) in plan
        .dishes
        .iter()
        .filter(|(_, dish)| dish.cooker == Some(id))
    {
        let Some(on) = told(
            journal,
            |event| matches!(event, KnownEvent::On { dish } if dish == dish_id),
        ) else {
            continue;
        };
        let off = told(
            journal,
            |event| matches!(event, KnownEvent::Off { dish } | KnownEvent::MovedToOven { dish, .. } if dish == dish_id),
        )?;
        first = Some(first.map_or(on, |first| first.min(on)));
        last = Some(last.map_or(off, |last| last.max(off)));
        meat += heat_by_habit(dish);
    }
    let lasts = last? - first?;
    let pit = told_pit(journal, id).or_else(|| Some(cooker.programme.first()?.set))?;
    (lasts > TimeSpan::ZERO).then_some(())?;
    Some(Burn {
        kind: cooker.kind,
        vessel: vessel(cooker)?,
        fuel: cooker.burns()?,
        weather: FireWeather::from(&plan.place),
        stretches: vec![Stretch { pit, lasts }],
        longer: 1.0,
        meat,
        learned: LearnedFactor::NONE,
    })
}

/// When something happened last.
fn told(journal: &Journal, of: impl Fn(&KnownEvent) -> bool) -> Option<Moment> {
    let entries = journal.standing().filter_map(|(_, entry)| {
        let Event::Known(event) = &entry.event else {
            return None;
        };
        of(event).then_some(entry.at)
    });
    entries.max()
}

/// The mean of the pit readings that nobody doubted. None where there are fewer than three: the programme says more.
fn told_pit(journal: &Journal, id: CookerId) -> Option<Temperature> {
    let (mut sum, mut readings) = (0.0, 0_u32);
    for (_, entry) in journal.standing() {
        if let Event::Known(KnownEvent::Pit {
            cooker,
            reading,
            doubtful: false,
            ..
        }) = &entry.event
            && *cooker == id
        {
            sum += reading.celsius();
            readings += 1;
        }
    }
    (readings >= 3).then(|| Temperature::from_celsius(sum / f64::from(readings)))
}

/// What the meat takes without a forecast: to its usual target, with a third lost on the way (common practice for large
/// cuts). It is a small part of what a fire burns.
fn heat_by_habit(dish: &Dish) -> Energy {
    let cut = match &dish.food {
        Food::Cut { cut } => cut.parse::<CutId>().ok(),
        Food::Own { .. } => None,
    };
    let (Some(cut), Some(weights)) = (cut, dish_weights(dish)) else {
        return Energy::ZERO;
    };
    let target = dish.target.unwrap_or_else(|| cut.cut().default_target());
    meat_heat(weights.trimmed, 0.33, FRIDGE, target)
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
    meat_heat(weights.trimmed, times.loss[1], FRIDGE, target)
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
