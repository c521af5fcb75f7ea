//! What the forecast rests on: rows that open in place.

pub mod cookers;
pub mod crew;
pub mod fire;
pub mod guests;
pub mod pit_steps;
pub mod place;
pub mod serving;
mod serving_time;
pub mod sure;
pub mod units;

use crate::parts::{TakeIn, hand_on};
use crate::store::use_store;
use crate::words::gathering as words;
use cook_model::plan::Plan;
use cookers::CookersRow;
use crew::CrewRow;
use guests::{AppetiteRow, GuestsRow};
use leptos::prelude::*;
use place::PlaceRow;
use serving::TableRow;
use sure::SureRow;
use units::UnitsRow;

/// Something about the open plan.
pub(super) fn read<T>(part: impl Fn(&Plan) -> T + Send + Sync + 'static) -> Memo<Option<T>>
where
    T: PartialEq + Send + Sync + 'static,
{
    let store = use_store();
    Memo::new(move |_| store.plan.with(|plan| plan.as_ref().map(|plan| part(plan))))
}

/// The rows.
#[component]
pub fn RestsOn() -> impl IntoView {
    let store = use_store();
    let hand = move |_| {
        if let Some(plan) = store.open_id.get_untracked() {
            hand_on(store, plan);
        }
    };
    view! {
        <section class="band c3" aria-labelledby="rests-on">
            <h2 class="head" id="rests-on">
                <span>{words::RESTS_ON}</span>
                <span class="note">{words::TAP_TO_CHANGE}</span>
            </h2>
            <TableRow />
            <GuestsRow />
            <AppetiteRow />
            <CrewRow />
            <PlaceRow />
            <CookersRow />
            <SureRow />
            <UnitsRow />
            <div class="pair hand">
                <button type="button" class="btn" on:click=hand>{words::HAND_ON}</button>
                <TakeIn />
            </div>
        </section>
    }
}
