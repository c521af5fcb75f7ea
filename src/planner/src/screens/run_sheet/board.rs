//! What the parts of this screen share: the sheet as it is laid out now, and how the person looks at it.

use super::frame::WIDE;
use super::lane::Hands;
use super::moving::hand::no_later;
use super::moving::pointer::Held;
use super::moving::room::Room;
use super::moving::session::{Mover, Moving};
use super::sheet::{Placed, Sheet, View};
use super::stay::Place;
use super::ticket::Standing;
use super::zoom::Zoom;
use crate::format::Formats;
use crate::store::Store;
use cook_model::plan::outlook::Outlook;
use cook_model::plan::{Plan, StepKey};
use cook_model::schedule::{BrokenPromise, Tie};
use cook_model::units::Moment;
use leptos::prelude::*;
use std::sync::Arc;

/// What was chosen with a tap or a key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Chosen {
    /// A step, with whatever is on the same ticket.
    Step(StepKey),
    /// A stretch in which nobody is up for a fire.
    Unattended {
        /// At which cooker.
        place: Place,
        /// Which of its stretches.
        nth: usize,
    },
}

/// A plan and what the model makes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Derived {
    /// The plan.
    pub plan: Arc<Plan>,
    /// The outlook.
    pub outlook: Arc<Outlook>,
}

/// The board, from anywhere below the screen.
#[must_use]
pub fn use_board() -> Board {
    expect_context()
}

/// A handle to all of it.
#[derive(Clone, Copy)]
pub struct Board {
    /// Where changes of the plan go.
    pub store: Store,
    /// The plan and its outlook as the worker made it. None before the first answer.
    pub worked_out: Memo<Option<Derived>>,
    /// The same with the last move in it, until the worker has answered.
    pub derived: Memo<Option<Derived>>,
    /// Moves.
    pub mover: Mover,
    /// The ticket that a pointer has.
    pub grab: Held,
    /// The room that neighbours make for a ticket on its way.
    pub room: Memo<Option<Room>>,
    /// How this person reads.
    pub formats: Memo<Formats>,
    /// The present minute.
    pub now: Memo<Moment>,
    /// The sheet. None before the first answer.
    pub sheet: Memo<Option<Arc<Sheet>>>,
    /// How much is shown.
    pub zoom: Memo<Zoom>,
    /// Whether time runs across.
    pub wide: Memo<bool>,
    /// The lane of hands that is open.
    pub open: RwSignal<Option<Hands>>,
    /// What is past is folded away.
    pub fold: RwSignal<bool>,
    /// What the Dock tells about: what was asked for, otherwise the next thing to do, otherwise the first.
    pub chosen: Memo<Option<Chosen>>,
    /// The places in the outlook's list of the steps on the chosen ticket; of the one step where it is on none.
    pub chosen_steps: Memo<Vec<usize>>,
    /// The ticket that the tab key comes to: the chosen one, or the first.
    pub tab_stop: Memo<Option<StepKey>>,
    asked_zoom: RwSignal<Option<Zoom>>,
    asked: RwSignal<Option<Chosen>>,
}

impl Board {
    /// A board over what lives outside; `screen` is its width and height in CSS pixels.
    #[must_use]
    pub fn new(
        store: Store,
        worked_out: Memo<Option<Derived>>,
        screen: ReadSignal<(f64, f64)>,
    ) -> Self {
        let (formats, now) = (store.formats, store.now);
        let mover = Mover::new();
        let derived = Memo::new(move |_| Some(mover.over(worked_out.get()?)));
        let (open, fold) = (RwSignal::new(None), RwSignal::new(true));
        let asked_zoom = RwSignal::new(None);
        let wide = Memo::new(move |_| screen.get().0 >= WIDE);
        let zoom = Memo::new(move |_| {
            let usual = if wide.get() {
                Zoom::Whole
            } else {
                Zoom::Detail
            };
            asked_zoom.get().unwrap_or(usual)
        });
        let sheet = Memo::new(move |_| {
            let (width, height) = screen.get();
            let view = View {
                width,
                height,
                zoom: zoom.get(),
                open: open.get(),
                fold: fold.get(),
            };
            let Derived { plan, outlook } = derived.get()?;
            let zone = formats.with(|formats| Arc::clone(&formats.zone));
            let laid = Sheet::lay_out(&plan, &outlook, &zone, now.get(), view);
            Some(Arc::new(laid))
        });
        let asked = RwSignal::new(None);
        let both = move || Some((derived.get()?, sheet.get()?));
        let chosen = Memo::new(move |_| {
            let (derived, sheet) = both()?;
            chosen_on(&sheet, &derived.outlook, asked.get())
        });
        let chosen_steps = Memo::new(move |_| match (both(), chosen.get()) {
            (Some((derived, sheet)), Some(Chosen::Step(key))) => {
                steps_with(&sheet, &derived.outlook, key)
            }
            _ => Vec::new(),
        });
        let tab_stop = Memo::new(move |_| {
            let sheet = sheet.get()?;
            let mut tickets = sheet.tickets.iter();
            let chosen = chosen_steps.with(|steps| {
                tickets.find(|placed| placed.ticket.steps.iter().any(|step| steps.contains(step)))
            });
            Some(chosen.or(sheet.tickets.first())?.ticket.key)
        });
        let room = Memo::new(move |_| mover.room(sheet.get()?.as_ref()));
        Self {
            store,
            worked_out,
            derived,
            mover,
            grab: StoredValue::new_local(None),
            room,
            formats,
            now,
            sheet,
            zoom,
            wide,
            open,
            fold,
            chosen,
            chosen_steps,
            tab_stop,
            asked_zoom,
            asked,
        }
    }

