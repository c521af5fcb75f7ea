//! Forecasts that are kept: moving the serving time, or changing guests, asks for none of them anew.

use super::SEED;
use crate::forecast::{DishForecast, DishScenario, ForecastRun};
use crate::physics::{ModelError, Settings};
use crate::plan::window::LONGEST_COOK;
use crate::units::TimeSpan;

/// Kept between two derivations at most; those in use are never thrown away.
const KEPT: usize = 24;

/// Where a forecast stands on the shelf.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Place(usize);

/// Forecasts, the latest used last.
#[derive(Debug, Default)]
pub(super) struct Shelf {
    runs: Vec<Kept>,
}

#[derive(Debug)]
struct Kept {
    of: DishScenario,
    run: ForecastRun,
    refused: Option<ModelError>,
}

fn settings() -> Settings {
    Settings {
        limit: LONGEST_COOK,
        sample_every: TimeSpan::from_minutes(10.0),
        ..Settings::default()
    }
}

impl Shelf {
    /// Throws the oldest away, beyond what is kept. Places from before are no longer good.
    pub(super) fn tidy(&mut self) {
        let beyond = self.runs.len().saturating_sub(KEPT);
        self.runs.drain(..beyond);
    }

    /// The forecast of a scenario; begun if there is none yet.
    pub(super) fn place(&mut self, of: DishScenario) -> Place {
        let found = self.runs.iter().position(|kept| kept.of == of);
        Place(found.unwrap_or_else(|| {
            let run = ForecastRun::new(of.clone(), 0, SEED, settings());
            self.runs.push(Kept {
                of,
                run,
                refused: None,
            });
            self.runs.len() - 1
        }))
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
