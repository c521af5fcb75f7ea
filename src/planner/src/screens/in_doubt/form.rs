//! The form of a question: the dish, the facts that are needed, those that help, and the answer under them.

use super::answer::TheAnswer;
use super::asking::Asking;
use super::fact::Fact;
use crate::parts::safe_line::dish_name;
use crate::parts::{Choice, Way};
use crate::route::Route;
use crate::store::use_store;
use crate::words::in_doubt as words;
use cook_model::answers::{Prompt, PromptKind, Question};
use cook_model::handover::identity::DishId;
use cook_model::plan::{Food, in_order};
use leptos::prelude::*;

/// The form.
#[component]
pub fn Form() -> impl IntoView {
    let asking = expect_context::<Asking>();
    let title = Question::KINDS
        .iter()
        .find(|(kind, _)| *kind == asking.kind)
        .map_or("", |(_, title)| title);
    let prompts = || {
        asking
            .prompts()
            .iter()
            .filter(|prompt| prompt.kind != PromptKind::Zone)
    };
    let needed: Vec<Prompt> = prompts().filter(|prompt| prompt.needed).copied().collect();
    let helps: Vec<Prompt> = prompts().filter(|prompt| !prompt.needed).copied().collect();
    let of_a_dish = prompts().any(|prompt| prompt.from_plan);
    let filled = move || asking.known.with(|known| !known.is_empty());
    let group = |heading: &'static str, prompts: Vec<Prompt>| {
        (!prompts.is_empty()).then(|| {
            let fields = prompts.into_iter().map(|prompt| view! { <Fact prompt /> });
            view! {
                <section class="facts" aria-label=heading>
                    <h3 class="head">{heading}</h3>
                    {fields.collect_view()}
                </section>
            }
        })
    };
    view! {
        <div class="asking">
            <div class="facts">
                <a class="btn" href=Route::InDoubt.href()>{words::OTHER_QUESTION}</a>
                <h2 class="asks-what">{title}</h2>
                {of_a_dish.then(|| view! { <WhichDish /> })}
                <Show when=filled>
                    <p class="note">{words::FILLED_IN}</p>
                </Show>
            </div>
            {group(words::NEEDED, needed)}
            {group(words::HELPS, helps)}
            <TheAnswer />
        </div>
    }
}

/// About which dish of the plan.
#[component]
fn WhichDish() -> impl IntoView {
    let store = use_store();
    let asking = expect_context::<Asking>();
    let ways = Signal::derive(move || {
        let Some(plan) = store.plan.get() else {
            return Vec::new();
        };
        let dishes = in_order(&plan.dishes, |dish| &dish.order).into_iter();
        let cuts = dishes.filter(|(_, dish)| matches!(dish.food, Food::Cut { .. }));
        let mut ways: Vec<Way<Option<DishId>>> = cuts
            .map(|(id, _)| Way::new(Some(id), dish_name(&plan, id)))
            .collect();
        ways.push(Way::new(None, words::SOMETHING_ELSE));
        ways
    });
    let chosen = Signal::derive(move || Some(asking.dish.get()));
    view! {
        <Choice
            label=Signal::stored(words::WHICH_DISH.to_owned())
            ways
            chosen
            on_choose=move |dish| asking.about(dish)
            lay="two"
        />
    }
}
