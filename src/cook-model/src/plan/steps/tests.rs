//! Steps of invented cooks.

use super::*;
use crate::handover::identity::DishId;
use crate::plan::outlook::FindingKind;
use crate::plan::sample::{Sample, any_members, at, found, members};
use crate::plan::{CookerKind, SaltAhead, Spray, Zone, ZoneChange};
use crate::units::{Moment, TimeSpan};
use proptest::prelude::*;

fn of(made: &Made, dish: DishId, kind: StepKind) -> Vec<&Step> {
    let steps = made.steps.iter();
    steps
        .filter(|step| step.kind == kind && step.dish == Some(dish))
        .collect()
}

fn likely(made: &Made, dish: DishId, kind: StepKind) -> Moment {
    let steps = of(made, dish, kind);
    assert_eq!(steps.len(), 1, "{kind:?}");
    steps[0].when.likely()
}

/// A pork butt on a cooker with two people, one of them up.
fn butt(kind: CookerKind) -> (Sample, DishId) {
    let mut sample = Sample::new();
    let cooker = sample.cooker(kind);
    let dish = sample.dish("pork-shoulder-butt", 3.8, cooker);
    (sample, dish)
}

#[test]
fn a_butt_has_all_its_steps_in_order() {
    use StepKind as K;
    let (mut sample, dish) = butt(CookerKind::Drum);
    sample.piece_mut(dish).frozen = true;
    let made = steps(&sample.day(&members(9.0, 12.0)));
    let order = [
        K::Buy,
        K::Thaw,
        K::Trim,
        K::Salt,
        K::Rub,
        K::On,
        K::ProbeIn,
        K::Turn,
        K::Wrap,
        K::Probe,
        K::Off,
        K::Hold,
        K::Slice,
    ];
    let times: Vec<Moment> = order
        .iter()
        .map(|kind| likely(&made, dish, *kind))
        .collect();
    assert!(times.is_sorted(), "{times:?}");
    let on = likely(&made, dish, K::On);
    let salted = on - likely(&made, dish, K::Salt);
    assert!(
        (12.0..=24.0).contains(&salted.hours()),
        "{}",
        salted.hours()
    );
    let thawing = likely(&made, dish, K::Trim) - likely(&made, dish, K::Thaw);
    // A day for every 4 lb: 3.8 kg are 8.4 lb.
    assert!(
        thawing.hours() >= 50.2 && thawing.hours() < 75.0,
        "{}",
        thawing.hours()
    );
    let salt = of(&made, dish, K::Salt)[0].amount.expect("an amount");
    assert!((salt.grams() - 3800.0 * 0.95 * 0.012).abs() < 0.01);
    assert!(of(&made, dish, K::Light).is_empty());
    let light = made
        .steps
        .iter()
        .find(|step| step.kind == K::Light)
        .expect("a fire");
    assert_eq!((on - light.when.likely()).minutes(), 45.0);
    assert!(light.cautions.iter().any(|rule| rule == "carbon-monoxide"));
    assert!(
        of(&made, dish, K::Hold)[0]
            .cautions
            .iter()
            .any(|rule| rule == "probe-the-box")
    );
}

#[test]
fn what_is_on_already_is_not_salted_again() {
    let (mut sample, dish) = butt(CookerKind::Drum);
    let on = at("2026-09-12T04:07:00");
    sample.situation.now = at("2026-09-12T09:00:00");
    sample.put_on(dish, on);
    let made = steps(&sample.day(&members(9.0, 12.0)));
    assert_eq!(likely(&made, dish, StepKind::On), on);
    for kind in [StepKind::Buy, StepKind::Salt, StepKind::Rub] {
        assert!(of(&made, dish, kind).is_empty(), "{kind:?}");
    }
    assert!(made.steps.iter().all(|step| step.kind != StepKind::Light));
}

#[test]
fn sprays_go_by_the_clock_until_it_is_wrapped() {
    let (mut sample, dish) = butt(CookerKind::Drum);
    sample.dish_mut(dish).spray = Some(Spray {
        first: TimeSpan::from_hours(2.0),
        every: TimeSpan::from_minutes(45.0),
    });
    let made = steps(&sample.day(&members(10.0, 10.0)));
    let sprays = of(&made, dish, StepKind::Spray);
    let on = likely(&made, dish, StepKind::On);
    let minutes: Vec<f64> = sprays
        .iter()
        .map(|step| (step.when.likely() - on).minutes())
        .collect();
    assert_eq!(minutes, [120.0, 165.0, 210.0, 255.0]);
    assert_eq!(
        sprays.iter().map(|step| step.round).collect::<Vec<_>>(),
        [1, 2, 3, 4]
    );
}

