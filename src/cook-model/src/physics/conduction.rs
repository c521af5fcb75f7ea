//! The march without water: constant properties, one coordinate, convection at the surface. What it gives is known
//! exactly, so this is how the mesh, the linear system and the steps are checked.

use super::body::Body;
use super::kernel::Kernel;
use super::properties::{CONDUCTIVITY_OF_BONE, HEAT_CAPACITY_OF_BONE};
use super::real::LANES;
use super::{Cover, Draw, ModelError};
use crate::meat::CutId;

/// Excess temperature of the middle over that of the air, as a share of what it was at the start, at the given Fourier
/// numbers (in rising order), for a body whose cross-section grows as r^`exponent` (0 to 2.1) with Biot number `biot`
/// (0.01 to 1000, on the radius) in so many cells (8 to 60).
///
/// # Errors
/// [`ModelError::OutOfRange`] names the first argument that is outside.
pub fn middle_while_cooling(
    exponent: f64,
    biot: f64,
    fourier: &[f64],
    cells: usize,
) -> Result<Vec<f64>, ModelError> {
    const RADIUS: f64 = 0.04;
    const AIR: f64 = 20.0;
    const EXCESS: f64 = 60.0;
    #[expect(clippy::cast_precision_loss, reason = "a count of cells is small")]
    let count = cells as f64;
    ModelError::check("exponent of the cross-section", exponent, 0.0, 2.1, "")?;
    ModelError::check("Biot number", biot, 0.01, 1000.0, "")?;
    ModelError::check("number of cells", count, 8.0, 60.0, "cells")?;
    let composition = CutId::BeefPackerBrisket.cut().composition;
    let body = Body::of_bone(exponent, RADIUS, cells, composition);
    let mut kernel = Kernel::<f64>::new(cells, cells);
    let convection = biot * CONDUCTIVITY_OF_BONE / RADIUS;
    for l in 0..LANES {
        kernel.pieces.set(l, &body, &Draw::NOMINAL, 1, 101_325.0);
        kernel.environment.cover(l, Cover::Bare);
        kernel.environment.emissivity[l] = 0.0;
        kernel.environment.forced[l] = convection;
        kernel.environment.moment(l, AIR, AIR, 0.0);
        kernel.start(l, AIR + EXCESS, 0.0);
    }
    let per_fourier = RADIUS * RADIUS * HEAT_CAPACITY_OF_BONE / CONDUCTIVITY_OF_BONE;
    let (mut time, mut step) = (0.0, 1.0);
    let mut shares = Vec::with_capacity(fourier.len());
    for number in fourier {
        let until = number * per_fourier;
        ModelError::check("Fourier number", *number, time / per_fourier, 100.0, "")?;
        while time < until - 1e-6 {
            let length = f64::min(step, until - time);
            kernel.propose(&[length; LANES], 1.0, |_, _| {});
            let error = kernel.error[0].max(1e-6);
            if error <= 1.0 {
                kernel.accept(&[true; LANES]);
                time += length;
            }
            step = length * (0.9 / libm::cbrt(error)).clamp(0.2, 4.0);
        }
        shares.push((kernel.present.temperature[0][0] - AIR) / EXCESS);
    }
    Ok(shares)
}
