//! Gathering: the answer, the dishes, and what they rest on.

pub mod answer;
pub mod answer_plate;
pub mod dish_rows;
pub mod edit_dish;
pub mod findings;
pub mod new_dish;
pub mod rests_on;
pub mod scale;

use crate::parts::{LastLine, SafeLine};
use crate::store::use_store;
use crate::words::gathering as words;
use answer_plate::AnswerPlate;
use cook_model::handover::identity::DishId;
use dish_rows::DishRows;
use edit_dish::EditDish;
use findings::Findings;
use leptos::prelude::*;
use new_dish::NewDish;
use rests_on::RestsOn;

/// Which slip lies over the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Over {
    /// A new dish.
    NewDish,
    /// A dish that is on the menu.
    Dish(DishId),
}

/// What lies over the screen; shared by everything on it.
#[derive(Clone, Copy)]
pub(crate) struct OverScreen(pub(crate) RwSignal<Option<Over>>);

/// The screen.
#[component]
pub fn Gathering() -> impl IntoView {
    let store = use_store();
    let over = RwSignal::new(None);
    provide_context(OverScreen(over));
    let there = Memo::new(move |_| store.plan.with(Option::is_some));
    let slip = move || {
        over.get().map(|which| match which {
            Over::NewDish => view! { <NewDish /> }.into_any(),
            Over::Dish(dish) => view! { <EditDish dish /> }.into_any(),
        })
    };
    view! {
        <main class="gathering cols">
            <div class="c1">
                <SafeLine quiet=true />
                <AnswerPlate />
                <Findings />
                <SampleNote />
            </div>
            <Show when=move || there.get()>
                <DishRows />
                <RestsOn />
            </Show>
        </main>
        {slip}
        <LastLine />
    }
}

/// Says of the made-up supper that it is one.
#[component]
fn SampleNote() -> impl IntoView {
    let store = use_store();
    let is_sample = Memo::new(move |_| {
        let sample = store.preferences().with(|preferences| preferences.sample);
        sample.is_some() && sample == store.open_id.get()
    });
    view! {
        <Show when=move || is_sample.get()>
            <section class="plain settle">
                <h2 class="head">{words::SAMPLE_HEAD}</h2>
                <p class="note">{words::SAMPLE_NOTE}</p>
                <button type="button" class="btn" on:click=move |_| {
                    store.new_plan();
                }>{words::START_OWN}</button>
            </section>
        </Show>
    }
}
