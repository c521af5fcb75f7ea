//! The published times at temperature. A printed row is a floor: between two rows the colder one counts.

use crate::meat::Make;
use crate::units::{Temperature, TimeSpan};

/// A row of a table: at this temperature or above, so many seconds are enough. Zero: at once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// Temperature at the coldest point, °F as printed.
    pub fahrenheit: f64,
    /// Seconds.
    pub seconds: f64,
}

const fn minutes(fahrenheit: f64, minutes: f64) -> Hold {
    Hold {
        fahrenheit,
        seconds: minutes * 60.0,
    }
}

const fn seconds(fahrenheit: f64, seconds: f64) -> Hold {
    Hold {
        fahrenheit,
        seconds,
    }
}

/// Red meat, 7-log column. Source: USDA FSIS, Appendix A, compliance guidelines for meeting lethality performance
/// standards, 1999. No row below 130 °F: nothing counts there.
pub static RED_MEAT: &[Hold] = &[
    minutes(130.0, 121.0),
    minutes(131.0, 97.0),
    minutes(132.0, 77.0),
    minutes(133.0, 62.0),
    minutes(134.0, 47.0),
    minutes(135.0, 37.0),
    minutes(136.0, 32.0),
    minutes(137.0, 24.0),
    minutes(138.0, 19.0),
    minutes(139.0, 15.0),
    minutes(140.0, 12.0),
    minutes(141.0, 10.0),
    minutes(142.0, 8.0),
    minutes(143.0, 6.0),
    minutes(144.0, 5.0),
    minutes(145.0, 4.0),
    seconds(146.0, 182.0),
    seconds(147.0, 144.0),
    seconds(148.0, 115.0),
    seconds(149.0, 91.0),
    seconds(150.0, 72.0),
    seconds(151.0, 58.0),
    seconds(152.0, 46.0),
    seconds(153.0, 37.0),
    seconds(154.0, 29.0),
    seconds(155.0, 23.0),
    seconds(156.0, 19.0),
    seconds(157.0, 15.0),
    seconds(158.0, 0.0),
];

/// Poultry, 7-log, 12 % fat. Source: USDA FSIS, time-temperature tables for cooking ready-to-eat poultry products, 2005,
/// through secondary copies; rows above 144 °F were not all found, so above it only 165 °F counts.
pub static POULTRY: &[Hold] = &[
    seconds(136.0, 4884.0),
    seconds(137.0, 3930.0),
    seconds(138.0, 3174.0),
    seconds(139.0, 2580.0),
    seconds(140.0, 2100.0),
    seconds(141.0, 1722.0),
    seconds(142.0, 1422.0),
    seconds(143.0, 1188.0),
    seconds(144.0, 996.0),
    seconds(165.0, 0.0),
];

/// Ground meat and fish have no table of holds here: only their consumer minimum counts (160 °F, 145 °F; FoodSafety.gov).
pub static GROUND: &[Hold] = &[seconds(160.0, 0.0)];
/// See [`GROUND`].
pub static FISH: &[Hold] = &[seconds(145.0, 0.0)];

/// The table for a make.
#[must_use]
pub fn table(make: Make) -> &'static [Hold] {
    match make {
        Make::WholeMuscle => RED_MEAT,
        Make::Poultry => POULTRY,
        Make::Ground => GROUND,
        Make::Fish => FISH,
    }
}

/// Time that must be held at a temperature; none where no row applies.
#[must_use]
pub fn hold(make: Make, temperature: Temperature) -> Option<TimeSpan> {
    row(table(make), temperature.celsius()).map(|row| TimeSpan::from_seconds(row.seconds))
}

/// The hottest row that a temperature reaches. A millionth of a kelvin is granted to rounding.
fn row(table: &'static [Hold], celsius: f64) -> Option<&'static Hold> {
    let reached = |row: &&Hold| celsius + 1e-6 >= (row.fahrenheit - 32.0) / 1.8;
    table.iter().rev().find(reached)
}

/// Adds up the shares of the required time, at the coldest point, and says when they make a whole.
#[derive(Clone, Debug)]
pub struct Lethality {
    table: &'static [Hold],
    share: f64,
}

impl Lethality {
    /// Nothing yet.
    #[must_use]
    pub fn new(make: Make) -> Self {
        Self {
            table: table(make),
            share: 0.0,
        }
    }

    /// Share of the required time so far; 1 or more is enough.
    #[must_use]
    pub fn share(&self) -> f64 {
        self.share
    }

    /// Adds a while at no less than a temperature.
    pub fn add(&mut self, at_least: Temperature, span: TimeSpan) {
        let Some(row) = row(self.table, at_least.celsius()) else {
            return;
        };
        if row.seconds > 0.0 {
            self.share += span.seconds() / row.seconds;
        } else {
            self.share = self.share.max(1.0);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn add(lethality: &mut Lethality, celsius: f64, minutes: f64) {
        lethality.add(
            Temperature::from_celsius(celsius),
            TimeSpan::from_minutes(minutes),
        );
    }

    #[test]
    fn a_row_is_a_floor() {
        let mut at_the_row = Lethality::new(Make::WholeMuscle);
        add(&mut at_the_row, 60.0, 11.9);
        assert!(at_the_row.share() < 1.0);
        add(&mut at_the_row, 60.0, 0.2);
        assert!(at_the_row.share() > 1.0);
        let mut between = Lethality::new(Make::WholeMuscle);
        add(&mut between, 60.5, 11.9);
        assert!(between.share() < 1.0, "the colder row counts");
        let mut below = Lethality::new(Make::WholeMuscle);
        add(&mut below, 54.0, 600.0);
        assert_eq!(below.share(), 0.0);
        let mut hot = Lethality::new(Make::WholeMuscle);
        add(&mut hot, 70.0, 1e-3);
        assert!(hot.share() >= 1.0);
    }

    #[test]
    fn poultry_has_its_own_table() {
        let mut warm = Lethality::new(Make::Poultry);
        add(&mut warm, 70.0, 15.0);
        assert!(
            warm.share() < 1.0,
            "above 62.2 °C the row of 62.2 °C still counts"
        );
        add(&mut warm, 73.9, 0.0);
        assert!(warm.share() >= 1.0);
    }
}
