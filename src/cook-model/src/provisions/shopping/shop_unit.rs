//! The units that shops sell in. Rounding is upwards and never short.

use super::super::counting::whole;
use super::super::quantity::{Quantity, UnlikeQuantities};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What a pack is.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum PackKind {
    /// A small pack, a box or a jar.
    Pack,
    /// A bag or a sack.
    Sack,
    /// A roll.
    Roll,
    /// A bottle.
    Bottle,
    /// One piece that is sold by the piece but reckoned by weight: a split.
    Piece,
}

/// A pack of a size.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Pack {
    /// What it is.
    pub kind: PackKind,
    /// What one holds; more than nothing.
    pub holds: Quantity,
}

/// How something is sold.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum SoldBy {
    /// As much as is asked for.
    Loose,
    /// In whole packs.
    Packs {
        /// Of this size.
        pack: Pack,
    },
}

/// An amount as the shop hands it over.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ShopAmount {
    /// Whole packs; none where it is sold loose.
    pub packs: Option<(u32, Pack)>,
    /// All that is bought: at least what was asked for.
    pub amount: Quantity,
}

impl SoldBy {
    /// Packs of a kind that hold so much.
    #[must_use]
    pub const fn packs(kind: PackKind, holds: Quantity) -> Self {
        Self::Packs {
            pack: Pack { kind, holds },
        }
    }

    /// What the shop hands over for what is wanted. A pack that holds nothing is taken for loose.
    ///
    /// # Errors
    /// If the pack is measured in another kind of unit than what is wanted.
    pub fn shop_amount(&self, wanted: Quantity) -> Result<ShopAmount, UnlikeQuantities> {
        let loose = ShopAmount {
            packs: None,
            amount: wanted,
        };
        let Self::Packs { pack } = self else {
            return Ok(loose);
        };
        let (number, holds) = wanted.numbers(&pack.holds)?;
        if !(holds > 0.0 && holds.is_finite()) {
            return Ok(loose);
        }
        let packs = whole(number / holds);
        Ok(ShopAmount {
            packs: Some((packs, *pack)),
            amount: wanted.with_number(holds * f64::from(packs)),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Length, Mass};

    fn sacks(kilograms: f64) -> SoldBy {
        SoldBy::packs(
            PackKind::Sack,
            Quantity::Mass(Mass::from_kilograms(kilograms)),
        )
    }

    #[test]
    fn whole_packs_and_never_short() {
        let wanted = Quantity::Mass(Mass::from_kilograms(10.1));
        let amount = sacks(5.0).shop_amount(wanted).expect("both by weight");
        assert_eq!(amount.packs.map(|(count, _)| count), Some(3));
        assert_eq!(amount.amount, Quantity::Mass(Mass::from_kilograms(15.0)));
        let exact = sacks(5.0).shop_amount(Quantity::Mass(Mass::from_kilograms(10.0)));
        assert_eq!(
            exact.expect("both by weight").packs.map(|(count, _)| count),
            Some(2)
        );
    }

    #[test]
    fn paper_is_not_sold_by_weight() {
        let wanted = Quantity::Length(Length::from_metres(3.0));
        let error = sacks(5.0).shop_amount(wanted).expect_err("unlike");
        assert!(error.to_string().contains("length") && error.to_string().contains("weight"));
    }

    #[test]
    fn an_empty_pack_is_no_pack() {
        let wanted = Quantity::Mass(Mass::from_kilograms(1.0));
        assert_eq!(sacks(0.0).shop_amount(wanted).expect("loose").packs, None);
    }
}
