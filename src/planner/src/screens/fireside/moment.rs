//! The key that follows the moment, and what it and the other keys write.

use super::yard::{Day, DoNow};
use cook_model::handover::KnownEvent;
use cook_model::handover::identity::{DishId, PieceId};
use cook_model::live::Stage;
use cook_model::plan::outlook::{Step, StepKind};
use cook_model::plan::{Cover, HoldPlace, Wrap};
use cook_model::units::Moment;

/// What the dish wants next, by where it is.
#[must_use]
pub fn do_now(day: &Day, dish: DishId) -> DoNow {
    let there = day.plan.dishes.get(&dish);
    let (stage, _) = day.progress().stage(dish);
    let boxed = there.is_none_or(|dish| !matches!(dish.hold, Some(HoldPlace::Counter)));
    match stage {
        Stage::NotOn => DoNow::On,
        Stage::On if step_of(day, dish, StepKind::Wrap).is_some() => DoNow::Wrap,
        Stage::On | Stage::Wrapped => DoNow::Off,
        Stage::Resting if boxed && step_of(day, dish, StepKind::Hold).is_some() => DoNow::Hold,
        Stage::Resting | Stage::Held => DoNow::Slice,
        Stage::Sliced => DoNow::Chill,
    }
}

/// The step of the run sheet that it belongs to, while it is open.
#[must_use]
pub fn step_of(day: &Day, dish: DishId, kind: StepKind) -> Option<&Step> {
    let progress = day.progress();
    let outlook = day.outlook.as_ref()?;
    let mut steps = outlook.steps.iter();
    steps.find(|step| step.kind == kind && step.dish == Some(dish) && progress.done(step).is_none())
}

impl DoNow {
    /// The step that it is.
    #[must_use]
    pub const fn kind(self) -> StepKind {
        match self {
            Self::On => StepKind::On,
            Self::Wrap => StepKind::Wrap,
            Self::Off => StepKind::Off,
            Self::Hold => StepKind::Hold,
            Self::Slice => StepKind::Slice,
            Self::Chill => StepKind::Chill,
        }
    }
}

/// What a cover the plan has in mind; paper where it says nothing.
#[must_use]
pub fn planned_cover(day: &Day, dish: DishId) -> Cover {
    match day.plan.dishes.get(&dish).and_then(|dish| dish.wrap) {
        Some(Wrap::Foil { .. }) => Cover::Foil,
        Some(Wrap::Paper { .. } | Wrap::Bare) | None => Cover::Paper,
    }
}

/// Every piece wrapped.
#[must_use]
pub fn wrapped(pieces: &[PieceId], cover: Cover) -> Vec<KnownEvent> {
    let each = pieces.iter();
    each.map(|piece| KnownEvent::Wrapped {
        piece: *piece,
        cover,
    })
    .collect()
}

/// What ticking a step off writes. A probe for tenderness has to be told: none.
#[must_use]
pub fn events_of(day: &Day, step: &Step, now: Moment) -> Option<Vec<KnownEvent>> {
    let said = KnownEvent::Done { step: step.key };
    let Some(dish) = step.dish else {
        return Some(match (step.kind, step.cooker) {
            (StepKind::Feed, Some(cooker)) => vec![KnownEvent::Fed {
                cooker,
                fuel: None,
                kind: None,
            }],
            (StepKind::Serve, _) => served(day, step, now),
            _ => vec![said],
        });
    };
    let pieces = day.pieces(dish);
    Some(match step.kind {
        StepKind::On => vec![KnownEvent::On { dish }],
        StepKind::ProbeIn => {
            let pieces = pieces.into_iter();
            pieces.map(|piece| KnownEvent::ProbeIn { piece }).collect()
        }
        StepKind::Turn => vec![KnownEvent::Turned { dish }],
        StepKind::Spray => vec![KnownEvent::Sprayed { dish }],
        StepKind::Wrap => wrapped(&pieces, planned_cover(day, dish)),
        StepKind::Off => vec![KnownEvent::Off { dish }],
        StepKind::Hold => vec![KnownEvent::Boxed { dish }],
        StepKind::Slice => vec![KnownEvent::Sliced { dish }],
        StepKind::Chill => chilled(dish),
        StepKind::Probe => return None,
        _ => vec![said],
    })
}

