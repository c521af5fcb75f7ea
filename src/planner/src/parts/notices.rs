//! What the person has to know whatever screen is shown: trouble with keeping, and a newer version.

use crate::device::service_worker::Newer;
use crate::device::storage::SaveState;
use crate::parts::hand_on;
use crate::store::use_store;
use crate::words::saving;
use leptos::prelude::*;

/// The notices, where there are any.
#[component]
pub fn Notices(
    /// Whether a newer version waits.
    newer: Newer,
) -> impl IntoView {
    let store = use_store();
    let (later, set_later) = signal(false);
    let trouble = Memo::new(move |_| store.save_state.with(saving::trouble));
    let behind = move || store.save_state.with(|state| *state == SaveState::Behind);
    let keep = move |_| {
        if let Some(plan) = store.open_id.get_untracked() {
            hand_on(store, plan);
        }
    };
    let reload = |_| {
        // A page that cannot reload goes on as it is.
        window().location().reload().ok();
    };
    let way_out = move || {
        if behind() {
            view! { <button type="button" class="btn" on:click=reload>{saving::RELOAD}</button> }
                .into_any()
        } else {
            view! { <button type="button" class="btn" on:click=keep>{saving::KEEP_A_COPY}</button> }
                .into_any()
        }
    };
    let told = move || {
        trouble.get().map(|trouble| {
            view! {
                <section class="heed settle" role="alert">
                    <h2 class="head">{trouble.head}</h2>
                    <p class="note ink">{trouble.note}</p>
                    {way_out}
                </section>
            }
        })
    };
    let good = move || {
        store.told.get().map(|told| {
            view! {
                <section class="plain settle" role="status">
                    <h2 class="head">{told.head}</h2>
                    <p class="note">{told.note}</p>
                    <button type="button" class="btn" on:click=move |_| store.told.set(None)>{saving::GOOD}</button>
                </section>
            }
        })
    };
    view! {
        {told}
        {good}
        <Show when=move || newer.waiting.get() && !later.get()>
            <section class="plain settle" role="status">
                <h2 class="head">{saving::NEWER_HEAD}</h2>
                <p class="note">
                    {move || if newer.held.get() { saving::NEWER_HELD } else { saving::NEWER_NOTE }}
                </p>
                <div class="pair">
                    <button type="button" class="btn" on:click=move |_| set_later.set(true)>{saving::NOT_NOW}</button>
                    <button type="button" class="btn act" on:click=move |_| newer.switch()>{saving::SWITCH}</button>
                </div>
            </section>
        </Show>
    }
}
