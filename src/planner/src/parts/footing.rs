//! A row that the forecast rests on: its name, what it is, and its figure. It opens in place, one at a time.

use leptos::prelude::*;

/// A footing row. Its children are what can be changed.
#[component]
pub fn Footing(
    /// What it is called.
    #[prop(into)]
    name: Signal<String>,
    /// What it says at a glance.
    #[prop(into)]
    note: Signal<String>,
    /// Its figure.
    #[prop(into)]
    amount: Signal<String>,
    /// Something in it asks for heed.
    #[prop(into, default = Signal::stored(false))]
    asks: Signal<bool>,
    /// Guessed and not yet looked at: a dashed dot.
    #[prop(into, default = Signal::stored(false))]
    guessed: Signal<bool>,
    /// What can be changed.
    children: Children,
) -> impl IntoView {
    view! {
        <details class="foot" name="footing" class:asks=move || asks.get() class:guessed=move || guessed.get()>
            <summary class="row">
                <span class="dot"></span>
                <span>
                    <span class="name">{move || name.get()}</span>
                    <span class="note">{move || note.get()}</span>
                </span>
                <span class="num amt">{move || amount.get()}</span>
            </summary>
            <div class="edit">{children()}</div>
        </details>
    }
}
