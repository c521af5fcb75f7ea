//! Rooms that can be full, and what lies in them from when to when.

use super::place_of_on;
use crate::plan::day::{Day, Placed, is_minded};
use crate::plan::findings::zones;
use crate::plan::outlook::{Step, StepKind};
use crate::plan::{Cooker, HoldPlace, hands, in_order};
use crate::provisions::{Size, grate_room, hot_box};
use crate::schedule::{Edge, Room, RoomSize, Stay};
use crate::units::{Temperature, TimeSpan, Volume};

/// Litres of fridge that a kilogram of raw meat takes, in its tray. Set by hand.
const LITRES_A_KILOGRAM: f64 = 1.5;

pub(super) fn rooms(day: &Day<'_>) -> Vec<RoomSize> {
    let plain = |room, size| RoomSize {
        room,
        size,
        zones: None,
        minded: false,
        lit_before: TimeSpan::ZERO,
    };
    let kitchen = &day.plan.kitchen;
    let mut rooms: Vec<RoomSize> = in_order(&day.plan.cookers, |cooker| &cooker.order)
        .into_iter()
        .map(|(cooker, of)| RoomSize {
            room: Room::Grate { cooker },
            size: grate(of),
            zones: Some(of.hot_side.map_or(zones(of.kind), |hot| hot.kelvin())),
            minded: is_minded(of),
            lit_before: hands::to_steady_fire(of.kind),
        })
        .collect();
    rooms.push(plain(Room::Oven, kitchen.oven.square_metres()));
    rooms.push(plain(Room::RestBox, kitchen.rest_box.cubic_metres()));
    rooms.push(plain(Room::Fridge, kitchen.fridge.cubic_metres()));
    rooms
}

/// All racks of a cooker together, m².
pub(super) fn grate(cooker: &Cooker) -> f64 {
    if cooker.racks.is_empty() {
        cooker.grate.square_metres()
    } else {
        cooker
            .racks
            .iter()
            .map(|rack| rack.area.square_metres())
            .sum()
    }
}

pub(super) fn stays(day: &Day<'_>, steps: &[Step]) -> Vec<Stay> {
    let mut stays = Vec::new();
    for placed in day.placed() {
        let Some(on) = place_of_on(day, steps, placed.settled.id) else {
            continue;
        };
        on_the_grate(placed, on, &mut stays);
        held(placed, steps, &mut stays);
        in_the_fridge(placed, steps, on, &mut stays);
    }
    stays
}

fn on_the_grate(placed: &Placed<'_>, on: usize, stays: &mut Vec<Stay>) {
    let Some((cooker, of)) = placed.on_a_fire() else {
        return;
    };
    let dish = placed.settled.dish;
    let airs: Vec<Temperature> = dish.pit.map_or_else(
        || of.programme.iter().map(|step| step.set).collect(),
        |pit| vec![pit],
    );
    let ready = placed.ready();
    let edge = |at| Edge {
        task: on,
        after: at - placed.on,
    };
    stays.push(Stay {
        dish: placed.settled.id,
        room: Room::Grate { cooker },
        takes: grate_room(dish).map_or(0.0, |area| area.square_metres()),
        airs,
        from: edge(placed.on),
        to: edge(ready.likely()),
        at_most: edge(ready.to()),
    });
}

fn held(placed: &Placed<'_>, steps: &[Step], stays: &mut Vec<Stay>) {
    let id = placed.settled.id;
    let place = |kind| {
        steps
            .iter()
            .position(|step| step.dish == Some(id) && step.kind == kind)
    };
    let (Some(hold), Some(slice)) = (place(StepKind::Hold), place(StepKind::Slice)) else {
        return;
    };
    let (room, takes) = match placed.settled.hold {
        HoldPlace::RestBox => (Room::RestBox, box_room(placed).cubic_metres()),
        HoldPlace::WarmOven { .. } => {
            let area = grate_room(placed.settled.dish);
            (Room::Oven, area.map_or(0.0, |area| area.square_metres()))
        }
        HoldPlace::Counter => return,
    };
    let edge = |task| Edge {
        task,
        after: TimeSpan::ZERO,
    };
    stays.push(Stay {
        dish: id,
        room,
        takes,
        airs: Vec::new(),
        from: edge(hold),
        to: edge(slice),
        at_most: edge(slice),
    });
}

fn box_room(placed: &Placed<'_>) -> Volume {
    let pieces = placed.settled.cut().map_or_else(Vec::new, |method| {
        let size = |piece| (Size::of_one(method.cut.id, piece), piece.count);
        method.all().map(size).collect()
    });
    hot_box(&pieces).room
}

fn in_the_fridge(placed: &Placed<'_>, steps: &[Step], on: usize, stays: &mut Vec<Stay>) {
    let id = placed.settled.id;
    let kinds = [
        StepKind::Thaw,
        StepKind::Buy,
        StepKind::Trim,
        StepKind::Salt,
    ];
    let place = |kind| {
        steps
            .iter()
            .position(|step| step.dish == Some(id) && step.kind == kind)
    };
    let (Some(method), Some(first)) = (placed.settled.cut(), kinds.into_iter().find_map(place))
    else {
        return;
    };
    let kilograms: f64 = method
        .all()
        .map(|piece| piece.mass.kilograms() * f64::from(piece.count))
        .sum();
    let edge = |task| Edge {
        task,
        after: TimeSpan::ZERO,
    };
    stays.push(Stay {
        dish: id,
        room: Room::Fridge,
        takes: Volume::from_litres(kilograms * LITRES_A_KILOGRAM).cubic_metres(),
        airs: Vec::new(),
        from: edge(first),
        to: edge(on),
        at_most: edge(on),
    });
}
