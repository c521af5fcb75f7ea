//! What a plan leaves open, settled: for each dish its method with the cut's usual values, and what was assumed.

use super::hands;
use super::member::After;
use super::outlook::{Assumption, FindingKind};
use super::{
    BasisOfWeight, Cover, Dish, Food, HoldPlace, Intact, OwnPlace, Piece, Plan, SaltAhead, Thawing,
    Wrap, WrapWhen, in_order,
};
use crate::handover::identity::{DishId, PieceId};
use crate::meat::{Cut, CutId, Make};
use crate::physics;
use crate::provisions::{RATE, salt_for};
use crate::safety::{LethalityTable, Sort, minimum, out_of_fridge_limit};
use crate::units::{Mass, Temperature, TemperatureDifference, TimeSpan};

/// A dish of one's own is best at once: so long at most. Set by hand.
const OWN_KEEPS: TimeSpan = TimeSpan::from_minutes(30.0);
/// The same, kept warm.
const OWN_KEEPS_WARM: TimeSpan = TimeSpan::from_hours(2.0);

/// A dish with everything settled.
#[derive(Clone, Debug)]
pub(super) struct Settled<'a> {
    pub(super) id: DishId,
    pub(super) dish: &'a Dish,
    pub(super) after: After,
    pub(super) hold: HoldPlace,
    /// How long it may wait because it stays good, hot or not.
    pub(super) keeps_good: TimeSpan,
    pub(super) kind: Kind<'a>,
}

/// What it is.
#[derive(Clone, Debug)]
pub(super) enum Kind<'a> {
    /// A cut: physics.
    Cut(Box<CutMethod<'a>>),
    /// A dish of one's own: minutes.
    Own(OwnMethod),
}

/// How a cut is cooked.
#[derive(Clone, Debug)]
pub(super) struct CutMethod<'a> {
    pub(super) cut: &'static Cut,
    pub(super) pieces: Vec<(PieceId, &'a Piece)>,
    pub(super) intact: Intact,
    pub(super) sort: Sort,
    /// Wanted at the core, before the height of the place has its say.
    pub(super) wanted: Temperature,
    /// Aimed for.
    pub(super) target: Temperature,
    /// To be met at the coldest point.
    pub(super) minimum: Temperature,
    /// A target below the published minimum was chosen.
    pub(super) below_minimum: Option<BelowMinimum>,
    pub(super) wrap: Option<(Cover, WrapWhen)>,
    pub(super) salt: Option<Salting>,
    pub(super) assumed: Vec<Assumption>,
}

/// A target below the minimum, and the printed time that makes up for it; none where there is no such row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct BelowMinimum {
    pub(super) minimum: Temperature,
    pub(super) by_table: Option<TimeSpan>,
}

/// Salt ahead of the cook: between the least and the most time, best at the liked one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Salting {
    pub(super) least: TimeSpan,
    pub(super) liked: TimeSpan,
    pub(super) most: TimeSpan,
    pub(super) amount: Mass,
}

/// A dish of one's own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct OwnMethod {
    pub(super) least: TimeSpan,
    pub(super) likely: TimeSpan,
    pub(super) most: TimeSpan,
    pub(super) place: OwnPlace,
}

/// The shortest dry brine. Common practice.
pub(super) const LEAST_SALTING: TimeSpan = TimeSpan::from_minutes(45.0);

/// The longest dry brine. Common practice.
const MOST_SALTING: TimeSpan = TimeSpan::from_hours(48.0);

impl<'a> Settled<'a> {
    /// Settles a dish. None where the cut is not in the catalogue.
    pub(super) fn of(plan: &Plan, id: DishId, dish: &'a Dish) -> Option<Self> {
        match &dish.food {
            Food::Cut { cut } => Some(settle_cut(plan, id, dish, cut.parse().ok()?)),
            Food::Own {
                least,
                likely,
                most,
                place,
            } => {
                let own = OwnMethod {
                    least: *least,
                    likely: *likely,
                    most: *most,
                    place: *place,
                };
                Some(settle_own(plan, id, dish, own))
            }
        }
    }

    /// The cut, where it is one.
    pub(super) fn cut(&self) -> Option<&CutMethod<'a>> {
        match &self.kind {
            Kind::Cut(method) => Some(method),
            Kind::Own(_) => None,
        }
    }
}

