//! Parts of a method taken apart for the form, and put together again.

use crate::words::dish_form::{HoldKind, SaltKind, WrapKind};
use cook_model::meat::CutId;
use cook_model::plan::{Dish, Food, HoldPlace, SaltAhead, Spray, Wrap, WrapWhen};
use cook_model::units::{Temperature, TimeSpan};

/// What a wrap of one's own starts from: where the bark is usually set (common practice).
const USUAL_WRAP: WrapWhen = WrapWhen::Core {
    core: Temperature::from_fahrenheit(165.0),
};
/// A warm oven of one's own: well above the 60 °C below which food is not held hot.
const USUAL_OVEN: Temperature = Temperature::from_celsius(65.0);
/// Spraying of one's own (common practice).
const USUAL_SPRAY: Spray = Spray {
    first: TimeSpan::from_hours(2.0),
    every: TimeSpan::from_minutes(45.0),
};
/// Salting of one's own: overnight, 1.2 % (common practice).
const USUAL_SALT: SaltAhead = SaltAhead {
    ahead: TimeSpan::from_hours(12.0),
    rate: 0.012,
    solution_added: false,
};

pub(super) fn cut_of(dish: &Dish) -> Option<CutId> {
    match &dish.food {
        Food::Cut { cut } => cut.parse().ok(),
        Food::Own { .. } => None,
    }
}

pub(super) const fn wrap_kind(wrap: Option<Wrap>) -> WrapKind {
    match wrap {
        None => WrapKind::Usual,
        Some(Wrap::Bare) => WrapKind::Bare,
        Some(Wrap::Paper { .. }) => WrapKind::Paper,
        Some(Wrap::Foil { .. }) => WrapKind::Foil,
    }
}

pub(super) const fn wrap_when(wrap: Option<Wrap>) -> Option<WrapWhen> {
    match wrap {
        Some(Wrap::Paper { when } | Wrap::Foil { when }) => Some(when),
        Some(Wrap::Bare) | None => None,
    }
}

/// Another kind of wrap, at the time that was told before.
pub(super) fn with_kind(wrap: Option<Wrap>, kind: WrapKind) -> Option<Wrap> {
    let when = wrap_when(wrap).unwrap_or(USUAL_WRAP);
    match kind {
        WrapKind::Usual => None,
        WrapKind::Bare => Some(Wrap::Bare),
        WrapKind::Paper => Some(Wrap::Paper { when }),
        WrapKind::Foil => Some(Wrap::Foil { when }),
    }
}

/// The same wrap at another time.
pub(super) const fn with_when(wrap: Option<Wrap>, when: WrapWhen) -> Option<Wrap> {
    match wrap {
        Some(Wrap::Paper { .. }) => Some(Wrap::Paper { when }),
        Some(Wrap::Foil { .. }) => Some(Wrap::Foil { when }),
        other => other,
    }
}

/// By the core, at the usual core, or by the clock, after four hours.
pub(super) const fn when_by(core: bool) -> WrapWhen {
    if core {
        USUAL_WRAP
    } else {
        WrapWhen::AfterOn {
            span: TimeSpan::from_hours(4.0),
        }
    }
}

pub(super) const fn salt_kind(salt: Option<SaltAhead>) -> SaltKind {
    match salt {
        None => SaltKind::Usual,
        Some(SaltAhead {
            solution_added: true,
            ..
        }) => SaltKind::SolutionAdded,
        Some(_) => SaltKind::Ahead,
    }
}

pub(super) fn with_salt(salt: Option<SaltAhead>, kind: SaltKind) -> Option<SaltAhead> {
    let told = salt.unwrap_or(USUAL_SALT);
    match kind {
        SaltKind::Usual => None,
        SaltKind::Ahead => Some(SaltAhead {
            solution_added: false,
            ..told
        }),
        SaltKind::SolutionAdded => Some(SaltAhead {
            solution_added: true,
            ..told
        }),
    }
}

pub(super) fn with_spray(spray: Option<Spray>, wanted: bool) -> Option<Spray> {
    wanted.then(|| spray.unwrap_or(USUAL_SPRAY))
}

pub(super) const fn hold_kind(hold: Option<HoldPlace>) -> HoldKind {
    match hold {
        None => HoldKind::Usual,
        Some(HoldPlace::RestBox) => HoldKind::Box,
        Some(HoldPlace::WarmOven { .. }) => HoldKind::Oven,
        Some(HoldPlace::Counter) => HoldKind::Counter,
    }
}

pub(super) fn with_hold(hold: Option<HoldPlace>, kind: HoldKind) -> Option<HoldPlace> {
    match kind {
        HoldKind::Usual => None,
        HoldKind::Box => Some(HoldPlace::RestBox),
        HoldKind::Counter => Some(HoldPlace::Counter),
        HoldKind::Oven => match hold {
            Some(oven @ HoldPlace::WarmOven { .. }) => Some(oven),
            _ => Some(HoldPlace::WarmOven { air: USUAL_OVEN }),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn changing_the_paper_keeps_the_core() {
        let when = WrapWhen::Core {
            core: Temperature::from_celsius(88.0),
        };
        let foil = with_kind(Some(Wrap::Paper { when }), WrapKind::Foil);
        assert_eq!(foil, Some(Wrap::Foil { when }));
        assert_eq!(with_when(Some(Wrap::Bare), when), Some(Wrap::Bare));
        for kind in [
            WrapKind::Usual,
            WrapKind::Bare,
            WrapKind::Paper,
            WrapKind::Foil,
        ] {
            assert_eq!(wrap_kind(with_kind(None, kind)), kind);
        }
    }

    #[test]
    fn what_is_chosen_is_what_is_shown() {
        for kind in [SaltKind::Usual, SaltKind::Ahead, SaltKind::SolutionAdded] {
            assert_eq!(salt_kind(with_salt(None, kind)), kind);
        }
        for kind in [
            HoldKind::Usual,
            HoldKind::Box,
            HoldKind::Oven,
            HoldKind::Counter,
        ] {
            assert_eq!(hold_kind(with_hold(None, kind)), kind);
        }
        assert_eq!(with_spray(Some(USUAL_SPRAY), false), None);
    }

    #[test]
    fn a_warm_oven_starts_hot_enough() {
        let Some(HoldPlace::WarmOven { air }) = with_hold(None, HoldKind::Oven) else {
            panic!("a warm oven");
        };
        assert!(air >= Temperature::from_celsius(60.0));
    }
}
