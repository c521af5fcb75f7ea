//! What a person may have done with a dish that stops, as entries of the journal.

use crate::words::safety as words;
use cook_model::handover::KnownEvent;
use cook_model::handover::identity::DishId;

/// A way: its words, and the entry it writes.
pub(super) type Done = (&'static str, KnownEvent);

/// What may have been done with a dish. `raw`: it never went on.
pub(super) fn ways(dish: DishId, raw: bool) -> Vec<Done> {
    let gone = |thrown_away| KnownEvent::Gone { dish, thrown_away };
    let chilled = KnownEvent::Chilled {
        dish,
        depth: None,
        ice: false,
    };
    if raw {
        vec![
            (words::THROWN_AWAY, gone(true)),
            (words::PUT_BACK, KnownEvent::PutBack { dish }),
            (words::WENT_ON, KnownEvent::On { dish }),
        ]
    } else {
        vec![
            (words::THROWN_AWAY, gone(true)),
            (words::ON_AGAIN, KnownEvent::Reheating { dish }),
            (words::CAME_OFF, KnownEvent::Off { dish }),
            (words::PUT_AWAY, chilled),
            (words::EATEN, gone(false)),
        ]
    }
}
