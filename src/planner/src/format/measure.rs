//! What a number field measures: its unit, its step and how many decimals it shows, in the person's units.

use super::units::{LengthUnit, MassUnit, TemperatureScale, Units};
use super::{NO_BREAK, number};
use cook_model::provisions::Quantity;
use cook_model::units::{Area, Energy, Length, Mass, Temperature, TemperatureDifference, Volume};

/// A kind of quantity. Values are in the SI unit in which the plan keeps them (temperatures in °C, times in s).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Weight of a piece, kg.
    Mass,
    /// Weight of something small, kg.
    SmallMass,
    /// Thickness, m.
    Thickness,
    /// Core temperature, °C.
    Core,
    /// Air in a cooker, °C.
    Pit,
    /// Air outside, °C.
    Air,
    /// A rise or fall of temperature, K.
    Difference,
    /// Height above the sea, m.
    Altitude,
    /// Room on a grate, m².
    GrateArea,
    /// Wind, m/s.
    Wind,
    /// A share of one, shown in percent.
    Percent,
    /// A small share of one, shown in percent with a decimal.
    FinePercent,
    /// Time, s, shown in minutes.
    Minutes,
    /// Time, s, shown in hours.
    Hours,
    /// Time, s, shown in whole hours, for a field beside one for minutes.
    WholeHours,
    /// Things.
    Count,
    /// Volume of something in a bottle, m³.
    Volume,
    /// Volume of a box, m³.
    LargeVolume,
    /// Length of something from a roll, m.
    RollLength,
    /// Current, J, shown in kWh.
    Current,
    /// Money in the smallest coin, of which so many digits stand behind the point.
    Money(u8),
}

/// How one unit shows a measure.
struct Scale {
    unit: &'static str,
    step: f64,
    decimals: usize,
    show: fn(f64) -> f64,
    keep: fn(f64) -> f64,
}

impl Measure {
    /// The measure in which a weight reads best: small below a kilogram, or a pound.
    #[must_use]
    pub fn for_mass(mass: Mass, units: Units) -> Self {
        let whole = match units.mass {
            MassUnit::Kilograms => mass.kilograms(),
            MassUnit::Pounds => mass.pounds(),
        };
        if whole.abs() < 0.9995 {
            Self::SmallMass
        } else {
            Self::Mass
        }
    }

    /// The measure in which an amount reads best.
    #[must_use]
    pub fn of(quantity: Quantity, units: Units) -> Self {
        match quantity {
            Quantity::Mass(mass) => Self::for_mass(mass, units),
            Quantity::Volume(volume) if volume.litres() < 4.0 => Self::Volume,
            Quantity::Volume(_) => Self::LargeVolume,
            Quantity::Length(_) => Self::RollLength,
            Quantity::Count(_) => Self::Count,
            Quantity::Energy(_) => Self::Current,
        }
    }

