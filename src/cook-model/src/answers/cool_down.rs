//! What is left has to get cold, or has been put away: in time?

use super::{Answer, Figure, Missing, Verdict};
use crate::safety::RuleId;
use crate::safety::cooling::{Body, Chilling, TwoStages, how_to_portion, two_stages};
use crate::safety::wording::{degrees, span, thickness};
use crate::units::{Length, Mass, Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How do I cool this down in time, or did I?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CoolItDown {
    /// What is left, cooked.
    pub mass: Mass,
    /// Depth of the layer. None: in one piece.
    #[serde(default)]
    pub depth: Option<Length>,
    /// In ice water.
    #[serde(default)]
    pub ice: bool,
    /// Air of the fridge. None: 3 °C.
    #[serde(default)]
    pub fridge: Option<Temperature>,
    /// Time since it was put away. None: it is still to be done.
    #[serde(default)]
    pub since: Option<TimeSpan>,
    /// Its warmest point now.
    #[serde(default)]
    pub core_now: Option<Temperature>,
}

impl CoolItDown {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        match (self.since, self.core_now) {
            (Some(since), Some(core)) => self.read(since, core),
            _ => self.planned(),
        }
    }

    fn chilling(&self) -> Chilling {
        let air = self.fridge.unwrap_or(Temperature::from_celsius(3.0));
        if self.ice {
            Chilling::PanInIceWater { air }
        } else {
            Chilling::Fridge { air }
        }
    }

    fn body(&self) -> Body {
        self.depth
            .map_or_else(|| Body::lump(self.mass), Body::layer)
    }

    /// Against the two limits.
    fn read(&self, since: TimeSpan, core: Temperature) -> Answer {
        let [at_21, at_5] = [70.0, 41.0].map(Temperature::from_fahrenheit);
        let missed =
            (since > TwoStages::TO_21 && core > at_21) || (since > TwoStages::TO_5 && core > at_5);
        let rule = RuleId::CoolInTwoStages;
        if missed {
            return self.how(
                Answer::new(Verdict::ThrowAway)
                    .say(format!(
                        "It reads {} after {}. It had to be at {} after 2 h, and at {} after 6 h.",
                        degrees(core),
                        span(since),
                        degrees(at_21),
                        degrees(at_5)
                    ))
                    .by(rule),
            );
        }
        let next = if core > at_21 {
            TwoStages::TO_21 - since
        } else {
            (TwoStages::TO_5 - since).max(TimeSpan::ZERO)
        };
        let standing = Answer::new(if core > at_21 {
            Verdict::ActNow
        } else {
            Verdict::LooksFine
        })
        .say_if(
            core > at_21,
            format!(
                "It must be at {} within {}. Spread it thin and use ice now.",
                degrees(at_21),
                span(next)
            ),
        )
        .say_if(
            core <= at_21 && core > at_5,
            format!(
                "Read it again: it must be at {} within {}.",
                degrees(at_5),
                span(next)
            ),
        )
        .say_if(
            core <= at_5,
            "It is cold. Write the day on it and eat it within 3 to 4 days.",
        )
        .by(rule)
        .by_if(core <= at_5, RuleId::KeepsCooked)
        .figure(Figure::Left { span: next });
        if since > TwoStages::TO_21 && core <= at_21 {
            return standing
                .at_least(Verdict::WithCare)
                .say("Whether it was cold enough after 2 h, only a reading then can tell.")
                .missing(Missing::CoreNow);
        }
        standing
    }

    fn planned(&self) -> Answer {
        let stages = two_stages(
            self.body(),
            Temperature::from_celsius(70.0),
            self.chilling(),
        );
        let verdict = if stages.kept() {
            Verdict::LooksFine
        } else {
            Verdict::No
        };
        let answer = Answer::new(verdict)
            .say_if(verdict == Verdict::No, "That cools far too slowly.")
            .say_if(
                verdict == Verdict::LooksFine,
                "That cools in time. Leave the lid off until it is cold.",
            )
            .by(RuleId::CoolInTwoStages);
        self.how(answer)
            .missing_if(self.depth.is_none(), Missing::Depth)
    }

    /// How to portion it.
    fn how(&self, answer: Answer) -> Answer {
        let answer = answer
            .by(RuleId::ShallowPortions)
            .by(RuleId::ChillLeftovers);
        let hot = Temperature::from_celsius(70.0);
        match how_to_portion(self.mass, hot, self.chilling()) {
            Some(portions) => answer
                .say(format!("Pull or slice it first. Spread it no deeper than {}: that fills {} flat pans of {{325 by 265 mm|13 by 10 in}}.", thickness(portions.depth), portions.half_pans))
                .say("Read the warmest spot after 2 h and after 6 h.")
                .figure(Figure::Depth { depth: portions.depth }),
            None => answer.say("This fridge is too warm for it. Use ice water around the pans, or the freezer."),
        }
    }
}
