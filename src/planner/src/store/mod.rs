//! The one state of the app: every plan, the settings of the device, and what is derived from the open plan.
//!
//! Screens read signals and call methods; every change goes through here, is recorded in the plan's document, can be
//! taken back, and is written to both stores.

mod edit;
mod forecast;
mod held_plan;
mod history;
mod index;
mod journal;
mod lessons;
mod library;
mod load;
pub mod new_things;
mod plans;
mod preferences;
mod problems;
mod records;
mod safe;
mod trials;

pub use edit::Edit;
use forecast::reckoner;
pub use forecast::{Forecast, Progress};
pub use held_plan::HeldPlan;
pub use history::History;
pub use index::{Index, Marker};
pub use journal::Happening;
pub use library::{KeptAside, Library};
pub use load::{Loaded, load};
pub use plans::TakenIn;
pub use preferences::{Device, Light, Preferences};
pub use problems::Wrong;
pub use trials::{ToTry, Trials, Tried};

use crate::device::clock::{now, use_minute, wall_milliseconds};
use crate::device::ids::Ids;
use crate::device::storage::{Key, SaveState, Storage};
use crate::device::worker::Reckoner;
use crate::device::{locale, zone};
use crate::format::Formats;
use crate::words::Told;
use cook_model::handover::identity::{EntryId, PlanId};
use cook_model::handover::{Clock, Journal};
use cook_model::plan::{Plan, Serving, Zone};
use cook_model::safety::SafeLine;
use cook_model::units::Moment;
use leptos::prelude::*;
use std::collections::BTreeSet;
use std::sync::Arc;

/// A handle to the state. Cheap to copy; found by [`use_store`] anywhere below the app.
#[derive(Clone, Copy)]
pub struct Store {
    library: RwSignal<Library>,
    preferences: RwSignal<Preferences>,
    clock: StoredValue<Clock>,
    storage: StoredValue<Storage, LocalStorage>,
    forecast: RwSignal<Forecast>,
    trials: RwSignal<Trials>,
    reckoner: StoredValue<Reckoner, LocalStorage>,
    /// Which plan is open.
    pub open_id: Memo<Option<PlanId>>,
    /// The open plan, none where the shelf is empty.
    pub plan: Memo<Option<Arc<Plan>>>,
    /// The local clock around the open plan.
    pub zone: Memo<Arc<Zone>>,
    /// What is wrong with the open plan.
    pub wrong: Memo<Vec<Wrong>>,
    /// How this person reads numbers and times.
    pub formats: Memo<Formats>,
    /// The present minute.
    pub now: Memo<Moment>,
    /// How the food of the open plan stands.
    pub safe: Memo<Arc<SafeLine>>,
    /// What happened, by the open plan's journal.
    pub journal: Memo<Arc<Journal>>,
    /// Entries that are not on disk yet.
    pub not_kept_yet: RwSignal<BTreeSet<EntryId>>,
    /// How far the last change got.
    pub save_state: RwSignal<SaveState>,
    /// Something that went well and is worth saying, until it has been read.
    pub told: RwSignal<Option<Told>>,
}

/// The state, from anywhere below the app.
#[must_use]
pub fn use_store() -> Store {
    expect_context()
}

impl Store {
    /// Begins with what was found on the device. Call it once, where its signals live as long as the page.
    #[must_use]
    pub fn start(storage: Storage, loaded: Loaded) -> Self {
        let Loaded {
            mut library,
            device,
            behind,
            unreadable,
        } = loaded;
        for damaged in &unreadable {
            storage.keep_aside(damaged);
        }
        for (key, content) in behind {
            storage.write(key, content);
        }
        let known = device.and_then(|device| Some((device.replica()?, device.preferences)));
        let first_start = known.is_none();
        let (replica, preferences) =
            known.unwrap_or_else(|| (Ids.replica(), Preferences::first(&locale::locale())));
        library.open_or_first(preferences.open, now());

        let library = RwSignal::new(library);
        let open_id = Memo::new(move |_| library.with(|library| library.open));
        let plan = Memo::new(move |_| {
            library.with(|library| Some(Arc::new(library.open_plan()?.plan().clone())))
        });
        let serving = Memo::new(move |_| plan.with(|plan| Some(plan.as_ref()?.serving.clone())));
        let zone = Memo::new(move |_| {
            let serving = serving.get().unwrap_or_else(saturday_evening);
            Arc::new(zone::around(&serving))
        });
        let preferences = RwSignal::new(preferences);
        let clock_style = locale::clock_style();
        let formats = Memo::new(move |_| Formats {
            units: preferences.with(|preferences| preferences.units),
            clock: clock_style,
            zone: zone.get(),
        });
        let now = use_minute();
        let wrong =
            Memo::new(move |_| problems::of(plan.get().as_deref(), now.get(), formats.get().units));
        let save_state = RwSignal::from(storage.state());
        let forecast = RwSignal::new(Forecast::default());
        let journal = Memo::new(move |_| {
            library.with(|library| {
                let journal = library.open_plan().map(HeldPlan::journal);
                Arc::new(journal.cloned().unwrap_or_default())
            })
        });
        let safe = safe::follow(plan, journal, forecast, now);
        let trials = RwSignal::new(Trials::default());

        let store = Self {
            library,
            preferences,
            clock: StoredValue::new(Clock::new(replica)),
            storage: StoredValue::new_local(storage),
            forecast,
            trials,
            reckoner: StoredValue::new_local(reckoner(forecast, trials)),
            open_id,
            plan,
            zone,
            wrong,
            formats,
            now,
            safe,
            journal,
            not_kept_yet: RwSignal::new(BTreeSet::new()),
            save_state,
            told: RwSignal::new(None),
        };
        if first_start {
            store.keep_preferences();
        }
        // The first thing to see is a supper that can be explored and thrown away.
        if first_start
            && store
                .library
                .with_untracked(|library| library.plans.is_empty())
        {
            store.add_sample();
        }
        store.follow_other_tabs();
        store.keep_forecasting();
        store
    }

