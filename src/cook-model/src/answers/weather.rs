//! Cold, wind and height.

use super::{Answer, Figure, Verdict};
use crate::physics::{air, reachable_target};
use crate::safety::RuleId;
use crate::safety::wording::degrees;
use crate::units::{Length, Temperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What does this weather do to the cook?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WeatherAhead {
    /// Air outside.
    pub air: Temperature,
    /// Wind at the cooker, m/s.
    pub wind_metres_per_second: f64,
    /// It stands on a wooden deck or on dry grass.
    #[serde(default)]
    pub on_wood_or_dry_grass: bool,
}

/// Beaufort 5, fresh breeze, and 6, strong breeze, in m/s (Beaufort scale of the WMO; from memory).
const FRESH: f64 = 8.0;
const STRONG: f64 = 10.8;

impl WeatherAhead {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let calm = self.wind_metres_per_second < FRESH;
        // A wind that is not a number is neither calm nor bearable.
        let bearable = self.wind_metres_per_second < STRONG;
        if !bearable || (self.on_wood_or_dry_grass && !calm) {
            return Answer::new(Verdict::No)
                .say("Do not leave a fire in such a wind, and do not light one. Put the coals out before it comes, with the vents shut.")
                .say("Move the meat hot into the kitchen oven and finish it there, wrapped.")
                .by(RuleId::WindAndDryGrass)
                .by(RuleId::NeverLeftAlone)
                .by(RuleId::NoShelterUnderARoof)
                .by(RuleId::NeverPartCook);
        }
        let cold = self.air < Temperature::from_celsius(5.0);
        Answer::new(if cold || !calm { Verdict::WithCare } else { Verdict::LooksFine })
            .say("As long as the pit holds its heat, the hours stay the same. Cold and wind cost fuel, and time after each look under the lid.")
            .say_if(cold || !calm, "Keep one or two hours in hand, lift the lid less, and have half as much fuel again.")
            .say_if(!calm, "Wind does more than cold. Turn the cooker out of it, or stand a windbreak of metal well clear of it.")
            .say_if(cold, "Read the air at the meat. Plan the oven as a way out.")
            .by_if(!calm, RuleId::WindAndDryGrass)
            .by(RuleId::NoShelterUnderARoof)
            .by(RuleId::SmokerAir)
    }
}

/// What does this height do to the cook?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HighUp {
    /// Height above the sea. 0 to 5,000 m.
    pub altitude: Length,
    /// Core aimed for at sea level.
    pub target: Temperature,
}

impl HighUp {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let boils = air::boiling_point(air::pressure_at(self.altitude));
        let aim = reachable_target(self.target, self.altitude);
        let lowered = aim < self.target;
        let high = self.altitude > Length::from_metres(1800.0);
        Answer::new(if lowered || high { Verdict::WithCare } else { Verdict::LooksFine })
            .say(format!("Water boils at {} up there, and wet meat gets no hotter.", degrees(boils)))
            .say_if(lowered, format!("So aim for {} at most, and go by feel: it is done when the probe slides in.", degrees(aim)))
            .say_if(high, "It dries sooner: wrap earlier, and take more fuel. The times spread more widely, so trust your own cooks most.")
            .say_if(!high && !lowered, "At this height most cooks notice little.")
            .say("In boiling water your thermometer must read that, not the figure for sea level.")
            .by(RuleId::TrueThermometer)
            .figure(Figure::Boils { at: boils })
            .figure(Figure::Target { core: aim })
    }
}
