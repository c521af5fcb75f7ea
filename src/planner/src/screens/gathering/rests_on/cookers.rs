//! What it is cooked on, how much room it has, and how hot it is run.

use super::fire::FireFields;
use super::pit_steps::PitSteps;
use super::read;
use crate::device::ids::Ids;
use crate::format::Measure;
use crate::parts::{Asked, Choice, Footing, NumberField, SelectField, TextField, Way};
use crate::store::{Edit, new_things, use_store};
use crate::words::{cookers as kinds, footing as words};
use cook_model::handover::identity::CookerId;
use cook_model::plan::{Cooker, CookerKind, in_order};
use cook_model::units::Area;
use leptos::prelude::*;

/// The cookers.
#[component]
pub fn CookersRow() -> impl IntoView {
    let store = use_store();
    let cookers = read(|plan| {
        let cookers = in_order(&plan.cookers, |one| &one.order).into_iter();
        cookers
            .map(|(id, one)| (id, one.clone()))
            .collect::<Vec<_>>()
    });
    let note = move || {
        let formats = store.formats.get();
        cookers.with(|cookers| {
            let cookers: Vec<_> = cookers.iter().flatten().map(|(_, one)| one).collect();
            words::cookers(&cookers, &formats)
        })
    };
    let ids = move || {
        cookers.with(|cookers| {
            cookers
                .iter()
                .flatten()
                .map(|(id, _)| *id)
                .collect::<Vec<_>>()
        })
    };
    let add = move |kind: CookerKind| {
        store.edit(Edit::CookerCame(kinds::kind(kind).to_owned()), |plan| {
            let order = new_things::behind(plan.cookers.values().map(|one| &one.order));
            let cooker = new_things::cooker(kind, new_things::USUAL_PIT, order);
            plan.cookers.insert(Ids.cooker(), cooker);
        });
    };
    view! {
        <Footing
            name=Signal::stored(words::COOKERS.to_owned())
            note=Signal::derive(note)
            amount=Signal::derive(move || cookers.with(|cookers| cookers.as_ref().map_or(0, Vec::len)).to_string())
            asks=store.anything_wrong_in("cookers")
        >
            <For each=ids key=|id| *id let:id>
                <OneCooker id />
            </For>
            <Asked wrong=store.wrong_at("cookers") />
            <Choice
                label=Signal::stored(words::ADD_COOKER.to_owned())
                ways=Signal::stored(kinds::KINDS.map(|kind| Way::new(kind, kinds::kind(kind))).to_vec())
                chosen=Signal::stored(None)
                on_choose=add
            />
        </Footing>
    }
}

/// A cooker.
#[component]
fn OneCooker(
    /// Which.
    id: CookerId,
) -> impl IntoView {
    let store = use_store();
    let cooker = read(move |plan| plan.cookers.get(&id).cloned());
    let cooker = move || cooker.get().flatten();
    let edit = move |change: &dyn Fn(&mut Cooker)| {
        store.edit(Edit::Cooker(id), |plan| {
            if let Some(cooker) = plan.cookers.get_mut(&id) {
                change(cooker);
            }
        });
    };
    let dishes = read(move |plan| {
        let on_it = plan.dishes.values().filter(|dish| dish.cooker == Some(id));
        on_it.map(|dish| dish.name.clone()).collect::<Vec<_>>()
    });
    let used = move || {
        dishes.with(|names| {
            names
                .as_ref()
                .map_or_else(String::new, |names| words::lies_on(names))
        })
    };
    let remove = move |_| {
        let name = cooker().map(|cooker| cooker.name).unwrap_or_default();
        store.edit(Edit::CookerWent(name), |plan| {
            plan.cookers.remove(&id);
            for dish in plan
                .dishes
                .values_mut()
                .filter(|dish| dish.cooker == Some(id))
            {
                dish.cooker = None;
            }
        });
    };
    let all_kinds = vec![(
        words::KINDS.to_owned(),
        kinds::KINDS
            .map(|kind| (kinds::kind(kind).to_owned(), kinds::kind(kind).to_owned()))
            .to_vec(),
    )];
    let choose_kind = move |chosen: String| {
        let kind = kinds::KINDS
            .into_iter()
            .find(|kind| kinds::kind(*kind) == chosen);
        if let Some(kind) = kind {
            edit(&|cooker| {
                // A name that the person has not touched follows the kind.
                if cooker.name == kinds::kind(cooker.kind) {
                    kinds::kind(kind).clone_into(&mut cooker.name);
                }
                cooker.kind = kind;
            });
        }
    };
    view! {
        <div class="thing">
            <TextField
                label=Signal::stored(words::COOKER_NAME.to_owned())
                value=Signal::derive(move || cooker().map(|cooker| cooker.name).unwrap_or_default())
                on_change=move |name: String| edit(&|cooker| cooker.name.clone_from(&name))
            />
            <div class="fields">
                <SelectField
                    label=Signal::stored(words::KIND.to_owned())
                    groups=all_kinds
                    value=Signal::derive(move || {
                        cooker().map_or_else(String::new, |cooker| kinds::kind(cooker.kind).to_owned())
                    })
                    on_change=choose_kind
                />
                <NumberField
                    label=Signal::stored(words::GRATE.to_owned())
                    measure=Signal::stored(Measure::GrateArea)
                    value=Signal::derive(move || Some(cooker()?.grate.square_metres()))
                    on_change=move |square_metres: f64| edit(&|cooker| cooker.grate = Area::from_square_metres(square_metres))
                    problem=store.wrong_at(format!("cookers/{id}/grate"))
                />
            </div>
            <PitSteps cooker=id />
            <FireFields cooker=id />
            <p class="note">{used}</p>
            <button type="button" class="btn" on:click=remove>{words::REMOVE_COOKER}</button>
        </div>
    }
}
