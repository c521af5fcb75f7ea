//! What everything on this screen shares: the day as it is known, the dish that is looked at, and what lies over it.

use super::due::{Due, dues, lead};
use super::fire::{FireLine, fires};
use super::telling::Telling;
use crate::format::Formats;
use crate::store::{Happening, Store};
use cook_model::handover::identity::{CookerId, DishId, EntryId, PieceId};
use cook_model::handover::{Journal, KnownEvent};
use cook_model::live::Stage;
use cook_model::plan::outlook::{DishOutlook, Outlook};
use cook_model::plan::{Plan, Progress, in_order};
use cook_model::units::Moment;
use leptos::prelude::*;
use std::sync::Arc;

/// What lies over the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// A core reading.
    Core,
    /// A pit reading.
    Pit,
    /// How the probe goes in.
    Feel,
    /// The fire was fed.
    Fed,
    /// Sprayed.
    Spray,
    /// Turned.
    Turn,
    /// The key of the moment.
    Moment(DoNow),
    /// Everything else.
    More,
    /// An entry that is to be mended.
    Entry(EntryId),
}

/// The key that follows the moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DoNow {
    /// Put it on.
    On,
    /// Wrap it.
    Wrap,
    /// Take it off.
    Off,
    /// Into the box.
    Hold,
    /// Slice or pull it.
    Slice,
    /// Put away what is left.
    Chill,
}

/// The day as it is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Day {
    /// The plan.
    pub plan: Arc<Plan>,
    /// What was logged.
    pub journal: Arc<Journal>,
    /// The forecast, once there is one.
    pub outlook: Option<Arc<Outlook>>,
}

impl Day {
    /// How far the day has come.
    #[must_use]
    pub fn progress(&self) -> Progress<'_> {
        Progress::of(&self.plan, &self.journal)
    }

    /// A dish in the forecast.
    #[must_use]
    pub fn seen(&self, dish: DishId) -> Option<&DishOutlook> {
        let mut dishes = self.outlook.as_ref()?.dishes.iter();
        dishes.find(|seen| seen.dish == dish)
    }

    /// The dishes in the person's order.
    #[must_use]
    pub fn dishes(&self) -> Vec<DishId> {
        let dishes = in_order(&self.plan.dishes, |dish| &dish.order);
        dishes.into_iter().map(|(id, _)| id).collect()
    }

    /// The pieces of a dish in order.
    #[must_use]
    pub fn pieces(&self, dish: DishId) -> Vec<PieceId> {
        let Some(dish) = self.plan.dishes.get(&dish) else {
            return Vec::new();
        };
        let pieces = in_order(&dish.pieces, |piece| &piece.order);
        pieces.into_iter().map(|(id, _)| id).collect()
    }

    /// The cooker of a dish, or else the first of all.
    #[must_use]
    pub fn cooker(&self, dish: Option<DishId>) -> Option<CookerId> {
        let own = dish.and_then(|dish| self.plan.dishes.get(&dish)?.cooker);
        let first = || {
            in_order(&self.plan.cookers, |cooker| &cooker.order)
                .first()
                .map(|(id, _)| *id)
        };
        own.filter(|own| self.plan.cookers.contains_key(own))
            .or_else(first)
    }
}

/// A handle to all of it.
#[derive(Clone, Copy)]
pub struct Yard {
    store: Store,
    /// The day.
    pub day: Memo<Option<Day>>,
    /// What is to be done, in order.
    pub dues: Memo<Vec<Due>>,
    /// The one that leads.
    pub lead: Memo<Option<Due>>,
    /// The fires.
    pub fires: Memo<Vec<FireLine>>,
    /// The dish that is looked at.
    pub dish: Memo<Option<DishId>>,
    chosen: RwSignal<Option<DishId>>,
    /// What lies over the screen.
    pub over: RwSignal<Option<Over>>,
    /// When and by whom the next entry is told.
    pub telling: Telling,
}

/// The yard, from anywhere on the screen.
#[must_use]
pub fn use_yard() -> Yard {
    expect_context()
}

