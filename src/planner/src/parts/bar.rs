//! The screens by name, under the thumb.

use crate::route::Route;
use crate::words::screens::screen;
use leptos::prelude::*;

/// The bar.
#[component]
pub fn Bar(
    /// The screen shown.
    route: ReadSignal<Route>,
) -> impl IntoView {
    let link = move |to: Route| {
        let current = move || (route.get() == to).then_some("page");
        view! { <a href=to.href() aria-current=current>{screen(to)}</a> }
    };
    view! {
        <nav class="bar" aria-label="Screens">
            {link(Route::Gathering)}
            {link(Route::Shopping)}
            {link(Route::RunSheet)}
            {link(Route::Fireside)}
        </nav>
    }
}