    fn scale(self, units: Units) -> Scale {
        const SAME: fn(f64) -> f64 = |value| value;
        let scale = |unit, step, decimals, show, keep| Scale {
            unit,
            step,
            decimals,
            show,
            keep,
        };
        let fahrenheit = units.temperature == TemperatureScale::Fahrenheit;
        let pounds = units.mass == MassUnit::Pounds;
        let inches = units.length == LengthUnit::Inches;
        let to_fahrenheit: fn(f64) -> f64 = |c| Temperature::from_celsius(c).fahrenheit();
        let from_fahrenheit: fn(f64) -> f64 = |f| Temperature::from_fahrenheit(f).celsius();
        match self {
            Self::Mass if pounds => scale(
                "lb",
                0.25,
                2,
                |kg| Mass::from_kilograms(kg).pounds(),
                |lb| Mass::from_pounds(lb).kilograms(),
            ),
            Self::Mass => scale("kg", 0.1, 2, SAME, SAME),
            Self::SmallMass if pounds => scale(
                "oz",
                0.5,
                1,
                |kg| Mass::from_kilograms(kg).pounds() * 16.0,
                |oz| Mass::from_pounds(oz / 16.0).kilograms(),
            ),
            Self::SmallMass => scale(
                "g",
                10.0,
                0,
                |kg| Mass::from_kilograms(kg).grams(),
                |g| Mass::from_grams(g).kilograms(),
            ),
            Self::Thickness if inches => scale(
                "in",
                0.25,
                2,
                |m| Length::from_metres(m).inches(),
                |inch| Length::from_inches(inch).metres(),
            ),
            Self::Thickness => scale("cm", 0.5, 1, |m| m * 100.0, |cm| cm / 100.0),
            Self::Core | Self::Air if fahrenheit => {
                scale("°F", 1.0, 0, to_fahrenheit, from_fahrenheit)
            }
            Self::Core | Self::Air => scale("°C", 1.0, 0, SAME, SAME),
            Self::Pit if fahrenheit => scale("°F", 5.0, 0, to_fahrenheit, from_fahrenheit),
            Self::Pit => scale("°C", 5.0, 0, SAME, SAME),
            Self::Difference if fahrenheit => scale(
                "°F",
                1.0,
                0,
                |k| TemperatureDifference::from_kelvin(k).fahrenheit_degrees(),
                |f| TemperatureDifference::from_fahrenheit_degrees(f).kelvin(),
            ),
            Self::Difference => scale("°C", 1.0, 0, SAME, SAME),
            Self::Altitude if inches => scale(
                "ft",
                100.0,
                0,
                |m| Length::from_metres(m).inches() / 12.0,
                |ft| Length::from_inches(ft * 12.0).metres(),
            ),
            Self::Altitude => scale("m", 50.0, 0, SAME, SAME),
            Self::GrateArea if inches => scale(
                "sq\u{a0}in",
                10.0,
                0,
                |m2| Area::from_square_metres(m2).square_inches(),
                |in2| Area::from_square_inches(in2).square_metres(),
            ),
            Self::GrateArea => scale(
                "cm²",
                50.0,
                0,
                |m2| Area::from_square_metres(m2).square_centimetres(),
                |cm2| Area::from_square_centimetres(cm2).square_metres(),
            ),
            // An hour has 3600 s, a mile 1609.344 m (international, exact by definition).
            Self::Wind if inches => scale(
                "mph",
                1.0,
                0,
                |ms| ms * 3600.0 / 1609.344,
                |mph| mph * 1609.344 / 3600.0,
            ),
            Self::Wind => scale("km/h", 2.0, 0, |ms| ms * 3.6, |kmh| kmh / 3.6),
            Self::Percent => scale("%", 5.0, 0, |share| share * 100.0, |p| p / 100.0),
            Self::FinePercent => scale("%", 0.1, 1, |share| share * 100.0, |p| p / 100.0),
            Self::Minutes => scale("min", 5.0, 0, |s| s / 60.0, |min| min * 60.0),
            Self::Hours => scale("h", 0.5, 2, |s| s / 3600.0, |h| h * 3600.0),
            Self::WholeHours => scale("h", 1.0, 0, |s| s / 3600.0, |h| h * 3600.0),
            Self::Count => scale("", 1.0, 0, SAME, SAME),
            // A US fluid ounce is 29.5735295625 ml (exact by definition).
            Self::Volume if pounds => scale(
                "fl\u{a0}oz",
                1.0,
                0,
                |m3| Volume::from_cubic_metres(m3).millilitres() / 29.573_529_562_5,
                |oz| Volume::from_millilitres(oz * 29.573_529_562_5).cubic_metres(),
            ),
            // A US quart is 0.946352946 l (exact by definition).
            Self::LargeVolume if pounds => scale(
                "qt",
                1.0,
                0,
                |m3| Volume::from_cubic_metres(m3).litres() / 0.946_352_946,
                |qt| Volume::from_litres(qt * 0.946_352_946).cubic_metres(),
            ),
            Self::LargeVolume => scale(
                "l",
                1.0,
                0,
                |m3| Volume::from_cubic_metres(m3).litres(),
                |l| Volume::from_litres(l).cubic_metres(),
            ),
            Self::Volume => scale(
                "ml",
                50.0,
                0,
                |m3| Volume::from_cubic_metres(m3).millilitres(),
                |ml| Volume::from_millilitres(ml).cubic_metres(),
            ),
            Self::RollLength if inches => scale(
                "ft",
                1.0,
                1,
                |m| Length::from_metres(m).inches() / 12.0,
                |ft| Length::from_inches(ft * 12.0).metres(),
            ),
            Self::RollLength => scale("m", 0.5, 1, SAME, SAME),
            Self::Current => scale(
                "kWh",
                1.0,
                1,
                |j| Energy::from_joules(j).kilowatt_hours(),
                |kwh| Energy::from_kilowatt_hours(kwh).joules(),
            ),
            Self::Money(0) => scale("", 10.0, 0, SAME, SAME),
            Self::Money(3) => scale(
                "",
                0.1,
                3,
                |coins| coins / 1000.0,
                |all| (all * 1000.0).round(),
            ),
            Self::Money(_) => scale(
                "",
                0.1,
                2,
                |coins| coins / 100.0,
                |all| (all * 100.0).round(),
            ),
        }
    }

