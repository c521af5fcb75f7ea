//! From a plan to the records in which it is kept, and back.

use crate::device::storage::Key;
use cook_model::handover::identity::{EntryId, PlanId};
use cook_model::handover::{HandOver, Journal};
use std::collections::BTreeMap;

/// Most entries in one chunk of a journal: a chunk is written anew with every entry, so it has to stay small.
pub(super) const CHUNK: usize = 200;

/// A plan's fields as a record.
pub(super) fn of_document(hand_over: &HandOver) -> (Key, String) {
    let fields_alone = HandOver::new(hand_over.document.clone(), Journal::default());
    let text = serde_json::to_string(&fields_alone).unwrap_or_default();
    (Key::Plan(hand_over.document.id), text)
}

/// A plan's journal as records.
pub(super) fn of_journal(plan: PlanId, journal: &Journal) -> Vec<(Key, String)> {
    of_journal_from(plan, journal, None)
}

/// The records of a journal that hold the entries from this one on: all that change when it is added.
pub(super) fn of_journal_from(
    plan: PlanId,
    journal: &Journal,
    first: Option<EntryId>,
) -> Vec<(Key, String)> {
    let entries: Vec<_> = journal.0.iter().collect();
    let before = first.map_or(0, |first| journal.0.range(..first).count() / CHUNK);
    entries
        .chunks(CHUNK)
        .zip(0_u32..)
        .skip(before)
        .map(|(chunk, number)| {
            let chunk: BTreeMap<_, _> = chunk.iter().copied().collect();
            let text = serde_json::to_string(&chunk).unwrap_or_default();
            (Key::Journal(plan, number), text)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::handover::{Document, file};
    use serde_json::json;

    fn journal(entries: u64) -> Journal {
        let entry = json!({"at": 5, "logged": 6, "replica": "00000000000000ff",
            "event": {"is": "note", "text": "rain"}});
        let entry: cook_model::handover::Entry = serde_json::from_value(entry).expect("an entry");
        Journal(
            (0..entries)
                .map(|n| (EntryId::new(n, 0), entry.clone()))
                .collect(),
        )
    }

    #[test]
    fn a_long_journal_is_kept_in_chunks_that_make_it_whole_again() {
        let whole = journal(450);
        let records = of_journal(PlanId::new(1, 1), &whole);
        assert_eq!(records.len(), 3);
        let mut read = Journal::default();
        for (_, text) in &records {
            read.merge(&serde_json::from_str(text).expect("a chunk"));
        }
        assert_eq!(read, whole);
    }

    #[test]
    fn a_new_entry_changes_only_the_chunks_from_its_own_on() {
        let whole = journal(450);
        let keys = |first| {
            let records = of_journal_from(PlanId::new(1, 1), &whole, Some(EntryId::new(first, 0)));
            records.into_iter().map(|(key, _)| key).collect::<Vec<_>>()
        };
        let chunk = |number| Key::Journal(PlanId::new(1, 1), number);
        assert_eq!(keys(449), [chunk(2)]);
        assert_eq!(keys(200), [chunk(1), chunk(2)]);
        assert_eq!(keys(0).len(), 3);
    }

    #[test]
    fn a_plans_record_is_a_hand_over_file_without_its_journal() {
        let hand_over = HandOver::new(Document::new(PlanId::new(1, 1)), journal(3));
        let (key, text) = of_document(&hand_over);
        assert_eq!(key, Key::Plan(PlanId::new(1, 1)));
        let opened = file::open(text.as_bytes()).expect("an envelope");
        assert_eq!(opened.document, hand_over.document);
        assert!(opened.journal.0.is_empty());
    }
}
