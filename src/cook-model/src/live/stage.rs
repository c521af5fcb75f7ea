//! How far a dish is, by what was logged.

use crate::handover::identity::DishId;
use crate::handover::{Event, Journal, KnownEvent};
use crate::plan::Dish;
use crate::units::{Moment, Temperature};
use serde::{Deserialize, Serialize};

/// How far a dish is, by what was logged.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Stage {
    /// Not on yet.
    #[default]
    NotOn,
    /// On its cooker, or in an oven that cooks, bare.
    On,
    /// The same, wrapped.
    Wrapped,
    /// Off, in the open.
    Resting,
    /// Off, in a box or a warm oven.
    Held,
    /// Sliced, pulled or served.
    Sliced,
}

/// Air of an oven that cooks, from which a dish moved into it is still being cooked: 93 °C (set by hand).
pub(crate) const OVEN_COOKS: Temperature = Temperature::from_celsius(93.0);

/// How far a dish is and since when, by the entries that stand, in the order in which things happened. None before
/// anything was logged of it.
#[must_use]
pub fn stage_of(journal: &Journal, id: DishId, dish: &Dish) -> Option<(Stage, Moment)> {
    let mut events: Vec<_> = journal
        .standing()
        .filter_map(|(entry, told)| match &told.event {
            Event::Known(event) => Some((told.at, entry, event)),
            Event::Other(_) => None,
        })
        .collect();
    events.sort_by_key(|(at, entry, _)| (*at, *entry));
    let mut stage = None;
    let mut bare = true;
    for (at, _, event) in events {
        let mine = |other: &DishId| *other == id;
        let cooking = |bare| if bare { Stage::On } else { Stage::Wrapped };
        let next = match event {
            KnownEvent::On { dish } if mine(dish) => cooking(bare),
            KnownEvent::MovedBack { dish } if mine(dish) => cooking(bare),
            KnownEvent::MovedToOven { dish, air } if mine(dish) => {
                if *air >= OVEN_COOKS {
                    cooking(bare)
                } else {
                    Stage::Held
                }
            }
            KnownEvent::Wrapped { piece, .. } if dish.pieces.contains_key(piece) => {
                bare = false;
                match stage {
                    Some((Stage::On, _)) => Stage::Wrapped,
                    _ => continue,
                }
            }
            KnownEvent::Unwrapped { piece } if dish.pieces.contains_key(piece) => {
                bare = true;
                match stage {
                    Some((Stage::Wrapped, _)) => Stage::On,
                    _ => continue,
                }
            }
            KnownEvent::Off { dish } | KnownEvent::Vented { dish } if mine(dish) => Stage::Resting,
            KnownEvent::Unboxed { dish } if mine(dish) => Stage::Resting,
            KnownEvent::Boxed { dish } if mine(dish) => Stage::Held,
            KnownEvent::Sliced { dish } | KnownEvent::Served { dish } if mine(dish) => {
                Stage::Sliced
            }
            _ => continue,
        };
        if stage.is_none_or(|(before, _)| before != next) {
            stage = Some((next, at));
        }
    }
    stage
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handover::Entry;
    use crate::handover::identity::{EntryId, PieceId};
    use crate::plan::{BasisOfWeight, Cover, Food, Intact, Order, Piece};
    use crate::units::Mass;

    #[test]
    fn a_dish_goes_from_fire_to_table() {
        let (id, piece) = (DishId::new(1, 1), PieceId::new(2, 2));
        let food = Food::Cut {
            cut: "pork-shoulder-butt".to_owned(),
        };
        let mut dish = Dish::new("shoulder", food, Order::default());
        let one = Piece {
            order: Order::default(),
            count: 1,
            mass: Mass::from_kilograms(4.0),
            weighed: BasisOfWeight::Bought,
            thickness: None,
            intact: Intact::Yes,
            frozen: false,
        };
        dish.pieces.insert(piece, one);
        let cover = Cover::Paper;
        let other = DishId::new(9, 9);
        let events = [
            (0, KnownEvent::On { dish: id }, Stage::On),
            (100, KnownEvent::Off { dish: other }, Stage::On),
            (200, KnownEvent::Wrapped { piece, cover }, Stage::Wrapped),
            (300, KnownEvent::Unwrapped { piece }, Stage::On),
            (400, KnownEvent::Off { dish: id }, Stage::Resting),
            (500, KnownEvent::Boxed { dish: id }, Stage::Held),
            (600, KnownEvent::Unboxed { dish: id }, Stage::Resting),
            (700, KnownEvent::Sliced { dish: id }, Stage::Sliced),
        ];
        let mut journal = Journal::default();
        assert_eq!(stage_of(&journal, id, &dish), None);
        for (at, event, expected) in events {
            let at = Moment::from_unix_seconds(at);
            let entry = Entry::told(at, Event::Known(event));
            let number = at.unix_seconds().unsigned_abs();
            journal.0.insert(EntryId::new(number, 0), entry);
            let (stage, _) = stage_of(&journal, id, &dish).expect("a stage");
            assert_eq!(stage, expected, "at {at:?}");
        }
    }
}
