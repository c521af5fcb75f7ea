//! What a line of the list is about: a key that stays the same however often the list is worked out.

use super::aisle::Aisle;
use crate::handover::identity::{DishId, ExtraId};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use thiserror::Error;

/// What is bought.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(into = "String", try_from = "String")]
#[schemars(with = "String", extend("pattern" = "^[0-9A-Za-z_]{1,64}$"))]
pub enum Item {
    /// The pieces of a dish.
    Meat(DishId),
    /// What a dish of one's own is made of.
    OwnDish(DishId),
    /// Salt, all dishes.
    Salt,
    /// Rub, all dishes.
    Rub,
    /// Mustard or oil under the rub, all dishes.
    Binder,
    /// What goes into the spray bottle, all dishes.
    Spray,
    /// Butcher paper.
    Paper,
    /// Foil.
    Foil,
    /// Pans under the meat.
    DripPans,
    /// Pans for the cooked meat.
    ServingPans,
    /// A box in which the meat waits, hot.
    RestBox,
    /// Splits of hardwood.
    Wood,
    /// Lump charcoal.
    Lump,
    /// Briquettes.
    Briquettes,
    /// Pellets.
    Pellets,
    /// Propane.
    Propane,
    /// Current: nothing to carry, but it costs.
    Electricity,
    /// Ice.
    Ice,
    /// A thing of one's own.
    Extra(ExtraId),
}

/// Text that is not the key of an item.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("“{0}” is not a thing on the list; leave it out, or add it as a thing of your own")]
pub struct NotAnItem(pub String);

const PLAIN: [(Item, &str); 16] = [
    (Item::Salt, "salt"),
    (Item::Rub, "rub"),
    (Item::Binder, "binder"),
    (Item::Spray, "spray"),
    (Item::Paper, "paper"),
    (Item::Foil, "foil"),
    (Item::DripPans, "drip_pans"),
    (Item::ServingPans, "serving_pans"),
    (Item::RestBox, "rest_box"),
    (Item::Wood, "wood"),
    (Item::Lump, "lump"),
    (Item::Briquettes, "briquettes"),
    (Item::Pellets, "pellets"),
    (Item::Propane, "propane"),
    (Item::Electricity, "electricity"),
    (Item::Ice, "ice"),
];

impl Item {
    /// The aisle that it lies in; things of one's own say so themselves.
    #[must_use]
    pub const fn aisle(&self) -> Option<Aisle> {
        Some(match self {
            Self::Meat(_) => Aisle::Butcher,
            Self::OwnDish(_) => Aisle::Greengrocer,
            Self::Salt | Self::Rub | Self::Binder | Self::Spray => Aisle::DryGoods,
            Self::Paper | Self::Foil | Self::DripPans | Self::ServingPans | Self::RestBox => {
                Aisle::Household
            }
            Self::Wood
            | Self::Lump
            | Self::Briquettes
            | Self::Pellets
            | Self::Propane
            | Self::Electricity => Aisle::Fuel,
            Self::Ice => Aisle::Frozen,
            Self::Extra(_) => return None,
        })
    }
}

impl fmt::Display for Item {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Meat(dish) => write!(f, "meat_{dish}"),
            Self::OwnDish(dish) => write!(f, "dish_{dish}"),
            Self::Extra(extra) => write!(f, "extra_{extra}"),
            plain => {
                let text = PLAIN.iter().find(|(item, _)| item == plain);
                f.write_str(text.map_or("", |(_, text)| text))
            }
        }
    }
}

impl FromStr for Item {
    type Err = NotAnItem;

    fn from_str(text: &str) -> Result<Self, NotAnItem> {
        let no = || NotAnItem(text.to_owned());
        if let Some((item, _)) = PLAIN.iter().find(|(_, plain)| *plain == text) {
            return Ok(*item);
        }
        let (kind, id) = text.split_once('_').ok_or_else(no)?;
        match kind {
            "meat" => Ok(Self::Meat(id.parse().map_err(|_| no())?)),
            "dish" => Ok(Self::OwnDish(id.parse().map_err(|_| no())?)),
            "extra" => Ok(Self::Extra(id.parse().map_err(|_| no())?)),
            _ => Err(no()),
        }
    }
}

impl From<Item> for String {
    fn from(item: Item) -> Self {
        item.to_string()
    }
}

impl TryFrom<String> for Item {
    type Error = NotAnItem;
    fn try_from(text: String) -> Result<Self, NotAnItem> {
        text.parse()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_reads_back() {
        let dish = DishId::new(7, 9);
        let mut items: Vec<Item> = PLAIN.iter().map(|(item, _)| *item).collect();
        items.extend([
            Item::Meat(dish),
            Item::OwnDish(dish),
            Item::Extra(ExtraId::new(1, 2)),
        ]);
        for item in items {
            let text = item.to_string();
            assert!(
                text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'_'),
                "{text}"
            );
            assert_eq!(text.parse(), Ok(item));
        }
        assert!("meat_of_the_day".parse::<Item>().is_err());
    }
}
