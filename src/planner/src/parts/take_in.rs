//! A plan into the app, from a file.

use super::choice::unique_id;
use crate::device::files;
use crate::parts::Slip;
use crate::route::Route;
use crate::store::use_store;
use crate::words::{gathering, taking_in as words};
use cook_model::handover::{Refusal, Unreadable};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;

/// The key that asks for a file. It accepts any kind: phones grey out what they do not know, so the content decides.
#[component]
pub fn TakeIn() -> impl IntoView {
    let store = use_store();
    let refused = RwSignal::new(None::<Refusal>);
    let id = unique_id("take-in");
    let chosen = move |event: leptos::ev::Event| {
        let input: Option<HtmlInputElement> =
            event.target().and_then(|target| target.dyn_into().ok());
        let Some(input) = input else { return };
        let Some(file) = input.files().and_then(|files| files.get(0)) else {
            return;
        };
        spawn_local(async move {
            let bytes = files::read(&file).await;
            // The same file can then be chosen again.
            input.set_value("");
            match bytes.and_then(|bytes| store.take_in(&bytes)) {
                Ok(taken) => {
                    let plan = store.plan.get_untracked();
                    let name = plan.map_or_else(String::new, |plan| plan.name.clone());
                    store.told.set(Some(words::taken(&taken, &name)));
                    Route::Gathering.go();
                }
                // The screen may have been left meanwhile; nothing was changed then either.
                Err(why) => {
                    refused.try_set(Some(why));
                }
            }
        });
    };
    let close = move |()| refused.set(None);
    let why = move |refusal: Refusal| {
        let note = words::refusal(&refusal);
        let places = match refusal {
            Refusal::Wrong(places) => places,
            _ => Vec::new(),
        };
        let more = places.len().saturating_sub(words::MOST_PLACES);
        let place = |place: Unreadable| {
            view! { <li><b>{words::place(&place.at)}</b><span class="note">{place.because}</span></li> }
        };
        view! {
            <Slip title=Signal::stored(words::REFUSED.to_owned()) on_close=close>
                <p>{note}</p>
                <ul class="places">
                    {places.into_iter().take(words::MOST_PLACES).map(place).collect_view()}
                    {(more > 0).then(|| view! { <li class="note">{words::and_more(more)}</li> })}
                </ul>
            </Slip>
        }
    };
    view! {
        <span class="take-in">
            <input id=id.clone() class="hush" type="file" on:change=chosen />
            <label for=id class="btn">{gathering::TAKE_IN}</label>
        </span>
        {move || refused.get().map(why)}
    }
}