impl<'a> CutMethod<'a> {
    /// The pieces alone.
    pub(super) fn all(&self) -> impl Iterator<Item = &'a Piece> {
        self.pieces.iter().map(|(_, piece)| *piece)
    }

    /// The pieces that are still to be trimmed.
    pub(super) fn untrimmed(&self) -> impl Iterator<Item = &'a Piece> {
        self.all()
            .filter(|piece| piece.weighed == BasisOfWeight::Bought)
    }

    /// How far the target was lowered for the height of the place.
    pub(super) fn lowered(&self) -> Option<TemperatureDifference> {
        let by = self.wanted - self.target;
        (by > TemperatureDifference::ZERO).then_some(by)
    }

    /// What is to be said about the target.
    pub(super) fn target_below_minimum(&self) -> Option<FindingKind> {
        let below = self.below_minimum?;
        Some(FindingKind::TargetBelowMinimum {
            target: self.wanted,
            minimum: below.minimum,
            by_table: below.by_table,
        })
    }

    /// A roast that may be held at the lower temperature for roasts cooked by the table.
    pub(super) fn roast(&self) -> bool {
        self.sort == Sort::IntactMuscle && !self.cut.cooks_to_tenderness()
    }
}

/// Whether every piece is known to be intact; one that is not speaks for all.
fn intact<'a>(pieces: impl Iterator<Item = &'a Piece>) -> Intact {
    let mut all = Intact::Yes;
    for piece in pieces {
        all = match (all, piece.intact) {
            (Intact::No, _) | (_, Intact::No) => Intact::No,
            (Intact::Unknown, _) | (_, Intact::Unknown) => Intact::Unknown,
            (Intact::Yes, Intact::Yes) => Intact::Yes,
        };
    }
    all
}

fn settle_cut<'a>(plan: &Plan, id: DishId, dish: &'a Dish, cut: CutId) -> Settled<'a> {
    let pieces = in_order(&dish.pieces, |piece| &piece.order);
    let cut = cut.cut();
    let all = || pieces.iter().map(|(_, piece)| *piece);
    let intact = intact(all());
    let sort = Sort::of(cut.make, intact);
    let mut assumed = Vec::new();
    let mut assume = |is: bool, what| {
        if is {
            assumed.push(what);
        }
    };
    assume(
        all().any(|piece| piece.thickness.is_none()),
        Assumption::Thickness,
    );
    assume(
        all().any(|piece| piece.weighed == BasisOfWeight::Bought),
        Assumption::Trim,
    );
    let asked = cut.make == Make::WholeMuscle;
    assume(asked && intact == Intact::Unknown, Assumption::NotIntact);
    assume(dish.wrap.is_none(), Assumption::Wrap);
    assume(dish.target.is_none(), Assumption::Target);
    assume(dish.salt.is_none(), Assumption::Salt);
    assume(dish.hold.is_none(), Assumption::Hold);

    let published = minimum(sort).temperature;
    let wanted = dish
        .target
        .unwrap_or_else(|| higher(cut.default_target(), published));
    let below_minimum = (wanted < published).then(|| BelowMinimum {
        minimum: published,
        by_table: printed_time(sort, wanted),
    });
    let minimum = match below_minimum {
        Some(below) if below.by_table.is_some() => wanted,
        _ => published,
    };
    let wrap = match dish.wrap {
        Some(Wrap::Bare) => None,
        Some(Wrap::Paper { when }) => Some((Cover::Paper, when)),
        Some(Wrap::Foil { when }) => Some((Cover::Foil, when)),
        None => usual_wrap(cut),
    };
    let hold = dish.hold.unwrap_or(if cut.cooks_to_tenderness() {
        HoldPlace::RestBox
    } else {
        HoldPlace::Counter
    });
    let keeps_good = match hold {
        HoldPlace::RestBox | HoldPlace::WarmOven { .. } => cut.rest.longest_hold,
        HoldPlace::Counter => cut
            .rest
            .longest_hold
            .min(out_of_fridge_limit(plan.place.air)),
    };
    let after = After {
        rest: dish.rest.unwrap_or(cut.rest.least),
        slicing: dish.slicing.unwrap_or_else(|| hands::slicing(cut, all())),
    };
    let salt = salting(cut, dish, all());
    let method = CutMethod {
        cut,
        intact,
        sort,
        wanted,
        target: physics::reachable_target(wanted, plan.place.altitude),
        minimum,
        below_minimum,
        wrap,
        salt,
        assumed,
        pieces,
    };
    Settled {
        id,
        dish,
        after,
        hold,
        keeps_good,
        kind: Kind::Cut(Box::new(method)),
    }
}

