//! The list out of the app: as text, as a file, on paper.

use super::Listed;
use crate::device::files::send;
use crate::store::use_store;
use crate::words::shopping as words;
use leptos::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// The three keys.
#[component]
pub fn SendList() -> impl IntoView {
    let store = use_store();
    let Listed { lines, .. } = expect_context();
    let told = RwSignal::new("");
    let text = move || {
        let plan = store.plan.get_untracked()?;
        let formats = store.formats.get_untracked();
        Some(lines.with_untracked(|lines| words::as_text(lines, &plan, &formats)))
    };
    let copy = move |_| {
        let Some(text) = text() else { return };
        spawn_local(async move {
            let navigator = window().navigator();
            // A page that is not on a secure address has no clipboard at all.
            let there = js_sys::Reflect::get(&navigator, &"clipboard".into())
                .is_ok_and(|clipboard| clipboard.is_object());
            let written = there
                && JsFuture::from(navigator.clipboard().write_text(&text))
                    .await
                    .is_ok();
            told.set(if written {
                words::COPIED
            } else {
                words::NOT_COPIED
            });
        });
    };
    let share = move |_| {
        let Some(text) = text() else { return };
        spawn_local(async move {
            send("shopping.txt", &text, "text/plain").await;
        });
    };
    let print = move |_| {
        // A browser without a printer says so itself.
        window().print().ok();
    };
    view! {
        <section class="settle no-print">
            <div class="pair">
                <button type="button" class="btn" on:click=copy>{words::COPY}</button>
                <button type="button" class="btn" on:click=share>{words::SHARE}</button>
                <button type="button" class="btn" on:click=print>{words::PRINT}</button>
            </div>
            <p class="note" role="status">{move || told.get()}</p>
        </section>
    }
}
