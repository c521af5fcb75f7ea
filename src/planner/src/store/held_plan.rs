//! A plan as this page holds it: the document that is kept, the journal, the plan read from it, and what can be taken
//! back.

use super::{Edit, History};
use cook_model::handover::identity::{EntryId, PlanId};
use cook_model::handover::{Clock, Document, Entry, HandOver, Journal, Unreadable};
use cook_model::plan::Plan;

/// One plan.
#[derive(Clone, Debug, PartialEq)]
pub struct HeldPlan {
    document: Document,
    journal: Journal,
    plan: Plan,
    unreadable: Vec<Unreadable>,
    history: History,
}

impl HeldPlan {
    /// A new plan, every field stamped.
    #[must_use]
    pub fn new(id: PlanId, plan: Plan, clock: &mut Clock, wall: u64) -> Self {
        let mut document = Document::new(id);
        document.record(None, &plan, clock, wall);
        Self {
            document,
            journal: Journal::default(),
            plan,
            unreadable: Vec::new(),
            history: History::default(),
        }
    }

    /// Reads a plan. None where not even its serving moment can be read; fields that cannot be are left out and told.
    #[must_use]
    pub fn read(document: Document, journal: Journal) -> Option<Self> {
        let reading = document.read();
        Some(Self {
            plan: reading.plan?,
            unreadable: reading.unreadable,
            document,
            journal,
            history: History::default(),
        })
    }

    /// Whose copy it is.
    #[must_use]
    pub const fn id(&self) -> PlanId {
        self.document.id
    }

    /// The plan.
    #[must_use]
    pub const fn plan(&self) -> &Plan {
        &self.plan
    }

    /// The fields as they are kept.
    #[must_use]
    pub const fn document(&self) -> &Document {
        &self.document
    }

    /// What happened.
    #[must_use]
    pub const fn journal(&self) -> &Journal {
        &self.journal
    }

    /// Adds entries to the journal.
    pub fn log(&mut self, entries: impl IntoIterator<Item = (EntryId, Entry)>) {
        self.journal.0.extend(entries);
    }

    /// Fields that could not be read.
    #[must_use]
    pub fn unreadable(&self) -> &[Unreadable] {
        &self.unreadable
    }

    /// What can be taken back.
    #[must_use]
    pub const fn history(&self) -> &History {
        &self.history
    }

    /// When any field was last changed, milliseconds since 1970.
    #[must_use]
    pub fn changed(&self) -> u64 {
        self.document
            .latest()
            .map_or(0, |stamp| stamp.milliseconds())
    }

    /// As a hand-over file.
    #[must_use]
    pub fn hand_over(&self) -> HandOver {
        HandOver::new(self.document.clone(), self.journal.clone())
    }

    /// Changes the plan. Returns whether anything is different now.
    pub fn edit(
        &mut self,
        edit: Edit,
        change: impl FnOnce(&mut Plan),
        clock: &mut Clock,
        wall: u64,
    ) -> bool {
        let mut after = self.plan.clone();
        change(&mut after);
        if after == self.plan {
            return false;
        }
        self.document.record(Some(&self.plan), &after, clock, wall);
        let before = std::mem::replace(&mut self.plan, after);
        self.history.note(edit, before, wall);
        true
    }

    /// Takes the last change back. Returns whether there was one.
    pub fn undo(&mut self, clock: &mut Clock, wall: u64) -> bool {
        let before = self.history.undo(self.plan.clone());
        self.become_again(before, clock, wall)
    }

    /// Makes the last change again that was taken back.
    pub fn redo(&mut self, clock: &mut Clock, wall: u64) -> bool {
        let after = self.history.redo(self.plan.clone());
        self.become_again(after, clock, wall)
    }

    fn become_again(&mut self, plan: Option<Plan>, clock: &mut Clock, wall: u64) -> bool {
        let Some(plan) = plan else { return false };
        self.document.record(Some(&self.plan), &plan, clock, wall);
        self.plan = plan;
        true
    }

    /// Takes over what another copy changed later. Returns whether this copy is different now. What could be taken back
    /// is forgotten then: going back would undo the other's changes too.
    pub fn merge(&mut self, document: &Document, journal: &Journal) -> bool {
        let (before, entries) = (self.document.clone(), self.journal.0.len());
        self.document.merge(document);
        self.journal.merge(journal);
        let changed = self.document != before || self.journal.0.len() != entries;
        if self.document != before {
            let reading = self.document.read();
            self.unreadable = reading.unreadable;
            // A copy whose serving moment is unreadable leaves the plan as it stands; its fields are kept all the same.
            if let Some(plan) = reading.plan {
                self.plan = plan;
            }
            self.history.clear();
        }
        changed
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::handover::identity::ReplicaId;
    use cook_model::plan::Serving;

    fn clock(replica: u64) -> Clock {
        Clock::new(ReplicaId::new(replica))
    }

    fn held(clock: &mut Clock) -> HeldPlan {
        let serving = Serving {
            local: "2026-09-12T18:00:00".parse().expect("a date and time"),
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        };
        HeldPlan::new(PlanId::new(1, 1), Plan::new(serving), clock, 1_000)
    }

    #[test]
    fn a_change_is_kept_and_can_be_taken_back_and_made_again() {
        let mut clock = clock(1);
        let mut held = held(&mut clock);
        assert!(held.edit(
            Edit::Guests,
            |plan| plan.guests.grown = 18,
            &mut clock,
            2_000
        ));
        assert!(!held.edit(
            Edit::Guests,
            |plan| plan.guests.grown = 18,
            &mut clock,
            3_000
        ));
        let read = |held: &HeldPlan| {
            let copy = HeldPlan::read(held.document().clone(), Journal::default());
            copy.expect("a plan").plan().guests.grown
        };
        assert_eq!(read(&held), 18);
        assert!(held.undo(&mut clock, 4_000));
        assert_eq!(read(&held), 6);
        assert!(held.redo(&mut clock, 5_000));
        assert_eq!(read(&held), 18);
        assert!(!held.redo(&mut clock, 6_000));
    }

    #[test]
    fn two_copies_that_were_changed_apart_come_together() {
        let (mut here, mut there) = (clock(1), clock(2));
        let mut ours = held(&mut here);
        let mut theirs = ours.clone();
        ours.edit(
            Edit::Name,
            |plan| plan.name = "Supper".to_owned(),
            &mut here,
            2_000,
        );
        theirs.edit(
            Edit::Guests,
            |plan| plan.guests.small = 4,
            &mut there,
            2_000,
        );
        assert!(ours.merge(theirs.document(), theirs.journal()));
        assert!(theirs.merge(ours.document(), ours.journal()));
        assert_eq!(ours.plan(), theirs.plan());
        assert_eq!(ours.plan().name, "Supper");
        assert_eq!(ours.plan().guests.small, 4);
        assert!(!ours.merge(theirs.document(), theirs.journal()));
    }

    #[test]
    fn a_change_from_elsewhere_cannot_be_taken_back_by_accident() {
        let (mut here, mut there) = (clock(1), clock(2));
        let mut ours = held(&mut here);
        let mut theirs = ours.clone();
        ours.edit(
            Edit::Name,
            |plan| plan.name = "Supper".to_owned(),
            &mut here,
            2_000,
        );
        theirs.edit(
            Edit::Guests,
            |plan| plan.guests.small = 4,
            &mut there,
            2_000,
        );
        ours.merge(theirs.document(), theirs.journal());
        assert!(!ours.undo(&mut here, 3_000));
        assert_eq!(ours.plan().guests.small, 4);
    }
}
