//! The lanes of the cookers: dishes as bars, feeding as ticks, and where nobody is up for a fire.

use super::bar::{Bar, Stretch};
use super::board::{Board, Chosen, use_board};
use super::number::{hours, percent, pixels};
use super::stay::{Place, Stay};
use crate::format::Formats;
use crate::parts::{Mark, tiles};
use crate::words::run_sheet as words;
use cook_model::handover::identity::DishId;
use cook_model::plan::Plan;
use leptos::prelude::*;

/// Words in a piece of a bar need so many pixels along the axis; a longer name is cut with dots.
const MARK_AND_WORD: f64 = 72.0;
const WORD: f64 = 64.0;
const SHORT_WORD: f64 = 36.0;

/// A bar with its words.
#[derive(Clone, Debug, PartialEq)]
struct Drawn {
    stay: Stay,
    bar: Bar,
    name: String,
    inside: String,
    said: String,
}

fn drawn(board: Board, dish: DishId) -> Option<Drawn> {
    board.with_all(|sheet, plan, _, formats| {
        let stay = sheet.stays.iter().find(|stay| stay.dish == dish)?;
        let name = plan.dishes.get(&dish)?.name.clone();
        let inside = match stay.stall {
            Some((_, to)) => format!("{name}, slow stretch till about {}", formats.time(to)),
            None => name.clone(),
        };
        Some(Drawn {
            bar: sheet.bar(stay)?,
            said: said(&name, stay, plan, formats),
            stay: stay.clone(),
            name,
            inside,
        })
    })
}

fn said(name: &str, stay: &Stay, plan: &Plan, formats: &Formats) -> String {
    let place = place_name(stay.place, plan);
    words::bar(
        name,
        &place,
        &formats.time(stay.on),
        &formats.time(stay.off),
        &formats.window(&stay.table),
        &formats.time(stay.table.likely()),
    )
}

/// The name of a cooker's lane.
pub(super) fn place_name(place: Place, plan: &Plan) -> String {
    match place {
        Place::Cooker(id) => plan
            .cookers
            .get(&id)
            .map(|cooker| cooker.name.clone())
            .unwrap_or_default(),
        Place::Kitchen => words::KITCHEN.to_owned(),
    }
}

/// All bars, as a list in the order of the dishes.
#[component]
pub fn Bars() -> impl IntoView {
    let board = use_board();
    let dishes = move || {
        board.with_sheet(|sheet| sheet.stays.iter().map(|stay| stay.dish).collect::<Vec<_>>())
    };
    view! {
        <ul class="stays" aria-label=words::WHAT_LIES_WHERE>
            <For each=dishes key=|dish| *dish let:dish>
                <BarItem dish />
            </For>
        </ul>
    }
}

#[component]
fn BarItem(dish: DishId) -> impl IntoView {
    let board = use_board();
    let drawn = Memo::new(move |_| drawn(board, dish));
    let read = move |text: fn(&Drawn) -> String| {
        move || drawn.with(|drawn| drawn.as_ref().map(text).unwrap_or_default())
    };
    let class = move || {
        drawn.with(|drawn| match drawn {
            Some(Drawn { stay, bar, .. }) => format!(
                "stay d{}{}{}",
                stay.hue.clamp(1, 5),
                if bar.thin { " thin" } else { "" },
                if bar.cut { " cut" } else { "" }
            ),
            None => "stay".to_owned(),
        })
    };
    let piece = move |class: &'static str,
                      stretch: fn(&Bar) -> Option<Stretch>,
                      inside: fn(&Drawn) -> String,
                      room: f64| {
        move || {
            let hour = board.with_sheet(|sheet| sheet.hour);
            drawn.with(|drawn| {
                let drawn = drawn.as_ref()?;
                let Stretch { from, to } = stretch(&drawn.bar)?;
                let fits = (to - from) * hour >= room;
                Some(view! {
                    <div class=class style=("--t", hours(from)) style=("--e", hours(to))>
                        {fits.then(|| view! { <span>{inside(drawn)}</span> })}
                    </div>
                })
            })
        }
    };
    let window = move || {
        drawn.with(|drawn| {
            let bar = &drawn.as_ref()?.bar;
            let Stretch { from, to } = bar.table?;
            let block = bar.joints.is_none();
            let joints = bar.joints.map(|joints| {
                tiles(&joints)
                    .map(|tile| {
                        view! {
                            <i
                                class=format!("q{}", tile.depth)
                                style=("--a", percent(tile.at / 100.0))
                                style=("--b", percent(tile.width / 100.0))
                            ></i>
                        }
                    })
                    .collect_view()
            });
            Some(view! {
                <div
                    class="window"
                    class:block=block
                    style=("--t", hours(from))
                    style=("--e", hours(to))
                >
                    {joints}
                    <b style=("--a", percent(bar.notch))></b>
                </div>
            })
        })
    };
    let mark = move || {
        drawn.with(|drawn| {
            let Drawn { stay, bar, .. } = drawn.as_ref()?;
            let begins = bar.cooks.or(bar.rests).or(bar.table).or(bar.held)?.from;
            let (letter, hue) = (stay.letter, stay.hue);
            Some(view! {
                <span class="stay-mark" style=("--t", hours(begins)) style=("--g", pixels(bar.mark_shift))>
                    <Mark letter=Signal::stored(letter) hue=Signal::stored(hue) />
                </span>
            })
        })
    };
    let strip = move |side: fn(&Bar) -> f64| {
        move || drawn.with(|drawn| pixels(drawn.as_ref().map_or(0.0, |drawn| side(&drawn.bar))))
    };
    view! {
        <li
            class=class
            style=("--x", strip(|bar| bar.strip.at))
            style=("--w", strip(|bar| bar.strip.size))
            title=read(|drawn| drawn.name.clone())
        >
            <span class="hush">{read(|drawn| drawn.said.clone())}</span>
            <div class="pieces" aria-hidden="true">
                {piece("cooks", |bar| bar.cooks, |drawn| drawn.inside.clone(), MARK_AND_WORD)}
                {piece("rests", |bar| bar.rests, |_| words::REST.to_owned(), SHORT_WORD)}
                {piece("held", |bar| bar.held, |_| words::HELD_HOT.to_owned(), WORD)}
                {window}
                {mark}
            </div>
        </li>
    }
}

