//! What happened: what was done, a core reading, or what of the log is wrong. Every choice writes an entry; nothing is
//! edited away, and every entry can be struck out again.

use super::ways::ways;
use crate::format::Measure;
use crate::parts::safe_line::dish_name;
use crate::parts::{Choice, NumberField, Slip, TimeField, Way};
use crate::screens::fireside::telling::{Telling, When};
use crate::store::{Happening, Store, use_store};
use crate::words::{fireside, journal as told, safety as words};
use cook_model::handover::identity::{DishId, EntryId, PieceId};
use cook_model::handover::{Event, Journal, KnownEvent};
use cook_model::plan::{Dish, Plan, in_order};
use cook_model::units::Temperature;
use leptos::prelude::*;

/// Entries that can be struck out here; the others are in the log at Fireside.
const FEW: usize = 6;

/// The slip.
#[component]
pub fn HappenedSlip(
    /// Of which dish.
    dish: DishId,
    /// Called when it was closed.
    #[prop(into)]
    on_close: Callback<()>,
) -> impl IntoView {
    let store = use_store();
    let telling = Telling::new(store);
    let log = move |event: KnownEvent| {
        let (at, by) = telling.told();
        store.log(vec![Happening { at, by, event }]);
        on_close.run(());
    };
    let title = move || {
        store
            .plan
            .with(|plan| plan.as_ref().map(|plan| dish_name(plan, dish)))
    };
    let raw = store
        .journal
        .with_untracked(|journal| is_raw(journal, dish));
    let done = ways(dish, raw).into_iter().map(|(word, event)| {
        let press = move |_| log(event.clone());
        view! { <button type="button" class="btn" on:click=press>{word}</button> }
    });
    let done = done.collect_view();
    view! {
        <Slip title=Signal::derive(move || title().unwrap_or_default()) on_close>
            <TellWhen telling />
            <section class="stack">
                <h3 class="head">{words::WHAT_I_DID}</h3>
                {done}
            </section>
            {(!raw).then(|| view! { <ReadCore dish on_read=log /> })}
            <WrongEntries dish telling on_struck=on_close />
        </Slip>
    }
}

fn is_raw(journal: &Journal, dish: DishId) -> bool {
    let on =
        |event: &Event| matches!(event, Event::Known(KnownEvent::On { dish: of }) if *of == dish);
    !journal.standing().any(|(_, entry)| on(&entry.event))
}

/// Now, or at a time of the clock.
#[component]
fn TellWhen(telling: Telling) -> impl IntoView {
    let store = use_store();
    let clock = move || {
        let zone = store.zone.get_untracked();
        zone.local(store.now.get_untracked()).time()
    };
    let ways = vec![
        Way::new(false, fireside::NOW),
        Way::new(true, fireside::ANOTHER_TIME),
    ];
    let choose = move |another: bool| {
        let when = if another {
            When::At(clock())
        } else {
            When::Now
        };
        telling.when.set(when);
    };
    let chosen = Signal::derive(move || Some(matches!(telling.when.get(), When::At(_))));
    let field = move || match telling.when.get() {
        When::At(time) => Some(view! {
            <TimeField
                label=fireside::AT
                value=Signal::stored(time)
                on_change=move |time| telling.when.set(When::At(time))
            />
        }),
        When::Now | When::FiveAgo => None,
    };
    view! {
        <Choice label=fireside::WHEN ways=Signal::stored(ways) chosen on_choose=choose lay="two" />
        {field}
    }
}

