//! The whole table: all dishes at once, counted over members in the same world.

use super::day::{Day, counted};
use super::outlook::TableOutlook;
use super::window::window;
use crate::units::Moment;

/// The last dish of each member. The dishes of one member lie in one world, so their odds are not multiplied.
pub(super) fn table(day: &Day<'_>) -> TableOutlook {
    let serving = day.plan.serving.moment();
    let last: Vec<Option<Moment>> = (0..day.members())
        .map(|member| {
            let each = day.placed().map(|placed| placed.table_ready(member));
            each.reduce(|one, other| Some(one?.max(other?))).flatten()
        })
        .collect();
    let in_time = last
        .iter()
        .filter(|last| last.is_some_and(|last| last <= serving))
        .count();
    let after_serving = last.iter().map(|last| last.map(|last| last - serving));
    let ready = window(serving, after_serving);
    TableOutlook {
        serving,
        odds: counted(in_time, last.len()),
        ready,
        slack: ready.map(|ready| serving - ready.to()),
    }
}
