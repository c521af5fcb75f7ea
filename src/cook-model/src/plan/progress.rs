//! How far the day has come, by the journal: which steps are done, and where each dish is.

use super::Plan;
use super::outlook::{Step, StepKind};
use crate::handover::identity::{CookerId, DishId, PieceId};
use crate::handover::{Event, Journal, KnownEvent};
use crate::live::{Stage, stage_of};
use crate::provisions::fuel::feeding;
use crate::units::{Moment, TimeSpan};

/// A round that comes by the clock is done by what was logged so long before its time or later. Set by hand: less than
/// half of the usual distance between two rounds of spraying or feeding.
const EARLY: TimeSpan = TimeSpan::from_minutes(20.0);
/// The same for what is looked at when its window begins. Set by hand.
const BEFORE_WINDOW: TimeSpan = TimeSpan::from_minutes(45.0);

/// What was logged, in order of the times told.
#[derive(Clone, Debug)]
pub struct Progress<'a> {
    plan: &'a Plan,
    journal: &'a Journal,
    told: Vec<(Moment, &'a KnownEvent)>,
}

impl<'a> Progress<'a> {
    /// What stands in a journal.
    #[must_use]
    pub fn of(plan: &'a Plan, journal: &'a Journal) -> Self {
        let mut told: Vec<_> = journal
            .standing()
            .filter_map(|(_, entry)| match &entry.event {
                Event::Known(event) => Some((entry.at, event)),
                Event::Other(_) => None,
            })
            .collect();
        told.sort_by_key(|(at, _)| *at);
        Self {
            plan,
            journal,
            told,
        }
    }

    /// The last time something was told for which this holds.
    pub fn last(&self, is: impl Fn(&KnownEvent) -> bool) -> Option<Moment> {
        let mut back = self.told.iter().rev();
        back.find(|(_, event)| is(event)).map(|(at, _)| *at)
    }

    fn first_since(&self, since: Moment, is: impl Fn(&KnownEvent) -> bool) -> Option<Moment> {
        let mut told = self.told.iter();
        told.find(|(at, event)| *at >= since && is(event))
            .map(|(at, _)| *at)
    }

    /// Since when a dish is on: the last time it was put on.
    #[must_use]
    pub fn on(&self, dish: DishId) -> Option<Moment> {
        self.last(|event| matches!(event, KnownEvent::On { dish: it } if *it == dish))
    }

    /// Where a dish is, and since when.
    #[must_use]
    pub fn stage(&self, dish: DishId) -> (Stage, Option<Moment>) {
        let there = self.plan.dishes.get(&dish);
        let told = there.and_then(|there| stage_of(self.journal, dish, there));
        told.map_or((Stage::NotOn, None), |(stage, since)| (stage, Some(since)))
    }

    /// When the fire of a cooker was last fed.
    #[must_use]
    pub fn fed(&self, cooker: CookerId) -> Option<Moment> {
        self.last(|event| matches!(event, KnownEvent::Fed { cooker: it, .. } if *it == cooker))
    }

    /// Whether a piece belongs to a dish.
    fn belongs(&self, piece: PieceId, dish: DishId) -> bool {
        let dish = self.plan.dishes.get(&dish);
        dish.is_some_and(|dish| dish.pieces.contains_key(&piece))
    }

    /// When a step was done, or was passed over by a later one. None while it is still to be done.
    #[must_use]
    pub fn done(&self, step: &Step) -> Option<Moment> {
        self.said_done(step)
            .or_else(|| self.seen_done(step))
            .or_else(|| self.passed_over(step))
    }

    /// Somebody said so of this very step.
    fn said_done(&self, step: &Step) -> Option<Moment> {
        self.last(|event| matches!(event, KnownEvent::Done { step: key } if *key == step.key))
    }

    /// What was logged is what the step wants.
    fn seen_done(&self, step: &Step) -> Option<Moment> {
        let Some(dish) = step.dish else {
            return self.seen_at_cooker(step);
        };
        let since = self.on(dish).unwrap_or(step.when.from() - BEFORE_WINDOW);
        let round = (step.when.likely() - EARLY).max(since);
        let looked = (step.when.from() - BEFORE_WINDOW).max(since);
        match step.kind {
            StepKind::On => self.on(dish),
            StepKind::ProbeIn => self.first_since(since, |event| match event {
                KnownEvent::ProbeIn { piece } | KnownEvent::Core { piece, .. } => {
                    self.belongs(*piece, dish)
                }
                _ => false,
            }),
            StepKind::Turn => self.first_since(
                since,
                |event| matches!(event, KnownEvent::Turned { dish: it } if *it == dish),
            ),
            StepKind::Spray => self.first_since(
                round,
                |event| matches!(event, KnownEvent::Sprayed { dish: it } if *it == dish),
            ),
            StepKind::Wrap => self.wrapped(dish, since),
            StepKind::Probe => self.first_since(
                looked,
                |event| matches!(event, KnownEvent::Felt { piece, .. } if self.belongs(*piece, dish)),
            ),
            _ => None,
        }
    }

