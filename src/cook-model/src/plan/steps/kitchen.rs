//! Before the fire: buy, thaw, trim, salt, rub. Laid out backwards from the moment it goes on.

use super::{Made, of_dish};
use crate::plan::day::{Day, Placed};
use crate::plan::method::{CutMethod, LEAST_SALTING, Salting};
use crate::plan::outlook::{FindingKind, Gravity, StepKind, Window};
use crate::plan::up::Stretch;
use crate::plan::{Piece, Thawing, hands};
use crate::safety::{keeps_raw, thaw_in_cold_water, thaw_in_fridge};
use crate::units::{Moment, TimeSpan};

/// Shopping and carrying home.
const SHOP: TimeSpan = TimeSpan::from_minutes(45.0);
/// One thing more on the same way.
const ALONG: TimeSpan = TimeSpan::from_minutes(5.0);
/// Any raw meat keeps so long in the fridge (FoodSafety.gov, cold food storage chart: one to two days at the shortest).
const KEEPS: TimeSpan = TimeSpan::from_hours(24.0);
/// Bought at least so long before the first hand is laid on it.
const HOME: TimeSpan = TimeSpan::from_hours(2.0);
/// Into the fridge.
const PUT_AWAY: TimeSpan = TimeSpan::from_minutes(5.0);

/// Adds the kitchen work of a dish. When the first hand is laid on it, so that it can be bought before; none where it
/// has been through the kitchen, because it is on already.
pub(super) fn add(day: &Day<'_>, placed: &Placed<'_>, made: &mut Made) -> Option<Moment> {
    let method = placed.settled.cut().filter(|_| !placed.is_on)?;
    let rub = hands::rub(method.cut, method.all());
    let rub_at = placed.on - rub;
    let salted = method
        .salt
        .map(|salt| (salted(day, placed, method, salt, rub_at, made), salt));
    let trimmed_by = salted.map_or(rub_at, |(salt_at, _)| salt_at);
    let trim = hands::trim(method.cut, method.untrimmed());
    let trim_at = trimmed_by - trim;
    let thaw_at = thawed(day, placed, method, trim_at, made);
    if trim > TimeSpan::ZERO {
        made.add(of_dish(
            day,
            placed,
            StepKind::Trim,
            Window::at(trim_at),
            trim,
        ));
    }
    if let Some((salt_at, salt)) = salted {
        let takes = hands::salt(method.all());
        let mut step = of_dish(day, placed, StepKind::Salt, Window::at(salt_at), takes);
        step.amount = Some(salt.amount);
        made.add(step);
    }
    if rub > TimeSpan::ZERO {
        made.add(of_dish(day, placed, StepKind::Rub, Window::at(rub_at), rub));
    }
    Some(thaw_at.unwrap_or(trim_at))
}

/// Adds the shopping: in time for the first hand on each dish and for the first fire of all, in as few ways to the shops
/// as raw meat allows, which keeps for a day at least.
pub(super) fn shop(day: &Day<'_>, first_hands: &[(&Placed<'_>, Moment)], made: &mut Made) {
    let Some(first_fire) = day.placed().map(|placed| placed.on).min() else {
        return;
    };
    let latest =
        |(_, hand): &(_, Moment)| day.crew.while_shops_are_open(*hand.min(&first_fire) - HOME);
    let mut wanted: Vec<_> = first_hands
        .iter()
        .map(|first| (first.0, latest(first)))
        .collect();
    wanted.sort_by_key(|(_, at)| *at);
    let mut way: Option<Moment> = None;
    for (placed, at) in wanted {
        // Bought on an earlier way it must still keep until it goes on, by the shorter published figure.
        let keeps = |way: Moment| {
            let raw = placed
                .settled
                .cut()
                .map(|method| keeps_raw(method.cut.make));
            raw.is_none_or(|raw| placed.on - way <= raw.least)
        };
        let (at, takes) = match way {
            Some(way) if at <= way + KEEPS && keeps(way) => (way, ALONG),
            _ => (at, SHOP),
        };
        way = Some(at);
        made.add(of_dish(day, placed, StepKind::Buy, Window::at(at), takes));
    }
}

/// When it is salted: as near to the time that is liked as somebody is up. What the clock leaves no time for begins now.
fn salted(
    day: &Day<'_>,
    placed: &Placed<'_>,
    method: &CutMethod<'_>,
    salt: Salting,
    rub_at: Moment,
    made: &mut Made,
) -> Moment {
    let takes = hands::salt(method.all());
    if salt.liked <= TimeSpan::ZERO {
        return rub_at - takes;
    }
    // Trimming comes just before, and somebody is up for both.
    let trim = hands::trim(method.cut, method.untrimmed());
    let within = Stretch {
        from: placed.on - salt.most - trim,
        to: (placed.on - salt.least).min(rub_at - takes) - trim,
    };
    let liked = placed.on - salt.liked - trim;
    let planned = day.crew.near(liked, within, trim + takes) + trim;
    let salt_at = planned.max(day.situation.now).min(rub_at - takes);
    let ahead = placed.on - salt_at;
    if ahead < LEAST_SALTING {
        let what = FindingKind::SaltTooShort {
            ahead,
            least: LEAST_SALTING,
        };
        made.find(Gravity::Heed, placed, what);
    }
    salt_at
}

/// When frozen pieces go into the fridge or under cold water to thaw, with the longer of the published times. None where
/// nothing is frozen.
fn thawed(
    day: &Day<'_>,
    placed: &Placed<'_>,
    method: &CutMethod<'_>,
    by: Moment,
    made: &mut Made,
) -> Option<Moment> {
    let frozen = || method.all().filter(|piece| piece.frozen);
    let longest = |time: &dyn Fn(&Piece) -> TimeSpan| frozen().map(time).reduce(TimeSpan::max);
    let in_water = longest(&|piece| thaw_in_cold_water(method.cut.id, piece.mass).most)?;
    let in_fridge = longest(&|piece| thaw_in_fridge(method.cut.id, piece.mass).most)?;
    // Out of the water it is cooked at once: it goes in no sooner than it must.
    let (latest, at) = match placed.settled.dish.thaw.unwrap_or_default() {
        Thawing::Fridge => (by - in_fridge, day.crew.by_day(by - in_fridge, PUT_AWAY)),
        Thawing::ColdWater => (by - in_water, by - in_water),
    };
    let now = day.situation.now;
    if latest < now {
        let cold_water = Some(in_water).filter(|span| now + *span <= by);
        let gravity = if cold_water.is_some() {
            Gravity::Heed
        } else {
            Gravity::Stop
        };
        let what = FindingKind::NotThawed {
            by: latest,
            cold_water,
        };
        made.find(gravity, placed, what);
    }
    let at = if at < now { latest } else { at };
    made.add(of_dish(
        day,
        placed,
        StepKind::Thaw,
        Window::at(at),
        PUT_AWAY,
    ));
    Some(at)
}
