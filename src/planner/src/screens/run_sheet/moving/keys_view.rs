//! The keys of the Dock: everything that dragging does, in one tap.

use super::super::board::{Board, use_board};
use super::judge::is_pinned;
use super::session::{Moving, Verdict, late_words};
use crate::parts::Slip;
use crate::store::Edit;
use crate::words::{held, moves as words};
use cook_model::plan::StepKey;
use cook_model::schedule::{Pin, To};
use cook_model::units::Moment;
use leptos::prelude::*;

/// Steps of the grid that a key of the Dock moves.
const KEY: i64 = 2;

/// Earlier, Later, Pin, Place after.
#[component]
pub fn MoveKeys(
    /// The step that the chosen ticket is known by.
    key: StepKey,
) -> impl IntoView {
    let board = use_board();
    let places = RwSignal::new(false);
    let pinned = Memo::new(move |_| {
        let steps = board.steps_of(key).unwrap_or_default();
        board.with_all(|_, plan, _, _| is_pinned(plan, &steps))
    });
    let pin = move || {
        if pinned.get() {
            words::UNPIN
        } else {
            words::PIN
        }
    };
    let time = move || {
        board.with_all(|_, _, outlook, formats| {
            let place = outlook.lattice.place(key);
            let begins = place.map(|place| outlook.lattice.tasks[place].begins);
            begins.map(|at| {
                formats.time(if pinned.get() {
                    at
                } else {
                    super::hand::snapped(at)
                })
            })
        })
    };
    view! {
        <div class="keys" role="group" aria-label=words::KEYS>
            <button type="button" class="btn" on:click=move |_| board.nudge(key, -KEY)>
                {words::EARLIER}
                <small>{words::KEY_STEP}</small>
            </button>
            <button type="button" class="btn" on:click=move |_| board.nudge(key, KEY)>
                {words::LATER}
                <small>{words::KEY_STEP}</small>
            </button>
            <button
                type="button"
                class="btn"
                aria-pressed=move || pinned.get().to_string()
                on:click=move |_| board.pin_or_unpin(key)
            >
                {pin}
                <small>{time}</small>
            </button>
            <button type="button" class="btn" on:click=move |_| places.set(true)>
                {words::PLACE_AFTER}
            </button>
        </div>
        <Show when=move || places.get()>
            <Slip title=Signal::stored(words::PLACE_AFTER.to_owned()) on_close=move |()| places.set(false)>
                <Places key open=places />
            </Slip>
        </Show>
    }
}

/// Steps behind which one can be put.
#[component]
fn Places(key: StepKey, open: RwSignal<bool>) -> impl IntoView {
    let board = use_board();
    let rows = board.with_all(|_, plan, outlook, formats| {
        let tasks = outlook.lattice.tasks.iter();
        let mut tasks: Vec<_> = tasks.filter(|task| task.key != key).collect();
        tasks.sort_by_key(|task| task.ends());
        tasks
            .into_iter()
            .map(|task| {
                (
                    task.key,
                    words::after_row(task.key, task.ends(), plan, formats),
                )
            })
            .collect::<Vec<_>>()
    });
    let row = move |(other, name): (StepKey, String)| {
        view! {
            <li>
                <button
                    type="button"
                    class="place-row"
                    on:click=move |_| {
                        open.set(false);
                        board.make(key, To::After(other), Edit::StepMoved(key));
                    }
                >
                    {name}
                </button>
            </li>
        }
    };
    view! { <ol class="place-rows">{rows.into_iter().map(row).collect_view()}</ol> }
}

/// What a ticket in hand, a refused move, a broken promise or a colliding pin says in the Dock.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    class: &'static str,
    head: String,
    notes: Vec<String>,
    back: Option<String>,
    put: Option<(Moment, String)>,
    unpins: bool,
}

impl Notice {
    /// The class of the Dock that shows it.
    #[must_use]
    pub const fn class(&self) -> &'static str {
        self.class
    }
}

/// What there is to say about moves now.
#[must_use]
pub fn notice(board: Board, key: StepKey) -> Option<Notice> {
    let moving = board.mover.moving.get();
    match moving.filter(|moving| moving.key == key) {
        Some(moving) => board.with_all(|_, plan, outlook, formats| {
            let told = held::Told {
                plan,
                lattice: &outlook.lattice,
                formats,
            };
            Some(on_its_way(&moving, told, outlook))
        }),
        None => standing(board, key),
    }
}

