//! The work itself: outlooks and trials by `cook-model`, chunk by chunk.

use super::desk::Work;
use super::{Answer, Effort, Question, Wanted};
use cook_model::forecast::{FULL, ROUGH, SEARCH};
use cook_model::plan::Planner;

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

/// Derives answers and keeps the forecasts that the next one can use again.
#[derive(Debug)]
pub struct Reckoning {
    planner: Planner,
    wanted: Wanted,
}

impl Default for Reckoning {
    fn default() -> Self {
        Self {
            planner: Planner::default(),
            wanted: Wanted::Outlook,
        }
    }
}

impl Work for Reckoning {
    type Answer = Answer;

    fn begin(&mut self, question: Question, effort: Effort) {
        let Question {
            plan,
            situation,
            wanted,
        } = question;
        self.wanted = wanted;
        match effort {
            Effort::Rough => self.planner.begin_roughly(plan, situation),
            Effort::Fair | Effort::Full => self.planner.begin(plan, situation, effort.members()),
        }
    }

    fn step(&mut self) -> Option<Answer> {
        if !self.planner.step() {
            return None;
        }
        match self.wanted {
            Wanted::Outlook => {
                let outlook = self.planner.outlook()?;
                Some(Answer::Outlook(Box::new(outlook)))
            }
            Wanted::Trial { way, dish, also } => {
                let trial = self.planner.trial(dish, also)?;
                Some(Answer::Trial {
                    way,
                    trial: Box::new(trial),
                })
            }
        }
    }
}
