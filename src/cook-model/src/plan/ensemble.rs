//! The members of a dish: all its pieces, each with its own course in the same world.

use super::member::Member;
use super::method::{CutMethod, OwnMethod, Settled};
use super::window::LONGEST_COOK;
use super::{Audience, HoldPlace};
use crate::forecast::{DishForecast, Knowledge, OwnerKey};
use crate::forecast::{Owners, Prior, draw, normal_quantile, sample_at};
use crate::physics::{CookerClass, MemberRun, Sample};
use crate::safety::hold_minimum;
use crate::units::{Temperature, TemperatureDifference, TimeSpan};

/// Probing begins this far below the target.
const NEAR: TemperatureDifference = TemperatureDifference::from_kelvin(5.0);

/// The members of a cut's ensemble, as far as all its pieces have been run.
pub(super) fn members_of_cut(
    settled: &Settled<'_>,
    method: &CutMethod<'_>,
    pieces: &[&DishForecast],
    audience: Audience,
) -> Vec<Member> {
    let runs = pieces.iter().map(|piece| piece.members().len()).min();
    let floor = hold_minimum(audience, method.roast()).0;
    (0..runs.unwrap_or(0))
        .map(|member| {
            pieces
                .iter()
                .map(|piece| &piece.members()[member])
                .map(|run| member_of_piece(settled, method, run, floor))
                .reduce(together)
                .unwrap_or_default()
        })
        .collect()
}

fn member_of_piece(
    settled: &Settled<'_>,
    method: &CutMethod<'_>,
    run: &MemberRun,
    floor: Temperature,
) -> Member {
    let probing = reaches(run, method.target - NEAR);
    let hot = stays_above(run, floor).unwrap_or(TimeSpan::ZERO);
    Member {
        ready: run.ready,
        first_ready: run.ready,
        hot,
        keeps: keeps(settled, hot),
        wrapped: run.covered.first().copied().flatten(),
        probing: match (probing, run.ready) {
            (Some(probing), Some(ready)) => Some(probing.min(ready)),
            (near, ready) => near.or(ready),
        },
        surface_hot: run.surface_hot,
        slow_core: run
            .core_past_60
            .zip(run.core_past_4)
            .map(|(hot, cold)| hot - cold),
        lethality_met: run.lethality_met,
    }
}

/// Two pieces of a dish: ready with the later, waiting since the earlier, at risk by the worse.
fn together(one: Member, other: Member) -> Member {
    let earlier = |a: Option<TimeSpan>, b: Option<TimeSpan>| match (a, b) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    };
    let later = |a: Option<TimeSpan>, b| a.zip(b).map(|(a, b): (TimeSpan, _)| a.max(b));
    Member {
        ready: later(one.ready, other.ready),
        first_ready: earlier(one.first_ready, other.first_ready),
        hot: one.hot.min(other.hot),
        keeps: one.keeps.min(other.keeps),
        wrapped: earlier(one.wrapped, other.wrapped),
        probing: earlier(one.probing, other.probing),
        surface_hot: later(one.surface_hot, other.surface_hot),
        slow_core: later(one.slow_core, other.slow_core),
        lethality_met: later(one.lethality_met, other.lethality_met),
    }
}

/// How long it may wait once it is off: as long as it stays good, and where it is held hot, hot enough.
fn keeps(settled: &Settled<'_>, hot: TimeSpan) -> TimeSpan {
    match settled.hold {
        HoldPlace::Counter => settled.keeps_good,
        HoldPlace::RestBox | HoldPlace::WarmOven { .. } => hot.min(settled.keeps_good),
    }
}

/// How long the coldest point stays at or above a temperature once it is off; as long as it was followed if it never
/// falls below. None for a member that is never ready.
fn stays_above(run: &MemberRun, floor: Temperature) -> Option<TimeSpan> {
    let off = run.ready?;
    let end = run.stage_ends.last().copied().unwrap_or(off);
    let resting = || run.samples.iter().filter(|sample| sample.after >= off);
    if sample_at(&run.samples, off).is_some_and(|sample| sample.core < floor) {
        return Some(TimeSpan::ZERO);
    }
    let below = if (floor.celsius() - 60.0).abs() < 0.01 {
        run.core_below_60
    } else {
        resting()
            .find(|sample| sample.core < floor)
            .map(|sample| sample.after)
    };
    Some((below.unwrap_or(end) - off).max(TimeSpan::ZERO))
}

/// When the probe first reaches a temperature, before it comes off.
pub(super) fn reaches(run: &MemberRun, core: Temperature) -> Option<TimeSpan> {
    let next = run.samples.iter().position(|sample| sample.probe >= core)?;
    let after = match next.checked_sub(1) {
        None => run.samples[next].after,
        Some(before) => crossing(&run.samples[before], &run.samples[next], core),
    };
    let off = run.ready.unwrap_or(LONGEST_COOK);
    (after <= off).then_some(after)
}

fn crossing(before: &Sample, next: &Sample, core: Temperature) -> TimeSpan {
    let share = (core - before.probe) / (next.probe - before.probe);
    before.after + (next.after - before.after) * share
}

/// The members of a dish of one's own: its minutes, spread so that one in ten is below the least, half below the likely
/// and one in ten above the most, in steps of one evenly spread draw.
pub(super) fn members_of_own(
    settled: &Settled<'_>,
    own: OwnMethod,
    key: OwnerKey,
    members: u32,
    seed: u64,
) -> Vec<Member> {
    let owners = Owners {
        cooker: key,
        piece: key,
    };
    let prior = Prior::of(CookerClass::Generic, Knowledge::default());
    (0..members)
        .map(|member| {
            let luck = draw(&prior, owners, seed, member).remainder;
            let ready = Some(own_time(own, luck));
            Member {
                ready,
                first_ready: ready,
                keeps: settled.keeps_good,
                ..Member::default()
            }
        })
        .collect()
}

/// A log-normal time on either side of the likely one. `luck` is between 0 and 1.
fn own_time(own: OwnMethod, luck: f64) -> TimeSpan {
    /// The 90 % point of the normal distribution.
    const NINE_IN_TEN: f64 = 1.281_551_565_544_6;
    let deviate = normal_quantile(luck) / NINE_IN_TEN;
    let ratio = if deviate < 0.0 {
        own.likely / own.least
    } else {
        own.most / own.likely
    };
    own.likely * libm::exp(deviate * libm::log(ratio))
}
