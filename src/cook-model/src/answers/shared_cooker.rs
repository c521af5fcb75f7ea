//! Several things on one cooker.

use super::{Answer, Verdict};
use crate::meat::{CutId, Make};
use crate::safety::RuleId;
use crate::safety::wording::{degrees, span};
use crate::units::{Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Do these go together on one cooker?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SharedCooker {
    /// What goes on it, each with the hours that it takes.
    pub loads: Vec<Load>,
    /// They need not be on it at the same time: what is done first waits hot while the next one cooks.
    #[serde(default)]
    pub one_after_the_other: bool,
}

/// One load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Load {
    /// What it is.
    pub cut: CutId,
    /// How long it takes, likely.
    pub takes: TimeSpan,
}

/// A cut does well this far from its usual pit: 14 K (25 °F). Set by hand.
const LEEWAY: f64 = 14.0;

impl SharedCooker {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let pits = || {
            self.loads
                .iter()
                .map(|load| load.cut.cut().programme.pit.celsius())
        };
        let (Some(coolest), Some(hottest)) = (pits().reduce(f64::min), pits().reduce(f64::max))
        else {
            return Answer::new(Verdict::GoodToKnow)
                .say("Say what goes on it, and how long each takes.");
        };
        if self.one_after_the_other {
            return self.in_turn();
        }
        let one_pit = hottest - coolest <= 2.0 * LEEWAY && !self.mixes_skin_with_low_heat();
        let common = Temperature::from_celsius(f64::midpoint(coolest, hottest));
        let raw_poultry = self.has_poultry() && self.loads.len() > 1;
        let longest = self
            .loads
            .iter()
            .map(|load| load.takes)
            .fold(TimeSpan::ZERO, TimeSpan::max);
        let shortest = self
            .loads
            .iter()
            .map(|load| load.takes)
            .fold(longest, TimeSpan::min);
        Answer::new(if one_pit { Verdict::LooksFine } else { Verdict::WithCare })
            .say_if(one_pit, format!("One pit of about {} suits all of them.", degrees(common)))
            .say_if(!one_pit, format!("They want two pits: {} and {}. Cook all at the lower one, then crisp the skin hot at {} or more, here or in an oven.", degrees(Temperature::from_celsius(coolest)), degrees(Temperature::from_celsius(hottest)), degrees(Temperature::from_fahrenheit(325.0))))
            .say_if(longest > shortest, format!("Start them apart: the slowest goes on about {} before the quickest. Or the quick one cooks while the slow one rests.", span(longest - shortest)))
            .say("Each cold piece pulls the pit down. Give it time to come back.")
            .say_if(raw_poultry, "Raw poultry goes lowest, so that it drips on nothing.")
            .by_if(raw_poultry, RuleId::RawPoultryLowest)
            .by_if(self.has_poultry(), RuleId::MinimumPoultry)
            .by(RuleId::RawApart)
    }

    fn has_poultry(&self) -> bool {
        self.loads
            .iter()
            .any(|load| load.cut.cut().make == Make::Poultry)
    }

    /// Skin turns to rubber in a low pit, so a bird asks for its own heat at the end.
    fn mixes_skin_with_low_heat(&self) -> bool {
        self.has_poultry()
            && self
                .loads
                .iter()
                .any(|load| load.cut.cut().make != Make::Poultry)
    }

    fn in_turn(&self) -> Answer {
        let first = self.loads.first().map(|load| load.cut.cut());
        let next = self.loads.get(1).map_or(TimeSpan::ZERO, |load| load.takes);
        let longest = first.map_or(TimeSpan::ZERO, |cut| cut.rest.longest_hold);
        let fits = next <= longest;
        Answer::new(if fits { Verdict::LooksFine } else { Verdict::BetterNot })
            .say(format!("The first comes off and waits hot while the next cooks for about {}. It may wait {}.", span(next), span(longest)))
            .say_if(!fits, "That is too long. Use a second cooker, or cook the first one the day before and heat it up.")
            .by(RuleId::HoldHot)
            .by(RuleId::ProbeTheBox)
    }
}
