//! Bad input about the dishes and their pieces.

use super::{Found, Trouble, count};
use crate::meat::{Bone, CutId};
use crate::physics::reachable_target;
use crate::plan::range;
use crate::plan::{Dish, Food, HoldPlace, Piece, Plan, Wrap, WrapWhen};
use crate::provisions::{Size, Weights};
use crate::units::{Length, Temperature};

/// A lump is not thicker than the cube that encloses it. Meat is at least as heavy as water, kg/m³.
const LIGHTEST_MEAT: f64 = 1000.0;

/// Thinner than this share of the usual thickness for the weight, it is not that cut any more. Set by hand.
const THINNEST_SHARE: f64 = 0.3;

pub(super) fn check(plan: &Plan, found: &mut Found) {
    for (id, dish) in &plan.dishes {
        let at = format!("dishes/{id}");
        found.name(format!("{at}/name"), &dish.name);
        check_method(dish, &at, found);
        if let Some(cooker) = dish.cooker
            && !plan.cookers.contains_key(&cooker)
        {
            found.say(format!("{at}/cooker"), Trouble::Missing { thing: "cooker" });
        }
        match &dish.food {
            Food::Cut { cut } => match cut.parse() {
                Ok(cut) => check_cut(plan, dish, cut, &at, found),
                Err(_) => {
                    let cut = cut.clone();
                    found.say(format!("{at}/food"), Trouble::UnknownCut { cut });
                }
            },
            Food::Own {
                least,
                likely,
                most,
                ..
            } => {
                let at = format!("{at}/food");
                let all = [least, likely, most];
                let within = all
                    .iter()
                    .all(|time| found.hold(&at, range::OWN_TIME, time.seconds()));
                if within && !(least <= likely && likely <= most) {
                    found.say(at, Trouble::TimesOutOfOrder);
                }
            }
        }
    }
}

fn check_method(dish: &Dish, at: &str, found: &mut Found) {
    let mut hold = |field: &str, range, value: Option<f64>| {
        if let Some(value) = value {
            found.hold(format!("{at}/{field}"), range, value);
        }
    };
    hold("pit", range::PIT, dish.pit.map(|pit| pit.celsius()));
    hold(
        "target",
        range::TARGET,
        dish.target.map(|core| core.celsius()),
    );
    let salt = dish.salt.filter(|salt| !salt.solution_added);
    hold("salt", range::SALT_RATE, salt.map(|salt| salt.rate));
    hold(
        "salt",
        range::SALT_AHEAD,
        salt.map(|salt| salt.ahead.seconds()),
    );
    match dish.wrap {
        Some(Wrap::Paper { when } | Wrap::Foil { when }) => match when {
            WrapWhen::Core { core } => hold("wrap", range::TURNING_POINT, Some(core.celsius())),
            WrapWhen::AfterOn { span } => hold("wrap", range::AFTER_ON, Some(span.seconds())),
        },
        Some(Wrap::Bare) | None => {}
    }
    let spray = dish.spray;
    hold(
        "spray",
        range::AFTER_ON,
        spray.map(|spray| spray.first.seconds()),
    );
    hold(
        "spray",
        range::SPRAY_EVERY,
        spray.map(|spray| spray.every.seconds()),
    );
    hold("rest", range::REST, dish.rest.map(|span| span.seconds()));
    hold(
        "slicing",
        range::SLICING,
        dish.slicing.map(|span| span.seconds()),
    );
    if let Some(HoldPlace::WarmOven { air }) = dish.hold {
        hold("hold", range::WARM_OVEN, Some(air.celsius()));
    }
}

fn check_cut(plan: &Plan, dish: &Dish, cut: CutId, at: &str, found: &mut Found) {
    found.hold(
        format!("{at}/pieces"),
        range::PIECES,
        count(dish.pieces.len()),
    );
    for (id, piece) in &dish.pieces {
        check_piece(cut, piece, &format!("{at}/pieces/{id}"), found);
    }
    let wanted = dish.target.unwrap_or(cut.cut().default_target());
    let altitude = plan.place.altitude;
    let target = if range::ALTITUDE.holds(altitude.metres()) {
        reachable_target(wanted, altitude)
    } else {
        wanted
    };
    if let Some(pit) = hottest_air(plan, dish)
        && range::PIT.holds(pit.celsius())
        && range::TARGET.holds(wanted.celsius())
        && pit <= target
    {
        let what = Trouble::PitBelowTarget { pit, target };
        found.say(format!("{at}/target"), what);
    }
}

/// The hottest air that a dish sees.
fn hottest_air(plan: &Plan, dish: &Dish) -> Option<Temperature> {
    let programme = || {
        let cooker = plan.cookers.get(&dish.cooker?)?;
        let sets = cooker.programme.iter().map(|step| step.set);
        sets.max_by(|a, b| a.celsius().total_cmp(&b.celsius()))
    };
    dish.pit.or_else(programme)
}

fn check_piece(cut: CutId, piece: &Piece, at: &str, found: &mut Found) {
    let counted = f64::from(piece.count);
    found.hold(format!("{at}/count"), range::PIECE_COUNT, counted);
    let mass = piece.mass;
    let weighs = found.hold(format!("{at}/mass"), range::PIECE_MASS, mass.kilograms());
    let Some(thickness) = piece.thickness else {
        return;
    };
    let at = format!("{at}/thickness");
    if !found.hold(&at, range::THICKNESS, thickness.metres()) || !weighs {
        return;
    }
    let (least, most) = thickness_bounds(cut, piece);
    if thickness > most {
        found.say(
            at,
            Trouble::TooThick {
                thickness,
                most,
                mass,
            },
        );
    } else if thickness < least {
        found.say(
            at,
            Trouble::TooThin {
                thickness,
                least,
                mass,
            },
        );
    }
}

/// The thinnest and the thickest that a piece of this weight can be by the ruler, bones under it included. The thickest
/// is the edge of the cube that encloses it: thickness is the smallest of its three dimensions.
fn thickness_bounds(cut: CutId, piece: &Piece) -> (Length, Length) {
    let Weights { trimmed, .. } = Weights::of_one(cut, piece);
    let usual = Size::of(cut, trimmed, None);
    let meat = match cut.cut().bone {
        Bone::Under { share, .. } => trimmed * (1.0 - share),
        Bone::None | Bone::Within { .. } => trimmed,
    };
    let enclosing = meat.kilograms() / LIGHTEST_MEAT / usual.fill;
    let edge = Length::from_metres(libm::cbrt(enclosing));
    (
        usual.thickness * THINNEST_SHARE + usual.bone,
        edge.max(usual.thickness) + usual.bone,
    )
}
