//! One weight told, three weights known: as bought, as it goes on, and cooked on the plate.

use super::trimming::trimming;
use crate::meat::CutId;
use crate::plan::{BasisOfWeight, Dish, Food, Piece};
use crate::units::Mass;
use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, Mul};

/// The weights of the same meat along its way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Weights {
    /// As bought.
    pub bought: Mass,
    /// Trimmed, as it goes on, bones included. Salt is reckoned on this.
    pub trimmed: Mass,
    /// Cooked and edible, on the plate.
    pub on_plate: Mass,
}

/// Which raw weight a published yield is a share of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CountedFrom {
    /// The piece that goes on: retail cuts, already trimmed as the row says, with their bones.
    Trimmed,
    /// The piece as bought: ready-to-cook birds with neck and giblets, a picnic with its skin.
    Bought,
}

/// Which raw weight the edible yield of a cut is a share of. The rows of USDA SR28 for red meat are for pieces trimmed
/// to 0 to 1/4 in of fat, those for whole birds for a ready-to-cook pound with neck and giblets, and that for the picnic
/// for a pound with its skin.
#[must_use]
pub const fn counted_from(cut: CutId) -> CountedFrom {
    match cut {
        CutId::ChickenWhole | CutId::TurkeyWhole | CutId::PorkPicnic => CountedFrom::Bought,
        _ => CountedFrom::Trimmed,
    }
}

/// Cooked and edible per trimmed weight, 0 to 1.
fn edible_of_trimmed(cut: CutId) -> f64 {
    let share = cut.cut().edible_yield.share;
    match counted_from(cut) {
        CountedFrom::Trimmed => share,
        CountedFrom::Bought => share / (1.0 - trimming(cut).share),
    }
}

impl Weights {
    /// From a weight as bought, with the usual trimming.
    #[must_use]
    pub fn from_bought(cut: CutId, bought: Mass) -> Self {
        Self::both_raw(cut, bought, trimming(cut).trimmed(bought))
    }

    /// From a weight after trimming; what was bought follows from the usual trimming.
    #[must_use]
    pub fn from_trimmed(cut: CutId, trimmed: Mass) -> Self {
        Self::both_raw(cut, trimming(cut).bought(trimmed), trimmed)
    }

    /// From what is wanted on the plate: divided by the yield, and by what trimming leaves.
    #[must_use]
    pub fn from_plate(cut: CutId, on_plate: Mass) -> Self {
        Self::from_trimmed(cut, on_plate / edible_of_trimmed(cut))
    }

    /// From a weight that was told with its basis.
    #[must_use]
    pub fn told(cut: CutId, mass: Mass, weighed: BasisOfWeight) -> Self {
        match weighed {
            BasisOfWeight::Bought => Self::from_bought(cut, mass),
            BasisOfWeight::Trimmed => Self::from_trimmed(cut, mass),
        }
    }

    /// One piece of a dish, without its count.
    #[must_use]
    pub fn of_one(cut: CutId, piece: &Piece) -> Self {
        Self::told(cut, piece.mass, piece.weighed)
    }

    fn both_raw(cut: CutId, bought: Mass, trimmed: Mass) -> Self {
        Self {
            bought,
            trimmed,
            on_plate: trimmed * edible_of_trimmed(cut),
        }
    }
}

/// All pieces of a dish together. None for a dish of one's own and for a cut that the catalogue does not have.
#[must_use]
pub fn dish_weights(dish: &Dish) -> Option<Weights> {
    let Food::Cut { cut } = &dish.food else {
        return None;
    };
    let cut: CutId = cut.parse().ok()?;
    let pieces = dish.pieces.values();
    Some(
        pieces
            .map(|piece| Weights::of_one(cut, piece) * f64::from(piece.count))
            .sum(),
    )
}

impl Add for Weights {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            bought: self.bought + other.bought,
            trimmed: self.trimmed + other.trimmed,
            on_plate: self.on_plate + other.on_plate,
        }
    }
}

impl Mul<f64> for Weights {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self {
            bought: self.bought * factor,
            trimmed: self.trimmed * factor,
            on_plate: self.on_plate * factor,
        }
    }
}

impl Sum for Weights {
    fn sum<I: Iterator<Item = Self>>(parts: I) -> Self {
        parts.fold(Self::default(), Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_three_ways_in_tell_the_same_story() {
        for &cut in CutId::ALL {
            let there = Weights::from_bought(cut, Mass::from_kilograms(4.0));
            let back = Weights::from_plate(cut, there.on_plate);
            assert!(
                (back.bought - there.bought).kilograms().abs() < 1e-12,
                "{cut}"
            );
            assert!(
                there.on_plate < there.trimmed && there.trimmed <= there.bought,
                "{cut}"
            );
        }
    }

    #[test]
    fn a_bird_counts_its_giblets_once() {
        let bird = Weights::from_bought(CutId::ChickenWhole, Mass::from_grams(453.6));
        assert!((bird.on_plate.grams() - 178.0).abs() < 0.5);
    }
}