impl Yard {
    /// Begins.
    #[must_use]
    pub fn begin(store: Store) -> Self {
        let forecast = store.forecast();
        let day = Memo::new(move |_| {
            let plan = store.plan.get()?;
            let open = store.open_id.get();
            let outlook = forecast.with(|forecast| {
                let ours = forecast.of == open;
                forecast.outlook.clone().filter(|_| ours)
            });
            Some(Day {
                plan,
                journal: store.journal.get(),
                outlook,
            })
        });
        let dues = Memo::new(move |_| {
            let now = store.now.get();
            day.with(|day| {
                let day = day.as_ref()?;
                let outlook = day.outlook.as_ref()?;
                Some(dues(&day.plan, outlook, &day.progress(), now))
            })
            .unwrap_or_default()
        });
        let lead = Memo::new(move |_| {
            let now = store.now.get();
            dues.with(|dues| lead(dues, now).map(|first| dues[first].clone()))
        });
        let fires = Memo::new(move |_| {
            day.with(|day| {
                let day = day.as_ref()?;
                let outlook = day.outlook.as_ref()?;
                Some(fires(&day.plan, outlook, &day.progress()))
            })
            .unwrap_or_default()
        });
        let chosen = RwSignal::new(None);
        let dish = Memo::new(move |_| {
            let chosen = chosen.get();
            let lead = lead.with(|lead| lead.as_ref().and_then(|due| due.dishes.first().copied()));
            day.with(|day| first_dish(day.as_ref()?, chosen, lead))
        });
        Self {
            store,
            day,
            dues,
            lead,
            fires,
            dish,
            chosen,
            over: RwSignal::new(None),
            telling: Telling::new(store),
        }
    }

    /// Looks at a dish.
    pub fn choose(self, dish: DishId) {
        self.chosen.set(Some(dish));
    }

    /// Opens something over the screen; the next entry is told now unless the person says otherwise.
    pub fn open(self, over: Over) {
        self.telling.reset();
        self.over.set(Some(over));
    }

    /// Shuts it.
    pub fn shut(self) {
        self.over.set(None);
    }

    /// Something of the day.
    pub fn with<T>(self, part: impl FnOnce(&Day) -> T) -> Option<T> {
        self.day.with(|day| day.as_ref().map(part))
    }

    /// The same, once.
    pub fn read<T>(self, part: impl FnOnce(&Day) -> T) -> Option<T> {
        self.day.with_untracked(|day| day.as_ref().map(part))
    }

    /// How this person reads numbers.
    #[must_use]
    pub fn formats(self) -> Formats {
        self.store.formats.get()
    }

    /// The present minute.
    #[must_use]
    pub fn now(self) -> Moment {
        self.store.now.get()
    }

    /// The state of the app.
    #[must_use]
    pub const fn store(self) -> Store {
        self.store
    }

    /// Logs what happened, at the time and by whom it is told, and shuts what lies over the screen.
    pub fn log(self, events: Vec<KnownEvent>) {
        let (at, _) = self.telling.told();
        self.log_each(events.into_iter().map(|event| (at, event)).collect());
    }

    /// Logs what has happened just now, with one tap.
    pub fn log_now(self, events: Vec<KnownEvent>) {
        self.telling.reset();
        self.log(events);
    }

    /// Logs things that happened at times of their own.
    pub fn log_each(self, events: Vec<(Moment, KnownEvent)>) {
        let by = self.telling.who.get_untracked();
        let happened = events
            .into_iter()
            .map(|(at, event)| Happening { at, by, event });
        self.store.log(happened.collect());
        self.shut();
    }
}

/// The dish chosen, else the one under way that the next thing is about, else the first one that is under way, else the
/// one that the next thing is about.
fn first_dish(day: &Day, chosen: Option<DishId>, lead: Option<DishId>) -> Option<DishId> {
    let there = |dish: &DishId| day.plan.dishes.contains_key(dish);
    let dishes = day.dishes();
    let progress = day.progress();
    let under_way = |dish: &&DishId| {
        let stage = progress.stage(**dish).0;
        stage > Stage::NotOn && stage < Stage::Sliced
    };
    chosen
        .filter(there)
        .or_else(|| lead.filter(|lead| under_way(&lead)))
        .or_else(|| dishes.iter().find(under_way).copied())
        .or_else(|| lead.filter(there))
        .or_else(|| dishes.first().copied())
}