/// Ticks where the fires are fed.
#[component]
pub fn Feeds() -> impl IntoView {
    let board = use_board();
    let ticks = Memo::new(move |_| {
        board.with_sheet(|sheet| {
            let lanes = sheet.cookers.iter().zip(&sheet.frame.cookers);
            let ticks = lanes.flat_map(|(lane, strip)| {
                let axis = sheet.scope.axis;
                let end = strip.at + strip.size;
                lane.feeds.iter().map(move |feed| (axis.at(*feed), end))
            });
            ticks.collect::<Vec<_>>()
        })
    });
    let tick = |(at, end): (f64, f64)| {
        view! { <i class="feed" style=("--t", hours(at)) style=("--x", pixels(end))></i> }
    };
    view! { <div class="feeds" aria-hidden="true">{move || ticks.get().into_iter().map(tick).collect_view()}</div> }
}

/// A stretch without anybody for a fire, as it is drawn.
#[derive(Clone, Debug, PartialEq)]
struct Gap {
    place: Place,
    nth: usize,
    stretch: Stretch,
    at: f64,
    size: f64,
    said: String,
}

/// Blocks where a fire wants hands and nobody is up. A tap tells what can be done.
#[component]
pub fn Gaps() -> impl IntoView {
    let board = use_board();
    let gaps = Memo::new(move |_| {
        board.with_all(|sheet, plan, _, formats| {
            let mut gaps = Vec::new();
            for (index, lane) in sheet.cookers.iter().enumerate() {
                let strip = sheet.unattended_strip(index);
                for (nth, gap) in lane.unattended.iter().enumerate() {
                    let Some(stretch) = sheet.stretch(gap.from, gap.to) else {
                        continue;
                    };
                    let cooker = place_name(lane.place, plan);
                    gaps.push(Gap {
                        place: lane.place,
                        nth,
                        stretch,
                        at: strip.at,
                        size: strip.size,
                        said: words::unattended_said(gap, &cooker, formats),
                    });
                }
            }
            gaps
        })
    });
    let block = move |gap: Gap| {
        let chosen = Chosen::Unattended {
            place: gap.place,
            nth: gap.nth,
        };
        let pressed = move || (board.chosen.get() == Some(chosen)).to_string();
        view! {
            <button
                type="button"
                class="gap"
                class:chosen=move || board.chosen.get() == Some(chosen)
                aria-pressed=pressed
                style=("--t", hours(gap.stretch.from))
                style=("--e", hours(gap.stretch.to))
                style=("--x", pixels(gap.at))
                style=("--w", pixels(gap.size))
                on:click=move |_| board.choose(chosen)
            >
                <span>{words::NOBODY_UP}</span>
                <span class="hush">{gap.said}</span>
            </button>
        }
    };
    view! { {move || gaps.get().into_iter().map(block).collect_view()} }
}
