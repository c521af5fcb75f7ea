//! Runs an ensemble in chunks, so that a newer question can end it between two.

use super::stretch::stretch;
use super::{DishForecast, Knowledge, Owners, Prior, Remainder, draw};
use crate::physics::{self, Draw, MemberRun, ModelError, Scenario, Settings};

/// Members that are run side by side.
pub const CHUNK: u32 = 8;

/// Members of the first rough answer.
pub const ROUGH: u32 = 8;

/// Members while a schedule is searched.
pub const SEARCH: u32 = 32;

/// Members of the full answer. With so many the 10, 50 and 90 % times move by at most 1.9 % (rms over 20 seeds; loin,
/// spare ribs, butt and packer brisket); those of a whole chicken, with its wide remainder, by 2.3, 1.9 and 3.3 %. With
/// 128 members the figures are half as large again.
pub const FULL: u32 = 256;

/// Shares of the step tolerance with which a march that stuck is tried again.
const OTHER_STEPS: [f64; 3] = [0.5, 2.0, 5.0];

/// One dish, or one of its pieces where they differ: what is cooked, what is known of it, and who owns its draws.
#[derive(Clone, Debug, PartialEq)]
pub struct DishScenario {
    /// What is cooked and how.
    pub scenario: Scenario,
    /// What is known better than usual.
    pub knowledge: Knowledge,
    /// Who owns the draws.
    pub owners: Owners,
}

impl DishScenario {
    /// The prior that belongs to it.
    #[must_use]
    pub const fn prior(&self) -> Prior {
        Prior::of(self.scenario.cooker, self.knowledge)
    }

    /// The remainder that belongs to it.
    #[must_use]
    pub const fn remainder(&self) -> Remainder {
        let usual = Remainder::of(self.scenario.cut.cut());
        if self.knowledge.first_time {
            usual.first_time()
        } else {
            usual
        }
    }
}

/// A forecast under way: [`ForecastRun::step`] runs the next members, [`ForecastRun::forecast`] says what is known so
/// far.
#[derive(Clone, Debug)]
pub struct ForecastRun {
    dish: DishScenario,
    prior: Prior,
    remainder: Remainder,
    settings: Settings,
    seed: u64,
    wanted: u32,
    forecast: DishForecast,
}

impl ForecastRun {
    /// A forecast of `members` members (at most 65,536; rounded up to whole chunks), none of them run yet. The seed is
    /// the plan's: dishes forecast with the same seed share their worlds.
    #[must_use]
    pub fn new(dish: DishScenario, members: u32, seed: u64, settings: Settings) -> Self {
        Self {
            prior: dish.prior(),
            remainder: dish.remainder(),
            dish,
            settings,
            seed,
            wanted: members.min(1 << 16).next_multiple_of(CHUNK),
            forecast: DishForecast::default(),
        }
    }

    /// With another prior and remainder than the dish's own.
    #[must_use]
    pub const fn with(mut self, prior: Prior, remainder: Remainder) -> Self {
        self.prior = prior;
        self.remainder = remainder;
        self
    }

    /// Asks for more members than at first; those already run are kept.
    pub fn widen(&mut self, members: u32) {
        self.wanted = self
            .wanted
            .max(members.min(1 << 16).next_multiple_of(CHUNK));
    }

    /// Members run so far.
    #[must_use]
    pub fn members(&self) -> u32 {
        self.forecast.members().len() as u32
    }

    /// True when all members have been run.
    #[must_use]
    pub fn done(&self) -> bool {
        self.members() >= self.wanted
    }

    /// Runs the next chunk. Returns [`ForecastRun::done`].
    ///
    /// # Errors
    /// [`ModelError`] if the scenario is outside what the model can reckon with.
    pub fn step(&mut self) -> Result<bool, ModelError> {
        if self.done() {
            return Ok(true);
        }
        let first = self.members();
        let drawn: Vec<_> = (first..first + CHUNK)
            .map(|member| draw(&self.prior, self.dish.owners, self.seed, member))
            .collect();
        let draws: Vec<Draw> = drawn.iter().map(|member| member.draw).collect();
        let cooks: Vec<_> = draws
            .iter()
            .map(|draw| (&self.dish.scenario, draw))
            .collect();
        let mut members = march(&cooks, &self.settings)?;
        for (run, member) in members.iter_mut().zip(&drawn) {
            let factor = self.remainder.stretch(member.remainder);
            stretch(run, &self.dish.scenario, factor);
        }
        self.forecast.extend(members);
        Ok(self.done())
    }

