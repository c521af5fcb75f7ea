//! The box: room and hot water for the hold, ice for what must stay cold and for what must get cold.

use super::size::Size;
use crate::units::{Mass, Temperature, TimeSpan, Volume};
use serde::{Deserialize, Serialize};

/// Heat of melting of ice, J/kg, and specific heat of water, J/(kg K) (handbook values).
const MELTING: f64 = 334_000.0;
const WATER: f64 = 4186.0;

/// Heat that a closed box lets in, W/K: a hard box of 40 to 60 litres, its lid opened now and then. Set by hand.
const BOX_LEAK: f64 = 1.0;

/// A box for hot pieces.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct HotBox {
    /// Room inside, towels included.
    pub room: Volume,
    /// Hot water to warm it with beforehand; poured out again.
    pub hot_water: Volume,
}

/// Room for wrapped pieces that wait in a box: the boxes that enclose them, and half as much again for towels. Hot water
/// by common practice: 4 litres, or a tenth of the room if that is more.
#[must_use]
pub fn hot_box(pieces: &[(Size, u32)]) -> HotBox {
    let enclosed: f64 = pieces
        .iter()
        .map(|(size, count)| {
            let height = size.thickness + size.bone;
            height.metres() * size.footprint().square_metres() * f64::from(*count)
        })
        .sum();
    let room = Volume::from_cubic_metres(enclosed * 1.5);
    let hot_water = if room > Volume::ZERO {
        (room * 0.1).max(Volume::from_litres(4.0))
    } else {
        Volume::ZERO
    };
    HotBox { room, hot_water }
}

/// Ice that keeps a box of raw food cold for so long: all that leaks in melts it.
#[must_use]
pub fn ice_to_keep_cold(lasts: TimeSpan, outside: Temperature) -> Mass {
    let above = (outside.celsius() - 2.0).max(0.0);
    Mass::from_kilograms(BOX_LEAK * above * lasts.seconds().max(0.0) / MELTING)
}

/// Ice for a bath that takes cooked leftovers from 57 °C to 5 °C: what they give off melts it and warms the melt to
/// 5 °C, and half as much again is lost to pan and air (set by hand). Specific heat of meat 3.3 kJ/(kg K).
#[must_use]
pub fn ice_to_chill(leftovers: Mass) -> Mass {
    let given_off = leftovers.kilograms() * 3300.0 * (57.0 - 5.0);
    Mass::from_kilograms(1.5 * given_off / (MELTING + 5.0 * WATER))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meat::CutId;

    #[test]
    fn two_butts_want_a_box_of_the_usual_size() {
        let butt = Size::of(CutId::PorkShoulderButt, Mass::from_kilograms(3.6), None);
        let litres = hot_box(&[(butt, 2)]).room.litres();
        assert!((12.0..30.0).contains(&litres), "{litres}");
        assert_eq!(hot_box(&[]).hot_water, Volume::ZERO);
    }

    #[test]
    fn a_bag_of_ice_keeps_a_box_for_a_summer_day() {
        // Common practice: about 2 kg for a day trip of 8 h at 30 °C.
        let ice = ice_to_keep_cold(TimeSpan::from_hours(8.0), Temperature::from_celsius(30.0));
        assert!((1.5..4.0).contains(&ice.kilograms()), "{ice:?}");
        assert_eq!(
            ice_to_keep_cold(TimeSpan::from_hours(8.0), Temperature::from_celsius(-5.0)),
            Mass::ZERO
        );
    }
}