/// What is left of a dish, put away.
#[must_use]
pub fn chilled(dish: DishId) -> Vec<KnownEvent> {
    vec![KnownEvent::Chilled {
        dish,
        depth: None,
        ice: false,
    }]
}

/// The table is served: every dish that is not there yet.
fn served(day: &Day, step: &Step, now: Moment) -> Vec<KnownEvent> {
    let progress = day.progress();
    let ready = |dish: &DishId| {
        let (stage, since) = progress.stage(*dish);
        stage > Stage::NotOn && stage < Stage::Sliced && since.is_none_or(|since| since <= now)
    };
    let dishes = day.dishes().into_iter().filter(ready);
    let mut events: Vec<_> = dishes.map(|dish| KnownEvent::Served { dish }).collect();
    events.push(KnownEvent::Done { step: step.key });
    events
}

#[cfg(test)]
mod tests {
    use super::super::super::run_sheet::sample::{Sample, at};
    use super::*;
    use cook_model::handover::identity::{EntryId, ReplicaId};
    use cook_model::handover::{Entry, Event, Journal, ReplicaText};
    use std::sync::Arc;

    fn day(sample: &Sample, events: &[(&str, KnownEvent)]) -> Day {
        let entries = events.iter().enumerate().map(|(number, (time, event))| {
            let entry = Entry {
                at: at(time),
                logged: at(time),
                replica: ReplicaText(ReplicaId::new(1)),
                by: None,
                event: Event::Known(event.clone()),
            };
            (EntryId::new(number as u64, 0), entry)
        });
        Day {
            plan: Arc::new(sample.plan.clone()),
            journal: Arc::new(Journal(entries.collect())),
            outlook: Some(Arc::new(sample.outlook.clone())),
        }
    }

    #[test]
    fn the_key_follows_the_dish_from_fire_to_fridge() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let dish = sample.dish("Pork", None, "2026-09-12T02:00:00");
        for (kind, time) in [
            (StepKind::Wrap, "2026-09-12T08:00:00"),
            (StepKind::Hold, "2026-09-12T14:15:00"),
        ] {
            sample.step(kind, time, 10.0).dish = Some(dish);
        }
        let piece = PieceId::new(7, 7);
        let one =
            serde_json::json!({"count": 1, "mass": 3.8, "weighed": "bought", "intact": "yes"});
        let one = serde_json::from_value(one).expect("a piece");
        let there = sample.plan.dishes.get_mut(&dish).expect("the dish");
        there.pieces.insert(piece, one);
        let events = [
            ("2026-09-12T02:00:00", KnownEvent::On { dish }, DoNow::On),
            (
                "2026-09-12T08:00:00",
                KnownEvent::Wrapped {
                    piece,
                    cover: Cover::Paper,
                },
                DoNow::Wrap,
            ),
            ("2026-09-12T14:00:00", KnownEvent::Off { dish }, DoNow::Off),
            (
                "2026-09-12T14:15:00",
                KnownEvent::Boxed { dish },
                DoNow::Hold,
            ),
            (
                "2026-09-12T17:30:00",
                KnownEvent::Sliced { dish },
                DoNow::Slice,
            ),
        ];
        let mut so_far = Vec::new();
        for (time, event, wanted) in events {
            assert_eq!(do_now(&day(&sample, &so_far), dish), wanted);
            so_far.push((time, event));
        }
        assert_eq!(do_now(&day(&sample, &so_far), dish), DoNow::Chill);
    }

    #[test]
    fn serving_brings_what_is_under_way_to_the_table() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let pork = sample.dish("Pork", None, "2026-09-12T02:00:00");
        sample.dish("Lamb", None, "2026-09-12T08:00:00");
        let step = sample
            .step(StepKind::Serve, "2026-09-12T18:00:00", 0.0)
            .clone();
        let on = [("2026-09-12T02:00:00", KnownEvent::On { dish: pork })];
        let day = day(&sample, &on);
        let events = events_of(&day, &step, at("2026-09-12T18:00:00")).expect("events");
        assert_eq!(events[0], KnownEvent::Served { dish: pork });
        assert_eq!(events.len(), 2);
    }
}
