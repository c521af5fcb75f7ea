//! Where in the shop.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Parts of a shop, in the order in which the list goes through them: what is heavy and keeps comes last but ice.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Aisle {
    /// Meat, poultry, fish.
    Butcher,
    /// Dishes of one's own: corn, beans.
    Greengrocer,
    /// Salt, rub, what goes into the spray.
    DryGoods,
    /// Paper, foil, pans.
    Household,
    /// Wood, charcoal, pellets, gas.
    Fuel,
    /// Ice, at the very end.
    Frozen,
}

impl Aisle {
    /// All, in order.
    pub const ALL: [Self; 6] = [
        Self::Butcher,
        Self::Greengrocer,
        Self::DryGoods,
        Self::Household,
        Self::Fuel,
        Self::Frozen,
    ];
}