#[test]
fn an_offset_at_night_is_a_collision_with_its_rounds_counted() {
    let (mut sample, _) = butt(CookerKind::Offset);
    sample.crew(Some(("22:00", "03:00")));
    sample.crew(Some(("01:00", "08:00")));
    // Table-ready needs 70 min after ready; the whole night is part of the cook.
    let made = steps(&sample.day(&members(15.0, 16.0)));
    let gaps = found(&made.findings, |what| match what {
        FindingKind::NobodyForFire { from, to, rounds } => Some((*from, *to, *rounds)),
        _ => None,
    });
    assert_eq!(gaps.len(), 1, "{gaps:?}");
    let (from, to, rounds) = gaps[0];
    assert_eq!(
        (from, to),
        (at("2026-09-12T01:00:00"), at("2026-09-12T03:00:00"))
    );
    let feeds = made.steps.iter().filter(|step| step.kind == StepKind::Feed);
    let unattended = feeds.filter(|step| step.who.is_none()).count();
    assert_eq!(unattended, rounds as usize);
    assert!((1..=3).contains(&rounds), "{rounds}");
}

#[test]
fn a_cabinet_holds_itself_through_the_same_night() {
    let (mut sample, _) = butt(CookerKind::Cabinet);
    sample.crew(Some(("22:00", "03:00")));
    sample.crew(Some(("01:00", "08:00")));
    let made = steps(&sample.day(&members(15.0, 16.0)));
    assert!(
        made.findings
            .iter()
            .all(|finding| !matches!(finding.what, FindingKind::NobodyForFire { .. }))
    );
}

#[test]
fn a_round_is_moved_to_where_somebody_is_up() {
    let (mut sample, _) = butt(CookerKind::Kettle);
    sample.crew(Some(("23:00", "00:30")));
    let made = steps(&sample.day(&members(19.0, 19.5)));
    let feeds: Vec<&Step> = made
        .steps
        .iter()
        .filter(|step| step.kind == StepKind::Feed)
        .collect();
    assert!(feeds.len() > 3);
    assert!(feeds.iter().all(|step| step.who.is_some()), "{feeds:?}");
}

#[test]
fn thawing_that_began_too_late_says_whether_cold_water_still_does_it() {
    let (mut sample, dish) = butt(CookerKind::Drum);
    sample.piece_mut(dish).frozen = true;
    let told = |sample: &Sample| {
        let made = steps(&sample.day(&members(9.0, 12.0)));
        let found = found(&made.findings, |what| match what {
            FindingKind::NotThawed { cold_water, .. } => Some(*cold_water),
            _ => None,
        });
        let gravity = made.findings.iter().map(|finding| finding.gravity).min();
        (found, gravity)
    };
    assert_eq!(told(&sample).0, []);
    sample.situation.now = at("2026-09-10T12:00:00");
    let (found, gravity) = told(&sample);
    // 30 min a pound: 8.4 lb.
    let water = found[0].expect("cold water still does it");
    assert!((water.hours() - 4.19).abs() < 0.01, "{}", water.hours());
    assert_eq!(gravity, Some(Gravity::Heed));
    sample.situation.now = at("2026-09-12T03:00:00");
    assert_eq!(told(&sample), (vec![None], Some(Gravity::Stop)));
}

#[test]
fn salt_that_is_left_too_little_time_is_said() {
    let (mut sample, dish) = butt(CookerKind::Drum);
    sample.dish_mut(dish).salt = Some(SaltAhead {
        ahead: TimeSpan::from_hours(14.0),
        rate: 0.012,
        solution_added: false,
    });
    let short = |sample: &Sample| {
        let made = steps(&sample.day(&members(9.0, 12.0)));
        found(&made.findings, |what| match what {
            FindingKind::SaltTooShort { ahead, .. } => Some(ahead.minutes()),
            _ => None,
        })
    };
    assert!(short(&sample).is_empty());
    let on = sample
        .day(&members(9.0, 12.0))
        .placed()
        .next()
        .expect("a dish")
        .on;
    sample.situation.now = on - TimeSpan::from_minutes(40.0);
    assert_eq!(short(&sample), [40.0]);
    sample.situation.now = on - TimeSpan::from_minutes(50.0);
    assert!(short(&sample).is_empty());
}

