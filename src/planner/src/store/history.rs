//! What can be taken back: whole plans as they were, the latest last. A plan has a few kilobytes, so this is small.

use super::Edit;
use cook_model::plan::Plan;

/// Changes that can be taken back.
const MOST: usize = 100;
/// Changes of the same thing within this time run together, milliseconds. Set by hand.
const RUN: u64 = 4_000;

/// One change and the plan before it.
#[derive(Clone, Debug, PartialEq)]
struct Past {
    edit: Edit,
    before: Plan,
    wall: u64,
}

/// The changes of one plan in this page. Not kept on disk: what is on disk is the plan itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    past: Vec<Past>,
    future: Vec<Past>,
}

impl History {
    /// Notes a change, given the plan before it and the wall clock in milliseconds.
    pub fn note(&mut self, edit: Edit, before: Plan, wall: u64) {
        self.future.clear();
        if let Some(last) = self.past.last_mut()
            && last.edit == edit
            && edit.runs_together()
            && wall.saturating_sub(last.wall) <= RUN
        {
            last.wall = wall;
            return;
        }
        if self.past.len() == MOST {
            self.past.remove(0);
        }
        self.past.push(Past { edit, before, wall });
    }

    /// The change that would be taken back next.
    #[must_use]
    pub fn last(&self) -> Option<&Edit> {
        self.past.last().map(|past| &past.edit)
    }

    /// The change that would be made again next.
    #[must_use]
    pub fn next(&self) -> Option<&Edit> {
        self.future.last().map(|past| &past.edit)
    }

    /// Takes the last change back: the plan as it was before, given the plan as it is.
    pub fn undo(&mut self, now: Plan) -> Option<Plan> {
        swap(&mut self.past, &mut self.future, now)
    }

    /// Makes the change again that was taken back last.
    pub fn redo(&mut self, now: Plan) -> Option<Plan> {
        swap(&mut self.future, &mut self.past, now)
    }

    /// Forgets everything: the plan was changed from elsewhere, and going back would undo that too.
    pub fn clear(&mut self) {
        *self = Self::default();
    }
}

fn swap(from: &mut Vec<Past>, to: &mut Vec<Past>, now: Plan) -> Option<Plan> {
    let Past { edit, before, .. } = from.pop()?;
    to.push(Past {
        edit,
        before: now,
        // A change after this one never runs together with it.
        wall: 0,
    });
    Some(before)
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::plan::Serving;

    fn plan(guests: u32) -> Plan {
        let serving = Serving {
            local: "2026-09-12T18:00:00".parse().expect("a date and time"),
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        };
        let mut plan = Plan::new(serving);
        plan.guests.grown = guests;
        plan
    }

    #[test]
    fn back_and_forth_come_to_the_same_plan() {
        let mut history = History::default();
        history.note(Edit::Guests, plan(6), 0);
        history.note(Edit::Appetite, plan(7), 1);
        let mut now = plan(8);
        for wanted in [7, 6] {
            now = history.undo(now).expect("a change");
            assert_eq!(now, plan(wanted));
        }
        assert_eq!(history.undo(now.clone()), None);
        for wanted in [7, 8] {
            now = history.redo(now).expect("a change");
            assert_eq!(now, plan(wanted));
        }
        assert_eq!(history.redo(now), None);
    }

    #[test]
    fn taps_in_a_row_are_one_change() {
        let mut history = History::default();
        for (guests, wall) in [(6, 0), (7, 900), (8, 1_800)] {
            history.note(Edit::Guests, plan(guests), wall);
        }
        assert_eq!(history.undo(plan(9)), Some(plan(6)));
    }

    #[test]
    fn taps_with_a_pause_between_are_two() {
        let mut history = History::default();
        history.note(Edit::Guests, plan(6), 0);
        history.note(Edit::Guests, plan(7), 60_000);
        assert_eq!(history.undo(plan(8)), Some(plan(7)));
    }

    #[test]
    fn two_dishes_taken_off_come_back_one_by_one() {
        let mut history = History::default();
        history.note(Edit::DishTakenOff("Lamb".to_owned()), plan(1), 0);
        history.note(Edit::DishTakenOff("Lamb".to_owned()), plan(2), 10);
        assert_eq!(history.undo(plan(3)), Some(plan(2)));
    }

    #[test]
    fn a_new_change_ends_what_could_be_made_again() {
        let mut history = History::default();
        history.note(Edit::Guests, plan(6), 0);
        let now = history.undo(plan(7)).expect("a change");
        history.note(Edit::Guests, now, 0);
        assert_eq!(history.redo(plan(9)), None);
    }

    #[test]
    fn the_oldest_changes_are_forgotten() {
        let mut history = History::default();
        for n in 0..150_u32 {
            history.note(Edit::DishAdded(n.to_string()), plan(n), 0);
        }
        let mut now = plan(150);
        while let Some(before) = history.undo(now.clone()) {
            now = before;
        }
        assert_eq!(now, plan(50));
    }
}
