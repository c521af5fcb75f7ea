//! Twelve readings around the expected one, in the person's own degrees.

use crate::format::{TemperatureScale, Units};
use cook_model::units::Temperature;

/// Rungs on a ladder.
pub const RUNGS: usize = 12;

/// One rung.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rung {
    /// The number as it is read, in the person's degrees.
    pub number: f64,
    /// How likely, as a share of the likeliest rung, 0 to 1.
    pub likely: f64,
}

impl Rung {
    /// The temperature.
    #[must_use]
    pub fn temperature(self, units: Units) -> Temperature {
        match units.temperature {
            TemperatureScale::Celsius => Temperature::from_celsius(self.number),
            TemperatureScale::Fahrenheit => Temperature::from_fahrenheit(self.number),
        }
    }
}

fn degrees(temperature: Temperature, units: Units) -> f64 {
    match units.temperature {
        TemperatureScale::Celsius => temperature.celsius(),
        TemperatureScale::Fahrenheit => temperature.fahrenheit(),
    }
}

/// The rungs around what is expected, a step apart, with one chance in ten on either side of the spread. Without a
/// spread every rung is bare.
#[must_use]
pub fn rungs(
    expected: Temperature,
    spread: Option<[Temperature; 2]>,
    step: f64,
    units: Units,
) -> [Rung; RUNGS] {
    let middle = (degrees(expected, units) / step).round() * step;
    let [low, high] = spread
        .unwrap_or([expected; 2])
        .map(|end| degrees(end, units));
    // The 10 and 90 % points of a normal distribution are 2.563 standard deviations apart.
    let deviation = (high - low) / 2.563;
    std::array::from_fn(|rung| {
        let number = (rung as f64 - 5.0).mul_add(step, middle);
        let away = (number - degrees(expected, units)) / deviation.max(step / 2.0);
        Rung {
            number,
            likely: spread.map_or(0.0, |_| libm::exp(-away * away / 2.0)),
        }
    })
}

/// From one rung of a core to the next.
#[must_use]
pub const fn core_step(units: Units) -> f64 {
    match units.temperature {
        TemperatureScale::Celsius => 1.0,
        TemperatureScale::Fahrenheit => 2.0,
    }
}

/// From one rung of a pit to the next.
#[must_use]
pub const fn pit_step(units: Units) -> f64 {
    match units.temperature {
        TemperatureScale::Celsius => 3.0,
        TemperatureScale::Fahrenheit => 5.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_expected_reading_is_on_the_ladder_and_the_fullest() {
        let celsius = Temperature::from_celsius;
        let spread = Some([celsius(66.0), celsius(72.0)]);
        let ladder = rungs(celsius(69.3), spread, 1.0, Units::METRIC);
        assert_eq!(ladder[0].number, 64.0);
        assert_eq!(ladder[5].number, 69.0);
        assert_eq!(ladder[11].number, 75.0);
        let fullest = ladder.iter().map(|rung| rung.likely).fold(0.0, f64::max);
        assert_eq!(ladder[5].likely, fullest);
        assert!(ladder[0].likely < 0.2);
    }

    #[test]
    fn fahrenheit_has_round_numbers_of_its_own() {
        let ladder = rungs(
            Temperature::from_celsius(121.0),
            None,
            5.0,
            Units::CUSTOMARY,
        );
        assert_eq!(ladder[5].number, 250.0);
        assert_eq!(ladder[6].number, 255.0);
        assert_eq!(ladder[6].likely, 0.0);
    }
}
