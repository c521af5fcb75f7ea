//! What is to be done next: the open steps of the run sheet in order, the same thing for several dishes in one go.

use cook_model::handover::identity::{CrewId, DishId, OwnStepId};
use cook_model::plan::outlook::{Outlook, Step, StepKind};
use cook_model::plan::{Plan, Progress, StepOf};
use cook_model::units::{Moment, TimeSpan};

/// The same thing for several dishes this close together is done in one go.
const ONE_GO: TimeSpan = TimeSpan::from_minutes(5.0);
/// A thing counts as late so long after its window has ended.
const GRACE: TimeSpan = TimeSpan::from_minutes(5.0);
/// What can be left out and is later than this no longer leads.
const LEADS: TimeSpan = TimeSpan::from_hours(2.0);

/// Something to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Due {
    /// What.
    pub kind: StepKind,
    /// Its steps, as places in the outlook's list.
    pub steps: Vec<usize>,
    /// The step of the person's own that it is.
    pub own: Option<OwnStepId>,
    /// For which dishes.
    pub dishes: Vec<DishId>,
    /// Who does it.
    pub who: Option<CrewId>,
    /// May fall from.
    pub from: Moment,
    /// Likely.
    pub likely: Moment,
    /// May fall until.
    pub to: Moment,
}

impl Due {
    fn of(index: usize, step: &Step) -> Self {
        Self {
            kind: step.kind,
            steps: vec![index],
            own: match step.key.of {
                StepOf::Own(id) => Some(id),
                _ => None,
            },
            dishes: step.dish.into_iter().collect(),
            who: step.who,
            from: step.when.from(),
            likely: step.when.likely(),
            to: step.when.to(),
        }
    }

    fn takes_in(&self, step: &Step) -> bool {
        self.kind == step.kind
            && self.who == step.who
            && step.dish.is_some_and(|dish| !self.dishes.contains(&dish))
            && !self.dishes.is_empty()
            && step.when.likely() - self.likely <= ONE_GO
    }

    fn add(&mut self, index: usize, step: &Step) {
        self.steps.push(index);
        self.dishes.extend(step.dish);
        self.from = self.from.min(step.when.from());
        self.to = self.to.max(step.when.to());
    }

    /// How late it is; none while it is in time.
    #[must_use]
    pub fn over(&self, now: Moment) -> Option<TimeSpan> {
        (now > self.to + GRACE).then(|| now - self.to)
    }

    /// Whether it may be left out without harm once its time is past.
    const fn can_be_left_out(&self) -> bool {
        !matches!(
            self.kind,
            StepKind::On
                | StepKind::Wrap
                | StepKind::Probe
                | StepKind::Off
                | StepKind::Hold
                | StepKind::Slice
                | StepKind::Serve
                | StepKind::Chill
        )
    }
}

/// Everything that is still to be done, but for the fire, in order of likely time.
#[must_use]
pub fn dues(plan: &Plan, outlook: &Outlook, progress: &Progress<'_>, now: Moment) -> Vec<Due> {
    let open = |step: &&(usize, &Step)| {
        let (_, step) = step;
        step.kind != StepKind::Feed
            && progress.done(step).is_none()
            && !is_lapsed(step, outlook, now)
            && step.dish.is_none_or(|dish| plan.dishes.contains_key(&dish))
    };
    let mut found: Vec<Due> = Vec::new();
    let steps: Vec<(usize, &Step)> = outlook.steps.iter().enumerate().collect();
    for (index, step) in steps.iter().filter(open) {
        let mut back = found.iter_mut().rev();
        match back.find(|due| due.takes_in(step)) {
            Some(due) => due.add(*index, step),
            None => found.push(Due::of(*index, step)),
        }
    }
    found.sort_by_key(|due| due.likely);
    found
}

/// A round that was left out, once the next one is due.
fn is_lapsed(step: &Step, outlook: &Outlook, now: Moment) -> bool {
    step.kind == StepKind::Spray
        && outlook.steps.iter().any(|later| {
            (later.kind, later.dish) == (step.kind, step.dish)
                && later.round > step.round
                && later.when.likely() <= now
        })
}

/// The one that leads: what could be left out and is hours late gives way.
#[must_use]
pub fn lead(dues: &[Due], now: Moment) -> Option<usize> {
    let leads = |due: &Due| !due.can_be_left_out() || due.to + LEADS >= now;
    dues.iter().position(leads)
}

