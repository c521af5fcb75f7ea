//! Straight answers against what is right: each case of the data file, its verdict, its rules, its words, its figures.

use cook_model::answers::{Answer, Figure, Question, Verdict};
use cook_model::safety::{RuleId, Units, say};
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    id: String,
    case: String,
    right: String,
    question: Question,
    verdict: Vec<Verdict>,
    #[serde(default)]
    rules: Vec<RuleId>,
    #[serde(default)]
    words: Vec<String>,
    #[serde(default)]
    figures: BTreeMap<String, [f64; 2]>,
}

#[derive(Deserialize)]
struct Cases {
    cases: Vec<Case>,
}

fn cases() -> Vec<Case> {
    let text = include_str!("data/questions.json");
    serde_json::from_str::<Cases>(text)
        .expect("the data file is sound")
        .cases
}

fn metric(answer: &Answer) -> String {
    say(&answer.says.join(" "), Units::default())
}

/// The figures of an answer by the names that the data file uses.
fn figures(answer: &Answer) -> BTreeMap<&'static str, f64> {
    let mut by_name = BTreeMap::new();
    for figure in &answer.figures {
        match *figure {
            Figure::StaysHot { likely, .. } => {
                by_name.insert("stays_hot_likely_h", likely.hours());
            }
            Figure::BelowFor { span } => {
                by_name.insert("below_h", span.hours());
            }
            Figure::Left { span } => {
                by_name.insert("left_h", span.hours());
            }
            Figure::AtMost { span } => {
                by_name.insert("at_most_h", span.hours());
            }
            Figure::Takes {
                short,
                likely,
                long,
            } => {
                by_name.insert("takes_short_h", short.hours());
                by_name.insert("takes_likely_h", likely.hours());
                by_name.insert("takes_long_h", long.hours());
            }
            Figure::Core { core } => {
                by_name.insert("core_c", core.celsius());
            }
            Figure::Boils { at } => {
                by_name.insert("boils_c", at.celsius());
            }
            Figure::Target { core } => {
                by_name.insert("target_c", core.celsius());
            }
            Figure::TimeShare { share } => {
                by_name.insert("time_share", share);
            }
            Figure::Buy { mass } => {
                by_name.insert("buy_kg", mass.kilograms());
            }
            Figure::OnPlate { mass } => {
                by_name.insert("on_plate_kg", mass.kilograms());
            }
            Figure::Depth { depth } => {
                by_name.insert("depth_mm", depth.millimetres());
            }
            Figure::At { .. } => {}
        }
    }
    by_name
}

/// Everything in which an answer differs from what is right.
fn faults(case: &Case) -> Vec<String> {
    let answer = case.question.answer();
    let text = metric(&answer);
    let mut faults = Vec::new();
    if !case.verdict.contains(&answer.verdict) {
        faults.push(format!(
            "says {:?}, right is {:?}",
            answer.verdict, case.verdict
        ));
    }
    for rule in case
        .rules
        .iter()
        .filter(|rule| !answer.rules.contains(rule))
    {
        faults.push(format!("does not rest on {rule}"));
    }
    for words in case
        .words
        .iter()
        .filter(|words| !text.to_lowercase().contains(&words.to_lowercase()))
    {
        faults.push(format!("does not say \"{words}\": {text}"));
    }
    let got = figures(&answer);
    for (name, [low, high]) in &case.figures {
        match got.get(name.as_str()) {
            Some(value) if (*low..=*high).contains(value) => {}
            Some(value) => faults.push(format!("{name} is {value:.3}, right is {low} to {high}")),
            None => faults.push(format!("{name} is not reckoned")),
        }
    }
    faults
}

#[test]
fn every_question_gets_the_right_answer() {
    let mut wrong = Vec::new();
    for case in cases() {
        assert!(
            !case.case.is_empty() && !case.right.is_empty(),
            "{}",
            case.id
        );
        wrong.extend(
            faults(&case)
                .into_iter()
                .map(|fault| format!("{}: {fault}", case.id)),
        );
    }
    assert!(wrong.is_empty(), "{}\n", wrong.join("\n"));
}

#[test]
fn every_kind_of_question_has_a_case() {
    let asked: BTreeSet<&str> = cases().iter().map(|case| case.question.title()).collect();
    for (key, title) in Question::KINDS {
        assert!(asked.contains(title), "no case asks {key}");
    }
    let ids: BTreeSet<String> = cases().into_iter().map(|case| case.id).collect();
    assert_eq!(ids.len(), cases().len(), "a case is there twice");
}

/// Automated readability index, the American school grade that can read a text (Senter and Smith 1967; from memory).
fn reading_grade(text: &str) -> f64 {
    let words = text.split_whitespace().count() as f64;
    let letters = text.chars().filter(|c| c.is_alphanumeric()).count() as f64;
    let ends = text
        .split_whitespace()
        .filter(|word| word.ends_with(['.', '?', ':', ';', '!']))
        .count();
    4.71 * letters / words + 0.5 * words / (ends.max(1) as f64) - 21.43
}

#[test]
fn a_reader_of_twelve_can_read_every_answer() {
    let mut hard = Vec::new();
    for case in cases() {
        let answer = case.question.answer();
        for units in [
            Units::default(),
            Units {
                fahrenheit: true,
                pounds: true,
                inches: true,
            },
        ] {
            let text = say(&answer.says.join(" "), units);
            let grade = reading_grade(&text);
            // Grade 7 is the year in which American children turn twelve or thirteen.
            if grade > 7.0 {
                hard.push(format!("{}: grade {grade:.1}: {text}", case.id));
            }
            assert!(!text.contains(['{', '}', '|']), "{}: {text}", case.id);
        }
    }
    assert!(hard.is_empty(), "{}", hard.join("\n"));
}

#[test]
fn no_answer_gives_false_comfort() {
    for case in cases() {
        let answer = case.question.answer();
        let text = format!("{} {}", answer.verdict.words(), metric(&answer)).to_lowercase();
        for comfort in [
            " is safe",
            "are safe",
            "perfectly",
            "no risk",
            "don't worry",
            "do not worry",
            "always fine",
        ] {
            assert!(!text.contains(comfort), "{}: {text}", case.id);
        }
        for place in ["garage", "porch", "balcony"] {
            assert!(!text.contains(place), "{}: {text}", case.id);
        }
    }
}
