//! From the records of both stores to everything this page holds, and back to records where a store is behind.

use super::library::KeptAside;
use super::{Device, HeldPlan, Index, Library, records};
use crate::device::storage::{Copies, Damaged, Envelope, Fault, Key};
use cook_model::handover::identity::PlanId;
use cook_model::handover::{Document, HandOver, Journal, file};
use std::collections::BTreeMap;

/// What was found on this device.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Loaded {
    /// The plans. None of them is open yet.
    pub library: Library,
    /// The device's own record, where there is one.
    pub device: Option<Device>,
    /// Records to be written because one of the stores is behind.
    pub behind: Vec<(Key, String)>,
    /// Records whose envelope is sound and whose content is not: to be kept aside.
    pub unreadable: Vec<Damaged>,
}

/// Merges the copies of every record.
#[must_use]
pub fn load(records: &BTreeMap<Key, Copies>) -> Loaded {
    let mut loaded = Loaded::default();
    let mut documents: BTreeMap<PlanId, Document> = BTreeMap::new();
    let mut journals: BTreeMap<PlanId, Journal> = BTreeMap::new();
    for (key, copies) in records {
        for envelope in copies.sound() {
            if let Err(fault) = loaded.take(*key, envelope, &mut documents, &mut journals) {
                loaded.unreadable.push(Damaged {
                    key: *key,
                    text: envelope.content.clone(),
                    fault,
                });
            }
        }
        loaded.library.aside.extend(copies.damaged().map(aside));
    }
    for (id, document) in documents {
        let journal = journals.remove(&id).unwrap_or_default();
        let record = records::of_document(&HandOver::new(document.clone(), Journal::default()));
        match HeldPlan::read(document, journal) {
            Some(held) => {
                loaded.library.plans.insert(id, held);
            }
            None => loaded.unreadable.push(Damaged {
                key: record.0,
                text: record.1,
                fault: Fault::Content("it has no serving time".to_owned()),
            }),
        }
    }
    let aside = &mut loaded.library.aside;
    aside.extend(loaded.unreadable.iter().map(self::aside));
    aside.sort_by_key(|kept| kept.checksum);
    aside.dedup_by_key(|kept| kept.checksum);
    loaded.find_behind(records);
    loaded
}

fn aside(damaged: &Damaged) -> KeptAside {
    KeptAside {
        checksum: crate::device::storage::checksum(&damaged.text),
        text: damaged.text.clone(),
    }
}

impl Loaded {
    fn take(
        &mut self,
        key: Key,
        envelope: &Envelope,
        documents: &mut BTreeMap<PlanId, Document>,
        journals: &mut BTreeMap<PlanId, Journal>,
    ) -> Result<(), Fault> {
        let unreadable = |error: serde_json::Error| Fault::Content(error.to_string());
        let content = &envelope.content;
        match key {
            Key::Index => {
                let index: Index = serde_json::from_str(content).map_err(unreadable)?;
                self.library.index.merge(&index);
            }
            Key::Device => {
                let device: Device = serde_json::from_str(content).map_err(unreadable)?;
                // The copy with the higher revision is taken first and stands.
                self.device.get_or_insert(device);
            }
            Key::Plan(id) => {
                let opened = open_plan(id, content)?;
                match documents.get_mut(&id) {
                    Some(document) => document.merge(&opened.document),
                    None => {
                        documents.insert(id, opened.document);
                    }
                }
                journals.entry(id).or_default().merge(&opened.journal);
            }
            Key::Journal(id, _) => {
                let chunk: Journal = serde_json::from_str(content).map_err(unreadable)?;
                journals.entry(id).or_default().merge(&chunk);
            }
            Key::Aside(checksum) => self.library.aside.push(KeptAside {
                checksum,
                text: content.clone(),
            }),
        }
        Ok(())
    }

    /// Finds the records that do not lie in both stores as they should.
    fn find_behind(&mut self, records: &BTreeMap<Key, Copies>) {
        let mut wanted = Vec::new();
        for held in self.library.plans.values() {
            let hand_over = held.hand_over();
            wanted.push(records::of_document(&hand_over));
            wanted.extend(records::of_journal(held.id(), held.journal()));
        }
        if records.contains_key(&Key::Index) {
            wanted.push((Key::Index, to_text(&self.library.index)));
        }
        if let Some(device) = &self.device {
            wanted.push((Key::Device, to_text(device)));
        }
        let both = |key: &Key, text: &str| {
            let copies = records.get(key);
            copies.is_some_and(|copies| copies.both_hold(text))
        };
        self.behind = wanted
            .into_iter()
            .filter(|(key, text)| !both(key, text))
            .collect();
    }
}

/// Opens the record of a plan.
///
/// # Errors
/// [`Fault::Content`], in the words of the file format.
pub(super) fn open_plan(id: PlanId, content: &str) -> Result<HandOver, Fault> {
    let opened =
        file::open(content.as_bytes()).map_err(|refusal| Fault::Content(refusal.to_string()))?;
    if opened.document.id == id {
        Ok(opened)
    } else {
        Err(Fault::Content(format!(
            "it holds plan {}",
            opened.document.id
        )))
    }
}

