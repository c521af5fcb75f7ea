//! Cooked in two goes: part today and part tomorrow, here and there.

use super::{Answer, Missing, Verdict};
use crate::meat::CutId;
use crate::plan::Intact;
use crate::safety::wording::degrees;
use crate::safety::{RuleId, Sort, minimum};
use crate::units::Temperature;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Cook it in two goes?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct InTwoGoes {
    /// What it is.
    pub cut: CutId,
    /// Whether it is whole, with nothing put inside it.
    #[serde(default)]
    pub intact: Intact,
    /// What lies between the two.
    pub between: Between,
    /// Its core at the end of the first go. None: not known, or just by the clock.
    #[serde(default)]
    pub core: Option<Temperature>,
    /// It is cooked until tender in the first go.
    #[serde(default)]
    pub tender: bool,
    /// Air of the second go.
    #[serde(default)]
    pub second_heat: Option<Temperature>,
    /// The first go is in an oven, the smoke comes after.
    #[serde(default)]
    pub oven_first: bool,
    /// It has happened already.
    #[serde(default)]
    pub done: bool,
}

/// What lies between two goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Between {
    /// It moves hot from one heat to the next.
    StraightOn,
    /// It is chilled.
    Chilled,
    /// It stays out.
    LeftOut,
}

/// Reheating air below this is too slow for large pieces: 121 °C (250 °F; common practice 250 to 300 °F).
const REHEAT_AIR: Temperature = Temperature::from_fahrenheit(250.0);

impl InTwoGoes {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        match self.between {
            Between::StraightOn => self.straight_on(),
            Between::LeftOut => Answer::new(if self.done { Verdict::ThrowAway } else { Verdict::No })
                .say("Meat must not stand between two heats. Move it hot into an oven and let it go on there, wrapped.")
                .by(RuleId::TwoHours)
                .by(RuleId::NeverPartCook),
            Between::Chilled => self.chilled(),
        }
    }

    fn straight_on(&self) -> Answer {
        let answer = Answer::new(if self.oven_first {
            Verdict::WithCare
        } else {
            Verdict::LooksFine
        });
        answer
            .say("Moving it hot from one heat straight to the next is the way to do it. It must not cool in between.")
            .say_if(self.oven_first, "Do it the other way round: smoke first, oven after. Raw meat takes the smoke best.")
            .say_if(self.oven_first, format!("Or cook it by day, hotter: at {} and wrapped it takes far less time.", degrees(Temperature::from_fahrenheit(275.0))))
            .by(RuleId::NeverPartCook)
    }

    fn chilled(&self) -> Answer {
        let sort = Sort::of(self.cut.cut().make, self.intact);
        let least = minimum(sort).temperature;
        let through = degrees(minimum(Sort::Leftovers).temperature);
        let cooked = self.core.is_some_and(|core| core >= least) || self.tender;
        let slow = self.second_heat.is_some_and(|air| air < REHEAT_AIR);
        if !cooked {
            let verdict = if self.done {
                Verdict::ThrowAway
            } else {
                Verdict::No
            };
            return Answer::new(verdict)
                .say("Part-cooked meat must not be chilled and finished later.")
                .say(format!("Cook it through now and chill it fast. Then heat it up, wrapped, at {} or more, to {through} all through.", degrees(REHEAT_AIR)))
                .say(format!("Or cook it hot and fast in one go, at {} or so.", degrees(Temperature::from_fahrenheit(300.0))))
                .say("Or move it hot straight into an oven.")
                .say_if(slow, format!("From cold, air below {} leaves it far too long in the danger range.", degrees(REHEAT_AIR)))
                .by(RuleId::NeverPartCook)
                .by(RuleId::ReheatQuickly)
                .missing_if(self.core.is_none(), Missing::CoreNow);
        }
        let verdict = if slow {
            Verdict::BetterNot
        } else if self.tender {
            Verdict::LooksFine
        } else {
            Verdict::WithCare
        };
        Answer::new(verdict)
            .say_if(self.tender, format!("Cook it through, chill it fast in thin layers, and heat it to {through} for the meal."))
            .say_if(!self.tender, format!("It was past the least heat, but not tender. It must get to {through} within 2 h and then cook on until tender, for some hours."))
            .say_if(!self.tender, "Next time finish it first, then chill it.")
            .say_if(slow, format!("Use air of {} or more for that.", degrees(REHEAT_AIR)))
            .by(RuleId::NeverPartCook)
            .by(RuleId::CoolInTwoStages)
            .by(RuleId::ReheatThrough)
            .by(RuleId::ReheatQuickly)
    }
}
