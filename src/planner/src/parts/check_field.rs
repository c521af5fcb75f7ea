//! Something that is so or not.

use leptos::prelude::*;

/// A box to tick, the whole row to be tapped.
#[component]
pub fn CheckField(
    /// What is so.
    #[prop(into)]
    label: Signal<String>,
    /// What it means; may be left out.
    #[prop(optional)]
    note: &'static str,
    /// Whether it is.
    #[prop(into)]
    value: Signal<bool>,
    /// Called with the new answer.
    #[prop(into)]
    on_change: Callback<bool>,
) -> impl IntoView {
    let changed = move |event| on_change.run(event_target_checked(&event));
    view! {
        <label class="check">
            <input type="checkbox" prop:checked=move || value.get() on:change=changed />
            <span>
                <b>{move || label.get()}</b>
                {(!note.is_empty()).then(|| view! { <span class="note">{note}</span> })}
            </span>
        </label>
    }
}
