//! The list of cuts and their keys.

use super::{Cut, beef, lamb, pork, poultry, small};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use thiserror::Error;

macro_rules! cuts {
    ($($(#[$doc:meta])* $id:ident, $slug:literal, $cut:path;)+) => {
        /// The key of a cut. Files spell it as a slug of words and hyphens, the same as [`CutId::slug`].
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
        pub enum CutId {
            $($(#[$doc])* #[serde(rename = $slug)] $id,)+
        }

        impl CutId {
            /// Every key, in the order of the catalogue.
            pub const ALL: &'static [Self] = &[$(Self::$id,)+];

            /// The spelling in files.
            #[must_use]
            pub const fn slug(self) -> &'static str {
                match self {
                    $(Self::$id => $slug,)+
                }
            }

            /// The entry of the catalogue.
            #[must_use]
            pub const fn cut(self) -> &'static Cut {
                match self {
                    $(Self::$id => &$cut,)+
                }
            }
        }

        static CATALOGUE: &[Cut] = &[$($cut,)+];
    };
}

cuts! {
    /// Whole beef brisket, flat and point together.
    BeefPackerBrisket, "beef-packer-brisket", beef::PACKER;
    /// Lean half of the brisket.
    BeefBrisketFlat, "beef-brisket-flat", beef::FLAT;
    /// Fat half of the brisket.
    BeefBrisketPoint, "beef-brisket-point", beef::POINT;
    /// Short ribs from the plate.
    BeefPlateShortRibs, "beef-plate-short-ribs", beef::PLATE_SHORT_RIBS;
    /// Short ribs from the chuck.
    BeefChuckShortRibs, "beef-chuck-short-ribs", beef::CHUCK_SHORT_RIBS;
    /// Back ribs from under the rib roast.
    BeefBackRibs, "beef-back-ribs", beef::BACK_RIBS;
    /// Chuck roast for pulling.
    BeefChuckRoast, "beef-chuck-roast", beef::CHUCK_ROAST;
    /// Tri-tip.
    BeefTriTip, "beef-tri-tip", beef::TRI_TIP;
    /// Rib roast on the bone.
    BeefRibRoast, "beef-rib-roast", beef::RIB_ROAST;
    /// Upper half of the pork shoulder.
    PorkShoulderButt, "pork-shoulder-butt", pork::BUTT;
    /// Lower half of the pork shoulder.
    PorkPicnic, "pork-picnic", pork::PICNIC;
    /// Pork spareribs.
    PorkSpareRibs, "pork-spare-ribs", pork::SPARE_RIBS;
    /// Spareribs squared off.
    PorkStLouisRibs, "pork-st-louis-ribs", pork::ST_LOUIS_RIBS;
    /// Pork back ribs.
    PorkBackRibs, "pork-back-ribs", pork::BACK_RIBS;
    /// Pork belly without skin.
    PorkBelly, "pork-belly", pork::BELLY;
    /// Boneless pork loin.
    PorkLoin, "pork-loin", pork::LOIN;
    /// Lamb shoulder on the bone.
    LambShoulder, "lamb-shoulder", lamb::SHOULDER;
    /// Leg of lamb on the bone.
    LambLeg, "lamb-leg", lamb::LEG;
    /// Whole chicken.
    ChickenWhole, "chicken-whole", poultry::CHICKEN;
    /// Chicken legs with their part of the back.
    ChickenQuarters, "chicken-quarters", poultry::QUARTERS;
    /// Whole turkey.
    TurkeyWhole, "turkey-whole", poultry::TURKEY;
    /// Turkey breast on the bone.
    TurkeyBreast, "turkey-breast", poultry::TURKEY_BREAST;
    /// Raw sausages.
    SausageLinks, "sausage-links", small::SAUSAGE;
    /// One side of a salmon.
    SalmonSide, "salmon-side", small::SALMON;
}

/// Every cut, in the order of [`CutId::ALL`].
#[must_use]
pub fn catalogue() -> &'static [Cut] {
    CATALOGUE
}

impl fmt::Display for CutId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.slug())
    }
}

/// A slug that no cut has.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error(
    "no cut is called \"{0}\"; choose one of the catalogue, or enter a dish of your own with its minutes"
)]
pub struct UnknownCut(pub String);

impl FromStr for CutId {
    type Err = UnknownCut;

    fn from_str(slug: &str) -> Result<Self, UnknownCut> {
        Self::ALL
            .iter()
            .copied()
            .find(|id| id.slug() == slug)
            .ok_or_else(|| UnknownCut(slug.to_owned()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meat::Bone;

    #[test]
    fn keys_and_entries_belong_together() {
        assert_eq!(CutId::ALL.len(), catalogue().len());
        for (id, cut) in CutId::ALL.iter().zip(catalogue()) {
            assert_eq!(*id, cut.id);
            assert_eq!(id.cut(), cut);
            assert_eq!(id.slug().parse(), Ok(*id));
            assert_eq!(
                serde_json::to_string(id).unwrap(),
                format!("\"{}\"", id.slug())
            );
        }
        assert!("pork-cloud".parse::<CutId>().is_err());
    }

    #[test]
    fn every_entry_makes_physical_sense() {
        for cut in catalogue() {
            let name = cut.name;
            let c = cut.composition;
            let sum = c.water + c.protein + c.fat + c.ash;
            assert!(
                (sum - 1.0).abs() < 2e-3,
                "{name}: composition adds up to {sum}"
            );
            let exponents: f64 = cut.shape.exponents.iter().sum();
            assert!(
                (exponents - 1.0).abs() < 1e-9,
                "{name}: exponents add up to {exponents}"
            );
            assert!(
                (std::f64::consts::FRAC_PI_6..=1.0).contains(&cut.shape.fill),
                "{name}"
            );
            assert!(
                cut.shape.thickness <= cut.shape.width && cut.shape.width <= cut.shape.length,
                "{name}"
            );
            assert!(
                cut.default_target() >= cut.make.consumer_minimum(),
                "{name}"
            );
            assert!(
                cut.rest.least <= cut.rest.best && cut.rest.best <= cut.rest.longest_hold,
                "{name}"
            );
            let (low, high) = cut.usual_mass;
            assert!(
                low <= cut.shape.mass && cut.shape.mass <= high,
                "{name}: usual range misses the reference weight"
            );
            assert!(
                cut.edible_yield.share > 0.1
                    && cut.edible_yield.share < 1.0 - 0.5 * cut.bone.share(),
                "{name}"
            );
            if let Bone::Under { thickness, .. } = cut.bone {
                assert!(thickness < cut.shape.thickness, "{name}");
            }
        }
    }
}
