//! Facts of more than one part: a span in hours and minutes, a spread of three, several readings, a place to keep food,
//! the loads of a cooker.

use super::asking::Asking;
use super::fact::cuts;
use crate::format::Measure;
use crate::parts::{Choice, NumberField, SelectField, Way};
use crate::words::in_doubt as words;
use leptos::prelude::*;
use serde_json::{Value, json};

/// Readings that can be told of one thing.
const MOST_READINGS: usize = 6;
/// Things that can share one cooker.
const MOST_LOADS: usize = 6;

/// A span of time, in seconds.
#[component]
pub fn SpanField(
    /// Its key among the facts.
    key: &'static str,
    /// The question.
    label: Signal<String>,
) -> impl IntoView {
    let asking = expect_context::<Asking>();
    let fact = asking.fact(key);
    let value = Signal::derive(move || fact.get()?.as_f64());
    let tell = move |seconds: Option<f64>| asking.tell(key, seconds.map(Value::from));
    view! { <HoursAndMinutes label value on_change=tell /> }
}

/// Hours and minutes side by side; empty where both are.
#[component]
fn HoursAndMinutes(
    label: Signal<String>,
    value: Signal<Option<f64>>,
    #[prop(into)] on_change: Callback<Option<f64>>,
) -> impl IntoView {
    const HOUR: f64 = 3600.0;
    let hours = move || Some((value.get()? / HOUR + 1e-9).floor() * HOUR);
    let minutes = move || Some(value.get()? - hours()?);
    let tell_hours = move |hours: f64| {
        let minutes = untrack(minutes).unwrap_or(0.0);
        on_change.run(Some((hours + minutes).max(0.0)));
    };
    let tell_minutes = move |minutes: f64| {
        let hours = untrack(hours).unwrap_or(0.0);
        on_change.run(Some((hours + minutes).max(0.0)));
    };
    view! {
        <fieldset class="choice span-field">
            <legend>{move || label.get()}</legend>
            <div class="fields">
                <NumberField
                    label=Signal::stored(words::HOURS.to_owned())
                    measure=Signal::stored(Measure::WholeHours)
                    value=Signal::derive(hours)
                    on_change=tell_hours
                    on_clear=move |()| on_change.run(None)
                />
                <NumberField
                    label=Signal::stored(words::MINUTES.to_owned())
                    measure=Signal::stored(Measure::Minutes)
                    value=Signal::derive(minutes)
                    on_change=tell_minutes
                    on_clear=move |()| tell_minutes(0.0)
                />
            </div>
        </fieldset>
    }
}

/// Least, likely and most of something.
#[component]
pub fn Three(
    /// Its key among the facts.
    key: &'static str,
    /// The question.
    label: Signal<String>,
    /// How it is measured.
    measure: Measure,
) -> impl IntoView {
    let asking = expect_context::<Asking>();
    let fact = asking.fact(key);
    let draft = RwSignal::new([None::<f64>; 3]);
    Effect::new(move |_| {
        if let Some(known) = fact.get().as_ref().and_then(Value::as_array) {
            let mut parts = [None; 3];
            for (part, known) in parts.iter_mut().zip(known) {
                *part = known.as_f64();
            }
            draft.set(parts);
        }
    });
    let tell = move |place: usize, number: Option<f64>| {
        draft.update(|parts| parts[place] = number);
        let parts = draft.get_untracked();
        // A spread that is not whole is not told.
        let whole = parts.iter().all(Option::is_some);
        asking.tell(key, whole.then(|| json!(parts)));
    };
    let part = move |place: usize| {
        view! {
            <NumberField
                label=Signal::stored(words::THREE[place].to_owned())
                measure=Signal::stored(measure)
                value=Signal::derive(move || draft.get()[place])
                on_change=move |number| tell(place, Some(number))
                on_clear=move |()| tell(place, None)
            />
        }
    };
    view! {
        <fieldset class="choice">
            <legend>{move || label.get()}</legend>
            <div class="fields">{[0, 1, 2].map(part).into_iter().collect_view()}</div>
        </fieldset>
    }
}

/// Several readings of one thing: there is always one more field than readings.
#[component]
pub fn Readings(
    /// Its key among the facts.
    key: &'static str,
    /// The question.
    label: Signal<String>,
) -> impl IntoView {
    let asking = expect_context::<Asking>();
    let fact = asking.fact(key);
    let readings = Signal::derive(move || {
        let told = fact.get();
        let told = told
            .as_ref()
            .and_then(Value::as_array)
            .into_iter()
            .flatten();
        told.filter_map(Value::as_f64).collect::<Vec<f64>>()
    });
    let tell = move |place: usize, number: Option<f64>| {
        let mut all = readings.get_untracked();
        match (number, place < all.len()) {
            (Some(number), true) => all[place] = number,
            (Some(number), false) => all.push(number),
            (None, true) => {
                all.remove(place);
            }
            (None, false) => {}
        }
        asking.tell(key, (!all.is_empty()).then(|| json!(all)));
    };
    let fields = move || (0..=readings.with(Vec::len)).take(MOST_READINGS);
    view! {
        <fieldset class="choice">
            <legend>{move || label.get()}</legend>
            <div class="fields">
                <For each=fields key=|place| *place let:place>
                    <NumberField
                        label=Signal::stored(words::reading(place + 1))
                        measure=Signal::stored(Measure::Core)
                        value=Signal::derive(move || readings.with(|all| all.get(place).copied()))
                        on_change=move |number| tell(place, Some(number))
                        on_clear=move |()| tell(place, None)
                    />
                </For>
            </div>
        </fieldset>
    }
}