    fn seen_at_cooker(&self, step: &Step) -> Option<Moment> {
        let cooker = step.cooker?;
        match step.kind {
            StepKind::Feed => {
                let kind = self.plan.cookers.get(&cooker)?.kind;
                let early = feeding(kind).map_or(EARLY, |feeding| feeding.every / 2.0);
                self.first_since(
                    step.when.likely() - early,
                    |event| matches!(event, KnownEvent::Fed { cooker: it, .. } if *it == cooker),
                )
            }
            StepKind::PitChange => self.first_since(
                step.when.from() - BEFORE_WINDOW,
                |event| matches!(event, KnownEvent::PitSet { cooker: it, .. } if *it == cooker),
            ),
            StepKind::Light | StepKind::SteadyFire => {
                self.first_since(step.when.from() - BEFORE_WINDOW, |event| match event {
                    KnownEvent::On { dish } => {
                        let dish = self.plan.dishes.get(dish);
                        dish.is_some_and(|dish| dish.cooker == Some(cooker))
                    }
                    KnownEvent::Pit { cooker: it, .. } | KnownEvent::Fed { cooker: it, .. } => {
                        *it == cooker
                    }
                    _ => false,
                })
            }
            _ => None,
        }
    }

    /// When the last piece of a dish was wrapped. None while one is bare.
    #[must_use]
    pub fn wrapped(&self, dish: DishId, since: Moment) -> Option<Moment> {
        let pieces = self.plan.dishes.get(&dish)?.pieces.keys();
        let each = pieces.map(|piece| {
            self.first_since(
                since,
                |event| matches!(event, KnownEvent::Wrapped { piece: it, .. } if it == piece),
            )
        });
        let all: Option<Vec<Moment>> = each.collect();
        all?.into_iter().max()
    }

