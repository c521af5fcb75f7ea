//! What the day does: each way with its start, its window and its odds.

use super::outcome::{effect, is_nothing};
use super::{Chosen, Swap, number};
use crate::parts::Grain;
use crate::parts::choice::unique_id;
use crate::reckon::Effort;
use crate::screens::gathering::answer_plate::{AxisLabels, TableLine};
use crate::screens::gathering::scale::Scale;
use crate::store::{Store, Tried};
use crate::words::{findings, hindrances, swap as words};
use cook_model::plan::outlook::{Hindrance, Window};
use cook_model::plan::{Start, Trial};
use cook_model::provisions::SwapWay;
use leptos::prelude::*;

/// A way on the slip.
#[derive(Clone, Debug, PartialEq)]
struct Card {
    /// The fact.
    name: String,
    /// Its window in figures.
    window: String,
    /// What it means.
    note: String,
    /// The promise is broken.
    broken: bool,
    /// Its window.
    drawn: Option<Window>,
}

/// All ways.
#[component]
pub fn Ways() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let store = swap.store;
    let planned = Memo::new(move |_| swap.planned().map(|times| times.table_ready));
    let whole = Memo::new(move |_| card(swap, SwapWay::Whole));
    let in_two = Memo::new(move |_| card(swap, SwapWay::CutInTwo));
    let same = Memo::new(move |_| same_start(swap));
    // A start that is no longer another one cannot stay chosen.
    Effect::new(move |_| {
        if same.with(Option::is_none) && swap.chosen.get() == Chosen::Same {
            swap.chosen.set(Chosen::Kept);
        }
    });
    let scale = Memo::new(move |_| {
        let serving = store
            .plan
            .with(|plan| Some(plan.as_ref()?.serving.moment()))?;
        let formats = store.formats.get();
        let windows: Vec<Window> = [whole.get(), same.get(), in_two.get()]
            .into_iter()
            .flatten()
            .filter_map(|card| card.drawn)
            .chain(planned.get())
            .collect();
        (!windows.is_empty()).then(|| Scale::around(windows.iter(), serving, &formats))
    });
    let group = unique_id("swap");
    let choose = |way: Chosen, card: Memo<Option<Card>>| {
        let group = group.clone();
        view! {
            <label class="way mv" hidden=move || card.with(Option::is_none)>
                <input
                    type="radio"
                    name=group
                    prop:checked=move || swap.chosen.get() == way
                    on:change=move |_| swap.chosen.set(way)
                />
                <span class="way-face"><OneCard card scale planned /></span>
            </label>
        }
    };
    view! {
        <fieldset class="moves" aria-busy=move || working(store).to_string()>
            <legend class="head">
                <span>{words::THE_DAY}</span>
                <span class="note">{move || words::standing(standing(store))}</span>
            </legend>
            {choose(Chosen::Kept, whole)}
            {choose(Chosen::Same, same)}
            {choose(Chosen::InTwo, in_two)}
            <AxisLabels scale />
        </fieldset>
        <Findings />
    }
}

/// How much work the least worked out of the ways is worth; none while one belongs to what was asked before.
fn standing(store: Store) -> Option<Effort> {
    store.trials().with(|trials| {
        let fresh = |tried: &Tried| (!tried.stale).then_some(tried.effort);
        let efforts: Option<Vec<Effort>> = trials.values().map(fresh).collect();
        efforts?.into_iter().min()
    })
}

fn working(store: Store) -> bool {
    store
        .trials()
        .with(|trials| trials.is_empty() || trials.values().any(|tried| tried.stale))
}

fn tried(swap: Swap, way: SwapWay) -> Option<Tried> {
    swap.store
        .trials()
        .with(|trials| trials.get(&number(way)).cloned())
}

fn card(swap: Swap, way: SwapWay) -> Option<Card> {
    if swap.plans.with(Result::is_err) {
        return None;
    }
    let formats = swap.store.formats.get();
    let Some(Tried { trial, .. }) = tried(swap, way) else {
        return Some(Card {
            name: words::way_working(way).to_owned(),
            window: String::new(),
            note: String::new(),
            broken: false,
            drawn: None,
        });
    };
    Some(match trial {
        Ok(trial) => {
            let mut card = of_start(
                swap,
                &trial.aimed,
                words::on_at(way, trial.aimed.on, &formats),
            );
            if let Some(also) = trial.also
                && !is_nothing(trial.aimed.on - also.on)
            {
                let moved = words::moved(trial.aimed.on - also.on, &formats);
                card.note = format!("{moved} {}", card.note);
            }
            if way == SwapWay::CutInTwo
                && let Some(room) = room(swap, way)
            {
                card.note = format!("{} {room}", card.note);
            }
            card
        }
        Err(why) => hindered(&why, swap),
    })
}

