//! The screen.

use leptos::prelude::*;

/// Run sheet.
#[component]
pub fn RunSheet() -> impl IntoView {
    view! { <main></main> }
}