/// Where food is kept, and the air of a warm oven.
#[component]
pub fn KeepField(
    /// Its key among the facts.
    key: &'static str,
    /// The question.
    label: Signal<String>,
) -> impl IntoView {
    const OVEN: &str = "warm_oven";
    let asking = expect_context::<Asking>();
    let fact = asking.fact(key);
    let place = RwSignal::new(None::<&'static str>);
    let air = RwSignal::new(None::<f64>);
    Effect::new(move |_| {
        let told = fact.get();
        let word = told.as_ref().and_then(|told| told["in"].as_str());
        let known = words::KEEPS.iter().find(|(key, _)| Some(*key) == word);
        if let Some((key, _)) = known {
            place.set(Some(*key));
        }
    });
    // A warm oven without its air is not told yet.
    let tell = move || {
        let told = match (place.get_untracked(), air.get_untracked()) {
            (Some(OVEN), Some(air)) => Some(json!({"in": OVEN, "air": air})),
            (Some(OVEN), None) | (None, _) => None,
            (Some(place), _) => Some(json!({"in": place})),
        };
        asking.tell(key, told);
    };
    let ways: Vec<Way<&'static str>> = words::KEEPS
        .iter()
        .map(|(key, word)| Way::new(*key, *word))
        .collect();
    let choose = move |chosen: &'static str| {
        place.set(Some(chosen));
        tell();
    };
    view! {
        <Choice
            label
            ways=Signal::stored(ways)
            chosen=Signal::derive(move || place.get())
            on_choose=choose
            lay="column"
        />
        <Show when=move || place.get() == Some(OVEN)>
            <NumberField
                label=Signal::stored(words::OVEN_AIR.to_owned())
                measure=Signal::stored(Measure::Pit)
                value=Signal::derive(move || air.get())
                on_change=move |number| { air.set(Some(number)); tell(); }
                on_clear=move |()| { air.set(None); tell(); }
            />
        </Show>
    }
}

/// What shares a cooker: cut and time of each.
#[component]
pub fn Loads(
    /// Its key among the facts.
    key: &'static str,
    /// The question.
    label: Signal<String>,
) -> impl IntoView {
    let asking = expect_context::<Asking>();
    let known = asking.fact(key).get_untracked();
    let first: Vec<(Option<String>, Option<f64>)> = known
        .as_ref()
        .and_then(Value::as_array)
        .into_iter()
        .flatten()
        .map(|load| {
            (
                load["cut"].as_str().map(str::to_owned),
                load["takes"].as_f64(),
            )
        })
        .collect();
    let rows = RwSignal::new(if first.is_empty() {
        vec![(None, None)]
    } else {
        first
    });
    let tell = move || {
        // A row that is not whole yet is left out.
        let whole = rows.with_untracked(|rows| {
            let whole = rows
                .iter()
                .filter_map(|(cut, takes)| Some(json!({"cut": cut.as_ref()?, "takes": (*takes)?})));
            whole.collect::<Vec<Value>>()
        });
        asking.tell(key, (!whole.is_empty()).then(|| Value::from(whole)));
    };
    let row = move |place: usize| {
        let cut = Signal::derive(move || {
            let cut = rows.with(|rows| rows.get(place)?.0.clone());
            cut.unwrap_or_else(|| words::CHOOSE.to_owned())
        });
        let takes = Signal::derive(move || rows.with(|rows| rows.get(place)?.1));
        let tell_takes = move |seconds: Option<f64>| {
            rows.update(|rows| rows[place].1 = seconds);
            tell();
        };
        view! {
            <SelectField
                label=Signal::stored(words::load(place + 1))
                groups=cuts()
                value=cut
                on_change=move |cut: String| {
                    rows.update(|rows| rows[place].0 = Some(cut));
                    tell();
                }
            />
            <HoursAndMinutes
                label=Signal::stored(words::load_takes(place + 1))
                value=takes
                on_change=tell_takes
            />
        }
    };
    let places = move || 0..rows.with(Vec::len);
    let full = move || rows.with(|rows| rows.len() >= MOST_LOADS);
    let lone = move || rows.with(|rows| rows.len() < 2);
    view! {
        <fieldset class="choice">
            <legend>{move || label.get()}</legend>
            <div class="stack">
                <For each=places key=|place| *place let:place>{row(place)}</For>
                <div class="pair">
                    <button
                        type="button"
                        class="btn"
                        disabled=full
                        on:click=move |_| rows.update(|rows| rows.push((None, None)))
                    >
                        {words::ONE_MORE}
                    </button>
                    <button
                        type="button"
                        class="btn"
                        disabled=lone
                        on:click=move |_| {
                            rows.update(|rows| { rows.pop(); });
                            tell();
                        }
                    >
                        {words::ONE_LESS}
                    </button>
                </div>
            </div>
        </fieldset>
    }
}
