//! Does the cook fit between the earliest it can go on and the table?

use super::{Answer, Figure, Verdict};
use crate::meat::CutId;
use crate::safety::RuleId;
use crate::safety::wording::{degrees, span, weight};
use crate::units::{Mass, Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Does it fit?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WillItFit {
    /// What it is.
    pub cut: CutId,
    /// From the earliest moment it can go on until it is served.
    pub available: TimeSpan,
    /// What the forecast gives, rest and slicing included: shortest, likely, longest.
    pub takes: [TimeSpan; 3],
    /// What one cook before took.
    #[serde(default)]
    pub one_time_before: Option<TimeSpan>,
    /// Weight as bought, where it was used for a rule of so many hours for each pound.
    #[serde(default)]
    pub bought: Option<Mass>,
    /// Weight after trimming.
    #[serde(default)]
    pub trimmed: Option<Mass>,
    /// First time with this cut or this cooker.
    #[serde(default)]
    pub first_time: bool,
    /// Somebody must sleep in that time.
    #[serde(default)]
    pub sleep: bool,
}

impl WillItFit {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let [short, likely, long] = self.takes;
        let verdict = if self.available >= long {
            if self.first_time || self.sleep {
                Verdict::WithCare
            } else {
                Verdict::LooksFine
            }
        } else if self.available >= likely && !self.first_time {
            Verdict::WithCare
        } else if self.available >= short {
            Verdict::BetterNot
        } else {
            Verdict::No
        };
        let tight = verdict >= Verdict::BetterNot;
        let hotter = self.cut.cut().cooks_to_tenderness();
        Answer::new(verdict)
            .say(format!("It takes {} to {}, likely {}. You have {}.", span(short), span(long), span(likely), span(self.available)))
            .say_if(self.available < long, "If it runs long you serve late. If you start sooner and it runs short, it waits hot in a box.")
            .say_if(tight && hotter, format!("Ways out: a hotter pit of {} with a wrap, a smaller or thinner piece, or the day before with a good reheat.", degrees(Temperature::from_fahrenheit(275.0))))
            .say_if(self.one_time_before.is_some_and(|before| before < likely), "One quick cook is not a rule. The next one may take half as long again.")
            .say_if(self.bought.zip(self.trimmed).is_some_and(|(bought, trimmed)| trimmed < bought), format!("Go by the weight that goes on, {}, not by the weight you bought.", self.trimmed.map_or(String::new(), weight)))
            .say_if(self.first_time, "It is the first time. Leave more room, and try new gear on a day without guests.")
            .say_if(self.sleep, "A fire is not left alone while you sleep. Use a watch by name, an oven after the smoke, or a day cook.")
            .by_if(self.sleep, RuleId::NeverLeftAlone)
            .by_if(tight, RuleId::NeverPartCook)
            .figure(Figure::Takes { short, likely, long })
            .figure(Figure::Left { span: self.available })
    }
}
