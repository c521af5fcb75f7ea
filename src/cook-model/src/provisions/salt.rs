//! Salt by weight.

use super::salt_diffusion::{EvenOut, IN_FRIDGE, even_out};
use super::size::Size;
use super::weights::Weights;
use crate::meat::CutId;
use crate::plan::{Dish, Food, SaltAhead};
use crate::units::Mass;
use serde::{Deserialize, Serialize};

/// A rate of salt with its usual range, per trimmed weight, bones included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rate {
    /// Sparing.
    pub least: f64,
    /// Usual.
    pub usual: f64,
    /// Salty.
    pub most: f64,
}

/// Dry brine: 1.2 % of the trimmed weight, 0.8 to 1.5 %. Common practice.
pub const RATE: Rate = Rate {
    least: 0.008,
    usual: 0.012,
    most: 0.015,
};

/// Why so much salt, or none.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum SaltAmount {
    /// Weigh this much.
    Grams {
        /// Salt to put on.
        salt: Mass,
        /// Trimmed weight that it is reckoned on.
        of: Mass,
        /// Per trimmed weight, what is in the rub included.
        rate: f64,
        /// Salt that the rub brings, taken off already.
        in_rub: Mass,
    },
    /// None: the label says that a solution was added, so it is salted already.
    SolutionAdded,
    /// None: it is seasoned by its maker, as sausages are.
    Seasoned,
    /// None: the rub brings as much, or more.
    RubBringsEnough {
        /// Salt in the rub.
        in_rub: Mass,
        /// Salt that the rate asks for.
        wanted: Mass,
    },
}

impl SaltAmount {
    /// Salt to weigh out.
    #[must_use]
    pub const fn salt(&self) -> Mass {
        match self {
            Self::Grams { salt, .. } => *salt,
            Self::SolutionAdded | Self::Seasoned | Self::RubBringsEnough { .. } => Mass::ZERO,
        }
    }
}

/// Salt for a trimmed weight at a rate, less what the rub brings.
#[must_use]
pub fn grams_of_salt(trimmed: Mass, ahead: SaltAhead, in_rub: Mass) -> SaltAmount {
    if ahead.solution_added {
        return SaltAmount::SolutionAdded;
    }
    let wanted = trimmed * ahead.rate;
    if in_rub > Mass::ZERO && in_rub >= wanted {
        return SaltAmount::RubBringsEnough { in_rub, wanted };
    }
    SaltAmount::Grams {
        salt: wanted - in_rub,
        of: trimmed,
        rate: ahead.rate,
        in_rub,
    }
}

/// Salt for all pieces of a dish and the time it takes to even out in the thickest. None for a dish of one's own, for a
/// cut that the catalogue does not have, and where no salt is planned.
#[must_use]
pub fn salt_for(dish: &Dish, in_rub: Mass) -> Option<(SaltAmount, Option<EvenOut>)> {
    let Food::Cut { cut } = &dish.food else {
        return None;
    };
    let cut: CutId = cut.parse().ok()?;
    let ahead = dish.salt?;
    if cut == CutId::SausageLinks {
        return Some((SaltAmount::Seasoned, None));
    }
    let pieces = dish.pieces.values();
    let trimmed = pieces
        .map(|piece| Weights::of_one(cut, piece).trimmed * f64::from(piece.count))
        .sum();
    let thickest = dish
        .pieces
        .values()
        .map(|piece| salted_thickness(Size::of_one(cut, piece)))
        .max_by(|a, b| a.metres().total_cmp(&b.metres()));
    let amount = grams_of_salt(trimmed, ahead, in_rub);
    let even = match amount {
        SaltAmount::Grams { .. } => thickest.map(|thickness| even_out(thickness, 0.9, IN_FRIDGE)),
        _ => None,
    };
    Some((amount, even))
}

/// A slab on the bone takes salt from one face only: it is as slow as one twice as thick.
fn salted_thickness(size: Size) -> crate::units::Length {
    use crate::units::Length;
    if size.bone > Length::ZERO {
        size.thickness * 2.0
    } else {
        size.thickness
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::TimeSpan;

    fn ahead(rate: f64, solution_added: bool) -> SaltAhead {
        SaltAhead {
            ahead: TimeSpan::from_hours(18.0),
            rate,
            solution_added,
        }
    }

    #[test]
    fn salt_is_a_share_of_the_trimmed_weight() {
        let amount = grams_of_salt(Mass::from_kilograms(9.6), ahead(0.012, false), Mass::ZERO);
        assert!((amount.salt().grams() - 115.2).abs() < 1e-9);
    }

    #[test]
    fn salt_in_the_rub_counts() {
        let wanted = ahead(0.012, false);
        let some = grams_of_salt(Mass::from_kilograms(3.0), wanted, Mass::from_grams(10.0));
        assert!((some.salt().grams() - 26.0).abs() < 1e-9);
        let enough = grams_of_salt(Mass::from_kilograms(3.0), wanted, Mass::from_grams(40.0));
        assert!(matches!(enough, SaltAmount::RubBringsEnough { .. }));
    }

    #[test]
    fn a_solution_was_salt_already() {
        let amount = grams_of_salt(Mass::from_kilograms(3.0), ahead(0.012, true), Mass::ZERO);
        assert_eq!(amount, SaltAmount::SolutionAdded);
        assert_eq!(amount.salt(), Mass::ZERO);
    }
}
