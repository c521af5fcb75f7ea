//! Salt in spoons: only for a kind of salt that is named, and only as a spread.

use crate::units::Mass;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Kinds of salt that fill a spoon differently.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum SaltKind {
    /// Fine table salt.
    Table,
    /// Fine sea salt.
    FineSea,
    /// Coarse sea salt.
    CoarseSea,
    /// Flaky sea salt.
    FlakeSea,
    /// Coarse salt in dense flakes.
    CoarseDense,
    /// Coarse salt in light, hollow flakes.
    CoarseLight,
}

/// What a level teaspoon holds: grams, least and most printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spoonful {
    /// Least.
    pub least: Mass,
    /// Most.
    pub most: Mass,
    /// Where it is printed.
    pub source: &'static str,
}

/// Three teaspoons make a tablespoon.
pub const TEASPOONS_IN_A_TABLESPOON: f64 = 3.0;

impl SaltKind {
    /// Every kind.
    pub const ALL: [Self; 6] = [
        Self::Table,
        Self::FineSea,
        Self::CoarseSea,
        Self::FlakeSea,
        Self::CoarseDense,
        Self::CoarseLight,
    ];

    /// What a level teaspoon of it holds.
    #[must_use]
    pub const fn teaspoon(self) -> Spoonful {
        const PAGES: &str = "kitchen conversion pages, several agreeing";
        let (least, most, source) = match self {
            Self::Table => (
                6.0,
                6.0,
                "USDA SR28, 02047: 6.0 g a teaspoon, 18 g a tablespoon",
            ),
            Self::FineSea => (5.0, 5.3, PAGES),
            Self::CoarseSea => (5.0, 5.0, PAGES),
            Self::FlakeSea => (3.0, 3.0, "kitchen conversion pages: about 9 g a tablespoon"),
            Self::CoarseDense => (4.8, 5.3, PAGES),
            Self::CoarseLight => (2.8, 3.3, PAGES),
        };
        Spoonful {
            least: Mass::from_grams(least),
            most: Mass::from_grams(most),
            source,
        }
    }
}

/// Level teaspoons for a weight of a named kind of salt: fewest and most. Grams come first: the spread is that of the
/// spoon, and between kinds it is twofold.
#[must_use]
pub fn teaspoons(salt: Mass, kind: SaltKind) -> (f64, f64) {
    let spoonful = kind.teaspoon();
    (salt / spoonful.most, salt / spoonful.least)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_spoonful_and_back() {
        for kind in SaltKind::ALL {
            let (fewest, most) = teaspoons(Mass::from_grams(30.0), kind);
            assert!(fewest <= most);
            let spoonful = kind.teaspoon();
            assert!(
                (spoonful.most * fewest - Mass::from_grams(30.0))
                    .grams()
                    .abs()
                    < 1e-9
            );
        }
    }
}
