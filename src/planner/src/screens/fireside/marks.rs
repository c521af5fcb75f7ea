//! The sheets of the other keys: when, who, and one large key for each thing that may have happened.

use super::moment::{chilled, planned_cover, wrapped};
use super::when_who::WhenWho;
use super::yard::{Day, DoNow, Over, use_yard};
use crate::format::Formats;
use crate::parts::{Choice, Slip, Way};
use crate::words::{capital, fireside as words, journal as said};
use cook_model::handover::identity::{CookerId, DishId, PieceId};
use cook_model::handover::{FuelKind, KnownEvent, ProbeFeel};
use cook_model::plan::{CookerKind, Cover, HoldPlace, in_order};
use cook_model::provisions::fuel::feeding;
use cook_model::units::Mass;
use leptos::prelude::*;

/// A key and what it writes.
#[derive(Clone, Debug, PartialEq)]
pub struct Key {
    /// What it says.
    pub label: String,
    /// What it writes.
    pub events: Vec<KnownEvent>,
}

impl Key {
    fn new(label: impl Into<String>, events: Vec<KnownEvent>) -> Self {
        Self {
            label: label.into(),
            events,
        }
    }
}

/// The keys of what can be told of a dish with one tap. None for what has a sheet of its own.
#[must_use]
pub fn keys(day: &Day, dish: DishId, over: Over) -> Option<Vec<Key>> {
    let pieces = day.pieces(dish);
    Some(match over {
        Over::Spray => vec![Key::new(words::SPRAYED, vec![KnownEvent::Sprayed { dish }])],
        Over::Turn => vec![Key::new(words::TURNED, vec![KnownEvent::Turned { dish }])],
        Over::Moment(DoNow::On) => vec![Key::new(words::WENT_ON, vec![KnownEvent::On { dish }])],
        Over::Moment(DoNow::Wrap) => {
            let planned = planned_cover(day, dish);
            let other = match planned {
                Cover::Paper => Cover::Foil,
                Cover::Foil => Cover::Paper,
            };
            let key = |cover| {
                let label = words::wrapped_in(said::cover(cover));
                Key::new(label, wrapped(&pieces, cover))
            };
            vec![key(planned), key(other)]
        }
        Over::Moment(DoNow::Off) => vec![Key::new(words::CAME_OFF, vec![KnownEvent::Off { dish }])],
        Over::Moment(DoNow::Hold) => {
            let mut keys = vec![Key::new(words::INTO_BOX, vec![KnownEvent::Boxed { dish }])];
            let hold = day.plan.dishes.get(&dish).and_then(|dish| dish.hold);
            if let Some(HoldPlace::WarmOven { air }) = hold {
                let oven = vec![KnownEvent::MovedToOven { dish, air }];
                keys.insert(0, Key::new(words::INTO_WARM_OVEN, oven));
            }
            keys.push(Key::new(words::VENTED, vec![KnownEvent::Vented { dish }]));
            keys
        }
        Over::Moment(DoNow::Slice) => vec![
            Key::new(words::SLICED, vec![KnownEvent::Sliced { dish }]),
            Key::new(words::SERVED, vec![KnownEvent::Served { dish }]),
        ],
        Over::Moment(DoNow::Chill) => vec![
            Key::new(words::PUT_AWAY, chilled(dish)),
            Key::new(
                words::PUT_AWAY_ICE,
                vec![KnownEvent::Chilled {
                    dish,
                    depth: None,
                    ice: true,
                }],
            ),
            Key::new(words::HEATED_UP, vec![KnownEvent::Reheating { dish }]),
        ],
        Over::Core | Over::Pit | Over::Feel | Over::Fed | Over::More | Over::Entry(_) => {
            return None;
        }
    })
}

/// A sheet of large keys.
#[component]
pub fn MarkSlip(
    /// The dish.
    dish: DishId,
    /// Which key was pressed.
    over: Over,
) -> impl IntoView {
    let yard = use_yard();
    let name = yard
        .read(|day| said::dish_name(&day.plan, dish))
        .unwrap_or_default();
    let keys = yard
        .read(|day| keys(day, dish, over))
        .flatten()
        .unwrap_or_default();
    view! {
        <Slip title=name on_close=move |()| yard.shut()>
            <WhenWho />
            <Keys keys />
        </Slip>
    }
}

/// Large keys, one under the other; the first is the likeliest.
#[component]
pub fn Keys(
    /// The keys.
    keys: Vec<Key>,
) -> impl IntoView {
    let yard = use_yard();
    let key = |(place, key): (usize, Key)| {
        let events = key.events;
        view! {
            <button
                type="button"
                class="btn knuckle"
                class:act=place == 0
                on:click=move |_| yard.log(events.clone())
            >
                {key.label}
            </button>
        }
    };
    view! { <div class="stack">{keys.into_iter().enumerate().map(key).collect_view()}</div> }
}

