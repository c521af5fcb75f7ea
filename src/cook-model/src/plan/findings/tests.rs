//! What is said about invented plans.

use super::*;
use crate::plan::member::Member;
use crate::plan::sample::{Sample, any_members, at, found, member, members};
use crate::plan::{CookerKind, Guests, HoldPlace, Intact};
use crate::units::{Area, Length, Temperature};
use proptest::prelude::*;

fn said(sample: &Sample, members: &[Member]) -> Vec<Finding> {
    let mut all = findings(&sample.day(members), food_planned(&sample.plan));
    sort(&mut all);
    all
}

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

fn brisket() -> (Sample, crate::handover::identity::DishId) {
    let mut sample = Sample::new();
    let cooker = sample.cooker(CookerKind::Drum);
    let dish = sample.dish("beef-packer-brisket", 6.0, cooker);
    (sample, dish)
}

#[test]
fn a_sound_plan_gives_no_finding() {
    let (sample, _) = brisket();
    assert_eq!(said(&sample, &members(10.0, 12.0)), []);
}

#[test]
fn too_late() {
    let (mut sample, _) = brisket();
    sample.situation.now = at("2026-09-12T09:00:00");
    let all = said(&sample, &members(10.0, 12.0));
    let past = found(&all, |what| {
        matches!(what, FindingKind::OnPast { .. }).then_some(())
    });
    let broken = found(&all, |what| match what {
        FindingKind::PromiseBroken { odds } => Some(odds.kept),
        _ => None,
    });
    assert_eq!((past.len(), broken), (1, vec![0]));
    sample.situation.now = at("2026-09-12T19:00:00");
    assert!(
        said(&sample, &members(10.0, 12.0))
            .iter()
            .any(|finding| finding.what == FindingKind::ServingPast)
    );
}

#[test]
fn a_spread_wider_than_the_hold() {
    let (sample, dish) = brisket();
    let wide = members(6.0, 16.0);
    let all = said(&sample, &wide);
    let holds = found(&all, |what| match what {
        FindingKind::HoldTooLong { waits, limit, .. } => Some((waits.hours(), limit.hours())),
        _ => None,
    });
    let [(waits, limit)] = holds[..] else {
        panic!("{all:?}")
    };
    assert!(waits > limit && limit == 5.0, "{waits} {limit}");
    let day = sample.day(&wide);
    let placed = day
        .placed()
        .find(|placed| placed.settled.id == dish)
        .expect("placed");
    assert!(placed.span.latest < placed.span.earliest);
}

#[test]
fn too_little_grate_only_where_they_lie_together() {
    let (mut sample, _) = brisket();
    let cooker = *sample.plan.cookers.keys().next().expect("a cooker");
    sample.plan.cookers.get_mut(&cooker).expect("it").grate = Area::from_square_metres(0.16);
    let short = |sample: &Sample| {
        found(&said(sample, &members(10.0, 12.0)), |what| match what {
            FindingKind::TooLittleGrate { wanted, there } => Some((*wanted, *there)),
            _ => None,
        })
    };
    assert_eq!(short(&sample), []);
    sample.dish("beef-packer-brisket", 6.0, cooker);
    let [(wanted, there)] = short(&sample)[..] else {
        panic!("nothing said")
    };
    // Two of about 0.27 by 0.42 m.
    assert!((0.2..0.35).contains(&wanted) && there == 0.16, "{wanted}");
}

#[test]
fn two_airs_in_one_cooker() {
    let (mut sample, dish) = brisket();
    let cooker = *sample.plan.cookers.keys().next().expect("a cooker");
    sample.dish("pork-shoulder-butt", 3.8, cooker);
    let apart = |sample: &Sample| {
        found(&said(sample, &members(10.0, 12.0)), |what| match what {
            FindingKind::TwoPitTemperatures { low, high } => Some((low.celsius(), high.celsius())),
            _ => None,
        })
    };
    sample.dish_mut(dish).pit = Some(celsius(130.0));
    assert_eq!(apart(&sample), []);
    sample.dish_mut(dish).pit = Some(celsius(150.0));
    assert_eq!(apart(&sample), [(121.0, 150.0)]);
    sample.plan.cookers.get_mut(&cooker).expect("it").kind = CookerKind::Offset;
    assert_eq!(apart(&sample), []);
}

#[test]
fn the_height_lowers_the_target() {
    let (mut sample, _) = brisket();
    sample.plan.place.altitude = Length::from_metres(1600.0);
    let all = said(&sample, &members(10.0, 12.0));
    let lowered = found(&all, |what| match what {
        FindingKind::TargetLowered { from, to, boiling } => {
            Some((from.celsius(), to.celsius(), boiling.celsius()))
        }
        _ => None,
    });
    let [(from, to, boiling)] = lowered[..] else {
        panic!("{all:?}")
    };
    // Boiling at 1,600 m: 94.6 °C by the standard atmosphere.
    assert!((boiling - 94.6).abs() < 0.3 && (boiling - to - 1.0).abs() < 1e-9 && to < from);
}

