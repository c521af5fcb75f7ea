//! The plans on the shelf: open, rename, copy, hand on, take away.

use crate::parts::{TextField, hand_on};
use crate::route::Route;
use crate::store::{HeldPlan, use_store};
use crate::words::screens::plan_name;
use crate::words::{plans as words, times};
use cook_model::handover::identity::PlanId;
use cook_model::units::Moment;
use leptos::prelude::*;

/// A plan at a glance.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Glance {
    pub(super) id: PlanId,
    pub(super) name: String,
    pub(super) serving: Moment,
    pub(super) dishes: usize,
    pub(super) guests: u32,
}

impl Glance {
    pub(super) fn of(held: &HeldPlan) -> Self {
        let plan = held.plan();
        Self {
            id: held.id(),
            name: plan.name.clone(),
            serving: plan.serving.moment(),
            dishes: plan.dishes.len(),
            guests: plan.guests.count(),
        }
    }
}

/// The shelf.
#[component]
pub fn Shelf() -> impl IntoView {
    let store = use_store();
    let plans = Memo::new(move |_| {
        let now = store.now.get();
        store.library().with(|library| {
            let plans = library.on_the_shelf(now).into_iter();
            plans.map(Glance::of).collect::<Vec<_>>()
        })
    });
    let ids = move || plans.with(|plans| plans.iter().map(|one| one.id).collect::<Vec<_>>());
    view! {
        <section class="band" aria-labelledby="shelf">
            <h2 class="head" id="shelf">{move || words::on_the_shelf(plans.with(Vec::len))}</h2>
            <ul>
                <For each=ids key=|id| *id let:id>
                    <OnShelf id plans />
                </For>
            </ul>
        </section>
    }
}

/// One plan on the shelf.
#[component]
fn OnShelf(
    /// Which.
    id: PlanId,
    /// All of them.
    plans: Memo<Vec<Glance>>,
) -> impl IntoView {
    let store = use_store();
    let glance =
        Memo::new(move |_| plans.with(|plans| plans.iter().find(|one| one.id == id).cloned()));
    let name = Memo::new(move |_| glance.get().map_or_else(String::new, |glance| glance.name));
    let is_open = move || store.open_id.get() == Some(id);
    let when = move || {
        let glance = glance.get()?;
        Some(times::served_when(
            glance.serving,
            store.now.get(),
            &store.formats.get(),
        ))
    };
    let what = move || {
        glance
            .get()
            .map(|glance| words::at_a_glance(glance.dishes, glance.guests))
    };
    let open = move |_| {
        store.open(id);
        Route::Gathering.go();
    };
    let copy = move |_| {
        store.copy_plan(id, words::copy_of);
        Route::Gathering.go();
    };
    let says = move |key: &'static str| move || words::on(key, &name.get());
    view! {
        <li class="shelved" class:open=is_open>
            <button type="button" class="row" on:click=open>
                <span class="dot"></span>
                <span>
                    <span class="name">{move || plan_name(&name.get()).to_owned()}</span>
                    <span class="note">{when}</span>
                    <span class="note">{what}</span>
                </span>
                <span class="note">{move || is_open().then_some(words::OPEN_NOW)}</span>
            </button>
            <details>
                <summary class="btn bare" aria-label=says(words::MORE)>{words::MORE}</summary>
                <div class="stack">
                    <TextField
                        label=Signal::stored(words::NAME.to_owned())
                        value=name
                        on_change=move |name: String| store.rename(id, name)
                    />
                    <div class="pair">
                        <button type="button" class="btn" aria-label=says(words::COPY) on:click=copy>{words::COPY}</button>
                        <button
                            type="button"
                            class="btn"
                            aria-label=says(words::HAND_ON)
                            on:click=move |_| hand_on(store, id)
                        >
                            {words::HAND_ON}
                        </button>
                        <button
                            type="button"
                            class="btn"
                            aria-label=says(words::TAKE_AWAY)
                            on:click=move |_| store.take_away(id)
                        >
                            {words::TAKE_AWAY}
                        </button>
                    </div>
                </div>
            </details>
        </li>
    }
}
