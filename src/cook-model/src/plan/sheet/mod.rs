//! From the day's steps to the lattice that the schedule is solved on.

mod links;
mod people;
mod rooms;
mod tasks;

use super::day::Day;
use super::outlook::Step;
use crate::schedule::{DishSpans, Lattice};

/// The lattice of a day whose steps are laid out, in the order of the steps.
pub(super) fn lattice(day: &Day<'_>, steps: &[Step]) -> Lattice {
    let serving = day.plan.serving.moment();
    let clock = people::Clock::of(day, steps);
    let mut lattice = Lattice {
        now: day.situation.now,
        serving,
        tasks: tasks::tasks(day, steps),
        links: links::links(day, steps),
        people: clock.people(),
        rooms: rooms::rooms(day),
        stays: rooms::stays(day, steps),
        dishes: dishes(day, steps),
        nobody_up: clock.nobody_up(),
        nights: clock.nights(),
        shops_shut: clock.shops_shut(),
    };
    lattice.hold_pins();
    lattice
}

/// The place of a dish's step that puts it on, or makes it.
fn place_of_on(
    day: &Day<'_>,
    steps: &[Step],
    dish: crate::handover::identity::DishId,
) -> Option<usize> {
    let placed = day.placed().find(|placed| placed.settled.id == dish)?;
    let key = placed.on_key();
    steps.iter().position(|step| step.key == key)
}

fn dishes(day: &Day<'_>, steps: &[Step]) -> Vec<DishSpans> {
    let of = |placed: &super::day::Placed<'_>| {
        let on = place_of_on(day, steps, placed.settled.id)?;
        let after = placed.settled.after;
        let rising = |mut spans: Vec<f64>| {
            spans.sort_unstable_by(f64::total_cmp);
            spans
        };
        let ready = placed
            .members
            .iter()
            .filter_map(|member| member.table_ready(after));
        let good = placed
            .members
            .iter()
            .filter_map(|member| Some(member.first_ready? + member.keeps));
        let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
        Some(DishSpans {
            dish: placed.settled.id,
            on,
            table_ready: rising(ready.map(|span| span.seconds()).collect()),
            stays_good: rising(good.map(|span| span.seconds()).collect()),
            members: count(placed.members.len()),
            wanted: count(super::put_on::needed(
                day.plan.promise,
                placed.members.len(),
            )),
            slicing: after.slicing,
            earliest_on: placed.span.earliest,
            latest_on: placed.span.latest,
        })
    };
    day.placed().filter_map(of).collect()
}

#[cfg(test)]
mod tests;