    /// Settings of this device.
    #[must_use]
    pub fn preferences(self) -> ReadSignal<Preferences> {
        self.preferences.read_only()
    }

    /// Every plan.
    #[must_use]
    pub fn library(self) -> ReadSignal<Library> {
        self.library.read_only()
    }

    /// What the model makes of the open plan.
    #[must_use]
    pub fn forecast(self) -> ReadSignal<Forecast> {
        self.forecast.read_only()
    }

    /// Changes settings and keeps them.
    pub fn set_preferences(self, change: impl FnOnce(&mut Preferences)) {
        self.preferences.update(change);
        self.keep_preferences();
    }

    fn keep_preferences(self) {
        let replica = self.clock.with_value(Clock::replica);
        let device = Device::new(replica, self.preferences.get_untracked());
        self.write(Key::Device, load::to_text(&device));
    }

    /// Changes the open plan. Where nothing is different afterwards, nothing is recorded.
    pub fn edit(self, edit: Edit, change: impl FnOnce(&mut Plan)) {
        self.with_open_plan(|held, clock, wall| held.edit(edit, change, clock, wall));
    }

    /// Takes the last change of the open plan back.
    pub fn undo(self) {
        self.with_open_plan(HeldPlan::undo);
    }

    /// Makes the change again that was taken back last.
    pub fn redo(self) {
        self.with_open_plan(HeldPlan::redo);
    }

    fn with_open_plan(self, change: impl FnOnce(&mut HeldPlan, &mut Clock, u64) -> bool) {
        if let Some(plan) = self.library.with_untracked(|library| library.open) {
            self.with_plan(plan, change);
        }
    }

    fn with_plan(self, plan: PlanId, change: impl FnOnce(&mut HeldPlan, &mut Clock, u64) -> bool) {
        let wall = wall_milliseconds();
        let mut record = None;
        let changed = self.library.try_maybe_update(|library| {
            let Some(held) = library.plans.get_mut(&plan) else {
                return (false, false);
            };
            let mut changed = false;
            self.clock
                .update_value(|clock| changed = change(held, clock, wall));
            if changed {
                record = Some(records::of_document(&held.hand_over()));
            }
            (changed, changed)
        });
        if changed == Some(true)
            && let Some((key, content)) = record
        {
            self.write(key, content);
        }
    }

    fn write(self, key: Key, content: String) {
        self.storage
            .with_value(|storage| storage.write(key, content));
    }

    /// Takes over what other tabs write, and writes back where the two had changed different things at once.
    fn follow_other_tabs(self) {
        let heard = move |key: Key, record| match (key, record) {
            (Key::Plan(id), Some(Ok(envelope))) => self.merge_from_elsewhere(id, &envelope),
            (Key::Journal(id, chunk), Some(Ok(envelope))) => {
                self.hear_journal(id, chunk, &envelope);
            }
            (Key::Index, Some(Ok(envelope))) => {
                if let Ok(index) = serde_json::from_str::<Index>(&envelope.content) {
                    self.library.update(|library| {
                        library.index.merge(&index);
                    });
                    self.leave_a_plan_taken_away();
                }
            }
            (Key::Device, Some(Ok(envelope))) => {
                if let Ok(device) = serde_json::from_str::<Device>(&envelope.content) {
                    self.preferences.update(|preferences| {
                        preferences.units = device.preferences.units;
                        preferences.light = device.preferences.light;
                    });
                }
            }
            _ => {}
        };
        self.storage
            .with_value(|storage| storage.on_change_elsewhere(heard));
    }
}

/// The next Saturday at six in the evening, on this device's clock: what a new plan starts from.
#[must_use]
pub fn saturday_evening() -> Serving {
    use chrono::{Datelike, Days, NaiveTime, Weekday};
    let name = zone::device_zone_name();
    let clock = zone::ZoneClock::new(&name);
    let now = now();
    let today = Zone::fixed(clock.offset_seconds(now)).local(now).date();
    let ahead =
        (Weekday::Sat.num_days_from_monday() + 7 - today.weekday().num_days_from_monday()) % 7;
    // A long cook cannot start today: a Saturday means the one in a week.
    let ahead = if ahead < 2 { ahead + 7 } else { ahead };
    let evening = NaiveTime::from_hms_opt(18, 0, 0).unwrap_or_default();
    let local = (today + Days::new(u64::from(ahead))).and_time(evening);
    let offset_seconds = match zone::meaning(local, |moment| clock.offset_seconds(moment)) {
        zone::Meaning::Once(offset) => offset,
        zone::Meaning::Never { after, .. } => after,
        zone::Meaning::Twice { first, .. } => first,
    };
    Serving {
        local,
        zone: name,
        offset_seconds,
    }
}
