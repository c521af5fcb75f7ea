//! What the journal says of a dish and its cooker, as far as questions want it.

use super::Setting;
use crate::handover::identity::{CookerId, DishId};
use crate::handover::{Event, KnownEvent, ProbePlace};
use crate::plan::Dish;
use crate::units::{Moment, Temperature, TimeSpan};

/// A reading older than this is not the reading of now. Set by hand.
const FRESH: TimeSpan = TimeSpan::from_minutes(15.0);

/// What was told of a dish and of its cooker up to now, oldest first.
pub(super) struct Told<'a> {
    events: Vec<(Moment, &'a KnownEvent)>,
    id: Option<DishId>,
    dish: Option<&'a Dish>,
    now: Moment,
}

impl<'a> Told<'a> {
    pub(super) fn of(setting: &Setting<'a>, dish: Option<&'a Dish>) -> Self {
        let entries = setting.journal.standing().map(|(_, entry)| entry);
        let known = entries.filter_map(|entry| match &entry.event {
            Event::Known(event) if entry.at <= setting.now => Some((entry.at, event)),
            _ => None,
        });
        let mut events: Vec<_> = known.collect();
        events.sort_by_key(|(at, _)| *at);
        Self {
            events,
            id: setting.dish,
            dish,
            now: setting.now,
        }
    }

    fn last(&self, is: impl Fn(&KnownEvent) -> bool) -> Option<Moment> {
        let mut events = self.events.iter().rev();
        events.find(|(_, event)| is(event)).map(|(at, _)| *at)
    }

    fn is_mine(&self, dish: DishId) -> bool {
        self.id == Some(dish)
    }

    fn is_my_cooker(&self, cooker: CookerId) -> bool {
        self.dish.and_then(|dish| dish.cooker) == Some(cooker)
    }

    /// Core readings of its pieces that nobody doubts, oldest first.
    fn cores(&self) -> impl DoubleEndedIterator<Item = (Moment, Temperature)> {
        self.events.iter().filter_map(|(at, event)| match event {
            KnownEvent::Core {
                piece,
                reading,
                place: ProbePlace::NotSaid | ProbePlace::ThickMiddle,
                doubtful: false,
            } if self.dish?.pieces.contains_key(piece) => Some((*at, *reading)),
            _ => None,
        })
    }

    fn pits(&self) -> impl DoubleEndedIterator<Item = (Moment, Temperature)> {
        self.events.iter().filter_map(|(at, event)| match event {
            KnownEvent::Pit {
                cooker,
                reading,
                doubtful: false,
                ..
            } if self.is_my_cooker(*cooker) => Some((*at, *reading)),
            _ => None,
        })
    }

    fn is_fresh(&self, at: Moment) -> bool {
        self.now - at <= FRESH
    }

    /// The lowest of the fresh core readings: the coldest place counts.
    pub(super) fn fresh_core(&self) -> Option<Temperature> {
        let fresh = self.cores().filter(|(at, _)| self.is_fresh(*at));
        fresh
            .map(|(_, core)| core)
            .reduce(|a, b| if b < a { b } else { a })
    }

    /// The last core reading that is not fresh any more.
    pub(super) fn earlier_core(&self) -> Option<Temperature> {
        let (_, core) = self.cores().rev().find(|(at, _)| !self.is_fresh(*at))?;
        Some(core)
    }

    pub(super) fn fresh_pit(&self) -> Option<Temperature> {
        let (at, pit) = self.pits().next_back()?;
        self.is_fresh(at).then_some(pit)
    }

    pub(super) fn coolest_pit(&self) -> Option<Temperature> {
        let on = self.on()?;
        let pits = self.pits().filter(|(at, _)| *at >= on);
        pits.map(|(_, pit)| pit)
            .reduce(|a, b| if b < a { b } else { a })
    }

    fn on(&self) -> Option<Moment> {
        self.last(|event| matches!(event, KnownEvent::On { dish } if self.is_mine(*dish)))
    }

    fn taken_out(&self) -> Option<Moment> {
        self.last(|event| matches!(event, KnownEvent::TakenOut { dish } if self.is_mine(*dish)))
    }

    fn put_back(&self) -> Option<Moment> {
        self.last(|event| matches!(event, KnownEvent::PutBack { dish } if self.is_mine(*dish)))
    }

    fn served(&self) -> Option<Moment> {
        self.last(|event| matches!(event, KnownEvent::Served { dish } if self.is_mine(*dish)))
    }

    /// How long its cooker has been without heat.
    pub(super) fn heat_lost_for(&self) -> Option<TimeSpan> {
        let out = self.last(
            |event| matches!(event, KnownEvent::FireOut { cooker, .. } if self.is_my_cooker(*cooker)),
        )?;
        let back = self.last(
            |event| matches!(event, KnownEvent::FireBack { cooker } if self.is_my_cooker(*cooker)),
        );
        back.is_none_or(|back| back < out).then(|| self.now - out)
    }

    /// How long ago it left the fridge for good, as told; else how long ago it went on.
    pub(super) fn out_of_the_cold_for(&self) -> Option<TimeSpan> {
        let out = self
            .taken_out()
            .filter(|out| self.put_back().is_none_or(|back| back < *out));
        Some(self.now - out.or_else(|| self.on())?)
    }

    /// How long it has been out and off the heat: on the table, or raw on the board.
    pub(super) fn left_out_for(&self) -> Option<TimeSpan> {
        if let Some(served) = self.served() {
            return Some(self.now - served);
        }
        self.on().is_none().then(|| self.out_of_the_cold_for())?
    }

    /// Whether it never went on, where anything was told of it at all.
    pub(super) fn is_raw(&self) -> Option<bool> {
        let told = self.on().or_else(|| self.taken_out());
        told.map(|_| self.on().is_none())
    }

    pub(super) fn is_served(&self) -> Option<bool> {
        self.served().map(|_| true)
    }

    /// Whether a piece of it is wrapped. None where nothing was told of it.
    pub(super) fn is_wrapped(&self) -> Option<bool> {
        let pieces = &self.dish?.pieces;
        let wrapped = self
            .last(|event| matches!(event, KnownEvent::Wrapped { piece, .. } if pieces.contains_key(piece)))?;
        let unwrapped = self.last(
            |event| matches!(event, KnownEvent::Unwrapped { piece } if pieces.contains_key(piece)),
        );
        Some(unwrapped.is_none_or(|unwrapped| unwrapped < wrapped))
    }
}
