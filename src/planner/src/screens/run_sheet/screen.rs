//! The screen.

use super::board::{Board, Derived};
use super::sheet_view::SheetView;
use crate::device::screen::use_screen;
use crate::parts::SafeLine;
use crate::store::{Progress, use_store};
use crate::words::run_sheet as words;
use leptos::prelude::*;
use std::sync::Arc;

/// Run sheet.
#[component]
pub fn RunSheet() -> impl IntoView {
    let store = use_store();
    let forecast = store.forecast();
    let derived = Memo::new(move |_| {
        let plan = store.plan.get()?;
        let outlook = forecast.with(|forecast| forecast.outlook.as_ref().map(Arc::clone))?;
        Some(Derived { plan, outlook })
    });
    provide_context(Board::new(derived, store.formats, store.now, use_screen()));
    let waits = Memo::new(move |_| derived.with(Option::is_none));
    let state = move || {
        let (progress, working) =
            forecast.with(|forecast| (forecast.progress, forecast.is_working()));
        match (progress, waits.get()) {
            (Progress::Broken, _) => Some((words::BROKEN, "heed settle")),
            _ if store.plan.with(Option::is_none) => Some((words::NO_PLAN, "note sheet-note")),
            (_, true) => Some((words::BEING_WORKED_OUT, "note sheet-note")),
            (_, false) if working => Some((words::WORKED_OUT_ANEW, "note sheet-note is-working")),
            (_, false) => None,
        }
    };
    view! {
        <main class="run-sheet">
            <SafeLine />
            <div role="status">
                {move || state().map(|(word, class)| view! { <p class=class>{word}</p> })}
            </div>
            <Show when=move || !waits.get()>
                <SheetView />
            </Show>
        </main>
    }
}
