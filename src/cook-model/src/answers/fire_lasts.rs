//! How long a charge of fuel lasts.

use super::{Answer, Figure, Verdict};
use crate::safety::RuleId;
use crate::safety::wording::span;
use crate::units::{Mass, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Will the fire last?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FireLasts {
    /// Fuel that is laid, such as a fuse of briquettes.
    pub laid: Mass,
    /// What it burns in an hour: least, likely, most, by the fuel model or your own cooks.
    pub per_hour: [Mass; 3],
    /// How long it has to last.
    pub wanted: TimeSpan,
}

impl FireLasts {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let [least, likely, most] = self.per_hour;
        let lasts = |rate: Mass| TimeSpan::from_hours(self.laid / rate);
        let [short, usual, long] = [lasts(most), lasts(likely), lasts(least)];
        let verdict = if self.wanted <= short {
            Verdict::LooksFine
        } else if self.wanted <= long {
            Verdict::WithCare
        } else {
            Verdict::BetterNot
        };
        Answer::new(verdict)
            .say(format!(
                "It lasts {} to {}, likely {}.",
                span(short),
                span(long),
                span(usual)
            ))
            .say_if(
                verdict != Verdict::LooksFine,
                format!(
                    "Plan to add to it before {}, and stay with the fire.",
                    span(short)
                ),
            )
            .say("Weigh what you burn: your own figure is better than any told one.")
            .by(RuleId::NeverLeftAlone)
            .figure(Figure::Takes {
                short,
                likely: usual,
                long,
            })
    }
}
