//! Paper and foil: how much of a roll a piece takes, and whether the roll is wide enough.

use super::size::Size;
use crate::plan::Cover;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// A roll, and how it is used.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Roll {
    /// Width.
    pub width: Length,
    /// Times around the piece.
    pub turns: f64,
}

impl Roll {
    /// A usual roll. Common practice: butcher paper 61 cm (24 in) wide, twice around; foil 45 cm (18 in) wide, twice
    /// around because one layer tears on a bone.
    #[must_use]
    pub const fn usual(cover: Cover) -> Self {
        match cover {
            Cover::Paper => Self {
                width: Length::from_inches(24.0),
                turns: 2.0,
            },
            Cover::Foil => Self {
                width: Length::from_inches(18.0),
                turns: 2.0,
            },
        }
    }
}

/// How a piece lies on the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Lie {
    /// Its length across the roll, rolled over its width.
    Across,
    /// Its length along the roll, rolled over end by end.
    Along,
    /// The roll is too narrow for one sheet: two, side by side, overlapping.
    TwoSheets,
    /// Too narrow even for two: a wider roll is wanted.
    TooNarrow,
}

/// What a piece takes of a roll.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct WrapNeed {
    /// How it lies.
    pub lie: Lie,
    /// Of the roll, for one piece, all sheets.
    pub length: Length,
    /// The narrowest roll on which one sheet does.
    pub narrowest: Length,
}

/// Folded over at each end, beyond half the thickness. Common practice: a hand's breadth over the edge.
const FOLD: Length = Length::from_millimetres(50.0);

/// What is left over where the last turn closes. Common practice: a forearm, so that the seam lies underneath.
const TAIL: Length = Length::from_millimetres(300.0);

/// Overlap where two sheets lie side by side.
const OVERLAP: Length = Length::from_millimetres(100.0);

/// What one piece takes.
#[must_use]
pub fn wrap_need(size: &Size, roll: Roll) -> WrapNeed {
    let height = size.thickness + size.bone;
    let girth = |side: Length| (side + height) * 2.0;
    let sheet = |side: Length| girth(side) * roll.turns + TAIL;
    let cover = |side: Length| side + height + FOLD * 2.0;
    let (across, along) = (cover(size.length), cover(size.width));
    let narrowest = across.min(along);
    let (lie, length) = if roll.width >= across {
        (Lie::Across, sheet(size.width))
    } else if roll.width >= along {
        (Lie::Along, sheet(size.length))
    } else if roll.width * 2.0 - OVERLAP >= across {
        (Lie::TwoSheets, sheet(size.width) * 2.0)
    } else if roll.width * 2.0 - OVERLAP >= along {
        (Lie::TwoSheets, sheet(size.length) * 2.0)
    } else {
        (
            Lie::TooNarrow,
            sheet(size.width) * libm::ceil(across / roll.width),
        )
    };
    WrapNeed {
        lie,
        length,
        narrowest,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meat::CutId;
    use crate::units::Mass;

    fn packer() -> Size {
        Size::of(CutId::BeefPackerBrisket, Mass::from_kilograms(6.0), None)
    }

    fn on(centimetres: f64) -> WrapNeed {
        let roll = Roll {
            width: Length::from_metres(centimetres / 100.0),
            turns: 2.0,
        };
        wrap_need(&packer(), roll)
    }

    #[test]
    fn a_packer_fits_a_wide_roll_and_wants_two_sheets_of_a_narrow_one() {
        assert_eq!(on(61.0).lie, Lie::Across);
        assert_eq!(on(46.0).lie, Lie::Along);
        assert_eq!(on(40.0).lie, Lie::TwoSheets);
        assert_eq!(on(20.0).lie, Lie::TooNarrow);
        assert!(on(61.0).length < on(40.0).length);
    }

    #[test]
    fn at_the_narrowest_width_one_sheet_just_does() {
        let narrowest = on(61.0).narrowest.metres() * 100.0;
        assert!(matches!(on(narrowest + 0.01).lie, Lie::Across | Lie::Along));
        assert!(matches!(
            on(narrowest - 0.01).lie,
            Lie::TwoSheets | Lie::TooNarrow
        ));
    }
}
