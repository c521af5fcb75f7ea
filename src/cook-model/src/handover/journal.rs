//! What happened: entries that are only ever added. Striking one out is another entry.

use super::event::KnownEvent;
use super::identity::{CrewId, EntryId, ReplicaId};
use crate::units::Moment;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};

/// One thing that happened. Never changed once written.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Entry {
    /// When it happened, as told.
    pub at: Moment,
    /// When it was written down.
    pub logged: Moment,
    /// The copy of the app that wrote it down, in hexadecimal.
    #[schemars(with = "String")]
    pub replica: ReplicaText,
    /// Who told it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by: Option<CrewId>,
    /// What happened.
    pub event: Event,
}

#[cfg(test)]
impl Entry {
    /// An event written down as it happens.
    pub(crate) const fn told(at: Moment, event: Event) -> Self {
        Self {
            at,
            logged: at,
            replica: ReplicaText(ReplicaId::new(1)),
            by: None,
            event,
        }
    }
}

/// A replica as text in a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReplicaText(pub ReplicaId);

impl Serialize for ReplicaText {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for ReplicaText {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let number = u64::from_str_radix(&text, 16).map_err(serde::de::Error::custom)?;
        Ok(Self(ReplicaId::new(number)))
    }
}

/// What happened. A planned cook is the same list, not yet written down.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(untagged)]
pub enum Event {
    /// One of the kinds that this version knows.
    Known(KnownEvent),
    /// A kind of a later version: kept as it is and handed on.
    Other(Map<String, Value>),
}

/// Everything that happened, by id. Merging is the union.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
pub struct Journal(pub BTreeMap<EntryId, Entry>);

impl Journal {
    /// Takes over the other's entries. An id stands for one entry for ever; should two differ under one id, which this
    /// app never makes, the greater text stays, so that every copy still agrees.
    pub fn merge(&mut self, other: &Self) {
        let text = |entry: &Entry| serde_json::to_string(entry).unwrap_or_default();
        for (id, theirs) in &other.0 {
            match self.0.get(id) {
                Some(ours) if text(ours) >= text(theirs) => {}
                _ => {
                    self.0.insert(*id, theirs.clone());
                }
            }
        }
    }

    /// The entries that were not struck out, oldest id first. Striking out an entry that strikes out another brings the
    /// other back.
    pub fn standing(&self) -> impl Iterator<Item = (EntryId, &Entry)> {
        let mut struck = BTreeSet::new();
        for (id, entry) in self.0.iter().rev() {
            if let Event::Known(KnownEvent::Struck { entry }) = entry.event
                && !struck.contains(id)
            {
                struck.insert(entry);
            }
        }
        self.0
            .iter()
            .map(|(id, entry)| (*id, entry))
            .filter(move |(id, _)| !struck.contains(id))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handover::identity::CookerId;
    use serde_json::json;

    #[test]
    fn an_event_of_a_later_version_is_handed_on_unharmed() {
        let text = json!({"at": 5, "logged": 6, "replica": "00000000000000ff", "event": {"is": "sung", "to": "pork"}});
        let entry: Entry = serde_json::from_value(text.clone()).expect("an entry");
        assert!(matches!(entry.event, Event::Other(_)));
        assert_eq!(serde_json::to_value(&entry).expect("json"), text);
    }

    #[test]
    fn a_known_event_is_known() {
        let cooker = CookerId::new(1, 1).to_string();
        let event: Event =
            serde_json::from_value(json!({"is": "pit", "cooker": cooker, "reading": 121.0}))
                .expect("one");
        assert!(matches!(event, Event::Known(KnownEvent::Pit { .. })));
    }

    #[test]
    fn striking_out_a_strike_brings_the_entry_back() {
        let entry = |event| Entry::told(Moment::from_unix_seconds(0), Event::Known(event));
        let id = |random| EntryId::new(1, random);
        let strike = |random| entry(KnownEvent::Struck { entry: id(random) });
        let note = entry(KnownEvent::Note {
            text: "lid shut".to_owned(),
        });
        let mut journal = Journal(BTreeMap::from([(id(1), note), (id(2), strike(1))]));
        let standing = |journal: &Journal| journal.standing().any(|(other, _)| other == id(1));
        assert!(!standing(&journal));
        journal.0.insert(id(3), strike(2));
        assert!(standing(&journal));
    }
}
