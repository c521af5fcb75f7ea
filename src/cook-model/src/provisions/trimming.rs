//! How much of the weight bought is cut away before a piece goes on.

use crate::meat::CutId;
use crate::units::Mass;

/// The share of the weight bought that trimming takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trimming {
    /// Usual share, 0 to 1.
    pub share: f64,
    /// A light hand, 0 to 1.
    pub least: f64,
    /// A heavy hand, or a fatty piece, 0 to 1.
    pub most: f64,
    /// What is cut away, and where the figure is from.
    pub source: &'static str,
}

impl Trimming {
    /// What is left of a weight as bought.
    #[must_use]
    pub fn trimmed(&self, bought: Mass) -> Mass {
        bought * (1.0 - self.share)
    }

    /// What has to be bought so that this much is left: a division, not an addition of the share.
    #[must_use]
    pub fn bought(&self, trimmed: Mass) -> Mass {
        trimmed / (1.0 - self.share)
    }
}

const fn row(share: f64, least: f64, most: f64, source: &'static str) -> Trimming {
    Trimming {
        share,
        least,
        most,
        source,
    }
}

/// Usual trimming of a cut as shops sell it. All changeable by weighing after the knife.
#[must_use]
pub const fn trimming(cut: CutId) -> Trimming {
    match cut {
        CutId::BeefPackerBrisket => {
            row(0.20, 0.10, 0.30, "hard fat and thin edges; common practice")
        }
        CutId::BeefBrisketFlat => row(0.08, 0.02, 0.20, "fat cap and silverskin; common practice"),
        CutId::BeefBrisketPoint => row(0.10, 0.03, 0.25, "fat cap and hard fat; common practice"),
        CutId::BeefPlateShortRibs => {
            row(0.08, 0.03, 0.15, "fat cap and silverskin; common practice")
        }
        CutId::BeefChuckShortRibs => row(0.06, 0.02, 0.12, "fat and silverskin; common practice"),
        CutId::BeefBackRibs => row(0.03, 0.01, 0.06, "membrane and loose ends; common practice"),
        CutId::BeefChuckRoast => row(0.03, 0.0, 0.08, "silverskin; common practice"),
        CutId::BeefTriTip => row(
            0.05,
            0.0,
            0.20,
            "silverskin, fat if sold untrimmed; common practice",
        ),
        CutId::BeefRibRoast => row(0.04, 0.0, 0.10, "outer fat; common practice"),
        CutId::PorkShoulderButt => row(0.05, 0.02, 0.12, "fat cap; common practice"),
        CutId::PorkPicnic => row(
            0.10,
            0.03,
            0.16,
            "skin and the fat under it; common practice",
        ),
        CutId::PorkSpareRibs => row(0.05, 0.02, 0.10, "membrane and loose ends; common practice"),
        CutId::PorkStLouisRibs => row(
            0.03,
            0.01,
            0.06,
            "membrane, squared off by the shop; common practice",
        ),
        CutId::PorkBackRibs => row(0.03, 0.01, 0.06, "membrane; common practice"),
        CutId::PorkBelly => row(0.03, 0.0, 0.08, "edges squared; common practice"),
        CutId::PorkLoin => row(0.03, 0.0, 0.08, "silverskin and fat; common practice"),
        CutId::LambShoulder => row(0.06, 0.02, 0.15, "fell and outer fat; common practice"),
        CutId::LambLeg => row(0.05, 0.02, 0.12, "fell and outer fat; common practice"),
        CutId::ChickenWhole => row(
            0.10,
            0.0,
            0.12,
            "neck and giblets: USDA SR28 05020 and 05084, 23 g and 15 g without its 36 % bone in a pound; none where the bird is sold without",
        ),
        CutId::ChickenQuarters => row(0.03, 0.0, 0.06, "loose skin and fat; common practice"),
        CutId::TurkeyWhole => row(0.07, 0.0, 0.10, "neck and giblets; common practice"),
        CutId::TurkeyBreast => row(0.02, 0.0, 0.06, "loose skin; common practice"),
        CutId::SausageLinks => row(0.0, 0.0, 0.0, "nothing to trim"),
        CutId::SalmonSide => row(
            0.03,
            0.0,
            0.10,
            "pin bones and the belly's edge; common practice",
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn buying_undoes_trimming() {
        for &cut in CutId::ALL {
            let trim = trimming(cut);
            let bought = Mass::from_kilograms(3.3);
            let there_and_back = trim.bought(trim.trimmed(bought));
            assert!((there_and_back - bought).kilograms().abs() < 1e-12, "{cut}");
        }
    }

    #[test]
    fn the_usual_hand_lies_between_the_light_and_the_heavy() {
        for &cut in CutId::ALL {
            let Trimming {
                share, least, most, ..
            } = trimming(cut);
            assert!(
                (0.0..0.5).contains(&most) && least <= share && share <= most,
                "{cut}"
            );
        }
    }
}
