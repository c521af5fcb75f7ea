//! The dishes: each with its window on one axis, so that the eye can run down them.

use super::answer_plate::{AxisLabels, TableLine};
use super::scale::Scale;
use super::{Over, OverScreen};
use crate::format::{Formats, odds, rounded};
use crate::parts::{Grain, Mark as DishMark};
use crate::store::use_store;
use crate::words::{dishes, gathering as words, hindrances};
use cook_model::handover::identity::DishId;
use cook_model::plan::outlook::{Outlook, Window};
use cook_model::plan::{Mark, Plan, marks};
use cook_model::provisions::portions;
use leptos::prelude::*;

/// A row, ready to be shown.
#[derive(Clone, Debug, PartialEq)]
struct Row {
    dish: DishId,
    name: String,
    note: String,
    mark: Mark,
    forecast: Option<Result<RowWindow, String>>,
}

/// A row's window.
#[derive(Clone, Debug, PartialEq)]
struct RowWindow {
    window: Window,
    shown: String,
    odds: String,
    label: String,
}

fn rows(plan: &Plan, outlook: Option<&Outlook>, formats: &Formats) -> Vec<Row> {
    marks(plan)
        .into_iter()
        .filter_map(|mark| Some((mark, plan.dishes.get(&mark.dish)?)))
        .map(|(mark, dish)| {
            let id = mark.dish;
            let seen = outlook.and_then(|outlook| outlook.dishes.iter().find(|one| one.dish == id));
            let forecast = seen.map(|seen| match &seen.forecast {
                Ok(times) => {
                    let [from, likely, to] = rounded(&times.table_ready);
                    let shown = formats.from_to(from, to);
                    Ok(RowWindow {
                        window: times.table_ready,
                        label: words::window_label(&shown, &formats.time(likely)),
                        shown,
                        odds: odds(times.odds),
                    })
                }
                Err(why) => Err(hindrances::hindrance(why, formats).head),
            });
            Row {
                dish: id,
                name: words::dish_name(&dish.name).to_owned(),
                note: dishes::at_a_glance(dish, plan, formats),
                mark,
                forecast,
            }
        })
        .collect()
}

/// The dishes on the menu.
#[component]
pub fn DishRows() -> impl IntoView {
    let store = use_store();
    let over = expect_context::<OverScreen>().0;
    let all = Memo::new(move |_| {
        let plan = store.plan.get()?;
        let forecast = store.forecast().get();
        Some(rows(
            &plan,
            forecast.outlook.as_deref(),
            &store.formats.get(),
        ))
    });
    let portions = move || {
        let plan = store.plan.get()?;
        if plan.dishes.is_empty() {
            return None;
        }
        let (portions, formats) = (portions(&plan), store.formats.get());
        Some(words::portions(
            &formats.mass(portions.planned),
            &formats.mass(portions.wanted),
        ))
    };
    let serving = move || {
        store
            .plan
            .with(|plan| Some(plan.as_ref()?.serving.moment()))
    };
    let time = move || serving().map(|serving| store.formats.get().time(serving));
    let scale = Memo::new(move |_| {
        let (serving, formats) = (serving()?, store.formats.get());
        all.with(|rows| {
            let windows = rows.iter().flatten().filter_map(Row::window);
            windows
                .clone()
                .next()
                .map(|_| Scale::around(windows, serving, &formats))
        })
    });
    let ids = move || {
        all.with(|rows| {
            rows.iter()
                .flatten()
                .map(|row| row.dish)
                .collect::<Vec<_>>()
        })
    };
    view! {
        <section class="band c2" aria-labelledby="dishes">
            <h2 class="head" id="dishes">
                <span>{move || words::dishes(all.get().map_or(0, |rows| rows.len()))}</span>
                <span class="note">{portions}</span>
            </h2>
            <ul class="dish-list">
                <For each=ids key=|dish| *dish let:dish>
                    <DishRow dish all scale />
                </For>
                <Show when=move || scale.with(Option::is_some)>
                    <li class="axis-row"><AxisLabels scale /></li>
                </Show>
            </ul>
            <div class="under">
                <button type="button" class="btn" on:click=move |_| over.set(Some(Over::NewDish))>
                    {words::ADD_A_DISH}
                </button>
                <p class="note">{move || time().map(|time| words::odds_note(&time))}</p>
            </div>
        </section>
    }
}

impl Row {
    fn window(&self) -> Option<&Window> {
        Some(&self.forecast.as_ref()?.as_ref().ok()?.window)
    }
}

/// A dish: a tap opens it.
#[component]
fn DishRow(
    /// Which.
    dish: DishId,
    /// All rows.
    all: Memo<Option<Vec<Row>>>,
    /// The axis of all windows.
    scale: Memo<Option<Scale>>,
) -> impl IntoView {
    let store = use_store();
    let over = expect_context::<OverScreen>().0;
    let row = Memo::new(move |_| {
        all.with(|rows| rows.iter().flatten().find(|row| row.dish == dish).cloned())
    });
    let asks = store.anything_wrong_in(format!("dishes/{dish}"));
    let say = move |part: fn(&Row) -> String| {
        move || row.with(|row| row.as_ref().map_or_else(String::new, part))
    };
    let mark = Memo::new(move |_| row.with(|row| Some(row.as_ref()?.mark)));
    let letter = Signal::derive(move || mark.get().map_or(' ', |mark| mark.letter));
    let hue = Signal::derive(move || mark.get().map_or(1, |mark| mark.hue));
    let has_window =
        Memo::new(move |_| row.with(|row| row.as_ref().is_some_and(|row| row.window().is_some())));
    let deciles = Signal::derive(move || {
        let scale = scale.get();
        row.with(|row| Some(scale?.deciles(row.as_ref()?.window()?)))
            .unwrap_or_default()
    });
    let label = Signal::derive(say(|row| match &row.forecast {
        Some(Ok(window)) => window.label.clone(),
        _ => String::new(),
    }));
    let window = move || {
        row.with(|row| match &row.as_ref()?.forecast {
            Some(Ok(window)) => Some(window.clone()),
            _ => None,
        })
    };
    // What cannot be right is asked first; the rest follows from it.
    let why = move || {
        if asks.get() {
            return None;
        }
        row.with(|row| match &row.as_ref()?.forecast {
            Some(Ok(_)) => None,
            Some(Err(why)) => Some(why.clone()),
            None => Some(words::BEING_WORKED_OUT.to_owned()),
        })
    };
    view! {
        <li>
            <button
                type="button"
                class="dish row"
                class:asks=move || asks.get()
                on:click=move |_| over.set(Some(Over::Dish(dish)))
            >
                <DishMark letter hue />
                <span class="dish-body">
                    <span class="line">
                        <span class="name">{say(|row| row.name.clone())}</span>
                        <span class="num amt">{move || window().map(|window| window.shown)}</span>
                    </span>
                    <span class="line">
                        <span class="note">{say(|row| row.note.clone())}</span>
                        <span class="small odds">{move || window().map(|window| window.odds)}</span>
                    </span>
                    <span class="asked" hidden=move || !asks.get()>{words::ASKS}</span>
                    <span class="why" hidden=move || why().is_none()>{why}</span>
                    <Show when=move || has_window.get()>
                        <span class="track">
                            <Grain low=true deciles label />
                            <TableLine scale />
                        </span>
                    </Show>
                </span>
            </button>
        </li>
    }
}
