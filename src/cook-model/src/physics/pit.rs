//! Air at the meat over time in one lane: what is set, how the gauge errs, how the fire swings, how the lid was opened.

use super::cooker::Climate;
use super::draw::{Draw, SWING_PERIODS_HOURS};
use super::real::{Real, sine_of_turns};
use super::scenario::Scenario;

/// Number of modes of swing.
const MODES: usize = SWING_PERIODS_HOURS.len();

/// The air that a lane is in.
#[derive(Clone, Debug)]
pub(crate) struct Air {
    /// Without swing and openings, °C.
    steady: f64,
    /// Amplitude K, frequency 1/s and phase in turns of each mode; zero outside a cooker.
    swing: [(f64, f64, f64); MODES],
    /// When, s, and how far the pit was off what was set, K; straight lines between.
    departures: Vec<(f64, f64)>,
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
            departures: Vec::new(),
            fall: 0.0,
            since: 0.0,
            back: 1.0,
            outside,
            walls: 1.0,
        }
    }

    /// A cooker set to a temperature.
    pub(crate) fn cooker(scenario: &Scenario, climate: &Climate, draw: &Draw) -> Self {
        let set = scenario.pit[0].set.celsius();
        let outside = scenario.surroundings.outside.celsius();
        let departures = scenario
            .departures
            .iter()
            .map(|departure| (departure.after.seconds(), departure.by.kelvin()));
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
            departures: departures.collect(),
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
        let fallen = self.steady + self.departure(time) - now;
        self.fall = fallen.max(0.0) + share * (now - self.outside).max(0.0);
        self.since = time;
        self.back = back;
    }

    /// How far the pit was off what was set, K.
    fn departure(&self, time: f64) -> f64 {
        let next = self.departures.partition_point(|(at, _)| *at <= time);
        let before = next.checked_sub(1).and_then(|at| self.departures.get(at));
        match (before, self.departures.get(next)) {
            (Some((from, a)), Some((to, b))) => a + (b - a) * (time - from) / (to - from),
            _ => 0.0,
        }
    }

    /// Air at a time, °C.
    pub(crate) fn air(&self, time: f64) -> f64 {
        let mut air = self.steady + self.departure(time)
            - self.fall * Real::exp((self.since - time) / self.back);
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meat::CutId;
    use crate::physics::{CookerClass, PitDeparture};
    use crate::units::{Mass, Temperature, TemperatureDifference, TimeSpan};

    #[test]
    fn air_follows_what_was_measured_along_straight_lines() {
        let mass = Mass::from_kilograms(4.0);
        let mut scenario = Scenario::usual(CutId::PorkShoulderButt, mass, CookerClass::Offset);
        scenario.pit[0].set = Temperature::from_celsius(120.0);
        let departures = [(1.0, 0.0), (2.0, -20.0), (4.0, 10.0)];
        scenario.departures = departures
            .map(|(hours, kelvin)| PitDeparture {
                after: TimeSpan::from_hours(hours),
                by: TemperatureDifference::from_kelvin(kelvin),
            })
            .to_vec();
        let air = Air::cooker(&scenario, &scenario.cooker.climate(), &Draw::NOMINAL);
        let at = |hours: f64| air.air(hours * 3600.0);
        for (hours, celsius) in [
            (0.5, 120.0),
            (1.5, 110.0),
            (2.0, 100.0),
            (3.0, 115.0),
            (4.5, 120.0),
        ] {
            let air = at(hours);
            assert!((air - celsius).abs() < 1e-9, "{hours} h: {air}");
        }
    }
}
