//! Air at the meat over time in one lane: what is set, how the gauge errs, how the fire swings, how the lid was opened.

use super::cooker::Climate;
use super::draw::{Draw, SWING_PERIODS_HOURS};
use super::real::{Real, sine_of_turns};

/// Number of modes of swing.
const MODES: usize = SWING_PERIODS_HOURS.len();

/// The air that a lane is in.
#[derive(Clone, Debug)]
pub(crate) struct Air {
    /// Without swing and openings, °C.
    steady: f64,
    /// Amplitude K, frequency 1/s and phase in turns of each mode; zero outside a cooker.
    swing: [(f64, f64, f64); MODES],
    /// Fall by an opening, K, when, s, and the time in which it comes back, s.
    fall: f64,
    since: f64,
    back: f64,
    /// Air outside, °C, and the share by which walls follow the air inside.
    outside: f64,
    walls: f64,
}

impl Air {
    /// A place at a steady temperature.
    pub(crate) fn steady(celsius: f64, outside: f64) -> Self {
        Self {
            steady: celsius,
            swing: [(0.0, 0.0, 0.0); MODES],
            fall: 0.0,
            since: 0.0,
            back: 1.0,
            outside,
            walls: 1.0,
        }
    }

    /// A cooker set to a temperature.
    pub(crate) fn cooker(set: f64, outside: f64, climate: &Climate, draw: &Draw) -> Self {
        let swing = std::array::from_fn(|k| {
            let mode = &draw.swing[k];
            (
                mode.amplitude.kelvin(),
                1.0 / (3600.0 * SWING_PERIODS_HOURS[k]),
                mode.phase / (2.0 * std::f64::consts::PI),
            )
        });
        Self {
            steady: set + draw.gauge.kelvin(),
            swing,
            fall: 0.0,
            since: 0.0,
            back: 1.0,
            outside: outside + draw.outside.kelvin(),
            walls: climate.walls * draw.walls,
        }
    }

    /// Sets another temperature; swing and openings go on.
    pub(crate) fn set(&mut self, set: f64, draw: &Draw) {
        self.steady = set + draw.gauge.kelvin();
    }

    /// The lid is opened: a share of the air's excess over outside is lost and comes back.
    pub(crate) fn open(&mut self, time: f64, share: f64, back: f64) {
        let now = self.air(time);
        let fallen = self.steady - now;
        self.fall = fallen.max(0.0) + share * (now - self.outside).max(0.0);
        self.since = time;
        self.back = back;
    }

    /// Air at a time, °C.
    pub(crate) fn air(&self, time: f64) -> f64 {
        let mut air = self.steady - self.fall * Real::exp((self.since - time) / self.back);
        for (amplitude, frequency, phase) in self.swing {
            air += amplitude * sine_of_turns(frequency * time + phase);
        }
        // A fire that swings or a gauge that errs does not go below the air outside nor melt the cooker.
        air.clamp(self.outside.min(self.steady), 400.0)
    }

    /// Walls seen by the meat when the air is at a temperature, °C.
    pub(crate) fn walls(&self, air: f64) -> f64 {
        self.outside + self.walls * (air - self.outside)
    }
}
