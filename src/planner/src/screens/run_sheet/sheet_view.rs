//! The screen around the sheet: what is shown of it, its states, and the sheet itself.

use super::axis_view::{Hours, Over, QuietHours};
use super::board::use_board;
use super::cooker_view::{Bars, Feeds, Gaps};
use super::days_view::{Fold, OtherDays, Side};
use super::dock::Dock;
use super::frame::Direction;
use super::heads::{Heads, Names, Strips};
use super::moving::landing_view::Landing;
use super::number::{hours, pixels};
use super::ticket_view::Tickets;
use super::zoom::Zoom;
use crate::words::run_sheet as words;
use leptos::prelude::*;

/// The sheet with all that belongs to it.
#[component]
pub fn SheetView() -> impl IntoView {
    let board = use_board();
    let empty = Memo::new(move |_| {
        board.with_sheet(|sheet| sheet.stays.is_empty() && sheet.tickets.is_empty())
    });
    view! {
        <Unforeseen />
        <Show
            when=move || !empty.get()
            fallback=|| view! { <p class="note sheet-note">{words::NOTHING_YET}</p> }
        >
            <Tools />
            <Names />
            <Lanes />
            <OtherDays side=Side::Later />
            <Key />
            <Dock />
            <p class="hush" role="status">{move || board.mover.said.get()}</p>
        </Show>
    }
}

/// Dishes without a forecast.
#[component]
fn Unforeseen() -> impl IntoView {
    let board = use_board();
    let names = Memo::new(move |_| {
        board.with_all(|_, plan, outlook, _| {
            let without = outlook.dishes.iter().filter(|seen| seen.forecast.is_err());
            let names = without.filter_map(|seen| Some(plan.dishes.get(&seen.dish)?.name.clone()));
            names.collect::<Vec<_>>()
        })
    });
    let line = move || {
        let names = names.get();
        (!names.is_empty())
            .then(|| view! { <p class="note sheet-note">{words::without_forecast(&names)}</p> })
    };
    view! { {line} }
}

/// How much is shown at once.
#[component]
fn Tools() -> impl IntoView {
    let board = use_board();
    let button = move |zoom: Zoom, word: &'static str| {
        view! {
            <button
                type="button"
                aria-pressed=move || (board.zoom.get() == zoom).to_string()
                on:click=move |_| board.set_zoom(zoom)
            >
                {word}
            </button>
        }
    };
    let shown = Memo::new(move |_| board.with_sheet(super::sheet::Sheet::shown));
    let step = move |to: fn(f64) -> Option<Zoom>, sign: &'static str, word: &'static str| {
        view! {
            <button
                type="button"
                aria-label=word
                disabled=move || to(shown.get()).is_none()
                on:click=move |_| board.set_zoom_from(to)
            >
                {sign}
            </button>
        }
    };
    view! {
        <div class="sheet-tools">
            <div class="switch" role="group" aria-label=words::SHOWN>
                {button(Zoom::Detail, words::DETAIL)}
                {button(Zoom::Whole, words::WHOLE_DAY)}
            </div>
            <div class="switch zoom" role="group" aria-label=words::HOURS_SHOWN>
                {step(Zoom::wider, "−", words::WIDER)}
                <output>{move || words::hours_shown(shown.get())}</output>
                {step(Zoom::closer, "+", words::CLOSER)}
            </div>
            <Fold />
            <OtherDays side=Side::Ahead />
        </div>
    }
}

/// Heads and lanes.
#[component]
fn Lanes() -> impl IntoView {
    let board = use_board();
    let number = move |read: fn(&super::sheet::Sheet) -> String| move || board.with_sheet(read);
    let across = move || board.with_sheet(|sheet| sheet.frame.direction == Direction::Across);
    view! {
        <div
            class="sheet-frame"
            class:across=across
            class:down=move || !across()
            style=("--h", number(|sheet| pixels(sheet.hour)))
            style=("--n", number(|sheet| hours(sheet.length)))
            style=("--edge-w", number(|sheet| pixels(sheet.frame.edge)))
            style=("--breadth", number(|sheet| pixels(sheet.frame.breadth)))
        >
            <Heads />
            <div class="sheet-scroll" tabindex="-1">
                <div class="sheet">
                    <Strips />
                    <QuietHours />
                    <Hours />
                    <Bars />
                    <Feeds />
                    <Gaps />
                    <Over />
                    <Tickets />
                    <Landing />
                </div>
            </div>
        </div>
    }
}

/// What the drawing means, where there is room for it.
#[component]
fn Key() -> impl IntoView {
    let entry = |(sign, word): (&'static str, &'static str)| {
        view! {
            <span>
                <i class=format!("key-{sign}")></i>
                {word}
            </span>
        }
    };
    view! { <div class="sheet-key" aria-hidden="true">{words::KEY.map(entry).collect_view()}</div> }
}
