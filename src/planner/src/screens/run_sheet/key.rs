//! Which step a ticket stands for, whatever its time and place in the list.

use cook_model::handover::identity::{CookerId, DishId};
use cook_model::plan::outlook::{Step, StepKind};
use std::fmt;

/// The same step of the same plan keeps its key when the outlook is worked out anew.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct StepKey {
    /// What is done.
    pub kind: StepKind,
    /// Which round, from 1; 0 where there is only one.
    pub round: u32,
    /// For which dish.
    pub dish: Option<DishId>,
    /// At which cooker.
    pub cooker: Option<CookerId>,
}

impl StepKey {
    /// The key of a step.
    #[must_use]
    pub const fn of(step: &Step) -> Self {
        Self {
            kind: step.kind,
            round: step.round,
            dish: step.dish,
            cooker: step.cooker,
        }
    }
}

/// As the id of an element: letters, digits and hyphens, unique in a plan.
impl fmt::Display for StepKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "step-{:?}-{}", self.kind, self.round)?;
        if let Some(dish) = self.dish {
            write!(f, "-{dish}")?;
        }
        if let Some(cooker) = self.cooker {
            write!(f, "-at-{cooker}")?;
        }
        Ok(())
    }
}
