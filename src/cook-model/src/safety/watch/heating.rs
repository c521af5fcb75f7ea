//! While it heats up: the surface or the core, and whether it is done.

use super::judge::Known;
use super::keeping::keeping;
use super::{Happened, SafeState, Standing};
use crate::safety::{
    CORE_LIMIT, Dwell, Governs, RuleId, SURFACE_HOT, SURFACE_LIMIT, governing, minimum,
    out_of_fridge_limit,
};
use crate::units::{Moment, Temperature, TimeSpan};

/// Air at the meat that counts as heat: 93 °C (just under 200 °F). Set by hand below the 107 °C of the official sheets, so that a
/// cool pit is a caution and not taken for no fire at all.
const PIT_HOT: Temperature = Temperature::from_celsius(93.0);

/// The official sheets' least air, 107 °C (225 °F; USDA FSIS release of 2012, read at aces.edu).
const PIT_OFFICIAL: Temperature = Temperature::from_celsius(107.0);

/// Past this the core is out of the danger range.
pub(super) const CORE_HOT: Temperature = Temperature::from_fahrenheit(140.0);

/// A cook without any reading for longer than this cannot be vouched for. Set by hand.
const READ_EVERY: TimeSpan = TimeSpan::from_hours(4.0);

/// What came of the heating.
#[derive(Clone, Copy)]
pub(super) struct Heated {
    /// As it stands, were it still on the heat.
    pub(super) state: SafeState,
    /// First reading that shows it cooked by its standard.
    pub(super) cooked: Option<Moment>,
}

/// How the heating went, by the surface or by the core.
pub(super) fn heating(known: &Known, start: Moment, on: Moment) -> Heated {
    let state = match governing(known.track.sort) {
        Governs::Surface => surface(known, start, on),
        Governs::Core => core(known, start, on),
    };
    Heated {
        state,
        cooked: cooked(known, on),
    }
}

/// Still on the heat for the first time: the pit of late.
pub(super) fn on_heat(known: &Known, heated: &Heated) -> SafeState {
    let on = known
        .first(|what| matches!(what, Happened::On))
        .unwrap_or(known.now);
    let pit = known.pits(on).next_back();
    let last_sign = [pit, known.cores(on).next_back()]
        .into_iter()
        .flatten()
        .map(|(at, _)| at)
        .max();
    let silent_since = last_sign.unwrap_or(on);
    let rule = RuleId::SmokerAir;
    let by_pit = match pit {
        Some((at, air)) if air < PIT_HOT && heated.cooked.is_some() => {
            let cooled = keeping(known, heated, at, None);
            cooled.worse(SafeState::new(Standing::Heed, rule, Some(at)))
        }
        Some((at, air)) if air < PIT_HOT => SafeState::new(Standing::ActNow, rule, Some(at)),
        Some((at, air)) if air < PIT_OFFICIAL => SafeState::new(Standing::Heed, rule, Some(at)),
        _ => SafeState::new(Standing::LooksSafe, rule, Some(on)),
    };
    let silent = known.now - silent_since > READ_EVERY;
    let standing = if silent {
        Standing::Unknown
    } else {
        Standing::LooksSafe
    };
    by_pit.worse(SafeState::new(
        standing,
        RuleId::UnknownIsTooLong,
        Some(silent_since),
    ))
}

/// Intact muscle: its surface.
fn surface(known: &Known, start: Moment, on: Moment) -> SafeState {
    let limit = start + SURFACE_LIMIT;
    let by_core = known
        .cores(on)
        .find(|(_, core)| *core >= SURFACE_HOT)
        .map(|(at, _)| at);
    let by_pit = known
        .pits(on)
        .find(|(_, pit)| *pit >= PIT_HOT)
        .map(|(at, _)| later(at, on + known.track.surface_takes));
    let by_pit = by_pit.filter(|at| *at <= known.now);
    let hot = [by_core, by_pit].into_iter().flatten().min();
    if let Some(at) = hot.filter(|at| *at <= limit) {
        return slow_core(known, start, on, at);
    }
    let rule = RuleId::SurfaceHotInTime;
    if known.now <= limit {
        return not_yet(known, start, on, rule).until(limit, rule);
    }
    let pits_low = known.pits(on).any(|(at, _)| at <= limit)
        && known
            .pits(on)
            .filter(|(at, _)| *at <= limit)
            .all(|(_, pit)| pit < PIT_HOT);
    if pits_low {
        SafeState::new(Standing::Discard, rule, Some(limit))
    } else {
        SafeState::new(Standing::Unknown, RuleId::UnknownIsTooLong, Some(limit))
    }
}

