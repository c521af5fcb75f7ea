//! The shelf: new plans, copies, names, taking away and bringing back, files out and in, other tabs.

use super::{Edit, HeldPlan, Store, load, records, saturday_evening};
use crate::device::clock::{now, wall_milliseconds};
use crate::device::ids::Ids;
use crate::device::storage::{Envelope, Key};
use cook_model::handover::identity::PlanId;
use cook_model::handover::{HandOver, Refusal, file};
use cook_model::plan::{Plan, demo};
use leptos::prelude::*;

/// What became of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TakenIn {
    /// A plan that was not here.
    New(PlanId),
    /// Merged into the plan that was here.
    Merged(PlanId),
    /// It holds nothing that was not here already.
    NothingNew(PlanId),
}

impl Store {
    /// Puts a plan on the screen.
    pub fn open(self, plan: PlanId) {
        self.library.update(|library| library.open = Some(plan));
        self.remember_open();
    }

    /// A plan on the shelf and on the screen.
    pub fn add_plan(self, plan: Plan) -> PlanId {
        let id = Ids.plan();
        let wall = wall_milliseconds();
        let mut held = None;
        self.clock
            .update_value(|clock| held = Some(HeldPlan::new(id, plan, clock, wall)));
        if let Some(held) = held {
            self.put(held);
        }
        self.open(id);
        id
    }

    /// An empty plan for the next Saturday evening.
    pub fn new_plan(self) -> PlanId {
        self.add_plan(Plan::new(saturday_evening()))
    }

    /// The made-up supper: the one that is there, or a new one.
    pub fn open_sample(self) {
        let sample = self
            .preferences
            .with_untracked(|preferences| preferences.sample);
        let there = sample.filter(|sample| {
            self.library.with_untracked(|library| {
                library.plans.contains_key(sample) && !library.index.is_away(*sample)
            })
        });
        match there {
            Some(sample) => self.open(sample),
            None => self.add_sample(),
        }
    }

    /// A new made-up supper, on the shelf and on the screen.
    pub(super) fn add_sample(self) {
        // The same ids everywhere: a dish's members hang on its id, and the sample shows the same figures on every device.
        let mut count = 0;
        let sample = demo(saturday_evening(), || {
            count += 1;
            (0, count)
        });
        let id = self.add_plan(sample);
        self.set_preferences(|preferences| preferences.sample = Some(id));
    }

    /// Gives a plan another name.
    pub fn rename(self, plan: PlanId, name: String) {
        self.with_plan(plan, |held, clock, wall| {
            held.edit(Edit::Name, |plan| plan.name = name, clock, wall)
        });
    }

    /// A copy of a plan under a new id, without its journal: the same supper again.
    pub fn copy_plan(self, plan: PlanId, name: impl FnOnce(&str) -> String) {
        let found = self
            .library
            .with_untracked(|library| Some(library.plans.get(&plan)?.plan().clone()));
        if let Some(mut copy) = found {
            copy.name = name(&copy.name);
            self.add_plan(copy);
        }
    }

    /// Takes a plan off the shelf. It is kept until it is erased.
    pub fn take_away(self, plan: PlanId) {
        self.mark(plan, true);
        self.leave_a_plan_taken_away();
    }

    /// Puts a plan that was taken away back on the shelf.
    pub fn bring_back(self, plan: PlanId) {
        self.mark(plan, false);
        if self
            .library
            .with_untracked(|library| library.open.is_none())
        {
            self.open(plan);
        }
    }

    /// Erases a plan that was taken away, for good.
    pub fn erase(self, plan: PlanId) {
        let mut keys = vec![Key::Plan(plan)];
        self.library.update(|library| {
            if let Some(held) = library.plans.remove(&plan) {
                let chunks = records::of_journal(plan, held.journal());
                keys.extend(chunks.into_iter().map(|(key, _)| key));
            }
        });
        self.storage
            .with_value(|storage| keys.iter().for_each(|key| storage.erase(*key)));
    }

    /// Erases a record that could not be read.
    pub fn erase_aside(self, checksum: u32) {
        self.library.update(|library| {
            library.aside.retain(|kept| kept.checksum != checksum);
        });
        self.storage
            .with_value(|storage| storage.erase(Key::Aside(checksum)));
    }

