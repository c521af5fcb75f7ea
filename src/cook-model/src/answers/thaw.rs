//! It is frozen. Does it thaw in time, and how?

use super::{Answer, Figure, Verdict};
use crate::meat::CutId;
use crate::safety::wording::span;
use crate::safety::{RuleId, ThawSpan, thaw_in_cold_water, thaw_in_fridge};
use crate::units::{Mass, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Does it thaw in time?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ThawInTime {
    /// What it is.
    pub cut: CutId,
    /// Weight of one piece.
    pub mass: Mass,
    /// Time until it has to go on.
    pub available: TimeSpan,
    /// How it is to thaw.
    pub way: ThawWay,
}

/// How it is to thaw.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ThawWay {
    /// In the fridge.
    Fridge,
    /// Under cold water that is changed every 30 min.
    ColdWater,
    /// In water that is not changed, such as in a cooler all day.
    StandingWater,
    /// On a counter.
    Counter,
    /// Not at all: from the freezer onto the smoker.
    Frozen,
}

impl ThawInTime {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let [fridge, water] = [
            thaw_in_fridge(self.cut, self.mass),
            thaw_in_cold_water(self.cut, self.mass),
        ];
        let need = match self.way {
            ThawWay::Fridge => Some((fridge, RuleId::ThawInFridge)),
            ThawWay::ColdWater => Some((water, RuleId::ThawInColdWater)),
            ThawWay::StandingWater | ThawWay::Counter | ThawWay::Frozen => None,
        };
        let answer = match need {
            Some((takes, rule)) => {
                let verdict = if self.available >= takes.most {
                    Verdict::LooksFine
                } else if self.available >= takes.least {
                    Verdict::WithCare
                } else {
                    Verdict::No
                };
                Answer::new(verdict)
                    .say(format!(
                        "It takes {}, and you have {}.",
                        takes_words(takes),
                        span(self.available)
                    ))
                    .say_if(
                        self.way == ThawWay::ColdWater,
                        "Change the water every 30 min, and cook it at once after.",
                    )
                    .by(rule)
                    .figure(Figure::Takes {
                        short: takes.least,
                        likely: takes.most,
                        long: takes.most,
                    })
            }
            None => self.refused(),
        };
        let fits = |takes: ThawSpan| self.available >= takes.most;
        let lacks = answer.verdict >= Verdict::WithCare;
        answer
            .say_if(
                lacks && self.way != ThawWay::Fridge && fits(fridge),
                format!("The fridge would do: {} at most.", span(fridge.most)),
            )
            .say_if(
                lacks && self.way != ThawWay::ColdWater && fits(water),
                format!(
                    "Cold water would do: {} at most, changed every 30 min, then on at once.",
                    span(water.most)
                ),
            )
            .say_if(
                lacks && !fits(water),
                "Neither way is quick enough. Buy a thawed piece, or cook another day.",
            )
            .by(RuleId::ThawThrough)
    }

    fn refused(&self) -> Answer {
        let why = match self.way {
            ThawWay::Frozen => {
                "Frozen meat over slow heat stays far too long in the danger range. Thaw it first."
            }
            ThawWay::Counter => {
                "Never thaw on a counter: the outside is warm for hours while the middle is ice."
            }
            _ => {
                "Water that is not changed grows warm, unless you keep it at {4 °C|40 °F} with ice."
            }
        };
        Answer::new(Verdict::No)
            .say(why)
            .by(if self.way == ThawWay::StandingWater {
                RuleId::ThawInColdWater
            } else {
                RuleId::ThawThrough
            })
    }
}

fn takes_words(takes: ThawSpan) -> String {
    let [least, most] = [takes.least, takes.most].map(span);
    if least == most {
        format!("about {most}")
    } else {
        format!("{least} to {most}")
    }
}
