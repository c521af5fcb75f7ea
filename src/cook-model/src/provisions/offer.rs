//! A piece that the shop has, and whether it can be reckoned with.

use super::shopping::Price;
use super::size::Size;
use super::weights::Weights;
use crate::handover::identity::PieceId;
use crate::meat::CutId;
use crate::plan::{BasisOfWeight, Intact, Order, Piece};
use crate::units::{Length, Mass};
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// What the shop has.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Offer {
    /// The cut: the dish's own, or another instead.
    pub cut: CutId,
    /// How many alike, 1 to 200.
    pub count: u32,
    /// Weight of one as bought. None: reckoned from its bones.
    pub mass: Option<Mass>,
    /// Bones of one, for ribs and rib roasts.
    pub bones: Option<u32>,
    /// Greatest thickness by the ruler.
    pub thickness: Option<Length>,
    /// On the label.
    pub price: Option<Price>,
    /// Frozen.
    pub frozen: bool,
    /// Whether it is intact.
    pub intact: Intact,
}

/// What is done with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SwapWay {
    /// As it is.
    Whole,
    /// Each piece cut in two across its length.
    CutInTwo,
}

/// Which of the planned pieces it stands in for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "for", rename_all = "snake_case")]
pub enum Instead {
    /// All of the dish.
    All,
    /// One of this piece's count, the others stay.
    OneOf {
        /// Which.
        piece: PieceId,
    },
}

/// Why an offer cannot be reckoned with, and what to do.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum OfferError {
    /// Neither weight nor bones.
    #[error("how heavy is it? Enter its weight; for ribs the number of bones will do")]
    NoWeight,
    /// A weight that no piece of this cut has.
    #[error(
        "{kilograms:.2} kg is no weight for one {cut}: enter {least:.2} to {most:.2} kg, and how many there are"
    )]
    Weight {
        /// The cut.
        cut: &'static str,
        /// As entered.
        kilograms: f64,
        /// Least that is taken.
        least: f64,
        /// Most that is taken.
        most: f64,
    },
    /// A piece that is thicker than its weight allows.
    #[error(
        "{entered:.0} mm is too thick for its weight: at most {most:.0} mm; measure again, bones under it included"
    )]
    Thickness {
        /// As entered, mm.
        entered: f64,
        /// Most that the weight allows, mm.
        most: f64,
    },
    /// None, or too many.
    #[error("{0} pieces cannot be planned for; enter 1 to 200")]
    Count(u32),
    /// The dish is not in the plan, or is one of one's own.
    #[error("this dish has no piece of meat to swap; choose a dish with a cut")]
    NoSuchDish,
    /// The piece that it is to stand in for is not in the dish.
    #[error(
        "the piece that it was to stand in for is no longer planned; choose again what it stands in for"
    )]
    NoSuchPiece,
}

/// Weight for each bone as bought. Common practice; none for cuts that are not counted by bones.
#[must_use]
pub const fn mass_per_bone(cut: CutId) -> Option<Mass> {
    let grams = match cut {
        CutId::BeefPlateShortRibs => 570.0,
        CutId::BeefChuckShortRibs => 450.0,
        CutId::BeefBackRibs => 230.0,
        CutId::BeefRibRoast => 1100.0,
        CutId::PorkSpareRibs => 125.0,
        CutId::PorkStLouisRibs => 100.0,
        CutId::PorkBackRibs => 80.0,
        _ => return None,
    };
    Some(Mass::from_grams(grams))
}

