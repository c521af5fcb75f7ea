//! Correlations for heat carried off by air, as Nusselt numbers and coefficients in W/(m² K).

use super::air::AirProperties;

fn shape_factor(constant: f64, prandtl: f64, outer: f64) -> f64 {
    libm::pow(1.0 + libm::pow(constant / prandtl, 9.0 / 16.0), outer)
}

/// Still air on a vertical plate, by its height: Nusselt number for a Rayleigh number up to 10¹².
///
/// Source: Churchill and Chu 1975, Int. J. Heat Mass Transfer 18:1323.
#[must_use]
pub fn vertical_plate(rayleigh: f64, prandtl: f64) -> f64 {
    let root =
        0.825 + 0.387 * libm::pow(rayleigh, 1.0 / 6.0) / shape_factor(0.492, prandtl, 8.0 / 27.0);
    root * root
}

/// Still air around a lying cylinder, by its diameter: Nusselt number for a Rayleigh number up to 10¹².
///
/// Source: Churchill and Chu 1975, Int. J. Heat Mass Transfer 18:1049.
#[must_use]
pub fn horizontal_cylinder(rayleigh: f64, prandtl: f64) -> f64 {
    let root =
        0.60 + 0.387 * libm::pow(rayleigh, 1.0 / 6.0) / shape_factor(0.559, prandtl, 8.0 / 27.0);
    root * root
}

/// Still air around a ball, by its diameter: Nusselt number, laminar and turbulent.
///
/// Source: Churchill 1983, Heat Exchanger Design Handbook, 2.5.7.
#[must_use]
pub fn sphere(rayleigh: f64, prandtl: f64) -> f64 {
    let laminar = 0.589 * libm::pow(rayleigh, 0.25) / shape_factor(0.469, prandtl, 4.0 / 9.0);
    let turbulent = 1.0 + 7.44e-8 * rayleigh / shape_factor(0.469, prandtl, 16.0 / 9.0);
    2.0 + laminar * libm::pow(turbulent, 1.0 / 12.0)
}

/// Wind across a cylinder, by its diameter: Nusselt number where Reynolds times Prandtl is above 0.2.
///
/// Source: Churchill and Bernstein 1977, J. Heat Transfer 99:300.
#[must_use]
pub fn crossflow_cylinder(reynolds: f64, prandtl: f64) -> f64 {
    let laminar = 0.62 * libm::sqrt(reynolds) * libm::cbrt(prandtl)
        / libm::pow(1.0 + libm::pow(0.4 / prandtl, 2.0 / 3.0), 0.25);
    let turbulent = libm::pow(1.0 + libm::pow(reynolds / 282_000.0, 5.0 / 8.0), 0.8);
    0.3 + laminar * turbulent
}

/// Still air and wind together: the cube root of the sum of the cubes.
///
/// Source: the usual combination, Incropera and DeWitt, section 9.9 (from memory).
#[must_use]
pub fn mixed_convection(still: f64, wind: f64) -> f64 {
    libm::cbrt(still * still * still + wind * wind * wind)
}

/// Rayleigh number of air over a length in m, for a difference in K.
pub(super) fn rayleigh(air: AirProperties, length: f64, difference: f64) -> f64 {
    const GRAVITY: f64 = 9.806_65;
    let grashof = GRAVITY * air.expansion * difference * length * length * length
        / (air.kinematic_viscosity * air.kinematic_viscosity);
    grashof * air.prandtl
}