/// A record's content.
pub(super) fn to_text(content: &impl serde::Serialize) -> String {
    serde_json::to_string(content).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::{Edit, Preferences};
    use cook_model::handover::Clock;
    use cook_model::handover::identity::ReplicaId;
    use cook_model::plan::{Plan, Serving};

    fn clock() -> Clock {
        Clock::new(ReplicaId::new(1))
    }

    fn held(clock: &mut Clock) -> HeldPlan {
        let serving = Serving {
            local: "2026-09-12T18:00:00".parse().expect("a date and time"),
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        };
        HeldPlan::new(PlanId::new(1, 1), Plan::new(serving), clock, 1_000)
    }

    fn sound(key: Key, revision: u64, content: &str) -> Option<Result<Envelope, Damaged>> {
        Some(Ok(Envelope::new(key, revision, content.to_owned())))
    }

    fn in_both(key: Key, content: &str) -> Copies {
        Copies {
            quick: sound(key, 1, content),
            strict: sound(key, 1, content),
        }
    }

    fn record(held: &HeldPlan) -> (Key, String) {
        records::of_document(&held.hand_over())
    }

    #[test]
    fn nothing_found_is_a_first_start() {
        assert_eq!(load(&BTreeMap::new()), Loaded::default());
    }

    #[test]
    fn equal_copies_are_read_and_nothing_is_written() {
        let held = held(&mut clock());
        let (key, text) = record(&held);
        let loaded = load(&BTreeMap::from([(key, in_both(key, &text))]));
        assert_eq!(loaded.library.plans[&held.id()].plan(), held.plan());
        assert_eq!(loaded.behind, []);
    }

    #[test]
    fn copies_that_differ_are_merged_field_by_field() {
        let mut clock = clock();
        let first = held(&mut clock);
        let (mut quick, mut strict) = (first.clone(), first);
        quick.edit(
            Edit::Name,
            |plan| plan.name = "Supper".to_owned(),
            &mut clock,
            2_000,
        );
        strict.edit(
            Edit::Guests,
            |plan| plan.guests.grown = 18,
            &mut clock,
            3_000,
        );
        let (key, _) = record(&quick);
        let copies = Copies {
            quick: sound(key, 7, &record(&quick).1),
            strict: sound(key, 2, &record(&strict).1),
        };
        let loaded = load(&BTreeMap::from([(key, copies)]));
        let plan = loaded.library.plans[&quick.id()].plan();
        assert_eq!((plan.name.as_str(), plan.guests.grown), ("Supper", 18));
        assert_eq!(loaded.behind.len(), 1);
    }

    #[test]
    fn a_damaged_copy_is_kept_aside_and_the_other_one_used() {
        let held = held(&mut clock());
        let (key, text) = record(&held);
        let torn = Damaged {
            key,
            text: "{\"kind\": \"pl".to_owned(),
            fault: Fault::NotAnEnvelope,
        };
        let copies = Copies {
            quick: Some(Err(torn.clone())),
            strict: sound(key, 2, &text),
        };
        let loaded = load(&BTreeMap::from([(key, copies)]));
        assert!(loaded.library.plans.contains_key(&held.id()));
        assert_eq!(loaded.library.aside.len(), 1);
        assert_eq!(loaded.library.aside[0].text, torn.text);
        let behind: Vec<_> = loaded.behind.iter().map(|(key, _)| *key).collect();
        assert!(
            behind.contains(&key),
            "the sound copy goes into both stores"
        );
    }

    #[test]
    fn a_plan_without_its_serving_time_is_kept_aside_whole() {
        let mut clock = clock();
        let mut hand_over = held(&mut clock).hand_over();
        hand_over.document.fields.remove("serving");
        let (key, text) = records::of_document(&hand_over);
        let loaded = load(&BTreeMap::from([(key, in_both(key, &text))]));
        assert!(loaded.library.plans.is_empty());
        assert_eq!(loaded.unreadable.len(), 1);
        assert_eq!(loaded.unreadable[0].text, text);
    }

    #[test]
    fn the_later_device_record_stands() {
        let device = |units| {
            let mut preferences = Preferences::first("en-GB");
            preferences.units = units;
            to_text(&Device::new(ReplicaId::new(7), preferences))
        };
        let copies = Copies {
            quick: sound(Key::Device, 1, &device(crate::format::Units::METRIC)),
            strict: sound(Key::Device, 2, &device(crate::format::Units::CUSTOMARY)),
        };
        let loaded = load(&BTreeMap::from([(Key::Device, copies)]));
        let device = loaded.device.expect("a record");
        assert_eq!(device.preferences.units, crate::format::Units::CUSTOMARY);
        assert_eq!(loaded.behind.len(), 1);
    }
}
