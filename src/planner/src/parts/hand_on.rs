//! A plan out of the app, as a file.

use crate::device::files::{file_name, send};
use crate::store::Store;
use cook_model::handover::identity::PlanId;
use leptos::prelude::WithUntracked;
use wasm_bindgen_futures::spawn_local;

/// The media type of a hand-over file: JSON, so that every app lets it through.
const MEDIA_TYPE: &str = "application/json";

/// Hands a plan on as a file. Call it in answer to a tap.
pub fn hand_on(store: Store, plan: PlanId) {
    let name = store.library().with_untracked(|library| {
        let held = library.plans.get(&plan);
        held.map_or_else(String::new, |held| held.plan().name.clone())
    });
    let Some(hand_over) = store.hand_over(plan) else {
        return;
    };
    spawn_local(async move {
        send(&file_name(&name), &hand_over.to_text(), MEDIA_TYPE).await;
    });
}
