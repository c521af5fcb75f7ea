//! What the model makes of the open plan: asked for with every change, the last answer kept until the next is there.

use super::{Store, Trials, Tried};
use crate::device::clock::now;
use crate::device::worker::{Heard, Reckoner};
use crate::reckon::{Answer, Effort, Line, Question, Wanted};
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

/// A worker whose answers go where they are waited for.
pub(super) fn reckoner(forecast: RwSignal<Forecast>, trials: RwSignal<Trials>) -> Reckoner {
    Reckoner::new(move |heard| match heard {
        Heard::Answer {
            effort,
            answer: Answer::Outlook(outlook),
        } => forecast.update(|forecast| {
            forecast.outlook = Some(Arc::from(outlook));
            forecast.progress = match effort {
                Effort::Rough | Effort::Fair => Progress::Rough,
                Effort::Full => Progress::Full,
            };
        }),
        Heard::Answer {
            effort,
            answer: Answer::Trial { way, trial },
        } => trials.update(|trials| {
            let tried = Tried {
                trial: *trial,
                effort,
                stale: false,
            };
            trials.insert(way, tried);
        }),
        Heard::Broken => forecast.update(|forecast| forecast.progress = Progress::Broken),
    })
}

impl Store {
    /// The situation as it is now: the moment, the local clock, and what has happened.
    pub(super) fn situation(self) -> Situation {
        let zone = self.zone.get_untracked();
        let situation = Situation::new(now(), Zone::clone(&zone));
        self.library
            .with_untracked(|library| match library.open_plan() {
                Some(held) => situation.after(held.journal()),
                None => situation,
            })
    }

    /// Asks for an outlook whenever the plan, its journal, its clock or the time of day changes.
    pub(super) fn keep_forecasting(self) {
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
            self.zone.track();
            self.journal.track();
            self.forecast.update(|forecast| {
                if forecast.of != open {
                    *forecast = Forecast {
                        of: open,
                        ..Forecast::default()
                    };
                }
                forecast.progress = Progress::Working;
            });
            let question = Question {
                plan,
                situation: self.situation(),
                wanted: Wanted::Outlook,
            };
            self.reckoner
                .with_value(|reckoner| reckoner.ask(Line::Outlook, vec![question]));
        });
    }
}
