//! The two-hour clock: food out of the fridge.

use crate::units::{Temperature, TimeSpan};

/// How long food may be out of the fridge and off the heat: 2 h, and 1 h where the air is above 32 °C (90 °F).
///
/// Source: USDA FSIS, basics for handling food safely, read in copies. Air that is not a number counts as hot.
#[must_use]
pub fn out_of_fridge_limit(air: Temperature) -> TimeSpan {
    if air <= Temperature::from_fahrenheit(90.0) {
        TimeSpan::from_hours(2.0)
    } else {
        TimeSpan::from_hours(1.0)
    }
}

/// Time out of the fridge, added up: trimming, salting, rubbing, carrying, and on the table. Time back in the cold gives
/// nothing back.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OutOfFridge {
    share: f64,
    spent: TimeSpan,
}

impl OutOfFridge {
    /// Adds a span in air of a temperature. A span that is not a number counts as endless; a negative one as nothing.
    pub fn add(&mut self, span: TimeSpan, air: Temperature) {
        let span = if span.seconds().is_nan() {
            TimeSpan::from_seconds(f64::INFINITY)
        } else {
            span.max(TimeSpan::ZERO)
        };
        self.spent += span;
        self.share += span / out_of_fridge_limit(air);
    }

    /// Time spent in all.
    #[must_use]
    pub const fn spent(&self) -> TimeSpan {
        self.spent
    }

    /// Whether the limit is passed.
    #[must_use]
    pub fn over(&self) -> bool {
        self.share > 1.0
    }

    /// How long is left in air of this temperature; zero when it is over.
    #[must_use]
    pub fn left(&self, air: Temperature) -> TimeSpan {
        (out_of_fridge_limit(air) * (1.0 - self.share)).max(TimeSpan::ZERO)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_hours_and_one_above_ninety_fahrenheit() {
        let cases = [
            (20.0, 120.0, false),
            (20.0, 121.0, true),
            (32.2, 120.0, false),
            (32.3, 60.0, false),
            (32.3, 61.0, true),
        ];
        for (air, minutes, over) in cases {
            let mut clock = OutOfFridge::default();
            clock.add(
                TimeSpan::from_minutes(minutes),
                Temperature::from_celsius(air),
            );
            assert_eq!(clock.over(), over, "{minutes} min in {air} °C");
        }
    }

    #[test]
    fn spans_add_up() {
        let mut clock = OutOfFridge::default();
        let mild = Temperature::from_celsius(18.0);
        clock.add(TimeSpan::from_minutes(40.0), mild);
        clock.add(TimeSpan::from_minutes(50.0), mild);
        assert_eq!(clock.left(mild).minutes(), 30.0);
        assert_eq!(clock.spent().minutes(), 90.0);
        assert_eq!(clock.left(Temperature::from_celsius(35.0)).minutes(), 15.0);
    }

    #[test]
    fn what_is_not_known_is_too_long() {
        let mut clock = OutOfFridge::default();
        clock.add(
            TimeSpan::from_seconds(f64::NAN),
            Temperature::from_celsius(5.0),
        );
        assert!(clock.over());
        assert_eq!(
            out_of_fridge_limit(Temperature::from_celsius(f64::NAN)).hours(),
            1.0
        );
    }
}
