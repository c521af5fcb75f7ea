//! A stop: the largest words on the screen, what to do, and ways to say what happened. It goes only when what was told
//! makes it go; it never keeps anybody from logging.

mod ways;

pub mod happened;

use crate::parts::Rule;
use crate::parts::safe_line::dish_name;
use crate::store::{Store, use_store};
use crate::words::safety::RuleSaid;
use crate::words::{count_at_start, safety as words};
use cook_model::handover::identity::DishId;
use cook_model::safety::watch::Standing;
use happened::HappenedSlip;
use leptos::prelude::*;

/// What a stop says.
#[derive(Clone, Debug, PartialEq)]
struct Said {
    dish: DishId,
    head: String,
    since: String,
    rule: RuleSaid,
    next: String,
    lost: bool,
    others: usize,
}

/// The stop of the dish that stands worst, where one stops.
#[component]
pub fn SafeStop() -> impl IntoView {
    let store = use_store();
    let said = Memo::new(move |_| said(store));
    let open = RwSignal::new(None::<DishId>);
    let stopped = Memo::new(move |_| said.with(|said| said.as_ref().map(|said| said.dish)));
    Effect::new(move |_| {
        if stopped.get().is_some() {
            // It begins at the top, wherever the screen was scrolled to.
            window().scroll_to_with_x_and_y(0.0, 0.0);
        }
    });
    let block = move || {
        said.get().map(|said| {
            let dish = said.dish;
            let say = move |_| open.set(Some(dish));
            let others = (said.others > 0).then(|| {
                let dishes = count_at_start(said.others, "more dish stops", "more dishes stop");
                view! { <p class="name">{format!("{dishes}.")}</p> }
            });
            let act = if said.lost { words::GONE } else { words::WHAT_I_DID };
            view! {
                <section class="stop halt" role="alert" aria-labelledby="halt">
                    <h2 class="head" id="halt">{said.head}</h2>
                    <p>{said.since}</p>
                    <Rule rule=said.rule />
                    {(!said.next.is_empty()).then(|| view! { <p class="name">{said.next}</p> })}
                    <div class="pair">
                        <button type="button" class="btn" on:click=say>{words::LOG_IS_WRONG}</button>
                        <button type="button" class="btn act" on:click=say>{act}</button>
                    </div>
                    {others}
                    <p class="note ink">{words::STAYS}</p>
                </section>
            }
        })
    };
    let slip = move || {
        open.get()
            .map(|dish| view! { <HappenedSlip dish on_close=move |()| open.set(None) /> })
    };
    view! {
        {block}
        {slip}
    }
}

fn said(store: Store) -> Option<Said> {
    let plan = store.plan.get()?;
    let safe = store.safe.get();
    let stops = safe.stops();
    let first = stops.first()?;
    let state = first.state?;
    let formats = store.formats.get();
    let name = dish_name(&plan, first.dish);
    Some(Said {
        dish: first.dish,
        head: words::stop_head(&name, &state),
        since: state.since.map_or_else(String::new, |since| {
            words::stop_since(since, store.now.get(), &formats)
        }),
        rule: words::rule(state.why, &formats),
        next: state.next.map_or_else(String::new, |next| {
            words::stop_by(next.at, next.rule, &formats)
        }),
        lost: state.standing == Standing::Discard,
        others: stops.len() - 1,
    })
}
