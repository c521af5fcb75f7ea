//! From what happened to a state.

use super::heating::{heating, on_heat};
use super::keeping::{keeping, on_the_table};
use super::{Happened, SafeState, Standing, Track, Waiting, chilling};
use crate::safety::cooling::{self, Body};
use crate::safety::{OutOfFridge, RuleId};
use crate::units::{Moment, Temperature, TimeSpan};

/// What is known up to a moment, in order.
pub(super) struct Known<'a> {
    pub(super) track: &'a Track,
    pub(super) now: Moment,
    /// What happened so far, oldest first; readings that no thermometer shows are left out.
    pub(super) past: Vec<super::Happening>,
    /// Whether the cooling model finds that the portions put away last cool in time. None: nothing was told of them.
    pub(super) cools_in_time: Option<bool>,
}

/// What core and pit readings can be.
const CREDIBLE: std::ops::RangeInclusive<f64> = -30.0..=400.0;

impl Known<'_> {
    /// Core readings at or after a moment, oldest first.
    pub(super) fn cores(
        &self,
        from: Moment,
    ) -> impl DoubleEndedIterator<Item = (Moment, Temperature)> {
        self.past
            .iter()
            .filter(move |one| one.at >= from)
            .filter_map(|one| match one.what {
                Happened::Core(reading) => Some((one.at, reading)),
                _ => None,
            })
    }

    /// Pit readings at or after a moment, oldest first.
    pub(super) fn pits(
        &self,
        from: Moment,
    ) -> impl DoubleEndedIterator<Item = (Moment, Temperature)> {
        self.past
            .iter()
            .filter(move |one| one.at >= from)
            .filter_map(|one| match one.what {
                Happened::Pit(reading) => Some((one.at, reading)),
                _ => None,
            })
    }

    /// First happening of a kind.
    pub(super) fn first(&self, is: impl Fn(&Happened) -> bool) -> Option<Moment> {
        self.past.iter().find(|one| is(&one.what)).map(|one| one.at)
    }

    /// What was done with it, one after the other, and since when.
    pub(super) fn stages(&self) -> Vec<(Moment, Stage)> {
        self.past
            .iter()
            .filter_map(|one| Some((one.at, stage(one.what)?)))
            .collect()
    }

    /// The same as it was known at an earlier moment.
    pub(super) fn as_of(&self, moment: Moment) -> Self {
        Self {
            track: self.track,
            now: moment,
            past: self
                .past
                .iter()
                .copied()
                .filter(|one| one.at <= moment)
                .collect(),
            cools_in_time: self.cools_in_time,
        }
    }
}

/// How a piece of food stands at a moment. What lies after the moment is not looked at. What once had to be thrown away
/// stays so, whatever was done with it later.
#[must_use]
pub fn judge(track: &Track, now: Moment) -> SafeState {
    let mut past: Vec<_> = track
        .happenings
        .iter()
        .copied()
        .filter(|one| one.at <= now)
        .filter(|one| match one.what {
            Happened::Core(reading) | Happened::Pit(reading) => {
                CREDIBLE.contains(&reading.celsius())
            }
            _ => true,
        })
        .collect();
    past.sort_by_key(|one| one.at);
    let cools_in_time = cools_in_time(&past);
    let known = |now: Moment, so_far: usize| Known {
        track,
        now,
        past: past[..so_far].to_vec(),
        cools_in_time,
    };
    // Each moment at which something happened, before and after it, and then now.
    let before = past
        .iter()
        .map(|one| (one.at, past.partition_point(|other| other.at < one.at)));
    let after = past
        .iter()
        .map(|one| (one.at, past.partition_point(|other| other.at <= one.at)));
    let mut moments: Vec<_> = before.chain(after).collect();
    moments.sort_unstable();
    moments.dedup();
    let thrown_away = moments
        .into_iter()
        .map(|(at, so_far)| stands(&known(at, so_far)))
        .find(|state| state.standing == Standing::Discard);
    thrown_away.unwrap_or_else(|| stands(&known(now, past.len())))
}

