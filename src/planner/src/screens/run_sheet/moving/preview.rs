//! The day as a move makes it, shown at once; the worker's answer takes its place.

use super::judge::Change;
use cook_model::plan::outlook::{DishOutlook, Outlook};
use cook_model::schedule::{Lattice, Pin};
use cook_model::units::TimeSpan;

/// An outlook with its steps and dishes where a change puts them.
#[must_use]
pub fn preview(outlook: &Outlook, change: &Change) -> Outlook {
    let mut shown = outlook.clone();
    let before = &outlook.lattice;
    for step in &mut shown.steps {
        let Some(place) = change.lattice.place(step.key) else {
            continue;
        };
        let by = change.lattice.tasks[place].begins - step.when.likely();
        step.when = step.when.moved(by);
        if change.pins.iter().any(|(key, _)| *key == step.key) {
            step.pin = Pin::Kept;
        }
    }
    for dish in &mut shown.dishes {
        move_dish(dish, before, &change.lattice);
    }
    shown.lattice = change.lattice.clone();
    shown
}

fn move_dish(dish: &mut DishOutlook, before: &Lattice, after: &Lattice) {
    let mut all = after.dishes.iter();
    let (Some(spans), Ok(times)) = (
        all.find(|spans| spans.dish == dish.dish),
        dish.forecast.as_mut(),
    ) else {
        return;
    };
    let by = after.tasks[spans.on].begins - before.tasks[spans.on].begins;
    if by == TimeSpan::ZERO {
        return;
    }
    times.on = times.on + by;
    times.ready = times.ready.moved(by);
    times.table_ready = times.table_ready.moved(by);
    times.wrap = times.wrap.as_ref().map(|wrap| wrap.moved(by));
    times.stall = times.stall.map(|(from, to)| (from + by, to + by));
    times.odds = spans.odds(times.on, after.serving);
}
