//! Put away, kept cold, heated up again.

use super::heating::Heated;
use super::judge::{Known, Stage};
use super::keeping::{before, keeping};
use super::{Happened, SafeState, Standing};
use crate::safety::cooling::TwoStages;
use crate::safety::{RuleId, Sort, minimum, out_of_fridge_limit};
use crate::units::{Moment, Temperature, TimeSpan};

const DAY: TimeSpan = TimeSpan::from_hours(24.0);

/// Put away to get cold, and kept.
pub(super) fn chilling(known: &Known, heated: &Heated, at: Moment) -> SafeState {
    if heated.cooked.is_none_or(|cooked| cooked > at) {
        let read = known
            .past
            .iter()
            .any(|one| matches!(one.what, Happened::Core(_)));
        let standing = if read {
            Standing::Discard
        } else {
            Standing::Unknown
        };
        return SafeState::new(standing, RuleId::NeverPartCook, Some(at));
    }
    let waited = before(known, heated, at);
    let out = out_since(known, &waited, at);
    if at - out > out_of_fridge_limit(known.track.air) {
        return SafeState::new(Standing::Discard, RuleId::ChillLeftovers, Some(out));
    }
    let cold = cooling(known, at).worse(kept(known, at));
    // Chilling is one of the ways out of having fallen below the floor; not of not having been read.
    if waited.standing == Standing::Unknown {
        waited.worse(cold)
    } else {
        cold
    }
}

/// Since when it was out: on the table, or below the floor where it waited.
fn out_since(known: &Known, waited: &SafeState, at: Moment) -> Moment {
    let mut stages = known.as_of(at).stages();
    stages.pop();
    let from_table = matches!(stages.pop(), Some((_, Stage::Table)));
    let counts = from_table || waited.standing == Standing::ActNow;
    waited.since.filter(|_| counts).unwrap_or(at)
}

/// The two stages, by readings where there are any, else by the cooling model for the depth that was told.
fn cooling(known: &Known, at: Moment) -> SafeState {
    let rule = RuleId::CoolInTwoStages;
    for (fahrenheit, span) in [(70.0, TwoStages::TO_21), (41.0, TwoStages::TO_5)] {
        let goal = Temperature::from_fahrenheit(fahrenheit);
        let limit = at + span;
        let cold = known
            .cores(at)
            .find(|(_, core)| *core <= goal)
            .map(|(read, _)| read);
        if cold.is_some_and(|read| read <= limit) {
            continue;
        }
        if known.cores(limit).any(|(_, core)| core > goal) {
            return SafeState::new(Standing::Discard, rule, Some(limit));
        }
        let told_in_time = known.cools_in_time == Some(true);
        if known.now <= limit {
            let standing = if told_in_time {
                Standing::LooksSafe
            } else {
                Standing::Heed
            };
            return SafeState::new(standing, RuleId::ShallowPortions, Some(at)).until(limit, rule);
        }
        if !told_in_time {
            return SafeState::new(Standing::Unknown, rule, Some(limit));
        }
    }
    SafeState::new(Standing::LooksSafe, rule, Some(at))
}

/// Days in the fridge.
fn kept(known: &Known, at: Moment) -> SafeState {
    let rule = RuleId::KeepsCooked;
    let days = (known.now - at) / DAY;
    let standing = if days > 4.0 {
        Standing::Discard
    } else if days > 3.0 {
        Standing::Heed
    } else {
        Standing::LooksSafe
    };
    SafeState::new(standing, rule, Some(at)).until(at + DAY * 4.0, rule)
}

/// Cold, and on heat to be eaten hot.
pub(super) fn reheating(known: &Known, heated: &Heated, at: Moment) -> SafeState {
    let chilled = known
        .past
        .iter()
        .rev()
        .find(|one| one.at <= at && matches!(one.what, Happened::Chilled(_)));
    let cold = match chilled {
        Some(one) => chilling(&known.as_of(at), heated, one.at),
        // Nothing was told of how it got cold.
        None => SafeState::new(Standing::Unknown, RuleId::CoolInTwoStages, Some(at)),
    };
    let state = heated_through(known, heated, at);
    // What is missing about the cold is not mended by heat; a caution about it is over.
    if cold.standing >= Standing::Unknown {
        cold.worse(state)
    } else {
        state
    }
}

/// On heat again after it had come off, or after the fire had gone out.
pub(super) fn back_on_heat(known: &Known, heated: &Heated, at: Moment) -> SafeState {
    if heated.cooked.is_none_or(|cooked| cooked >= at) {
        return super::heating::on_heat(known, heated);
    }
    let waited = before(known, heated, at);
    match waited.standing {
        Standing::LooksSafe | Standing::Heed => super::heating::on_heat(known, heated),
        Standing::Unknown => waited,
        Standing::ActNow | Standing::Discard => heated_through(known, heated, at),
    }
}

/// From the moment that it is on heat again: 74 °C all through within two hours.
fn heated_through(known: &Known, heated: &Heated, at: Moment) -> SafeState {
    let goal = minimum(Sort::Leftovers).temperature;
    let limit = at + TimeSpan::from_hours(2.0);
    let hot = known
        .cores(at)
        .find(|(_, core)| *core >= goal)
        .map(|(read, _)| read);
    let too_cool_after = known
        .cores(limit)
        .any(|(read, core)| core < goal && hot.is_none_or(|hot| read < hot));
    match hot {
        Some(read) if read <= limit => {
            let through = Heated {
                cooked: Some(read),
                ..*heated
            };
            keeping(known, &through, read, None)
        }
        _ if too_cool_after => {
            SafeState::new(Standing::Discard, RuleId::ReheatQuickly, Some(limit))
        }
        None if known.now <= limit => {
            SafeState::new(Standing::Heed, RuleId::ReheatThrough, Some(at))
                .until(limit, RuleId::ReheatQuickly)
        }
        _ => SafeState::new(Standing::Unknown, RuleId::ReheatQuickly, Some(limit)),
    }
}
