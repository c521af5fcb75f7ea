//! Off the heat and hot: in a box, in a warm oven, on a counter, on the table.

use super::heating::Heated;
use super::judge::{Known, Stage};
use super::{Happened, SafeState, Standing, Waiting};
use crate::safety::cooling::{Container, stays_above};
use crate::safety::{RuleId, Sort, hold_minimum, minimum, out_of_fridge_limit};
use crate::units::{Mass, Moment, Temperature, TimeSpan};

/// Held food is read again after this at the latest. Set by hand.
const READ_HOLD_EVERY: TimeSpan = TimeSpan::from_hours(2.0);

/// A core this close above the floor is a caution: 3 K. Set by hand.
const NEAR: f64 = 3.0;

/// Cooked food that waits. `waiting` is none where the heat was lost around it.
pub(super) fn keeping(
    known: &Known,
    heated: &Heated,
    since: Moment,
    waiting: Option<Waiting>,
) -> SafeState {
    let Some(cooked) = heated.cooked.filter(|cooked| *cooked <= known.now) else {
        return not_done(known, since);
    };
    let (floor, rule) = floor(known);
    let Some((at, reading)) = known.cores(cooked).next_back() else {
        return SafeState::new(Standing::Unknown, RuleId::ProbeTheBox, Some(since));
    };
    if reading < floor {
        let below = fell_below(known, cooked, at, reading, floor);
        return below_the_floor(known, below, rule);
    }
    if let Some(below) = not_heated_through_since(known, cooked, floor) {
        let limit = below + out_of_fridge_limit(known.track.air);
        return SafeState::new(Standing::ActNow, RuleId::ReheatThrough, Some(below))
            .until(limit, RuleId::ReheatQuickly);
    }
    let held_until = at + trusted(known, waiting, reading, floor);
    if known.now > held_until {
        return SafeState::new(Standing::Unknown, RuleId::ProbeTheBox, Some(held_until));
    }
    let near = (reading - floor).kelvin() < NEAR;
    let standing = if near {
        Standing::Heed
    } else {
        Standing::LooksSafe
    };
    SafeState::new(standing, rule, Some(at)).until(held_until, RuleId::ProbeTheBox)
}

/// The last reading below the floor, if none since shows it heated through again.
fn not_heated_through_since(known: &Known, cooked: Moment, floor: Temperature) -> Option<Moment> {
    let (below, _) = known.cores(cooked).rev().find(|(_, core)| *core < floor)?;
    let through = minimum(Sort::Leftovers).temperature;
    let again = known.cores(below).any(|(_, core)| core >= through);
    (!again).then_some(below)
}

/// How long a reading at or above the floor can be trusted: as long as the quickest loss of the place allows.
fn trusted(
    known: &Known,
    waiting: Option<Waiting>,
    reading: Temperature,
    floor: Temperature,
) -> TimeSpan {
    let container = match waiting {
        None => Container::ShutCooker,
        Some(Waiting::Out) => Container::Wrapped,
        Some(Waiting::Box) => Container::RestBox,
        Some(Waiting::WarmOven(air)) if air > floor => return READ_HOLD_EVERY,
        Some(Waiting::WarmOven(_)) => Container::ShutOven,
    };
    let mass = known.track.mass.unwrap_or(Mass::from_kilograms(1.0));
    stays_above(container, mass, reading, floor, known.track.air)
        .short
        .min(READ_HOLD_EVERY)
}

fn floor(known: &Known) -> (Temperature, RuleId) {
    let by_table = known.track.standard.table(known.track.sort).is_some()
        && known.track.sort == Sort::IntactMuscle;
    hold_minimum(known.track.audience, by_table)
}

/// When the core passed the floor between the last reading above it and one below, as a body that cools towards the air
/// around it: early rather than late. Without a reading above, it was below from the first.
fn fell_below(
    known: &Known,
    cooked: Moment,
    at: Moment,
    reading: Temperature,
    floor: Temperature,
) -> Moment {
    let above = known.cores(cooked).rev().find(|(_, core)| *core >= floor);
    let first_below = known
        .cores(cooked)
        .rev()
        .take_while(|(_, core)| *core < floor)
        .last()
        .unwrap_or((at, reading));
    let Some((from, before)) = above else {
        return cooked;
    };
    let over = |temperature: Temperature| (temperature - known.track.air).kelvin();
    let (to, after) = first_below;
    let share = if over(after) > 1.0 {
        libm::log(over(before) / over(floor)) / libm::log(over(before) / over(after))
    } else {
        0.0
    };
    from + (to - from) * share
}

/// Below the floor: the two-hour clock runs.
fn below_the_floor(known: &Known, below: Moment, rule: RuleId) -> SafeState {
    let limit = below + out_of_fridge_limit(known.track.air);
    if known.now > limit {
        SafeState::new(Standing::Discard, RuleId::TwoHours, Some(below))
    } else {
        SafeState::new(Standing::ActNow, rule, Some(below)).until(limit, RuleId::TwoHours)
    }
}

/// Off the heat without a reading that shows it done.
fn not_done(known: &Known, since: Moment) -> SafeState {
    let rule = minimum(known.track.sort).rule;
    let limit = since + out_of_fridge_limit(known.track.air);
    let read = known
        .past
        .iter()
        .any(|one| matches!(one.what, Happened::Core(_)));
    if !read {
        SafeState::new(Standing::Unknown, rule, Some(since))
    } else if known.now > limit {
        SafeState::new(Standing::Discard, RuleId::NeverPartCook, Some(since))
    } else {
        SafeState::new(Standing::ActNow, rule, Some(since)).until(limit, RuleId::NeverPartCook)
    }
}

/// On the table, without heat.
pub(super) fn on_the_table(known: &Known, heated: &Heated, since: Moment) -> SafeState {
    if heated.cooked.is_none() {
        return not_done(known, since);
    }
    let before = before(known, heated, since);
    // What was below the floor already when it came to the table brings its clock along.
    let from = if before.standing == Standing::ActNow {
        before.since.unwrap_or(since)
    } else {
        since
    };
    let limit = from + out_of_fridge_limit(known.track.air);
    let rule = RuleId::OnTheTable;
    let left = limit - known.now;
    let state = if left < TimeSpan::ZERO {
        SafeState::new(Standing::Discard, rule, Some(from))
    } else {
        let near = left < TimeSpan::from_minutes(30.0) || before.standing != Standing::LooksSafe;
        let standing = if near {
            Standing::Heed
        } else {
            Standing::LooksSafe
        };
        SafeState::new(standing, rule, Some(from)).until(limit, RuleId::ChillLeftovers)
    };
    if before.standing == Standing::ActNow {
        state
    } else {
        before.worse(state)
    }
}

/// How it stood just before what is done with it since a moment, by what was done before.
pub(super) fn before(known: &Known, heated: &Heated, moment: Moment) -> SafeState {
    let then = known.as_of(moment);
    let mut stages = then.stages();
    stages.pop();
    match stages.pop() {
        Some((at, Stage::Waits(waiting))) => keeping(&then, heated, at, waiting),
        Some((at, Stage::Table)) => on_the_table(&then, heated, at),
        Some((_, Stage::Heats | Stage::Chills | Stage::Reheats)) | None => {
            SafeState::new(Standing::LooksSafe, RuleId::OnTheTable, Some(moment))
        }
    }
}
