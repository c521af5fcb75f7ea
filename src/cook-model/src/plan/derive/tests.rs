//! Whole derivations, with the physics, from a few members.

use super::super::sample::{Sample, at};
use super::*;
use crate::handover::identity::DishId;
use crate::plan::outlook::{DishTimes, FindingKind, Hindrance, Outlook, StepKind};
use crate::plan::{CookerKind, PitStep, PitWhen, demo};
use crate::units::{Mass, Temperature, TimeSpan};

fn times(outlook: &Outlook, dish: DishId) -> &DishTimes {
    let found = outlook.dishes.iter().find(|other| other.dish == dish);
    let forecast = found.expect("the dish").forecast.as_ref();
    forecast.expect("a forecast")
}

/// Thin ribs on a drum: the quickest cook that is cooked to tenderness.
fn ribs() -> (Sample, DishId) {
    let mut sample = Sample::new();
    let cooker = sample.cooker(CookerKind::Drum);
    let dish = sample.dish("pork-back-ribs", 1.0, cooker);
    (sample, dish)
}

fn steps_to_the_end(planner: &mut Planner) -> u32 {
    let mut steps = 0;
    while !planner.step() {
        steps += 1;
    }
    steps
}

#[test]
fn an_outlook_has_everything_and_survives_its_way_through_json() {
    let (sample, dish) = ribs();
    let outlook = derive(&sample.plan, &sample.situation, 16);
    assert_eq!(outlook.members, 16);
    let times = times(&outlook, dish);
    let serving = sample.plan.serving.moment();
    assert!(times.on <= times.latest_on && times.latest_on < serving);
    assert!(times.ready.from() > times.on && times.table_ready.from() > times.ready.from());
    assert!(times.odds.kept >= 15, "{:?}", times.odds);
    assert!(times.course.len() > 10);
    assert_eq!(times.course[0].core[1].celsius(), 4.0);
    assert!((0.1..0.6).contains(&times.loss[1]), "{:?}", times.loss);
    let tenderness = times.tenderness.expect("tender");
    assert!(tenderness[0] > 0.999, "{tenderness:?}");
    assert!(outlook.steps.iter().any(|step| step.kind == StepKind::Off));
    let text = serde_json::to_string(&outlook).expect("json");
    let back: Outlook = serde_json::from_str(&text).expect("an outlook");
    assert_eq!(back, outlook);
}

#[test]
fn the_planner_comes_to_the_same_in_chunks_and_again() {
    let (sample, _) = ribs();
    let mut planner = Planner::default();
    assert!(planner.step() && planner.outlook().is_none());
    planner.begin(sample.plan.clone(), sample.situation.clone(), 16);
    assert!(planner.outlook().is_none());
    assert_eq!(steps_to_the_end(&mut planner), 2);
    let first = planner.outlook().expect("an outlook");
    assert_eq!(first, derive(&sample.plan, &sample.situation, 16));
    planner.begin(sample.plan.clone(), sample.situation.clone(), 24);
    assert_eq!(steps_to_the_end(&mut planner), 1);
    let wider = planner.outlook().expect("an outlook");
    assert_eq!(wider, derive(&sample.plan, &sample.situation, 24));
}

#[test]
fn moving_the_table_asks_for_no_new_forecast() {
    let (mut sample, dish) = ribs();
    let mut planner = Planner::default();
    planner.begin(sample.plan.clone(), sample.situation.clone(), 16);
    steps_to_the_end(&mut planner);
    let before = planner.outlook().expect("an outlook");
    sample.plan.serving.local += chrono::TimeDelta::minutes(90);
    sample.plan.guests.grown += 4;
    planner.begin(sample.plan.clone(), sample.situation.clone(), 16);
    assert_eq!(steps_to_the_end(&mut planner), 0);
    let after = planner.outlook().expect("an outlook");
    let by = TimeSpan::from_minutes(90.0);
    assert_eq!(
        times(&before, dish).latest_on + by,
        times(&after, dish).latest_on
    );
    assert_eq!(
        times(&before, dish).ready.moved(by),
        times(&after, dish).ready
    );
}

#[test]
fn a_newer_question_ends_the_older() {
    let (mut sample, dish) = ribs();
    let mut planner = Planner::default();
    planner.begin(sample.plan.clone(), sample.situation.clone(), 64);
    assert!(!planner.step());
    sample.piece_mut(dish).mass = Mass::from_kilograms(1.2);
    planner.begin(sample.plan.clone(), sample.situation.clone(), 8);
    steps_to_the_end(&mut planner);
    assert_eq!(
        planner.outlook(),
        Some(derive(&sample.plan, &sample.situation, 8))
    );
}

