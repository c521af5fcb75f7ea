//! Heating up what is cold.

use super::{Answer, Figure, Verdict};
use crate::safety::cooling::{Body, OvenHeat, reheat_time};
use crate::safety::wording::{degrees, span};
use crate::safety::{RuleId, Sort, minimum};
use crate::units::{Length, Mass, Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How do I heat it up?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HeatItUp {
    /// Cooked weight of one piece or pan.
    pub mass: Mass,
    /// Depth of the layer in a covered pan. None: in one piece.
    #[serde(default)]
    pub depth: Option<Length>,
    /// Air of the oven.
    pub oven: Temperature,
    /// The oven has a fan.
    #[serde(default)]
    pub fan: bool,
    /// Its core now. None: fridge-cold, 4 °C.
    #[serde(default)]
    pub core: Option<Temperature>,
}

const LIMIT: TimeSpan = TimeSpan::from_hours(2.0);

impl HeatItUp {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let body = self
            .depth
            .map_or_else(|| Body::lump(self.mass), Body::layer);
        let goal = minimum(Sort::Leftovers).temperature;
        let from = self.core.unwrap_or(Temperature::from_celsius(4.0));
        let heat = OvenHeat {
            air: self.oven,
            fan: self.fan,
        };
        let takes = reheat_time(body, from, goal, heat);
        let answer = match takes {
            Some(takes) if takes <= LIMIT => Answer::new(if takes * 1.25 <= LIMIT {
                Verdict::LooksFine
            } else {
                Verdict::WithCare
            })
            .say(format!(
                "It takes about {} to {} all through.",
                span(takes),
                degrees(goal)
            ))
            .figure(Figure::Takes {
                short: takes * 0.8,
                likely: takes,
                long: takes * 1.25,
            }),
            Some(takes) => Answer::new(Verdict::No)
                .say(format!(
                    "It would take about {}. The limit is 2 h.",
                    span(takes)
                ))
                .say(format!(
                    "Slice or pull it, spread it {} deep, cover it, and use an oven at {} or more.",
                    crate::safety::wording::thickness(Length::from_millimetres(40.0)),
                    degrees(Temperature::from_fahrenheit(325.0))
                ))
                .figure(Figure::Takes {
                    short: takes * 0.8,
                    likely: takes,
                    long: takes * 1.25,
                }),
            None => Answer::new(Verdict::No).say(format!(
                "Air of {} never brings it to {} in time.",
                degrees(self.oven),
                degrees(goal)
            )),
        };
        answer
            .say("Add a splash of its juice, keep it covered, and read the coldest spot.")
            .by(RuleId::ReheatThrough)
            .by(RuleId::ReheatQuickly)
    }
}
