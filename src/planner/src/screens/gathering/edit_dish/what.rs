//! What the dish is, and on which cooker it lies.

use super::DishHandle;
use crate::parts::{Choice, SelectField, Way};
use crate::words::{cookers, dish_form as words, dishes};
use cook_model::handover::identity::CookerId;
use cook_model::meat::{CutId, catalogue};
use cook_model::plan::{Food, in_order};
use leptos::prelude::*;

/// Cut and cooker.
#[component]
pub fn What() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let store = handle.store;
    let cut = handle.read(|dish| match &dish.food {
        Food::Cut { cut } => Some(cut.clone()),
        Food::Own { .. } => None,
    });
    let is_cut = move || matches!(cut.get(), Some(Some(_)));
    let groups: Vec<(String, Vec<(String, String)>)> = dishes::KINDS
        .iter()
        .map(|kind| {
            let of_kind = catalogue().iter().filter(|cut| cut.kind == *kind);
            let cuts = of_kind.map(|cut| (cut.id.slug().to_owned(), cut.name.to_owned()));
            (dishes::kind(*kind).to_owned(), cuts.collect())
        })
        .collect();
    let choose_cut = move |slug: String| {
        handle.edit(|dish| {
            // A name that the person has not touched follows the cut.
            let own_name = match &dish.food {
                Food::Cut { cut } => cut
                    .parse::<CutId>()
                    .is_ok_and(|cut| dish.name != dishes::dish_name(cut)),
                Food::Own { .. } => true,
            };
            if let (false, Ok(cut)) = (own_name, slug.parse::<CutId>()) {
                dishes::dish_name(cut).clone_into(&mut dish.name);
            }
            dish.food = Food::Cut { cut: slug };
        });
    };
    let places = Signal::derive(move || {
        store.plan.with(|plan| {
            let cookers = plan.as_ref().map(|plan| &plan.cookers);
            let there = cookers
                .into_iter()
                .flat_map(|all| in_order(all, |cooker| &cooker.order));
            let mut ways: Vec<Way<Option<CookerId>>> = there
                .map(|(id, cooker)| Way::new(Some(id), cookers::name(&cooker.name, cooker.kind)))
                .collect();
            ways.push(Way::new(None, words::NOT_SAID));
            ways
        })
    });
    let cooker = handle.read(|dish| dish.cooker);
    view! {
        <Show when=is_cut>
            <SelectField
                label=Signal::stored(words::CUT.to_owned())
                groups=groups.clone()
                value=Signal::derive(move || cut.get().flatten().unwrap_or_default())
                on_change=choose_cut
                problem=handle.wrong_at("food")
            />
        </Show>
        <Choice
            label=Signal::stored(words::ON_WHICH_COOKER.to_owned())
            ways=places
            chosen=cooker
            on_choose=move |cooker| handle.edit(|dish| dish.cooker = cooker)
        />
    }
}
