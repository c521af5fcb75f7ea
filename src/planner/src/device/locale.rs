//! What the browser knows about its owner's habits: language, clock, colours.

use crate::format::ClockStyle;
use js_sys::{Array, Object, Reflect};
use leptos::prelude::window;
use wasm_bindgen::JsValue;

/// The language and region, such as `en-GB`; empty where the browser does not say.
#[must_use]
pub fn locale() -> String {
    window().navigator().language().unwrap_or_default()
}

/// Twelve or twenty-four hours, as the browser's own formats have it.
#[must_use]
pub fn clock_style() -> ClockStyle {
    let options = Object::new();
    // Neither can fail: the object is fresh and plain, and the format exists in every browser with WebAssembly.
    Reflect::set(&options, &"hour".into(), &"numeric".into()).ok();
    let format = js_sys::Intl::DateTimeFormat::new(&Array::new(), &options);
    let cycle = Reflect::get(&format.resolved_options(), &"hourCycle".into())
        .ok()
        .and_then(|cycle: JsValue| cycle.as_string());
    match cycle.as_deref() {
        Some("h11" | "h12") => ClockStyle::Hours12,
        _ => ClockStyle::Hours24,
    }
}

/// Whether the device is set to dark colours.
#[must_use]
pub fn prefers_dark() -> bool {
    window()
        .match_media("(prefers-color-scheme: dark)")
        .ok()
        .flatten()
        .is_some_and(|query| query.matches())
}
