//! The work itself: outlooks by `cook-model`, chunk by chunk.

use super::desk::Work;
use super::{Effort, Question};
use cook_model::forecast::{FULL, ROUGH, SEARCH};
use cook_model::plan::Planner;
use cook_model::plan::outlook::Outlook;

impl Effort {
    /// Members of the ensemble that it is worth.
    #[must_use]
    pub const fn members(self) -> u32 {
        match self {
            Self::Rough => ROUGH,
            Self::Fair => SEARCH,
            Self::Full => FULL,
        }
    }
}

/// Derives outlooks and keeps the forecasts that the next one can use again.
#[derive(Debug, Default)]
pub struct Reckoning {
    planner: Planner,
}

impl Work for Reckoning {
    type Answer = Outlook;

    fn begin(&mut self, question: Question, effort: Effort) {
        let Question { plan, situation } = question;
        match effort {
            Effort::Rough => self.planner.begin_roughly(plan, situation),
            Effort::Fair | Effort::Full => self.planner.begin(plan, situation, effort.members()),
        }
    }

    fn step(&mut self) -> Option<Outlook> {
        self.planner
            .step()
            .then(|| self.planner.outlook())
            .flatten()
    }
}
