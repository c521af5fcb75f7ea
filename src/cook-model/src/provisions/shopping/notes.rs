//! What the person says about the list: it survives every re-planning and is marked on the list.

use super::super::quantity::Quantity;
use super::aisle::Aisle;
use super::money::Price;
use super::shop_unit::SoldBy;
use crate::plan::Order;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the person says about a line that was worked out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Purchase {
    /// Wanted instead of what was worked out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amount: Option<Quantity>,
    /// How this shop sells it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sold_by: Option<SoldBy>,
    /// What it costs here.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Price>,
    /// In the house already.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub already: Option<Quantity>,
    /// In the basket, or paid.
    #[serde(default)]
    pub ticked: bool,
    /// Not wanted on the list.
    #[serde(default)]
    pub left_out: bool,
}

/// A thing of one's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Extra {
    /// What it is.
    pub name: String,
    /// Where it lies.
    pub aisle: Aisle,
    /// Place among the things of one's own.
    #[serde(default)]
    pub order: Order,
    /// How much, if it was said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amount: Option<Quantity>,
    /// What it costs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Price>,
    /// In the basket, or paid.
    #[serde(default)]
    pub ticked: bool,
}
