//! How one member of an ensemble differs from what was told.

use super::ModelError;
use crate::units::TemperatureDifference;

/// Periods of the modes of pit swing. Faster swings do not reach the meat: they average out at its surface.
pub const SWING_PERIODS_HOURS: [f64; 3] = [6.0, 2.0, 0.75];

/// One mode of pit swing: amplitude × sin(2π t / period + phase).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SwingMode {
    /// Amplitude, 0 to 40 K.
    pub amplitude: TemperatureDifference,
    /// Phase when the piece goes on, in rad.
    pub phase: f64,
}

/// One member's departures from the nominal values. [`Draw::NOMINAL`] departs in nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Draw {
    /// Multiplies the thickness; width and length give way so that the weight is kept. 0.3 to 3.
    pub thickness: f64,
    /// Multiplies the mobility of free water. 0.05 to 20.
    pub free_water: f64,
    /// Multiplies the mobility of vapour in dry crust. 0.05 to 20.
    pub crust_vapour: f64,
    /// Added to the water that fully heated meat holds, kg per kg dry lean. −0.6 to 0.6.
    pub water_holding: f64,
    /// Multiplies the convective heat transfer. 0.2 to 5.
    pub heat_transfer: f64,
    /// Multiplies the share of the surface that gives off water; the product is held at 1. 0.2 to 5.
    pub evaporating_share: f64,
    /// Multiplies how easily vapour passes through paper. 0.01 to 100.
    pub paper: f64,
    /// Added to the mass fraction of fat; water and protein give way in proportion. −0.15 to 0.15.
    pub fat: f64,
    /// Multiplies the exponent by which lost volume shortens the thickness. 0.1 to 3.
    pub shrink: f64,
    /// Multiplies the humidity of the cooker's own air. 0.1 to 10.
    pub humidity: f64,
    /// Multiplies how far the cooker's walls are above the air outside, relative to the cooker's air. 0.5 to 1.5.
    pub walls: f64,
    /// Air at the meat above what the gauge says. −60 to 60 K.
    pub gauge: TemperatureDifference,
    /// Air outside above what was told. −30 to 30 K.
    pub outside: TemperatureDifference,
    /// Pit swing, one mode for each of [`SWING_PERIODS_HOURS`].
    pub swing: [SwingMode; SWING_PERIODS_HOURS.len()],
    /// Place of the probe off the coldest point, as a fraction of the way to the surface. 0 to 0.9.
    pub probe: f64,
    /// Multiplies the tenderness that the cut demands. 0.1 to 10.
    pub tenderness: f64,
}

impl Draw {
    /// Everything as told.
    pub const NOMINAL: Self = Self {
        thickness: 1.0,
        free_water: 1.0,
        crust_vapour: 1.0,
        water_holding: 0.0,
        heat_transfer: 1.0,
        evaporating_share: 1.0,
        paper: 1.0,
        fat: 0.0,
        shrink: 1.0,
        humidity: 1.0,
        walls: 1.0,
        gauge: TemperatureDifference::ZERO,
        outside: TemperatureDifference::ZERO,
        swing: [SwingMode {
            amplitude: TemperatureDifference::ZERO,
            phase: 0.0,
        }; SWING_PERIODS_HOURS.len()],
        probe: 0.0,
        tenderness: 1.0,
    };
}

impl Default for Draw {
    fn default() -> Self {
        Self::NOMINAL
    }
}

impl Draw {
    /// Checks every departure.
    ///
    /// # Errors
    /// [`ModelError::OutOfRange`] names the first that is outside.
    pub fn check(&self) -> Result<(), ModelError> {
        let times = [
            ("thickness factor", self.thickness, 0.3, 3.0),
            ("factor of free water", self.free_water, 0.05, 20.0),
            ("factor of crust vapour", self.crust_vapour, 0.05, 20.0),
            ("factor of heat transfer", self.heat_transfer, 0.2, 5.0),
            (
                "factor of evaporating share",
                self.evaporating_share,
                0.2,
                5.0,
            ),
            ("factor of paper", self.paper, 0.01, 100.0),
            ("factor of shrinking", self.shrink, 0.1, 3.0),
            ("factor of humidity", self.humidity, 0.1, 10.0),
            ("factor of walls", self.walls, 0.5, 1.5),
            ("factor of tenderness", self.tenderness, 0.1, 10.0),
        ];
        for (quantity, value, low, high) in times {
            ModelError::check(quantity, value, low, high, "times")?;
        }
        ModelError::check("water holding", self.water_holding, -0.6, 0.6, "kg/kg")?;
        ModelError::check("fat", self.fat, -0.15, 0.15, "kg/kg")?;
        ModelError::check("gauge offset", self.gauge.kelvin(), -60.0, 60.0, "K")?;
        ModelError::check("outside air", self.outside.kelvin(), -30.0, 30.0, "K")?;
        ModelError::check("place of the probe", self.probe, 0.0, 0.9, "of the way")?;
        for mode in self.swing {
            ModelError::check("pit swing", mode.amplitude.kelvin(), 0.0, 40.0, "K")?;
            ModelError::check("phase of pit swing", mode.phase, -100.0, 100.0, "rad")?;
        }
        Ok(())
    }
}