#[test]
fn one_bad_dish_hinders_no_other() {
    let (mut sample, ribs) = ribs();
    let cooker = *sample.plan.cookers.keys().next().expect("a cooker");
    let heavy = sample.dish("pork-belly", 400.0, cooker);
    let cold = sample.dish("pork-belly", 2.0, cooker);
    sample.dish_mut(cold).pit = Some(Temperature::from_celsius(80.0));
    let empty = sample.dish("pork-belly", 2.0, cooker);
    sample.dish_mut(empty).pieces.clear();
    let homeless = sample.dish("pork-belly", 2.0, cooker);
    sample.dish_mut(homeless).cooker = None;
    let outlook = derive(&sample.plan, &sample.situation, 8);
    let hindrance = |dish| {
        let found = outlook.dishes.iter().find(|other| other.dish == dish);
        found
            .expect("the dish")
            .forecast
            .clone()
            .expect_err("a hindrance")
    };
    let Hindrance::OutOfRange { message } = hindrance(heavy) else {
        panic!()
    };
    assert!(
        message.contains("400 kg") && message.contains("40 kg"),
        "{message}"
    );
    assert!(matches!(hindrance(cold), Hindrance::PitBelowTarget { .. }));
    assert_eq!(hindrance(empty), Hindrance::NoPieces);
    assert_eq!(hindrance(homeless), Hindrance::NoCooker);
    assert!(times(&outlook, ribs).odds.kept >= 7);
}

#[test]
fn a_pit_that_follows_one_dish_is_felt_by_the_other() {
    let (mut sample, ribs) = ribs();
    let cooker = *sample.plan.cookers.keys().next().expect("a cooker");
    let loin = sample.dish("pork-loin", 1.6, cooker);
    let alone = derive(&sample.plan, &sample.situation, 8);
    let hotter = PitStep {
        when: PitWhen::CoreReaches {
            dish: loin,
            core: Temperature::from_celsius(40.0),
        },
        set: Temperature::from_celsius(160.0),
    };
    let programme = &mut sample.plan.cookers.get_mut(&cooker).expect("it").programme;
    programme.push(hotter);
    let together = derive(&sample.plan, &sample.situation, 8);
    let takes = |outlook: &Outlook, dish| {
        let times = times(outlook, dish);
        times.ready.likely() - times.on
    };
    assert!(takes(&together, loin) < takes(&alone, loin));
    assert!(
        takes(&together, ribs) < takes(&alone, ribs),
        "the ribs feel the hotter pit"
    );
    let change = together
        .steps
        .iter()
        .find(|step| step.kind == StepKind::PitChange);
    let change = change.expect("a change of the pit").when.likely();
    let loin = times(&together, loin);
    assert!(loin.on < change && change < loin.ready.likely());
}

#[test]
fn what_went_on_is_where_it_is() {
    let (mut sample, dish) = ribs();
    let on = at("2026-09-12T11:11:11");
    sample.situation.now = at("2026-09-12T12:00:00");
    sample.put_on(dish, on);
    let outlook = derive(&sample.plan, &sample.situation, 8);
    assert_eq!(times(&outlook, dish).on, on);
    assert!(
        outlook
            .findings
            .iter()
            .all(|finding| !matches!(finding.what, FindingKind::OnPast { .. }))
    );
}

#[test]
fn the_sample_plan_is_forecast_whole() {
    let (mut sample, _) = ribs();
    let mut next = 0;
    sample.plan = demo(sample.plan.serving, || {
        next += 1;
        (1, next)
    });
    let outlook = derive(&sample.plan, &sample.situation, 8);
    let letters: String = outlook.dishes.iter().map(|dish| dish.letter).collect();
    assert_eq!(letters, "PLSC");
    for dish in &outlook.dishes {
        let times = dish.forecast.as_ref().expect("a forecast");
        assert!(outlook.table.odds.kept <= times.odds.kept);
        assert!(
            times.odds.kept * 10 >= times.odds.of * 9,
            "{:?}",
            times.odds
        );
    }
    assert!(outlook.portions.planned > Mass::ZERO);
}

#[test]
fn the_safe_line_comes_with_what_the_model_foresees() {
    use crate::safety::watch::Standing;
    use crate::safety::{Phase, safe_line};
    let (mut sample, dish) = ribs();
    let planned = derive(&sample.plan, &sample.situation, 8);
    let line = &planned.safe.dishes[0];
    assert_eq!(
        (line.dish, line.phase, line.state),
        (dish, Phase::Planned, None)
    );
    let foreseen = &line.foreseen;
    let surface = foreseen.surface_takes.expect("a surface that gets hot");
    assert!(surface < foreseen.core_takes.expect("a core that gets hot"));
    let on = times(&planned, dish).on;
    assert!(foreseen.leaves_the_cold.is_some_and(|at| at < on));
    // On, and nothing read for three hours: nothing can be said. The page finds the same without an ensemble.
    sample.situation.now = on + TimeSpan::from_hours(3.0);
    sample.put_on(dish, on);
    let outlook = derive(&sample.plan, &sample.situation, 8);
    let line = &outlook.safe.dishes[0];
    assert_eq!(line.phase, Phase::InPlay);
    assert_eq!(line.state.expect("a state").standing, Standing::Unknown);
    let situation = &sample.situation;
    let again = safe_line(
        &sample.plan,
        &situation.journal,
        &outlook.safe.foreseen(),
        situation.now,
    );
    assert_eq!(again, outlook.safe);
}
