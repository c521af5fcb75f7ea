//! What In doubt says: the questions, the fields for their facts, and what was reckoned.

use crate::format::{Formats, Measure};
use cook_model::answers::{FactsError, Figure, Missing};
use cook_model::safety::say;
use cook_model::units::TimeSpan;

/// Over the list.
pub const WHAT_IS_IT: &str = "What is it?";
/// What the screen is.
pub const ABOUT: &str = "Choose a question and give the few facts it needs. The answer is worked out here, with no signal, by a rule that you can read.";
/// The questions by when they come up: the heading and the keys of the questions.
pub const GROUPS: [(&str, &[&str]); 4] = [
    (
        "Right now",
        &[
            "heat_lost",
            "slow_to_warm",
            "left_out",
            "odd_reading",
            "running_late",
            "can_it_wait",
            "fire_lasts",
        ],
    ),
    ("After the meal", &["cool_it_down", "heat_it_up"]),
    (
        "While planning",
        &[
            "thaw_in_time",
            "in_two_goes",
            "cool_pit",
            "will_it_fit",
            "shared_cooker",
            "cut_smaller",
            "how_much",
            "weather_ahead",
            "high_up",
            "clock_change",
        ],
    ),
    ("To read", &["good_habit"]),
];
/// Over every rule.
pub const EVERY_RULE: &str = "Every rule, with its source";
/// Back to the list.
pub const OTHER_QUESTION: &str = "Another question";
/// About which dish.
pub const WHICH_DISH: &str = "About which dish?";
/// About no dish of the plan.
pub const SOMETHING_ELSE: &str = "Something else";
/// Over the facts that are needed.
pub const NEEDED: &str = "This is needed";
/// Over the facts that help.
pub const HELPS: &str = "This helps, if you know it";
/// Beside what plan and journal filled in.
pub const FILLED_IN: &str = "Filled in from your plan and log. Change what is not so.";
/// Nothing is asked.
pub const NO_FACTS: &str = "Nothing more is needed.";
/// Over the answer.
pub const ANSWER: &str = "The answer";
/// Asks for the answer.
pub const ANSWER_ME: &str = "Answer me";
/// What an empty field means.
pub const EMPTY_IS_UNKNOWN: &str = "A field that is empty counts as: nobody knows.";
/// Over the figures.
pub const WORKED_OUT: &str = "Worked out";
/// Over what is missing.
pub const WOULD_HELP: &str = "It would help to know";
/// Over the rules.
pub const RULES: &str = "The rules behind it";
/// Yes.
pub const YES: &str = "Yes";
/// No.
pub const NO: &str = "No";
/// Not known.
pub const NOT_KNOWN: &str = "I do not know";
/// Hours of a span.
pub const HOURS: &str = "Hours";
/// Minutes of a span.
pub const MINUTES: &str = "Minutes";
/// The three of a spread.
pub const THREE: [&str; 3] = ["Least", "Likely", "Most"];
/// Where food may be kept: the key, its words.
pub const KEEPS: [(&str, &str); 6] = [
    ("box", "In a warmed box, lid on"),
    ("warm_oven", "In a warm oven"),
    ("wrapped", "Wrapped, on a counter or on the road"),
    (
        "shut_cabinet",
        "In the shut cabinet or ceramic cooker, no fire",
    ),
    ("shut_cooker", "In the shut steel cooker, no fire"),
    ("shut_oven", "In the kitchen oven, off, door shut"),
];
/// The air of a warm oven.
pub const OVEN_AIR: &str = "How hot is that oven?";
/// What a reading in another place is called.
#[must_use]
pub fn reading(number: usize) -> String {
    format!("Reading {number}")
}
/// What goes on a cooker with other things.
#[must_use]
pub fn load(number: usize) -> String {
    format!("{number}. What?")
}
/// How long that takes.
#[must_use]
pub fn load_takes(number: usize) -> String {
    format!("{number}. How long?")
}
/// One more thing on the cooker.
pub const ONE_MORE: &str = "One more";
/// One thing less on the cooker.
pub const ONE_LESS: &str = "Take the last one away";
/// Chosen from a list that starts empty.
pub const CHOOSE: &str = "Choose";
/// A moment that the plan does not have.
pub const NOT_IN_PLAN: &str =
    "The plan does not say yet: put a dish on the menu and give it a cooker.";
