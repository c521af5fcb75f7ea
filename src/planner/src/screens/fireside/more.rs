//! Everything else that can be logged.

use super::interruption::Interruption;
use super::keypad::Keypad;
use super::when_who::WhenWho;
use super::yard::{Day, use_yard};
use crate::format::Measure;
use crate::parts::{Choice, Slip, Way};
use crate::words::{fireside as words, journal as said};
use cook_model::handover::KnownEvent;
use cook_model::handover::identity::DishId;
use cook_model::live::Stage;
use cook_model::units::{Temperature, TimeSpan};
use leptos::prelude::*;

/// What has a sheet of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Page {
    Oven,
    PitSet,
    Lid,
    Weather,
    Note,
    Interruption,
}

/// What is logged with one tap, by where the dish is.
fn marks(day: &Day, dish: DishId) -> Vec<(&'static str, Vec<KnownEvent>)> {
    let pieces = day.pieces(dish);
    let each = |event: fn(cook_model::handover::identity::PieceId) -> KnownEvent| {
        pieces.iter().copied().map(event).collect::<Vec<_>>()
    };
    let (stage, _) = day.progress().stage(dish);
    match stage {
        Stage::NotOn => vec![
            (words::TAKEN_OUT, vec![KnownEvent::TakenOut { dish }]),
            (words::PUT_BACK, vec![KnownEvent::PutBack { dish }]),
        ],
        Stage::On => vec![
            (words::PROBE_IN, each(|piece| KnownEvent::ProbeIn { piece })),
            (words::CAME_OFF, vec![KnownEvent::Off { dish }]),
        ],
        Stage::Wrapped => vec![
            (
                words::UNWRAPPED,
                each(|piece| KnownEvent::Unwrapped { piece }),
            ),
            (words::MOVED_BACK, vec![KnownEvent::MovedBack { dish }]),
        ],
        Stage::Resting | Stage::Held => vec![
            (words::MOVED_BACK, vec![KnownEvent::MovedBack { dish }]),
            (words::INTO_BOX, vec![KnownEvent::Boxed { dish }]),
            (words::OUT_OF_BOX, vec![KnownEvent::Unboxed { dish }]),
            (words::SERVED, vec![KnownEvent::Served { dish }]),
        ],
        Stage::Sliced => vec![
            (words::SERVED, vec![KnownEvent::Served { dish }]),
            (words::HEATED_UP, vec![KnownEvent::Reheating { dish }]),
        ],
    }
}

