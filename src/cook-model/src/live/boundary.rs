//! The cook as it was logged: measured air, covers when they were put on, and what is planned from now on.

use super::log::{AirChange, PieceLog, PitReading};
use crate::handover::Gauge;
use crate::physics::{
    CookerClass, Cover, Finish, PitChange, PitDeparture, Place, RestStage, Scenario, When,
    WrapChange,
};
use crate::units::{Temperature, TemperatureDifference, TimeSpan};

/// A pit goes from what was read last to its usual departure in this time. Set by hand.
const SETTLES: TimeSpan = TimeSpan::from_hours(1.0);
/// Departures as long as the usual one is kept up after now.
const KEPT_UP: TimeSpan = TimeSpan::from_hours(72.0);
/// A reading that no neighbour comes nearer to than this counts as this far from them. Set by hand.
const ALONE: f64 = 40.0;
/// Neighbours are readings within this. Set by hand.
const NEIGHBOUR: TimeSpan = TimeSpan::from_hours(2.0);
/// A reading counts as what the air was within this of a stretch without heat. Set by hand.
const TELLS: TimeSpan = TimeSpan::from_minutes(20.0);
/// After a stretch without heat the air is back in this time. Set by hand.
const BACK: TimeSpan = TimeSpan::from_minutes(20.0);
/// Followed in its last place for so long.
const FOLLOWED: TimeSpan = TimeSpan::from_hours(12.0);

/// Whether the air was read with a probe beside the meat: then its gauge errs less.
pub(super) fn read_at_meat(log: &PieceLog) -> bool {
    log.pit.iter().any(|pit| pit.gauge == Gauge::AtMeat)
}

/// The scenario of a piece as it was logged up to now and as it is planned from then on, on the clock of the yard.
/// What was planned and not logged has not happened yet: a cover that goes by the clock is put on now at the soonest.
/// One that goes by the probe is left to the member.
pub(super) fn as_logged(planned: &Scenario, log: &PieceLog) -> Scenario {
    let mut scenario = planned.clone();
    scenario.pit = pit(planned, log);
    scenario.departures = departures(&scenario, log);
    scenario.lid_openings.clone_from(&log.lid);
    scenario.wraps = wraps(planned, log);
    if let Some(off) = log.off.or_else(|| log.found_tender()) {
        scenario.finish = Finish::AfterOn(off);
    }
    if let Some(off) = log.off {
        scenario.after = after(log, off);
    }
    scenario
}

/// Covers as logged; without any, as planned.
fn wraps(planned: &Scenario, log: &PieceLog) -> Vec<WrapChange> {
    if log.covers.is_empty() {
        if log.off.is_some() {
            return Vec::new();
        }
        let due = |wrap: &WrapChange| match wrap.when {
            When::AfterOn(span) => WrapChange {
                when: When::AfterOn(span.max(log.now)),
                ..*wrap
            },
            When::Probe(_) => *wrap,
        };
        return planned.wraps.iter().map(due).collect();
    }
    let put_on = |(after, cover): &(TimeSpan, Cover)| WrapChange {
        when: When::AfterOn(*after),
        cover: *cover,
    };
    log.covers.iter().map(put_on).collect()
}

/// What was set: as planned until something else was logged, and again from the next planned step by the clock on.
fn pit(planned: &Scenario, log: &PieceLog) -> Vec<PitChange> {
    if log.air.is_empty() {
        return planned.pit.clone();
    }
    let mut changes: Vec<PitChange> = Vec::new();
    let first_told = log.air[0].0;
    let mut back = planned.pit[0].set;
    for change in &planned.pit {
        match change.when {
            When::AfterOn(span) if span <= first_told => {
                back = change.set;
                changes.push(*change);
            }
            When::AfterOn(_) | When::Probe(_) => {}
        }
    }
    for (after, change) in &log.air {
        let set = match change {
            AirChange::Set(set) => {
                back = *set;
                *set
            }
            AirChange::Oven(air) => *air,
            AirChange::Back => back,
        };
        changes.push(PitChange {
            when: When::AfterOn(*after),
            set,
        });
    }
    let in_oven = matches!(log.air.last(), Some((_, AirChange::Oven(_))));
    let ahead = |change: &&PitChange| matches!(change.when, When::AfterOn(span) if span > log.now);
    if !in_oven {
        changes.extend(planned.pit.iter().filter(ahead));
    }
    changes
}

/// What the clock says is set at a time.
fn set_at(scenario: &Scenario, after: TimeSpan) -> Temperature {
    let by = |change: &&PitChange| matches!(change.when, When::AfterOn(span) if span <= after);
    let last = scenario.pit.iter().rev().find(by);
    last.map_or(scenario.pit[0].set, |change| change.set)
}

