//! What the app and the examples ask.

use super::outlook::outlook;
use super::shelf::{Grain, Shelf};
use super::work::Work;
use crate::forecast::ROUGH;
use crate::handover::identity::DishId;
use crate::plan::Plan;
use crate::plan::outlook::{Hindrance, Outlook};
use crate::plan::situation::Situation;
use crate::plan::trial::{Trial, trial};
use crate::units::Moment;

/// Derives outlooks, one after another, and keeps the forecasts that the next one can use again.
///
/// ```
/// # use cook_model::plan::{Plan, Planner, Serving, Situation, Zone};
/// # use cook_model::units::Moment;
/// # let serving = Serving { local: "2026-09-12T18:00:00".parse().unwrap(), zone: "UTC".to_owned(), offset_seconds: 0 };
/// # let plan = Plan::new(serving);
/// let mut planner = Planner::default();
/// let now = Moment::from_unix_seconds(1_789_000_000);
/// planner.begin(plan, Situation::new(now, Zone::fixed(0)), 16);
/// while !planner.step() {
///     // A newer question may begin here; this one is then given up.
/// }
/// assert!(planner.outlook().is_some());
/// ```
#[derive(Debug, Default)]
pub struct Planner {
    shelf: Shelf,
    work: Option<Work>,
}

impl Planner {
    /// Begins a derivation with so many members, rounded up to whole chunks of eight. Whatever was under way is given
    /// up.
    pub fn begin(&mut self, plan: Plan, situation: Situation, members: u32) {
        self.begin_with(plan, situation, (members, Grain::Fine));
    }

    /// Begins a rough derivation: few members on a coarse grain, so that an answer is there at once. Forecasts that have
    /// been worked out finely before are used as they are.
    pub fn begin_roughly(&mut self, plan: Plan, situation: Situation) {
        self.begin_with(plan, situation, (ROUGH, Grain::Coarse));
    }

    fn begin_with(&mut self, plan: Plan, situation: Situation, ensemble: (u32, Grain)) {
        self.shelf.tidy();
        self.work = Some(Work::new(plan, situation, ensemble, &mut self.shelf));
    }

    /// Does the next chunk: eight members of one forecast at most. True when all is done, or nothing was begun.
    pub fn step(&mut self) -> bool {
        let Self { shelf, work } = self;
        work.as_mut().is_none_or(|work| work.step(shelf))
    }

    /// The outlook as far as it is worked out: it counts the members that every dish has. None before each dish has its
    /// first members.
    #[must_use]
    pub fn outlook(&self) -> Option<Outlook> {
        let work = self.work.as_ref()?;
        let begun = work.has_begun(&self.shelf);
        begun.then(|| outlook(&work.day(&self.shelf)))
    }

    /// The plan seen from one of its dishes, as far as it is worked out: the start that it aims for, and another start
    /// that is asked about. None before each dish has its first members.
    #[must_use]
    pub fn trial(&self, dish: DishId, also: Option<Moment>) -> Option<Result<Trial, Hindrance>> {
        let work = self.work.as_ref()?;
        let begun = work.has_begun(&self.shelf);
        begun.then(|| {
            let day = work.day(&self.shelf);
            trial(&day, &outlook(&day).findings, dish, also)
        })
    }
}

/// Derives an outlook at one go.
#[must_use]
pub fn derive(plan: &Plan, situation: &Situation, members: u32) -> Outlook {
    let mut shelf = Shelf::default();
    let ensemble = (members, Grain::Fine);
    let mut work = Work::new(plan.clone(), situation.clone(), ensemble, &mut shelf);
    while !work.step(&mut shelf) {}
    outlook(&work.day(&shelf))
}
