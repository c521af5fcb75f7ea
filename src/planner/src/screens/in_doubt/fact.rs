//! One fact of a question: the field that its kind wants.

use super::asking::Asking;
use super::several::{KeepField, Loads, Readings, SpanField, Three};
use crate::format::Measure;
use crate::parts::{CheckField, Choice, NumberField, SelectField, Way};
use crate::store::use_store;
use crate::words::in_doubt as words;
use crate::words::{dishes, footing};
use cook_model::answers::{Prompt, PromptKind};
use cook_model::meat::catalogue;
use cook_model::units::Moment;
use leptos::prelude::*;
use serde_json::{Value, json};

/// How the numbers of a fact are measured. None for what is no number.
#[must_use]
pub fn measure(kind: &PromptKind) -> Option<Measure> {
    Some(match *kind {
        PromptKind::Temperature(low, high) | PromptKind::Temperatures(low, high) => {
            if low <= -40.0 && high <= 60.0 {
                Measure::Air
            } else if high > 200.0 {
                Measure::Pit
            } else {
                Measure::Core
            }
        }
        PromptKind::Span(..) | PromptKind::ThreeSpans(..) => Measure::Hours,
        PromptKind::Mass(_, high) if high <= 1.0 => Measure::SmallMass,
        PromptKind::Mass(..) | PromptKind::ThreeMasses(..) => Measure::Mass,
        PromptKind::Length(_, high) if high > 100.0 => Measure::Altitude,
        PromptKind::Length(..) => Measure::Thickness,
        PromptKind::Wind(..) => Measure::Wind,
        PromptKind::Count(..) => Measure::Count,
        PromptKind::Share(..) => Measure::Percent,
        _ => return None,
    })
}

/// A field for a fact.
#[component]
pub fn Fact(
    /// Which.
    prompt: Prompt,
) -> impl IntoView {
    let store = use_store();
    let asking = expect_context::<Asking>();
    let Prompt {
        key, kind, needed, ..
    } = prompt;
    let label = Signal::derive(move || prompt.say(store.formats.get().units.scales()));
    let fact = asking.fact(key);
    let word = Signal::derive(move || Some(fact.get()?.as_str()?.to_owned()));
    let choose = move |value: String| asking.tell(key, Some(Value::from(value)));
    let choice = move |ways: Vec<Way<String>>, lay: &'static str| {
        view! { <Choice label ways=Signal::stored(ways) chosen=word on_choose=choose lay /> }
            .into_any()
    };
    match kind {
        PromptKind::Cut => {
            let value = Signal::derive(move || word.get().unwrap_or_else(|| words::CHOOSE.to_owned()));
            view! { <SelectField label groups=cuts() value on_change=choose /> }.into_any()
        }
        PromptKind::Intact => choice(
            [("yes", words::YES), ("no", words::NO), ("unknown", words::NOT_KNOWN)]
                .map(|(key, word)| Way::new(key.to_owned(), word))
                .to_vec(),
            "three",
        ),
        PromptKind::Audience => {
            let ways = footing::audience_ways().into_iter().map(|way| {
                let key = json!(way.value).as_str().unwrap_or_default().to_owned();
                Way::new(key, way.label).with_note(way.note)
            });
            choice(ways.collect(), "two")
        }
        PromptKind::Choice(of) => {
            let ways = of.iter().map(|(key, word)| Way::new((*key).to_owned(), *word));
            choice(ways.collect(), "column")
        }
        PromptKind::YesNo if needed => {
            let chosen = Signal::derive(move || fact.get()?.as_bool());
            let ways = vec![Way::new(true, words::YES), Way::new(false, words::NO)];
            view! {
                <Choice
                    label
                    ways=Signal::stored(ways)
                    chosen
                    on_choose=move |yes: bool| asking.tell(key, Some(Value::from(yes)))
                    lay="two"
                />
            }
            .into_any()
        }
        PromptKind::YesNo => view! {
            <CheckField
                label
                value=Signal::derive(move || fact.get().and_then(|fact| fact.as_bool()).unwrap_or(false))
                on_change=move |yes: bool| asking.tell(key, Some(Value::from(yes)))
            />
        }
        .into_any(),
        PromptKind::Span(..) => view! { <SpanField key label /> }.into_any(),
        PromptKind::ThreeSpans(..) | PromptKind::ThreeMasses(..) => {
            let measure = measure(&kind).unwrap_or(Measure::Hours);
            view! { <Three key label measure /> }.into_any()
        }
        PromptKind::Temperatures(..) => view! { <Readings key label /> }.into_any(),
        PromptKind::Keep => view! { <KeepField key label /> }.into_any(),
        PromptKind::Loads => view! { <Loads key label /> }.into_any(),
        PromptKind::Moment => {
            let said = move || {
                let moment = fact.get().and_then(|fact| serde_json::from_value::<Moment>(fact).ok());
                moment.map_or_else(
                    || words::NOT_IN_PLAN.to_owned(),
                    |moment| store.formats.get().day_time(moment),
                )
            };
            view! { <p class="note ink">{move || label.get()} " " <b>{said}</b></p> }.into_any()
        }
        PromptKind::Zone => ().into_any(),
        PromptKind::Temperature(..)
        | PromptKind::Mass(..)
        | PromptKind::Length(..)
        | PromptKind::Wind(..)
        | PromptKind::Count(..)
        | PromptKind::Share(..) => {
            let measured = measure(&kind).unwrap_or(Measure::Count);
            let whole = matches!(kind, PromptKind::Count(..));
            let tell = move |number: f64| {
                // What is counted is kept as a whole number.
                let told = if whole && number.is_finite() && number >= 0.0 {
                    #[expect(
                        clippy::cast_possible_truncation,
                        clippy::cast_sign_loss,
                        reason = "a saturating cast of a count that was rounded"
                    )]
                    let count = number.round() as u64;
                    Value::from(count)
                } else {
                    Value::from(number)
                };
                asking.tell(key, Some(told));
            };
            view! {
                <NumberField
                    label
                    measure=Signal::stored(measured)
                    value=Signal::derive(move || fact.get()?.as_f64())
                    on_change=tell
                    on_clear=move |()| asking.tell(key, None)
                />
            }
            .into_any()
        }
    }
}

/// Every cut of the catalogue, by the animal.
#[must_use]
pub fn cuts() -> Vec<(String, Vec<(String, String)>)> {
    let groups = dishes::KINDS.iter().map(|kind| {
        let of_kind = catalogue().iter().filter(|cut| cut.kind == *kind);
        let cuts = of_kind.map(|cut| (cut.id.slug().to_owned(), cut.name.to_owned()));
        (dishes::kind(*kind).to_owned(), cuts.collect())
    });
    groups.collect()
}
