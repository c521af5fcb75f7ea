//! Tickets and stubs: one list in order of time, whatever lane a step is in.

use super::board::{Board, Chosen, use_board};
use super::facts::{Face, face};
use super::lane::Hands;
use super::moving::handle_view::Handle;
use super::number::{hours, pixels};
use super::sheet::Placed;
use super::ticket::Standing;
use crate::parts::Mark;
use crate::words::run_sheet as words;
use cook_model::plan::StepKey;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

/// More dishes than this on one ticket are counted.
const MARKS: usize = 1;

/// A ticket with what stands on it.
#[derive(Clone, Debug, PartialEq)]
struct Hung {
    placed: Placed,
    face: Face,
    open: bool,
    at: f64,
    size: f64,
    likely: f64,
    thread: Option<(f64, f64)>,
}

fn hung(board: Board, key: StepKey) -> Option<Hung> {
    board.with_all(|sheet, plan, outlook, formats| {
        let placed = sheet
            .tickets
            .iter()
            .find(|placed| placed.ticket.key == key)?;
        let lane = sheet.frame.hands.get(placed.lane)?;
        let ticket = &placed.ticket;
        let thread = sheet.stretch(ticket.from, ticket.to);
        Some(Hung {
            face: face(ticket, plan, outlook, formats),
            open: lane.open,
            at: lane.strip.at,
            size: lane.strip.size,
            likely: sheet.scope.axis.at(ticket.likely),
            thread: thread
                .filter(|_| lane.open)
                .map(|thread| (thread.from, thread.to)),
            placed: placed.clone(),
        })
    })
}

/// All tickets. Arrow keys go from one to the next, Home and End to the first and the last.
#[component]
pub fn Tickets() -> impl IntoView {
    let board = use_board();
    let keys = move || {
        board.with_sheet(|sheet| {
            let tickets = sheet.tickets.iter();
            tickets.map(|placed| placed.ticket.key).collect::<Vec<_>>()
        })
    };
    let walk = move |event: KeyboardEvent| {
        if let Some(key) = goes_to(board, &event.key()) {
            event.prevent_default();
            board.choose(Chosen::Step(key));
            focus(key);
        }
    };
    view! {
        <ol class="tickets" aria-label=words::WHAT_TO_DO on:keydown=walk>
            <For each=keys key=|key| key.to_string() let:key>
                <Ticket key />
            </For>
        </ol>
    }
}

/// The ticket that a key leads to from the chosen one.
fn goes_to(board: Board, pressed: &str) -> Option<StepKey> {
    let keys: Vec<StepKey> = board.with_sheet(|sheet| {
        let tickets = sheet.tickets.iter();
        tickets.map(|placed| placed.ticket.key).collect()
    });
    let last = keys.len().checked_sub(1)?;
    let here = board.with_sheet(|sheet| {
        let mut tickets = sheet.tickets.iter();
        tickets.position(|placed| board.is_chosen(placed))
    });
    let to = match (pressed, here) {
        ("Home", _) | ("ArrowDown" | "ArrowRight" | "ArrowUp" | "ArrowLeft", None) => 0,
        ("End", _) => last,
        ("ArrowDown" | "ArrowRight", Some(here)) => (here + 1).min(last),
        ("ArrowUp" | "ArrowLeft", Some(here)) => here.saturating_sub(1),
        _ => return None,
    };
    keys.get(to).copied()
}

fn focus(key: StepKey) {
    use wasm_bindgen::JsCast;
    let found = document().get_element_by_id(&key.to_string());
    if let Some(button) = found.and_then(|found| found.dyn_into::<web_sys::HtmlElement>().ok()) {
        // An element that cannot take the focus leaves it where it was.
        button.focus().ok();
    }
}

