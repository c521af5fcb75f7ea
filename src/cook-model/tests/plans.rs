//! The plans that come with the project, derived from a few members each: what must be true of any good day.

use cook_model::handover::file;
use cook_model::plan::outlook::{DishTimes, FindingKind, Outlook, StepKind};
use cook_model::plan::{Plan, Situation, Zone, check, derive};
use cook_model::units::TimeSpan;

const SUPPER: &str = include_str!("../../../tests/plans/harvest-supper.json");
const RIBS: &str = include_str!("../../../tests/plans/plate-ribs.json");
const SEA: &str = include_str!("../../../tests/plans/packer-and-butt-at-sea-level.json");
const HIGH: &str = include_str!("../../../tests/plans/packer-and-butt-at-1600-m.json");

fn derived(text: &str) -> (Plan, Outlook) {
    let (hand_over, plan) = file::read(text.as_bytes()).expect("a plan");
    let now = plan.serving.moment() - TimeSpan::from_hours(7.0 * 24.0);
    let zone = Zone::fixed(plan.serving.offset_seconds);
    let situation = Situation::new(now, zone).after(&hand_over.journal);
    assert_eq!(check(&plan, now), []);
    let outlook = derive(&plan, &situation, 16);
    (plan, outlook)
}

fn times(outlook: &Outlook) -> Vec<&DishTimes> {
    let all = outlook.dishes.iter();
    all.map(|dish| dish.forecast.as_ref().expect("a forecast"))
        .collect()
}

#[test]
fn every_dish_keeps_its_promise_and_the_table_is_counted_whole() {
    for text in [SUPPER, RIBS, SEA, HIGH] {
        let (plan, outlook) = derived(text);
        let serving = plan.serving.moment();
        for times in times(&outlook) {
            assert!(f64::from(times.odds.kept) >= plan.promise * f64::from(times.odds.of));
            assert!(times.on <= times.latest_on && times.on.unix_seconds() % 300 == 0);
            assert!(times.ready.deciles.is_sorted() && times.table_ready.deciles.is_sorted());
            assert!(outlook.table.odds.kept <= times.odds.kept);
        }
        for kind in [
            StepKind::Buy,
            StepKind::Light,
            StepKind::SteadyFire,
            StepKind::Serve,
            StepKind::Chill,
        ] {
            assert!(
                outlook.steps.iter().any(|step| step.kind == kind),
                "{kind:?}"
            );
        }
        let serve = outlook
            .steps
            .iter()
            .find(|step| step.kind == StepKind::Serve);
        assert_eq!(serve.map(|step| step.when.likely()), Some(serving));
    }
}

#[test]
fn the_same_plan_gives_the_same_bits() {
    let (_, one) = derived(RIBS);
    let (_, other) = derived(RIBS);
    assert_eq!(one, other);
}

#[test]
fn at_the_height_the_target_gives_way_and_the_meat_still_gets_ready() {
    let (_, sea) = derived(SEA);
    let (_, high) = derived(HIGH);
    let lowered = |outlook: &Outlook| {
        let findings = outlook.findings.iter();
        findings
            .filter(|finding| matches!(finding.what, FindingKind::TargetLowered { .. }))
            .count()
    };
    assert_eq!((lowered(&sea), lowered(&high)), (0, 2));
    for (sea, high) in times(&sea).into_iter().zip(times(&high)) {
        let target = high.target.expect("a target").celsius();
        // Water boils at 94.7 °C at 1,600 m (standard atmosphere).
        assert!((93.0..94.5).contains(&target), "{target}");
        assert_eq!(sea.target_lowered, None);
        let takes = |times: &DishTimes| (times.ready.likely() - times.on).hours();
        assert!(
            (takes(high) / takes(sea) - 1.0).abs() < 0.15,
            "{} {}",
            takes(sea),
            takes(high)
        );
    }
}

#[test]
fn plate_ribs_are_wrapped_and_the_pit_raised_by_their_core() {
    let (_, outlook) = derived(RIBS);
    let step = |kind| {
        outlook
            .steps
            .iter()
            .find(|step| step.kind == kind)
            .expect("the step")
    };
    let (wrap, change) = (step(StepKind::Wrap), step(StepKind::PitChange));
    for step in [wrap, change] {
        assert_eq!(step.core.map(|core| core.celsius()), Some(88.0));
    }
    let apart = (wrap.when.likely() - change.when.likely()).minutes();
    assert!(apart.abs() < 10.0, "{apart}");
    assert!(step(StepKind::On).when.likely() < wrap.when.from());
    assert!(wrap.when.likely() < step(StepKind::Off).when.likely());
}

#[test]
fn the_offset_of_the_supper_is_not_left_alone_unsaid() {
    let (_, outlook) = derived(SUPPER);
    let rounds = outlook
        .steps
        .iter()
        .filter(|step| step.kind == StepKind::Feed);
    let alone: Vec<_> = rounds.filter(|step| step.who.is_none()).collect();
    let said: u32 = outlook
        .findings
        .iter()
        .filter_map(|finding| match finding.what {
            FindingKind::NobodyForFire { rounds, .. } => Some(rounds),
            _ => None,
        })
        .sum();
    assert_eq!(said as usize, alone.len());
}
