//! Why the line says what it says: dish by dish, with the rule behind it, what the plan asks for, and who to ask.

use super::{dish_name, head, mark};
use crate::format::Formats;
use crate::parts::{Mark, Rule, Slip};
use crate::store::use_store;
use crate::words::safety::{self as words, RuleSaid};
use cook_model::plan::Plan;
use cook_model::safety::{DishLine, Phase, who_to_ask};
use leptos::prelude::*;

/// What is said of one dish.
#[derive(Clone, Debug, PartialEq)]
struct DishSaid {
    mark: Option<(char, u8)>,
    head: String,
    ground: &'static str,
    note: String,
    why: Option<RuleSaid>,
    concerns: Vec<(String, RuleSaid)>,
}

/// The slip.
#[component]
pub fn WhySlip(
    /// Called when it was closed.
    #[prop(into)]
    on_close: Callback<()>,
) -> impl IntoView {
    let store = use_store();
    let dishes = Memo::new(move |_| {
        let plan = store.plan.get()?;
        let formats = store.formats.get();
        let safe = store.safe.get();
        let dishes = safe.dishes.iter();
        let said = dishes.map(|line| said(line, &plan, &formats, mark(store, line.dish)));
        Some(said.collect::<Vec<_>>())
    });
    let ask = Memo::new(move |_| {
        let audience = store.plan.get()?.audience;
        let formats = store.formats.get();
        let rules = who_to_ask(audience).iter();
        Some(
            rules
                .map(|id| words::rule(*id, &formats))
                .collect::<Vec<_>>(),
        )
    });
    let dishes = move || {
        let dishes = dishes.get().unwrap_or_default().into_iter();
        dishes.map(|said| view! { <OneDish said /> }).collect_view()
    };
    let ask = move || {
        let rules = ask.get().unwrap_or_default().into_iter();
        rules.map(|rule| view! { <Rule rule /> }).collect_view()
    };
    view! {
        <Slip title=words::SAFE_LINE on_close>
            <p class="note ink">{words::RESTS_ON}</p>
            {dishes}
            <section class="stack">
                <h3 class="head">{words::WHO_TO_ASK}</h3>
                {ask}
            </section>
        </Slip>
    }
}

fn said(line: &DishLine, plan: &Plan, formats: &Formats, mark: Option<(char, u8)>) -> DishSaid {
    let state = line.state.filter(|_| line.phase != Phase::Over);
    let (head, ground) = match state {
        Some(state) => (head(plan, line.dish, &state), words::ground(state.standing)),
        None => {
            let name = dish_name(plan, line.dish);
            (format!("{name}: {}", words::phase(line.phase)), "plain")
        }
    };
    let concerns = line.concerns().iter().map(|concern| {
        let said = words::concern(concern, formats);
        (said, words::rule(concern.rule, formats))
    });
    DishSaid {
        mark,
        head,
        ground,
        note: state
            .map(|_| words::since_and_next(line, formats))
            .unwrap_or_default(),
        why: state.map(|state| words::rule(state.why, formats)),
        concerns: concerns.collect(),
    }
}

#[component]
fn OneDish(said: DishSaid) -> impl IntoView {
    let mark = said.mark.map(|(letter, hue)| {
        view! { <Mark letter=Signal::stored(letter) hue=Signal::stored(hue) small=true /> }
    });
    let note = (!said.note.is_empty()).then_some(said.note);
    let planned = !said.concerns.is_empty();
    let concerns = said.concerns.into_iter().map(|(head, rule)| {
        view! {
            <li>
                <p class="name">{head}</p>
                <Rule rule />
            </li>
        }
    });
    let concerns = concerns.collect_view();
    let planned = planned.then(|| {
        view! {
            <p class="note">{words::OF_THE_PLAN}</p>
            <ul class="stack">{concerns}</ul>
        }
    });
    view! {
        <section class=format!("why-dish stack {}", said.ground)>
            <h3 class="head">{mark} " " {said.head}</h3>
            {note.map(|note| view! { <p class="note ink">{note}</p> })}
            {said.why.map(|rule| view! { <Rule rule /> })}
            {planned}
        </section>
    }
}