/// The surface was hot in time; the core may be slow, which is a caution.
fn slow_core(known: &Known, start: Moment, on: Moment, hot: Moment) -> SafeState {
    let limit = start + CORE_LIMIT;
    let core_hot = known
        .cores(on)
        .find(|(_, core)| *core >= CORE_HOT)
        .map(|(at, _)| at);
    match core_hot {
        Some(at) if at > limit => {
            SafeState::new(Standing::LooksSafe, RuleId::SlowCoreIntact, Some(at))
        }
        Some(at) => SafeState::new(Standing::LooksSafe, RuleId::SurfaceHotInTime, Some(at)),
        None if known.now > limit => {
            SafeState::new(Standing::Heed, RuleId::SlowCoreIntact, Some(limit))
        }
        None => SafeState::new(Standing::LooksSafe, RuleId::SurfaceHotInTime, Some(hot))
            .until(limit, RuleId::SlowCoreIntact),
    }
}

/// Everything else: its core.
fn core(known: &Known, start: Moment, on: Moment) -> SafeState {
    let rule = RuleId::CoreHotInTime;
    let limit = start + CORE_LIMIT;
    if let Some((at, _)) = known.cores(on).find(|(_, core)| *core >= CORE_HOT) {
        if at <= limit {
            return SafeState::new(Standing::LooksSafe, rule, Some(at));
        }
        // It was past the range at that reading; whether in time, only a reading before can tell.
        let still_low = known
            .cores(on)
            .any(|(before, _)| before >= limit && before < at);
        return if still_low {
            SafeState::new(Standing::Discard, rule, Some(limit))
        } else {
            SafeState::new(Standing::Unknown, RuleId::UnknownIsTooLong, Some(limit))
        };
    }
    if known.now <= limit {
        let state = not_yet(known, start, on, rule).until(limit, rule);
        let near = limit - known.now < TimeSpan::from_hours(1.0);
        return if near {
            state.worse(SafeState {
                standing: Standing::Heed,
                ..state
            })
        } else {
            state
        };
    }
    if known.cores(limit).next().is_some() {
        SafeState::new(Standing::Discard, rule, Some(limit))
    } else {
        SafeState::new(Standing::Unknown, RuleId::UnknownIsTooLong, Some(limit))
    }
}

/// The limit is not reached. Without a sign of heat the two-hour clock is all there is.
fn not_yet(known: &Known, start: Moment, on: Moment, rule: RuleId) -> SafeState {
    let pit_hot = known
        .pits(on)
        .next_back()
        .is_some_and(|(_, pit)| pit >= PIT_HOT);
    let sign = pit_hot || known.cores(on).any(|(_, core)| core >= SURFACE_HOT);
    let clock = start + out_of_fridge_limit(known.track.air);
    let standing = if sign || known.now <= clock {
        Standing::LooksSafe
    } else {
        Standing::Unknown
    };
    SafeState::new(standing, rule, Some(start))
}

/// The first reading that shows it cooked by its standard.
fn cooked(known: &Known, on: Moment) -> Option<Moment> {
    let least = minimum(known.track.sort).temperature;
    let by_minimum = known
        .cores(on)
        .find(|(_, core)| *core >= least)
        .map(|(at, _)| at);
    let Some(table) = known.track.standard.table(known.track.sort) else {
        return by_minimum;
    };
    let mut dwell = Dwell::new(table);
    let readings: Vec<_> = known.cores(on).collect();
    let by_table = readings.windows(2).find_map(|pair| {
        let [(from, first), (to, second)] = [pair[0], pair[1]];
        dwell.add(to - from, first, second);
        dwell.met().then_some(to)
    });
    [by_minimum, by_table].into_iter().flatten().min()
}

fn later(a: Moment, b: Moment) -> Moment {
    if a > b { a } else { b }
}
