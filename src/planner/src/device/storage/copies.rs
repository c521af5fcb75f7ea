//! The two copies of a record side by side.

use super::{Envelope, Fault, Key};
use std::collections::BTreeMap;

/// A record that cannot be believed, as it was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damaged {
    /// Under which name.
    pub key: Key,
    /// Its text.
    pub text: String,
    /// What is wrong with it.
    pub fault: Fault,
}

/// What the two stores hold under one name.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Copies {
    /// In local storage.
    pub quick: Option<Result<Envelope, Damaged>>,
    /// In IndexedDB.
    pub strict: Option<Result<Envelope, Damaged>>,
}

impl Copies {
    /// The copies that can be believed, the one with the higher revision first.
    #[must_use]
    pub fn sound(&self) -> Vec<&Envelope> {
        let mut sound: Vec<&Envelope> = [&self.quick, &self.strict]
            .into_iter()
            .filter_map(|copy| copy.as_ref()?.as_ref().ok())
            .collect();
        sound.sort_by_key(|envelope| std::cmp::Reverse(envelope.revision));
        sound
    }

    /// The copies that cannot.
    pub fn damaged(&self) -> impl Iterator<Item = &Damaged> {
        [&self.quick, &self.strict]
            .into_iter()
            .filter_map(|copy| copy.as_ref()?.as_ref().err())
    }

    /// Whether both stores hold exactly this.
    #[must_use]
    pub fn both_hold(&self, content: &str) -> bool {
        [&self.quick, &self.strict]
            .into_iter()
            .all(|copy| matches!(copy, Some(Ok(envelope)) if envelope.content == content))
    }
}

/// Opens a record, keeping its text where that fails.
pub(super) fn open(key: Key, text: String) -> Result<Envelope, Damaged> {
    Envelope::open(key, &text).map_err(|fault| Damaged { key, text, fault })
}

/// Puts the records of both stores side by side.
pub(super) fn pair(
    quick: BTreeMap<Key, String>,
    strict: BTreeMap<Key, String>,
) -> BTreeMap<Key, Copies> {
    let mut records: BTreeMap<Key, Copies> = BTreeMap::new();
    for (key, text) in quick {
        records.entry(key).or_default().quick = Some(open(key, text));
    }
    for (key, text) in strict {
        records.entry(key).or_default().strict = Some(open(key, text));
    }
    records
}

/// The highest revision of each record.
pub(super) fn revisions(records: &BTreeMap<Key, Copies>) -> BTreeMap<Key, u64> {
    records
        .iter()
        .filter_map(|(key, copies)| Some((*key, copies.sound().first()?.revision)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn record(revision: u64, content: &str) -> String {
        Envelope::new(Key::Index, revision, content.to_owned()).to_text()
    }

    fn paired(quick: &str, strict: &str) -> Copies {
        let one = |text: &str| BTreeMap::from([(Key::Index, text.to_owned())]);
        let mut records = pair(one(quick), one(strict));
        records.remove(&Key::Index).expect("the index")
    }

    #[test]
    fn the_later_copy_comes_first_and_both_are_kept() {
        let copies = paired(&record(2, "old"), &record(5, "new"));
        let contents: Vec<_> = copies
            .sound()
            .iter()
            .map(|one| one.content.clone())
            .collect();
        assert_eq!(contents, ["new", "old"]);
        assert!(!copies.both_hold("new"));
    }

    #[test]
    fn a_damaged_copy_does_not_hide_a_sound_one() {
        let torn = &record(9, "torn")[..20];
        let copies = paired(torn, &record(5, "sound"));
        assert_eq!(copies.sound().len(), 1);
        let damaged: Vec<_> = copies.damaged().collect();
        assert_eq!(damaged.len(), 1);
        assert_eq!(damaged[0].text, torn);
    }

    #[test]
    fn a_record_in_one_store_alone_is_behind_in_the_other() {
        let mut records = pair(
            BTreeMap::from([(Key::Device, "x".to_owned())]),
            BTreeMap::new(),
        );
        let copies = records.remove(&Key::Device).expect("the record");
        assert_eq!(copies.strict, None);
        assert!(!copies.both_hold("x"));
        assert_eq!(revisions(&records), BTreeMap::new());
    }
}
