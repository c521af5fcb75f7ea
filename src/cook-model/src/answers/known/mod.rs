//! What plan, forecast and journal know of a question's facts already, so that a person need not type it again.
//!
//! A core reading is only taken over while it is fresh: an old one is never put in the place of one that is missing.

mod told;

use super::prompt::{Prompt, PromptKind};
use super::{Question, prompts};
use crate::handover::Journal;
use crate::handover::identity::DishId;
use crate::meat::{Cut, CutId};
use crate::plan::outlook::{DishTimes, Outlook};
use crate::plan::{Dish, Food, Intact, Plan, Zone, in_order};
use crate::provisions::{Quantity, dish_weights, fires};
use crate::units::{Mass, Moment, Temperature, TimeSpan};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;
use told::Told;

/// Where a question is asked.
#[derive(Clone, Copy, Debug)]
pub struct Setting<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// What the model makes of it, where it has answered.
    pub outlook: Option<&'a Outlook>,
    /// What happened.
    pub journal: &'a Journal,
    /// The present moment.
    pub now: Moment,
    /// The local clock around the plan.
    pub zone: &'a Zone,
    /// About which dish; none: about no dish of the plan.
    pub dish: Option<DishId>,
}

impl Question {
    /// The facts of a kind of question that are known already. What is not known, or lies outside what is asked for, is
    /// left out.
    #[must_use]
    pub fn known(kind: &str, setting: &Setting<'_>) -> Map<String, Value> {
        let here = Here::of(setting);
        let asked = prompts::of(kind).unwrap_or_default().iter();
        let known = asked.filter_map(|prompt| {
            let fact = here.fact(kind, prompt.key)?;
            is_in_range(prompt, &fact).then(|| (prompt.key.to_owned(), fact))
        });
        known.collect()
    }
}

/// Whether every number of a fact lies in what is asked for.
fn is_in_range(prompt: &Prompt, fact: &Value) -> bool {
    let Some((low, high, _)) = prompt.kind.range() else {
        return !matches!(prompt.kind, PromptKind::Loads)
            || fact.as_array().is_some_and(|all| !all.is_empty());
    };
    let numbers: Vec<f64> = match fact {
        Value::Array(several) => several.iter().filter_map(Value::as_f64).collect(),
        one => one.as_f64().into_iter().collect(),
    };
    let inside = numbers.iter().all(|number| (low..=high).contains(number));
    !numbers.is_empty() && inside
}

/// A setting with its dish looked up.
struct Here<'a> {
    setting: Setting<'a>,
    dish: Option<&'a Dish>,
    cut: Option<&'static Cut>,
    times: Option<&'a DishTimes>,
    told: Told<'a>,
}

impl<'a> Here<'a> {
    fn of(setting: &Setting<'a>) -> Self {
        let dish = setting.dish.and_then(|id| setting.plan.dishes.get(&id));
        Self {
            setting: *setting,
            dish,
            cut: dish.and_then(cut_of).map(CutId::cut),
            times: setting.dish.and_then(|id| times_of(setting.outlook, id)),
            told: Told::of(setting, dish),
        }
    }

    fn fact(&self, kind: &str, key: &str) -> Option<Value> {
        let plan = self.setting.plan;
        let told = &self.told;
        Some(match (kind, key) {
            (_, "cut") => json!(self.cut?.id),
            (_, "intact") => json!(intact(self.dish?)),
            (_, "audience") => json!(plan.audience),
            (_, "air") => json!(plan.place.air),
            (_, "wind_metres_per_second") => json!(plan.place.wind_metres_per_second),
            (_, "altitude") => json!(plan.place.altitude),
            ("thaw_in_time" | "cut_smaller", "mass") => json!(heaviest(self.dish?)?),
            ("heat_lost" | "can_it_wait", "mass") | (_, "trimmed") => {
                json!(dish_weights(self.dish?)?.trimmed)
            }
            (_, "bought") | ("how_much", "raw") => json!(dish_weights(self.dish?)?.bought),
            (_, "core_now" | "core") => json!(told.fresh_core()?),
            (_, "core_before") => json!(told.earlier_core()?),
            ("heat_lost", "since") => json!(told.heat_lost_for()?),
            ("slow_to_warm", "since") => json!(told.out_of_the_cold_for()?),
            ("left_out", "span") => json!(told.left_out_for()?),
            ("left_out", "raw") => json!(told.is_raw()?),
            ("left_out", "served") => json!(told.is_served()?),
            (_, "coolest_pit") => json!(told.coolest_pit()?),
            ("running_late", "pit") => json!(told.fresh_pit()?),
            ("running_late", "pit_planned") => json!(self.pit()?),
            (_, "wrapped") => json!(told.is_wrapped()?),
            (_, "left") => json!(self.until(plan.serving.moment())?),
            (_, "still_takes") => json!(self.still_takes()?),
            ("odd_reading", "expected") => json!(self.expected()?),
            ("thaw_in_time", "available") => json!(self.until(self.times?.on)?),
            ("will_it_fit", "available") => json!(self.until(plan.serving.moment())?),
            ("will_it_fit", "takes") => json!(self.takes()?),
            ("clock_change", "takes") => json!(self.takes()?[1]),
            (_, "first_time") => json!(self.dish?.first_time),
            (_, "loads") => json!(self.loads()),
            (_, "people") => json!(plan.guests.count()),
            (_, "portion") => json!(plan.appetite.grown),
            (_, "target") => json!(self.target()?),
            (_, "per_hour") => json!(self.burns_per_hour()?),
            (_, "wanted") => json!(self.fire_wanted()?),
            (_, "on") => json!(self.times?.on),
            (_, "zone") => json!(self.setting.zone),
            _ => return None,
        })
    }

