//! A step on its way: what is in hand, what was refused, and what a move does to the plan.

use super::super::board::{Board, Derived};
use super::super::sheet::Sheet;
use super::hand;
use super::judge::{Change, is_pinned, judge, unpin};
use super::preview::preview;
use super::room::{Room, make_room};
use crate::store::Edit;
use crate::words::{held, moves as words};
use cook_model::plan::outlook::Outlook;
use cook_model::plan::{Plan, StepKey};
use cook_model::schedule::{BrokenPromise, Lattice, Refused, To};
use cook_model::units::Moment;
use leptos::prelude::*;
use std::sync::Arc;

/// A ticket that is in hand, or was refused where it was put.
#[derive(Clone, Debug, PartialEq)]
pub struct Moving {
    /// Which ticket.
    pub key: StepKey,
    /// Where its step began.
    pub from: Moment,
    /// Where it would land.
    pub lands: Moment,
    /// A finger, a mouse or a pen has it.
    pub held: bool,
    /// What the rules say.
    pub verdict: Verdict,
}

/// What the rules say to a landing place.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// Allowed; promises that it breaks.
    Allowed(Vec<BrokenPromise>),
    /// Refused.
    Refused(Box<Refused>),
}

/// The day as the last move made it, until the worker has answered for that plan.
#[derive(Clone, Debug)]
struct Previewed {
    plan: Arc<Plan>,
    base: Arc<Outlook>,
    shown: Arc<Outlook>,
}

/// Everything about moves that the screen shares.
#[derive(Clone, Copy)]
pub struct Mover {
    /// The ticket that is in hand or was refused.
    pub moving: RwSignal<Option<Moving>>,
    /// What is said politely after a move.
    pub said: RwSignal<String>,
    previewed: RwSignal<Option<Previewed>>,
}

impl Mover {
    /// Nothing in hand.
    #[must_use]
    pub fn new() -> Self {
        Self {
            moving: RwSignal::new(None),
            said: RwSignal::new(String::new()),
            previewed: RwSignal::new(None),
        }
    }

    /// What is derived, with the last move in it until the worker has answered.
    #[must_use]
    pub fn over(self, derived: Derived) -> Derived {
        self.previewed.with(|previewed| match previewed {
            Some(last)
                if Arc::ptr_eq(&last.plan, &derived.plan)
                    && Arc::ptr_eq(&last.base, &derived.outlook) =>
            {
                Derived {
                    outlook: Arc::clone(&last.shown),
                    ..derived
                }
            }
            _ => derived,
        })
    }
}

impl Mover {
    /// The room that neighbours make for the ticket that is in hand or was refused.
    #[must_use]
    pub fn room(self, sheet: &Sheet) -> Option<Room> {
        let (key, lands) = self.moving.with(|moving| {
            let moving = moving.as_ref()?;
            Some((moving.key, moving.lands))
        })?;
        make_room(sheet, key, lands)
    }
}

impl Default for Mover {
    fn default() -> Self {
        Self::new()
    }
}

impl Board {
    /// The steps that move with a ticket, the one that it is known by first. None: it is a bundle, and does not move.
    #[must_use]
    pub fn steps_of(self, key: StepKey) -> Option<Vec<StepKey>> {
        let derived = self.derived.get_untracked()?;
        let sheet = self.sheet.get_untracked()?;
        let mut tickets = sheet.tickets.iter();
        let Some(placed) = tickets.find(|placed| placed.ticket.key == key) else {
            return Some(vec![key]);
        };
        let steps = placed.ticket.steps.iter();
        let keys = steps.map(|index| derived.outlook.steps[*index].key);
        (!placed.ticket.bundle).then(|| keys.collect())
    }

    /// When a step begins, as the day stands.
    #[must_use]
    pub fn begins(self, key: StepKey) -> Option<Moment> {
        let derived = self.derived.get_untracked()?;
        let lattice = &derived.outlook.lattice;
        Some(lattice.tasks[lattice.place(key)?].begins)
    }

    /// What a move would come to, without making it.
    #[must_use]
    pub fn judged(self, key: StepKey, to: To) -> Option<Result<Change, Box<Refused>>> {
        let derived = self.derived.get_untracked()?;
        let steps = self.steps_of(key)?;
        Some(judge(&derived.outlook.lattice, &steps, to))
    }

    /// Makes a move, or shows in place why it is refused. Returns whether it was made.
    pub fn make(self, key: StepKey, to: To, edit: Edit) -> bool {
        let Some(judged) = self.judged(key, to) else {
            return false;
        };
        match judged {
            Ok(change) => {
                self.take(&change, edit);
                true
            }
            Err(refused) => {
                self.refuse(key, to, refused);
                false
            }
        }
    }

