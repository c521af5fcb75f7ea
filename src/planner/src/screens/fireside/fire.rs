//! The fire's standing line: when it wants feeding next, and whether that is overdue.

use cook_model::handover::identity::CookerId;
use cook_model::live::Stage;
use cook_model::plan::outlook::{Outlook, StepKind};
use cook_model::plan::{Plan, Progress};
use cook_model::provisions::fuel::feeding;
use cook_model::units::{Mass, Moment};

/// A fire that is fed by hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FireLine {
    /// Of which cooker.
    pub cooker: CookerId,
    /// Something lies on it.
    pub burning: bool,
    /// Fed last.
    pub fed: Option<Moment>,
    /// The next round may come from here.
    pub from: Moment,
    /// Usual.
    pub likely: Moment,
    /// It wants feeding by then.
    pub to: Moment,
    /// One piece of fuel, where it is fed by the piece.
    pub piece: Option<Mass>,
}

impl FireLine {
    /// Whether it is overdue: it burns, and its latest time is past.
    #[must_use]
    pub fn is_over(&self, now: Moment) -> bool {
        self.burning && now > self.to
    }
}

/// The fires that are to be fed, the most urgent first.
#[must_use]
pub fn fires(plan: &Plan, outlook: &Outlook, progress: &Progress<'_>) -> Vec<FireLine> {
    let lines = plan.cookers.iter().filter_map(|(id, cooker)| {
        let habit = feeding(cooker.kind)?;
        let stage = |dish| progress.stage(dish).0;
        let ours = plan
            .dishes
            .iter()
            .filter(|(_, dish)| dish.cooker == Some(*id));
        let stages: Vec<Stage> = ours.map(|(dish, _)| stage(*dish)).collect();
        let burning = stages.contains(&Stage::On) || stages.contains(&Stage::Wrapped);
        let rounds = || {
            let steps = outlook.steps.iter();
            steps.filter(|step| step.kind == StepKind::Feed && step.cooker == Some(*id))
        };
        // Nothing on it and nothing to come: the fire may go out.
        let ends = rounds().map(|step| step.when.likely()).max()?;
        if !burning && !stages.contains(&Stage::NotOn) {
            return None;
        }
        let fed = progress.fed(*id);
        let likely = match fed {
            Some(fed) => fed + habit.every,
            None => {
                let mut open = rounds().filter(|step| progress.done(step).is_none());
                open.next()?.when.likely()
            }
        };
        // The last round was fed.
        if fed.is_some() && likely > ends + habit.every / 2.0 {
            return None;
        }
        Some(FireLine {
            cooker: *id,
            burning,
            fed,
            from: likely - (habit.every - habit.soonest),
            likely,
            to: likely + (habit.latest - habit.every),
            piece: habit.piece,
        })
    });
    let mut lines: Vec<FireLine> = lines.collect();
    lines.sort_by_key(|line| (!line.burning, line.to));
    lines
}

#[cfg(test)]
mod tests {
    use super::super::super::run_sheet::sample::{Sample, at};
    use super::*;
    use cook_model::handover::identity::{DishId, EntryId, ReplicaId};
    use cook_model::handover::{Entry, Event, Journal, KnownEvent, ReplicaText};

    fn log(journal: &mut Journal, time: &str, event: KnownEvent) {
        let entry = Entry {
            at: at(time),
            logged: at(time),
            replica: ReplicaText(ReplicaId::new(1)),
            by: None,
            event: Event::Known(event),
        };
        let id = EntryId::new(journal.0.len() as u64, 0);
        journal.0.insert(id, entry);
    }

    fn yard() -> (Sample, CookerId, DishId) {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let cooker = sample.cooker("Offset");
        let dish = sample.dish("Pork", Some(cooker), "2026-09-12T05:00:00");
        for (round, time) in [
            (1, "2026-09-12T05:45:00"),
            (2, "2026-09-12T06:30:00"),
            (3, "2026-09-12T13:00:00"),
        ] {
            let step = sample.step(StepKind::Feed, time, 0.0);
            step.cooker = Some(cooker);
            step.round = round;
        }
        (sample, cooker, dish)
    }

    fn line(sample: &Sample, journal: &Journal) -> Option<FireLine> {
        let progress = Progress::of(&sample.plan, journal);
        let lines = fires(&sample.plan, &sample.outlook, &progress);
        lines.first().copied()
    }

    #[test]
    fn an_offset_is_overdue_an_hour_after_it_was_fed() {
        let (sample, cooker, dish) = yard();
        let mut journal = Journal::default();
        let planned = line(&sample, &journal).expect("a line");
        assert!(!planned.burning);
        assert_eq!(planned.likely, at("2026-09-12T05:45:00"));
        assert!(!planned.is_over(at("2026-09-12T09:00:00")), "nothing is on");

        log(&mut journal, "2026-09-12T05:00:00", KnownEvent::On { dish });
        let fed = KnownEvent::Fed {
            cooker,
            fuel: None,
            kind: None,
        };
        log(&mut journal, "2026-09-12T05:50:00", fed);
        let burning = line(&sample, &journal).expect("a line");
        assert_eq!(burning.likely, at("2026-09-12T06:35:00"));
        assert!(!burning.is_over(at("2026-09-12T06:49:00")));
        assert!(burning.is_over(at("2026-09-12T06:51:00")));
    }

    #[test]
    fn nobody_is_asked_to_feed_a_fire_under_nothing() {
        let (sample, _, dish) = yard();
        let mut journal = Journal::default();
        log(&mut journal, "2026-09-12T05:00:00", KnownEvent::On { dish });
        log(
            &mut journal,
            "2026-09-12T13:00:00",
            KnownEvent::Off { dish },
        );
        assert_eq!(line(&sample, &journal), None);
    }
}