impl Offer {
    /// Weight of one as bought, checked.
    ///
    /// # Errors
    /// If anything about the offer cannot be reckoned with.
    pub fn checked(&self) -> Result<Mass, OfferError> {
        if !(1..=200).contains(&self.count) {
            return Err(OfferError::Count(self.count));
        }
        let by_bones = || Some(mass_per_bone(self.cut)? * f64::from(self.bones?));
        let mass = self.mass.or_else(by_bones).ok_or(OfferError::NoWeight)?;
        let entry = self.cut.cut();
        // Half the usual least to twice the usual most: anything else is a slip of the finger.
        let (least, most) = (entry.usual_mass.0 * 0.5, entry.usual_mass.1 * 2.0);
        if !(mass >= least && mass <= most) {
            return Err(OfferError::Weight {
                cut: entry.name,
                kilograms: mass.kilograms(),
                least: least.kilograms(),
                most: most.kilograms(),
            });
        }
        if let Some(thickness) = self.thickness {
            let usual = Size::of(self.cut, Weights::from_bought(self.cut, mass).trimmed, None);
            // A piece is a cube at the thickest.
            let cube = libm::cbrt(usual.thickness.metres() * usual.footprint().square_metres());
            let most = Length::from_metres(cube) + usual.bone;
            if !(thickness > usual.bone && thickness <= most) {
                return Err(OfferError::Thickness {
                    entered: thickness.millimetres(),
                    most: most.millimetres(),
                });
            }
        }
        Ok(mass)
    }

    pub(super) fn piece(&self, mass: Mass, way: SwapWay) -> Piece {
        let whole = Piece {
            order: Order::default(),
            count: self.count,
            mass,
            weighed: BasisOfWeight::Bought,
            thickness: self.thickness,
            intact: self.intact,
            frozen: self.frozen,
        };
        match way {
            SwapWay::Whole => whole,
            SwapWay::CutInTwo => {
                let size = Size::of_one(self.cut, &whole);
                // Half as long: where that is the shortest side now, it is the thickness.
                let half = size.length / 2.0;
                let thickness = size.thickness.min(half) + size.bone;
                Piece {
                    count: self.count.saturating_mul(2),
                    mass: mass / 2.0,
                    thickness: Some(thickness),
                    ..whole
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn offer(kilograms: f64) -> Offer {
        Offer {
            cut: CutId::PorkShoulderButt,
            count: 1,
            mass: Some(Mass::from_kilograms(kilograms)),
            bones: None,
            thickness: None,
            price: None,
            frozen: false,
            intact: Intact::Unknown,
        }
    }

    #[test]
    fn a_slip_of_the_finger_is_asked_about() {
        assert!(offer(4.4).checked().is_ok());
        for slip in [0.0, 0.44, 44.0, f64::NAN] {
            assert!(
                matches!(offer(slip).checked(), Err(OfferError::Weight { .. })),
                "{slip}"
            );
        }
        let thick = Offer {
            thickness: Some(Length::from_millimetres(400.0)),
            ..offer(4.4)
        };
        assert!(matches!(thick.checked(), Err(OfferError::Thickness { .. })));
        let none = Offer {
            mass: None,
            ..offer(4.4)
        };
        assert_eq!(none.checked(), Err(OfferError::NoWeight));
        let nothing = Offer {
            count: 0,
            ..offer(4.4)
        };
        assert_eq!(nothing.checked(), Err(OfferError::Count(0)));
    }

    #[test]
    fn ribs_go_by_their_bones() {
        let plate = Offer {
            cut: CutId::BeefPlateShortRibs,
            mass: None,
            bones: Some(4),
            ..offer(0.0)
        };
        assert!((plate.checked().expect("a weight").kilograms() - 2.28).abs() < 1e-9);
    }

    #[test]
    fn halves_weigh_as_much_together_and_are_never_thicker() {
        let whole = offer(4.4).piece(Mass::from_kilograms(4.4), SwapWay::Whole);
        let halves = offer(4.4).piece(Mass::from_kilograms(4.4), SwapWay::CutInTwo);
        assert_eq!(halves.count, 2);
        assert_eq!(halves.mass * 2.0, whole.mass);
        let size = Size::of_one(CutId::PorkShoulderButt, &whole);
        assert!(halves.thickness.expect("one") <= size.thickness);
    }
}
