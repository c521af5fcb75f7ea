//! Why a step stands where it stands.

use cook_model::plan::outlook::{DishTimes, Odds, Outlook, Step, StepKind};
use cook_model::units::{Moment, Temperature, TimeSpan};

/// What holds a step in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// Put on then, the promise is kept; anywhere between the two ends will do.
    Promise {
        /// Earliest; none where even the latest may have to wait longer than the hold is good.
        earliest: Option<Moment>,
        /// Latest.
        latest: Moment,
        /// Table-ready by serving, put on as planned.
        odds: Odds,
        /// Serving.
        serving: Moment,
    },
    /// Put on then, the promise is not kept, nor would it be at any other time from now on.
    PromiseBroken {
        /// Table-ready by serving, put on as planned.
        odds: Odds,
        /// Serving.
        serving: Moment,
    },
    /// The core reaches a temperature.
    Core(Temperature),
    /// It is tender; near this core temperature it is probed.
    Tender(Temperature),
    /// So long after it went on.
    AfterOn(TimeSpan),
    /// So long before it goes on.
    BeforeOn(TimeSpan),
    /// So that the fire is ready when the first dish goes on.
    FireFor(Moment),
    /// So long after coming off; it stays hot so long in most cases.
    AfterOff {
        /// Nine in ten stay hot longer.
        stays_hot: Option<TimeSpan>,
    },
    /// Early enough for serving.
    BeforeServing(Moment),
    /// The serving hour that was chosen.
    Serving,
    /// Not long after serving.
    AfterServing,
    /// Early enough for what follows.
    Leads,
    /// The fire wants it this often.
    FireWants(Option<TimeSpan>),
    /// The cooker's own programme.
    Programme,
}

impl Reason {
    /// The reason for a step of an outlook.
    #[must_use]
    pub fn of(step: &Step, outlook: &Outlook) -> Self {
        let serving = outlook.table.serving;
        let times = times_of(step, outlook);
        let likely = step.when.likely();
        match (step.kind, times) {
            (StepKind::Buy | StepKind::Thaw, _) => Self::Leads,
            (StepKind::Light | StepKind::SteadyFire, _) => Self::FireFor(first_on(step, outlook)),
            (StepKind::Feed, _) => Self::FireWants(interval(step, outlook)),
            (StepKind::PitChange, _) => step.core.map_or(Self::Programme, Self::Core),
            (StepKind::Serve, _) => Self::Serving,
            (StepKind::Own, _) => Self::Leads,
            (StepKind::Chill, _) => Self::AfterServing,
            (StepKind::Slice | StepKind::Make, _) | (StepKind::On, None) => {
                Self::BeforeServing(serving)
            }
            (StepKind::On, Some(times)) => on(times, serving),
            (StepKind::Hold, times) => Self::AfterOff {
                stays_hot: times.and_then(|times| Some(times.stays_hot?[0])),
            },
            (StepKind::Off, Some(times)) => done(times, likely),
            (StepKind::Probe, Some(times)) => step.core.map_or(done(times, likely), Self::Tender),
            (StepKind::Trim | StepKind::Salt | StepKind::Rub, Some(times)) => {
                Self::BeforeOn(times.on - likely)
            }
            (_, times) => match (step.core, times) {
                (Some(core), _) => Self::Core(core),
                (None, Some(times)) => Self::AfterOn(likely - times.on),
                (None, None) => Self::Leads,
            },
        }
    }
}

fn on(times: &DishTimes, serving: Moment) -> Reason {
    let odds = times.odds;
    if times.on <= times.latest_on {
        Reason::Promise {
            earliest: Some(times.earliest_on).filter(|earliest| *earliest <= times.latest_on),
            latest: times.latest_on,
            odds,
            serving,
        }
    } else {
        Reason::PromiseBroken { odds, serving }
    }
}

/// A cut is done by feel or by its core; a dish of one's own by its minutes.
fn done(times: &DishTimes, likely: Moment) -> Reason {
    match (times.target, times.tenderness) {
        (Some(target), Some(_)) => Reason::Tender(target),
        (Some(target), None) => Reason::Core(target),
        (None, _) => Reason::AfterOn(likely - times.on),
    }
}

fn times_of<'a>(step: &Step, outlook: &'a Outlook) -> Option<&'a DishTimes> {
    let mut dishes = outlook.dishes.iter();
    let seen = dishes.find(|seen| Some(seen.dish) == step.dish)?;
    seen.forecast.as_ref().ok()
}

/// When the first dish goes on at the step's cooker, or on any.
fn first_on(step: &Step, outlook: &Outlook) -> Moment {
    let ons = outlook
        .steps
        .iter()
        .filter(|other| other.kind == StepKind::On);
    let here = ons.filter(|other| step.cooker.is_none() || other.cooker == step.cooker);
    let after = here
        .map(|other| other.when.likely())
        .filter(|on| *on >= step.when.likely());
    after.min().unwrap_or_else(|| step.when.likely())
}

