//! What lies on the sheet and what lies days ahead of it.

use super::axis::{Axis, hour_before};
use chrono::NaiveDate;
use cook_model::plan::Zone;
use cook_model::plan::outlook::{DishTimes, Outlook, Step, StepKind};
use cook_model::units::{Moment, TimeSpan};

/// Preparation this close before the fire belongs to the day itself.
const SAME_DAY: TimeSpan = TimeSpan::from_hours(3.0);
/// A sheet with nothing to do on it still shows this much before serving.
const BEFORE_SERVING: TimeSpan = TimeSpan::from_hours(4.0);
/// And this much after.
const AFTER_SERVING: TimeSpan = TimeSpan::from_hours(1.0);
/// Nothing further from serving than this is drawn: a forecast that far out is not a plan for the day.
const FURTHEST: TimeSpan = TimeSpan::from_hours(48.0);
/// What lies further back than this is folded away while the day runs.
const JUST_NOW: TimeSpan = TimeSpan::from_minutes(45.0);

/// Which steps go where, as places in the outlook's list of steps.
#[derive(Clone, Debug, PartialEq)]
pub struct Scope {
    /// The stretch of time that the sheet shows.
    pub axis: Axis,
    /// Steps before it, by local day.
    pub ahead: Vec<OtherDay>,
    /// Steps after it, by local day: a forecast far too late, or what is left to do on the day after.
    pub later: Vec<OtherDay>,
    /// Steps on it, in order of likely time; feeding the fire is not among them.
    pub tickets: Vec<usize>,
    /// Feeding the fire.
    pub feeds: Vec<usize>,
    /// Steps of the day that were folded away because their time is past.
    pub folded: Vec<usize>,
}

/// What is to be done on a day that the sheet does not show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OtherDay {
    /// The day on the local clock.
    pub date: NaiveDate,
    /// Its steps, in order of likely time.
    pub steps: Vec<usize>,
}

impl Scope {
    /// Sorts the steps of an outlook; `fold` puts away what is past while the day runs.
    #[must_use]
    pub fn of(outlook: &Outlook, zone: &Zone, now: Moment, fold: bool) -> Self {
        let whole = day_of_the_cook(outlook, zone);
        let cut = hour_before(now - JUST_NOW, zone);
        let running = whole.start < cut && now < whole.end;
        let axis = if fold && running {
            Axis {
                start: cut,
                ..whole
            }
        } else {
            whole
        };
        let mut scope = Self {
            axis,
            ahead: Vec::new(),
            later: Vec::new(),
            tickets: Vec::new(),
            feeds: Vec::new(),
            folded: Vec::new(),
        };
        for index in by_likely_time(&outlook.steps) {
            scope.sort_in(index, &outlook.steps[index], whole, zone);
        }
        scope
    }

    fn sort_in(&mut self, index: usize, step: &Step, whole: Axis, zone: &Zone) {
        let likely = step.when.likely();
        if step.kind == StepKind::Feed {
            self.feeds.push(index);
        } else if likely < whole.start {
            list_by_day(&mut self.ahead, zone.local(likely).date(), index);
        } else if likely > whole.end {
            list_by_day(&mut self.later, zone.local(likely).date(), index);
        } else if likely < self.axis.start {
            self.folded.push(index);
        } else {
            self.tickets.push(index);
        }
    }
}

fn list_by_day(days: &mut Vec<OtherDay>, date: NaiveDate, index: usize) {
    match days.last_mut().filter(|day| day.date == date) {
        Some(day) => day.steps.push(index),
        None => days.push(OtherDay {
            date,
            steps: vec![index],
        }),
    }
}

/// From the first thing that happens at a fire, with the preparation just before it, to the last thing after serving.
fn day_of_the_cook(outlook: &Outlook, zone: &Zone) -> Axis {
    let serving = outlook.table.serving;
    let near = |moment: &Moment| serving - FURTHEST <= *moment && *moment <= serving + FURTHEST;
    let steps = || outlook.steps.iter();
    let dishes = || {
        outlook
            .dishes
            .iter()
            .filter_map(|dish| dish.forecast.as_ref().ok())
    };
    let at_a_fire = steps()
        .filter(|step| !is_preparation(step.kind))
        .map(|step| step.when.from());
    let fire = at_a_fire
        .chain(dishes().map(|times: &DishTimes| times.on))
        .filter(near)
        .min()
        .unwrap_or(serving - BEFORE_SERVING)
        .min(serving);
    let just_before = steps()
        .map(|step| step.when.likely())
        .filter(|likely| *likely >= fire - SAME_DAY);
    let first = just_before.min().unwrap_or(fire).min(fire);
    let last = steps()
        .map(|step| step.when.likely() + step.takes)
        .chain(dishes().map(|times| times.table_ready.to()))
        .filter(near)
        .max()
        .unwrap_or(serving);
    Axis::around(first, last.max(serving + AFTER_SERVING), zone)
}

