//! Left out: raw or cooked, in a room, in a warm fridge, on the table.

use super::{Answer, Figure, Missing, Verdict};
use crate::plan::Audience;
use crate::safety::wording::{degrees, span};
use crate::safety::{RuleId, hold_minimum, out_of_fridge_limit};
use crate::units::{Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// It was left out, or is to be. Is that all right?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LeftOut {
    /// It is raw.
    pub raw: bool,
    /// For how long, in all. None: nobody knows.
    #[serde(default)]
    pub span: Option<TimeSpan>,
    /// Its core now.
    #[serde(default)]
    pub core: Option<Temperature>,
    /// Air around. None: 20 °C.
    #[serde(default)]
    pub air: Option<Temperature>,
    /// It is only a plan so far.
    #[serde(default)]
    pub planned: bool,
    /// It is on the table for guests.
    #[serde(default)]
    pub served: bool,
}

impl LeftOut {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let air = self.air.unwrap_or(Temperature::from_celsius(20.0));
        let limit = out_of_fridge_limit(air);
        let rule = if limit < TimeSpan::from_hours(2.0) {
            RuleId::OneHourInHeat
        } else {
            RuleId::TwoHours
        };
        let (floor, hold) = hold_minimum(Audience::Household, false);
        let safe_side = match self.core {
            Some(core) if self.raw => core <= Temperature::from_fahrenheit(40.0),
            Some(core) => core >= floor || core <= Temperature::from_fahrenheit(40.0),
            None => false,
        };
        if safe_side && !self.planned {
            return Answer::new(Verdict::LooksFine)
                .say("Its core is out of the danger range. Put it back where it belongs now.")
                .by(if self.raw { RuleId::KeepCold } else { hold });
        }
        let Some(out) = self.span else {
            return Answer::new(Verdict::ThrowAway)
                .say("Nobody knows how long it was too warm. Count that as too long.")
                .say_if(
                    self.core.is_some_and(|_| self.raw),
                    format!(
                        "Raw meat above {} for an unknown time is lost.",
                        degrees(Temperature::from_fahrenheit(40.0))
                    ),
                )
                .by(RuleId::UnknownIsTooLong)
                .by(rule)
                .by(RuleId::WhoToAsk)
                .missing(Missing::SinceWhen);
        };
        if out > limit {
            let verdict = if self.planned {
                Verdict::No
            } else {
                Verdict::ThrowAway
            };
            return Answer::new(verdict)
                .say(format!("{} is too long. The limit out of the cold and off the heat is {}.", span(out), span(limit)))
                .say_if(self.planned, format!("Let it go on in an oven at {} overnight, wrapped. Check it in the morning, then rest it or hold it hot.", degrees(Temperature::from_fahrenheit(225.0))))
                .by(rule)
                .by(RuleId::WhoToAsk)
                .figure(Figure::AtMost { span: limit });
        }
        Answer::new(Verdict::WithCare)
            .say(format!("{} is within the limit of {}. When that is over, throw away what is left out.", span(out), span(limit)))
            .say_if(self.served, "A hot pan is better. Bring out a little at a time, and keep the next piece whole and hot.")
            .by(if self.served { RuleId::OnTheTable } else { rule })
            .by_if(self.served, hold)
            .figure(Figure::AtMost { span: limit })
            .figure(Figure::Left { span: limit - out })
    }
}