    fn until(&self, moment: Moment) -> Option<TimeSpan> {
        let left = moment - self.setting.now;
        (left > TimeSpan::ZERO).then_some(left)
    }

    /// What the forecast still gives it: shortest, likely, longest.
    fn still_takes(&self) -> Option<[TimeSpan; 3]> {
        let ready = &self.times?.ready;
        let ends = [ready.from(), ready.likely(), ready.to()];
        Some(ends.map(|end| (end - self.setting.now).max(TimeSpan::ZERO)))
    }

    /// From on to the table: shortest, likely, longest.
    fn takes(&self) -> Option<[TimeSpan; 3]> {
        let times = self.times?;
        let ready = &times.table_ready;
        let ends = [ready.from(), ready.likely(), ready.to()];
        Some(ends.map(|end| (end - times.on).max(TimeSpan::ZERO)))
    }

    /// The core that the forecast expects now.
    fn expected(&self) -> Option<Temperature> {
        let times = self.times?;
        let after = self.setting.now - times.on;
        let mut course = times.course.iter().rev();
        let point = course.find(|point| point.after <= after)?;
        (after >= TimeSpan::ZERO).then_some(point.core[1])
    }

    fn target(&self) -> Option<Temperature> {
        let planned = self.times.and_then(|times| times.target);
        let chosen = self.dish.and_then(|dish| dish.target);
        planned
            .or(chosen)
            .or_else(|| Some(self.cut?.default_target()))
    }

    fn pit(&self) -> Option<Temperature> {
        let dish = self.dish?;
        let cooker = dish
            .cooker
            .and_then(|id| self.setting.plan.cookers.get(&id));
        let first = cooker
            .and_then(|cooker| cooker.programme.first())
            .map(|step| step.set);
        dish.pit.or(first)
    }

    /// What shares the cooker of the dish, or of the first dish.
    fn loads(&self) -> Vec<Value> {
        let dishes = &self.setting.plan.dishes;
        let first = in_order(dishes, |dish| &dish.order);
        let cooker = match self.dish {
            Some(dish) => dish.cooker,
            None => first.first().and_then(|(_, dish)| dish.cooker),
        };
        let there = first.iter().filter(|(_, dish)| dish.cooker == cooker);
        let load = |(id, dish): &(DishId, &Dish)| {
            let times = times_of(self.setting.outlook, *id)?;
            let takes = times.ready.likely() - times.on;
            Some(json!({"cut": cut_of(dish)?, "takes": takes.max(TimeSpan::ZERO)}))
        };
        there.filter_map(load).collect()
    }

    /// What its fire burns in an hour: least, likely, and what suffices in nine cooks of ten. The least is as far below
    /// the likely as the most is above it.
    fn burns_per_hour(&self) -> Option<[Mass; 3]> {
        let cooker = self.dish?.cooker?;
        let all = fires(self.setting.plan, self.setting.outlook, &BTreeMap::new());
        let (_, fire) = all.into_iter().find(|(id, _)| *id == cooker)?;
        let need = fire.need?;
        match (need.rate, need.likely, need.have) {
            (Quantity::Mass(rate), Quantity::Mass(likely), Quantity::Mass(have))
                if likely > Mass::ZERO =>
            {
                let more = have / likely;
                Some([rate * (1.0 / more), rate, rate * more])
            }
            _ => None,
        }
    }

    /// From on to the latest that it is likely to come off.
    fn fire_wanted(&self) -> Option<TimeSpan> {
        let times = self.times?;
        Some((times.ready.to() - times.on).max(TimeSpan::ZERO))
    }
}

fn cut_of(dish: &Dish) -> Option<CutId> {
    match &dish.food {
        Food::Cut { cut } => cut.parse().ok(),
        Food::Own { .. } => None,
    }
}

fn times_of(outlook: Option<&Outlook>, id: DishId) -> Option<&DishTimes> {
    let seen = outlook?.dishes.iter().find(|seen| seen.dish == id)?;
    seen.forecast.as_ref().ok()
}

/// One piece that is not intact, or not known, speaks for all.
fn intact(dish: &Dish) -> Intact {
    let pieces = || dish.pieces.values().map(|piece| piece.intact);
    if pieces().any(|intact| intact == Intact::No) {
        Intact::No
    } else if dish.pieces.is_empty() || pieces().any(|intact| intact == Intact::Unknown) {
        Intact::Unknown
    } else {
        Intact::Yes
    }
}

fn heaviest(dish: &Dish) -> Option<Mass> {
    let masses = dish.pieces.values().map(|piece| piece.mass);
    masses.reduce(|a, b| if b > a { b } else { a })
}

#[cfg(test)]
mod tests;
