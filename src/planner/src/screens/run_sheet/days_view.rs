//! Steps on other days than the sheet's, listed by day, and the line that folds what is past.

use super::board::{Board, Chosen, use_board};
use super::facts::{Facts, facts};
use super::scope::OtherDay;
use crate::parts::Mark;
use crate::words::run_sheet as words;
use cook_model::plan::StepKey;
use cook_model::units::Moment;
use leptos::prelude::*;

/// Which side of the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Days before.
    Ahead,
    /// Days after.
    Later,
}

#[derive(Clone, Debug, PartialEq)]
struct Row {
    key: StepKey,
    index: usize,
    time: String,
    facts: Facts,
}

#[derive(Clone, Debug, PartialEq)]
struct Day {
    name: String,
    rows: Vec<Row>,
}

fn days(board: Board, side: Side) -> Vec<Day> {
    board.with_all(|sheet, plan, outlook, formats| {
        let days: &[OtherDay] = match side {
            Side::Ahead => &sheet.scope.ahead,
            Side::Later => &sheet.scope.later,
        };
        let row = |index: &usize| {
            let step = &outlook.steps[*index];
            Row {
                key: step.key,
                index: *index,
                time: formats.time(step.when.likely()),
                facts: facts(step, plan, outlook, formats),
            }
        };
        let day = |day: &OtherDay| Day {
            name: day.date.format("%a %-d %b").to_string(),
            rows: day.steps.iter().map(row).collect(),
        };
        days.iter().map(day).collect()
    })
}

/// The list of one side; nothing where it is empty.
#[component]
pub fn OtherDays(
    /// Which side.
    side: Side,
) -> impl IntoView {
    let board = use_board();
    let found = Memo::new(move |_| days(board, side));
    let open = RwSignal::new(false);
    let count = move || found.with(|days| days.iter().map(|day| day.rows.len()).sum::<usize>());
    let any = move || count() > 0;
    let names = move || {
        found.with(|days| {
            let names = days.iter().map(|day| day.name.as_str());
            names.collect::<Vec<_>>().join(", ")
        })
    };
    let list = move || {
        let days = found.get().into_iter().map(|day| view! { <DayList day /> });
        open.get()
            .then(|| view! { <div class="other-days">{days.collect_view()}</div> })
    };
    let key = move || if open.get() { words::FOLD } else { words::SHOW };
    view! {
        <Show when=any>
            <button
                type="button"
                class="fold"
                aria-expanded=move || open.get().to_string()
                on:click=move |_| open.update(|open| *open = !*open)
            >
                <span>
                    <b>{move || words::other_days(count(), side == Side::Ahead)}</b>
                    " "
                    <span class="fold-note">{names}</span>
                </span>
                <u>{key}</u>
            </button>
        </Show>
        {list}
    }
}

#[component]
fn DayList(day: Day) -> impl IntoView {
    let board = use_board();
    let row = move |row: Row| {
        let chosen = move || board.chosen_steps.with(|steps| steps.contains(&row.index));
        let mark = row.facts.mark.map(|mark| {
            let (letter, hue) = (mark.letter, mark.hue);
            view! { <Mark letter=Signal::stored(letter) hue=Signal::stored(hue) small=true /> }
        });
        view! {
            <li>
                <button
                    type="button"
                    class="day-step"
                    aria-pressed=move || chosen().to_string()
                    on:click=move |_| board.choose(Chosen::Step(row.key))
                >
                    <span class="day-time">{row.time}</span>
                    <span class="day-mark">{mark}</span>
                    <span>
                        <b>{row.facts.what}</b>
                        " "
                        {row.facts.with}
                    </span>
                    <span class="note">{row.facts.hands}</span>
                </button>
            </li>
        }
    };
    view! {
        <h2 class="head day-name">{day.name}</h2>
        <ol>{day.rows.into_iter().map(row).collect_view()}</ol>
    }
}

/// What is past, folded to one line while the day runs.
#[component]
pub fn Fold() -> impl IntoView {
    let board = use_board();
    let folded = Memo::new(move |_| {
        board.with_all(|sheet, _, outlook, formats| {
            let steps = &sheet.scope.folded;
            let first: Option<Moment> = steps
                .first()
                .map(|index| outlook.steps[*index].when.likely());
            first.map(|first| words::folded(steps.len(), first, formats))
        })
    });
    let shown = move || {
        if board.wide.get() {
            return None;
        }
        match (folded.get(), board.fold.get()) {
            (Some((count, since)), _) => Some((count, since, words::UNFOLD)),
            (None, false) => Some((String::new(), String::new(), words::FOLD)),
            (None, true) => None,
        }
    };
    let line = move || {
        let (count, since, key) = shown()?;
        Some(view! {
            <button
                type="button"
                class="fold past-fold"
                aria-expanded=move || (!board.fold.get()).to_string()
                on:click=move |_| board.fold.update(|fold| *fold = !*fold)
            >
                <span>
                    <b>{count}</b>
                    " "
                    <span class="fold-note">{since}</span>
                </span>
                <u>{key}</u>
            </button>
        })
    };
    view! { {line} }
}
