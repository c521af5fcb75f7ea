//! A dish in miniature: a ringed plate with its letter.

use leptos::prelude::*;

/// A mark. It is hidden from screen readers: the dish's name always stands beside it.
#[component]
pub fn Mark(
    /// Its letter.
    #[prop(into)]
    letter: Signal<char>,
    /// Its hue, 1 to 5.
    #[prop(into)]
    hue: Signal<u8>,
    /// Small, for tickets.
    #[prop(optional)]
    small: bool,
) -> impl IntoView {
    let class = move || {
        let hue = hue.get().clamp(1, 5);
        format!("mark d{hue}{}", if small { " s" } else { "" })
    };
    view! { <span class=class aria-hidden="true">{move || letter.get().to_string()}</span> }
}
