//! What is done in a step, at several lengths.

use cook_model::plan::outlook::StepKind;
use cook_model::plan::{Dish, HoldPlace, Plan, StepKey, StepOf};

/// In a sentence: a few words at most.
#[must_use]
pub const fn verb(kind: StepKind) -> &'static str {
    match kind {
        StepKind::Buy => "Buy",
        StepKind::Thaw => "Thaw",
        StepKind::Trim => "Trim",
        StepKind::Salt => "Salt",
        StepKind::Rub => "Rub",
        StepKind::Light => "Light the fire",
        StepKind::SteadyFire => "Fire steady",
        StepKind::Feed => "Feed the fire",
        StepKind::PitChange => "Change the pit",
        StepKind::On => "On",
        StepKind::ProbeIn => "Probe in",
        StepKind::Turn => "Turn",
        StepKind::Spray => "Spray",
        StepKind::Wrap => "Wrap",
        StepKind::Probe => "Feel with the probe",
        StepKind::Off => "Off",
        StepKind::Hold => "Into the box",
        StepKind::Slice => "Slice",
        StepKind::Serve => "Serve",
        StepKind::Chill => "Chill what is left",
        StepKind::Make => "Make",
        StepKind::Own => "Do",
    }
}

/// On a ticket: ten letters at most.
#[must_use]
pub const fn on_ticket(kind: StepKind) -> &'static str {
    match kind {
        StepKind::Buy => "Buy",
        StepKind::Thaw => "Thaw",
        StepKind::Trim => "Trim",
        StepKind::Salt => "Salt",
        StepKind::Rub => "Rub",
        StepKind::Light => "Light fire",
        StepKind::SteadyFire => "Fire ready",
        StepKind::Feed => "Feed fire",
        StepKind::PitChange => "Set pit",
        StepKind::On => "Put on",
        StepKind::ProbeIn => "Probe in",
        StepKind::Turn => "Turn",
        StepKind::Spray => "Spray",
        StepKind::Wrap => "Wrap",
        StepKind::Probe => "Probe",
        StepKind::Off => "Off",
        StepKind::Hold => "Hold hot",
        StepKind::Slice => "Slice",
        StepKind::Serve => "Serve",
        StepKind::Chill => "Chill",
        StepKind::Make => "Make",
        StepKind::Own => "Do",
    }
}

/// In a shut lane: six letters at most.
#[must_use]
pub const fn on_stub(kind: StepKind) -> &'static str {
    match kind {
        StepKind::Buy => "buy",
        StepKind::Thaw => "thaw",
        StepKind::Trim => "trim",
        StepKind::Salt => "salt",
        StepKind::Rub => "rub",
        StepKind::Light => "light",
        StepKind::SteadyFire => "fire",
        StepKind::Feed => "feed",
        StepKind::PitChange => "pit",
        StepKind::On => "on",
        StepKind::ProbeIn | StepKind::Probe => "probe",
        StepKind::Turn => "turn",
        StepKind::Spray => "spray",
        StepKind::Wrap => "wrap",
        StepKind::Off => "off",
        StepKind::Hold => "hold",
        StepKind::Slice => "slice",
        StepKind::Serve => "serve",
        StepKind::Chill => "chill",
        StepKind::Make => "make",
        StepKind::Own => "do",
    }
}

/// In full, for reading; the dish is named beside it.
#[must_use]
pub fn in_full(kind: StepKind, dish: Option<&Dish>) -> &'static str {
    let oven = dish.is_some_and(|dish| matches!(dish.hold, Some(HoldPlace::WarmOven { .. })));
    match kind {
        StepKind::Buy => "Buy",
        StepKind::Thaw => "Into the fridge to thaw",
        StepKind::Trim => "Trim",
        StepKind::Salt => "Salt",
        StepKind::Rub => "Rub",
        StepKind::Light => "Light the fire",
        StepKind::SteadyFire => "Fire steady and clean",
        StepKind::Feed => "Feed the fire",
        StepKind::PitChange => "Change the pit temperature",
        StepKind::On => "Put on",
        StepKind::ProbeIn => "Put the probe in",
        StepKind::Turn => "Turn",
        StepKind::Spray => "Spray",
        StepKind::Wrap => "Wrap",
        StepKind::Probe => "Probe for tenderness",
        StepKind::Off => "Take off",
        StepKind::Hold if oven => "Into the warm oven",
        StepKind::Hold => "Into the hold",
        StepKind::Slice => "Slice or pull",
        StepKind::Serve => "Serve",
        StepKind::Chill => "Chill what is left",
        StepKind::Make => "Make",
        StepKind::Own => "Do",
    }
}

/// As a thing, within a sentence: `wrapping`, `a steady fire`.
#[must_use]
pub const fn as_thing(kind: StepKind) -> &'static str {
    match kind {
        StepKind::Buy => "buying",
        StepKind::Thaw => "thawing",
        StepKind::Trim => "trimming",
        StepKind::Salt => "salting",
        StepKind::Rub => "rubbing",
        StepKind::Light => "lighting",
        StepKind::SteadyFire => "a steady fire",
        StepKind::Feed => "feeding",
        StepKind::PitChange => "the change of the pit",
        StepKind::On => "putting on",
        StepKind::ProbeIn => "the probe going in",
        StepKind::Turn => "turning",
        StepKind::Spray => "spraying",
        StepKind::Wrap => "wrapping",
        StepKind::Probe => "probing",
        StepKind::Off => "taking off",
        StepKind::Hold => "the hold",
        StepKind::Slice => "slicing",
        StepKind::Serve => "serving",
        StepKind::Chill => "chilling what is left",
        StepKind::Make => "making",
        StepKind::Own => "a step of your own",
    }
}

/// What a step is called within a sentence, with its dish or cooker and its round: `wrapping Pork butts`, `feeding Offset,
/// round 3`. A step of one's own has the name that it was given.
#[must_use]
pub fn named(key: StepKey, plan: &Plan) -> String {
    let what = as_thing(key.kind);
    let of = match key.of {
        StepOf::Table => None,
        StepOf::Dish(id) => plan.dishes.get(&id).map(|dish| dish.name.as_str()),
        StepOf::Cooker(id) => plan.cookers.get(&id).map(|cooker| cooker.name.as_str()),
        StepOf::Own(id) => {
            let own = plan.own_steps.get(&id).map(|own| own.name.trim());
            return own
                .filter(|name| !name.is_empty())
                .unwrap_or(what)
                .to_owned();
        }
    };
    let whole = match of.filter(|name| !name.is_empty()) {
        Some(name) => format!("{what} {name}"),
        None => what.to_owned(),
    };
    super::run_sheet::with_round(&whole, key.round)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_fit_their_places() {
        for kind in StepKind::ALL {
            assert!(on_ticket(kind).len() <= 10, "{kind:?}");
            assert!(on_stub(kind).len() <= 6, "{kind:?}");
            assert!(in_full(kind, None).len() <= 28, "{kind:?}");
        }
    }
}
