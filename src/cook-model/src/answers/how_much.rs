//! How much to buy.

use super::{Answer, Figure, Verdict};
use crate::meat::CutId;
use crate::plan::Audience;
use crate::provisions::Weights;
use crate::safety::RuleId;
use crate::safety::wording::weight;
use crate::units::Mass;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How much for so many, or is this enough?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HowMuch {
    /// What it is.
    pub cut: CutId,
    /// Eaters. 1 to 1,000.
    pub people: u32,
    /// Cooked meat for each. None: 200 g.
    #[serde(default)]
    pub portion: Option<Mass>,
    /// What is left of the raw weight, 0.2 to 0.9. None: the usual for the cut.
    #[serde(default)]
    pub left_over: Option<f64>,
    /// Raw weight that is there. None: to be found.
    #[serde(default)]
    pub raw: Option<Mass>,
    /// Who is served.
    #[serde(default)]
    pub audience: Audience,
}

impl HowMuch {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let portion = self.portion.unwrap_or(Mass::from_grams(200.0));
        let wanted = portion * f64::from(self.people);
        let kept = self.left_over.unwrap_or_else(|| {
            let kilogram = Mass::from_kilograms(1.0);
            Weights::from_bought(self.cut, kilogram).on_plate / kilogram
        });
        let kept = kept.clamp(0.2, 0.9);
        let buy = wanted / kept;
        let many = self.people > 40;
        let answer = match self.raw {
            None => Answer::new(Verdict::GoodToKnow)
                .say(format!("{} on the plates, divided by the {:.0} % that is left after trim and cook: buy {}.", weight(wanted), 100.0 * kept, weight(buy)))
                .say("Divide by what is left. Adding the loss on top gives too little."),
            Some(raw) => {
                let there = raw * kept;
                let each = there / f64::from(self.people.max(1));
                let verdict = match there / wanted {
                    share if share >= 1.15 => Verdict::LooksFine,
                    share if share >= 0.9 => Verdict::WithCare,
                    _ => Verdict::BetterNot,
                };
                Answer::new(verdict)
                    .say(format!("That leaves {} cooked, {} for each.", weight(there), weight(each)))
                    .say_if(verdict == Verdict::WithCare, "That is just right with sides, and thin without.")
                    .say_if(verdict == Verdict::BetterNot, format!("For {} you want {} raw.", self.people, weight(buy)))
                    .figure(Figure::OnPlate { mass: there })
            }
        };
        answer
            .say_if(many, "For so many, make what keeps well ahead and freeze it. Share the rest out over the cookers by room on the grate.")
            .by_if(many, RuleId::CoolInTwoStages)
            .by_if(self.audience == Audience::Public, RuleId::LocalCode)
            .figure(Figure::Buy { mass: buy })
    }
}
