//! The safe line: how the food stands, since when, and which moment comes next. A tap opens why.

pub mod slip;

use crate::parts::Mark;
use crate::store::{Store, use_store};
use crate::words::safety as words;
use cook_model::handover::identity::DishId;
use cook_model::plan::Plan;
use cook_model::plan::outlook::Outlook;
use cook_model::safety::watch::SafeState;
use leptos::prelude::*;
use slip::WhySlip;

/// What the line says of the dish that stands worst.
#[derive(Clone, Debug, PartialEq)]
struct Said {
    mark: Option<(char, u8)>,
    name: String,
    head: String,
    note: String,
    ground: &'static str,
    in_play: bool,
}

/// The line. Where nothing is in play it says so, or with `quiet` nothing at all.
#[component]
pub fn SafeLine(
    /// Leaves the room to others while nothing is in play.
    #[prop(optional)]
    quiet: bool,
    /// The fact alone, beside the mark; the rest stands behind the tap.
    #[prop(optional)]
    short: bool,
) -> impl IntoView {
    let store = use_store();
    let open = RwSignal::new(false);
    let said = Memo::new(move |_| said(store, short));
    let line = move || {
        let said = said.get()?;
        if quiet && !said.in_play {
            return None;
        }
        let mark = said.mark.map(|(letter, hue)| {
            view! { <Mark letter=Signal::stored(letter) hue=Signal::stored(hue) small=true /> }
        });
        Some(view! {
            <button
                type="button"
                class=format!("safe-line {}", said.ground)
                aria-haspopup="dialog"
                on:click=move |_| open.set(true)
            >
                {mark}
                <span class="safe-words">
                    {short.then(|| view! { <span class="hush">{said.name} ": "</span> })}
                    <b>{said.head}</b>
                    " "
                    {(!short).then(|| view! { <span class="note ink">{said.note}</span> })}
                </span>
                <u>{words::WHY}</u>
            </button>
        })
    };
    view! {
        <div class="safe-line-place" role="region" aria-label=words::SAFE_LINE>
            {line}
        </div>
        <Show when=move || open.get()>
            <WhySlip on_close=move |()| open.set(false) />
        </Show>
    }
}

fn said(store: Store, short: bool) -> Option<Said> {
    let plan = store.plan.get()?;
    let safe = store.safe.get();
    let formats = store.formats.get();
    let worst = safe.worst().and_then(|worst| Some((worst, worst.state?)));
    let Some((worst, state)) = worst else {
        return Some(Said {
            mark: None,
            name: String::new(),
            head: words::NOT_YET.to_owned(),
            note: words::NOT_YET_NOTE.to_owned(),
            ground: "plain",
            in_play: false,
        });
    };
    Some(Said {
        mark: mark(store, worst.dish),
        name: dish_name(&plan, worst.dish),
        head: if short {
            words::stands_short(state.standing).to_owned()
        } else {
            head(&plan, worst.dish, &state)
        },
        note: words::since_and_next(worst, &formats),
        ground: words::ground(state.standing),
        in_play: true,
    })
}

pub(crate) fn head(plan: &Plan, dish: DishId, state: &SafeState) -> String {
    words::stands(&dish_name(plan, dish), state)
}

/// A dish's name, or what stands for it.
pub(crate) fn dish_name(plan: &Plan, dish: DishId) -> String {
    let name = plan.dishes.get(&dish).map(|dish| dish.name.trim());
    match name {
        None | Some("") => words::A_DISH.to_owned(),
        Some(name) => name.to_owned(),
    }
}

/// The mark of a dish, where the outlook has one.
pub(crate) fn mark(store: Store, dish: DishId) -> Option<(char, u8)> {
    let find = |outlook: &Outlook| {
        let seen = outlook.dishes.iter().find(|seen| seen.dish == dish)?;
        Some((seen.letter, seen.hue))
    };
    store
        .forecast()
        .with(|forecast| forecast.outlook.as_deref().and_then(find))
}
