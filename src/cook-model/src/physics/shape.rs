//! From thickness, width, length and fill to one radial coordinate: a body whose cross-section grows as r^n.

use std::f64::consts::{FRAC_PI_6, PI};

/// A body of one coordinate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// How the cross-section grows with the radius: 0 slab, 1 cylinder, 2 sphere, and in between.
    pub exponent: f64,
    /// Distance from the middle to the surface, m.
    pub radius: f64,
    /// True surface over the surface of the one-coordinate body of the same volume.
    pub surface_ratio: f64,
    /// What the surface fluxes are multiplied by: part of the way from 1 to the surface ratio.
    pub flux_ratio: f64,
    /// Surface, m².
    pub area: f64,
    /// Volume, m³.
    pub volume: f64,
}

impl Shape {
    /// The equivalent of a body with these half dimensions (m, in any order) that fills `fill` of the box around it,
    /// from an ellipsoid (π/6) to a brick (1).
    ///
    /// The equivalent heat transfer dimensionality at infinite Biot number is that of Cleland and Earle and of Lin and
    /// others (ASHRAE Handbook Refrigeration; constants 0.75, 1.01, 1.24 from memory, they give slab, cylinder and
    /// sphere exactly). How it is parted into exponent and radius was fitted here to product solutions of bricks.
    /// The area of an ellipsoid is Thomsen's approximation.
    #[must_use]
    pub fn of(half_dimensions: [f64; 3], fill: f64) -> Self {
        let [l1, l2, l3] = sorted(half_dimensions);
        let (b2, b3) = (l2 / l1, l3 / l1);
        let exponent = side_exponent(b2) + side_exponent(b3);
        let square_of_first_root = 2.467 + 3.0 * exponent + 0.35 * exponent * exponent;
        let roundness = ((1.0 - fill) / (1.0 - FRAC_PI_6)).clamp(0.0, 1.0);
        let (e2, e3) = (side_share(b2), side_share(b3));
        let brick = 0.75 * (1.0 + e2 + e3);
        let ellipsoid = 0.75 + 1.01 * e2 + 1.24 * e3;
        let dimensionality = (1.0 - roundness) * brick + roundness * ellipsoid;
        let radius = l1 * (square_of_first_root / (PI * PI / 3.0 * dimensionality)).sqrt();
        let p = 1.6075;
        let mean = (libm::pow(l1 * l2, p) + libm::pow(l1 * l3, p) + libm::pow(l2 * l3, p)) / 3.0;
        let area_ellipsoid = 4.0 * PI * libm::pow(mean, 1.0 / p);
        let area_brick = 8.0 * (l1 * l2 + l1 * l3 + l2 * l3);
        let area = (1.0 - roundness) * area_brick + roundness * area_ellipsoid;
        let volume = 8.0 * fill * l1 * l2 * l3;
        let surface_ratio = area / volume * radius / (exponent + 1.0);
        Self {
            exponent,
            radius,
            surface_ratio,
            flux_ratio: 1.0 + 0.4 * (surface_ratio - 1.0),
            area,
            volume,
        }
    }
}

/// How much a side that is `b` times as long as the shortest adds to the exponent.
fn side_exponent(b: f64) -> f64 {
    1.04 * libm::exp(-0.56 * libm::pow(b - 1.0, 1.75))
}

/// How much a side that is `b` times as long as the shortest adds to the dimensionality.
fn side_share(b: f64) -> f64 {
    libm::exp(-0.14 * libm::pow(b - 1.0, 2.4)) / (b * b)
}

/// Three lengths in rising order.
pub(crate) fn sorted(mut lengths: [f64; 3]) -> [f64; 3] {
    lengths.sort_by(f64::total_cmp);
    lengths
}