/// The sheet.
#[component]
pub fn MoreSlip(
    /// The dish that is looked at.
    dish: DishId,
) -> impl IntoView {
    let yard = use_yard();
    let page = RwSignal::new(None::<Page>);
    let cooker = yard.read(|day| day.cooker(Some(dish))).flatten();
    let name = yard
        .read(|day| said::dish_name(&day.plan, dish))
        .unwrap_or_default();
    let marks = yard.read(|day| marks(day, dish)).unwrap_or_default();
    let title = move || match page.get() {
        None => words::more_title(&name),
        Some(Page::Oven) => words::OVEN.to_owned(),
        Some(Page::PitSet) => words::PIT_SET.to_owned(),
        Some(Page::Lid) => words::LID.to_owned(),
        Some(Page::Weather) => words::WEATHER.to_owned(),
        Some(Page::Note) => words::NOTE.to_owned(),
        Some(Page::Interruption) => words::INTERRUPTION.to_owned(),
    };
    let unit = move || Measure::Core.unit(yard.formats().units);
    let read = move |number: f64| {
        let units = yard.store().formats.get_untracked().units;
        Temperature::from_celsius(Measure::Core.keep(number, units))
    };
    let list = move || {
        let mark = |(label, events): (&'static str, Vec<KnownEvent>)| {
            view! {
                <button type="button" class="btn" on:click=move |_| yard.log(events.clone())>{label}</button>
            }
        };
        let more = |to: Page, label: &'static str, note: &'static str| {
            view! {
                <button type="button" class="btn" on:click=move |_| page.set(Some(to))>
                    <span>{label} <small>{note}</small></span>
                </button>
            }
        };
        view! {
            <WhenWho />
            <div class="rows">
                {marks.clone().into_iter().map(mark).collect_view()}
                {more(Page::Oven, words::OVEN, words::OVEN_NOTE)}
                {cooker.map(|_| view! {
                    {more(Page::PitSet, words::PIT_SET, words::PIT_SET_NOTE)}
                    {more(Page::Lid, words::LID, words::LID_NOTE)}
                    {more(Page::Interruption, words::INTERRUPTION, words::INTERRUPTION_NOTE)}
                })}
                {more(Page::Weather, words::WEATHER, words::WEATHER_NOTE)}
                {more(Page::Note, words::NOTE, words::NOTE_NOTE)}
            </div>
        }
    };
    let body = move || {
        match (page.get(), cooker) {
        (Some(Page::Oven), _) => view! {
            <WhenWho />
            <p class="note">{words::OVEN_AIR}</p>
            <Keypad
                unit=unit()
                on_number=move |number| yard.log(vec![KnownEvent::MovedToOven { dish, air: read(number) }])
            />
        }
        .into_any(),
        (Some(Page::PitSet), Some(cooker)) => view! {
            <WhenWho />
            <Keypad
                unit=unit()
                on_number=move |number| yard.log(vec![KnownEvent::PitSet { cooker, set: read(number) }])
            />
        }
        .into_any(),
        (Some(Page::Lid), Some(cooker)) => {
            let log = move |minutes: f64| {
                let (from, _) = yard.telling.told();
                let until = from + TimeSpan::from_minutes(minutes);
                let until = (minutes > 0.0).then_some(until);
                yard.log_each(vec![(from, KnownEvent::LidOpen { cooker, until })]);
            };
            view! {
                <WhenWho />
                <p class="note">{words::LID_MINUTES}</p>
                <Keypad unit="min" on_number=log />
            }
            .into_any()
        }
        (Some(Page::Interruption), Some(cooker)) => {
            view! { <Interruption dish cooker /> }.into_any()
        }
        (Some(Page::Weather), _) => view! { <Weather /> }.into_any(),
        (Some(Page::Note), _) => view! { <Note /> }.into_any(),
        (None, _) | (_, None) => view! { {list.clone()} }.into_any(),
    }
    };
    view! { <Slip title=Signal::derive(title) on_close=move |()| yard.shut()>{body}</Slip> }
}

/// A note in words of one's own.
#[component]
fn Note() -> impl IntoView {
    let yard = use_yard();
    let text = RwSignal::new(String::new());
    let log = move |_| {
        let text = text.get_untracked().trim().to_owned();
        if !text.is_empty() {
            yard.log(vec![KnownEvent::Note { text }]);
        }
    };
    view! {
        <div class="field">
            <label for="note">{words::NOTE}</label>
            <textarea
                id="note"
                rows="3"
                maxlength="2000"
                prop:value=move || text.get()
                on:input=move |event| text.set(event_target_value(&event))
            ></textarea>
        </div>
        <WhenWho />
        <button
            type="button"
            class="btn act knuckle"
            disabled=move || text.with(|text| text.trim().is_empty())
            on:click=log
        >
            {words::LOG_IT}
        </button>
    }
}

/// The weather around the cookers.
#[component]
fn Weather() -> impl IntoView {
    let yard = use_yard();
    let rain = RwSignal::new(None::<bool>);
    let ways = vec![Way::new(false, words::DRY), Way::new(true, words::RAIN)];
    let unit = move || Measure::Air.unit(yard.formats().units);
    let log = move |number: f64| {
        let units = yard.store().formats.get_untracked().units;
        let air = Temperature::from_celsius(Measure::Air.keep(number, units));
        yard.log(vec![KnownEvent::Surroundings {
            air: Some(air),
            wind_metres_per_second: None,
            rain: rain.get_untracked(),
        }]);
    };
    view! {
        <Choice
            label=words::SKY
            ways=Signal::stored(ways)
            chosen=rain
            on_choose=move |to| rain.set(Some(to))
            lay="two"
        />
        <WhenWho />
        <p class="note">{words::WEATHER_AIR}</p>
        <Keypad unit=unit() on_number=log />
    }
}
