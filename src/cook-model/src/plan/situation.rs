//! What surrounds a plan when it is looked at: the present moment, the local clock, and what has happened.

use super::Zone;
use crate::handover::identity::DishId;
use crate::handover::{Event, Journal, KnownEvent};
use crate::units::Moment;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Everything beside the plan that an outlook is derived from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Situation {
    /// The present moment.
    pub now: Moment,
    /// The local clock around the plan.
    pub zone: Zone,
    /// What has happened and was read so far.
    #[serde(default)]
    pub journal: Journal,
}

impl Situation {
    /// Before anything has happened.
    #[must_use]
    pub fn new(now: Moment, zone: Zone) -> Self {
        Self {
            now,
            zone,
            journal: Journal::default(),
        }
    }

    /// The same with what a journal says.
    #[must_use]
    pub fn after(mut self, journal: &Journal) -> Self {
        self.journal = journal.clone();
        self
    }

    /// Dishes that went on, and since when: the last entry for each that is not struck out.
    #[must_use]
    pub fn went_on(&self) -> BTreeMap<DishId, Moment> {
        let mut on = BTreeMap::new();
        for (_, entry) in self.journal.standing() {
            if let Event::Known(KnownEvent::On { dish }) = entry.event {
                on.insert(dish, entry.at);
            }
        }
        on
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handover::Entry;
    use crate::handover::identity::EntryId;

    fn journal(events: &[(i64, KnownEvent)]) -> Journal {
        let mut journal = Journal::default();
        for (number, (at, event)) in (1..).zip(events) {
            let at = Moment::from_unix_seconds(*at);
            let entry = Entry::told(at, Event::Known(event.clone()));
            journal.0.insert(EntryId::new(number, 0), entry);
        }
        journal
    }

    #[test]
    fn the_last_word_that_is_not_struck_out_counts() {
        let (pork, lamb) = (DishId::new(1, 1), DishId::new(1, 2));
        let third = EntryId::new(3, 0);
        let journal = journal(&[
            (100, KnownEvent::On { dish: pork }),
            (110, KnownEvent::On { dish: pork }),
            (200, KnownEvent::On { dish: lamb }),
            (210, KnownEvent::Struck { entry: third }),
        ]);
        let now = Moment::from_unix_seconds(500);
        let situation = Situation::new(now, Zone::fixed(0)).after(&journal);
        let expected = BTreeMap::from([(pork, Moment::from_unix_seconds(110))]);
        assert_eq!(situation.went_on(), expected);
    }
}
