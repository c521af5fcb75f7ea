//! The sheets of the two readings: a ladder, a keypad where the ladder does not reach, and a question where a number
//! cannot be.

use super::keypad::Keypad;
use super::ladder::{Rung, core_step, pit_step, rungs};
use super::when_who::WhenWho;
use super::yard::use_yard;
use super::{expected, odd};
use crate::format::{Measure, Units};
use crate::parts::{Choice, Slip, Way};
use crate::words::{fireside as words, journal as said};
use cook_model::handover::identity::{CookerId, DishId, PieceId};
use cook_model::handover::{Gauge, KnownEvent, ProbePlace};
use cook_model::plan::in_order;
use cook_model::units::Temperature;
use leptos::prelude::*;

/// A core reading of the dish that is looked at.
#[component]
pub fn CoreSlip(
    /// The dish.
    dish: DishId,
) -> impl IntoView {
    let yard = use_yard();
    let pieces = yard.read(|day| day.pieces(dish)).unwrap_or_default();
    let piece = RwSignal::new(pieces.first().copied());
    let place = RwSignal::new(ProbePlace::NotSaid);
    let title = move || {
        let name = yard.with(|day| said::dish_name(&day.plan, dish));
        words::core_title(&name.unwrap_or_default(), &yard.formats())
    };
    let several = pieces.len() > 1;
    let piece_ways: Vec<Way<PieceId>> = yard
        .read(|day| {
            let name = |piece: &PieceId| said::piece_name(&day.plan, *piece);
            pieces
                .iter()
                .map(|piece| Way::new(*piece, name(piece)))
                .collect()
        })
        .unwrap_or_default();
    let piece_ways = Signal::stored(piece_ways);
    let place_ways = [
        ProbePlace::NotSaid,
        ProbePlace::ThickMiddle,
        ProbePlace::ThinEnd,
    ]
    .map(|place| Way::new(place, said::place(place)))
    .to_vec();
    let ladder = Signal::derive(move || {
        let units = yard.formats().units;
        let now = yard.now();
        let piece = piece.get()?;
        let expected = yard.with(|day| expected::core(day, dish, piece, now))?;
        Some(rungs(expected.likely, expected.spread, core_step(units), units).to_vec())
    });
    let ask = move |reading: Temperature| {
        let (at, _) = yard.telling.told();
        let piece = piece.get_untracked()?;
        let last = yard.read(|day| expected::last_core(day, piece)).flatten();
        let odd = odd::core(reading, at, last)?;
        let formats = yard.store().formats.get_untracked();
        let number = formats.temperature(reading);
        let last = last.map(|(_, was)| formats.temperature(was));
        Some(words::odd(odd, &number, last.as_deref()))
    };
    let log = move |reading: Temperature, doubtful: bool| {
        if let Some(piece) = piece.get_untracked() {
            yard.log(vec![KnownEvent::Core {
                piece,
                reading,
                place: place.get_untracked(),
                doubtful,
            }]);
        }
    };
    view! {
        <Slip title=Signal::derive(title) on_close=move |()| yard.shut()>
            <Numbers
                note=words::LADDER_NOTE
                doubtful=words::LOG_DOUBTFUL
                ladder
                ask=Callback::new(ask)
                log=Callback::new(move |(reading, doubtful)| log(reading, doubtful))
            >
                {several.then(|| view! {
                    <Choice
                        label=words::WHICH_PIECE
                        ways=piece_ways
                        chosen=piece
                        on_choose=move |id| piece.set(Some(id))
                    />
                })}
            </Numbers>
            <WhenWho />
            <Choice
                label=words::PROBE_SITS
                ways=Signal::stored(place_ways)
                chosen=Signal::derive(move || Some(place.get()))
                on_choose=move |to| place.set(to)
            />
        </Slip>
    }
}

