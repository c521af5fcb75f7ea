//! A number in place: typed, or stepped by its two keys or the arrows. What is typed is kept as typed and asked about
//! beside the field; it is never changed behind the person's back.

use super::choice::unique_id;
use crate::format::{Measure, parse_number};
use crate::store::use_store;
use crate::words::fields;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

/// A number with its unit.
#[component]
pub fn NumberField(
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// How it is measured.
    #[prop(into)]
    measure: Signal<Measure>,
    /// As it stands, in the unit in which the plan keeps it; none where it is not told.
    #[prop(into)]
    value: Signal<Option<f64>>,
    /// What is assumed where it is not told: shown pale, and where the keys begin.
    #[prop(into, default = Signal::stored(None))]
    assumed: Signal<Option<f64>>,
    /// Called with a new value, in the unit in which the plan keeps it.
    #[prop(into)]
    on_change: Callback<f64>,
    /// Called when it was emptied. Without it, it may not be left empty.
    #[prop(optional, into)]
    on_clear: Option<Callback<()>>,
    /// What is wrong with the value, and what to do.
    #[prop(into, default = Signal::stored(None))]
    problem: Signal<Option<String>>,
) -> impl IntoView {
    let store = use_store();
    let units = move || store.formats.with(|formats| formats.units);
    let id = unique_id("number");
    let asks = format!("{id}-asks");
    // Text that is no number stays in the field until it is one, or the plan changes underneath.
    let draft = RwSignal::new(None::<String>);
    Effect::new(move |_| {
        value.track();
        draft.set(None);
    });
    let say = move |kept: Option<f64>| {
        kept.map_or_else(String::new, |kept| measure.get().show(kept, units()))
    };
    let shown = move || draft.get().unwrap_or_else(|| say(value.get()));
    let pale = move || say(assumed.get());
    let changed = move |event| {
        let text = event_target_value(&event);
        match parse_number(&text) {
            Some(number) => {
                draft.set(None);
                // A number that reads as the one that stands is that one: showing it must not round it.
                if text.trim() != say(value.get_untracked()) {
                    on_change.run(measure.get_untracked().keep(number, units()));
                }
            }
            None => match on_clear {
                Some(clear) if text.trim().is_empty() => {
                    draft.set(None);
                    clear.run(());
                }
                _ => draft.set(Some(text)),
            },
        }
    };
    let step = move |up: bool| {
        let from = value
            .get_untracked()
            .or(assumed.get_untracked())
            .unwrap_or(0.0);
        on_change.run(measure.get_untracked().stepped(from, up, units()));
    };
    let arrows = move |event: KeyboardEvent| match event.key().as_str() {
        "ArrowUp" => {
            event.prevent_default();
            step(true);
        }
        "ArrowDown" => {
            event.prevent_default();
            step(false);
        }
        _ => {}
    };
    let asked = move || {
        draft
            .get()
            .map(|text| fields::not_a_number(&text))
            .or_else(|| problem.get())
    };
    let unit = move || measure.get().unit(units());
    let full_label = move || match unit() {
        "" => label.get(),
        unit if label.with(|label| label.ends_with('?')) => format!("{} {unit}", label.get()),
        unit => format!("{}, {unit}", label.get()),
    };
    let less = move || fields::less(&label.get());
    let more = move || fields::more(&label.get());
    let described = {
        let asks = asks.clone();
        move || asked().map(|_| asks.clone())
    };
    view! {
        <div class="field" class:asks=move || asked().is_some()>
            <label for=id.clone()>{full_label}</label>
            <div class="step">
                <button type="button" aria-label=less on:click=move |_| step(false)>"−"</button>
                <input
                    id=id
                    class="num"
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    placeholder=pale
                    aria-invalid=move || asked().map(|_| "true")
                    aria-describedby=described
                    prop:value=shown
                    on:change=changed
                    on:keydown=arrows
                />
                <button type="button" aria-label=more on:click=move |_| step(true)>"+"</button>
            </div>
            <p class="asked" id=asks role="status">{asked}</p>
        </div>
    }
}