#[test]
fn a_target_below_the_minimum_names_its_printed_time() {
    let mut sample = Sample::new();
    let cooker = sample.cooker(CookerKind::Oven);
    let roast = sample.dish("beef-rib-roast", 2.5, cooker);
    sample.dish_mut(roast).target = Some(celsius(55.0));
    let told = |sample: &Sample| {
        let all = said(sample, &members(2.0, 2.5));
        let one = all
            .into_iter()
            .find(|finding| matches!(finding.what, FindingKind::TargetBelowMinimum { .. }));
        let one = one.expect("a finding");
        let FindingKind::TargetBelowMinimum { by_table, .. } = one.what else {
            panic!()
        };
        (one.gravity, by_table.map(|time| time.minutes()))
    };
    // FSIS Appendix A: 97 min at 131 °F.
    assert_eq!(told(&sample), (Gravity::Heed, Some(97.0)));
    sample.piece_mut(roast).intact = Intact::Unknown;
    assert_eq!(told(&sample), (Gravity::Stop, None));
}

#[test]
fn a_slow_core_is_a_caution_where_it_is_intact_and_a_stop_where_it_is_not() {
    let (mut sample, dish) = brisket();
    let slow: Vec<Member> = members(16.0, 18.0);
    let kinds = |sample: &Sample| {
        let all = said(sample, &slow);
        all.iter()
            .map(|finding| (finding.gravity, std::mem::discriminant(&finding.what)))
            .collect::<Vec<_>>()
    };
    let likely = crate::units::TimeSpan::ZERO;
    let intact = std::mem::discriminant(&FindingKind::SlowCoreIntact { likely });
    let not = std::mem::discriminant(&FindingKind::SlowCoreNotIntact { likely });
    let ask = std::mem::discriminant(&FindingKind::AskIntact);
    assert!(kinds(&sample).contains(&(Gravity::Note, intact)));
    sample.piece_mut(dish).intact = Intact::No;
    assert!(kinds(&sample).contains(&(Gravity::Stop, not)));
    sample.piece_mut(dish).intact = Intact::Unknown;
    let unknown = kinds(&sample);
    assert!(unknown.contains(&(Gravity::Stop, not)) && unknown.contains(&(Gravity::Heed, ask)));
    assert_eq!(unknown[0].0, Gravity::Stop);
}

#[test]
fn a_slow_surface_stops_even_intact_meat() {
    let (sample, _) = brisket();
    let slow: Vec<Member> = (0..10)
        .map(|_| Member {
            surface_hot: Some(crate::units::TimeSpan::from_hours(3.9)),
            ..member(12.0)
        })
        .collect();
    let all = said(&sample, &slow);
    // Ten minutes of rubbing come on top.
    let likely = found(&all, |what| match what {
        FindingKind::SlowSurface { likely } => Some(likely.minutes()),
        _ => None,
    });
    assert!((likely[0] - 244.0).abs() < 1e-6, "{likely:?}");
}

#[test]
fn a_roast_on_the_counter_is_not_held() {
    let mut sample = Sample::new();
    let cooker = sample.cooker(CookerKind::Oven);
    let roast = sample.dish("beef-rib-roast", 2.5, cooker);
    sample.dish_mut(roast).hold = Some(HoldPlace::Counter);
    let day = sample.day(&members(2.0, 2.2));
    let placed = day.placed().next().expect("placed");
    assert_eq!(placed.settled.keeps_good.minutes(), 40.0);
}

proptest! {
    #[test]
    fn more_guests_never_want_less(grown in 1..60u32, more in 0..20u32) {
        let (mut sample, _) = brisket();
        sample.plan.guests = Guests::of(grown, 0);
        let few = food_planned(&sample.plan);
        sample.plan.guests.grown += more;
        let many = food_planned(&sample.plan);
        prop_assert!(many.wanted >= few.wanted && many.planned == few.planned);
    }

    #[test]
    fn the_latest_lies_after_the_earliest_or_it_is_said(ensemble in any_members()) {
        let (sample, _) = brisket();
        let all = said(&sample, &ensemble);
        let day = sample.day(&ensemble);
        for placed in day.placed() {
            let odd = placed.span.latest < placed.span.earliest || !placed.keeps_promise(&sample.plan);
            let told = all.iter().any(|finding| matches!(finding.what, FindingKind::HoldTooLong { .. } | FindingKind::PromiseBroken { .. }));
            prop_assert!(!odd || told, "{:?} {:?}", placed.span, all);
        }
    }

    #[test]
    fn the_table_is_never_likelier_than_its_dishes(ensemble in any_members()) {
        let (mut sample, _) = brisket();
        let cooker = *sample.plan.cookers.keys().next().expect("a cooker");
        sample.dish("lamb-shoulder", 2.6, cooker);
        sample.own([12.0, 15.0, 20.0], cooker);
        let day = sample.day(&ensemble);
        let table = crate::plan::table::table(&day);
        for placed in day.placed() {
            prop_assert!(table.odds.kept <= placed.odds(table.serving).kept);
        }
        if let Some(ready) = table.ready {
            prop_assert!(ready.deciles.is_sorted());
        }
    }
}
