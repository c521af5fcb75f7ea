//! Whether the browser has promised to keep what is stored.

use js_sys::Promise;
use leptos::prelude::window;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageManager;

fn manager() -> Option<StorageManager> {
    let navigator = window().navigator();
    let found = js_sys::Reflect::get(&navigator, &"storage".into()).ok()?;
    found.dyn_into().ok()
}

async fn answer(asked: Option<Result<Promise, JsValue>>) -> bool {
    let Some(Ok(promise)) = asked else {
        return false;
    };
    JsFuture::from(promise)
        .await
        .is_ok_and(|answer| answer.is_truthy())
}

/// Whether it has.
pub async fn is_promised() -> bool {
    answer(manager().map(|manager| manager.persisted())).await
}

/// Asks it to. Browsers decide by themselves, by how much the page is used and whether it is installed.
pub async fn ask_promise() -> bool {
    answer(manager().map(|manager| manager.persist())).await
}
