//! What surrounds a plan when it is looked at: the present moment, the local clock, and what has happened.

use super::Zone;
use crate::handover::identity::DishId;
use crate::handover::{Event, Journal, KnownEvent};
use crate::units::Moment;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// Everything beside the plan that an outlook is derived from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Situation {
    /// The present moment.
    pub now: Moment,
    /// The local clock around the plan.
    pub zone: Zone,
    /// Dishes that are on already, and since when.
    #[serde(default)]
    pub went_on: BTreeMap<DishId, Moment>,
}

impl Situation {
    /// Before anything has happened.
    #[must_use]
    pub const fn new(now: Moment, zone: Zone) -> Self {
        Self {
            now,
            zone,
            went_on: BTreeMap::new(),
        }
    }

    /// The same with what a journal says.
    #[must_use]
    pub fn after(mut self, journal: &Journal) -> Self {
        self.went_on = went_on(journal);
        self
    }
}

/// When dishes went on, by a journal: the last entry for each dish that is not struck out.
fn went_on(journal: &Journal) -> BTreeMap<DishId, Moment> {
    let entries = journal.0.values();
    let struck: BTreeSet<_> = entries
        .filter_map(|entry| match &entry.event {
            Event::Known(KnownEvent::Struck { entry }) => Some(*entry),
            Event::Known(_) | Event::Other(_) => None,
        })
        .collect();
    let mut on = BTreeMap::new();
    for (id, entry) in &journal.0 {
        if let Event::Known(KnownEvent::On { dish }) = entry.event
            && !struck.contains(id)
        {
            on.insert(dish, entry.at);
        }
    }
    on
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handover::identity::{EntryId, ReplicaId};
    use crate::handover::{Entry, ReplicaText};

    fn journal(events: &[(i64, KnownEvent)]) -> Journal {
        let mut journal = Journal::default();
        for (number, (at, event)) in (1..).zip(events) {
            let entry = Entry {
                at: Moment::from_unix_seconds(*at),
                logged: Moment::from_unix_seconds(*at),
                replica: ReplicaText(ReplicaId::new(1)),
                by: None,
                event: Event::Known(event.clone()),
            };
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
        assert_eq!(situation.went_on, expected);
    }
}
