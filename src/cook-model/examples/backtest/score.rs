//! Runs the records through the model and scores them.

use crate::crps;
use crate::fit::{Likelihood, fit};
use crate::half_time;
use crate::record::{Record, Told};
use crate::rules::{self, Features, LogNormal};
use crate::scenario::{self, Question};
use anyhow::{Context, Result};
use cook_model::forecast::{DishScenario, ForecastRun, Remainder, draw, quantile, sample_at};
use cook_model::physics::{MemberRun, Settings};
use cook_model::units::TimeSpan;

/// How the records are run.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Effort {
    pub(crate) members: u32,
    pub(crate) seed: u64,
}

/// One record, run.
pub(crate) struct Run {
    pub(crate) record: Record,
    pub(crate) group: &'static str,
    pub(crate) bird: bool,
    pub(crate) told: Option<Told>,
    pub(crate) question: Question,
    /// Hours of each member without remainder.
    plain: Vec<Option<f64>>,
    /// Probability of each member's remainder.
    remainders: Vec<f64>,
    /// Longest cook followed, h.
    limit: f64,
    /// Readings: hour, told and likely core, °C.
    pub(crate) readings: Vec<(f64, f64, f64)>,
    /// Hours of each member at half time, where readings were told by then.
    half_time: Option<Vec<f64>>,
}

/// What a forecast said about one exact finish.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Verdict {
    /// Hours told.
    pub(crate) happened: f64,
    /// The 10, 50 and 90 % points, h.
    pub(crate) window: [f64; 3],
    /// Share of members done by the hour told.
    pub(crate) place: f64,
    /// Continuous ranked probability score, h.
    pub(crate) crps: f64,
}

impl Verdict {
    /// (likely − told) / told.
    pub(crate) fn error(&self) -> f64 {
        self.window[1] / self.happened - 1.0
    }

    /// Within the 10 to 90 % window.
    pub(crate) fn held(&self) -> bool {
        (self.window[0]..=self.window[2]).contains(&self.happened)
    }
}

impl Run {
    /// Asks the model about a record. None if the record is good for neither finish nor readings.
    pub(crate) fn new(record: &Record, effort: Effort) -> Result<Option<Self>> {
        let (told, readings) = (record.told(), record.scored_readings());
        if told.is_none() && readings.is_empty() {
            return Ok(None);
        }
        let cut = scenario::cut(record)?;
        let question = scenario::question(record)?;
        let settings = Settings::default();
        let mut run = Self {
            record: record.clone(),
            group: scenario::group(cut),
            bird: Remainder::of(cut) == Remainder::BIRDS,
            told,
            plain: Vec::new(),
            remainders: Vec::new(),
            limit: settings.limit.hours(),
            readings: Vec::new(),
            half_time: None,
            question,
        };
        if let Some(Told::Exactly(finish)) = told {
            run.half_time = half_time::hours(record, &run.question, finish, effort)
                .with_context(|| record.id.clone())?;
        }
        if told.is_some() {
            let members = ensemble(&run.question.dish, true, effort, settings)
                .with_context(|| record.id.clone())?;
            run.plain = members
                .iter()
                .map(|m| m.ready.map(TimeSpan::hours))
                .collect();
            let dish = &run.question.dish;
            run.remainders = (0..effort.members)
                .map(|member| draw(&dish.prior(), dish.owners, effort.seed, member).remainder)
                .collect();
        }
        if let Some(last) = readings.last() {
            let dish = scenario::followed(&run.question, last.h);
            let members =
                ensemble(&dish, false, effort, settings).with_context(|| record.id.clone())?;
            for reading in readings {
                let after = TimeSpan::from_hours(reading.h);
                let mut probes: Vec<f64> = members
                    .iter()
                    .filter_map(|member| Some(sample_at(&member.samples, after)?.probe.celsius()))
                    .collect();
                if let Some(likely) = quantile(&mut probes, 0.5) {
                    run.readings.push((reading.h, reading.core_c, likely));
                }
            }
        }
        Ok(Some(run))
    }

    /// Hours of each member under a remainder; those never ready stand at the longest cook followed.
    pub(crate) fn hours(&self, remainder: Remainder) -> Vec<f64> {
        let stretched = |(time, p): (&Option<f64>, &f64)| {
            let limit = self.limit;
            time.map_or(limit, |hours| hours * remainder.stretch(*p))
        };
        self.plain
            .iter()
            .zip(&self.remainders)
            .map(stretched)
            .collect()
    }