    /// A plan as a hand-over file.
    #[must_use]
    pub fn hand_over(self, plan: PlanId) -> Option<HandOver> {
        self.library
            .with_untracked(|library| Some(library.plans.get(&plan)?.hand_over()))
    }

    /// Takes a hand-over file in and opens its plan.
    ///
    /// # Errors
    /// What is wrong with the file; nothing is changed then.
    pub fn take_in(self, bytes: &[u8]) -> Result<TakenIn, Refusal> {
        let (hand_over, _) = file::read(bytes)?;
        let id = hand_over.document.id;
        let known = self
            .library
            .with_untracked(|library| library.plans.contains_key(&id));
        let taken = if known {
            match self.merge(id, &hand_over) {
                true => TakenIn::Merged(id),
                false => TakenIn::NothingNew(id),
            }
        } else {
            let HandOver {
                document, journal, ..
            } = hand_over;
            if let Some(held) = HeldPlan::read(document, journal) {
                self.put(held);
            }
            TakenIn::New(id)
        };
        if self
            .library
            .with_untracked(|library| library.index.is_away(id))
        {
            self.mark(id, false);
        }
        self.open(id);
        Ok(taken)
    }

    /// Puts a plan on the shelf and keeps it.
    fn put(self, held: HeldPlan) {
        self.keep(&held);
        self.library.update(|library| {
            library.plans.insert(held.id(), held);
        });
    }

    fn keep(self, held: &HeldPlan) {
        let (key, content) = records::of_document(&held.hand_over());
        self.write(key, content);
        for (key, content) in records::of_journal(held.id(), held.journal()) {
            self.write(key, content);
        }
    }

    /// Merges a copy into a plan that is here, and keeps what is different.
    fn merge(self, plan: PlanId, theirs: &HandOver) -> bool {
        let mut changed = None;
        self.library.update(|library| {
            if let Some(held) = library.plans.get_mut(&plan)
                && held.merge(&theirs.document, &theirs.journal)
            {
                changed = Some(held.clone());
            }
        });
        if let Some(held) = &changed {
            self.keep(held);
        }
        changed.is_some()
    }

    fn mark(self, plan: PlanId, away: bool) {
        let wall = wall_milliseconds();
        self.library.update(|library| {
            self.clock
                .update_value(|clock| library.mark(plan, away, clock, wall));
        });
        let index = self
            .library
            .with_untracked(|library| load::to_text(&library.index));
        self.write(Key::Index, index);
    }

    /// Another tab wrote a plan.
    pub(super) fn merge_from_elsewhere(self, plan: PlanId, envelope: &Envelope) {
        let Ok(theirs) = load::open_plan(plan, &envelope.content) else {
            return;
        };
        let known = self
            .library
            .with_untracked(|library| library.plans.contains_key(&plan));
        if !known {
            if let Some(held) = HeldPlan::read(theirs.document, theirs.journal) {
                self.library.update(|library| {
                    library.plans.insert(plan, held);
                });
            }
            return;
        }
        let mut merged = None;
        self.library.update(|library| {
            if let Some(held) = library.plans.get_mut(&plan)
                && held.merge(&theirs.document, &theirs.journal)
            {
                merged = Some(held.clone());
            }
        });
        // The other tab has everything unless this one had changed something of its own at the same moment.
        if let Some(held) = merged
            && held.document() != &theirs.document
        {
            self.keep(&held);
        }
    }

    /// Where the plan on the screen was taken away, the first on the shelf takes its place.
    pub(super) fn leave_a_plan_taken_away(self) {
        let gone = self.library.with_untracked(|library| {
            let Some(open) = library.open else {
                return false;
            };
            library.index.is_away(open) || !library.plans.contains_key(&open)
        });
        if gone {
            self.library
                .update(|library| library.open_or_first(None, now()));
            self.remember_open();
        }
    }

    fn remember_open(self) {
        let open = self.library.with_untracked(|library| library.open);
        self.set_preferences(|preferences| preferences.open = open);
    }
}
