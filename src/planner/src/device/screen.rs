//! How large the screen is, as a signal.

use leptos::prelude::*;

/// A small phone, for where the browser does not say.
const SMALL: (f64, f64) = (360.0, 740.0);

/// Width and height of the page in CSS pixels; follows turning and resizing.
#[must_use]
pub fn use_screen() -> ReadSignal<(f64, f64)> {
    let size = || {
        let window = window();
        let side = |side: Result<_, _>| {
            side.ok()
                .and_then(|length: wasm_bindgen::JsValue| length.as_f64())
        };
        (
            side(window.inner_width()).unwrap_or(SMALL.0),
            side(window.inner_height()).unwrap_or(SMALL.1),
        )
    };
    let (screen, set_screen) = signal(size());
    let listener = window_event_listener(leptos::ev::resize, move |_| set_screen.set(size()));
    on_cleanup(move || listener.remove());
    screen
}
