//! What is wrong with a group of fields, beside them.

use leptos::prelude::*;

/// The question, where there is one.
#[component]
pub fn Asked(
    /// What is wrong and what to do.
    wrong: Signal<Option<String>>,
) -> impl IntoView {
    move || {
        wrong
            .get()
            .map(|wrong| view! { <p class="asked" role="status">{wrong}</p> })
    }
}
