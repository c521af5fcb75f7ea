//! Time at temperature by the printed tables.
//!
//! A table is read as it is printed: a row counts while the coldest point is at or above its temperature, on either of
//! the scales that it is printed in, and there is no credit between rows, below the first, or for a rate fitted through
//! them. A piece has met the table when it has spent the printed time of some row at or above that row. The integral of
//! time over the printed time goes along with it; it can only run ahead of that, never be the reason to stop sooner.

use crate::units::{Temperature, TimeSpan};

/// One row of a printed table: at or above this temperature, for so long.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PrintedRow {
    /// Printed, °F.
    pub fahrenheit: f64,
    /// Printed, °C to the tenth.
    pub celsius: f64,
    /// Printed time, s. Zero: at once.
    pub seconds: f64,
}

impl PrintedRow {
    /// Whether a temperature counts for this row: at or above it on one of its two printed scales.
    #[must_use]
    pub fn counts(&self, temperature: Temperature) -> bool {
        temperature.celsius() >= self.threshold()
    }

    fn threshold(&self) -> f64 {
        // 145 °F is 62.78 °C and is printed as 62.8 °C; 130 °F is 54.44 °C and is printed as 54.4 °C.
        let exact = Temperature::from_fahrenheit(self.fahrenheit).celsius();
        if exact < self.celsius {
            exact
        } else {
            self.celsius
        }
    }
}

/// The tables that are used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LethalityTable {
    /// Red meat: the 7-log column.
    ///
    /// Source: USDA FSIS, Appendix A (1999), read in a whole copy at rhosey.com/usda_cooking_guideline.htm.
    RedMeat,
    /// Poultry: the 7-log column for chicken of 12 % fat up to 144 °F; above that 165 °F, at once.
    ///
    /// Source: USDA FSIS, time-temperature tables for ready-to-eat poultry (2005), read in printed copies of part of
    /// it; 165 °F by the consumer chart of FoodSafety.gov.
    Poultry,
}

const fn row(fahrenheit: f64, celsius: f64, seconds: f64) -> PrintedRow {
    PrintedRow {
        fahrenheit,
        celsius,
        seconds,
    }
}

static RED_MEAT: [PrintedRow; 31] = [
    row(130.0, 54.4, 7260.0),
    row(131.0, 55.0, 5820.0),
    row(132.0, 55.6, 4620.0),
    row(133.0, 56.1, 3720.0),
    row(134.0, 56.7, 2820.0),
    row(135.0, 57.2, 2220.0),
    row(136.0, 57.8, 1920.0),
    row(137.0, 58.3, 1440.0),
    row(138.0, 58.9, 1140.0),
    row(139.0, 59.4, 900.0),
    row(140.0, 60.0, 720.0),
    row(141.0, 60.6, 600.0),
    row(142.0, 61.1, 480.0),
    row(143.0, 61.7, 360.0),
    row(144.0, 62.2, 300.0),
    row(145.0, 62.8, 240.0),
    row(146.0, 63.3, 182.0),
    row(147.0, 63.9, 144.0),
    row(148.0, 64.4, 115.0),
    row(149.0, 65.0, 91.0),
    row(150.0, 65.6, 72.0),
    row(151.0, 66.1, 58.0),
    row(152.0, 66.7, 46.0),
    row(153.0, 67.2, 37.0),
    row(154.0, 67.8, 29.0),
    row(155.0, 68.3, 23.0),
    row(156.0, 68.9, 19.0),
    row(157.0, 69.4, 15.0),
    row(158.0, 70.0, 0.0),
    row(159.0, 70.6, 0.0),
    row(160.0, 71.1, 0.0),
];

static POULTRY: [PrintedRow; 10] = [
    row(136.0, 57.8, 4884.0),
    row(137.0, 58.3, 3930.0),
    row(138.0, 58.9, 3174.0),
    row(139.0, 59.4, 2580.0),
    row(140.0, 60.0, 2100.0),
    row(141.0, 60.6, 1722.0),
    row(142.0, 61.1, 1422.0),
    row(143.0, 61.7, 1188.0),
    row(144.0, 62.2, 996.0),
    row(165.0, 73.9, 0.0),
];

impl LethalityTable {
    /// Its rows, from cold to hot.
    #[must_use]
    pub fn rows(self) -> &'static [PrintedRow] {
        match self {
            Self::RedMeat => &RED_MEAT,
            Self::Poultry => &POULTRY,
        }
    }

    /// The printed time at a temperature: that of the hottest row that it reaches. None below the first row: no time
    /// there is long enough.
    #[must_use]
    pub fn time_at(self, temperature: Temperature) -> Option<TimeSpan> {
        let reached = self
            .rows()
            .iter()
            .rev()
            .find(|row| row.counts(temperature))?;
        Some(TimeSpan::from_seconds(reached.seconds))
    }
}

/// The longest of the tables.
const MOST_ROWS: usize = 31;

/// How far the coldest point of a piece has come by a table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dwell {
    table: LethalityTable,
    at_or_above: [f64; MOST_ROWS],
    integral: f64,
    met: bool,
}

impl Dwell {
    /// Nothing yet.
    #[must_use]
    pub const fn new(table: LethalityTable) -> Self {
        Self {
            table,
            at_or_above: [0.0; MOST_ROWS],
            integral: 0.0,
            met: false,
        }
    }

