//! In doubt: a question in plain words, the few facts it needs, and a short answer with its rule. It works with no
//! signal, and from every screen.
//!
//! One form serves all questions: [`fact`] draws a field for each fact by its kind, [`asking`] holds what was told over
//! what plan and journal know, [`answer`] shows what the model says to it.

pub mod answer;
pub mod asking;
pub mod fact;
pub mod form;
pub mod list;
pub mod several;

use crate::route::use_question;
use crate::store::use_store;
use crate::words::in_doubt as words;
use asking::Asking;
use form::Form;
use leptos::prelude::*;
use list::{EveryRule, Questions};

/// The screen.
#[component]
pub fn InDoubt() -> impl IntoView {
    let store = use_store();
    let question = use_question();
    let inside = move || match question.get() {
        Some(kind) => {
            provide_context(Asking::begin(store, kind));
            view! { <Form /> }.into_any()
        }
        None => view! {
            <p class="note ink settle">{words::ABOUT}</p>
            <Questions />
            <EveryRule />
        }
        .into_any(),
    };
    view! { <main class="in-doubt">{inside}</main> }
}