/// How the probe goes in.
#[component]
pub fn FeelSlip(
    /// The dish.
    dish: DishId,
) -> impl IntoView {
    let yard = use_yard();
    let pieces = yard.read(|day| day.pieces(dish)).unwrap_or_default();
    let piece = RwSignal::new(pieces.first().copied());
    let ways: Vec<Way<PieceId>> = yard
        .read(|day| {
            let name = |piece: &PieceId| said::piece_name(&day.plan, *piece);
            pieces
                .iter()
                .map(|piece| Way::new(*piece, name(piece)))
                .collect()
        })
        .unwrap_or_default();
    let several = pieces.len() > 1;
    let key = move |feel: ProbeFeel| {
        let log = move |_| {
            if let Some(piece) = piece.get_untracked() {
                yard.log(vec![KnownEvent::Felt { piece, feel }]);
            }
        };
        view! {
            <button type="button" class="btn knuckle" on:click=log>{capital(said::feel(feel))}</button>
        }
    };
    let feels = [ProbeFeel::Tight, ProbeFeel::Drags, ProbeFeel::SoftButter];
    view! {
        <Slip title=words::HOW_PROBE on_close=move |()| yard.shut()>
            {several.then(|| view! {
                <Choice
                    label=words::WHICH_PIECE
                    ways=Signal::stored(ways)
                    chosen=piece
                    on_choose=move |id| piece.set(Some(id))
                />
            })}
            <WhenWho />
            <div class="stack">{feels.map(key).collect_view()}</div>
        </Slip>
    }
}

/// What a cooker burns, the likeliest first. None where it is not fed by hand.
#[must_use]
pub const fn burns(kind: CookerKind) -> Option<FuelKind> {
    match kind {
        CookerKind::Offset => Some(FuelKind::Wood),
        CookerKind::Kettle | CookerKind::Drum | CookerKind::Cabinet => Some(FuelKind::Briquettes),
        CookerKind::Ceramic => Some(FuelKind::Lump),
        CookerKind::Pellet => Some(FuelKind::Pellets),
        CookerKind::Gas | CookerKind::Electric | CookerKind::Oven | CookerKind::FanOven => None,
    }
}

/// How much may have been fed, as keys: one or two pieces, or none weighed.
#[must_use]
pub fn feeds(day: &Day, cooker: CookerId, kind: Option<FuelKind>, formats: &Formats) -> Vec<Key> {
    let there = day.plan.cookers.get(&cooker);
    let piece = there.and_then(|cooker| feeding(cooker.kind)?.piece);
    let fed = |fuel: Option<Mass>| vec![KnownEvent::Fed { cooker, fuel, kind }];
    match piece {
        Some(piece) => vec![
            Key::new(words::splits(1, &formats.mass(piece)), fed(Some(piece))),
            Key::new(
                words::splits(2, &formats.mass(piece * 2.0)),
                fed(Some(piece * 2.0)),
            ),
            Key::new(words::FED_NOT_WEIGHED, fed(None)),
        ],
        None => {
            let half = Mass::from_grams(500.0);
            let mut keys = vec![Key::new(words::FED_NOT_WEIGHED, fed(None))];
            keys.extend([1.0, 2.0, 4.0].map(|times| {
                let mass = half * times;
                Key::new(words::fed_mass(&formats.mass(mass)), fed(Some(mass)))
            }));
            keys
        }
    }
}

/// The fire was fed.
#[component]
pub fn FedSlip(
    /// The cooker that is meant unless another is chosen.
    cooker: CookerId,
) -> impl IntoView {
    let yard = use_yard();
    let cooker = RwSignal::new(cooker);
    let cookers: Vec<Way<CookerId>> = yard
        .read(|day| {
            let cookers = in_order(&day.plan.cookers, |cooker| &cooker.order);
            let fed = cookers
                .into_iter()
                .filter(|(_, cooker)| burns(cooker.kind).is_some());
            fed.map(|(id, _)| Way::new(id, said::cooker_name(&day.plan, id)))
                .collect()
        })
        .unwrap_or_default();
    let several = cookers.len() > 1;
    let usual = move || {
        yard.read(|day| burns(day.plan.cookers.get(&cooker.get_untracked())?.kind))
            .flatten()
    };
    let kind = RwSignal::new(usual());
    let kinds = [
        FuelKind::Wood,
        FuelKind::Lump,
        FuelKind::Briquettes,
        FuelKind::Pellets,
    ]
    .map(|kind| Way::new(kind, said::fuel(kind)))
    .to_vec();
    let title = move || {
        let name = yard.with(|day| said::cooker_name(&day.plan, cooker.get()));
        words::fed_title(&name.unwrap_or_default())
    };
    let keys = move || {
        let formats = yard.formats();
        let keys = yard.with(|day| feeds(day, cooker.get(), kind.get(), &formats));
        view! { <Keys keys=keys.unwrap_or_default() /> }
    };
    view! {
        <Slip title=Signal::derive(title) on_close=move |()| yard.shut()>
            {several.then(|| view! {
                <Choice
                    label=words::WHICH_COOKER
                    ways=Signal::stored(cookers)
                    chosen=Signal::derive(move || Some(cooker.get()))
                    on_choose=move |id| {
                        cooker.set(id);
                        kind.set(usual());
                    }
                />
            })}
            <WhenWho />
            <Choice
                label=words::WHAT_FUEL
                ways=Signal::stored(kinds)
                chosen=kind
                on_choose=move |to| kind.set(Some(to))
                lay="two"
            />
            {keys}
        </Slip>
    }
}