    /// Adds a span in which the coldest point went from one temperature to another. The cooler end counts for the whole
    /// span. A span that falls below the first row starts the reckoning anew, unless the table was met before; one that
    /// is not longer than zero, or has a temperature that is not a number, changes nothing but for the latter's new
    /// start.
    pub fn add(&mut self, span: TimeSpan, from: Temperature, to: Temperature) {
        if self.met {
            return;
        }
        let cooler = if from <= to { from } else { to };
        let rows = self.table.rows();
        if from.celsius().is_nan() || to.celsius().is_nan() || !rows[0].counts(cooler) {
            self.at_or_above = [0.0; MOST_ROWS];
            self.integral = 0.0;
        } else {
            let seconds = if span > TimeSpan::ZERO {
                span.seconds()
            } else {
                0.0
            };
            for (row, spent) in rows.iter().zip(&mut self.at_or_above) {
                if row.counts(cooler) {
                    *spent += seconds;
                    self.met |= *spent >= row.seconds;
                }
            }
            if let Some(printed) = self.table.time_at(cooler)
                && printed > TimeSpan::ZERO
            {
                self.integral += seconds / printed.seconds();
            }
            // The hottest rows ask for no time: to have been there is enough.
            let hotter = if from <= to { to } else { from };
            self.met |= self.table.time_at(hotter) == Some(TimeSpan::ZERO);
        }
    }

    /// Whether the printed time of a row has been spent at or above it. Once met, it stays met.
    #[must_use]
    pub const fn met(&self) -> bool {
        self.met
    }

    /// The integral of time over printed time, 1 where it would be enough by itself; for showing how far it has come.
    /// 1 when met.
    #[must_use]
    pub fn share(&self) -> f64 {
        if self.met {
            1.0
        } else {
            self.integral.min(0.999)
        }
    }

    /// How much longer at this temperature, if it stays there: by whichever row is done first. None below the first row.
    #[must_use]
    pub fn left_at(&self, temperature: Temperature) -> Option<TimeSpan> {
        if self.met {
            return Some(TimeSpan::ZERO);
        }
        let rows = self.table.rows().iter().zip(&self.at_or_above);
        rows.filter(|(row, _)| row.counts(temperature))
            .map(|(row, spent)| TimeSpan::from_seconds(row.seconds - spent))
            .reduce(TimeSpan::min)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn held(table: LethalityTable, celsius: f64, seconds: f64) -> bool {
        let at = Temperature::from_celsius(celsius);
        let mut dwell = Dwell::new(table);
        dwell.add(TimeSpan::from_seconds(seconds), at, at);
        dwell.met()
    }

    #[test]
    fn rows_rise_in_temperature_and_never_in_time() {
        for table in [LethalityTable::RedMeat, LethalityTable::Poultry] {
            for pair in table.rows().windows(2) {
                assert!(
                    pair[0].celsius < pair[1].celsius && pair[0].fahrenheit < pair[1].fahrenheit
                );
                assert!(pair[0].seconds >= pair[1].seconds);
            }
            assert!(table.rows().len() <= MOST_ROWS);
        }
    }

    #[test]
    fn the_two_printed_scales_belong_together() {
        for row in RED_MEAT.iter().chain(&POULTRY) {
            let exact = Temperature::from_fahrenheit(row.fahrenheit).celsius();
            assert!((exact - row.celsius).abs() <= 0.06, "{row:?}");
        }
    }

    #[test]
    fn a_change_of_row_begins_anew_only_below_the_first() {
        let mut dwell = Dwell::new(LethalityTable::RedMeat);
        let [low, high, cold] = [55.0, 60.0, 50.0].map(Temperature::from_celsius);
        dwell.add(TimeSpan::from_minutes(90.0), low, low);
        dwell.add(TimeSpan::from_minutes(5.0), high, high);
        assert!(
            !dwell.met(),
            "neither 97 min at 55.0 °C nor 12 min at 60.0 °C"
        );
        assert!(dwell.share() > 0.9);
        dwell.add(TimeSpan::from_minutes(2.0), low, low);
        assert!(dwell.met(), "97 min at or above 55.0 °C");
        let mut cooled = Dwell::new(LethalityTable::RedMeat);
        cooled.add(TimeSpan::from_minutes(96.0), low, low);
        cooled.add(TimeSpan::from_minutes(1.0), low, cold);
        cooled.add(TimeSpan::from_minutes(96.0), low, low);
        assert!(!cooled.met());
    }

    #[test]
    fn the_integral_never_claims_what_the_rows_do_not_give() {
        let mut dwell = Dwell::new(LethalityTable::RedMeat);
        let [low, high] = [54.4, 60.0].map(Temperature::from_celsius);
        dwell.add(TimeSpan::from_minutes(115.0), low, low);
        dwell.add(TimeSpan::from_minutes(5.0), high, high);
        assert!(!dwell.met());
        assert!(dwell.share() < 1.0);
        assert_eq!(dwell.left_at(high).map(TimeSpan::minutes), Some(1.0));
    }

    #[test]
    fn poultry_between_the_last_row_and_the_consumer_minimum_gets_no_shorter_time() {
        assert!(!held(LethalityTable::Poultry, 73.0, 995.0));
        assert!(held(LethalityTable::Poultry, 73.0, 996.0));
        assert!(held(LethalityTable::Poultry, 73.9, 0.0));
        assert!(!held(LethalityTable::Poultry, 57.7, 1e9));
    }

    #[test]
    fn nonsense_is_never_credit() {
        let nan = Temperature::from_celsius(f64::NAN);
        let hot = Temperature::from_celsius(65.0);
        for (from, to) in [(nan, hot), (hot, nan), (nan, nan)] {
            let mut dwell = Dwell::new(LethalityTable::RedMeat);
            dwell.add(TimeSpan::from_hours(10.0), from, to);
            assert!(!dwell.met());
        }
        assert!(!held(LethalityTable::RedMeat, 65.0, f64::NAN));
        assert!(!held(LethalityTable::RedMeat, 65.0, -600.0));
    }
}
