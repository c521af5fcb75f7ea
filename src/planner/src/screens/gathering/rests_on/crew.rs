//! Who lends a hand, and when they sleep.

use super::read;
use crate::device::ids::Ids;
use crate::parts::{Asked, CheckField, Footing, TextField, TimeField};
use crate::store::{Edit, new_things, use_store};
use crate::words::footing as words;
use cook_model::handover::identity::CrewId;
use cook_model::plan::{CrewMember, QuietHours, in_order};
use leptos::prelude::*;

/// The crew.
#[component]
pub fn CrewRow() -> impl IntoView {
    let store = use_store();
    let crew = read(|plan| {
        let crew = in_order(&plan.crew, |one| &one.order).into_iter();
        crew.map(|(id, one)| (id, one.clone())).collect::<Vec<_>>()
    });
    let note = move || {
        let formats = store.formats.get();
        crew.with(|crew| {
            let crew: Vec<_> = crew.iter().flatten().map(|(_, one)| one).collect();
            words::crew(&crew, &formats)
        })
    };
    let ids =
        move || crew.with(|crew| crew.iter().flatten().map(|(id, _)| *id).collect::<Vec<_>>());
    let add = move |_| {
        store.edit(Edit::CrewJoined(String::new()), |plan| {
            let order = new_things::behind(plan.crew.values().map(|one| &one.order));
            plan.crew
                .insert(Ids.crew(), new_things::crew_member("", order));
        });
    };
    view! {
        <Footing
            name=Signal::stored(words::CREW.to_owned())
            note=Signal::derive(note)
            amount=Signal::derive(move || crew.with(|crew| crew.as_ref().map_or(0, Vec::len)).to_string())
            asks=store.anything_wrong_in("crew")
        >
            <p class="note">{words::CREW_NOTE}</p>
            <For each=ids key=|id| *id let:id>
                <Member id />
            </For>
            <Asked wrong=store.wrong_at("crew") />
            <button type="button" class="btn" on:click=add>{words::ADD_CREW}</button>
        </Footing>
    }
}

/// Somebody of the crew.
#[component]
fn Member(
    /// Who.
    id: CrewId,
) -> impl IntoView {
    let store = use_store();
    let member = read(move |plan| plan.crew.get(&id).cloned());
    let member = move || member.get().flatten();
    let edit = move |change: &dyn Fn(&mut CrewMember)| {
        store.edit(Edit::Crew(id), |plan| {
            if let Some(member) = plan.crew.get_mut(&id) {
                change(member);
            }
        });
    };
    let quiet = Memo::new(move |_| member().and_then(|member| member.quiet));
    let hour = move |part: fn(QuietHours) -> chrono::NaiveTime| {
        Signal::derive(move || part(quiet.get().unwrap_or_else(new_things::usual_quiet)))
    };
    let set_hour = move |change: fn(&mut QuietHours, chrono::NaiveTime),
                         time: chrono::NaiveTime| {
        edit(&|member| {
            if let Some(quiet) = &mut member.quiet {
                change(quiet, time);
            }
        });
    };
    let leave = move |_| {
        let name = member().map(|member| member.name).unwrap_or_default();
        store.edit(Edit::CrewLeft(name), |plan| {
            plan.crew.remove(&id);
        });
    };
    view! {
        <div class="thing">
            <TextField
                label=Signal::stored(words::CREW_NAME.to_owned())
                value=Signal::derive(move || member().map(|member| member.name).unwrap_or_default())
                on_change=move |name: String| edit(&|member| member.name.clone_from(&name))
            />
            <CheckField
                label=Signal::stored(words::HAS_QUIET.to_owned())
                value=Signal::derive(move || quiet.get().is_some())
                on_change=move |wanted: bool| {
                    edit(&|member| member.quiet = wanted.then(new_things::usual_quiet));
                }
            />
            <Show when=move || quiet.get().is_some()>
                <div class="fields">
                    <TimeField
                        label=Signal::stored(words::QUIET_FROM.to_owned())
                        value=hour(|quiet| quiet.from)
                        on_change=move |time| set_hour(|quiet, time| quiet.from = time, time)
                    />
                    <TimeField
                        label=Signal::stored(words::QUIET_TO.to_owned())
                        value=hour(|quiet| quiet.to)
                        on_change=move |time| set_hour(|quiet, time| quiet.to = time, time)
                    />
                </div>
            </Show>
            <Asked wrong=store.wrong_at(format!("crew/{id}/quiet")) />
            <Asked wrong=store.wrong_at(format!("crew/{id}/name")) />
            <button type="button" class="btn" on:click=leave>{words::LEAVE_CREW}</button>
        </div>
    }
}