    /// What is known so far.
    #[must_use]
    pub const fn forecast(&self) -> &DishForecast {
        &self.forecast
    }

    /// Ends the run with what is known.
    #[must_use]
    pub fn into_forecast(self) -> DishForecast {
        self.forecast
    }
}

/// Marches the members; where one sticks, all are marched again with a finer and then with a coarser step.
pub(crate) fn march(
    cooks: &[(&Scenario, &Draw)],
    settings: &Settings,
) -> Result<Vec<MemberRun>, ModelError> {
    let with = |share: f64| {
        let settings = Settings {
            tolerance: (settings.tolerance * share).clamp(0.001, 100.0),
            ..*settings
        };
        physics::run_each(cooks, &settings)
    };
    let mut marched = with(1.0);
    for share in OTHER_STEPS {
        if !matches!(marched, Err(ModelError::TooManySteps { .. })) {
            break;
        }
        marched = with(share);
    }
    marched
}

/// Runs a whole forecast at once.
///
/// # Errors
/// [`ModelError`] if the scenario is outside what the model can reckon with.
pub fn forecast(
    dish: &DishScenario,
    members: u32,
    seed: u64,
    settings: &Settings,
) -> Result<DishForecast, ModelError> {
    let mut run = ForecastRun::new(dish.clone(), members, seed, *settings);
    while !run.step()? {}
    Ok(run.into_forecast())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::forecast::OwnerKey;
    use crate::meat::CutId;
    use crate::physics::CookerClass;
    use crate::units::{Mass, TimeSpan};

    fn dish(cut: CutId, kilograms: f64, knowledge: Knowledge) -> DishScenario {
        DishScenario {
            scenario: Scenario::usual(cut, Mass::from_kilograms(kilograms), CookerClass::Drum),
            knowledge,
            owners: Owners {
                cooker: OwnerKey::from_text("drum"),
                piece: OwnerKey::from_text("piece"),
            },
        }
    }

    fn coarse() -> Settings {
        Settings {
            cells: 10,
            tolerance: 4.0,
            sample_every: TimeSpan::from_minutes(30.0),
            ..Settings::default()
        }
    }

    fn loin(knowledge: Knowledge) -> DishScenario {
        dish(CutId::PorkLoin, 1.6, knowledge)
    }

    #[test]
    fn a_rough_answer_is_the_beginning_of_the_full_one() {
        let dish = loin(Knowledge::default());
        let mut run = ForecastRun::new(dish.clone(), 9, 5, coarse());
        assert!(!run.done() && run.forecast().members().is_empty());
        assert!(!run.step().unwrap());
        let rough = run.forecast().clone();
        assert_eq!(rough.members().len(), 8);
        assert!(run.step().unwrap());
        assert!(run.step().unwrap());
        assert_eq!(run.members(), 16);
        let full = forecast(&dish, 16, 5, &coarse()).unwrap();
        assert_eq!(&full.members()[..8], rough.members());
        assert_eq!(full, *run.forecast());
        run.widen(20);
        assert!(!run.done());
        while !run.step().unwrap() {}
        assert_eq!(
            run.into_forecast(),
            forecast(&dish, 24, 5, &coarse()).unwrap()
        );
    }

    fn width(knowledge: Knowledge) -> f64 {
        let forecast = forecast(&loin(knowledge), 64, 1, &coarse()).unwrap();
        let ready = |p| forecast.quantile(|m| m.ready, p).unwrap().hours();
        libm::log(ready(0.9) / ready(0.1))
    }

    #[test]
    fn measuring_narrows_the_window_and_a_first_time_widens_it() {
        let usual = width(Knowledge::default());
        let measured = width(Knowledge {
            thickness_measured: true,
            gauge_at_meat: true,
            ..Knowledge::default()
        });
        let first_time = width(Knowledge {
            first_time: true,
            ..Knowledge::default()
        });
        assert!(measured < 0.9 * usual, "{measured} {usual}");
        assert!(first_time > 1.05 * usual, "{first_time} {usual}");
    }

    #[test]
    fn dishes_on_one_cooker_run_late_together() {
        let with = |cooker: &str, piece: &str| {
            let mut dish = loin(Knowledge::default());
            dish.owners = Owners {
                cooker: OwnerKey::from_text(cooker),
                piece: OwnerKey::from_text(piece),
            };
            let members = forecast(&dish, 64, 1, &coarse()).unwrap().into_members();
            members
                .iter()
                .map(|m| libm::log(m.ready.unwrap().hours()))
                .collect::<Vec<_>>()
        };
        let here = with("kettle", "one");
        let beside = correlation(&here, &with("kettle", "two"));
        let elsewhere = correlation(&here, &with("drum", "two"));
        assert!(beside > 0.2, "{beside}");
        assert!(elsewhere < beside - 0.1, "{elsewhere} {beside}");
    }

    fn correlation(a: &[f64], b: &[f64]) -> f64 {
        let n = a.len() as f64;
        let (ma, mb) = (a.iter().sum::<f64>() / n, b.iter().sum::<f64>() / n);
        let sum = |f: &dyn Fn(f64, f64) -> f64| -> f64 {
            a.iter().zip(b).map(|(a, b)| f(a - ma, b - mb)).sum()
        };
        sum(&|a, b| a * b) / libm::sqrt(sum(&|a, _| a * a) * sum(&|_, b| b * b))
    }

    /// Root mean square, over 20 seeds, of how far the 10, 50 and 90 % ready times lie from their mean, in %.
    fn unrest(dish: &DishScenario, members: u32) -> [f64; 3] {
        let points: Vec<[f64; 3]> = (0..20)
            .map(|seed| {
                let forecast = forecast(dish, members, seed, &coarse()).unwrap();
                [0.1, 0.5, 0.9].map(|p| forecast.quantile(|m| m.ready, p).unwrap().hours())
            })
            .collect();
        [0, 1, 2].map(|k| {
            let n = points.len() as f64;
            let mean = points.iter().map(|point| point[k]).sum::<f64>() / n;
            let off = |point: &[f64; 3]| (point[k] / mean - 1.0) * (point[k] / mean - 1.0);
            100.0 * libm::sqrt(points.iter().map(off).sum::<f64>() / n)
        })
    }

    #[test]
    fn another_seed_moves_the_full_answer_by_less_than_two_hundredths() {
        let moved = unrest(&loin(Knowledge::default()), FULL);
        println!("loin: the 10, 50 and 90 % points move by {moved:.2?} %");
        assert!(moved.iter().all(|percent| *percent < 2.0), "{moved:?}");
    }

    /// A known miss of 3.42 %: the birds' remainder is so wide that their outer points move by more than 2 %.
    #[test]
    fn another_seed_moves_the_edges_of_a_bird_s_window_further() {
        let chicken = dish(CutId::ChickenWhole, 1.8, Knowledge::default());
        let [from, likely, to] = unrest(&chicken, FULL);
        println!("chicken: the 10, 50 and 90 % points move by {from:.2} {likely:.2} {to:.2} %");
        assert!(likely < 2.0, "{likely}");
        let worst = from.max(to);
        assert!(worst < 3.45, "the miss has grown: {worst}");
        assert!(
            worst > 2.0,
            "the miss has vanished: {worst}; say so in FULL's words"
        );
    }

    #[test]
    fn what_the_model_cannot_reckon_with_is_an_error() {
        let bad = dish(CutId::PorkLoin, 400.0, Knowledge::default());
        let refused = forecast(&bad, 8, 1, &coarse()).err();
        assert!(
            matches!(refused, Some(ModelError::OutOfRange { .. })),
            "{refused:?}"
        );
    }
}
