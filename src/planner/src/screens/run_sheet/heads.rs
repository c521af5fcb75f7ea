//! The names of the lanes, and whose lane is open.

use super::board::{Board, use_board};
use super::cooker_view::place_name;
use super::frame::{Direction, Strip};
use super::lane::Hands;
use super::number::pixels;
use super::sheet::Sheet;
use super::stay::Place;
use crate::words::run_sheet as words;
use cook_model::plan::PitWhen;
use cook_model::plan::Plan;
use leptos::prelude::*;

/// A temperature under a name needs this much.
const NOTE: f64 = 46.0;

/// The name of a lane, with where it stands.
#[derive(Clone, Debug, PartialEq)]
struct Head {
    name: String,
    note: String,
    strip: Strip,
    hands: Option<Hands>,
    open: bool,
}

/// Name of a lane of hands.
fn hands_name(hands: Hands, name: &str) -> String {
    match hands {
        Hands::Member(_) => name.to_owned(),
        Hands::Nobody | Hands::Anybody => words::HANDS.to_owned(),
    }
}

fn heads(board: Board) -> Vec<Head> {
    board.with_all(|sheet, plan, _, formats| {
        let cookers = sheet.cookers.iter().zip(&sheet.frame.cookers);
        let cookers = cookers.map(|(lane, strip)| Head {
            name: place_name(lane.place, plan),
            note: pit(lane.place, plan)
                .filter(|_| fits_a_note(strip.size, sheet))
                .map(|set| formats.temperature(set))
                .unwrap_or_default(),
            strip: *strip,
            hands: None,
            open: true,
        });
        let shared = sheet.frame.shared;
        let mut heads: Vec<Head> = cookers.collect();
        for (lane, room) in sheet.hands.iter().zip(&sheet.frame.hands) {
            let in_shared = shared && !room.open;
            let name = if in_shared {
                words::OTHERS.to_owned()
            } else {
                hands_name(lane.hands, &lane.name)
            };
            if in_shared && heads.iter().any(|head| head.strip == room.strip) {
                continue;
            }
            heads.push(Head {
                name,
                note: String::new(),
                strip: room.strip,
                // A shared strip has no name to tap: the names stand above it.
                hands: (!in_shared).then_some(lane.hands),
                open: room.open,
            });
        }
        heads
    })
}

/// Whether a temperature fits under a name.
fn fits_a_note(size: f64, sheet: &Sheet) -> bool {
    sheet.frame.direction == Direction::Across || size >= NOTE
}

fn pit(place: Place, plan: &Plan) -> Option<cook_model::units::Temperature> {
    let Place::Cooker(id) = place else {
        return None;
    };
    let programme = &plan.cookers.get(&id)?.programme;
    let first = programme.iter().find(|step| step.when == PitWhen::Start);
    Some(first.or(programme.first())?.set)
}

fn several(board: Board) -> bool {
    board.with_sheet(|sheet| sheet.frame.hands.iter().any(|lane| !lane.open))
}

/// The names, at the head of each lane. Where lanes are shut, a tap on a name opens its lane.
#[component]
pub fn Heads() -> impl IntoView {
    let board = use_board();
    let found = Memo::new(move |_| heads(board));
    let any_shut = Memo::new(move |_| several(board));
    let head = move |head: Head| {
        let (at, size) = (pixels(head.strip.at), pixels(head.strip.size));
        let title = head.name.clone();
        let inside = match head.hands.filter(|_| any_shut.get()) {
            Some(hands) => view! {
                <button
                    type="button"
                    aria-pressed=head.open.to_string()
                    on:click=move |_| board.open.set(Some(hands))
                >
                    {head.name}
                </button>
            }
            .into_any(),
            None => view! { <span>{head.name}</span> }.into_any(),
        };
        view! {
            <div class="lane-head" title=title style=("--x", at) style=("--w", size)>
                {inside}
                {(!head.note.is_empty()).then(|| view! { <small>{head.note}</small> })}
            </div>
        }
    };
    view! { <div class="lane-heads">{move || found.get().into_iter().map(head).collect_view()}</div> }
}

/// A button for each pair of hands, where their lanes are too many for a name at each.
#[component]
pub fn Names() -> impl IntoView {
    let board = use_board();
    let names = Memo::new(move |_| {
        board.with_sheet(|sheet| {
            if !sheet.frame.shared {
                return Vec::new();
            }
            let lanes = sheet.hands.iter().zip(&sheet.frame.hands);
            lanes
                .map(|(lane, room)| (lane.hands, hands_name(lane.hands, &lane.name), room.open))
                .collect()
        })
    });
    let button = move |(hands, name, open): (Hands, String, bool)| {
        view! {
            <button
                type="button"
                aria-pressed=open.to_string()
                on:click=move |_| board.open.set(Some(hands))
            >
                {name}
            </button>
        }
    };
    let row = move || {
        let names = names.get();
        (!names.is_empty()).then(|| {
            view! {
                <div class="lane-names" role="group" aria-label=words::WHOSE_LANE>
                    {names.into_iter().map(button).collect_view()}
                </div>
            }
        })
    };
    view! { {row} }
}

/// Strips of the lanes, as hairlines between them.
#[component]
pub fn Strips() -> impl IntoView {
    let board = use_board();
    let strips = Memo::new(move |_| {
        board.with_sheet(|sheet| {
            let hands = sheet.frame.hands.iter().map(|lane| lane.strip);
            let mut strips: Vec<Strip> = sheet.frame.cookers.iter().copied().chain(hands).collect();
            strips.sort_by(|a, b| a.at.total_cmp(&b.at));
            strips.dedup();
            strips
        })
    });
    let strip = |strip: Strip| {
        view! {
            <i class="strip" style=("--x", pixels(strip.at)) style=("--w", pixels(strip.size))></i>
        }
    };
    view! { <div class="strips" aria-hidden="true">{move || strips.get().into_iter().map(strip).collect_view()}</div> }
}
