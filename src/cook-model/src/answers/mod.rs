//! Straight answers to what cooks ask: short, guided, reckoned from the facts told, with the rule behind each.
//!
//! A question is a kind and its facts, typed; [`Question::answer`] is a pure function of them. Nothing here says that
//! food is safe: the best verdict is that it looks fine on what was told.

mod answer;
mod clock;
mod cool_down;
mod fire_lasts;
mod fit;
mod habits;
mod heat_lost;
mod heat_up;
mod how_much;
mod keep;
mod known;
mod late;
mod left_out;
mod prompt;
mod prompts;
mod reading;
mod shared_cooker;
mod slow;
mod smaller;
mod thaw;
mod two_goes;
mod waiting;
mod weather;

pub use answer::{Answer, Figure, Missing, Verdict};
pub use clock::ClockChange;
pub use cool_down::CoolItDown;
pub use fire_lasts::FireLasts;
pub use fit::WillItFit;
pub use habits::{GoodHabit, Habit};
pub use heat_lost::HeatLost;
pub use heat_up::HeatItUp;
pub use how_much::HowMuch;
pub use keep::Keep;
pub use known::Setting;
pub use late::RunningLate;
pub use left_out::LeftOut;
pub use prompt::{FactsError, Prompt, PromptKind};
pub use reading::{OddReading, ReadOf};
pub use shared_cooker::{Load, SharedCooker};
pub use slow::{CoolPit, SlowToWarm};
pub use smaller::CutSmaller;
pub use thaw::{ThawInTime, ThawWay};
pub use two_goes::{Between, InTwoGoes};
pub use waiting::CanItWait;
pub use weather::{HighUp, WeatherAhead};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

macro_rules! questions {
    ($($(#[$doc:meta])* $kind:ident, $key:literal, $title:literal;)+) => {
        /// A question with its facts.
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
        #[serde(tag = "asks")]
        pub enum Question {
            $($(#[$doc])* #[serde(rename = $key)] $kind($kind),)+
        }

        impl Question {
            /// Every kind: its key and the question as a person would put it, the most urgent first.
            pub const KINDS: &'static [(&'static str, &'static str)] = &[$(($key, $title),)+];

            /// The question as a person would put it.
            #[must_use]
            pub const fn title(&self) -> &'static str {
                match self {
                    $(Self::$kind(_) => $title,)+
                }
            }

            /// The answer.
            #[must_use]
            pub fn answer(&self) -> Answer {
                match self {
                    $(Self::$kind(facts) => facts.answer(),)+
                }
            }
        }
    };
}

questions! {
    /// The heat was lost.
    HeatLost, "heat_lost", "The fire or the power was out. Is it still good?";
    /// It is slow to get hot.
    SlowToWarm, "slow_to_warm", "It is slow to get hot. Is it still good?";
    /// It was left out.
    LeftOut, "left_out", "It was left out. Is it still good?";
    /// A reading looks odd.
    OddReading, "odd_reading", "Can this reading be right?";
    /// It runs late.
    RunningLate, "running_late", "It is running late. What can I do?";
    /// It has to wait.
    CanItWait, "can_it_wait", "It is done early. Can it wait?";
    /// It has to get cold.
    CoolItDown, "cool_it_down", "How do I cool down what is left?";
    /// It has to get hot again.
    HeatItUp, "heat_it_up", "How do I heat it up again?";
    /// It is frozen.
    ThawInTime, "thaw_in_time", "It is frozen. Will it thaw in time?";
    /// It is cooked in two goes.
    InTwoGoes, "in_two_goes", "Can I cook it in two goes?";
    /// The pit is cool for the night.
    CoolPit, "cool_pit", "Can I run the pit cool overnight?";
    /// The hours are few.
    WillItFit, "will_it_fit", "Does the cook fit in the hours I have?";
    /// Several things on one cooker.
    SharedCooker, "shared_cooker", "Do these go together on one cooker?";
    /// A smaller piece.
    CutSmaller, "cut_smaller", "Does a smaller piece save time?";
    /// How much to buy.
    HowMuch, "how_much", "How much do I need?";
    /// Weather.
    WeatherAhead, "weather_ahead", "What will this weather do?";
    /// Height.
    HighUp, "high_up", "What does this height do?";
    /// The fire has to last.
    FireLasts, "fire_lasts", "Will the fire last?";
    /// The clock changes.
    ClockChange, "clock_change", "The clock changes in the night. When is it done?";
    /// A habit.
    GoodHabit, "good_habit", "What is a good habit here?";
}

#[cfg(test)]
mod tests;
