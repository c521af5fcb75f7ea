//! What the model makes of the open plan: asked for with every change, the last answer kept until the next is there.

use super::Store;
use crate::device::clock::now;
use crate::device::worker::{Heard, Reckoner};
use crate::reckon::{Effort, Question};
use cook_model::handover::identity::PlanId;
use cook_model::plan::outlook::Outlook;
use cook_model::plan::{Situation, Zone};
use leptos::prelude::*;
use std::sync::Arc;

/// How far the answer to the latest question is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Progress {
    /// Nothing was asked yet.
    #[default]
    Idle,
    /// Being worked out; what is shown, if anything, belongs to the plan as it was.
    Working,
    /// From a few members; the full answer is on its way.
    Rough,
    /// From all members.
    Full,
    /// The reckoning broke down and was started again too often.
    Broken,
}

/// The last answer, and how it stands to the plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Forecast {
    /// For which plan. An answer for another plan is never shown.
    pub of: Option<PlanId>,
    /// The last answer.
    pub outlook: Option<Arc<Outlook>>,
    /// How it stands to the plan as it is now.
    pub progress: Progress,
}

impl Forecast {
    /// Whether what is shown is still being worked on.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        matches!(self.progress, Progress::Working | Progress::Rough)
    }
}

impl Store {
    /// Asks for an outlook whenever the plan, its clock or the time of day changes.
    pub(super) fn keep_forecasting(self) {
        let heard = move |heard| match heard {
            Heard::Answer { effort, outlook } => self.forecast.update(|forecast| {
                forecast.outlook = Some(Arc::from(outlook));
                forecast.progress = match effort {
                    Effort::Rough | Effort::Fair => Progress::Rough,
                    Effort::Full => Progress::Full,
                };
            }),
            Heard::Broken => self
                .forecast
                .update(|forecast| forecast.progress = Progress::Broken),
        };
        let reckoner = StoredValue::new_local(Reckoner::new(heard));
        // Findings such as “should have gone on by now” follow the clock, but not every minute.
        let quarter = Memo::new(move |_| self.now.get().unix_seconds().div_euclid(900));
        // Ticks and prices change nothing that the forecast rests on.
        let rests_on = Memo::new(move |_| {
            self.plan
                .with(|plan| Some(plan.as_ref()?.without_shopping()))
        });
        Effect::new(move |_| {
            quarter.track();
            let open = self.open_id.get();
            let Some(plan) = rests_on.get() else {
                self.forecast.set(Forecast::default());
                return;
            };
            let zone = self.zone.get();
            self.forecast.update(|forecast| {
                if forecast.of != open {
                    *forecast = Forecast {
                        of: open,
                        ..Forecast::default()
                    };
                }
                forecast.progress = Progress::Working;
            });
            let situation = Situation::new(now(), Zone::clone(&zone));
            let situation = self
                .library
                .with_untracked(|library| match library.open_plan() {
                    Some(held) => situation.after(held.journal()),
                    None => situation,
                });
            let question = Question { plan, situation };
            reckoner.with_value(|reckoner| reckoner.ask(question));
        });
    }
}