    /// The remainder that the forecast ships with.
    pub(crate) fn shipped(&self) -> Remainder {
        self.question.dish.remainder()
    }

    /// The hour of an exact finish.
    pub(crate) fn exactly(&self) -> Option<f64> {
        match self.told {
            Some(Told::Exactly(hours)) => Some(hours),
            _ => None,
        }
    }

    /// Scores an exact finish.
    pub(crate) fn verdict(&self, remainder: Option<Remainder>) -> Option<Verdict> {
        let happened = self.exactly()?;
        let mut hours = match remainder {
            Some(remainder) => self.hours(remainder),
            None => self
                .plain
                .iter()
                .map(|time| time.unwrap_or(self.limit))
                .collect(),
        };
        self.score(&mut hours, happened)
    }

    /// Scores what was said of an exact finish at half time.
    pub(crate) fn half_time_verdict(&self) -> Option<Verdict> {
        self.score(&mut self.half_time.clone()?, self.exactly()?)
    }

    fn score(&self, hours: &mut [f64], happened: f64) -> Option<Verdict> {
        let window = self.window(hours)?;
        let by = hours.iter().filter(|time| **time <= happened).count();
        Some(Verdict {
            happened,
            window,
            place: by as f64 / hours.len() as f64,
            crps: crps::of_members(hours, happened),
        })
    }

    /// The 10, 50 and 90 % points, h.
    pub(crate) fn window(&self, hours: &mut [f64]) -> Option<[f64; 3]> {
        Some([
            quantile(hours, 0.1)?,
            quantile(hours, 0.5)?,
            quantile(hours, 0.9)?,
        ])
    }

    /// For a bound: whether the likely time is on the wrong side of it.
    pub(crate) fn bound_missed(&self) -> Option<bool> {
        let likely = quantile(&mut self.hours(self.shipped()), 0.5)?;
        match self.told? {
            Told::Exactly(_) => None,
            Told::AtMost(hours) => Some(likely > hours),
            Told::AtLeast(hours) => Some(likely < hours),
        }
    }

    /// What the naive rules may look at, for an exact finish.
    pub(crate) fn features(&self) -> Option<Features> {
        Some(Features {
            cut: self.record.cut.clone(),
            kilograms: self.question.dish.scenario.mass.kilograms(),
            pit: self.question.mean_pit,
            wrapped: self.question.wrapped,
            hours: self.exactly()?,
        })
    }
}

/// Members of a dish, in the order of their index; without the remainder where `plain`.
fn ensemble(
    dish: &DishScenario,
    plain: bool,
    effort: Effort,
    settings: Settings,
) -> Result<Vec<MemberRun>> {
    let none = Remainder {
        centre: 0.0,
        scale: 0.0,
    };
    let remainder = if plain { none } else { dish.remainder() };
    let mut run = ForecastRun::new(dish.clone(), effort.members, effort.seed, settings)
        .with(dish.prior(), remainder);
    while !run.step()? {}
    Ok(run.into_forecast().into_members())
}

/// The remainder of birds or of all other meat, fitted to the runs with an exact finish, one left out or none.
pub(crate) struct Fits {
    likelihoods: Vec<(usize, bool, Likelihood)>,
}

impl Fits {
    pub(crate) fn new(runs: &[Run]) -> Self {
        let likelihood = |(index, run): (usize, &Run)| {
            let hours = run.exactly()?;
            Some((index, run.bird, Likelihood::new(&run.plain, hours)))
        };
        Self {
            likelihoods: runs.iter().enumerate().filter_map(likelihood).collect(),
        }
    }

    /// Not floored.
    pub(crate) fn of(&self, bird: bool, left_out: Option<usize>) -> Remainder {
        let chosen = self
            .likelihoods
            .iter()
            .filter(|(index, kind, _)| *kind == bird && Some(*index) != left_out);
        fit(chosen.map(|(_, _, likelihood)| likelihood))
    }
}

/// A remainder that is not narrower than the floor.
pub(crate) fn floored(remainder: Remainder) -> Remainder {
    Remainder {
        scale: remainder.scale.max(Remainder::FLOOR),
        ..remainder
    }
}

/// The naive rules' forecasts of the runs with an exact finish: by weight, by regression.
pub(crate) fn naive(exact: &[&Run]) -> (Vec<LogNormal>, Vec<LogNormal>) {
    let features: Vec<Features> = exact.iter().filter_map(|run| run.features()).collect();
    (rules::weight_rule(&features), rules::regression(&features))
}