#[component]
fn Ticket(key: StepKey) -> impl IntoView {
    let board = use_board();
    let hung = Memo::new(move |_| hung(board, key));
    let chosen = Memo::new(move |_| {
        hung.with(|hung| {
            hung.as_ref()
                .is_some_and(|hung| board.is_chosen(&hung.placed))
        })
    });
    let movable = Memo::new(move |_| {
        chosen.get()
            && hung.with(|hung| hung.as_ref().is_some_and(|hung| !hung.placed.ticket.bundle))
    });
    let number = move |read: fn(&Hung) -> String| {
        move || hung.with(|hung| hung.as_ref().map(read).unwrap_or_default())
    };
    let class = move || {
        hung.with(|hung| {
            let Some(hung) = hung else {
                return "ticket".to_owned();
            };
            let kind = if hung.open { "ticket" } else { "stub" };
            let standing = match hung.placed.ticket.standing {
                Standing::Past => " past",
                Standing::Next => " next",
                Standing::Ahead => "",
            };
            let unmanned = match hung.placed.ticket.hands {
                Hands::Nobody => " unmanned",
                _ => "",
            };
            let chosen = if chosen.get() { " chosen" } else { "" };
            let bundle = if hung.placed.ticket.bundle {
                " bundle"
            } else {
                ""
            };
            let pin = match hung.face.pin {
                Some(_) => " pinned",
                None => "",
            };
            let heed = if hung.face.heed { " heeds" } else { "" };
            let moving = board.mover.moving.with(|moving| match moving {
                Some(moving) if moving.key != key => "",
                Some(moving) if moving.held => " in-hand",
                Some(_) => " refused",
                None => "",
            });
            format!("{kind}{standing}{unmanned}{bundle}{pin}{heed}{chosen}{moving}")
        })
    };
    let by = Memo::new(move |_| board.shift(key));
    let thread = move || {
        hung.with(|hung| {
            let (from, to) = hung.as_ref()?.thread?;
            Some(view! { <i class="thread" style=("--t", hours(from)) style=("--e", hours(to))></i> })
        })
    };
    let pushed = move || {
        hung.with(|hung| {
            let hung = hung.as_ref()?;
            (hung.placed.slot > hung.likely).then(|| view! { <i class="leader"></i> })
        })
    };
    let inside = move || {
        hung.with(|hung| {
            let Hung { face, open, .. } = hung.as_ref()?;
            let shown = face.marks.iter().take(MARKS);
            let marks = shown
                .map(|mark| {
                    let (letter, hue) = (mark.letter, mark.hue);
                    view! { <Mark letter=Signal::stored(letter) hue=Signal::stored(hue) small=true /> }
                })
                .collect_view();
            let more = face.marks.len().saturating_sub(MARKS);
            let more = (more > 0).then(|| view! { <span class="more">{format!("+{more}")}</span> });
            let (verb, when) = if *open {
                (face.verb.clone(), Some(face.when.clone()))
            } else {
                (face.stub.clone(), None)
            };
            Some(view! {
                <span class="marks" aria-hidden="true">{marks}{more}</span>
                <span class="do">{verb}</span>
                <span class="hush">{face.said.clone()}</span>
                {when.map(|when| view! { <span class="when" aria-hidden="true">{when}</span> })}
            })
        })
    };
    view! {
        <li
            class="hung"
            style=("--x", number(|hung| pixels(hung.at)))
            style=("--w", number(|hung| pixels(hung.size)))
            style=("--s", number(|hung| hours(hung.placed.slot)))
            style=("--l", number(|hung| hours(hung.likely)))
            style=("--r", number(|hung| hung.placed.row.to_string()))
            style=("--k", number(|hung| hung.placed.thread.to_string()))
        >
            {thread}
            {pushed}
            <button
                type="button"
                id=key.to_string()
                class=class
                aria-pressed=move || chosen.get().to_string()
                tabindex=move || if board.tab_stop.get() == Some(key) { "0" } else { "-1" }
                style=("--d", move || hours(by.get()))
                on:click=move |_| board.choose(Chosen::Step(key))
                on:pointerdown=move |event| board.pointer_down(&event, key, false)
                on:pointermove=move |event| board.pointer_move(&event)
                on:pointerup=move |event| board.pointer_up(&event)
                on:pointercancel=move |event| board.pointer_cancel(&event)
            >
                {inside}
            </button>
            <Show when=move || movable.get()>
                <Handle key />
            </Show>
        </li>
    }
}