fn higher(one: Temperature, other: Temperature) -> Temperature {
    if one < other { other } else { one }
}

/// The printed time at a temperature below the minimum. Only intact muscle and poultry have a table for it.
fn printed_time(sort: Sort, target: Temperature) -> Option<TimeSpan> {
    let table = match sort {
        Sort::IntactMuscle => LethalityTable::RedMeat,
        Sort::Poultry => LethalityTable::Poultry,
        Sort::PiercedMuscle | Sort::Ground | Sort::Stuffed | Sort::Fish | Sort::Leftovers => {
            return None;
        }
    };
    table.time_at(target)
}

fn usual_wrap(cut: &Cut) -> Option<(Cover, WrapWhen)> {
    let (cover, core) = cut.programme.wrap?;
    let cover = match cover {
        physics::Cover::Bare => return None,
        physics::Cover::Paper => Cover::Paper,
        physics::Cover::Foil => Cover::Foil,
    };
    Some((cover, WrapWhen::Core { core }))
}

/// A time that was told for salting may be a quarter shorter, or half as long again, so that nobody is woken for it. Set
/// by hand.
fn about(told: TimeSpan) -> (TimeSpan, TimeSpan, TimeSpan) {
    let least = (told * 0.75).max(told.min(LEAST_SALTING));
    let most = (told * 1.5).min(told.max(MOST_SALTING));
    (least, told, most)
}

/// Salt as told, or as usual: 12 to 24 h ahead above 2 kg and 4 to 12 h below; fish and ground meat are not salted
/// ahead. Common practice.
fn salting<'a>(cut: &Cut, dish: &Dish, pieces: impl Iterator<Item = &'a Piece>) -> Option<Salting> {
    let heaviest = pieces
        .map(|piece| piece.mass.kilograms())
        .fold(0.0, f64::max);
    let (least, liked, most) = match (dish.salt, cut.make) {
        // Thawed under water it is cooked at once, and so salted as it goes on.
        (None, Make::WholeMuscle | Make::Poultry) if thaws_in_water(dish) => hours(0.0, 0.0, 1.0),
        (Some(told), _) => about(told.ahead),
        (None, Make::Ground | Make::Fish) => return None,
        (None, Make::WholeMuscle | Make::Poultry) if heaviest > 2.0 => hours(12.0, 16.0, 24.0),
        (None, Make::WholeMuscle | Make::Poultry) => hours(4.0, 8.0, 12.0),
    };
    let salted = Dish {
        salt: Some(dish.salt.unwrap_or(SaltAhead {
            ahead: liked,
            rate: RATE.usual,
            solution_added: false,
        })),
        ..dish.clone()
    };
    let (amount, _) = salt_for(&salted, Mass::ZERO)?;
    let amount = amount.salt();
    (amount > Mass::ZERO).then_some(Salting {
        least,
        liked,
        most,
        amount,
    })
}

fn thaws_in_water(dish: &Dish) -> bool {
    dish.thaw == Some(Thawing::ColdWater) && dish.pieces.values().any(|piece| piece.frozen)
}

const fn hours(least: f64, liked: f64, most: f64) -> (TimeSpan, TimeSpan, TimeSpan) {
    (
        TimeSpan::from_hours(least),
        TimeSpan::from_hours(liked),
        TimeSpan::from_hours(most),
    )
}

fn settle_own<'a>(plan: &Plan, id: DishId, dish: &'a Dish, own: OwnMethod) -> Settled<'a> {
    let hold = dish.hold.unwrap_or(HoldPlace::Counter);
    let keeps_good = match (own.place, hold) {
        (OwnPlace::Bench, _) => out_of_fridge_limit(plan.place.air),
        (_, HoldPlace::Counter) => OWN_KEEPS,
        (_, HoldPlace::RestBox | HoldPlace::WarmOven { .. }) => OWN_KEEPS_WARM,
    };
    Settled {
        id,
        dish,
        after: After {
            rest: dish.rest.unwrap_or(TimeSpan::ZERO),
            slicing: dish.slicing.unwrap_or(TimeSpan::ZERO),
        },
        hold,
        keeps_good,
        kind: Kind::Own(own),
    }
}