/// From one feeding of the same cooker to the next.
fn interval(step: &Step, outlook: &Outlook) -> Option<TimeSpan> {
    let mut rounds: Vec<Moment> = outlook
        .steps
        .iter()
        .filter(|other| other.kind == StepKind::Feed && other.cooker == step.cooker)
        .map(|other| other.when.likely())
        .collect();
    rounds.sort_unstable();
    let first = rounds.first()?;
    let second = rounds.get(1)?;
    Some(*second - *first)
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, at, formats};
    use super::*;
    use crate::words::reasons;

    fn reason(sample: &Sample) -> String {
        let step = sample.outlook.steps.last().expect("a step");
        reasons::reason(Reason::of(step, &sample.outlook), &formats())
    }

    fn supper() -> (Sample, cook_model::handover::identity::DishId) {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let cooker = sample.cooker("Offset");
        let dish = sample.dish("Pork", Some(cooker), "2026-09-12T05:00:00");
        (sample, dish)
    }

    #[test]
    fn on_goes_by_the_promise() {
        let (mut sample, dish) = supper();
        sample.step(StepKind::On, "2026-09-12T05:00:00", 0.0).dish = Some(dish);
        assert_eq!(
            reason(&sample),
            "Table-ready by 18:00: 19 in 20. From 04:00 on it holds well till then, and up to 06:00 the promise is kept."
        );
        let times = sample.outlook.dishes[0].forecast.as_mut().expect("times");
        times.earliest_on = at("2026-09-12T07:00:00");
        assert_eq!(
            reason(&sample),
            "Table-ready by 18:00: 19 in 20. Up to 06:00 the promise is kept."
        );
        let times = sample.outlook.dishes[0].forecast.as_mut().expect("times");
        times.latest_on = at("2026-09-12T04:00:00");
        assert_eq!(
            reason(&sample),
            "Table-ready by 18:00: 19 in 20, less than was promised."
        );
    }

    #[test]
    fn a_core_temperature_goes_before_a_time() {
        let (mut sample, dish) = supper();
        let wrap = sample.step(StepKind::Wrap, "2026-09-12T10:00:00", 30.0);
        wrap.dish = Some(dish);
        assert_eq!(reason(&sample), "5\u{a0}h after it goes on.");
        let wrap = sample.outlook.steps.last_mut().expect("a step");
        wrap.core = Some(Temperature::from_celsius(74.0));
        assert_eq!(reason(&sample), "When the core reaches 74\u{a0}°C.");
    }

    #[test]
    fn tender_cuts_come_off_tender_and_others_at_their_temperature() {
        let (mut sample, dish) = supper();
        sample.step(StepKind::Off, "2026-09-12T13:00:00", 30.0).dish = Some(dish);
        assert_eq!(reason(&sample), "When the core reaches 93\u{a0}°C.");
        let times = sample.outlook.dishes[0].forecast.as_mut().expect("times");
        times.tenderness = Some([0.9, 1.0, 1.1]);
        assert_eq!(
            reason(&sample),
            "When it is tender. Begin to probe near 93\u{a0}°C in the core."
        );
    }

    #[test]
    fn the_fire_is_lit_for_the_first_dish_on_its_cooker() {
        let (mut sample, dish) = supper();
        let cooker = sample.plan.dishes[&dish].cooker;
        let on = sample.step(StepKind::On, "2026-09-12T05:00:00", 0.0);
        on.dish = Some(dish);
        on.cooker = cooker;
        sample
            .step(StepKind::Light, "2026-09-12T03:40:00", 0.0)
            .cooker = cooker;
        assert_eq!(
            reason(&sample),
            "So that the fire is clean and steady when food goes on at 05:00."
        );
    }

    #[test]
    fn feeding_says_how_often() {
        let (mut sample, dish) = supper();
        let cooker = sample.plan.dishes[&dish].cooker;
        sample
            .step(StepKind::Feed, "2026-09-12T05:00:00", 0.0)
            .cooker = cooker;
        assert_eq!(reason(&sample), "This fire wants feeding then.");
        sample
            .step(StepKind::Feed, "2026-09-12T05:45:00", 0.0)
            .cooker = cooker;
        assert_eq!(
            reason(&sample),
            "This fire wants feeding about every 45\u{a0}min."
        );
    }

    #[test]
    fn preparation_counts_back_from_going_on() {
        let (mut sample, dish) = supper();
        sample.step(StepKind::Salt, "2026-09-11T17:00:00", 0.0).dish = Some(dish);
        assert_eq!(reason(&sample), "12\u{a0}h before it goes on.");
        sample.step(StepKind::Rub, "2026-09-12T04:59:00", 0.0).dish = Some(dish);
        assert_eq!(reason(&sample), "Just before it goes on.");
    }
}
