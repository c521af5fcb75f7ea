//! The line over the bar: the last change, and the key that takes it back.

use crate::store::use_store;
use crate::words::edits;
use leptos::prelude::*;

/// The line, while there is a change of the open plan that can be taken back or made again.
#[component]
pub fn LastLine() -> impl IntoView {
    let store = use_store();
    let library = store.library();
    let last = Memo::new(move |_| {
        library.with(|library| {
            let held = library.open_plan()?;
            Some(edits::edit(held.history().last()?, held.plan()))
        })
    });
    let next = Memo::new(move |_| {
        library.with(|library| {
            let held = library.open_plan()?;
            Some(edits::edit(held.history().next()?, held.plan()))
        })
    });
    view! {
        <Show when=move || last.get().is_some() || next.get().is_some()>
            <div class="last-line" role="region" aria-label=edits::LAST_CHANGE>
                <button
                    type="button"
                    class="btn bare"
                    disabled=move || last.get().is_none()
                    on:click=move |_| store.undo()
                >
                    {move || last.get().map_or_else(|| edits::NOTHING_TO_UNDO.to_owned(), |what| edits::undo(&what))}
                </button>
                {move || next.get().map(|what| view! {
                    <button type="button" class="btn bare" on:click=move |_| store.redo()>
                        {edits::redo(&what)}
                    </button>
                })}
            </div>
        </Show>
    }
}
