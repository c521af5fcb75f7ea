//! What was logged of one piece, on its own clock: times since it went on.

use crate::handover::identity::{CookerId, DishId, EntryId, PieceId};
use crate::handover::{Event, Gauge, Journal, KnownEvent, ProbeFeel, ProbePlace};
use crate::live::OVEN_COOKS;
use crate::physics::{Cover, Place};
use crate::plan;
use crate::units::{Moment, Temperature, TimeSpan};

/// A core reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoreReading {
    /// The entry that tells it.
    pub entry: EntryId,
    /// When.
    pub after: TimeSpan,
    /// What the probe showed.
    pub reading: Temperature,
    /// Where it sat.
    pub place: ProbePlace,
    /// It may have touched bone or air.
    pub doubtful: bool,
}

/// A probe by hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Felt {
    /// The entry that tells it.
    pub entry: EntryId,
    /// When.
    pub after: TimeSpan,
    /// How it went in.
    pub feel: ProbeFeel,
}

/// A reading of the air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PitReading {
    /// The entry that tells it.
    pub entry: EntryId,
    /// When.
    pub after: TimeSpan,
    /// What the gauge showed.
    pub reading: Temperature,
    /// With which gauge.
    pub gauge: Gauge,
}

/// A stretch without heat: the fire out, the power gone, the lid off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unheated {
    /// Since when.
    pub from: TimeSpan,
    /// Until when. None: still so.
    pub to: Option<TimeSpan>,
}

/// A change of the air that it lies in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AirChange {
    /// Its cooker was set to this.
    Set(Temperature),
    /// It was moved into an oven that cooks, at this.
    Oven(Temperature),
    /// It went back on its cooker, run as before.
    Back,
}

/// What was logged of one piece. Everything lies between the moment it went on and now, in order of time.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PieceLog {
    /// The present, since it went on.
    pub now: TimeSpan,
    /// Core readings.
    pub cores: Vec<CoreReading>,
    /// Probes by hand.
    pub feels: Vec<Felt>,
    /// Readings of the air it lies in; doubtful ones left out.
    pub pit: Vec<PitReading>,
    /// Covers put on; bare is a cover taken off.
    pub covers: Vec<(TimeSpan, Cover)>,
    /// Changes of the air.
    pub air: Vec<(TimeSpan, AirChange)>,
    /// The lid was opened and shut again.
    pub lid: Vec<TimeSpan>,
    /// Stretches without heat.
    pub unheated: Vec<Unheated>,
    /// It came off.
    pub off: Option<TimeSpan>,
    /// Where it went after it came off, and when.
    pub places: Vec<(TimeSpan, Place)>,
    /// The last entry that tells of something done, not read.
    pub done: Option<(EntryId, TimeSpan)>,
}

/// A lid that stood open for no longer than this was opened and shut again.
const SHUT_AGAIN: TimeSpan = TimeSpan::from_minutes(3.0);

impl PieceLog {
    /// What a journal says of a piece of a dish that is on a cooker. None before the dish went on.
    #[must_use]
    pub fn of(
        journal: &Journal,
        id: DishId,
        piece: PieceId,
        cooker: CookerId,
        now: Moment,
    ) -> Option<Self> {
        let mut events: Vec<_> = journal
            .standing()
            .filter_map(|(entry, told)| match &told.event {
                Event::Known(event) if told.at <= now => Some((told.at, entry, event)),
                _ => None,
            })
            .collect();
        events.sort_by_key(|(at, entry, _)| (*at, *entry));
        let went_on = |(_, _, event): &&(Moment, EntryId, &KnownEvent)| matches!(event, KnownEvent::On { dish } if *dish == id);
        let (on, ..) = *events.iter().rev().find(went_on)?;
        let mut log = Self {
            now: now - on,
            ..Self::default()
        };
        for (at, entry, event) in events.into_iter().filter(|(at, ..)| *at >= on) {
            log.take((entry, at - on), event, on, |event| match event {
                Owned::Dish(other) => other == id,
                Owned::Piece(other) => other == piece,
                Owned::Cooker(other) => other == cooker,
            });
        }
        Some(log)
    }

    /// Whether it lies in the air of its cooker.
    fn on_cooker(&self) -> bool {
        self.off.is_none() && !matches!(self.air.last(), Some((_, AirChange::Oven(_))))
    }