fn on_its_way(
    moving: &Moving,
    told: held::Told<'_>,
    outlook: &cook_model::plan::outlook::Outlook,
) -> Notice {
    let held::Told { plan, formats, .. } = told;
    match &moving.verdict {
        Verdict::Refused(refused) => Notice {
            class: "stops",
            head: words::refused(moving.key, moving.lands, plan, formats),
            notes: held::chain(&refused.chain, told),
            back: (!moving.held).then(|| words::back_to(moving.from, formats)),
            put: refused
                .nearest
                .filter(|nearest| !moving.held && *nearest != moving.from)
                .map(|nearest| (nearest, words::put_it(nearest, formats))),
            unpins: false,
        },
        Verdict::Allowed(breaks) => {
            let late = breaks.first().map(|broken| {
                // What is in hand is where it would land; the lattice still has it where it was.
                let mut lattice = told.lattice.clone();
                let spans = lattice
                    .dishes
                    .iter()
                    .find(|spans| spans.dish == broken.dish);
                if let Some(on) = spans.map(|spans| spans.on)
                    && lattice.tasks[on].key == moving.key
                {
                    lattice.tasks[on].begins = moving.lands;
                }
                late_words(broken, &lattice, plan, outlook, formats)
            });
            Notice {
                class: if late.is_some() { "heeds" } else { "" },
                head: late.unwrap_or_else(|| {
                    format!(
                        "{} {}",
                        words::in_hand(moving.key, plan),
                        words::lands(moving.lands, formats)
                    )
                }),
                notes: match breaks.first() {
                    Some(broken) => vec![words::late_note(broken.latest, formats)],
                    None => vec![words::LET_GO.to_owned()],
                },
                back: None,
                put: None,
                unpins: false,
            }
        }
    }
}

/// A pin that collides, or a dish that goes on too late for its promise.
fn standing(board: Board, key: StepKey) -> Option<Notice> {
    let late = board.late_on(key);
    board.with_all(|_, plan, outlook, formats| {
        let step = outlook.steps.iter().find(|step| step.key == key)?;
        let begins = step.when.likely();
        if let Pin::Collides { pinned, with } = &step.pin {
            let told = held::Told {
                plan,
                lattice: &outlook.lattice,
                formats,
            };
            return Some(Notice {
                class: "heeds",
                head: words::pin_collides(*pinned, begins, formats),
                notes: held::chain(std::slice::from_ref(with), told),
                back: None,
                put: Some((begins, words::put_it(begins, formats))),
                unpins: true,
            });
        }
        let broken = late?;
        let name = plan.dishes.get(&broken.dish)?.name.as_str();
        let serving = outlook.table.serving;
        Some(Notice {
            class: "heeds",
            head: words::late(name, begins, broken.odds, serving, formats),
            notes: vec![words::late_note(broken.latest, formats)],
            back: None,
            put: Some((broken.latest, words::put_it(broken.latest, formats))),
            unpins: false,
        })
    })
}

/// The notice.
#[component]
pub fn NoticeView(
    /// Of which step.
    key: StepKey,
    /// What it says.
    notice: Notice,
) -> impl IntoView {
    let board = use_board();
    let put = notice.put.map(|(at, word)| {
        view! {
            <button type="button" class="btn act" on:click=move |_| board.put_at(key, at)>
                {word}
            </button>
        }
    });
    let back = notice.back.map(|word| {
        view! {
            <button type="button" class="btn" on:click=move |_| board.put_back()>
                {word}
            </button>
        }
    });
    let unpin = notice.unpins.then(|| {
        view! {
            <button type="button" class="btn" on:click=move |_| board.pin_or_unpin(key)>
                {words::UNPIN}
            </button>
        }
    });
    let notes = notice
        .notes
        .into_iter()
        .map(|note| view! { <p class="note ink">{note}</p> })
        .collect_view();
    let any = put.is_some() || back.is_some() || unpin.is_some();
    view! {
        <div class=format!("notice {}", notice.class)>
            <p class="say">
                <b>{notice.head}</b>
            </p>
            {notes}
            {any.then(|| view! { <div class="keys two">{back}{unpin}{put}</div> })}
        </div>
    }
}
