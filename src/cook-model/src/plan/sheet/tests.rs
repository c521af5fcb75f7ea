//! Moves on invented days.

use super::*;
use crate::handover::identity::DishId;
use crate::plan::outlook::StepKind;
use crate::plan::sample::{Sample, at, members};
use crate::plan::steps::steps;
use crate::plan::{CookerKind, StepKey};
use crate::schedule::{Reason, Rule, To, move_step};
use crate::units::{Moment, TimeSpan};
use proptest::prelude::*;

fn butt() -> (Sample, DishId) {
    let mut sample = Sample::new();
    let cooker = sample.cooker(CookerKind::Offset);
    sample.crew(None);
    let dish = sample.dish("pork-shoulder-butt", 3.8, cooker);
    (sample, dish)
}

fn sheet(sample: &Sample) -> Lattice {
    let day = sample.day(&members(9.0, 12.0));
    lattice(&day, &steps(&day).steps)
}

fn begins(lattice: &Lattice, key: StepKey) -> Moment {
    lattice.tasks[lattice.place(key).expect("the step")].begins
}

#[test]
fn a_rub_cannot_go_behind_putting_on() {
    let (sample, dish) = butt();
    let sheet = sheet(&sample);
    let (rub, on) = (
        StepKey::dish(dish, StepKind::Rub),
        StepKey::dish(dish, StepKind::On),
    );
    let refused = move_step(&sheet, rub, To::After(on)).expect_err("a rule against it");
    assert!(
        matches!(refused.chain[0], Reason::Before { step, rule: Rule::Sequence, .. } if step == on),
        "{:?}",
        refused.chain
    );
    let nearest = refused.nearest.expect("a place");
    assert!(nearest < begins(&sheet, on));
    assert!(move_step(&sheet, rub, To::At(nearest)).is_ok());
}

#[test]
fn wrapping_goes_by_the_meat() {
    let (sample, dish) = butt();
    let sheet = sheet(&sample);
    let wrap = StepKey::dish(dish, StepKind::Wrap);
    let refused = move_step(&sheet, wrap, To::At(at("2026-09-12T08:00:00"))).expect_err("no move");
    let on = StepKey::dish(dish, StepKind::On);
    assert!(matches!(refused.chain[..], [Reason::Meat { on: by, .. }] if by == on));
}

#[test]
fn a_dish_moved_later_takes_its_steps_along_and_says_what_becomes_of_the_promise() {
    let (sample, dish) = butt();
    let sheet = sheet(&sample);
    let key = |kind| StepKey::dish(dish, kind);
    let later = TimeSpan::from_hours(2.0);
    let moved = move_step(
        &sheet,
        key(StepKind::On),
        To::At(begins(&sheet, key(StepKind::On)) + later),
    )
    .expect("allowed");
    for kind in [StepKind::On, StepKind::Wrap, StepKind::Off, StepKind::Rub] {
        assert_eq!(
            begins(&moved.lattice, key(kind)) - begins(&sheet, key(kind)),
            later,
            "{kind:?}"
        );
    }
    let [broken] = moved.breaks[..] else {
        panic!("one promise is broken: {:?}", moved.breaks);
    };
    assert!(broken.odds.kept < sheet.dishes[0].wanted);
    let kept = move_step(&sheet, key(StepKind::On), To::At(broken.latest)).expect("allowed");
    assert_eq!(kept.breaks, []);
}

#[test]
fn a_pin_is_kept_when_the_day_is_worked_out_anew() {
    let (mut sample, dish) = butt();
    let trim = StepKey::dish(dish, StepKind::Trim);
    let before = sheet(&sample);
    let wanted = begins(&before, trim) - TimeSpan::from_hours(3.0);
    let plan = sample.plan.clone();
    move_step(&before, trim, To::At(wanted))
        .expect("allowed")
        .keep(&mut sample.plan);
    assert_eq!(begins(&sheet(&sample), trim), wanted);
    sample.plan = plan;
    assert_eq!(sheet(&sample), before);
}

/// Every rule between two steps is kept.
fn rules_hold(lattice: &Lattice) -> bool {
    lattice.links.iter().all(|link| {
        let (sooner, later) = (&lattice.tasks[link.sooner], &lattice.tasks[link.later]);
        let apart = (later.begins - sooner.ends()).seconds();
        apart >= link.least.seconds() - 1.0
            && link.most.is_none_or(|most| apart <= most.seconds() + 1.0)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn a_move_breaks_no_rule_and_loses_nothing(step in 0..40_usize, minutes in -2000..2000_i64) {
        let (sample, _) = butt();
        let sheet = sheet(&sample);
        prop_assert!(rules_hold(&sheet));
        let task = &sheet.tasks[step % sheet.tasks.len()];
        let wanted = task.begins + TimeSpan::from_minutes(minutes as f64);
        match move_step(&sheet, task.key, To::At(wanted)) {
            Ok(moved) => {
                prop_assert_eq!(begins(&moved.lattice, task.key), wanted);
                prop_assert!(rules_hold(&moved.lattice));
                let keys = |lattice: &Lattice| lattice.tasks.iter().map(|task| task.key).collect::<Vec<_>>();
                prop_assert_eq!(keys(&moved.lattice), keys(&sheet));
            }
            Err(refused) => {
                prop_assert!(!refused.chain.is_empty());
                if let Some(nearest) = refused.nearest.filter(|nearest| *nearest != task.begins) {
                    prop_assert!(move_step(&sheet, task.key, To::At(nearest)).is_ok());
                }
            }
        }
    }
}