    /// The unit, empty for things that are counted.
    #[must_use]
    pub fn unit(self, units: Units) -> &'static str {
        self.scale(units).unit
    }

    /// The number alone, as shown in a field.
    #[must_use]
    pub fn show(self, kept: f64, units: Units) -> String {
        let scale = self.scale(units);
        number((scale.show)(kept), scale.decimals)
    }

    /// The number as typed, in the unit in which it is kept.
    #[must_use]
    pub fn keep(self, shown: f64, units: Units) -> f64 {
        (self.scale(units).keep)(shown)
    }

    /// The number with its unit, for reading: weights and thicknesses to a tenth.
    #[must_use]
    pub fn say(self, kept: f64, units: Units) -> String {
        let scale = self.scale(units);
        let decimals = match self {
            Self::Mass | Self::Thickness => 1,
            _ => scale.decimals,
        };
        let shown = number((scale.show)(kept), decimals);
        match scale.unit {
            "" => shown,
            unit => format!("{shown}{NO_BREAK}{unit}"),
        }
    }

    /// One step up or down from a value, onto a round number of the person's own unit, and never below zero from
    /// above it.
    #[must_use]
    pub fn stepped(self, kept: f64, up: bool, units: Units) -> f64 {
        let scale = self.scale(units);
        let steps = (scale.show)(kept) / scale.step;
        let near = 1e-6;
        let next = if up {
            (steps + near).floor() + 1.0
        } else {
            (steps - near).ceil() - 1.0
        };
        let next = if steps >= 0.0 && self != Self::Air && self != Self::Altitude {
            next.max(0.0)
        } else {
            next
        };
        (scale.keep)(next * scale.step)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_land_on_round_numbers_of_the_persons_unit() {
        let kg = Measure::Mass.stepped(3.84, true, Units::METRIC);
        assert_eq!(Measure::Mass.show(kg, Units::METRIC), "3.9");
        let pounds = Measure::Mass.stepped(3.84, false, Units::CUSTOMARY);
        assert_eq!(Measure::Mass.show(pounds, Units::CUSTOMARY), "8.25");
        let pit = Temperature::from_fahrenheit(250.0).celsius();
        let hotter = Measure::Pit.stepped(pit, true, Units::CUSTOMARY);
        assert_eq!(Measure::Pit.show(hotter, Units::CUSTOMARY), "255");
        assert_eq!(Measure::Pit.show(hotter, Units::METRIC), "124");
    }

    #[test]
    fn up_and_down_come_back_to_a_round_number() {
        for measure in [
            Measure::Mass,
            Measure::Thickness,
            Measure::Pit,
            Measure::GrateArea,
        ] {
            for units in [Units::METRIC, Units::CUSTOMARY] {
                let round = measure.stepped(0.4, true, units);
                let back = measure.stepped(measure.stepped(round, true, units), false, units);
                assert!((back - round).abs() < 1e-9, "{measure:?}");
            }
        }
    }

    #[test]
    fn counts_and_weights_stop_at_nothing_but_air_goes_below() {
        assert_eq!(Measure::Count.stepped(0.0, false, Units::METRIC), 0.0);
        assert_eq!(Measure::Mass.stepped(0.05, false, Units::METRIC), 0.0);
        assert_eq!(Measure::Air.stepped(0.0, false, Units::METRIC), -1.0);
    }

    #[test]
    fn a_typed_number_comes_back_as_typed() {
        let cases = [
            (Measure::Mass, "8.38"),
            (Measure::SmallMass, "2.8"),
            (Measure::Thickness, "4.25"),
            (Measure::Core, "203"),
            (Measure::Altitude, "5280"),
            (Measure::GrateArea, "628"),
            (Measure::Wind, "7"),
        ];
        for (measure, typed) in cases {
            let value: f64 = typed.parse().expect("a number");
            let kept = measure.keep(value, Units::CUSTOMARY);
            assert_eq!(measure.show(kept, Units::CUSTOMARY), typed);
        }
    }
}