    /// Reads the sheet; what stands for nothing where there is none yet.
    pub fn with_sheet<T: Default>(self, read: impl FnOnce(&Sheet) -> T) -> T {
        self.sheet
            .with(|sheet| sheet.as_deref().map(read).unwrap_or_default())
    }

    /// Reads sheet, plan, outlook and formats together.
    pub fn with_all<T: Default>(
        self,
        read: impl FnOnce(&Sheet, &Plan, &Outlook, &Formats) -> T,
    ) -> T {
        let derived = self.derived.get();
        let formats = self.formats.get();
        self.with_sheet(|sheet| {
            derived
                .map(|derived| read(sheet, &derived.plan, &derived.outlook, &formats))
                .unwrap_or_default()
        })
    }

    /// Shows more or less at once.
    pub fn set_zoom(self, zoom: Zoom) {
        self.asked_zoom.set(Some(zoom));
    }

    /// Goes one step closer or wider than what is shown.
    pub fn set_zoom_from(self, step: impl Fn(f64) -> Option<Zoom>) {
        let shown = self.sheet.get_untracked().map(|sheet| sheet.shown());
        if let Some(zoom) = shown.and_then(step) {
            self.set_zoom(zoom);
        }
    }

    /// Chooses what the Dock tells about.
    pub fn choose(self, chosen: Chosen) {
        // What was refused elsewhere is settled by turning to something else.
        let elsewhere = |moving: &Moving| !moving.held && chosen != Chosen::Step(moving.key);
        let leave = self
            .mover
            .moving
            .with_untracked(|moving| moving.as_ref().is_some_and(elsewhere));
        if leave {
            self.mover.moving.set(None);
        }
        self.asked.set(Some(chosen));
    }

    /// The step that the Dock tells about.
    #[must_use]
    pub fn chosen_key(self) -> Option<StepKey> {
        match self.chosen.get()? {
            Chosen::Step(key) => Some(key),
            Chosen::Unattended { .. } => None,
        }
    }

    /// The promise that a step breaks where it stands, if it puts a dish on that could still go on in time.
    #[must_use]
    pub fn late_on(self, key: StepKey) -> Option<BrokenPromise> {
        let derived = self.derived.get()?;
        let lattice = &derived.outlook.lattice;
        let spans = lattice
            .dishes
            .iter()
            .find(|spans| lattice.tasks[spans.on].key == key)?;
        let task = &lattice.tasks[spans.on];
        let odds = spans.odds(task.begins, lattice.serving);
        let late = task.begins > spans.latest_on && odds.kept < spans.wanted;
        let can_move = task.tie == Tie::Free && spans.latest_on >= self.now.get();
        (late && can_move).then_some(BrokenPromise {
            dish: spans.dish,
            odds,
            latest: no_later(spans.latest_on),
        })
    }

    /// How many hours a ticket is moved along the axis: for a neighbour on its way, or to where it was refused.
    #[must_use]
    pub fn shift(self, key: StepKey) -> f64 {
        let refused = self.mover.moving.with(|moving| {
            let moving = moving.as_ref()?;
            (moving.key == key).then_some(moving.held)
        });
        self.room.with(|room| match (room, refused) {
            (None, _) | (_, Some(true)) => 0.0,
            (Some(room), Some(false)) => self.with_sheet(|sheet| {
                let mut tickets = sheet.tickets.iter();
                let placed = tickets.find(|placed| placed.ticket.key == key);
                placed.map_or(0.0, |placed| room.slot - placed.slot)
            }),
            (Some(room), None) => {
                let mut shifts = room.shifts.iter();
                let shift = shifts.find(|(moved, _)| *moved == key);
                shift.map_or(0.0, |(_, by)| *by)
            }
        })
    }

    /// Whether a ticket is the chosen one.
    #[must_use]
    pub fn is_chosen(self, placed: &Placed) -> bool {
        self.chosen_steps.with(|steps| {
            let mut own = placed.ticket.steps.iter();
            own.any(|index| steps.contains(index))
        })
    }
}

fn chosen_on(sheet: &Sheet, outlook: &Outlook, asked: Option<Chosen>) -> Option<Chosen> {
    let there = match asked {
        Some(Chosen::Step(key)) => outlook.steps.iter().any(|step| step.key == key),
        Some(Chosen::Unattended { place, nth }) => sheet
            .cookers
            .iter()
            .any(|lane| lane.place == place && nth < lane.unattended.len()),
        None => false,
    };
    let first = |wanted: Standing| {
        let mut tickets = sheet.tickets.iter();
        tickets.find(move |placed| placed.ticket.standing == wanted)
    };
    asked.filter(|_| there).or_else(|| {
        let placed = first(Standing::Next).or_else(|| first(Standing::Ahead));
        placed.map(|placed| Chosen::Step(placed.ticket.key))
    })
}

fn steps_with(sheet: &Sheet, outlook: &Outlook, key: StepKey) -> Vec<usize> {
    let mut steps = outlook.steps.iter();
    let Some(index) = steps.position(|step| step.key == key) else {
        return Vec::new();
    };
    let mut tickets = sheet.tickets.iter();
    match tickets.find(|placed| placed.ticket.steps.contains(&index)) {
        Some(placed) => placed.ticket.steps.clone(),
        None => vec![index],
    }
}
