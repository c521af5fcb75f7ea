//! Something of one's own on the list.

use crate::device::ids::Ids;
use crate::parts::{SelectField, TextField};
use crate::store::{Edit, new_things, use_store};
use crate::words::shopping as words;
use cook_model::provisions::shopping::{Aisle, Extra};
use leptos::prelude::*;

/// A name, an aisle, and the key that puts it on the list.
#[component]
pub fn OwnThing() -> impl IntoView {
    let store = use_store();
    let name = RwSignal::new(String::new());
    let aisle = RwSignal::new(Aisle::Greengrocer);
    let aisles = Aisle::ALL
        .map(words::aisle)
        .map(|name| (name.to_owned(), name.to_owned()))
        .to_vec();
    let add = move |_| {
        let said = name.get_untracked();
        if said.is_empty() {
            return;
        }
        store.edit(Edit::ExtraAdded(said.clone()), |plan| {
            let order = new_things::behind(plan.extras.values().map(|one| &one.order));
            let extra = Extra {
                name: said,
                aisle: aisle.get_untracked(),
                order,
                amount: None,
                price: None,
                ticked: false,
            };
            plan.extras.insert(Ids.extra(), extra);
        });
        name.set(String::new());
    };
    let choose = move |chosen: String| {
        let mut all = Aisle::ALL.into_iter();
        if let Some(found) = all.find(|one| words::aisle(*one) == chosen) {
            aisle.set(found);
        }
    };
    view! {
        <section class="band no-print">
            <h2 class="head">{words::OWN_HEAD}</h2>
            <div class="own-form">
                <div class="fields">
                    <TextField
                        label=Signal::stored(words::OWN_NAME.to_owned())
                        value=name
                        on_change=move |said| name.set(said)
                    />
                    <SelectField
                        label=Signal::stored(words::OWN_AISLE.to_owned())
                        groups=vec![(words::OWN_AISLE.to_owned(), aisles)]
                        value=Signal::derive(move || words::aisle(aisle.get()).to_owned())
                        on_change=choose
                    />
                </div>
                <button type="button" class="btn" on:click=add>{words::OWN_ADD}</button>
            </div>
        </section>
    }
}