/// Whether the cooling model finds that the portions put away last cool in time. None: nothing was told of them.
fn cools_in_time(past: &[super::Happening]) -> Option<bool> {
    let portion = past.iter().rev().find_map(|one| match one.what {
        Happened::Chilled(portion) => Some(portion),
        _ => None,
    })??;
    let hot = Temperature::from_celsius(70.0);
    Some(cooling::cools_in_time(
        Body::layer(portion.depth),
        hot,
        portion.chilling,
    ))
}

fn stands(known: &Known) -> SafeState {
    let Some(on) = known.first(|what| matches!(what, Happened::On)) else {
        return raw(known);
    };
    let start = left_the_cold(known, on);
    if clock(known, on).over() {
        return SafeState::new(Standing::Discard, clock_rule(known.track), Some(start));
    }
    let heated = heating(known, start, on);
    let now = match known.stages().pop() {
        Some((at, Stage::Waits(waiting))) => keeping(known, &heated, at, waiting),
        Some((at, Stage::Table)) => on_the_table(known, &heated, at),
        Some((at, Stage::Chills)) => chilling::chilling(known, &heated, at),
        Some((at, Stage::Reheats)) => chilling::reheating(known, &heated, at),
        Some((at, Stage::Heats)) if at > on => chilling::back_on_heat(known, &heated, at),
        Some((_, Stage::Heats)) | None => return heated.state.worse(on_heat(known, &heated)),
    };
    now.worse(heated.state)
}

/// What is being done with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Stage {
    Heats,
    Waits(Option<Waiting>),
    Table,
    Chills,
    Reheats,
}

pub(super) const fn stage(what: Happened) -> Option<Stage> {
    match what {
        Happened::On => Some(Stage::Heats),
        Happened::HeatLost => Some(Stage::Waits(None)),
        Happened::Off(waiting) => Some(Stage::Waits(Some(waiting))),
        Happened::Served => Some(Stage::Table),
        Happened::Chilled(_) => Some(Stage::Chills),
        Happened::Reheating => Some(Stage::Reheats),
        Happened::TakenOut | Happened::PutBack | Happened::Pit(_) | Happened::Core(_) => None,
    }
}

/// Time raw out of the fridge up to a moment.
fn clock(known: &Known, until: Moment) -> OutOfFridge {
    let mut clock = OutOfFridge::default();
    let mut out = None;
    for one in known.past.iter().filter(|one| one.at <= until) {
        match one.what {
            Happened::TakenOut => out = out.or(Some(one.at)),
            Happened::PutBack => {
                if let Some(since) = out.take() {
                    clock.add(one.at - since, known.track.air);
                }
            }
            _ => {}
        }
    }
    if let Some(since) = out {
        clock.add(until - since, known.track.air);
    }
    clock
}

/// When it left the cold for good before it went on: the last time it was taken out and not put back; where that was not
/// told, as long before it went on as the plan has hands on it.
fn left_the_cold(known: &Known, on: Moment) -> Moment {
    let mut out = None;
    for one in known.past.iter().filter(|one| one.at <= on) {
        match one.what {
            Happened::TakenOut => out = out.or(Some(one.at)),
            Happened::PutBack => out = None,
            _ => {}
        }
    }
    out.unwrap_or(on - known.track.out_before_on)
}

fn clock_rule(track: &Track) -> RuleId {
    let mild = crate::safety::out_of_fridge_limit(track.air) > TimeSpan::from_hours(1.0);
    if mild {
        RuleId::TwoHours
    } else {
        RuleId::OneHourInHeat
    }
}

/// Raw, not on the heat yet.
fn raw(known: &Known) -> SafeState {
    let rule = clock_rule(known.track);
    let last = known
        .past
        .iter()
        .rev()
        .find(|one| matches!(one.what, Happened::TakenOut | Happened::PutBack));
    let clock = clock(known, known.now);
    let Some(last) = last else {
        return SafeState::new(Standing::Unknown, RuleId::KeepCold, None);
    };
    if clock.over() {
        return SafeState::new(Standing::Discard, rule, Some(last.at));
    }
    if last.what == Happened::PutBack {
        return SafeState::new(Standing::LooksSafe, RuleId::KeepCold, Some(last.at));
    }
    let left = clock.left(known.track.air);
    let near = left < TimeSpan::from_minutes(30.0);
    let standing = if near {
        Standing::Heed
    } else {
        Standing::LooksSafe
    };
    SafeState::new(standing, rule, Some(last.at)).until(known.now + left, rule)
}
