//! Prices and sums, in the smallest coin of the person's currency.

use super::super::quantity::Quantity;
use super::shop_unit::ShopAmount;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, Sub};

/// An amount of money in the smallest coin (pence, cents). The currency is the plan's.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(transparent)]
pub struct Money(pub i64);

impl Money {
    /// So many times the amount, rounded to the nearest coin.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_precision_loss,
            reason = "a saturating cast; sums of a shopping list are far below 2^53 coins"
        )]
        Self(libm::round(self.0 as f64 * factor) as i64)
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Money {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Self>>(parts: I) -> Self {
        parts.fold(Self::default(), Add::add)
    }
}

/// What a price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PricedBy {
    /// A kilogram.
    Kilogram,
    /// A pound.
    Pound,
    /// A litre.
    Litre,
    /// A metre.
    Metre,
    /// A kilowatt-hour.
    KilowattHour,
    /// One pack, or one piece where it is counted.
    Each,
    /// All of it, whatever the amount.
    All,
}

/// A price as it stands on the label.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Price {
    /// How much.
    pub money: Money,
    /// For what.
    pub by: PricedBy,
}

impl Price {
    /// What an amount costs. None where the label's unit does not fit the amount: a price by the pack for something
    /// sold loose by weight.
    #[must_use]
    pub fn of(&self, bought: &ShopAmount) -> Option<Money> {
        let times = match (self.by, &bought.amount, bought.packs) {
            (PricedBy::All, ..) => 1.0,
            (PricedBy::Each, _, Some((packs, _))) => f64::from(packs),
            (PricedBy::Each, Quantity::Count(count), None) => f64::from(*count),
            (PricedBy::Kilogram, Quantity::Mass(mass), _) => mass.kilograms(),
            (PricedBy::Pound, Quantity::Mass(mass), _) => mass.pounds(),
            (PricedBy::Litre, Quantity::Volume(volume), _) => volume.litres(),
            (PricedBy::Metre, Quantity::Length(length), _) => length.metres(),
            (PricedBy::KilowattHour, Quantity::Energy(energy), _) => energy.kilowatt_hours(),
            _ => return None,
        };
        Some(self.money.times(times))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Mass;

    #[test]
    fn a_price_by_the_pound_and_by_the_kilogram_agree() {
        let bought = ShopAmount {
            packs: None,
            amount: Quantity::Mass(Mass::from_pounds(4.0)),
        };
        let by = |money, by| {
            Price {
                money: Money(money),
                by,
            }
            .of(&bought)
        };
        assert_eq!(by(500, PricedBy::Pound), Some(Money(2000)));
        assert_eq!(by(1102, PricedBy::Kilogram), Some(Money(1999)));
        assert_eq!(by(500, PricedBy::Litre), None);
        assert_eq!(by(500, PricedBy::Each), None);
        assert_eq!(by(500, PricedBy::All), Some(Money(500)));
    }
}
