//! What the meat takes out of the fire.

use crate::units::{Energy, Mass, Temperature};

/// Heat that a piece takes from fridge to finish: it is warmed, and what it loses as water is turned to steam.
///
/// Specific heat 3.3 kJ/(kg K), between lean and fat (Choi and Okos); 2.4 MJ for each kilogram of water, nine tenths of
/// the loss being water that evaporates (set by hand: the rest drips or is fat).
#[must_use]
pub fn meat_heat(trimmed: Mass, loss: f64, from: Temperature, to: Temperature) -> Energy {
    let warmed = trimmed.kilograms() * 3300.0 * (to - from).kelvin();
    let steamed = trimmed.kilograms() * loss * 0.9 * 2.4e6;
    Energy::from_joules(warmed + steamed)
}
