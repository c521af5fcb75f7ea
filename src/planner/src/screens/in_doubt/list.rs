//! The questions, and every rule to read.

use crate::parts::Rule;
use crate::route::question_href;
use crate::store::use_store;
use crate::words::{in_doubt as words, safety};
use cook_model::answers::Question;
use cook_model::safety::RuleId;
use leptos::prelude::*;

/// The questions, by when they come up.
#[component]
pub fn Questions() -> impl IntoView {
    let question = |key: &'static str| {
        let (_, title) = Question::KINDS.iter().find(|(kind, _)| *kind == key)?;
        Some(view! {
            <li>
                <a class="ask" href=question_href(key)>{*title}</a>
            </li>
        })
    };
    let groups = words::GROUPS.map(|(heading, keys)| {
        let keys = keys.iter().copied();
        view! {
            <section class="band">
                <h2 class="head">{heading}</h2>
                <ul>{keys.filter_map(question).collect_view()}</ul>
            </section>
        }
    });
    groups.collect_view()
}

/// Every rule by its name; a tap opens it.
#[component]
pub fn EveryRule() -> impl IntoView {
    let store = use_store();
    let rules = move || {
        let formats = store.formats.get();
        let rules = RuleId::ALL.iter();
        rules
            .map(|id| view! { <li><Rule rule=safety::rule(*id, &formats) before=true /></li> })
            .collect_view()
    };
    view! {
        <section class="band every-rule">
            <h2 class="head">{words::EVERY_RULE}</h2>
            <ul>{rules}</ul>
        </section>
    }
}
