//! What the gathering is called, and when the table is served.

use super::read;
use super::serving_time::{Typed, read_date, together, typed};
use crate::device::zone::{ZoneClock, device_zone_name, meaning};
use crate::parts::{Asked, Footing, TextField, TimeField};
use crate::store::{Edit, use_store};
use crate::words::footing as words;
use chrono::{NaiveDateTime, NaiveTime};
use cook_model::plan::Serving;
use leptos::prelude::*;

/// Name and serving moment.
#[component]
pub fn TableRow() -> impl IntoView {
    let store = use_store();
    let name = read(|plan| plan.name.clone());
    let serving = read(|plan| plan.serving.clone());
    let local = move || serving.get().map(|serving| serving.local);
    // A time that the clock does not have, or has twice, waits here until it is settled.
    let unsettled = RwSignal::new(None::<Typed>);
    Effect::new(move |_| {
        serving.track();
        unsettled.set(None);
    });
    let settle = move |chosen: Serving| {
        unsettled.set(None);
        store.edit(Edit::Serving, |plan| plan.serving = chosen);
    };
    let take = move |local: NaiveDateTime| {
        let Some(now) = serving.get_untracked() else {
            return;
        };
        let clock = ZoneClock::new(&now.zone);
        match typed(
            local,
            &now.zone,
            &meaning(local, |moment| clock.offset_seconds(moment)),
        ) {
            Typed::Clear(serving) => settle(serving),
            open => unsettled.set(Some(open)),
        }
    };
    let amount = move || {
        let serving = serving.get()?;
        Some(store.formats.get().day_time(serving.moment()))
    };
    let date = move || local().map_or_else(String::new, |local| local.date().to_string());
    let change_date = move |event| {
        if let (Some(date), Some(local)) = (read_date(&event_target_value(&event)), local()) {
            take(together(date, local.time()));
        }
    };
    let time = Signal::derive(move || local().map_or(NaiveTime::MIN, |local| local.time()));
    view! {
        <Footing
            name=Signal::stored(words::TABLE.to_owned())
            note=Signal::stored(words::TABLE_NOTE.to_owned())
            amount=Signal::derive(move || amount().unwrap_or_default())
            asks=store.anything_wrong_in("serving")
        >
            <TextField
                label=Signal::stored(words::GATHERING_NAME.to_owned())
                value=Signal::derive(move || name.get().unwrap_or_default())
                on_change=move |name: String| store.edit(Edit::Name, |plan| plan.name = name)
            />
            <div class="fields">
                <div class="field">
                    <label for="serving-date">{words::DATE}</label>
                    <input id="serving-date" type="date" required=true prop:value=date on:change=change_date />
                </div>
                <TimeField
                    label=Signal::stored(words::TIME.to_owned())
                    value=time
                    on_change=move |time: NaiveTime| {
                        if let Some(local) = local() {
                            take(together(local.date(), time));
                        }
                    }
                />
            </div>
            {move || unsettled.get().map(|open| settle_time(open, settle, store.formats.get().clock))}
            <Asked wrong=store.wrong_at("serving") />
            <OtherZone />
        </Footing>
    }
}

/// Asks about a time that the clock does not have, or has twice.
fn settle_time(
    open: Typed,
    settle: impl Fn(Serving) + Copy + 'static,
    clock: crate::format::ClockStyle,
) -> impl IntoView {
    let key = move |serving: Serving, label: String| {
        view! {
            <button type="button" class="btn" on:click=move |_| settle(serving.clone())>{label}</button>
        }
    };
    let (told, keys) = match open {
        Typed::Clear(serving) => (String::new(), vec![(serving, String::new())]),
        Typed::Skipped { local, instead } => {
            let label = words::use_time(&clock.time(instead.local.time()));
            (
                words::skipped(&clock.time(local.time())),
                vec![(instead, label)],
            )
        }
        Typed::Twice([first, second]) => {
            let time = clock.time(first.local.time());
            (
                words::twice(&time),
                vec![
                    (first, words::EARLIER.to_owned()),
                    (second, words::LATER.to_owned()),
                ],
            )
        }
    };
    view! {
        <div class="heed" role="alert">
            <p class="note ink">{told}</p>
            <div class="pair">{keys.into_iter().map(|(serving, label)| key(serving, label)).collect_view()}</div>
        </div>
    }
}

/// A plan that was made in another zone says so, and can be brought over.
#[component]
fn OtherZone() -> impl IntoView {
    let store = use_store();
    let zone = read(|plan| plan.serving.zone.clone());
    let device = StoredValue::new(device_zone_name());
    let other = move || {
        zone.get()
            .filter(|zone| device.with_value(|device| zone != device))
    };
    let bring = move |_| {
        store.edit(Edit::Serving, |plan| {
            let name = device.get_value();
            let clock = ZoneClock::new(&name);
            let moment = plan.serving.moment();
            let offset_seconds = clock.offset_seconds(moment);
            plan.serving = Serving {
                local: cook_model::plan::Zone::fixed(offset_seconds).local(moment),
                zone: name,
                offset_seconds,
            };
        });
    };
    move || {
        other().map(|zone| {
            view! {
                <p class="note">{words::other_zone(&zone)}</p>
                <button type="button" class="btn" on:click=bring>
                    {words::bring_zone(&device.get_value())}
                </button>
            }
        })
    }
}
