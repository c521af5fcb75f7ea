//! What must hold for every question: its facts and their prompts agree, and no answer gets better with time or by
//! leaving out a reading.

use super::*;
use crate::meat::CutId;
use crate::plan::Intact;
use crate::units::{Temperature, TimeSpan};
use proptest::prelude::*;
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

#[test]
fn prompts_and_facts_belong_together() {
    let schema = schemars::schema_for!(Question).to_value();
    let kinds = schema["oneOf"].as_array().expect("one of several kinds");
    assert_eq!(kinds.len(), Question::KINDS.len());
    for kind in kinds {
        let key = kind["properties"]["asks"]["const"]
            .as_str()
            .expect("a kind");
        let prompts = Question::prompts(key).unwrap_or_else(|| panic!("no prompts for {key}"));
        // The facts of a kind may stand in it or be referred to.
        let facts = match kind["$ref"].as_str() {
            Some(place) => &schema["$defs"][place.trim_start_matches("#/$defs/")],
            None => kind,
        };
        let keys = |value: &Value| -> BTreeSet<String> {
            value
                .as_object()
                .into_iter()
                .flatten()
                .map(|(key, _)| key.clone())
                .filter(|key| key != "asks")
                .collect()
        };
        let asked: BTreeSet<String> = prompts.iter().map(|prompt| prompt.key.to_owned()).collect();
        assert_eq!(asked, keys(&facts["properties"]), "{key}");
        let needed: BTreeSet<String> = prompts
            .iter()
            .filter(|prompt| prompt.needed)
            .map(|prompt| prompt.key.to_owned())
            .collect();
        let required: BTreeSet<String> = facts["required"]
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(|name| Some(name.as_str()?.to_owned()))
            .filter(|name| name != "asks")
            .collect();
        assert_eq!(needed, required, "{key}");
    }
}

fn facts(value: Value) -> Map<String, Value> {
    value.as_object().expect("an object").clone()
}

#[test]
fn facts_that_cannot_be_are_asked_about_again() {
    let lost = |more: Value| {
        let mut told = facts(json!({"cut": "pork-shoulder-butt", "keep": {"in": "box"}}));
        told.extend(facts(more));
        Question::of("heat_lost", &told)
    };
    assert!(lost(json!({})).is_ok());
    assert!(lost(json!({"core_now": null})).is_ok());
    let hot = lost(json!({"core_now": 400.0})).expect_err("no core is so hot");
    assert!(hot.to_string().contains("-2 to 130 °C"), "{hot}");
    assert!(matches!(
        lost(json!({"since": -1.0})),
        Err(FactsError::OutOfRange { key: "since", .. })
    ));
    let missing = Question::of("heat_lost", &facts(json!({"cut": "pork-shoulder-butt"})));
    assert_eq!(
        missing,
        Err(FactsError::Missing {
            key: "keep",
            words: "Where has it been since?"
        })
    );
    assert!(matches!(
        lost(json!({"cut": "pork-cloud"})),
        Err(FactsError::Unreadable(_))
    ));
    assert!(matches!(
        lost(json!({"mood": "good"})),
        Err(FactsError::Unreadable(_))
    ));
    assert!(matches!(
        Question::of("why", &Map::new()),
        Err(FactsError::UnknownQuestion(_))
    ));
}

#[test]
fn each_kind_is_read_back_as_itself() {
    for (key, _) in Question::KINDS {
        assert!(Question::prompts(key).is_some(), "{key}");
    }
    let habit =
        Question::of("good_habit", &facts(json!({"about": "which_weight"}))).expect("a question");
    assert_eq!(habit.title(), "What is a good habit here?");
}

fn any_cut() -> impl Strategy<Value = CutId> {
    prop::sample::select(CutId::ALL.to_vec())
}

fn any_intact() -> impl Strategy<Value = Intact> {
    prop_oneof![Just(Intact::Yes), Just(Intact::No), Just(Intact::Unknown)]
}

fn any_keep() -> impl Strategy<Value = Keep> {
    prop_oneof![
        Just(Keep::Box),
        Just(Keep::Wrapped),
        Just(Keep::ShutCabinet),
        Just(Keep::ShutCooker),
        Just(Keep::ShutOven)
    ]
}

