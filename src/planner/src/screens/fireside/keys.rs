//! The log keys under the thumb, and the two-part line over them.

use super::expected::{last_core, last_pit};
use super::moment::{do_now, step_of};
use super::yard::{Day, Over, use_yard};
use crate::format::{Formats, to_step};
use crate::parts::SafeLine;
use crate::store::use_store;
use crate::words::{fireside as words, journal as said};
use cook_model::handover::identity::{DishId, EntryId};
use cook_model::handover::{Event, KnownEvent};
use cook_model::plan::outlook::StepKind;
use leptos::prelude::*;

/// What stands on the keys under their words.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Under {
    core: String,
    pit: String,
    feel: String,
    fed: String,
    spray: String,
    turn: String,
    moment: String,
}

fn under(day: &Day, dish: DishId, formats: &Formats) -> Under {
    let progress = day.progress();
    let time = |at: Option<_>| at.map_or_else(String::new, |at| formats.time(at));
    let pieces = day.pieces(dish);
    let core = pieces.iter().filter_map(|piece| last_core(day, *piece));
    let read = |reading| {
        let (at, temperature) = reading;
        format!(
            "{} at {}",
            formats.bare_temperature(temperature),
            formats.time(at)
        )
    };
    let cooker = day.cooker(Some(dish));
    let pit = cooker.and_then(|cooker| last_pit(day, cooker));
    let felt = day
        .journal
        .standing()
        .filter_map(|(_, entry)| match entry.event {
            Event::Known(KnownEvent::Felt { piece, feel }) if pieces.contains(&piece) => {
                Some((entry.at, feel))
            }
            _ => None,
        });
    let now = do_now(day, dish);
    let planned = step_of(day, dish, now.kind()).map(|step| {
        let wide = (step.when.to() - step.when.from()).minutes() > 60.0;
        let at = |moment| to_step(moment, if wide { 300 } else { 60 });
        let (from, to) = (at(step.when.from()), at(step.when.to()));
        if from == to {
            formats.time(from)
        } else {
            formats.from_to(from, to)
        }
    });
    Under {
        core: core.max_by_key(|(at, _)| *at).map(read).unwrap_or_default(),
        pit: pit.map(read).unwrap_or_default(),
        feel: felt
            .max_by_key(|(at, _)| *at)
            .map(|(_, feel)| said::feel(feel).to_owned())
            .unwrap_or_default(),
        fed: time(cooker.and_then(|cooker| progress.fed(cooker))),
        spray: time(
            progress.last(|event| matches!(event, KnownEvent::Sprayed { dish: it } if *it == dish)),
        ),
        turn: time(
            progress.last(|event| matches!(event, KnownEvent::Turned { dish: it } if *it == dish)),
        ),
        moment: planned.unwrap_or_default(),
    }
}

/// The keys.
#[component]
pub fn LogKeys() -> impl IntoView {
    let yard = use_yard();
    let captions = Memo::new(move |_| {
        let formats = yard.formats();
        let dish = yard.dish.get()?;
        yard.with(|day| under(day, dish, &formats))
    });
    let caption = move |part: fn(&Under) -> &String| {
        move || captions.with(|under| under.as_ref().map(|under| part(under).clone()))
    };
    let moment = Memo::new(move |_| {
        let dish = yard.dish.get()?;
        yard.with(|day| do_now(day, dish))
    });
    let word = move || words::moment_key(moment.get().map_or(StepKind::On, |now| now.kind()));
    let nothing = move || yard.dish.get().is_none();
    let key = move |word: &'static str, over: Over, part: fn(&Under) -> &String| {
        view! {
            <button type="button" class="key" disabled=nothing on:click=move |_| yard.open(over)>
                <b>{word}</b>
                <span>{caption(part)}</span>
            </button>
        }
    };
    let now = move |_| {
        if let Some(now) = moment.get_untracked() {
            yard.open(Over::Moment(now));
        }
    };
    view! {
        <div class="log">
            <TwoParts />
            <div class="keys" role="group" aria-label=words::LOG>
                {key(words::CORE, Over::Core, |under| &under.core)}
                {key(words::PIT, Over::Pit, |under| &under.pit)}
                {key(words::PROBE, Over::Feel, |under| &under.feel)}
                {key(words::FED, Over::Fed, |under| &under.fed)}
                {key(words::SPRAY, Over::Spray, |under| &under.spray)}
                {key(words::TURN, Over::Turn, |under| &under.turn)}
                <button type="button" class="key moment" disabled=nothing on:click=now>
                    <b>{word}</b>
                    <span>{caption(|under| &under.moment)}</span>
                </button>
                <button type="button" class="key" disabled=nothing on:click=move |_| yard.open(Over::More)>
                    <b>{words::MORE}</b>
                    <span>{words::THE_REST}</span>
                </button>
            </div>
        </div>
    }
}

/// The entries written with the last tap that still stand: the same copy, times and kind.
#[must_use]
pub fn last_tap(day: &Day) -> Vec<EntryId> {
    let mut back = day.journal.standing().collect::<Vec<_>>().into_iter().rev();
    let is_strike = |event: &Event| matches!(event, Event::Known(KnownEvent::Struck { .. }));
    let Some((last, entry)) = back.find(|(_, entry)| !is_strike(&entry.event)) else {
        return Vec::new();
    };
    let kind = |event: &Event| match event {
        Event::Known(event) => Some(std::mem::discriminant(event)),
        Event::Other(_) => None,
    };
    let same = |(_, other): &(EntryId, &cook_model::handover::Entry)| {
        (other.at, other.logged, other.replica) == (entry.at, entry.logged, entry.replica)
            && kind(&other.event) == kind(&entry.event)
    };
    let mut ids = vec![last];
    ids.extend(back.take_while(same).map(|(id, _)| id));
    ids
}

/// Left how the food stands, right the last entry and its undo.
#[component]
fn TwoParts() -> impl IntoView {
    let store = use_store();
    let yard = use_yard();
    let last = Memo::new(move |_| yard.with(last_tap).unwrap_or_default());
    let saving = move || {
        store
            .not_kept_yet
            .with(|waiting| last.with(|last| last.iter().any(|id| waiting.contains(id))))
    };
    let said = move || {
        let formats = yard.formats();
        last.with(|last| {
            let first = last.first()?;
            yard.with(|day| {
                let entry = day.journal.0.get(first)?;
                Some(said::short(entry, &day.plan, &formats))
            })?
        })
    };
    let undo = move |_| {
        let entries = last.get_untracked();
        store.strike(&entries, yard.telling.who.get_untracked());
    };
    view! {
        <div class="two-part">
            <SafeLine short=true />
            {move || match said() {
                Some(_) if saving() => view! {
                    <p class="last" role="status">{said} ", " {words::SAVING}</p>
                }.into_any(),
                Some(_) => view! {
                    <button type="button" class="last" on:click=undo>
                        <span class="nm">{said} ","</span> " " <u>{words::UNDO}</u>
                    </button>
                }.into_any(),
                None => view! { <p class="last">{words::NOTHING_LOGGED}</p> }.into_any(),
            }}
        </div>
    }
}
