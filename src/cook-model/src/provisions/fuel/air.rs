//! Dry air as it flows past a wall.

use crate::units::Temperature;

/// Properties of dry air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirProperties {
    /// Thermal conductivity, W/(m K).
    pub conductivity: f64,
    /// Kinematic viscosity, m²/s.
    pub kinematic_viscosity: f64,
    /// Prandtl number.
    pub prandtl: f64,
    /// Coefficient of expansion of an ideal gas, 1/K.
    pub expansion: f64,
}

/// Specific gas constant of dry air, J/(kg K).
const GAS_CONSTANT: f64 = 287.05;

/// Specific heat of dry air and of thin smoke, J/(kg K). From memory: 1,005 at 20 °C to 1,030 at 230 °C.
pub(super) const SPECIFIC_HEAT: f64 = 1015.0;

impl AirProperties {
    /// At a temperature of −40 to 600 °C and a pressure in Pa.
    ///
    /// Viscosity and conductivity by Sutherland's law, density by the ideal gas (constants from White, Viscous Fluid
    /// Flow, from memory).
    #[must_use]
    pub fn at(temperature: Temperature, pascals: f64) -> Self {
        let kelvin = temperature.kelvin();
        let ratio = kelvin / 273.15;
        let growth = ratio * libm::sqrt(ratio);
        let viscosity = 1.716e-5 * growth * (273.15 + 110.6) / (kelvin + 110.6);
        let conductivity = 0.0241 * growth * (273.15 + 194.0) / (kelvin + 194.0);
        let density = pascals / (GAS_CONSTANT * kelvin);
        let warmer = kelvin - 200.0;
        // J/(kg K); a parabola through handbook values from 200 to 600 K, from memory.
        let specific_heat = 1002.5 + 2.75e-4 * warmer * warmer;
        Self {
            conductivity,
            kinematic_viscosity: viscosity / density,
            prandtl: viscosity * specific_heat / conductivity,
            expansion: 1.0 / kelvin,
        }
    }
}