    fn take(
        &mut self,
        (entry, after): (EntryId, TimeSpan),
        event: &KnownEvent,
        on: Moment,
        mine: impl Fn(Owned) -> bool,
    ) {
        match event {
            KnownEvent::Core {
                piece,
                reading,
                place,
                doubtful,
            } if mine(Owned::Piece(*piece)) => self.cores.push(CoreReading {
                entry,
                after,
                reading: *reading,
                place: *place,
                doubtful: *doubtful,
            }),
            KnownEvent::Felt { piece, feel } if mine(Owned::Piece(*piece)) => {
                self.feels.push(Felt {
                    entry,
                    after,
                    feel: *feel,
                });
            }
            KnownEvent::Pit {
                cooker,
                reading,
                gauge,
                doubtful: false,
            } if mine(Owned::Cooker(*cooker)) && self.on_cooker() => self.pit.push(PitReading {
                entry,
                after,
                reading: *reading,
                gauge: *gauge,
            }),
            KnownEvent::PitSet { cooker, set }
                if mine(Owned::Cooker(*cooker)) && self.on_cooker() =>
            {
                self.air.push((after, AirChange::Set(*set)));
                self.done = Some((entry, after));
            }
            KnownEvent::LidOpen { cooker, until } if mine(Owned::Cooker(*cooker)) => {
                match until.map(|until| until - on) {
                    Some(until) if until - after > SHUT_AGAIN => self.unheated.push(Unheated {
                        from: after,
                        to: Some(until),
                    }),
                    _ => self.lid.push(after),
                }
                self.done = Some((entry, after));
            }
            KnownEvent::FireOut { cooker, .. } if mine(Owned::Cooker(*cooker)) => {
                self.unheated.push(Unheated {
                    from: after,
                    to: None,
                });
                self.done = Some((entry, after));
            }
            KnownEvent::FireBack { cooker } if mine(Owned::Cooker(*cooker)) => {
                if let Some(last) = self.unheated.last_mut().filter(|last| last.to.is_none()) {
                    last.to = Some(after);
                }
                self.done = Some((entry, after));
            }
            KnownEvent::Wrapped { piece, cover } if mine(Owned::Piece(*piece)) => {
                self.covers.push((after, cover_of(*cover)));
                self.done = Some((entry, after));
            }
            KnownEvent::Unwrapped { piece } if mine(Owned::Piece(*piece)) => {
                self.covers.push((after, Cover::Bare));
                self.done = Some((entry, after));
            }
            _ => self.moved((entry, after), event, mine),
        }
    }

    /// Where the dish is.
    fn moved(
        &mut self,
        (entry, after): (EntryId, TimeSpan),
        event: &KnownEvent,
        mine: impl Fn(Owned) -> bool,
    ) {
        let of = match event {
            KnownEvent::Off { dish }
            | KnownEvent::Vented { dish }
            | KnownEvent::Boxed { dish }
            | KnownEvent::Unboxed { dish }
            | KnownEvent::MovedToOven { dish, .. }
            | KnownEvent::MovedBack { dish }
            | KnownEvent::Sliced { dish }
            | KnownEvent::Served { dish } => *dish,
            _ => return,
        };
        if !mine(Owned::Dish(of)) {
            return;
        }
        self.done = Some((entry, after));
        let place = match event {
            KnownEvent::MovedBack { .. } => {
                self.off = None;
                self.places.clear();
                self.air.push((after, AirChange::Back));
                return;
            }
            KnownEvent::MovedToOven { air, .. } if *air >= OVEN_COOKS => {
                self.off = None;
                self.places.clear();
                self.air.push((after, AirChange::Oven(*air)));
                return;
            }
            KnownEvent::MovedToOven { air, .. } => Place::WarmOven(*air),
            KnownEvent::Boxed { .. } => Place::RestBox,
            _ => Place::Counter,
        };
        self.off.get_or_insert(after);
        self.places.push((after, place));
    }

    /// The piece was found tender by hand: from then on it is ready, whatever the model says.
    #[must_use]
    pub fn found_tender(&self) -> Option<TimeSpan> {
        let soft = |felt: &&Felt| felt.feel == ProbeFeel::SoftButter;
        self.feels.iter().find(soft).map(|felt| felt.after)
    }
}

/// Whose an event is.
enum Owned {
    Dish(DishId),
    Piece(PieceId),
    Cooker(CookerId),
}

const fn cover_of(cover: plan::Cover) -> Cover {
    match cover {
        plan::Cover::Paper => Cover::Paper,
        plan::Cover::Foil => Cover::Foil,
    }
}
