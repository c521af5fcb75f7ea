//! The core warms slowly, or the pit is to be cool for the night.

use super::{Answer, Figure, Missing, Verdict};
use crate::meat::CutId;
use crate::plan::Intact;
use crate::safety::wording::{degrees, span};
use crate::safety::{CORE_LIMIT, Governs, RuleId, SURFACE_LIMIT, Sort, governing};
use crate::units::{Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// It is slow to get hot. Is it still good?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SlowToWarm {
    /// What it is.
    pub cut: CutId,
    /// Whether it is whole, with nothing put inside it.
    #[serde(default)]
    pub intact: Intact,
    /// Time since it left the fridge.
    pub since: TimeSpan,
    /// Its core now, at the coldest place.
    #[serde(default)]
    pub core_now: Option<Temperature>,
    /// Time from the fridge to 60 °C in the core, where that was read.
    #[serde(default)]
    pub hot_after: Option<TimeSpan>,
    /// Coolest air at the meat that was read.
    #[serde(default)]
    pub coolest_pit: Option<Temperature>,
}

/// Air at the meat that still makes a wet surface hot in a few hours: 93 °C (just under 200 °F; set by hand).
const SURFACE_GETS_HOT: Temperature = Temperature::from_celsius(93.0);
/// The official sheets' least air, 107 °C (225 °F; USDA FSIS release of 2012, read at aces.edu).
const OFFICIAL: Temperature = Temperature::from_celsius(107.0);
const HOT: Temperature = Temperature::from_fahrenheit(140.0);

impl SlowToWarm {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let sort = Sort::of(self.cut.cut().make, self.intact);
        let asks = self.intact == Intact::Unknown && matches!(sort, Sort::PiercedMuscle);
        let answer = match governing(sort) {
            Governs::Surface => self.by_surface(),
            Governs::Core => self.by_core(),
        };
        answer
            .by_if(asks, RuleId::AskIntact)
            .say_if(asks, "You have not said whether it is whole. If it is, and nothing was put inside it, ask again and say so.")
            .missing_if(asks, Missing::Intact)
    }

    /// Whole muscle.
    fn by_surface(&self) -> Answer {
        let hot = self.core_now.is_some_and(|core| core >= HOT);
        let over = self.since > CORE_LIMIT;
        let rule = RuleId::SurfaceHotInTime;
        if self.hot_after.is_some_and(|after| after <= CORE_LIMIT) {
            return Answer::new(Verdict::LooksFine)
                .say("The core was hot within 4 h, and the outside before it.")
                .by(rule);
        }
        let Some(pit) = self.coolest_pit else {
            return Answer::new(if over { Verdict::NotKnown } else { Verdict::WithCare })
                .say("For a whole piece the outside must be hot within 4 h. Only the air at the meat can show that. Read it now.")
                .by(rule)
                .by(RuleId::UnknownIsTooLong)
                .missing(Missing::Pit);
        };
        if pit < SURFACE_GETS_HOT {
            return self.cool_pit_so_far(pit, over, hot);
        }
        if !over {
            return Answer::new(Verdict::LooksFine)
                .say(format!("The core may take longer than 4 h, the outside may not. Keep the air at the meat at {} or more.", degrees(Temperature::from_fahrenheit(225.0))))
                .by(rule)
                .by(RuleId::SmokerAir);
        }
        Answer::new(Verdict::WithCare)
            .say("The outside was hot in time, and on a whole piece the germs are outside. So a slow middle is a caution, not a stop.")
            .say(format!("Raise the pit to {} or more, or wrap it. That also saves your time.", degrees(Temperature::from_fahrenheit(250.0))))
            .say_if(self.hot_after.is_none() && hot, "Nobody read it in between, so how long the middle took cannot be shown. Plan a reading into each time away.")
            .by(RuleId::SurfaceHotInTime)
            .by(RuleId::SlowCoreIntact)
            .by(RuleId::SmokerAir)
            .figure(Figure::AtMost { span: CORE_LIMIT })
    }

    /// The air at the meat was too cool for the surface at some time.
    fn cool_pit_so_far(&self, pit: Temperature, over: bool, hot: bool) -> Answer {
        let rule = RuleId::SurfaceHotInTime;
        let air = degrees(pit);
        match (over, hot) {
            (false, _) => Answer::new(Verdict::ActNow)
                .say(format!("Air of {air} leaves a wet surface too cool. Raise the pit now: the outside must be hot within {}.", span(SURFACE_LIMIT - self.since)))
                .by(rule)
                .by(RuleId::SmokerAir)
                .figure(Figure::Left { span: SURFACE_LIMIT - self.since }),
            (true, false) => Answer::new(Verdict::ThrowAway)
                .say(format!("Air of {air} leaves a wet surface far too cool for 4 h and more."))
                .by(rule)
                .by(RuleId::SmokerAir),
            (true, true) => Answer::new(Verdict::NotKnown)
                .say(format!("It is hot now, but air of {air} was too cool for the outside. That it was hot within 4 h cannot be shown. By the rule it is thrown away."))
                .by(rule)
                .by(RuleId::UnknownIsTooLong),
        }
    }

    /// Everything else.
    fn by_core(&self) -> Answer {
        let hot = self.core_now.is_some_and(|core| core >= HOT);
        let rule = RuleId::CoreHotInTime;
        match self.hot_after {
            Some(after) if after <= CORE_LIMIT => {
                return Answer::new(Verdict::LooksFine)
                    .say(format!(
                        "It was past {} after {}. That is within 4 h.",
                        degrees(HOT),
                        span(after)
                    ))
                    .by(rule);
            }
            Some(after) => return too_slow(after),
            None => {}
        }
        if self.since > CORE_LIMIT {
            return match self.core_now {
                Some(_) if !hot => too_slow(self.since),
                _ => Answer::new(Verdict::NotKnown)
                    .say("More than 4 h have passed and nobody read when the middle got hot. It cannot be shown to be in time. By the rule it is thrown away.")
                    .by(rule)
                    .by(RuleId::UnknownIsTooLong)
                    .missing_if(self.core_now.is_none(), Missing::CoreNow),
            };
        }
        let left = CORE_LIMIT - self.since;
        if hot {
            return Answer::new(Verdict::LooksFine)
                .say(format!("It is past {} in time.", degrees(HOT)))
                .by(rule);
        }
        // Halfway to the limit and read to be still low: time to act.
        let hurry = self.core_now.is_some() && self.since > CORE_LIMIT * 0.5;
        Answer::new(if hurry {
            Verdict::ActNow
        } else {
            Verdict::WithCare
        })
        .say(format!(
            "The middle must be past {} within {}.",
            degrees(HOT),
            span(left)
        ))
        .say_if(hurry, "Raise the pit now.")
        .say_if(
            !hurry,
            "Keep the pit hot, and read the middle well before that.",
        )
        .by(rule)
        .by(RuleId::SmokerAir)
        .figure(Figure::Left { span: left })
        .missing_if(self.core_now.is_none(), Missing::CoreNow)
    }
}

