//! How the march is made.

use super::ModelError;
use crate::units::TimeSpan;

/// How finely the march is made and what it writes down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settings {
    /// Cells from the middle to the surface. 8 to 60.
    pub cells: usize,
    /// Relative size of the error that a step may make: 1 for the usual one; 0.001 to 100.
    pub tolerance: f64,
    /// Time between two samples. 1 min to 2 h.
    pub sample_every: TimeSpan,
    /// Longest cook followed; a member that is not done by then has no ready time. 1 to 72 h.
    pub limit: TimeSpan,
    /// Keep the books of heat and water, for tests: costs a little time.
    pub audit: bool,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            cells: 18,
            tolerance: 1.0,
            sample_every: TimeSpan::from_minutes(10.0),
            limit: TimeSpan::from_hours(36.0),
            audit: false,
        }
    }
}

impl Settings {
    /// Checks every field.
    ///
    /// # Errors
    /// [`ModelError::OutOfRange`] names the first field that is outside.
    pub fn check(&self) -> Result<(), ModelError> {
        #[expect(clippy::cast_precision_loss, reason = "a count of cells is small")]
        let cells = self.cells as f64;
        let spacing = self.sample_every.minutes();
        ModelError::check("number of cells", cells, 8.0, 60.0, "cells")?;
        ModelError::check("step tolerance", self.tolerance, 0.001, 100.0, "of usual")?;
        ModelError::check("sample spacing", spacing, 1.0, 120.0, "min")?;
        ModelError::check("longest cook", self.limit.hours(), 1.0, 72.0, "h")
    }
}