fn celsius(range: std::ops::Range<f64>) -> impl Strategy<Value = Temperature> {
    range.prop_map(Temperature::from_celsius)
}

fn hours(hours: f64) -> TimeSpan {
    TimeSpan::from_hours(hours)
}

proptest! {
    #[test]
    fn longer_without_heat_is_never_better(cut in any_cut(), intact in any_intact(), keep in any_keep(), before in prop::option::of(celsius(40.0..100.0)), now in prop::option::of(celsius(5.0..95.0)), air in celsius(-10.0..40.0), since in 0.0..12.0_f64, more in 0.0..12.0_f64) {
        let ask = |since| HeatLost { cut, intact, mass: None, core_before: before, core_now: now, since: Some(hours(since)), keep, air: Some(air), forgotten: 0, unwatched: false }.answer().verdict;
        prop_assert!(ask(since + more) >= ask(since), "{:?} then {:?}", ask(since), ask(since + more));
    }

    #[test]
    fn without_a_reading_lost_heat_never_looks_fine(cut in any_cut(), intact in any_intact(), keep in any_keep(), before in prop::option::of(celsius(0.0..100.0)), since in prop::option::of(0.0..12.0_f64)) {
        let answer = HeatLost { cut, intact, mass: None, core_before: before, core_now: None, since: since.map(hours), keep, air: None, forgotten: 0, unwatched: false }.answer();
        prop_assert!(answer.verdict > Verdict::LooksFine);
        prop_assert!(answer.missing.contains(&Missing::CoreNow));
    }

    #[test]
    fn longer_to_get_hot_is_never_better(cut in any_cut(), intact in any_intact(), core in prop::option::of(celsius(2.0..59.9)), pit in prop::option::of(celsius(40.0..150.0)), since in 0.0..10.0_f64, more in 0.0..10.0_f64) {
        let ask = |since| SlowToWarm { cut, intact, since: hours(since), core_now: core, hot_after: None, coolest_pit: pit }.answer().verdict;
        prop_assert!(ask(since + more) >= ask(since), "{:?} then {:?}", ask(since), ask(since + more));
    }

    #[test]
    fn not_knowing_whether_it_is_whole_is_never_better_than_knowing_that_it_is_not(cut in any_cut(), core in prop::option::of(celsius(2.0..100.0)), pit in prop::option::of(celsius(40.0..150.0)), since in 0.0..10.0_f64) {
        let ask = |intact| SlowToWarm { cut, intact, since: hours(since), core_now: core, hot_after: None, coolest_pit: pit }.answer().verdict;
        prop_assert_eq!(ask(Intact::Unknown), ask(Intact::No));
    }

    #[test]
    fn longer_left_out_is_never_better(raw: bool, planned: bool, served: bool, core in prop::option::of(celsius(-1.0..95.0)), air in celsius(-10.0..45.0), span in 0.0..10.0_f64, more in 0.0..10.0_f64) {
        let ask = |span: Option<f64>| LeftOut { raw, span: span.map(hours), core, air: Some(air), planned, served }.answer().verdict;
        prop_assert!(ask(Some(span + more)) >= ask(Some(span)));
        // Nobody knows how long: never better than any known time within the limit.
        prop_assert!(ask(None) >= ask(Some(span.min(0.9))));
    }

    #[test]
    fn a_longer_wait_is_never_better(cut in any_cut(), intact in any_intact(), keep in any_keep(), core in prop::option::of(celsius(40.0..100.0)), wait in 0.0..10.0_f64, more in 0.0..10.0_f64) {
        let ask = |wait| CanItWait { cut, intact, mass: None, core, wait: hours(wait), keep, air: None, unfinished: false, on_the_road: false, audience: Default::default() }.answer().verdict;
        prop_assert!(ask(wait + more) >= ask(wait));
        if core.is_none() {
            prop_assert!(ask(wait) > Verdict::LooksFine);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn warmer_leftovers_later_are_never_better(core in 0.0..60.0_f64, warmer in 0.0..20.0_f64, since in 0.0..8.0_f64) {
        let ask = |core: f64| CoolItDown { mass: crate::units::Mass::from_kilograms(2.0), depth: None, ice: false, fridge: None, since: Some(hours(since)), core_now: Some(Temperature::from_celsius(core)) }.answer().verdict;
        prop_assert!(ask(core + warmer) >= ask(core));
    }
}
