//! Plans: every gathering on this device, and the ways in and out.

pub mod aside;
pub mod away;
pub mod shelf;

use crate::device::storage::{ask_promise, is_promised};
use crate::parts::TakeIn;
use crate::route::Route;
use crate::store::use_store;
use crate::words::{gathering, plans as words};
use aside::Aside;
use away::Away;
use leptos::prelude::*;
use shelf::Shelf;
use wasm_bindgen_futures::spawn_local;

/// The screen.
#[component]
pub fn Plans() -> impl IntoView {
    let store = use_store();
    let promised = RwSignal::new(None::<bool>);
    spawn_local(async move {
        let answer = is_promised().await || ask_promise().await;
        // The screen may have been left meanwhile.
        promised.try_set(Some(answer));
    });
    let new_plan = move |_| {
        store.new_plan();
        Route::Gathering.go();
    };
    let sample = move |_| {
        store.open_sample();
        Route::Gathering.go();
    };
    let kept = move || {
        promised.get().map(|promised| {
            if promised {
                words::KEPT
            } else {
                words::MAY_BE_CLEARED
            }
        })
    };
    view! {
        <main class="plans">
            <div class="plans-keys">
                <button type="button" class="btn act" on:click=new_plan>{words::NEW}</button>
                <TakeIn />
                <button type="button" class="btn" on:click=sample>{gathering::LOOK_AT_SAMPLE}</button>
            </div>
            <Shelf />
            <Away />
            <Aside />
            <p class="note kept">{kept}</p>
        </main>
    }
}