/// A pit reading.
#[component]
pub fn PitSlip(
    /// The cooker that is meant unless another is chosen.
    cooker: CookerId,
) -> impl IntoView {
    let yard = use_yard();
    let cooker = RwSignal::new(cooker);
    let gauge = RwSignal::new(Gauge::NotSaid);
    let cookers: Vec<Way<CookerId>> = yard
        .read(|day| {
            let cookers = in_order(&day.plan.cookers, |cooker| &cooker.order);
            let ways = cookers.into_iter();
            ways.map(|(id, _)| Way::new(id, said::cooker_name(&day.plan, id)))
                .collect()
        })
        .unwrap_or_default();
    let several = cookers.len() > 1;
    let cookers = Signal::stored(cookers);
    let title = move || {
        let name = yard.with(|day| said::cooker_name(&day.plan, cooker.get()));
        words::pit_title(&name.unwrap_or_default(), &yard.formats())
    };
    let gauges = [Gauge::NotSaid, Gauge::AtMeat, Gauge::Lid, Gauge::Own]
        .map(|gauge| Way::new(gauge, said::gauge(gauge)))
        .to_vec();
    let ladder = Signal::derive(move || {
        let units = yard.formats().units;
        let expected = yard.with(|day| expected::pit(day, cooker.get()))?;
        Some(rungs(expected.likely, None, pit_step(units), units).to_vec())
    });
    let ask = move |reading: Temperature| {
        let odd = odd::pit(reading)?;
        let number = yard.store().formats.get_untracked().temperature(reading);
        Some(words::odd(odd, &number, None))
    };
    let log = move |reading: Temperature, doubtful: bool| {
        yard.log(vec![KnownEvent::Pit {
            cooker: cooker.get_untracked(),
            reading,
            gauge: gauge.get_untracked(),
            doubtful,
        }]);
    };
    view! {
        <Slip title=Signal::derive(title) on_close=move |()| yard.shut()>
            <Numbers
                note=words::PIT_LADDER_NOTE
                doubtful=words::LOG_DOUBTFUL_GAUGE
                ladder
                ask=Callback::new(ask)
                log=Callback::new(move |(reading, doubtful)| log(reading, doubtful))
            >
                {several.then(|| view! {
                    <Choice
                        label=words::WHICH_COOKER
                        ways=cookers
                        chosen=Signal::derive(move || Some(cooker.get()))
                        on_choose=move |id| cooker.set(id)
                    />
                })}
            </Numbers>
            <WhenWho />
            <Choice
                label=words::WITH_GAUGE
                ways=Signal::stored(gauges)
                chosen=Signal::derive(move || Some(gauge.get()))
                on_choose=move |to| gauge.set(to)
                lay="two"
            />
        </Slip>
    }
}

/// The ladder, the keypad, and the question.
#[component]
fn Numbers(
    /// What the ladder is.
    note: &'static str,
    /// What the key says that logs a number as doubtful.
    doubtful: &'static str,
    /// The rungs.
    ladder: Signal<Option<Vec<Rung>>>,
    /// Whether a number is asked about, and what is asked.
    ask: Callback<Temperature, Option<String>>,
    /// Logs it; whether it is doubtful.
    log: Callback<(Temperature, bool)>,
    /// Above the ladder.
    children: ChildrenFn,
) -> impl IntoView {
    let yard = use_yard();
    let units = Signal::derive(move || yard.formats().units);
    let by_hand = RwSignal::new(false);
    let asked = RwSignal::new(None::<(Temperature, String)>);
    let give = move |reading: Temperature| match ask.run(reading) {
        Some(question) => asked.set(Some((reading, question))),
        None => log.run((reading, false)),
    };
    let rung = move |rung: Rung| {
        let fill = format!("{:.0}%", rung.likely * 34.0);
        let best = rung.likely > 0.999;
        view! {
            <button
                type="button"
                class="rung num"
                class:mid=best
                on:click=move |_| give(rung.temperature(units.get_untracked()))
            >
                <i style=("--h", fill)></i>
                <span>{crate::format::number(rung.number, 1)}</span>
            </button>
        }
    };
    let rungs = move || {
        ladder
            .get()
            .unwrap_or_default()
            .into_iter()
            .map(rung)
            .collect_view()
    };
    let numbers = move || {
        if by_hand.get() {
            view! {
                <Keypad unit=unit(units.get()) on_number=move |number| give(read(number, units.get_untracked())) />
                <button type="button" class="btn" on:click=move |_| by_hand.set(false)>{words::LADDER}</button>
            }
            .into_any()
        } else {
            view! {
                <p class="note">{note}</p>
                <div class="rungs">{rungs}</div>
                <button type="button" class="btn" on:click=move |_| by_hand.set(true)>
                    {words::ANOTHER_NUMBER}
                </button>
            }
            .into_any()
        }
    };
    view! {
        {move || match asked.get() {
            Some((reading, question)) => view! {
                <div class="heed" role="alert">
                    <p>{question}</p>
                    <div class="stack">
                        <button type="button" class="btn" on:click=move |_| log.run((reading, false))>
                            {words::LOG_ANYWAY}
                        </button>
                        <button type="button" class="btn" on:click=move |_| log.run((reading, true))>
                            {doubtful}
                        </button>
                        <button type="button" class="btn act" on:click=move |_| asked.set(None)>
                            {words::CHANGE_IT}
                        </button>
                    </div>
                </div>
            }.into_any(),
            None => view! { {children()} {numbers} }.into_any(),
        }}
    }
}

fn unit(units: Units) -> &'static str {
    Measure::Core.unit(units)
}

fn read(number: f64, units: Units) -> Temperature {
    Temperature::from_celsius(Measure::Core.keep(number, units))
}
