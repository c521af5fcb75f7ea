//! What happened: entries are added, saved, and only then called saved; nothing is ever edited away.

use super::{Store, records};
use crate::device::clock::now;
use crate::device::ids::Ids;
use crate::device::storage::{Envelope, Key, SaveState};
use cook_model::handover::identity::{CrewId, EntryId, PlanId};
use cook_model::handover::{Clock, Entry, Event, Journal, KnownEvent, ReplicaText};
use cook_model::units::Moment;
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;

/// Something that happened, before it is an entry.
#[derive(Clone, Debug, PartialEq)]
pub struct Happening {
    /// When.
    pub at: Moment,
    /// Who told it.
    pub by: Option<CrewId>,
    /// What.
    pub event: KnownEvent,
}

impl Store {
    /// Writes down what happened, all of it with one tap. The ids, in the same order; they stand in
    /// [`Store::not_kept_yet`] until they are on disk.
    pub fn log(self, happened: Vec<Happening>) -> Vec<EntryId> {
        let Some(plan) = self.open_id.get_untracked() else {
            return Vec::new();
        };
        let replica = ReplicaText(self.clock.with_value(Clock::replica));
        let logged = now();
        let mut last = self.journal.with_untracked(|journal| last_id(journal));
        let entries: Vec<(EntryId, Entry)> = happened
            .into_iter()
            .map(|Happening { at, by, event }| {
                let id = Ids.entry(last);
                last = Some(id);
                let event = Event::Known(event);
                let entry = Entry {
                    at,
                    logged,
                    replica,
                    by,
                    event,
                };
                (id, entry)
            })
            .collect();
        let ids: Vec<EntryId> = entries.iter().map(|(id, _)| *id).collect();
        let Some(first) = ids.first().copied() else {
            return ids;
        };
        self.not_kept_yet.update(|ids_of| ids_of.extend(&ids));
        let mut chunks = Vec::new();
        self.library.update(|library| {
            if let Some(held) = library.plans.get_mut(&plan) {
                held.log(entries);
                chunks = records::of_journal_from(plan, held.journal(), Some(first));
            }
        });
        self.write_chunks(chunks, ids.clone());
        ids
    }

    /// Strikes entries out. They stay readable; striking out is an entry too.
    pub fn strike(self, entries: &[EntryId], by: Option<CrewId>) {
        let at = now();
        let strike = |entry: &EntryId| Happening {
            at,
            by,
            event: KnownEvent::Struck { entry: *entry },
        };
        self.log(entries.iter().map(strike).collect());
    }

    /// Corrects an entry: strikes it out and writes down what it should have said.
    pub fn correct(self, entry: EntryId, right: Happening) {
        let strike = Happening {
            at: now(),
            by: right.by,
            event: KnownEvent::Struck { entry },
        };
        self.log(vec![strike, right]);
    }

    /// Writes chunks, the last one first: where an entry moves from one to the next, it is in both for a moment and never
    /// in none.
    fn write_chunks(self, chunks: Vec<(Key, String)>, ids: Vec<EntryId>) {
        let left = Rc::new(RefCell::new((chunks.len(), true)));
        for (key, content) in chunks.into_iter().rev() {
            let (left, ids) = (Rc::clone(&left), ids.clone());
            let told = move |state: &SaveState| {
                let mut left = left.borrow_mut();
                left.0 -= 1;
                left.1 &= *state == SaveState::Saved;
                if *left == (0, true) {
                    self.not_kept_yet
                        .update(|waiting| waiting.retain(|id| !ids.contains(id)));
                }
            };
            self.storage
                .with_value(|storage| storage.write_then(key, content, told));
        }
    }

    /// Another tab wrote a chunk of a journal. Where it lacks entries of this one, written at the same moment, the chunk
    /// is written again with both.
    pub(super) fn hear_journal(self, plan: PlanId, chunk: u32, envelope: &Envelope) {
        let Ok(theirs) = serde_json::from_str::<Journal>(&envelope.content) else {
            return;
        };
        let mut ours = None;
        self.library.update(|library| {
            if let Some(held) = library.plans.get_mut(&plan) {
                let document = held.document().clone();
                held.merge(&document, &theirs);
                ours = Some(records::of_journal(plan, held.journal()));
            }
        });
        let key = Key::Journal(plan, chunk);
        let behind = ours
            .into_iter()
            .flatten()
            .find(|(at, content)| *at == key && *content != envelope.content);
        if let Some((key, content)) = behind {
            self.write(key, content);
        }
    }
}

fn last_id(journal: &Journal) -> Option<EntryId> {
    journal.0.keys().next_back().copied()
}