    fn take(self, change: &Change, edit: Edit) {
        let Some(derived) = self.derived.get_untracked() else {
            return;
        };
        let base = self.worked_out.get_untracked().map(|base| base.outlook);
        self.store.edit(edit, |plan| change.keep(plan));
        if let (Some(plan), Some(base)) = (self.store.plan.get_untracked(), base) {
            let shown = Arc::new(preview(&derived.outlook, change));
            let previewed = Previewed { plan, base, shown };
            self.mover.previewed.set(Some(previewed));
        }
        self.mover.moving.set(None);
        let late = self.with_all(|_, plan, outlook, formats| {
            let late = change
                .breaks
                .iter()
                .map(|broken| late_words(broken, &change.lattice, plan, outlook, formats));
            let moved = words::moved(change.key, change.at, plan, formats);
            std::iter::once(moved).chain(late).collect::<Vec<_>>()
        });
        self.mover.said.set(late.join(". "));
    }

    fn refuse(self, key: StepKey, to: To, refused: Box<Refused>) {
        let Some(from) = self.begins(key) else { return };
        let lands = match to {
            To::At(at) => at,
            To::Before(other) | To::After(other) => self.begins(other).unwrap_or(from),
        };
        let said = self.with_all(|_, plan, outlook, formats| {
            let told = held::Told {
                plan,
                lattice: &outlook.lattice,
                formats,
            };
            let mut said = vec![format!("{}.", words::refused(key, lands, plan, formats))];
            said.extend(held::chain(&refused.chain, told));
            said.extend(
                refused
                    .nearest
                    .map(|nearest| format!("{}?", words::put_it(nearest, formats))),
            );
            said.join(" ")
        });
        self.mover.said.set(said);
        self.mover.moving.set(Some(Moving {
            key,
            from,
            lands,
            held: false,
            verdict: Verdict::Refused(refused),
        }));
    }

    /// Moves a step by so many steps of the grid, as keys do.
    pub fn nudge(self, key: StepKey, steps: i64) {
        // From where it was refused, keys go on: behind a wall there may be room again.
        let refused = self.mover.moving.with_untracked(|moving| {
            let moving = moving.as_ref()?;
            (moving.key == key && !moving.held).then_some(moving.lands)
        });
        if let Some(from) = refused.or_else(|| self.begins(key)) {
            let to = To::At(hand::stepped(from, steps));
            self.make(key, to, Edit::StepNudged(key));
        }
    }

    /// Puts a step at a moment.
    pub fn put_at(self, key: StepKey, at: Moment) {
        self.make(key, To::At(at), Edit::StepMoved(key));
    }

    /// Pins a step where it is, to a round time where rules allow it; takes its pin out where it is pinned.
    pub fn pin_or_unpin(self, key: StepKey) {
        let (Some(steps), Some(begins)) = (self.steps_of(key), self.begins(key)) else {
            return;
        };
        let pinned = self
            .store
            .plan
            .with_untracked(|plan| plan.as_ref().is_some_and(|plan| is_pinned(plan, &steps)));
        if pinned {
            self.store
                .edit(Edit::StepUnpinned(key), |plan| unpin(plan, &steps));
            let said = self.with_all(|_, plan, _, _| words::unpinned(key, plan));
            self.mover.said.set(said);
            self.mover.moving.set(None);
            return;
        }
        let round = To::At(hand::snapped(begins));
        let fits = matches!(self.judged(key, round), Some(Ok(_)));
        let to = if fits { round } else { To::At(begins) };
        self.make(key, to, Edit::StepPinned(key));
    }

    /// Puts a ticket back where it was picked up, or from where it was refused.
    pub fn put_back(self) {
        let Some(moving) = self.mover.moving.get_untracked() else {
            return;
        };
        self.mover.moving.set(None);
        let said = self.with_all(|_, plan, _, formats| {
            words::put_back(moving.key, moving.from, plan, formats)
        });
        self.mover.said.set(said);
    }
}

/// A broken promise in a sentence.
pub(super) fn late_words(
    broken: &BrokenPromise,
    lattice: &Lattice,
    plan: &Plan,
    outlook: &Outlook,
    formats: &crate::format::Formats,
) -> String {
    let name = plan.dishes.get(&broken.dish).map(|dish| dish.name.as_str());
    let spans = lattice
        .dishes
        .iter()
        .find(|spans| spans.dish == broken.dish);
    let on = spans.map_or(broken.latest, |spans| lattice.tasks[spans.on].begins);
    let serving = outlook.table.serving;
    words::late(name.unwrap_or_default(), on, broken.odds, serving, formats)
}
