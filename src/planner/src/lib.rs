//! Longcook, the app: screens over one state, derived in a worker by `cook-model`, kept in the browser.
//!
//! What needs no browser (numbers, words, layout, records, history) is in plain modules with native tests.

pub mod app;
pub mod crash;
pub mod device;
pub mod format;
pub mod parts;
pub mod reckon;
pub mod route;
pub mod screens;
pub mod store;
pub mod words;

use device::storage::Storage;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

/// Begins: the same compiled file serves the page and its worker.
pub fn start() {
    if reckon::is_worker() {
        reckon::serve(reckon::Reckoning::default());
        return;
    }
    crash::guard();
    spawn_local(async {
        let (storage, records) = Storage::open().await;
        let loaded = store::load(&records);
        mount_to_body(move || view! { <app::App storage loaded /> });
    });
}