#[test]
fn a_night_with_a_clock_change_keeps_every_span() {
    let (mut sample, dish) = butt(CookerKind::Offset);
    sample.plan.serving.local = "2027-03-28T18:00:00".parse().expect("a date and time");
    sample.plan.serving.offset_seconds = 3600;
    sample.situation.now = at("2027-03-20T12:00:00");
    let spans = |zone: Zone| {
        let mut changed = Sample::new();
        changed.plan = sample.plan.clone();
        changed.situation = crate::plan::Situation::new(sample.situation.now, zone);
        let made = steps(&changed.day(&members(15.0, 17.0)));
        let on = likely(&made, dish, StepKind::On);
        let fire = made.steps.iter().filter(|step| step.cooker.is_some());
        fire.map(|step| (step.kind, (step.when.likely() - on).seconds()))
            .collect::<Vec<_>>()
    };
    // Europe/London (tz database): at 01:00 UTC the clock goes forward, in the middle of this cook.
    let summer = Zone {
        offset_seconds: 0,
        changes: vec![ZoneChange {
            from: at("2027-03-28T01:00:00"),
            offset_seconds: 3600,
        }],
    };
    assert_eq!(spans(summer), spans(Zone::fixed(3600)));
}

#[test]
fn meat_is_bought_in_one_way_and_before_the_fire() {
    let (mut sample, _) = butt(CookerKind::Offset);
    let cooker = *sample.plan.cookers.keys().next().expect("a cooker");
    sample.dish("lamb-shoulder", 2.6, cooker);
    sample.dish("sausage-links", 0.08, cooker);
    let made = steps(&sample.day(&members(8.0, 9.0)));
    let ways: Vec<Moment> = made
        .steps
        .iter()
        .filter(|step| step.kind == StepKind::Buy)
        .map(|step| step.when.likely())
        .collect();
    assert_eq!(ways.len(), 3);
    assert!(ways.iter().all(|way| *way == ways[0]), "{ways:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn steps_of_a_dish_are_in_causal_order(ensemble in any_members(), frozen: bool, kind in 0..5u8, quiet in 0..24u32) {
        use StepKind as K;
        let kind = [CookerKind::Offset, CookerKind::Kettle, CookerKind::Drum, CookerKind::Ceramic, CookerKind::Oven][usize::from(kind)];
        let (mut sample, dish) = butt(kind);
        sample.piece_mut(dish).frozen = frozen;
        sample.crew(Some((&format!("{quiet:02}:00"), &format!("{:02}:30", (quiet + 8) % 24))));
        sample.crew(Some(("01:00", "08:00")));
        let day = sample.day(&ensemble);
        let made = steps(&day);
        let order = [
            K::Buy, K::Thaw, K::Trim, K::Salt, K::Rub, K::On, K::ProbeIn, K::Wrap, K::Off, K::Hold, K::Slice,
        ];
        let firsts: Vec<Moment> = order.iter().filter_map(|kind| Some(of(&made, dish, *kind).first()?.when.likely())).collect();
        prop_assert!(firsts.is_sorted(), "{:?}", firsts);
        prop_assert!(made.steps.is_sorted_by_key(|step| step.when.likely()));
        for step in &made.steps {
            prop_assert!(step.when.deciles.is_sorted());
            if let Some(who) = step.who {
                let up = day.crew.who_is_up_for(step.when.likely(), step.takes).any(|id| id == who);
                prop_assert!(up, "{:?}", step);
            }
        }
        let hands_without = made.steps.iter().filter(|step| step.who.is_none() && step.kind != K::Feed).count();
        let said = found(&made.findings, |what| matches!(what, FindingKind::NobodyUp { .. }).then_some(()));
        prop_assert_eq!(hands_without, said.len());
    }

    #[test]
    fn a_day_later_everything_is_a_day_later(ensemble in any_members(), days in 1..9i64) {
        let (mut sample, _) = butt(CookerKind::Offset);
        sample.crew(Some(("22:00", "06:00")));
        let by = TimeSpan::from_hours(24.0 * days as f64);
        let here = steps(&sample.day(&ensemble)).steps;
        sample.plan.serving.local += chrono::TimeDelta::days(days);
        sample.situation.now = sample.situation.now + by;
        let there = steps(&sample.day(&ensemble)).steps;
        prop_assert_eq!(here.len(), there.len());
        for (here, there) in here.iter().zip(&there) {
            prop_assert_eq!(here.kind, there.kind);
            prop_assert_eq!(here.when.moved(by), there.when);
        }
    }

    #[test]
    fn a_fire_is_fed_as_often_as_it_wants(ensemble in any_members(), from in 0..24u32) {
        let (mut sample, _) = butt(CookerKind::Offset);
        sample.crew(Some((&format!("{from:02}:00"), &format!("{:02}:15", (from + 3) % 24))));
        let day = sample.day(&ensemble);
        let Some(placed) = day.placed().next() else { return Ok(()) };
        let made = steps(&day);
        let mut last = placed.on;
        for step in made.steps.iter().filter(|step| step.kind == StepKind::Feed) {
            let since = step.when.likely() - last;
            prop_assert!((30.0..=60.0).contains(&since.minutes()), "{}", since.minutes());
            last = step.when.likely();
        }
        prop_assert!((placed.ready().likely() - last).minutes() <= 75.0 + 1.0);
    }
}