/// For whoever serves the public.
pub const PUBLIC: &str =
    "You serve the public: your local code and your licence come before anything said here.";

/// Why there is no answer yet.
#[must_use]
pub fn not_yet(
    error: &FactsError,
    label: &str,
    measure: Option<Measure>,
    formats: &Formats,
) -> String {
    match error {
        FactsError::Missing { .. } => format!("Still needed: {label}"),
        FactsError::OutOfRange {
            value, low, high, ..
        } => {
            let said = |number: f64| match measure {
                Some(Measure::Hours) => formats.span(TimeSpan::from_seconds(number)),
                Some(measure) => measure.say(number, formats.units),
                None => number.to_string(),
            };
            format!(
                "{label} {} cannot be. It is {} to {}. Look at it again.",
                said(*value),
                said(*low),
                said(*high)
            )
        }
        FactsError::UnknownQuestion(_) | FactsError::Unreadable(_) => {
            "One of the facts cannot be read. Give it again.".to_owned()
        }
    }
}

/// A figure in words.
#[must_use]
pub fn figure(figure: &Figure, formats: &Formats) -> String {
    let span = |time: TimeSpan| {
        say(
            &cook_model::safety::wording::span(time),
            formats.units.scales(),
        )
    };
    match *figure {
        Figure::StaysHot {
            short,
            likely,
            long,
        } => format!(
            "It stays hot enough: count on {}, likely {}, at best {}.",
            span(short),
            span(likely),
            span(long)
        ),
        Figure::BelowFor { span: time } => format!("It was too cool for about {}.", span(time)),
        Figure::Left { span: time } => format!("{} is left.", span(time)),
        Figure::AtMost { span: time } => format!("{} at most.", span(time)),
        Figure::Takes {
            short,
            likely,
            long,
        } => format!(
            "It takes {} to {}, likely {}.",
            span(short),
            span(long),
            span(likely)
        ),
        Figure::Core { core } => format!("The core that counts: {}.", formats.temperature(core)),
        Figure::Boils { at } => format!("Water boils at {} there.", formats.temperature(at)),
        Figure::Target { core } => format!("Aim for {} in the core.", formats.temperature(core)),
        Figure::TimeShare { share } => {
            format!(
                "Time: about {} of what it was.",
                Measure::Percent.say(share, formats.units)
            )
        }
        Figure::Buy { mass } => format!("To buy: {}.", formats.mass(mass)),
        Figure::OnPlate { mass } => format!("On the plates: {}.", formats.mass(mass)),
        Figure::Depth { depth } => format!("No deeper than {}.", formats.thickness(depth)),
        Figure::At { moment } => format!("Done at {}.", formats.day_time(moment)),
    }
}

/// What was not told.
#[must_use]
pub const fn missing(missing: Missing) -> &'static str {
    match missing {
        Missing::CoreNow => "its core now, at the coldest of several places",
        Missing::CoreBefore => "its core before",
        Missing::SinceWhen => "since when",
        Missing::Intact => "whether it is whole, with nothing put inside it",
        Missing::Weight => "how heavy it is",
        Missing::Pit => "the air at the meat",
        Missing::Air => "how warm the air around it is",
        Missing::SecondThermometer => "what a second thermometer reads",
        Missing::Depth => "how deep it lies",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::answers::Question;
    use std::collections::BTreeSet;

    #[test]
    fn every_question_is_in_one_group() {
        let grouped: Vec<&str> = GROUPS
            .iter()
            .flat_map(|(_, keys)| keys.iter().copied())
            .collect();
        let once: BTreeSet<&str> = grouped.iter().copied().collect();
        assert_eq!(once.len(), grouped.len(), "none twice");
        let all: BTreeSet<&str> = Question::KINDS.iter().map(|(key, _)| *key).collect();
        assert_eq!(once, all);
    }

    #[test]
    fn every_place_to_keep_food_is_one_that_the_model_knows() {
        for (key, _) in KEEPS {
            let mut keep = serde_json::json!({"in": key});
            if key == "warm_oven" {
                keep["air"] = serde_json::json!(80.0);
            }
            serde_json::from_value::<cook_model::answers::Keep>(keep).expect(key);
        }
    }
}
