//! The screen.

use super::board::{Board, Derived};
use super::sheet_view::SheetView;
use crate::device::screen::use_screen;
use crate::parts::SafeLine;
use crate::store::{Progress, Store, use_store};
use crate::words::run_sheet as words;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// Control and Z take the last change back, with Shift they make it again; fields have an undo of their own.
fn take_back(store: Store, event: &KeyboardEvent) {
    let target = event.target().map(event_target_tag);
    let in_field = matches!(target.as_deref(), Some("INPUT" | "SELECT" | "TEXTAREA"));
    if in_field || !(event.ctrl_key() || event.meta_key()) {
        return;
    }
    match (event.key().as_str(), event.shift_key()) {
        ("z" | "Z", false) => store.undo(),
        ("z" | "Z", true) | ("y" | "Y", false) => store.redo(),
        _ => return,
    }
    event.prevent_default();
}

fn event_target_tag(target: web_sys::EventTarget) -> String {
    target
        .dyn_into::<web_sys::Element>()
        .map(|element| element.tag_name())
        .unwrap_or_default()
}

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
    provide_context(Board::new(store, derived, use_screen()));
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
        <main class="run-sheet" on:keydown=move |event| take_back(store, &event)>
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