fn hindered(why: &Hindrance, swap: Swap) -> Card {
    let told = hindrances::hindrance(why, &swap.store.formats.get());
    Card {
        name: told.head,
        window: String::new(),
        note: told.note,
        broken: true,
        drawn: None,
    }
}

fn of_start(swap: Swap, start: &Start, name: String) -> Card {
    let formats = swap.store.formats.get();
    let serving = swap
        .store
        .plan
        .with(|plan| Some(plan.as_ref()?.serving.moment()));
    let time = serving.map(|serving| formats.time(serving));
    Card {
        name,
        window: formats.window(&start.table_ready),
        note: words::odds(start.odds, start.keeps_promise, &time.unwrap_or_default()),
        broken: !start.keeps_promise,
        drawn: Some(start.table_ready),
    }
}

/// The start as it was planned, where the offer moves it.
fn same_start(swap: Swap) -> Option<Card> {
    let Trial { aimed, also, .. } = tried(swap, SwapWay::Whole)?.trial.ok()?;
    let also = also.filter(|also| !is_nothing(aimed.on - also.on))?;
    let formats = swap.store.formats.get();
    Some(of_start(swap, &also, words::same_start(also.on, &formats)))
}

fn room(swap: Swap, way: SwapWay) -> Option<String> {
    let effect = effect(swap, way)?;
    let grate = effect.grate.filter(|grate| grate.square_metres() > 0.0)?;
    Some(words::room(effect.after.room / grate))
}

/// What is on a card.
#[component]
fn OneCard(
    /// Its words; none while the offer is no offer.
    card: Memo<Option<Card>>,
    /// The axis.
    scale: Memo<Option<Scale>>,
    /// The window as planned.
    planned: Memo<Option<Window>>,
) -> impl IntoView {
    let say = move |part: fn(&Card) -> String| {
        move || card.with(|card| card.as_ref().map_or_else(String::new, part))
    };
    let broken = move || card.with(|card| card.as_ref().is_some_and(|card| card.broken));
    let window = Memo::new(move |_| card.with(|card| card.as_ref()?.drawn));
    let deciles = Signal::derive(move || {
        let drawn = scale.get().zip(window.get());
        drawn
            .map(|(scale, window)| scale.deciles(&window))
            .unwrap_or_default()
    });
    let ghost = move |edge: usize| {
        let placed = scale.get().zip(planned.get());
        let at = placed.map_or(0.0, |(scale, window)| {
            scale.at(window.deciles[edge]).clamp(0.0, 1.0)
        });
        at * 100.0
    };
    view! {
        <span class="line">
            <b class="name">{say(|card| card.name.clone())}</b>
            <span class="num">{say(|card| card.window.clone())}</span>
        </span>
        <span class="note" class:heed-word=broken>{say(|card| card.note.clone())}</span>
        <Show when=move || window.with(Option::is_some)>
            <span class="track">
                <span
                    class="ghost"
                    style=("--a", move || format!("{:.3}%", ghost(0)))
                    style=("--w", move || format!("{:.3}%", ghost(8) - ghost(0)))
                ></span>
                <Grain low=true deciles label=Signal::derive(say(|card| card.window.clone())) />
                <TableLine scale />
            </span>
        </Show>
    }
}

/// What is to be said of the chosen way that is not to be said of the plan as it is.
#[component]
fn Findings() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let said = move || {
        let way = swap.chosen.get().way();
        let trial = tried(swap, way)?.trial.ok()?;
        let plan = swap.plans.get().ok()?.of(way).clone();
        let formats = swap.store.formats.get();
        let known = swap.store.forecast().with(|forecast| {
            let outlook = forecast.outlook.as_ref();
            outlook.map(|outlook| outlook.findings.clone())
        });
        let known = known.unwrap_or_default();
        let new = trial.findings.into_iter().filter(|finding| {
            let same = |other: &&cook_model::plan::outlook::Finding| {
                other.dish == finding.dish
                    && std::mem::discriminant(&other.what) == std::mem::discriminant(&finding.what)
            };
            !known.iter().any(|other| same(&other))
        });
        let told = new.map(|finding| {
            let told = findings::finding(&finding, &plan, &formats);
            view! {
                <div class="heed" role="status">
                    <b class="name">{told.head}</b>
                    <p class="note ink">{told.note}</p>
                </div>
            }
        });
        Some(told.collect_view())
    };
    view! { {said} }
}
