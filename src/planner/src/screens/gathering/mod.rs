//! Gathering: the answer, the dishes, and what they rest on.

use crate::parts::LastLine;
use leptos::prelude::*;

/// The screen.
#[component]
pub fn Gathering() -> impl IntoView {
    view! {
        <main class="cols"></main>
        <LastLine />
    }
}
