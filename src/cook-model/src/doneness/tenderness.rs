//! Tenderness: how fast collagen gives way, by temperature.

use crate::physics::Real;
use crate::units::{Temperature, TimeSpan};

/// Activation energy over the gas constant, K: 73.6 kJ/mol, fitted to five times at temperature that are common
/// practice (from 57 °C for two days to 121 °C for three quarters of an hour; one page).
const ACTIVATION_KELVIN: f64 = 73_600.0 / 8.314;

/// Rate at 90 °C, 1/s: tender in 4.785 h at that temperature (same fit).
const RATE_AT_90: f64 = 1.0 / (4.785 * 3600.0);

/// Rate at a temperature in °C, 1/s.
#[inline(always)]
pub(crate) fn rate<S: Real>(celsius: S) -> S {
    let below = S::of(1.0 / 363.15) - S::of(1.0) / (celsius + S::of(273.15));
    S::of(RATE_AT_90) * (S::of(ACTIVATION_KELVIN) * below).exp()
}

/// Time at one temperature until the integral reaches 1. A cut is tender when the integral reaches its demand.
#[must_use]
pub fn time_to_one(temperature: Temperature) -> TimeSpan {
    TimeSpan::from_seconds(1.0 / rate(temperature.celsius()))
}

/// The probe may lie this far below the target when the demand is met: 8 °F, common practice.
pub const PROBE_MARGIN_KELVIN: f64 = 4.5;
