//! Damp air: saturation, boiling, height, wet bulb.

use super::real::Real;
use crate::units::{Length, Temperature};

/// Heat of evaporation at 0 °C, J/kg, and its fall per K. Linear fit to steam tables, from memory.
pub(crate) const LATENT_HEAT: f64 = 2.5009e6;
pub(crate) const LATENT_HEAT_FALL: f64 = 2361.0;

/// Heat capacity of air, J/kg K, times the Lewis number to the two thirds (0.90 for water vapour in air, from memory).
pub(crate) const AIR_HEAT_LEWIS: f64 = 1006.0 * 0.90;

/// Molar mass of water over that of air.
pub(crate) const MOLAR_RATIO: f64 = 0.622;

/// Gas constant of water vapour, J/kg K.
pub(crate) const VAPOUR_GAS_CONSTANT: f64 = 461.5;

/// Saturation pressure of water in Pa, and d ln p / dT in 1/K, at a temperature in °C.
#[inline(always)]
pub(crate) fn saturation<S: Real>(celsius: S) -> (S, S) {
    // Buck's form (1981, with the constants of 1996): 611.21 exp((18.678 - T/234.5) T / (257.14 + T)).
    let below = S::of(1.0) / (S::of(257.14) + celsius);
    let exponent = (S::of(18.678) - celsius * S::of(1.0 / 234.5)) * celsius * below;
    let slope = (S::of(18.678) - celsius * S::of(2.0 / 234.5) - exponent) * below;
    (S::of(611.21) * exponent.exp(), slope)
}

/// Saturation pressure of water over liquid, Pa. Within 0.2 % of the IAPWS-95 tables from 0 to 110 °C.
///
/// Source: the form of Buck, J. Appl. Meteorology 20 (1981) 1527, with his constants of 1996 (from memory).
#[must_use]
pub fn saturation_pressure(temperature: Temperature) -> f64 {
    let t = temperature.celsius();
    611.21 * libm::exp((18.678 - t / 234.5) * t / (257.14 + t))
}

/// Air pressure at a height above the sea, Pa: the standard atmosphere of ICAO (from memory), −430 to 11,000 m.
#[must_use]
pub fn pressure_at(altitude: Length) -> f64 {
    101_325.0 * libm::pow(1.0 - 2.255_77e-5 * altitude.metres(), 5.255_88)
}

/// Boiling point of water under a pressure in Pa, 3 kPa to 200 kPa.
#[must_use]
pub fn boiling_point(pressure: f64) -> Temperature {
    let mut t = 100.0;
    for _ in 0..30 {
        let (_, slope) = saturation::<f64>(t);
        let saturated = saturation_pressure(Temperature::from_celsius(t));
        t -= libm::log(saturated / pressure) / slope;
    }
    Temperature::from_celsius(t)
}

/// The highest core temperature to aim for at a height: the wanted one, but at least 1 K below the boiling point, which
/// wet meat cannot pass.
#[must_use]
pub fn reachable_target(target: Temperature, altitude: Length) -> Temperature {
    let highest = boiling_point(pressure_at(altitude)).celsius() - 1.0;
    if target.celsius() > highest {
        Temperature::from_celsius(highest)
    } else {
        target
    }
}

/// Partial pressure of water in air of a humidity ratio (kg per kg dry air), Pa.
#[must_use]
pub fn vapour_pressure(humidity_ratio: f64, pressure: f64) -> f64 {
    pressure * humidity_ratio / (MOLAR_RATIO + humidity_ratio)
}

/// Temperature of a wet surface in moving air without radiation, by the same balance as the surface of the meat.
#[must_use]
pub fn wet_bulb(dry: Temperature, humidity_ratio: f64, pressure: f64) -> Temperature {
    let air = vapour_pressure(humidity_ratio, pressure);
    let excess = |t: f64| {
        let surface = saturation_pressure(Temperature::from_celsius(t));
        let between = pressure - 0.5 * (surface.min(0.95 * pressure) + air.min(0.95 * pressure));
        let latent = LATENT_HEAT - LATENT_HEAT_FALL * t;
        latent * MOLAR_RATIO / AIR_HEAT_LEWIS / between * (surface - air) - (dry.celsius() - t)
    };
    let (mut low, mut high) = (-20.0, dry.celsius());
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if excess(middle) > 0.0 {
            high = middle;
        } else {
            low = middle;
        }
    }
    Temperature::from_celsius(0.5 * (low + high))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_march_and_the_public_function_agree() {
        for i in -5..300 {
            let t = f64::from(i);
            let exact = saturation_pressure(Temperature::from_celsius(t));
            let (p, slope) = saturation::<f64>(t);
            assert!((p / exact - 1.0).abs() < 1e-9, "{t}");
            let ahead = saturation_pressure(Temperature::from_celsius(t + 1e-4));
            let behind = saturation_pressure(Temperature::from_celsius(t - 1e-4));
            let numeric = libm::log(ahead / behind) / 2e-4;
            assert!((slope / numeric - 1.0).abs() < 1e-6, "{t}");
        }
    }

    #[test]
    fn a_target_gives_way_to_the_height() {
        let target = Temperature::from_celsius(95.0);
        assert_eq!(reachable_target(target, Length::ZERO), target);
        let high = reachable_target(target, Length::from_metres(1600.0)).celsius();
        assert!((high - 93.65).abs() < 0.1, "{high}");
    }
}
