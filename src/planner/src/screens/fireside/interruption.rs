//! The fire went out, the lid was off, the power failed: when all was last seen well and when it was found, and what the
//! thermometers read at both times. Out of that the model tells the core's and the surface's way between.

use super::telling::last_at;
use super::yard::use_yard;
use crate::format::{Measure, parse_number};
use crate::parts::{Choice, TimeField, Way};
use crate::words::{capital, fireside as words, journal as said};
use chrono::NaiveTime;
use cook_model::handover::identity::{CookerId, DishId, PieceId};
use cook_model::handover::{Gauge, HeatLoss, KnownEvent, ProbePlace};
use cook_model::units::{Moment, Temperature};
use leptos::prelude::*;

/// What was seen at a time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// When.
    pub at: Moment,
    /// The air of the cooker, where it was read.
    pub pit: Option<Temperature>,
    /// The core, where it was read.
    pub core: Option<Temperature>,
}

/// What such a gap writes: the readings at both ends, the loss from when all was last well, and the heat that is back.
#[must_use]
pub fn events(
    cooker: CookerId,
    piece: Option<PieceId>,
    by: HeatLoss,
    well: Seen,
    found: Seen,
    burns_again: bool,
) -> Vec<(Moment, KnownEvent)> {
    let mut events = Vec::new();
    let mut read = |seen: Seen| {
        events.extend(seen.pit.map(|reading| {
            let pit = KnownEvent::Pit {
                cooker,
                reading,
                gauge: Gauge::NotSaid,
                doubtful: false,
            };
            (seen.at, pit)
        }));
        events.extend(seen.core.zip(piece).map(|(reading, piece)| {
            let core = KnownEvent::Core {
                piece,
                reading,
                place: ProbePlace::NotSaid,
                doubtful: false,
            };
            (seen.at, core)
        }));
    };
    read(well);
    read(found);
    let out = KnownEvent::FireOut {
        cooker,
        by,
        unseen: true,
    };
    events.push((well.at, out));
    if burns_again {
        events.push((found.at, KnownEvent::FireBack { cooker }));
    }
    events.sort_by_key(|(at, _)| *at);
    events
}

/// The form.
#[component]
pub fn Interruption(
    /// The dish that is looked at.
    dish: DishId,
    /// Its cooker.
    cooker: CookerId,
) -> impl IntoView {
    let yard = use_yard();
    let store = yard.store();
    let clock = move || {
        store
            .zone
            .get_untracked()
            .local(store.now.get_untracked())
            .time()
    };
    let by = RwSignal::new(HeatLoss::Fire);
    let again = RwSignal::new(None::<bool>);
    let (well_at, found_at) = (RwSignal::new(clock()), RwSignal::new(clock()));
    let pits = [(); 2].map(|()| RwSignal::new(String::new()));
    let cores = [(); 2].map(|()| RwSignal::new(String::new()));
    let piece = yard.read(|day| day.pieces(dish).first().copied()).flatten();
    let read = move |text: RwSignal<String>| {
        let units = store.formats.get_untracked().units;
        let number = text.with_untracked(|text| parse_number(text))?;
        Some(Temperature::from_celsius(Measure::Core.keep(number, units)))
    };
    let at = move |time: NaiveTime| {
        last_at(time, store.now.get_untracked(), &store.zone.get_untracked())
    };
    let order = move || at(well_at.get()) < at(found_at.get());
    let ready = move || again.get().is_some() && order();
    let log = move |_| {
        let well = Seen {
            at: at(well_at.get_untracked()),
            pit: read(pits[0]),
            core: read(cores[0]),
        };
        let found = Seen {
            at: at(found_at.get_untracked()),
            pit: read(pits[1]),
            core: read(cores[1]),
        };
        let again = again.get_untracked() == Some(true);
        yard.log_each(events(
            cooker,
            piece,
            by.get_untracked(),
            well,
            found,
            again,
        ));
    };
    let losses = [HeatLoss::Fire, HeatLoss::Power, HeatLoss::LidOff]
        .map(|by| Way::new(by, capital(said::heat_loss(by))))
        .to_vec();
    let agains = vec![
        Way::new(true, words::HEAT_BACK),
        Way::new(false, words::STILL_COLD),
    ];
    let number = move |label: &'static str, text: RwSignal<String>| {
        let id = crate::parts::choice::unique_id("seen");
        let unit = Measure::Core.unit(store.formats.get_untracked().units);
        view! {
            <div class="field">
                <label for=id.clone()>{format!("{label}, {unit}")}</label>
                <input
                    id=id
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    prop:value=move || text.get()
                    on:input=move |event| text.set(event_target_value(&event))
                />
            </div>
        }
    };
    view! {
        <Choice
            label=words::WHAT_HAPPENED
            ways=Signal::stored(losses)
            chosen=Signal::derive(move || Some(by.get()))
            on_choose=move |to| by.set(to)
        />
        <h3 class="head">{words::LAST_WELL}</h3>
        <div class="fields">
            <TimeField label=words::AT value=well_at on_change=move |time| well_at.set(time) />
            {number(words::PIT, pits[0])}
            {number(words::CORE, cores[0])}
        </div>
        <h3 class="head">{words::FOUND}</h3>
        <div class="fields">
            <TimeField label=words::AT value=found_at on_change=move |time| found_at.set(time) />
            {number(words::PIT, pits[1])}
            {number(words::CORE, cores[1])}
        </div>
        <Choice
            label=words::AND_NOW
            ways=Signal::stored(agains)
            chosen=again
            on_choose=move |to| again.set(Some(to))
            lay="two"
        />
        <p class="note ink">{words::INTERRUPTION_CAUTION}</p>
        <p class="asked" role="status">{move || (!order()).then_some(words::WELL_BEFORE_FOUND)}</p>
        <button type="button" class="btn act knuckle" disabled=move || !ready() on:click=log>
            {words::LOG_IT}
        </button>
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::run_sheet::sample::at;
    use super::*;

    #[test]
    fn a_gap_is_told_from_when_all_was_last_well() {
        let (cooker, piece) = (CookerId::new(1, 1), PieceId::new(2, 2));
        let celsius = |celsius| Some(Temperature::from_celsius(celsius));
        let well = Seen {
            at: at("2026-09-12T01:00:00"),
            pit: celsius(121.0),
            core: celsius(58.0),
        };
        let found = Seen {
            at: at("2026-09-12T04:30:00"),
            pit: celsius(40.0),
            core: None,
        };
        let told = events(cooker, Some(piece), HeatLoss::Fire, well, found, true);
        let times: Vec<Moment> = told.iter().map(|(at, _)| *at).collect();
        assert!(times.is_sorted());
        assert_eq!(told.len(), 5);
        let out = KnownEvent::FireOut {
            cooker,
            by: HeatLoss::Fire,
            unseen: true,
        };
        assert!(told.contains(&(well.at, out)));
        assert!(told.contains(&(found.at, KnownEvent::FireBack { cooker })));
    }
}