    /// The dish has gone on to something that comes after this step.
    fn passed_over(&self, step: &Step) -> Option<Moment> {
        let dish = step.dish?;
        let (stage, since) = self.stage(dish);
        let wrapped = || self.wrapped(dish, self.on(dish)?);
        match step.kind {
            StepKind::Buy
            | StepKind::Thaw
            | StepKind::Trim
            | StepKind::Salt
            | StepKind::Rub
            | StepKind::On => since.filter(|_| stage >= Stage::On),
            StepKind::Turn | StepKind::Spray if stage <= Stage::Wrapped => wrapped(),
            StepKind::ProbeIn
            | StepKind::Turn
            | StepKind::Spray
            | StepKind::Wrap
            | StepKind::Probe
            | StepKind::Off
            | StepKind::Make => since.filter(|_| stage >= Stage::Resting),
            StepKind::Hold => since.filter(|_| stage >= Stage::Held),
            StepKind::Slice => since.filter(|_| stage >= Stage::Sliced),
            StepKind::Chill => self
                .last(|event| matches!(event, KnownEvent::Chilled { dish: it, .. } if *it == dish)),
            StepKind::Light
            | StepKind::SteadyFire
            | StepKind::Feed
            | StepKind::PitChange
            | StepKind::Serve
            | StepKind::Own => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handover::Entry;
    use crate::handover::identity::EntryId;
    use crate::plan::outlook::Window;
    use crate::plan::sample::{Sample, at};
    use crate::plan::{CookerKind, Cover, StepKey};
    use crate::units::Temperature;

    struct Yard {
        plan: Plan,
        dish: DishId,
        piece: PieceId,
        cooker: CookerId,
        journal: Journal,
    }

    impl Yard {
        fn new() -> Self {
            let mut sample = Sample::new();
            let cooker = sample.cooker(CookerKind::Offset);
            let dish = sample.dish("pork-shoulder-butt", 3.8, cooker);
            let pieces = &sample.plan.dishes[&dish].pieces;
            let piece = *pieces.keys().next().expect("a piece");
            Self {
                plan: sample.plan,
                dish,
                piece,
                cooker,
                journal: Journal::default(),
            }
        }

        fn log(&mut self, time: &str, event: KnownEvent) -> EntryId {
            let at = at(time);
            let id = EntryId::new(self.journal.0.len() as u64, 0);
            let entry = Entry::told(at, Event::Known(event));
            self.journal.0.insert(id, entry);
            id
        }

        fn done(&self, kind: StepKind, time: &str) -> Option<Moment> {
            let at_cooker = matches!(kind, StepKind::Feed | StepKind::Light);
            let step = Step {
                round: 1,
                dish: (!at_cooker).then_some(self.dish),
                cooker: at_cooker.then_some(self.cooker),
                key: StepKey::dish(self.dish, kind),
                ..Step::new(kind, Window::at(at(time)), TimeSpan::from_minutes(5.0))
            };
            Progress::of(&self.plan, &self.journal).done(&step)
        }
    }

    #[test]
    fn what_was_logged_is_done_and_what_lies_before_it_too() {
        let mut yard = Yard::new();
        assert_eq!(yard.done(StepKind::On, "2026-09-12T02:00:00"), None);
        let dish = yard.dish;
        yard.log("2026-09-12T02:10:00", KnownEvent::On { dish });
        let on = Some(at("2026-09-12T02:10:00"));
        assert_eq!(yard.done(StepKind::On, "2026-09-12T02:00:00"), on);
        assert_eq!(yard.done(StepKind::Rub, "2026-09-12T01:00:00"), on);
        assert_eq!(yard.done(StepKind::Light, "2026-09-12T01:00:00"), on);
        assert_eq!(yard.done(StepKind::Off, "2026-09-12T14:00:00"), None);
        yard.log("2026-09-12T14:00:00", KnownEvent::Off { dish });
        let off = Some(at("2026-09-12T14:00:00"));
        assert_eq!(yard.done(StepKind::Off, "2026-09-12T13:00:00"), off);
        assert_eq!(yard.done(StepKind::Wrap, "2026-09-12T09:00:00"), off);
        assert_eq!(yard.done(StepKind::Hold, "2026-09-12T14:15:00"), None);
    }

    #[test]
    fn a_round_is_done_by_an_entry_of_its_own_time_and_not_of_the_round_before() {
        let mut yard = Yard::new();
        let (dish, cooker) = (yard.dish, yard.cooker);
        yard.log("2026-09-12T02:00:00", KnownEvent::On { dish });
        yard.log("2026-09-12T05:02:00", KnownEvent::Sprayed { dish });
        let fed = KnownEvent::Fed {
            cooker,
            fuel: None,
            kind: None,
        };
        yard.log("2026-09-12T05:00:00", fed);
        assert!(yard.done(StepKind::Spray, "2026-09-12T05:00:00").is_some());
        assert!(yard.done(StepKind::Spray, "2026-09-12T05:45:00").is_none());
        assert!(yard.done(StepKind::Feed, "2026-09-12T05:05:00").is_some());
        assert!(yard.done(StepKind::Feed, "2026-09-12T05:50:00").is_none());
    }

    #[test]
    fn wrapped_meat_is_not_sprayed_again_and_a_reading_proves_the_probe() {
        let mut yard = Yard::new();
        let (dish, piece) = (yard.dish, yard.piece);
        yard.log("2026-09-12T02:00:00", KnownEvent::On { dish });
        let core = KnownEvent::Core {
            piece,
            reading: Temperature::from_celsius(54.0),
            place: crate::handover::ProbePlace::NotSaid,
            doubtful: false,
        };
        yard.log("2026-09-12T04:00:00", core);
        assert!(
            yard.done(StepKind::ProbeIn, "2026-09-12T03:00:00")
                .is_some()
        );
        assert!(yard.done(StepKind::Spray, "2026-09-12T08:00:00").is_none());
        let cover = Cover::Paper;
        let wrap = yard.log("2026-09-12T07:00:00", KnownEvent::Wrapped { piece, cover });
        assert!(yard.done(StepKind::Spray, "2026-09-12T08:00:00").is_some());
        yard.log("2026-09-12T07:01:00", KnownEvent::Struck { entry: wrap });
        assert!(yard.done(StepKind::Spray, "2026-09-12T08:00:00").is_none());
    }

    #[test]
    fn what_has_no_event_of_its_own_is_done_when_somebody_says_so() {
        let mut yard = Yard::new();
        let dish = yard.dish;
        let done = KnownEvent::Done {
            step: StepKey::dish(dish, StepKind::Salt),
        };
        yard.log("2026-09-11T20:00:00", done);
        assert!(yard.done(StepKind::Salt, "2026-09-11T19:00:00").is_some());
        assert!(yard.done(StepKind::Rub, "2026-09-11T19:00:00").is_none());
    }

    #[test]
    fn a_dish_goes_through_its_stages() {
        let mut yard = Yard::new();
        let dish = yard.dish;
        let stage = |yard: &Yard| Progress::of(&yard.plan, &yard.journal).stage(dish).0;
        assert_eq!(stage(&yard), Stage::NotOn);
        for (time, event, wanted) in [
            ("2026-09-12T02:00:00", KnownEvent::On { dish }, Stage::On),
            (
                "2026-09-12T14:00:00",
                KnownEvent::Off { dish },
                Stage::Resting,
            ),
            (
                "2026-09-12T14:15:00",
                KnownEvent::Boxed { dish },
                Stage::Held,
            ),
            (
                "2026-09-12T17:30:00",
                KnownEvent::Sliced { dish },
                Stage::Sliced,
            ),
        ] {
            yard.log(time, event);
            assert_eq!(stage(&yard), wanted);
        }
    }
}