/// A core reading.
#[component]
fn ReadCore(dish: DishId, #[prop(into)] on_read: Callback<KnownEvent>) -> impl IntoView {
    let store = use_store();
    let pieces: Vec<PieceId> = store.plan.with_untracked(|plan| {
        let of = plan.as_ref().and_then(|plan| plan.dishes.get(&dish));
        let pieces = of.map(|dish| in_order(&dish.pieces, |piece| &piece.order));
        pieces.into_iter().flatten().map(|(id, _)| id).collect()
    });
    let piece = RwSignal::new(pieces.first().copied());
    let reading = RwSignal::new(None::<f64>);
    let several = pieces.len() > 1;
    let ways: Vec<Way<PieceId>> = store.plan.with_untracked(|plan| {
        let plan = plan.as_ref();
        let name = |piece: &PieceId| plan.map(|plan| told::piece_name(plan, *piece));
        pieces
            .iter()
            .map(|piece| Way::new(*piece, name(piece).unwrap_or_default()))
            .collect()
    });
    let log = move |_| {
        if let (Some(piece), Some(reading)) = (piece.get_untracked(), reading.get_untracked()) {
            on_read.run(KnownEvent::Core {
                piece,
                reading: Temperature::from_celsius(reading),
                place: cook_model::handover::ProbePlace::NotSaid,
                doubtful: false,
            });
        }
    };
    view! {
        <section class="stack">
            <h3 class="head">{words::READ_ITS_CORE}</h3>
            {several.then(|| view! {
                <Choice
                    label=fireside::WHICH_PIECE
                    ways=Signal::stored(ways)
                    chosen=piece
                    on_choose=move |id| piece.set(Some(id))
                    lay="two"
                />
            })}
            <NumberField
                label=words::COLDEST_PLACE
                measure=Signal::stored(Measure::Core)
                value=reading
                on_change=move |number| reading.set(Some(number))
                on_clear=move |()| reading.set(None)
            />
            <button
                type="button"
                class="btn"
                disabled=move || reading.with(Option::is_none)
                on:click=log
            >
                {words::LOG_THIS_CORE}
            </button>
        </section>
    }
}

/// The last entries of the dish, each to be struck out.
#[component]
fn WrongEntries(dish: DishId, telling: Telling, on_struck: Callback<()>) -> impl IntoView {
    let store = use_store();
    let entries = entries(store, dish).into_iter().map(|(id, said)| {
        let strike = move |_| {
            store.strike(&[id], telling.who.get_untracked());
            on_struck.run(());
        };
        view! {
            <li class="wrong-entry">
                <span>{said}</span>
                <button type="button" class="btn" on:click=strike>{words::STRIKE_OUT}</button>
            </li>
        }
    });
    view! {
        <section class="stack">
            <h3 class="head">{words::LOG_IS_WRONG}</h3>
            <p class="note">{words::STRIKE_NOTE}</p>
            <ul class="stack">{entries.collect_view()}</ul>
        </section>
    }
}

fn entries(store: Store, dish: DishId) -> Vec<(EntryId, String)> {
    let Some(plan) = store.plan.get_untracked() else {
        return Vec::new();
    };
    let Some(of) = plan.dishes.get(&dish) else {
        return Vec::new();
    };
    let formats = store.formats.get_untracked();
    store.journal.with_untracked(|journal| {
        let mut ours: Vec<_> = journal
            .standing()
            .filter(|(_, entry)| match &entry.event {
                Event::Known(event) => is_about(event, dish, of),
                Event::Other(_) => false,
            })
            .collect();
        ours.sort_by_key(|(id, entry)| std::cmp::Reverse((entry.at, *id)));
        let said = |plan: &Plan, entry| told::entry(entry, plan, &formats);
        let last = ours.into_iter().take(FEW);
        last.map(|(id, entry)| (id, said(&plan, entry))).collect()
    })
}

/// Whether an event tells of a dish, of a piece of it, or of its cooker losing its heat.
fn is_about(event: &KnownEvent, dish: DishId, of: &Dish) -> bool {
    use KnownEvent as E;
    match event {
        E::On { dish: it }
        | E::TakenOut { dish: it }
        | E::PutBack { dish: it }
        | E::MovedToOven { dish: it, .. }
        | E::MovedBack { dish: it }
        | E::Off { dish: it }
        | E::Boxed { dish: it }
        | E::Unboxed { dish: it }
        | E::Served { dish: it }
        | E::Chilled { dish: it, .. }
        | E::Reheating { dish: it }
        | E::Gone { dish: it, .. } => *it == dish,
        E::Core { piece, .. } => of.pieces.contains_key(piece),
        E::Pit { cooker, .. } | E::FireOut { cooker, .. } | E::FireBack { cooker } => {
            of.cooker == Some(*cooker)
        }
        _ => false,
    }
}