/// How far the air was off what was set: as read, with straight lines between, and towards what was usual after the last
/// reading; down towards the air outside where there was no heat.
fn departures(scenario: &Scenario, log: &PieceLog) -> Vec<PitDeparture> {
    let readings = used(log);
    let mut points: Vec<(f64, f64)> = Vec::new();
    let off: Vec<f64> = readings
        .iter()
        .map(|pit| (pit.reading - set_at(scenario, pit.after)).kelvin())
        .collect();
    let told = |n: usize| trusted(&readings, &off, n);
    for (n, pit) in readings.iter().enumerate() {
        let at = pit.after.seconds();
        if n == 0 && at > 0.0 {
            points.push(((at - SETTLES.seconds()).max(0.0), told(n)));
        }
        points.push((at, told(n)));
    }
    if let Some(last) = readings.last() {
        // Half a reading's worth of "as set" is mixed in: a few readings say little about what is usual.
        let usual = (0..off.len()).map(told).sum::<f64>() / (off.len() as f64 + 1.0);
        points.push((last.after.seconds() + SETTLES.seconds(), usual));
        points.push((KEPT_UP.seconds(), usual));
    }
    for unheated in &log.unheated {
        without_heat(&mut points, scenario, log, (unheated.from, unheated.to));
    }
    points.sort_by(|a, b| a.0.total_cmp(&b.0));
    points
        .into_iter()
        .map(|(seconds, kelvin)| PitDeparture {
            after: TimeSpan::from_seconds(seconds.min(KEPT_UP.seconds())),
            by: TemperatureDifference::from_kelvin(kelvin.clamp(-300.0, 300.0)),
        })
        .collect()
}

/// Readings of the air that count: those beside the meat where there are any.
fn used(log: &PieceLog) -> Vec<PitReading> {
    let at_meat = read_at_meat(log);
    let counts = |pit: &&PitReading| !at_meat || pit.gauge == Gauge::AtMeat;
    log.pit.iter().filter(counts).copied().collect()
}

/// A departure as far as its neighbours bear it out.
fn trusted(readings: &[PitReading], off: &[f64], n: usize) -> f64 {
    let near = |m: usize| {
        let apart = (readings[m].after - readings[n].after).seconds().abs();
        apart <= NEIGHBOUR.seconds()
    };
    let neighbours = [n.checked_sub(1), Some(n + 1)];
    let neighbours: Vec<f64> = neighbours
        .into_iter()
        .flatten()
        .filter(|m| *m < off.len() && near(*m))
        .map(|m| off[m])
        .collect();
    if neighbours
        .iter()
        .any(|other| (other - off[n]).abs() <= ALONE)
    {
        return off[n];
    }
    let around = neighbours.iter().sum::<f64>() / (neighbours.len().max(1) as f64);
    off[n].clamp(around - ALONE, around + ALONE)
}

/// Time in which the air of a cooker without heat falls by two thirds of its excess. Set by hand.
const fn cools_in(cooker: CookerClass) -> TimeSpan {
    TimeSpan::from_minutes(match cooker {
        CookerClass::Offset => 20.0,
        CookerClass::Kettle | CookerClass::Drum | CookerClass::Generic => 30.0,
        CookerClass::Cabinet | CookerClass::Electric => 60.0,
        CookerClass::Ceramic => 150.0,
        CookerClass::StillOven | CookerClass::FanOven => 40.0,
    })
}

/// Draws the fall and the return of the air, except where readings tell it.
fn without_heat(
    points: &mut Vec<(f64, f64)>,
    scenario: &Scenario,
    log: &PieceLog,
    (from, to): (TimeSpan, Option<TimeSpan>),
) {
    let to = to.unwrap_or(log.now).max(from);
    let told = |at: f64| {
        let near = |pit: &PitReading| (pit.after.seconds() - at).abs() < TELLS.seconds();
        log.pit.iter().any(near)
    };
    let before = departure_at(points, from.seconds());
    let excess = (set_at(scenario, from) - scenario.surroundings.outside).kelvin() + before;
    let fall = cools_in(scenario.cooker).seconds();
    let mut drawn = vec![(from.seconds(), before)];
    let long = (to - from).seconds();
    for share in [0.35, 0.8, 1.5, 3.0] {
        let at = share * fall;
        if at < long {
            drawn.push((
                from.seconds() + at,
                before - excess * (1.0 - libm::exp(-share)),
            ));
        }
    }
    let lowest = before - excess * (1.0 - libm::exp(-long / fall));
    drawn.push((to.seconds(), lowest));
    let back = to.seconds() + BACK.seconds();
    let after = departure_at(points, back);
    // What was drawn before over this stretch gives way; readings stay.
    points.retain(|(at, _)| *at <= from.seconds() || *at >= back || told(*at));
    points.extend(drawn.into_iter().filter(|(at, _)| !told(*at)));
    points.push((back, after));
    points.sort_by(|a, b| a.0.total_cmp(&b.0));
}

fn departure_at(points: &[(f64, f64)], at: f64) -> f64 {
    let next = points.partition_point(|(time, _)| *time <= at);
    let before = next.checked_sub(1).and_then(|before| points.get(before));
    match (before, points.get(next)) {
        (Some((from, a)), Some((to, b))) => a + (b - a) * (at - from) / (to - from),
        _ => 0.0,
    }
}

/// The stages after it came off as they were logged; it stays in the last.
fn after(log: &PieceLog, off: TimeSpan) -> Vec<RestStage> {
    let mut places = log.places.clone();
    if places.first().is_none_or(|(first, _)| *first > off) {
        places.insert(0, (off, Place::Counter));
    }
    let ends = places.iter().skip(1).map(|(at, _)| *at);
    let ends = ends.chain([log.now.max(off) + FOLLOWED]);
    let stages = places
        .iter()
        .zip(ends)
        .map(|((from, place), to)| RestStage {
            place: *place,
            cover: None,
            lasts: to - *from,
            until_core: None,
        });
    stages.collect()
}