/// What was passed over without a word: it can still be ticked off.
#[must_use]
pub fn left_out(dues: &[Due], now: Moment) -> Vec<usize> {
    let first = lead(dues, now).unwrap_or(dues.len());
    (0..first).collect()
}

/// A span of time in large print: the number, and what follows it in small.
#[must_use]
pub fn countdown(to: Moment, now: Moment) -> (String, String) {
    let minutes = ((to - now).minutes()).abs().round();
    if minutes < 1.0 {
        return ("now".to_owned(), String::new());
    }
    if minutes < 100.0 {
        return (format!("{minutes}"), "min".to_owned());
    }
    let hours = (minutes / 60.0).floor();
    if hours < 48.0 {
        let rest = minutes - hours * 60.0;
        return (format!("{hours}"), format!("h {rest:02}"));
    }
    (format!("{}", (minutes / 1440.0).round()), "days".to_owned())
}

#[cfg(test)]
mod tests {
    use super::super::super::run_sheet::sample::{Sample, at};
    use super::*;
    use cook_model::handover::Journal;

    fn spans(minutes: f64) -> (String, String) {
        let now = at("2026-09-12T06:20:00");
        countdown(now + TimeSpan::from_minutes(minutes), now)
    }

    #[test]
    fn a_countdown_is_short_at_every_distance() {
        let said = |number: &str, unit: &str| (number.to_owned(), unit.to_owned());
        assert_eq!(spans(0.2), said("now", ""));
        assert_eq!(spans(20.0), said("20", "min"));
        assert_eq!(spans(-12.0), said("12", "min"));
        assert_eq!(spans(200.0), said("3", "h 20"));
        assert_eq!(spans(4.0 * 1440.0), said("4", "days"));
    }

    fn day() -> Sample {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let cooker = Some(sample.cooker("Offset"));
        let pork = Some(sample.dish("Pork", cooker, "2026-09-12T05:00:00"));
        let lamb = Some(sample.dish("Lamb", cooker, "2026-09-12T08:00:00"));
        for (kind, round, dish, time) in [
            (StepKind::Trim, 0, pork, "2026-09-12T03:00:00"),
            (StepKind::On, 0, pork, "2026-09-12T05:00:00"),
            (StepKind::Spray, 1, pork, "2026-09-12T10:00:00"),
            (StepKind::Spray, 1, lamb, "2026-09-12T10:04:00"),
            (StepKind::Spray, 2, pork, "2026-09-12T10:45:00"),
            (StepKind::Off, 0, pork, "2026-09-12T14:00:00"),
        ] {
            let step = sample.step(kind, time, 10.0);
            step.dish = dish;
            step.round = round;
        }
        sample
    }

    fn kinds(sample: &Sample, now: &str) -> Vec<(StepKind, usize)> {
        let journal = Journal::default();
        let progress = Progress::of(&sample.plan, &journal);
        let found = dues(&sample.plan, &sample.outlook, &progress, at(now));
        let named = found.iter().map(|due| (due.kind, due.dishes.len()));
        named.collect()
    }

    #[test]
    fn the_same_thing_for_two_dishes_is_done_in_one_go() {
        let found = kinds(&day(), "2026-09-12T02:00:00");
        assert_eq!(
            found,
            [
                (StepKind::Trim, 1),
                (StepKind::On, 1),
                (StepKind::Spray, 2),
                (StepKind::Spray, 1),
                (StepKind::Off, 1),
            ]
        );
    }

    #[test]
    fn a_round_left_out_is_dropped_when_the_next_is_due() {
        let found = kinds(&day(), "2026-09-12T10:50:00");
        let sprays = found.iter().filter(|(kind, _)| *kind == StepKind::Spray);
        assert_eq!(sprays.count(), 2, "the lamb's first and the pork's second");
    }

    #[test]
    fn what_can_be_left_out_gives_way_and_what_cannot_does_not() {
        let sample = day();
        let journal = Journal::default();
        let progress = Progress::of(&sample.plan, &journal);
        let now = at("2026-09-12T06:00:00");
        let found = dues(&sample.plan, &sample.outlook, &progress, now);
        let first = lead(&found, now).expect("something to do");
        assert_eq!(found[first].kind, StepKind::On);
        assert!(found[first].over(now).is_some());
        assert_eq!(left_out(&found, now), [0]);
    }
}
