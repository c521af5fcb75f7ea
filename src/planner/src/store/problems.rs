//! What is wrong with the plan as it stands, field by field.

use super::Store;
use crate::format::Units;
use cook_model::plan::{Plan, check};
use cook_model::units::Moment;
use leptos::prelude::*;

/// Something wrong, at a field, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// The field, as in a document: `dishes/ID/pieces/ID/mass`.
    pub at: String,
    /// What is wrong and what to do.
    pub message: String,
}

impl Store {
    /// What is wrong at exactly this field.
    #[must_use]
    pub fn wrong_at(self, at: impl Into<String>) -> Signal<Option<String>> {
        let at = at.into();
        Signal::derive(move || {
            self.wrong.with(|wrong| {
                let mut here = wrong.iter().filter(|one| one.at == at);
                here.next().map(|one| one.message.clone())
            })
        })
    }

    /// Whether anything is wrong at a field or inside it.
    #[must_use]
    pub fn anything_wrong_in(self, at: impl Into<String>) -> Signal<bool> {
        let at = at.into();
        Signal::derive(move || {
            self.wrong.with(|wrong| {
                wrong.iter().any(|one| {
                    let rest = one.at.strip_prefix(&at);
                    rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
                })
            })
        })
    }
}

/// Everything wrong with a plan, in the person's units.
pub(super) fn of(plan: Option<&Plan>, now: Moment, units: Units) -> Vec<Wrong> {
    let problems = plan.map(|plan| check(plan, now)).unwrap_or_default();
    problems
        .iter()
        .map(|problem| Wrong {
            at: problem.at.clone(),
            message: problem.message(units.scales()),
        })
        .collect()
}
