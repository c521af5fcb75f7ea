//! Habits that spare a cook trouble: what to write down, how often to look, how to plan, how to hand over.

use super::{Answer, Verdict};
use crate::safety::RuleId;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is a good habit here?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GoodHabit {
    /// About what.
    pub about: Habit,
}

/// About what.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Habit {
    /// What to write down.
    WhatToWrite,
    /// How often to read.
    HowOftenToRead,
    /// Comparing with earlier cooks.
    EarlierCooks,
    /// Hours for each pound.
    HoursForEachPound,
    /// When to start.
    WhenToStart,
    /// Steps and hands.
    StepsAndHands,
    /// Lessons for next time.
    LessonsLearned,
    /// First time with a cut.
    FirstTime,
    /// Alarms and sleep.
    AlarmsAndSleep,
    /// After a gap that nobody watched.
    UnwatchedGap,
    /// Advice that disagrees.
    AdviceThatDisagrees,
    /// After any break of the heat.
    AfterABreak,
    /// Short, fierce steps.
    ShortFierceSteps,
    /// Counting pieces.
    CountingPieces,
    /// Handing over.
    HandingOver,
    /// Where the pit is read.
    WhereThePitIsRead,
    /// How long it may wait.
    HowLongItMayWait,
    /// Which weight.
    WhichWeight,
    /// Sums of trim and loss.
    SumsOfLoss,
}

impl GoodHabit {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let (sentences, rules) = self.about.advice();
        let answer = sentences
            .iter()
            .fold(Answer::new(Verdict::GoodToKnow), |answer, sentence| {
                answer.say(*sentence)
            });
        rules.iter().fold(answer, |answer, rule| answer.by(*rule))
    }
}

impl Habit {
    const fn advice(self) -> (&'static [&'static str], &'static [RuleId]) {
        match self {
            Self::WhatToWrite => (
                &[
                    "Write down six things: the trimmed weight, the air at the meat, when you wrapped, the weather, how it ended and how it was.",
                    "A note with only the meat and an hour tells you nothing next year.",
                ],
                &[],
            ),
            Self::HowOftenToRead => (
                &[
                    "A few well placed readings say more than many: on, an hour in, when the core stands still, at the wrap, and near the end.",
                    "Look at the curve against the forecast: ahead or behind?",
                ],
                &[RuleId::ColdestPoint],
            ),
            Self::EarlierCooks => (
                &[
                    "Put your cooks side by side. Your own past with this cut and this cooker is the best base for the next.",
                    "One cook is not a rule: change one thing at a time to see what it did.",
                ],
                &[],
            ),
            Self::HoursForEachPound => (
                &[
                    "Hours for each pound mislead. Time has a fixed part and grows with thickness and a cooler pit, not with weight alone.",
                    "Plan with a range, and with a finish two to three hours before the meal.",
                ],
                &[],
            ),
            Self::WhenToStart => (
                &[
                    "Look at both ends. If it runs short, it waits hot. If it runs long, the guests wait.",
                    "An earlier start buys certainty and costs sleep. See what each hour gives you and choose.",
                ],
                &[RuleId::HoldHot],
            ),
            Self::StepsAndHands => (
                &[
                    "Write who does what, and when, days ahead too. Keep the next step in sight, with its alarm.",
                    "Nobody should have to rise for what could be done before bed.",
                ],
                &[],
            ),
            Self::LessonsLearned => (
                &[
                    "Write the lesson with the cook, on the day after. It comes up when you plan the same cut again.",
                ],
                &[],
            ),
            Self::FirstTime => (
                &[
                    "First time with a cut or a cooker? Leave more room: start early and let it wait hot.",
                    "Try it without guests first.",
                ],
                &[RuleId::HoldHot],
            ),
            Self::AlarmsAndSleep => (
                &[
                    "Do not hang the cook on one alarm. Set a second on another clock, and one that rings again until somebody answers.",
                    "An alarm may stay silent in a power cut. Say what happens if nobody wakes.",
                    "A lit fire is never left alone.",
                ],
                &[
                    RuleId::SecondAlarm,
                    RuleId::NeverLeftAlone,
                    RuleId::AwakeAndSober,
                ],
            ),
            Self::UnwatchedGap => (
                &[
                    "Write a last reading before you sleep and a first one when you wake. Without them nobody can judge the hours between.",
                ],
                &[RuleId::UnknownIsTooLong],
            ),
            Self::AdviceThatDisagrees => (
                &[
                    "Go by one rule with its source, and know which fact would change it. Voices that disagree do not make it less strict.",
                ],
                &[RuleId::UnknownIsTooLong, RuleId::WhoToAsk],
            ),
            Self::AfterABreak => (
                &[
                    "After any break, look again within half an hour: does the pit climb, and does the core follow the forecast?",
                ],
                &[RuleId::SmokerAir],
            ),
            Self::ShortFierceSteps => (
                &[
                    "Ten minutes over fierce heat need their own alarm, and your eyes. Do nothing else in that time.",
                ],
                &[RuleId::NeverLeftAlone, RuleId::Grease],
            ),
            Self::CountingPieces => (
                &["Count the pieces each time you shut the lid, and say where each one is."],
                &[RuleId::TwoHours],
            ),
            Self::HandingOver => (
                &[
                    "Leave a note: what to do at which reading, by when, and what to doubt. Leave a second thermometer with it.",
                ],
                &[RuleId::TrueThermometer],
            ),
            Self::WhereThePitIsRead => (
                &[
                    "Read the air at the meat, early, and write where you read it. The lid may be far off.",
                    "If the meat lags the forecast, doubt the pit first.",
                ],
                &[RuleId::SmokerAir],
            ),
            Self::HowLongItMayWait => (
                &[
                    "Plan the wait as a part of the cook. Each cut has its limit: ribs 2 h, butts about 5 h, a brisket 8 h, birds 1 h, all above {60 °C|140 °F}.",
                ],
                &[RuleId::HoldHot, RuleId::ProbeTheBox],
            ),
            Self::WhichWeight => (
                &[
                    "Keep three weights apart: bought, trimmed and served. The one that goes on sets the time. Weigh each piece, not the pack.",
                ],
                &[],
            ),
            Self::SumsOfLoss => (
                &[
                    "Divide by what is left, never multiply by the loss. Half is left? Then buy twice what you want on the plates.",
                ],
                &[],
            ),
        }
    }
}
