//! Neighbours make room: where a ticket would hang if it landed at a time, and how far its neighbours move for it.

use super::super::frame::Direction;
use super::super::pack;
use super::super::sheet::{Placed, Sheet};
use cook_model::plan::StepKey;
use cook_model::units::Moment;

/// The room for a ticket that would land somewhere.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Room {
    /// Hours along the axis at which it would hang.
    pub slot: f64,
    /// Neighbours that move, and by how many hours.
    pub shifts: Vec<(StepKey, f64)>,
}

/// Makes room on a sheet. None where the ticket is not on it.
#[must_use]
pub fn make_room(sheet: &Sheet, key: StepKey, lands: Moment) -> Option<Room> {
    let own = sheet
        .tickets
        .iter()
        .find(|placed| placed.ticket.key == key)?;
    let beside = |placed: &&Placed| {
        placed.ticket.key != key
            && match sheet.frame.direction {
                Direction::Down => sheet.strip_of(placed) == sheet.strip_of(own),
                Direction::Across => (placed.lane, placed.row) == (own.lane, own.row),
            }
    };
    let axis = sheet.scope.axis;
    let at = axis.at(lands);
    let mut row: Vec<(f64, Option<&Placed>)> = sheet
        .tickets
        .iter()
        .filter(beside)
        .map(|placed| (axis.at(placed.ticket.likely), Some(placed)))
        .collect();
    // At the same time the one in hand comes first.
    let place = row.partition_point(|(time, _)| *time < at);
    row.insert(place, (at, None));
    let times: Vec<f64> = row.iter().map(|(time, _)| *time).collect();
    let slots = pack::pushed(&times, sheet.pitch(own));
    let mut room = Room::default();
    for ((_, placed), slot) in row.into_iter().zip(slots) {
        match placed {
            None => room.slot = slot,
            Some(placed) => {
                let by = slot - placed.slot;
                if by.abs() > 1e-9 {
                    room.shifts.push((placed.ticket.key, by));
                }
            }
        }
    }
    Some(room)
}
