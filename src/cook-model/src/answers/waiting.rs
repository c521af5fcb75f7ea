//! It is done, or nearly, and has to wait: in a box, in a warm oven, on a counter, on the road.

use super::{Answer, Figure, Keep, Missing, Verdict};
use crate::meat::{Cut, CutId};
use crate::plan::{Audience, Intact};
use crate::safety::cooling::{WarmSpan, stays_above};
use crate::safety::wording::{degrees, span};
use crate::safety::{RuleId, Sort, hold_minimum, minimum, out_of_fridge_limit};
use crate::units::{Mass, Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Can it wait so long, there?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CanItWait {
    /// What it is.
    pub cut: CutId,
    /// Whether it is whole, with nothing put inside it.
    #[serde(default)]
    pub intact: Intact,
    /// Weight of all that waits together, as it went on. None: one usual piece.
    #[serde(default)]
    pub mass: Option<Mass>,
    /// Its core now. None: it is not off yet.
    #[serde(default)]
    pub core: Option<Temperature>,
    /// How long it has to wait.
    pub wait: TimeSpan,
    /// Where.
    pub keep: Keep,
    /// Air around. None: 20 °C.
    #[serde(default)]
    pub air: Option<Temperature>,
    /// It is not tender yet and goes on cooking later.
    #[serde(default)]
    pub unfinished: bool,
    /// It waits on the road.
    #[serde(default)]
    pub on_the_road: bool,
    /// Who is served.
    #[serde(default)]
    pub audience: Audience,
}

/// Core after venting, from which a wait in a box begins (common practice).
const VENTED: Temperature = Temperature::from_celsius(80.0);

/// An oven above this goes on cooking: 77 °C (170 °F; common practice).
const GOES_ON_COOKING: Temperature = Temperature::from_fahrenheit(170.0);

impl CanItWait {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let cut = self.cut.cut();
        let sort = Sort::of(cut.make, self.intact);
        let core = self.core.unwrap_or(VENTED);
        if core < minimum(sort).temperature {
            return self.not_done(sort, core);
        }
        if self.unfinished {
            return self.unfinished();
        }
        let answer = match self.keep {
            Keep::WarmOven { air } if air > GOES_ON_COOKING => self.hot_oven(cut, air),
            Keep::WarmOven { air } => self.warm_oven(cut, air),
            _ => self.shut_in(cut, core),
        };
        // What is reckoned without a reading is never more than that.
        let answer = if self.core.is_none() {
            answer.at_least(Verdict::WithCare)
        } else {
            answer
        };
        answer
            .missing_if(self.core.is_none(), Missing::CoreNow)
            .missing_if(self.mass.is_none(), Missing::Weight)
    }

    fn floor(&self) -> (Temperature, RuleId) {
        hold_minimum(self.audience, false)
    }

    fn around(&self) -> Temperature {
        self.air.unwrap_or(Temperature::from_celsius(20.0))
    }

    /// Cooked weight: two thirds of what went on (common practice for long cooks: a third is lost).
    fn cooked(&self) -> Mass {
        self.mass.unwrap_or(self.cut.cut().shape.mass) * (2.0 / 3.0)
    }

    /// Below its minimum: a pink roast, or meat that is simply not done.
    fn not_done(&self, sort: Sort, core: Temperature) -> Answer {
        let limit = out_of_fridge_limit(self.around());
        let least = minimum(sort);
        if sort != Sort::IntactMuscle {
            return Answer::new(Verdict::ActNow)
                .say(format!(
                    "At {} it is not done. Put it back on the heat until it reads {}.",
                    degrees(core),
                    degrees(least.temperature)
                ))
                .by(least.rule)
                .by(RuleId::NeverPartCook)
                .missing_if(self.intact == Intact::Unknown, Missing::Intact);
        }
        let (floor, _) = hold_minimum(self.audience, true);
        let held = matches!(self.keep, Keep::WarmOven { air } if air >= floor);
        let verdict = if held || self.wait <= limit {
            Verdict::WithCare
        } else {
            Verdict::No
        };
        Answer::new(verdict)
            .say_if(verdict == Verdict::No, format!("{} out of the heat is too long.", span(self.wait)))
            .say(format!("At {} it is a pink roast, below the heat that the chart asks for. That is your choice, and not for all guests.", degrees(core)))
            .say_if(!held, format!("Take it off now and cover it loosely. Out of the heat it has {} at most, carving included. Give it a short hot blast just before you serve.", span(limit)))
            .say_if(held, format!("Keep the oven at {} or more, and read the core.", degrees(floor)))
            .say(format!("To hold it longer, hold it at {} or more for the full time in the table.", degrees(floor)))
            .by(RuleId::TwoHours)
            .by(RuleId::RoastByTable)
            .by(RuleId::WhoMustNotEat)
            .figure(Figure::AtMost { span: limit })
    }

    /// A pause before it is tender.
    fn unfinished(&self) -> Answer {
        let limit = out_of_fridge_limit(self.around());
        let warm = matches!(self.keep, Keep::WarmOven { air } if air >= self.floor().0);
        let verdict = if warm || self.wait <= limit {
            Verdict::WithCare
        } else {
            Verdict::BetterNot
        };
        Answer::new(verdict)
            .say(format!("Take it off, cover it, and keep it above {}. Finish it wrapped in the last hour.", degrees(self.floor().0)))
            .say_if(!warm, format!("Keep the pause under {}.", span(limit)))
            .say_if(verdict == Verdict::BetterNot, "That is too long a pause. Cook it through now, chill it fast in thin layers, and heat it up for the meal.")
            .by(self.floor().1)
            .by(RuleId::TwoHours)
            .figure(Figure::AtMost { span: limit })
    }

    fn hot_oven(&self, cut: &Cut, air: Temperature) -> Answer {
        let longest = cut.rest.longest_hold;
        let verdict = if self.wait > TimeSpan::from_minutes(30.0) {
            Verdict::BetterNot
        } else {
            Verdict::WithCare
        };
        let hot = stays_above(
            super::Keep::Box.container(),
            self.cooked(),
            VENTED,
            self.floor().0,
            self.around(),
        );
        let box_fits = self.wait <= longest && self.wait <= hot.likely;
        Answer::new(verdict)
            .say(format!(
                "At {} the oven goes on cooking it. Set it to {} or less.",
                degrees(air),
                degrees(Temperature::from_celsius(75.0))
            ))
            .say_if(
                box_fits,
                "Or vent it and move it to a warmed, well filled box. Leave a probe in it.",
            )
            .say("Do not slice it before you serve.")
            .by(RuleId::VentBeforeBox)
            .by(RuleId::ProbeTheBox)
            .by(self.floor().1)
            .figure(Figure::AtMost { span: longest })
            .figure(stays(hot))
    }

    fn warm_oven(&self, cut: &Cut, air: Temperature) -> Answer {
        let (floor, rule) = self.floor();
        let longest = cut.rest.longest_hold;
        if air < floor {
            return Answer::new(Verdict::No)
                .say(format!(
                    "An oven at {} lets it fall below {}. Set it to {} at least.",
                    degrees(air),
                    degrees(floor),
                    degrees(Temperature::from_celsius(65.0))
                ))
                .by(rule);
        }
        let answer = Answer::new(Verdict::LooksFine)
            .say(format!(
                "Keep the oven at {}, the meat wrapped, and read the core every 2 h.",
                degrees(air)
            ))
            .by(rule)
            .figure(Figure::AtMost { span: longest });
        too_long_for_the_meat(answer, self.wait, longest)
    }

    /// In a box, a shut cooker, or wrapped on a counter: it cools, and the question is how fast.
    fn shut_in(&self, cut: &Cut, core: Temperature) -> Answer {
        let (floor, rule) = self.floor();
        let longest = cut.rest.longest_hold;
        let hot = stays_above(
            self.keep.container(),
            self.cooked(),
            core,
            floor,
            self.around(),
        );
        let verdict = if self.wait <= hot.short {
            Verdict::LooksFine
        } else if self.wait <= hot.long {
            Verdict::WithCare
        } else {
            Verdict::BetterNot
        };
        let thin = longest <= TimeSpan::from_hours(2.0);
        let answer = Answer::new(verdict)
            .say(format!("From {} it stays above {} for about {}. Count on no more than {}.", degrees(core), degrees(floor), span(hot.likely), span(hot.short)))
            .say("Leave a probe in it. Warm the box first and fill it with towels.")
            .say_if(verdict >= Verdict::WithCare, format!("If it reads {} before the meal, move it to an oven at {}.", degrees(Temperature::from_fahrenheit(145.0)), degrees(Temperature::from_celsius(75.0))))
            .say_if(verdict == Verdict::WithCare && self.wait > hot.likely, "It may fall short. Have a warm oven ready at the end, or chill it and heat it up there.")
            .say_if(thin, "Wrapped hot, thin meat goes on cooking. Vent it first, or take it off a little sooner.")
            .say_if(thin && self.on_the_road, "On the road, count the drive as cooking. Glaze it only when you are there.")
            .say_if(!thin && self.wait >= TimeSpan::from_hours(3.0), format!("Or slow it down: a pit that keeps the meat near {} holds it too. Never let it drift below {}.", degrees(Temperature::from_celsius(77.0)), degrees(floor)))
            .by(rule)
            .by(RuleId::ProbeTheBox)
            .by(RuleId::VentBeforeBox)
            .by_if(self.audience == Audience::Public, RuleId::LocalCode)
            .figure(stays(hot))
            .figure(Figure::AtMost { span: longest });
        too_long_for_the_meat(answer, self.wait, longest)
    }
}

const fn stays(hot: WarmSpan) -> Figure {
    Figure::StaysHot {
        short: hot.short,
        likely: hot.likely,
        long: hot.long,
    }
}

/// Longer than the cut likes to be held.
fn too_long_for_the_meat(answer: Answer, wait: TimeSpan, longest: TimeSpan) -> Answer {
    if wait <= longest {
        return answer;
    }
    answer
        .at_least(Verdict::BetterNot)
        .say(format!("This cut is best within {} hot. For longer, chill it fast in thin layers and heat it through for the meal.", span(longest)))
        .by(RuleId::CoolInTwoStages)
        .by(RuleId::ReheatThrough)
}
