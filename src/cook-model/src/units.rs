//! Quantities as types: a temperature cannot be added to a weight, nor one temperature to another.
//!
//! Conventions: every quantity is one `f64` in its SI unit (temperature points in °C, a derived SI unit) and is stored
//! as that bare number. No type rounds or clamps; whoever takes a quantity in checks its range. Ordering follows
//! `f64`: a quantity that is not a number compares with nothing.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// A point on the Celsius scale, in °C. Points subtract to a [`TemperatureDifference`]; they do not add.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize, JsonSchema,
)]
#[serde(transparent)]
pub struct Temperature(f64);

impl Temperature {
    /// A point in degrees Celsius.
    #[must_use]
    pub const fn from_celsius(celsius: f64) -> Self {
        Self(celsius)
    }

    /// A point in degrees Fahrenheit.
    #[must_use]
    pub const fn from_fahrenheit(fahrenheit: f64) -> Self {
        Self((fahrenheit - 32.0) / 1.8)
    }

    /// In degrees Celsius.
    #[must_use]
    pub const fn celsius(self) -> f64 {
        self.0
    }

    /// In degrees Fahrenheit.
    #[must_use]
    pub const fn fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }

    /// In kelvin.
    #[must_use]
    pub const fn kelvin(self) -> f64 {
        self.0 + 273.15
    }
}

impl Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference::from_kelvin(self.0 - other.0)
    }
}

impl Add<TemperatureDifference> for Temperature {
    type Output = Self;
    fn add(self, rise: TemperatureDifference) -> Self {
        Self(self.0 + rise.kelvin())
    }
}

impl Sub<TemperatureDifference> for Temperature {
    type Output = Self;
    fn sub(self, fall: TemperatureDifference) -> Self {
        Self(self.0 - fall.kelvin())
    }
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident; $($(#[$unit_doc:meta])* $from:ident, $get:ident = $factor:expr;)+) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize, JsonSchema)]
        #[serde(transparent)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            $(
                $(#[$unit_doc])*
                #[must_use]
                pub const fn $from(value: f64) -> Self {
                    Self(value * $factor)
                }

                $(#[$unit_doc])*
                #[must_use]
                pub const fn $get(self) -> f64 {
                    self.0 / $factor
                }
            )+

            /// The smaller of two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl SubAssign for $name {
            fn sub_assign(&mut self, other: Self) {
                self.0 -= other.0;
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }

        /// How often the one goes into the other.
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(parts: I) -> Self {
                parts.fold(Self::ZERO, Add::add)
            }
        }
    };
}

quantity! {
    /// A rise or fall of temperature, in K.
    TemperatureDifference;
    /// In kelvin.
    from_kelvin, kelvin = 1.0;
    /// In steps of one degree Fahrenheit.
    from_fahrenheit_degrees, fahrenheit_degrees = 1.0 / 1.8;
}

quantity! {
    /// A mass, in kg. What a shop and a cook call weight.
    Mass;
    /// In kilograms.
    from_kilograms, kilograms = 1.0;
    /// In grams.
    from_grams, grams = 0.001;
    /// In avoirdupois pounds (0.45359237 kg, exact by definition).
    from_pounds, pounds = 0.453_592_37;
}

quantity! {
    /// A length, in m.
    Length;
    /// In metres.
    from_metres, metres = 1.0;
    /// In millimetres.
    from_millimetres, millimetres = 0.001;
    /// In inches (25.4 mm, exact by definition).
    from_inches, inches = 0.0254;
}

quantity! {
    /// An area, in m².
    Area;
    /// In square metres.
    from_square_metres, square_metres = 1.0;
    /// In square centimetres.
    from_square_centimetres, square_centimetres = 1.0e-4;
    /// In square inches.
    from_square_inches, square_inches = 6.4516e-4;
}

quantity! {
    /// A volume, in m³.
    Volume;
    /// In cubic metres.
    from_cubic_metres, cubic_metres = 1.0;
    /// In litres.
    from_litres, litres = 0.001;
    /// In millilitres.
    from_millilitres, millilitres = 1.0e-6;
}

quantity! {
    /// An amount of heat, in J.
    Energy;
    /// In joules.
    from_joules, joules = 1.0;
    /// In megajoules.
    from_megajoules, megajoules = 1.0e6;
    /// In kilowatt-hours.
    from_kilowatt_hours, kilowatt_hours = 3.6e6;
}

quantity! {
    /// A rate of heat, in W.
    Power;
    /// In watts.
    from_watts, watts = 1.0;
}

quantity! {
    /// A span of time, in s. Negative spans point backwards.
    TimeSpan;
    /// In seconds.
    from_seconds, seconds = 1.0;
    /// In minutes.
    from_minutes, minutes = 60.0;
    /// In hours.
    from_hours, hours = 3600.0;
}

impl Mul<TimeSpan> for Power {
    type Output = Energy;
    fn mul(self, span: TimeSpan) -> Energy {
        Energy::from_joules(self.watts() * span.seconds())
    }
}

/// A moment in UTC, in whole seconds since 1970-01-01T00:00:00Z without leap seconds.
#[derive(
    Clone,
    Copy,
    Debug,
    Default,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize,
    JsonSchema,
)]
#[serde(transparent)]
pub struct Moment(i64);

impl Moment {
    /// A moment by its seconds since the start of 1970, UTC.
    #[must_use]
    pub const fn from_unix_seconds(seconds: i64) -> Self {
        Self(seconds)
    }

    /// Seconds since the start of 1970, UTC.
    #[must_use]
    pub const fn unix_seconds(self) -> i64 {
        self.0
    }
}

impl Add<TimeSpan> for Moment {
    type Output = Self;
    fn add(self, span: TimeSpan) -> Self {
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a saturating cast to the nearest second"
        )]
        Self(self.0.saturating_add(libm::round(span.seconds()) as i64))
    }
}

impl Sub<TimeSpan> for Moment {
    type Output = Self;
    fn sub(self, span: TimeSpan) -> Self {
        self + -span
    }
}

impl Sub for Moment {
    type Output = TimeSpan;
    fn sub(self, earlier: Self) -> TimeSpan {
        #[expect(
            clippy::cast_precision_loss,
            reason = "seconds between two moments are far below 2^53"
        )]
        TimeSpan::from_seconds(self.0.saturating_sub(earlier.0) as f64)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_agree_at_the_fixed_points() {
        assert_eq!(Temperature::from_fahrenheit(212.0).celsius(), 100.0);
        assert_eq!(Temperature::from_celsius(-40.0).fahrenheit(), -40.0);
        assert!((Temperature::from_fahrenheit(203.0).celsius() - 95.0).abs() < 1e-12);
        assert_eq!(Mass::from_pounds(1.0).grams(), 453.592_37);
        assert_eq!(Length::from_inches(1.0).millimetres(), 25.4);
    }

    #[test]
    fn a_rise_in_fahrenheit_steps_carries_no_offset() {
        let rise = TemperatureDifference::from_fahrenheit_degrees(9.0);
        assert!((rise.kelvin() - 5.0).abs() < 1e-12);
        let point = Temperature::from_celsius(90.0) + rise;
        assert!((point.celsius() - 95.0).abs() < 1e-12);
    }

    #[test]
    fn moments_and_spans_undo_each_other() {
        let serving = Moment::from_unix_seconds(1_789_000_000);
        let earlier = serving - TimeSpan::from_hours(13.5);
        assert_eq!((serving - earlier).hours(), 13.5);
        assert_eq!(earlier + TimeSpan::from_hours(13.5), serving);
    }
}
