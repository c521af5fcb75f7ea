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
        let cold = Temperature::from_fahrenheit(40.0);
        let still_hot = !self.raw && self.core.is_some_and(|core| core >= floor);
        let still_cold = self.core.is_some_and(|core| core <= cold);
        if still_hot && !self.planned {
            return Answer::new(Verdict::LooksFine)
                .say(format!(
                    "It still reads {} or more. Put it back on heat now, or eat it.",
                    degrees(floor)
                ))
                .by(hold);
        }
        let Some(out) = self.span else {
            if still_cold {
                return Answer::new(Verdict::WithCare)
                    .say("It still reads cold. If it has been so all along, put it back in the cold now.")
                    .say("If it may have been warm before, count that as too long and throw it away.")
                    .by(RuleId::KeepCold)
                    .by(RuleId::UnknownIsTooLong)
                    .missing(Missing::SinceWhen);
            }
            return Answer::new(Verdict::ThrowAway)
                .say("Nobody knows how long it was too warm. Count that as too long.")
                .say_if(
                    self.raw,
                    format!(
                        "Raw meat above {} for an unknown time is lost.",
                        degrees(cold)
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
                .say_if(self.planned && !self.served && !self.raw, format!("Let it go on in an oven at {} overnight, wrapped. Check it in the morning, then rest it or hold it hot.", degrees(Temperature::from_fahrenheit(225.0))))
                .say_if(self.planned && self.served, "Bring out a little at a time, and keep the rest hot. Or use a hot pan.")
                .by(rule)
                .by_if(self.served, RuleId::OnTheTable)
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