fn too_slow(after: TimeSpan) -> Answer {
    Answer::new(Verdict::ThrowAway)
        .say(format!("The inside of this piece was once outside, or was pierced. Its middle was in the danger range for {}. The limit is 4 h.", span(after)))
        .say("Some would eat it. The rule says throw it away.")
        .by(RuleId::CoreHotInTime)
        .figure(Figure::AtMost { span: CORE_LIMIT })
}

/// A cool pit is planned, such as through the night.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CoolPit {
    /// What it is.
    pub cut: CutId,
    /// Whether it is whole, with nothing put inside it.
    #[serde(default)]
    pub intact: Intact,
    /// Air at the meat in the cool stretch.
    pub pit: Temperature,
}

impl CoolPit {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let whole = governing(Sort::of(self.cut.cut().make, self.intact)) == Governs::Surface;
        let verdict = match (self.pit >= OFFICIAL, self.pit >= SURFACE_GETS_HOT, whole) {
            (true, ..) => Verdict::LooksFine,
            (false, true, true) => Verdict::WithCare,
            (false, true, false) => Verdict::BetterNot,
            (false, false, _) => Verdict::No,
        };
        Answer::new(verdict)
            .say_if(verdict != Verdict::LooksFine, format!("Run it at {} or more. Below that the meat dries, and it stays long in the danger range.", degrees(Temperature::from_fahrenheit(225.0))))
            .say_if(verdict == Verdict::WithCare, "Many cook whole pieces that way. The time spreads widely: plan with the long end.")
            .say_if(verdict == Verdict::LooksFine, "Read the air at the meat, not at the lid.")
            .by(RuleId::SmokerAir)
            .by(if whole { RuleId::SurfaceHotInTime } else { RuleId::CoreHotInTime })
            .missing_if(self.intact == Intact::Unknown, Missing::Intact)
    }
}
