//! How the food stands, worked out anew every minute from plan and journal, without waiting for the model.

use super::Forecast;
use crate::device::clock;
use cook_model::handover::Journal;
use cook_model::plan::Plan;
use cook_model::safety::{SafeLine, safe_line};
use cook_model::units::Moment;
use leptos::prelude::*;
use std::sync::Arc;

/// The safe line of the open plan. What the model foresaw last makes it stricter, never milder.
pub(super) fn follow(
    plan: Memo<Option<Arc<Plan>>>,
    journal: Memo<Arc<Journal>>,
    forecast: RwSignal<Forecast>,
    now: Memo<Moment>,
) -> Memo<Arc<SafeLine>> {
    let foreseen = Memo::new(move |_| {
        forecast.with(|forecast| {
            let outlook = forecast.outlook.as_ref();
            outlook
                .map(|outlook| outlook.safe.foreseen())
                .unwrap_or_default()
        })
    });
    Memo::new(move |_| {
        let Some(plan) = plan.get() else {
            return Arc::default();
        };
        let journal = journal.get();
        // The minute says when to look again. What was logged within it has happened already, so the clock itself counts.
        let now = now.get().max(clock::now());
        foreseen.with(|foreseen| Arc::new(safe_line(&plan, &journal, foreseen, now)))
    })
}
