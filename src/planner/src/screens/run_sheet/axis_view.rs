//! Hours, quiet hours, the present minute and the table line.

use super::axis::Tick;
use super::board::{Board, use_board};
use super::frame::Direction;
use super::number::{hours, pixels};
use crate::format::Formats;
use crate::words::run_sheet as words;
use chrono::Timelike;
use leptos::prelude::*;

/// Height of a label on two lines, CSS pixels.
const TWO_LINES: f64 = 28.0;

/// A label of the axis.
#[derive(Clone, Debug, PartialEq)]
struct Hour {
    at: f64,
    text: String,
    strong: bool,
    note: Option<&'static str>,
}

fn hour(tick: &Tick, formats: &Formats) -> Hour {
    let time = tick.local.time();
    let clock = if time.minute() == 0 {
        formats.clock.hour(time)
    } else {
        formats.clock.time(time)
    };
    let text = if tick.names_day {
        format!("{} {clock}", tick.local.format("%a"))
    } else {
        clock
    };
    Hour {
        at: tick.at,
        text,
        strong: tick.names_day,
        note: tick.clock_moves.map(words::clock_moves),
    }
}

/// The hours: a line across all lanes and a label beside them. For the eye; tickets and bars say their times.
#[component]
pub fn Hours() -> impl IntoView {
    let board = use_board();
    let labels = Memo::new(move |_| {
        board.with_all(|sheet, _, _, formats| {
            // Labels closer than this would touch; midnight is always written.
            let every = match sheet.hour {
                hour if hour < 20.0 => 3,
                hour if hour < 34.0 => 2,
                _ => 1,
            };
            let ticks = sheet.scope.axis.ticks(&formats.zone);
            // A label with a day stands on two lines where time runs down.
            let days: Vec<f64> = ticks
                .iter()
                .filter(|tick| tick.names_day)
                .map(|tick| tick.at)
                .collect();
            let under_a_day = |at: f64| {
                let down = sheet.frame.direction == Direction::Down;
                days.iter()
                    .any(|day| down && at > *day && (at - day) * sheet.hour < TWO_LINES)
            };
            let shown = ticks.iter().filter(|tick| {
                let full = tick.local.hour() % every == 0 && !under_a_day(tick.at);
                tick.names_day || tick.clock_moves.is_some() || full
            });
            shown.map(|tick| hour(tick, formats)).collect::<Vec<_>>()
        })
    });
    // The present minute and the table line have the place of the labels that they would cover.
    let taken = Memo::new(move |_| {
        board.with_all(|sheet, _, outlook, _| {
            let table = sheet.scope.axis.at(outlook.table.serving);
            // The word of the table line begins at the line where time runs across.
            let (before, now_after, table_after) = match sheet.frame.direction {
                Direction::Down => (15.0, 15.0, 15.0),
                Direction::Across => (20.0, 58.0, 66.0),
            };
            let room = |at: f64, after: f64| (at - before / sheet.hour, at + after / sheet.hour);
            let mut taken = vec![room(table, table_after)];
            taken.extend(now_on(board, sheet).map(|now| room(now, now_after)));
            taken
        })
    });
    let line = |label: &Hour| view! { <i class="hour-line" style=("--t", hours(label.at))></i> };
    let word = move |label: Hour| {
        let covered = taken.with(|taken| {
            let mut taken = taken.iter();
            taken.any(|(from, to)| *from < label.at && label.at < *to)
        });
        let text = if label.strong {
            view! { <b>{label.text}</b> }.into_any()
        } else {
            view! { {label.text} }.into_any()
        };
        view! {
            <span class="hour" class:covered=covered style=("--t", hours(label.at))>
                {text}
                {label.note.map(|note| view! { <small>{note}</small> })}
            </span>
        }
    };
    view! {
        <div class="hours" aria-hidden="true">
            {move || labels.with(|labels| labels.iter().map(line).collect_view())}
            {move || labels.get().into_iter().map(word).collect_view()}
        </div>
    }
}

fn now_on(board: Board, sheet: &super::sheet::Sheet) -> Option<f64> {
    let axis = sheet.scope.axis;
    let now = board.now.get();
    axis.holds(now).then(|| axis.at(now))
}

/// The double line at the serving hour, and the line of the present minute.
#[component]
pub fn Over() -> impl IntoView {
    let board = use_board();
    let table = move || {
        board.with_all(|sheet, _, outlook, formats| {
            let serving = outlook.table.serving;
            let time = formats.zone.local(serving).time();
            let clock = if time.minute() == 0 {
                formats.clock.hour(time)
            } else {
                formats.clock.time(time)
            };
            (
                hours(sheet.scope.axis.at(serving)),
                format!("{} {clock}", words::TABLE),
            )
        })
    };
    let now = move || {
        let at = board.with_sheet(|sheet| now_on(board, sheet))?;
        // The axis beside it tells morning from afternoon.
        let text = board.formats.with(|formats| {
            let time = formats.zone.local(board.now.get()).time();
            formats.clock.digits(time)
        });
        Some(view! {
            <div class="now-line" style=("--t", hours(at))>
                <span>{text}</span>
            </div>
        })
    };
    view! {
        <div class="over">
            <div class="table-line" style=("--t", move || table().0)>
                <span>{move || table().1}</span>
            </div>
            {now}
        </div>
    }
}

/// A stretch of quiet hours in somebody's lane.
#[derive(Clone, Debug, PartialEq)]
struct Quiet {
    from: f64,
    to: f64,
    at: f64,
    size: f64,
    word: String,
}

/// The quiet hours of all lanes that have a strip of their own.
#[component]
pub fn QuietHours() -> impl IntoView {
    let board = use_board();
    let stretches = Memo::new(move |_| {
        board.with_all(|sheet, _, _, formats| {
            let mut found = Vec::new();
            for (lane, hands) in sheet.hands.iter().zip(&sheet.frame.hands) {
                if sheet.frame.shared && !hands.open {
                    continue;
                }
                let word = lane.hours.map(|hours| words::quiet(hours, formats));
                for (from, to) in &lane.quiet {
                    let axis = sheet.scope.axis;
                    found.push(Quiet {
                        from: axis.at(*from),
                        to: axis.at(*to),
                        at: hands.strip.at,
                        size: hands.strip.size,
                        word: word.clone().unwrap_or_default(),
                    });
                }
            }
            found
        })
    });
    let block = |quiet: Quiet| {
        view! {
            <div
                class="quiet"
                class:narrow=quiet.size < 90.0
                style=("--t", hours(quiet.from))
                style=("--e", hours(quiet.to))
                style=("--x", pixels(quiet.at))
                style=("--w", pixels(quiet.size))
            >
                <span>{quiet.word}</span>
            </div>
        }
    };
    view! { {move || stretches.get().into_iter().map(block).collect_view()} }
}
