//! Plans: every gathering on this device, and the ways in and out.

use leptos::prelude::*;

/// The screen.
#[component]
pub fn Plans() -> impl IntoView {
    view! { <main></main> }
}
