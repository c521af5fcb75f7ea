//! The fire went out, the power failed, somebody slept, or pieces were forgotten off the heat.

use super::{Answer, Figure, Keep, Missing, Verdict};
use crate::meat::CutId;
use crate::plan::{Audience, Intact};
use crate::safety::cooling::stays_above;
use crate::safety::wording::{degrees, span};
use crate::safety::{Governs, RuleId, Sort, governing, hold_minimum, minimum, out_of_fridge_limit};
use crate::units::{Mass, Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The heat was lost. Is the meat still good, and what now?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HeatLost {
    /// What it is.
    pub cut: CutId,
    /// Whether it is whole, with nothing put inside it.
    #[serde(default)]
    pub intact: Intact,
    /// Weight of all of it, as it went on. None: one usual piece.
    #[serde(default)]
    pub mass: Option<Mass>,
    /// Its core when the heat was lost, or the last reading before.
    #[serde(default)]
    pub core_before: Option<Temperature>,
    /// Its core now, at the coldest place.
    #[serde(default)]
    pub core_now: Option<Temperature>,
    /// Since when; the longest it may have been. None: nobody knows.
    #[serde(default)]
    pub since: Option<TimeSpan>,
    /// Where it has been since.
    pub keep: Keep,
    /// Air around. None: 20 °C.
    #[serde(default)]
    pub air: Option<Temperature>,
    /// So many pieces were forgotten.
    #[serde(default)]
    pub forgotten: u32,
    /// Nobody was awake, or the alarm did not ring.
    #[serde(default)]
    pub unwatched: bool,
}

impl HeatLost {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let answer = match self.core_now {
            Some(now) => self.read(now),
            None => self.not_read(),
        };
        answer
            .say_if(self.forgotten > 0, "Count the pieces each time you shut the lid.")
            .say_if(self.unwatched, "One alarm is not enough. Set a second one on another clock, and write down a last reading before you sleep.")
            .by_if(self.unwatched, RuleId::SecondAlarm)
            .by_if(self.unwatched, RuleId::NeverLeftAlone)
            .by(RuleId::WhoToAsk)
    }

    const fn floor() -> Temperature {
        hold_minimum(Audience::Household, false).0
    }

    fn around(&self) -> Temperature {
        self.air.unwrap_or(Temperature::from_celsius(20.0))
    }

    fn cooked_through(&self) -> bool {
        let least = minimum(Sort::of(self.cut.cut().make, self.intact)).temperature;
        self.core_before.is_some_and(|before| before >= least)
    }

    fn by_core(&self) -> bool {
        governing(Sort::of(self.cut.cut().make, self.intact)) == Governs::Core
    }

    fn read(&self, now: Temperature) -> Answer {
        let limit = out_of_fridge_limit(self.around());
        if now >= Self::floor() {
            return Answer::new(Verdict::LooksFine)
                .say(format!("The meat tells, not the pit. It reads {}, so as it cooled it never was below {}. Get the heat back now and go on.", degrees(now), degrees(Self::floor())))
                .say("Read it in more than one place first. The lowest reading counts.")
                .by(RuleId::HoldHot)
                .by(RuleId::ColdestPoint);
        }
        let Some(below) = self.below_for(now) else {
            return Answer::new(Verdict::ThrowAway)
                .say(format!(
                    "It reads {} and nobody knows for how long. Count that as too long.",
                    degrees(now)
                ))
                .by(RuleId::UnknownIsTooLong)
                .missing(Missing::SinceWhen);
        };
        let figure = Figure::BelowFor { span: below };
        if below > limit {
            return Answer::new(Verdict::ThrowAway)
                .say(format!(
                    "It has been below {} for about {}. The limit is {}.",
                    degrees(Self::floor()),
                    span(below),
                    span(limit)
                ))
                .by(RuleId::TwoHours)
                .figure(figure)
                .missing_if(self.core_before.is_none(), Missing::CoreBefore);
        }
        let left = Figure::Left {
            span: limit - below,
        };
        let said = format!(
            "It has been below {} for about {}.",
            degrees(Self::floor()),
            span(below)
        );
        if self.cooked_through() {
            Answer::new(Verdict::ActNow)
                .say(format!(
                    "{said} Heat it at once to {} all through, within {}, and serve it.",
                    degrees(minimum(Sort::Leftovers).temperature),
                    span(limit - below)
                ))
                .by(RuleId::HoldHot)
                .by(RuleId::ReheatThrough)
                .figure(figure)
                .figure(left)
        } else {
            Answer::new(Verdict::ActNow)
                .say(format!("{said} Get the heat back at once, hot. If that fails within {}, throw it away.", span(limit - below)))
                .say_if(self.by_core(), "The 4 h in which its middle must get hot run on.")
                .by(RuleId::TwoHours)
                .by(RuleId::NeverPartCook)
                .by_if(self.by_core(), RuleId::CoreHotInTime)
                .figure(figure)
                .figure(left)
        }
    }

    /// How long it was below the floor: from where it would have passed it as it cooled, early rather than late.
    fn below_for(&self, now: Temperature) -> Option<TimeSpan> {
        let since = self.since?;
        let over = |temperature: Temperature| (temperature - self.around()).kelvin();
        let before = self.core_before.filter(|before| *before > Self::floor());
        let (Some(before), true) = (before, over(now) > 1.0) else {
            return Some(since);
        };
        let hot_share =
            libm::log(over(before) / over(Self::floor())) / libm::log(over(before) / over(now));
        Some(since * (1.0 - hot_share))
    }

    fn not_read(&self) -> Answer {
        let unless = format!(
            "Read the core now, in several places. If it reads {} or more, get it back on the heat at once.",
            degrees(Self::floor())
        );
        let (Some(before), Some(since)) = (self.core_before, self.since) else {
            return Answer::new(Verdict::NotKnown)
                .say(unless)
                .say("If it reads less, throw it away: nobody knows for how long.")
                .by(RuleId::UnknownIsTooLong)
                .by(RuleId::ProbeTheBox)
                .missing(Missing::CoreNow)
                .missing_if(self.since.is_none(), Missing::SinceWhen);
        };
        let cooked = self.mass.unwrap_or(self.cut.cut().shape.mass) * (2.0 / 3.0);
        let hot = stays_above(
            self.keep.container(),
            cooked,
            before,
            Self::floor(),
            self.around(),
        );
        let verdict = if since <= hot.likely {
            Verdict::WithCare
        } else {
            Verdict::NotKnown
        };
        Answer::new(verdict)
            .say_if(verdict == Verdict::WithCare, format!("Keep it shut, or wrap it and box it. From {} it likely stays above {} for about {}.", degrees(before), degrees(Self::floor()), span(hot.likely)))
            .say(unless)
            .say_if(verdict == Verdict::WithCare, "The cook takes longer by about the time that was lost. Gas, charcoal or a kitchen oven can step in.")
            .say_if(verdict == Verdict::NotKnown, "If it reads less, count from when it went below. Past 2 h, throw it away.")
            .by(RuleId::HoldHot)
            .by(RuleId::ProbeTheBox)
            .figure(Figure::StaysHot { short: hot.short, likely: hot.likely, long: hot.long })
            .missing(Missing::CoreNow)
    }
}