const fn is_preparation(kind: StepKind) -> bool {
    use StepKind::{Buy, Rub, Salt, Thaw, Trim};
    matches!(kind, Buy | Thaw | Trim | Salt | Rub)
}

/// Places in the list in order of likely time; steps at the same time keep the order of the list.
fn by_likely_time(steps: &[Step]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..steps.len()).collect();
    order.sort_by_key(|index| steps[*index].when.likely());
    order
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, at};
    use super::*;

    fn kinds(sample: &Sample, steps: &[usize]) -> Vec<StepKind> {
        let steps = steps.iter().map(|index| sample.outlook.steps[*index].kind);
        steps.collect()
    }

    #[test]
    fn the_sheet_begins_with_the_fire_and_days_ahead_are_listed() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        sample.step(StepKind::Buy, "2026-09-09T18:00:00", 30.0);
        sample.step(StepKind::Thaw, "2026-09-10T18:00:00", 5.0);
        sample.step(StepKind::Salt, "2026-09-10T20:00:00", 10.0);
        sample.step(StepKind::Rub, "2026-09-11T23:40:00", 10.0);
        sample.step(StepKind::On, "2026-09-12T00:40:00", 5.0);
        sample.step(StepKind::Serve, "2026-09-12T18:00:00", 0.0);
        let scope = sample.scope("2026-09-05T12:00:00");
        assert_eq!(scope.axis.start, at("2026-09-11T23:00:00"));
        assert_eq!(scope.axis.end, at("2026-09-12T19:00:00"));
        let ahead: Vec<_> = scope
            .ahead
            .iter()
            .map(|day| (day.date.to_string(), kinds(&sample, &day.steps)))
            .collect();
        assert_eq!(
            ahead,
            [
                ("2026-09-09".to_owned(), vec![StepKind::Buy]),
                (
                    "2026-09-10".to_owned(),
                    vec![StepKind::Thaw, StepKind::Salt]
                ),
            ]
        );
        assert_eq!(
            kinds(&sample, &scope.tickets),
            [StepKind::Rub, StepKind::On, StepKind::Serve]
        );
    }

    #[test]
    fn what_is_past_is_folded_while_the_day_runs_and_unfolds() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        sample.step(StepKind::On, "2026-09-12T00:40:00", 5.0);
        sample.step(StepKind::Turn, "2026-09-12T06:00:00", 5.0);
        sample.step(StepKind::Serve, "2026-09-12T18:00:00", 0.0);
        let now = at("2026-09-12T06:20:00");
        let folded = Scope::of(&sample.outlook, &sample.zone, now, true);
        assert_eq!(folded.axis.start, at("2026-09-12T05:00:00"));
        assert_eq!(kinds(&sample, &folded.folded), [StepKind::On]);
        assert_eq!(
            kinds(&sample, &folded.tickets),
            [StepKind::Turn, StepKind::Serve]
        );
        let open = Scope::of(&sample.outlook, &sample.zone, now, false);
        assert_eq!(open.axis.start, at("2026-09-12T00:00:00"));
        assert!(open.folded.is_empty());
        assert_eq!(open.tickets.len(), 3);
    }

    #[test]
    fn a_plan_without_steps_still_has_an_evening() {
        let sample = Sample::new("2026-09-12T18:00:00");
        let scope = sample.scope("2026-09-05T12:00:00");
        assert_eq!(scope.axis.start, at("2026-09-12T14:00:00"));
        assert_eq!(scope.axis.end, at("2026-09-12T19:00:00"));
    }

    #[test]
    fn a_forecast_days_off_does_not_stretch_the_sheet() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        sample.step(StepKind::On, "2026-09-12T10:00:00", 5.0);
        sample.step(StepKind::Slice, "2026-09-20T10:00:00", 5.0);
        let scope = sample.scope("2026-09-05T12:00:00");
        assert_eq!(scope.axis.end, at("2026-09-12T19:00:00"));
        assert_eq!(scope.tickets.len(), 1);
        assert_eq!(scope.later.len(), 1);
    }

    #[test]
    fn feeding_the_fire_is_kept_apart() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        sample.step(StepKind::On, "2026-09-12T10:00:00", 5.0);
        sample.step(StepKind::Feed, "2026-09-12T11:00:00", 3.0);
        let scope = sample.scope("2026-09-05T12:00:00");
        assert_eq!(scope.feeds.len(), 1);
        assert_eq!(scope.tickets.len(), 1);
    }
}
