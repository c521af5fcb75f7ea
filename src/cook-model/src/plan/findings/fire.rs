//! Room on the grate, and one air at a time.

use super::Said;
use crate::plan::day::{Day, Placed};
use crate::plan::outlook::{FindingKind, Gravity};
use crate::plan::{Cooker, CookerKind, in_order};
use crate::provisions::grate_room;
use crate::units::{Moment, Temperature};

pub(super) fn say(day: &Day<'_>, said: &mut Said) {
    for (id, cooker) in in_order(&day.plan.cookers, |cooker| &cooker.order) {
        let on_it: Vec<&Placed<'_>> = day
            .placed()
            .filter(|placed| placed.on_a_fire().is_some_and(|(on, _)| on == id))
            .collect();
        let wanted = most_room(&on_it);
        let there = cooker.grate.square_metres();
        if wanted > there {
            let what = FindingKind::TooLittleGrate { wanted, there };
            said.of_cooker(Gravity::Heed, id, what);
        }
        if let Some((low, high)) = furthest_apart(cooker, &on_it) {
            let what = FindingKind::TwoPitTemperatures { low, high };
            said.of_cooker(Gravity::Heed, id, what);
        }
    }
}

/// From on to off, the last of ten members included.
fn stay(placed: &Placed<'_>) -> (Moment, Moment) {
    (placed.on, placed.ready().to())
}

/// The most room wanted at any one time, m², free grate around each piece included. Dishes of one's own take none that
/// is known.
fn most_room(on_it: &[&Placed<'_>]) -> f64 {
    // It is fullest just as something goes on.
    let at = |moment: Moment| -> f64 {
        on_it
            .iter()
            .filter(|placed| {
                let (on, off) = stay(placed);
                on <= moment && moment < off
            })
            .filter_map(|placed| grate_room(placed.settled.dish))
            .map(|area| area.square_metres())
            .sum()
    };
    on_it.iter().map(|placed| at(placed.on)).fold(0.0, f64::max)
}

/// How far the air of one cooker can differ from one place to another, in K. Common practice: a firebox at one end or
/// coals at one side make a hot and a cool zone; other cookers have one air.
pub(in crate::plan) const fn zones(kind: CookerKind) -> f64 {
    match kind {
        CookerKind::Kettle | CookerKind::Gas => 60.0,
        CookerKind::Offset => 30.0,
        CookerKind::Drum | CookerKind::Ceramic | CookerKind::Cabinet | CookerKind::Pellet => 15.0,
        CookerKind::Electric | CookerKind::Oven | CookerKind::FanOven => 5.0,
    }
}

/// The two dishes that lie in the cooker at once and want air that is further apart than its zones are.
fn furthest_apart(cooker: &Cooker, on_it: &[&Placed<'_>]) -> Option<(Temperature, Temperature)> {
    let mut worst: Option<(Temperature, Temperature)> = None;
    for (place, one) in on_it.iter().enumerate() {
        for other in &on_it[place + 1..] {
            let ((on, off), (other_on, other_off)) = (stay(one), stay(other));
            if other_off <= on || off <= other_on {
                continue;
            }
            let Some((low, high)) = nearest_wishes(cooker, one, other) else {
                continue;
            };
            let apart = (high - low).kelvin();
            let worst_so_far = worst.map_or(0.0, |(low, high)| (high - low).kelvin());
            if apart > zones(cooker.kind) && apart > worst_so_far {
                worst = Some((low, high));
            }
        }
    }
    worst
}

/// What two dishes want, each its own air or one of the cooker's programme, as near to each other as it can be.
fn nearest_wishes(
    cooker: &Cooker,
    one: &Placed<'_>,
    other: &Placed<'_>,
) -> Option<(Temperature, Temperature)> {
    let programme: Vec<Temperature> = cooker.programme.iter().map(|step| step.set).collect();
    let wishes = |placed: &Placed<'_>| {
        placed
            .settled
            .dish
            .pit
            .map_or(programme.clone(), |pit| vec![pit])
    };
    let others = wishes(other);
    let pairs = wishes(one).into_iter().flat_map(|one| {
        others.iter().map(move |other| {
            if one < *other {
                (one, *other)
            } else {
                (*other, one)
            }
        })
    });
    pairs.min_by(|a, b| (a.1 - a.0).kelvin().total_cmp(&(b.1 - b.0).kelvin()))
}
