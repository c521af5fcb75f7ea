//! Where plans live on this device. Every change goes into two stores under the same names: local storage at once, and
//! IndexedDB with strict durability, which alone survives a browser that is killed (measured: local storage lost a
//! change in most tries up to tens of seconds later, IndexedDB none). A change counts as saved when the strict copy is
//! on disk. At start both are read; the store above merges them, so neither can undo the other.
//!
//! | record            | content                                              |
//! |-------------------|------------------------------------------------------|
//! | `plan.ID`         | one plan's fields, as in a hand-over file             |
//! | `journal.ID.N`    | entries 200 N to 200 N + 199 of its journal           |
//! | `index`           | which plans were taken away                           |
//! | `device`          | replica id, units, light, the open plan               |
//! | `aside.CHECKSUM`  | a record that could not be read, as it was found      |
//!
//! A record that cannot be believed is kept aside before anything is written in its place; one of a newer version is
//! never written to at all.

mod copies;
mod envelope;
mod key;
mod persist;
mod quick;
mod state;
mod strict;

pub use copies::{Copies, Damaged};
pub use envelope::{Envelope, Fault, VERSION, checksum};
pub use key::{Key, NotAKey, PREFIX};
pub use persist::{ask_promise, is_promised};
pub use quick::Refused;
pub use state::SaveState;

use indexed_db_futures::database::Database;
use leptos::prelude::*;
use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;

/// The two stores of this device.
#[derive(Clone)]
pub struct Storage {
    inner: Rc<Inner>,
}

struct Inner {
    /// None where the browser has none, or did not answer at start.
    database: Result<Database, Refused>,
    revisions: RefCell<BTreeMap<Key, u64>>,
    /// Records of a newer version, which are not written to.
    newer: RefCell<BTreeSet<Key>>,
    /// Strict writes under way.
    pending: Cell<u32>,
    state: ArcRwSignal<SaveState>,
}

impl Storage {
    /// Opens both stores and reads everything in them. Records that cannot be believed are kept aside at once.
    pub async fn open() -> (Self, BTreeMap<Key, Copies>) {
        let database = strict::open().await;
        let (strict, database) = match database {
            Ok(database) => match strict::read_all(&database).await {
                Ok(records) => (records, Ok(database)),
                Err(refused) => (BTreeMap::new(), Err(refused)),
            },
            Err(refused) => (BTreeMap::new(), Err(refused)),
        };
        let records = copies::pair(quick::read_all(), strict);
        let storage = Self {
            inner: Rc::new(Inner {
                database,
                revisions: RefCell::new(copies::revisions(&records)),
                newer: RefCell::new(BTreeSet::new()),
                pending: Cell::new(0),
                state: ArcRwSignal::new(SaveState::Starting),
            }),
        };
        storage.rest();
        for damaged in records.values().flat_map(Copies::damaged) {
            storage.keep_aside(damaged);
        }
        (storage, records)
    }

    /// How far the last change got.
    #[must_use]
    pub fn state(&self) -> ArcRwSignal<SaveState> {
        self.inner.state.clone()
    }

    /// Writes a record to both stores. A record of a newer version is left alone.
    pub fn write(&self, key: Key, content: String) {
        self.write_then(key, content, |_| {});
    }

    /// The same, and calls back with how far this one record got once both stores have answered.
    pub fn write_then(&self, key: Key, content: String, told: impl FnOnce(&SaveState) + 'static) {
        if self.inner.newer.borrow().contains(&key) {
            told(&SaveState::Behind);
            return;
        }
        let revision = {
            let mut revisions = self.inner.revisions.borrow_mut();
            let revision = revisions.entry(key).or_default();
            *revision += 1;
            *revision
        };
        let envelope = Envelope::new(key, revision, content);
        let quick = quick::write(key, &envelope);
        self.write_strict(key, Some(envelope.to_text()), quick, told);
    }

    /// Takes a record out of both stores, for good.
    pub fn erase(&self, key: Key) {
        quick::erase(key);
        self.write_strict(key, None, Ok(()), |_| {});
    }

    /// Keeps a record that cannot be read, as it was found, under a name of its own.
    pub fn keep_aside(&self, damaged: &Damaged) {
        if let Fault::Newer { .. } = damaged.fault {
            self.inner.newer.borrow_mut().insert(damaged.key);
            self.inner.state.set(SaveState::Behind);
            return;
        }
        let aside = Key::Aside(checksum(&damaged.text));
        if !self.inner.revisions.borrow().contains_key(&aside) {
            self.write(aside, damaged.text.clone());
        }
    }

    /// Calls back for every record that another tab changes. The text is none where it was taken out.
    pub fn on_change_elsewhere(
        &self,
        call: impl Fn(Key, Option<Result<Envelope, Damaged>>) + 'static,
    ) {
        let storage = self.clone();
        let listener = window_event_listener(leptos::ev::storage, move |event| {
            let Some(key) = event.key().and_then(|name| name.parse().ok()) else {
                return;
            };
            let record = event.new_value().map(|text| copies::open(key, text));
            match &record {
                Some(Ok(envelope)) => {
                    let mut revisions = storage.inner.revisions.borrow_mut();
                    let revision = revisions.entry(key).or_default();
                    *revision = envelope.revision.max(*revision);
                }
                Some(Err(damaged)) => storage.keep_aside(damaged),
                None => {}
            }
            call(key, record);
        });
        on_cleanup(move || listener.remove());
    }

    fn write_strict(
        &self,
        key: Key,
        text: Option<String>,
        quick: Result<(), Refused>,
        told: impl FnOnce(&SaveState) + 'static,
    ) {
        let inner = Rc::clone(&self.inner);
        inner.pending.set(inner.pending.get() + 1);
        if inner.state.get_untracked() != SaveState::Behind {
            inner.state.set(SaveState::Saving);
        }
        spawn_local(async move {
            let strict = match &inner.database {
                Ok(database) => strict::write(database, key, text).await,
                Err(refused) => Err(refused.clone()),
            };
            inner.pending.set(inner.pending.get() - 1);
            let state = SaveState::after(quick, strict);
            told(&state);
            if inner.state.get_untracked() == SaveState::Behind {
                return;
            }
            if inner.pending.get() == 0 || state.is_trouble() {
                inner.state.set(state);
            }
        });
    }

    /// The state before the first change.
    fn rest(&self) {
        let state = match &self.inner.database {
            Ok(_) => SaveState::Saved,
            Err(refused) => SaveState::QuickOnly(refused.clone()),
        };
        self.inner.state.set(state);
    }
}
