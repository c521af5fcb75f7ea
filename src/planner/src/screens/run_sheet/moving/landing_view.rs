//! What is drawn around a ticket on its way: its landing place, the outline where it was, and the line that it may not
//! pass.

use super::super::board::use_board;
use super::super::number::{hours, pixels};
use super::session::{Moving, Verdict};
use crate::words::moves as words;
use cook_model::plan::outlook::StepKind;
use cook_model::units::Moment;
use leptos::prelude::*;

/// A line across the lane of a ticket.
#[derive(Clone, Debug, PartialEq)]
struct Limit {
    at: f64,
    word: String,
    late: bool,
}

/// Where the ticket was and where it would land.
#[derive(Clone, Debug, PartialEq)]
struct Place {
    strip: (f64, f64),
    row: usize,
    slot: f64,
    by: f64,
    held: bool,
    from: String,
    lands: String,
    class: &'static str,
}

/// Around the ticket that is in hand or was refused.
#[component]
pub fn Landing() -> impl IntoView {
    let board = use_board();
    let place = Memo::new(move |_| {
        let moving = board.mover.moving.get()?;
        let room = board.room.get()?;
        board.with_all(|sheet, _, _, formats| {
            let mut tickets = sheet.tickets.iter();
            let placed = tickets.find(|placed| placed.ticket.key == moving.key)?;
            let strip = sheet.strip_of(placed);
            Some(Place {
                strip: (strip.at, strip.size),
                row: placed.row,
                slot: placed.slot,
                by: room.slot - placed.slot,
                held: moving.held,
                from: words::from(moving.from, formats),
                lands: match &moving.verdict {
                    Verdict::Refused(_) => words::REFUSED.to_owned(),
                    Verdict::Allowed(_) => words::lands(moving.lands, formats),
                },
                class: match &moving.verdict {
                    Verdict::Refused(_) => "landing stops",
                    Verdict::Allowed(breaks) if breaks.is_empty() => "landing",
                    Verdict::Allowed(_) => "landing heeds",
                },
            })
        })
    });
    let there = move |read: fn(&Place) -> String| {
        move || place.with(|place| place.as_ref().map(read).unwrap_or_default())
    };
    let held = move || place.with(|place| place.as_ref().is_some_and(|place| place.held));
    let limit =
        Memo::new(move |_| {
            let moving = board.mover.moving.get();
            let chosen = board
                .chosen_key()
                .and_then(|key| board.late_on(key))
                .map(|broken| broken.latest);
            board.with_all(|sheet, _, _, formats| {
                let axis = sheet.scope.axis;
                let on_axis = |moment: &Moment| axis.holds(*moment);
                match moving.as_ref() {
                    Some(moving) => limit(moving, formats).filter(|(at, ..)| on_axis(at)).map(
                        |(at, word, late)| Limit {
                            at: axis.at(at),
                            word,
                            late,
                        },
                    ),
                    None => chosen.filter(on_axis).map(|at| Limit {
                        at: axis.at(at),
                        word: words::keeps_it(at, formats),
                        late: true,
                    }),
                }
            })
        });
    let line = move || {
        let limit = limit.get()?;
        let (at, size) = board.with_sheet(|sheet| {
            let key = board.chosen_key()?;
            let placed = sheet
                .tickets
                .iter()
                .find(|placed| placed.ticket.key == key)?;
            let strip = sheet.strip_of(placed);
            Some((strip.at, strip.size))
        })?;
        Some(view! {
            <div
                class="limit"
                class:late=limit.late
                style=("--t", hours(limit.at))
                style=("--x", pixels(at))
                style=("--w", pixels(size))
            >
                <span>{limit.word}</span>
            </div>
        })
    };
    view! {
        <div class="moving" aria-hidden="true">
            <Show when=move || place.with(Option::is_some)>
                <div
                    class="around"
                    style=("--x", there(|place| pixels(place.strip.0)))
                    style=("--w", there(|place| pixels(place.strip.1)))
                    style=("--r", there(|place| place.row.to_string()))
                    style=("--s", there(|place| hours(place.slot)))
                >
                    <div class="origin">{there(|place| place.from.clone())}</div>
                    <Show when=held>
                        <div
                            class=there(|place| place.class.to_owned())
                            style=("--d", there(|place| hours(place.by)))
                        >
                            {there(|place| place.lands.clone())}
                        </div>
                    </Show>
                </div>
            </Show>
            {line}
        </div>
    }
}

/// The line that a ticket on its way may not pass, or passes only by breaking a promise.
fn limit(moving: &Moving, formats: &crate::format::Formats) -> Option<(Moment, String, bool)> {
    match &moving.verdict {
        Verdict::Refused(refused) => {
            let nearest = refused.nearest?;
            let later = nearest < moving.lands;
            let word = words::limit(nearest, later, formats);
            Some((nearest, word, false))
        }
        Verdict::Allowed(breaks) => {
            let broken = breaks.first()?;
            let goes_on = matches!(moving.key.kind, StepKind::On | StepKind::Make);
            let word = words::keeps_it(broken.latest, formats);
            goes_on.then_some((broken.latest, word, true))
        }
    }
}
