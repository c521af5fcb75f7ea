//! The rules read through: keys, sources, figures on both scales, and words a reader of twelve can follow.

use super::RuleId;
use crate::safety::{Basis, Severity, Units, say};
use std::collections::BTreeSet;

#[test]
fn keys_and_rules_belong_together() {
    let mut slugs = BTreeSet::new();
    for id in RuleId::ALL {
        assert_eq!(id.rule().id, *id);
        assert_eq!(id.slug().parse(), Ok(*id));
        assert_eq!(
            serde_json::to_string(id).expect("a string"),
            format!("\"{id}\"")
        );
        assert!(slugs.insert(id.slug()), "{id} is there twice");
    }
    assert!("never-laugh".parse::<RuleId>().is_err());
}

#[test]
fn what_is_published_names_where_it_was_read() {
    for id in RuleId::ALL {
        let rule = id.rule();
        assert!(!rule.applies.is_empty(), "{id}");
        if rule.basis == Basis::Published {
            assert!(
                !rule.sources.is_empty(),
                "{id} is published and names no source"
            );
        }
        for source in rule.sources {
            assert!(
                !source.title.is_empty()
                    && !source.edition.is_empty()
                    && !source.read_at.is_empty()
            );
        }
    }
}

#[test]
fn every_figure_stands_on_both_scales() {
    for id in RuleId::ALL {
        let rule = id.rule();
        for text in [rule.words, rule.condition, rule.differs.unwrap_or_default()] {
            let metric = say(text, Units::default());
            let pounds = say(
                text,
                Units {
                    fahrenheit: true,
                    pounds: true,
                    inches: true,
                },
            );
            assert!(
                !metric.contains('{') && !metric.contains('|'),
                "{id}: {metric}"
            );
            assert!(
                !metric.contains("°F") && !metric.contains("lb"),
                "{id}: {metric}"
            );
            assert!(
                !pounds.contains("°C") && !pounds.contains("kg"),
                "{id}: {pounds}"
            );
        }
    }
}

/// Automated readability index, the school grade that can read a text (Senter and Smith 1967; from memory).
pub(crate) fn reading_grade(text: &str) -> f64 {
    let words = text.split_whitespace().count() as f64;
    let letters = text.chars().filter(|c| c.is_alphanumeric()).count() as f64;
    let ends = text
        .split_whitespace()
        .filter(|word| word.ends_with(['.', '?', ':', ';', '!']))
        .count();
    4.71 * letters / words + 0.5 * words / (ends.max(1) as f64) - 21.43
}

#[test]
fn a_reader_of_twelve_can_read_every_rule() {
    for id in RuleId::ALL {
        let words = say(id.rule().words, Units::default());
        let grade = reading_grade(&words);
        // Grade 7 is the school year in which American children turn twelve or thirteen.
        assert!(grade <= 7.0, "{id}: grade {grade:.1}: {words}");
        assert!(words.ends_with(['.', '!', '?']), "{id}");
    }
}

#[test]
fn no_rule_gives_false_comfort_or_sends_the_fire_under_a_roof() {
    for id in RuleId::ALL {
        let words = id.rule().words.to_lowercase();
        for comfort in [
            " is safe",
            "perfectly",
            "no need to worry",
            "you can relax",
            "always fine",
        ] {
            assert!(!words.contains(comfort), "{id} says \"{comfort}\"");
        }
        for place in ["porch", "balcony"] {
            assert!(!words.contains(place), "{id} names a {place}");
        }
        if words.contains("garage") {
            assert!(words.contains("never in a house, garage"), "{id}");
        }
    }
}

#[test]
fn what_may_hurt_is_not_only_a_caution() {
    for id in [
        RuleId::CarbonMonoxide,
        RuleId::NeverLeftAlone,
        RuleId::HotAsh,
    ] {
        assert_ne!(id.rule().severity, Severity::Caution);
    }
}
