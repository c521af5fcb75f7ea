//! Pans: what catches the drip, and what the cooked meat goes into.

use super::counting::whole;
use crate::units::{Area, Length, Mass, Volume};

/// A half-size food pan: 325 × 265 mm (EN 631-1, gastronorm 1/2), 65 mm deep.
const PAN_LENGTH: Length = Length::from_millimetres(325.0);
const PAN_WIDTH: Length = Length::from_millimetres(265.0);

/// What such a pan holds to a finger below the rim. From memory: 3.5 of its 4 litres.
const PAN_HOLDS: Volume = Volume::from_litres(3.5);

/// Weight of a litre of pulled or sliced meat, loosely filled, kg. Common practice: a pan of 3.5 litres takes 2 to 2.5 kg.
const KILOGRAMS_PER_LITRE: f64 = 0.65;

/// Half-size pans under meat that covers this much grate.
#[must_use]
pub fn drip_pans(footprint: Area) -> u32 {
    let pan = Area::from_square_metres(PAN_LENGTH.metres() * PAN_WIDTH.metres());
    whole(footprint / pan)
}

/// Half-size pans for this much cooked meat.
#[must_use]
pub fn serving_pans(cooked: Mass) -> u32 {
    whole(cooked.kilograms() / (KILOGRAMS_PER_LITRE * PAN_HOLDS.litres()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_packer_drips_into_two_pans_and_fills_two() {
        assert_eq!(drip_pans(Area::from_square_inches(173.0)), 2);
        assert_eq!(serving_pans(Mass::from_kilograms(4.2)), 2);
        assert_eq!(serving_pans(Mass::ZERO), 0);
    }
}
