//! What a careful friend would say: the gravest first, the rest folded.

use super::{Over, OverScreen};
use crate::store::use_store;
use crate::words::{Told, findings as words, gathering};
use cook_model::handover::identity::DishId;
use cook_model::plan::outlook::Gravity;
use leptos::prelude::*;

/// Findings shown before the others are folded away.
const SHOWN: usize = 1;

/// One finding, ready to be shown.
#[derive(Clone, Debug, PartialEq)]
struct Shown {
    gravity: Gravity,
    told: Told,
    dish: Option<(DishId, String)>,
}

/// The findings of the last answer.
#[component]
pub fn Findings() -> impl IntoView {
    let store = use_store();
    let all = Memo::new(move |_| {
        let (Some(plan), Some(outlook)) = (store.plan.get(), store.forecast().get().outlook) else {
            return Vec::new();
        };
        let formats = store.formats.get();
        outlook
            .findings
            .iter()
            .map(|finding| Shown {
                gravity: finding.gravity,
                told: words::finding(finding, &plan, &formats),
                dish: finding
                    .dish
                    .and_then(|id| Some((id, plan.dishes.get(&id)?.name.clone()))),
            })
            .collect::<Vec<_>>()
    });
    // A stop is never folded away.
    let open = move || {
        all.with(|all| {
            let stops = all
                .iter()
                .filter(|one| one.gravity == Gravity::Stop)
                .count();
            stops.max(SHOWN).min(all.len())
        })
    };
    let shown = move || all.with(|all| all[..open()].to_vec());
    let folded = move || all.with(|all| all[open()..].to_vec());
    let key = |one: &Shown| (one.told.head.clone(), one.told.note.clone());
    view! {
        <For each=shown key=key let:one>{section(one)}</For>
        <Show when=move || !folded().is_empty()>
            <details class="more settle">
                <summary class="btn">{move || gathering::more_findings(folded().len())}</summary>
                <For each=folded key=key let:one>{section(one)}</For>
            </details>
        </Show>
    }
}

fn section(shown: Shown) -> impl IntoView {
    let over = expect_context::<OverScreen>().0;
    let class = match shown.gravity {
        Gravity::Stop => "stop settle",
        Gravity::Heed => "heed settle",
        Gravity::Note => "plain settle",
    };
    view! {
        <section class=class>
            <h2 class="head">{shown.told.head}</h2>
            <p class="note ink">{shown.told.note}</p>
            {shown.dish.map(|(dish, name)| view! {
                <button type="button" class="btn" on:click=move |_| over.set(Some(Over::Dish(dish)))>
                    {words::open_dish(&name)}
                </button>
            })}
        </section>
    }
}
