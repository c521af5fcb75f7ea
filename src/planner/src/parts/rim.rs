//! The top edge of every screen: the plan's name, when it is served, the way to the other plans, and the light.

use crate::device::locale::prefers_dark;
use crate::route::Route;
use crate::store::{Light, Store, use_store};
use crate::words::screens::{light, plan_name, screen};
use crate::words::{saving, times};
use leptos::prelude::*;

/// The rim.
#[component]
pub fn Rim() -> impl IntoView {
    let store = use_store();
    let name = move || {
        store.plan.with(|plan| match plan {
            Some(plan) => plan_name(&plan.name).to_owned(),
            None => "Longcook".to_owned(),
        })
    };
    let moment = move || {
        let serving = store
            .plan
            .with(|plan| Some(plan.as_ref()?.serving.moment()))?;
        Some(times::served_when(
            serving,
            store.now.get(),
            &store.formats.get(),
        ))
    };
    view! {
        <header class="rim">
            <a class="rim-name" href=Route::Plans.href()>
                <span class="rim-plans">
                    <u>{screen(Route::Plans)}</u>
                    <Saved />
                </span>
                <h1>{name}</h1>
                <p>{moment}</p>
            </a>
            <a class="rim-doubt" href=Route::InDoubt.href()>{screen(Route::InDoubt)}</a>
            <Lights />
        </header>
    }
}

/// Whether the last change is on disk. Screen readers hear of trouble by its notice, not of every change.
#[component]
fn Saved() -> impl IntoView {
    let store = use_store();
    let saved = move || store.save_state.with(saving::word);
    view! { <span class="saved" data-saved=saved>{saved}</span> }
}

/// The switch between the three lights.
#[component]
fn Lights() -> impl IntoView {
    let store = use_store();
    let button = move |one: Light| {
        let pressed = move || (light_now(store) == one).to_string();
        let turn = move |_| store.set_preferences(|preferences| preferences.light = Some(one));
        view! {
            <button type="button" aria-pressed=pressed on:click=turn>{light(one)}</button>
        }
    };
    view! {
        <div class="lights" role="group" aria-label="Light">
            {Light::ALL.map(button).collect_view()}
        </div>
    }
}

fn light_now(store: Store) -> Light {
    let chosen = store.preferences().with(|preferences| preferences.light);
    chosen.unwrap_or_else(|| {
        if prefers_dark() {
            Light::Night
        } else {
            Light::Day
        }
    })
}

/// Keeps the page in the light that is chosen, or else in the one that the device is set to.
pub fn keep_light(store: Store) {
    Effect::new(move |_| {
        let light = light_now(store).name();
        if let Some(root) = document().document_element() {
            // It fails only for a name that is not one.
            root.set_attribute("data-light", light).ok();
        }
    });
}
