//! Bark: how long the surface has been dry and hot.

/// Index at which bark holds under a spray, and at which it has set, in h. From an earlier version of the equations; not
/// fitted to these.
pub const FIRM_HOURS: f64 = 1.5;
/// See [`FIRM_HOURS`].
pub const SET_HOURS: f64 = 5.3;

/// Growth of the index, hours an hour: the dry share of the surface, doubling every 10 K, 1 at 75 °C.
#[must_use]
pub fn rate(surface_celsius: f64, wet_share: f64) -> f64 {
    let dry = (1.0 - wet_share).clamp(0.0, 1.0);
    dry * libm::exp2((surface_celsius - 75.0) / 10.0)
}
