//! Plans that are only tried, side by side, and what became of them.

use super::Store;
use crate::reckon::{Effort, Line, Question, Wanted};
use cook_model::handover::identity::DishId;
use cook_model::plan::outlook::Hindrance;
use cook_model::plan::{Plan, Trial};
use cook_model::units::Moment;
use leptos::prelude::*;
use std::collections::BTreeMap;

/// A plan to try.
#[derive(Clone, Debug, PartialEq)]
pub struct ToTry {
    /// Which of those side by side.
    pub way: u32,
    /// The plan.
    pub plan: Plan,
    /// The dish that is looked at.
    pub dish: DishId,
    /// A second start that is asked about.
    pub also: Option<Moment>,
}

/// What became of a plan that was tried.
#[derive(Clone, Debug, PartialEq)]
pub struct Tried {
    /// What became of it, or why nothing could.
    pub trial: Result<Trial, Hindrance>,
    /// How much work the answer is worth.
    pub effort: Effort,
    /// It belongs to what was asked before; the new answer is on its way.
    pub stale: bool,
}

/// What became of each way.
pub type Trials = BTreeMap<u32, Tried>;

impl Store {
    /// Tries plans side by side, in the situation as it is. Answers come one by one, with rising effort.
    pub fn try_plans(self, plans: Vec<ToTry>) {
        self.trials.update(|trials| {
            trials.retain(|way, _| plans.iter().any(|plan| plan.way == *way));
            for tried in trials.values_mut() {
                tried.stale = true;
            }
        });
        let situation = self.situation();
        let question = |tried: ToTry| Question {
            plan: tried.plan.without_shopping(),
            situation: situation.clone(),
            wanted: Wanted::Trial {
                way: tried.way,
                dish: tried.dish,
                also: tried.also,
            },
        };
        let questions = plans.into_iter().map(question).collect();
        self.reckoner
            .with_value(|reckoner| reckoner.ask(Line::Trial, questions));
    }

    /// What became of the plans that were tried last.
    #[must_use]
    pub fn trials(self) -> ReadSignal<Trials> {
        self.trials.read_only()
    }
}
