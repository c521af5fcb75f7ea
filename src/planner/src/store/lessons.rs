//! What the cooks on this device teach about the open plan's cookers.

use super::Store;
use cook_model::handover::identity::CookerId;
use cook_model::provisions::fuel::{LearnedFactor, learned};
use leptos::prelude::*;
use std::collections::BTreeMap;

impl Store {
    /// How much more, or less, each cooker burns than the model says, by what its fires were fed. Follows every plan and
    /// journal; plans made earlier come first.
    #[must_use]
    pub fn learned(self) -> Memo<BTreeMap<CookerId, LearnedFactor>> {
        Memo::new(move |_| {
            self.plan.with(|plan| {
                let Some(plan) = plan else {
                    return BTreeMap::new();
                };
                self.library.with(|library| {
                    let held = library.plans.values();
                    learned(plan, held.map(|held| (held.plan(), held.journal())))
                })
            })
        })
    }
}
