//! The plans that were taken away: kept until they are erased, and brought back with one tap.

use super::shelf::Glance;
use crate::store::use_store;
use crate::words::plans as words;
use crate::words::screens::plan_name;
use cook_model::handover::identity::PlanId;
use leptos::prelude::*;

/// What was taken away.
#[component]
pub fn Away() -> impl IntoView {
    let store = use_store();
    let plans = Memo::new(move |_| {
        store.library().with(|library| {
            let plans = library.away().into_iter();
            plans.map(Glance::of).collect::<Vec<_>>()
        })
    });
    view! {
        <Show when=move || plans.with(|plans| !plans.is_empty())>
            <section class="band" aria-labelledby="away">
                <h2 class="head" id="away">{words::AWAY}</h2>
                <ul>
                    <For each=move || plans.get() key=|one| (one.id, one.name.clone()) let:one>
                        <OneAway id=one.id name=one.name />
                    </For>
                </ul>
            </section>
        </Show>
    }
}

/// A plan that was taken away.
#[component]
fn OneAway(
    /// Which.
    id: PlanId,
    /// Its name.
    name: String,
) -> impl IntoView {
    let store = use_store();
    let asked = RwSignal::new(false);
    let erase = move |_| {
        if asked.get_untracked() {
            store.erase(id);
        } else {
            asked.set(true);
        }
    };
    let back = words::on(words::BRING_BACK, &name);
    let erase_label = {
        let name = name.clone();
        move || {
            words::on(
                if asked.get() {
                    words::ERASE_REALLY
                } else {
                    words::ERASE
                },
                &name,
            )
        }
    };
    view! {
        <li class="away">
            <span class="name">{plan_name(&name).to_owned()}</span>
            <span class="pair">
                <button type="button" class="btn" aria-label=back on:click=move |_| store.bring_back(id)>
                    {words::BRING_BACK}
                </button>
                <button type="button" class="btn" class:asks=move || asked.get() aria-label=erase_label on:click=erase>
                    {move || if asked.get() { words::ERASE_REALLY } else { words::ERASE }}
                </button>
            </span>
        </li>
    }
}
