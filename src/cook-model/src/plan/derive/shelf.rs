//! Forecasts that are kept: moving the serving time, or changing guests, asks for none of them anew.

use super::SEED;
use crate::forecast::{CHUNK, DishForecast, DishScenario, ForecastRun};
use crate::physics::{ModelError, Settings};
use crate::plan::window::LONGEST_COOK;
use crate::units::TimeSpan;

/// Kept between two derivations at most; those in use are never thrown away.
const KEPT: usize = 24;

/// Where a forecast stands on the shelf.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Place(usize);

/// Forecasts.
#[derive(Debug, Default)]
pub(super) struct Shelf {
    runs: Vec<Kept>,
    /// Counts every use.
    uses: u64,
}

/// How finely a forecast is marched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Grain {
    /// For an answer at once: fewer cells and longer steps. The likely ready time lies within 3 % of the fine one's; a
    /// test says by how much.
    Coarse,
    /// As the checks against other solvers are made.
    Fine,
}

impl Grain {
    /// The settings of the march.
    pub(super) fn settings(self) -> Settings {
        let fine = Settings {
            limit: LONGEST_COOK,
            sample_every: TimeSpan::from_minutes(10.0),
            ..Settings::default()
        };
        match self {
            Self::Fine => fine,
            Self::Coarse => Settings {
                cells: 10,
                tolerance: 6.0,
                sample_every: TimeSpan::from_minutes(20.0),
                ..fine
            },
        }
    }
}

#[derive(Debug)]
struct Kept {
    of: DishScenario,
    grain: Grain,
    /// The count of uses when it was used last.
    used: u64,
    run: ForecastRun,
    refused: Option<ModelError>,
}

impl Shelf {
    /// Throws away what was used longest ago, beyond what is kept. Places from before are no longer good.
    pub(super) fn tidy(&mut self) {
        self.runs.sort_by_key(|kept| kept.used);
        let beyond = self.runs.len().saturating_sub(KEPT);
        self.runs.drain(..beyond);
    }

    /// The forecast of a scenario; begun if there is none yet. Where a coarse one is asked for and a fine one has its
    /// first members, that one serves.
    pub(super) fn place(&mut self, of: DishScenario, grain: Grain) -> Place {
        let find = |grain, members| {
            let kept =
                |kept: &Kept| kept.of == of && kept.grain == grain && kept.run.members() >= members;
            self.runs.iter().position(kept)
        };
        let found = find(Grain::Fine, if grain == Grain::Fine { 0 } else { CHUNK });
        let found = found.or_else(|| find(grain, 0));
        self.uses += 1;
        let used = self.uses;
        if let Some(at) = found {
            self.runs[at].used = used;
        }
        Place(found.unwrap_or_else(|| {
            let run = ForecastRun::new(of.clone(), 0, SEED, grain.settings());
            self.runs.push(Kept {
                of,
                grain,
                used,
                run,
                refused: None,
            });
            self.runs.len() - 1
        }))
    }

    /// What a forecast is of.
    pub(super) fn scenario(&self, place: Place) -> &DishScenario {
        &self.runs[place.0].of
    }

    /// Members run so far; none for a scenario that the physics refuses.
    pub(super) fn members(&self, place: Place) -> u32 {
        self.runs[place.0].run.members()
    }

    /// Why the physics refuses it, if it does from the first member on. Where the march of a later one breaks down, the
    /// members before it stand.
    pub(super) fn refused(&self, place: Place) -> Option<&ModelError> {
        let kept = &self.runs[place.0];
        kept.refused.as_ref().filter(|_| kept.run.members() == 0)
    }

    /// Whether it has so many members, or never will.
    pub(super) fn has(&self, place: Place, members: u32) -> bool {
        self.runs[place.0].refused.is_some() || self.members(place) >= members
    }

    /// Runs the next few members, up to so many.
    pub(super) fn step(&mut self, place: Place, members: u32) {
        let kept = &mut self.runs[place.0];
        kept.run.widen(members);
        if let Err(refused) = kept.run.step() {
            kept.refused = Some(refused);
        }
    }

    /// The forecast as far as it is.
    pub(super) fn forecast(&self, place: Place) -> &DishForecast {
        self.runs[place.0].run.forecast()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::forecast::{Knowledge, OwnerKey, Owners, forecast};
    use crate::meat::CutId;
    use crate::physics::{CookerClass, Scenario};

    fn usual(cut: CutId) -> DishScenario {
        DishScenario {
            scenario: Scenario::usual(cut, cut.cut().shape.mass, CookerClass::Offset),
            knowledge: Knowledge::default(),
            owners: Owners {
                cooker: OwnerKey::from_text("cooker 0"),
                piece: OwnerKey::from_text(cut.slug()),
            },
        }
    }

    #[test]
    fn a_coarse_answer_is_a_true_one() {
        let mut worst = 0.0_f64;
        for &cut in CutId::ALL {
            let likely = |grain: Grain| {
                let eight = forecast(&usual(cut), CHUNK, SEED, &grain.settings()).expect("a cook");
                eight.quantile(|run| run.ready, 0.5).map(TimeSpan::hours)
            };
            let (coarse, fine) = (likely(Grain::Coarse), likely(Grain::Fine));
            let (coarse, fine) = (coarse.expect("ready"), fine.expect("ready"));
            let off = 100.0 * (coarse / fine - 1.0);
            println!("{}: {coarse:.2} h for {fine:.2} h, {off:.2} %", cut.slug());
            worst = worst.max(off.abs());
        }
        assert!(worst < 3.0, "{worst} %");
    }

    #[test]
    fn a_coarse_question_takes_what_is_known_finely() {
        let mut shelf = Shelf::default();
        let of = usual(CutId::PorkBackRibs);
        let coarse = shelf.place(of.clone(), Grain::Coarse);
        shelf.step(coarse, CHUNK);
        let fine = shelf.place(of.clone(), Grain::Fine);
        assert_ne!(fine, coarse);
        // Nothing is known finely yet.
        assert_eq!(shelf.place(of.clone(), Grain::Coarse), coarse);
        shelf.step(fine, CHUNK);
        assert_eq!(shelf.place(of.clone(), Grain::Coarse), fine);
        assert_eq!(shelf.place(of, Grain::Fine), fine);
        assert_eq!((shelf.members(coarse), shelf.members(fine)), (CHUNK, CHUNK));
    }
}
