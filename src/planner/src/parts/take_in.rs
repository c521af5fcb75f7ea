//! A plan into the app, from a file.

use super::choice::unique_id;
use crate::device::files;
use crate::parts::Slip;
use crate::route::Route;
use crate::store::{Store, TakenIn, use_store};
use crate::words::{Told, gathering, taking_in as words};
use cook_model::handover::{Refusal, Unreadable};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;

/// What is shown when a file has been looked at.
#[derive(Clone, Debug, PartialEq)]
struct Outcome {
    told: Told,
    places: Vec<Unreadable>,
}

/// The key that asks for a file. It accepts any kind: phones grey out what they do not know, so the content decides.
#[component]
pub fn TakeIn() -> impl IntoView {
    let store = use_store();
    let outcome = RwSignal::new(None::<Outcome>);
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
            let taken = bytes.and_then(|bytes| store.take_in(&bytes));
            if taken.is_ok() {
                Route::Gathering.go();
            }
            outcome.set(Some(tell(store, taken)));
        });
    };
    let close = move |()| outcome.set(None);
    view! {
        <span class="take-in">
            <input id=id.clone() class="hush" type="file" on:change=chosen />
            <label for=id class="btn">{gathering::TAKE_IN}</label>
        </span>
        {move || outcome.get().map(|outcome| {
            let more = outcome.places.len().saturating_sub(words::MOST_PLACES);
            view! {
                <Slip title=Signal::stored(outcome.told.head) on_close=close>
                    <p>{outcome.told.note}</p>
                    <ul class="places">
                        {outcome.places.into_iter().take(words::MOST_PLACES).map(|place| view! {
                            <li><b>{place.at}</b><span class="note">{place.because}</span></li>
                        }).collect_view()}
                        {(more > 0).then(|| view! { <li class="note">{words::and_more(more)}</li> })}
                    </ul>
                </Slip>
            }
        })}
    }
}

fn tell(store: Store, taken: Result<TakenIn, Refusal>) -> Outcome {
    match taken {
        Ok(taken) => {
            let name = store.plan.with_untracked(|plan| {
                plan.as_ref()
                    .map_or_else(String::new, |plan| plan.name.clone())
            });
            Outcome {
                told: words::taken(&taken, &name),
                places: Vec::new(),
            }
        }
        Err(refusal) => Outcome {
            told: Told::new(words::REFUSED, words::refusal(&refusal)),
            places: match refusal {
                Refusal::Wrong(places) => places,
                _ => Vec::new(),
            },
        },
    }
}
