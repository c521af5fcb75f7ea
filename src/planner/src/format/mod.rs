//! Numbers as people read them: in their units and on their clock. Everything is kept in SI; only this module converts.

mod clock;
mod measure;
mod number;
mod units;

pub use clock::{ClockStyle, Span};
pub use measure::Measure;
pub use number::{number, parse_number};
pub use units::{LengthUnit, MassUnit, TemperatureScale, Units};

use chrono::NaiveTime;
use cook_model::plan::Zone;
use cook_model::plan::outlook::{Odds, Window};
use cook_model::provisions::Quantity;
use cook_model::units::{Area, Length, Mass, Moment, Temperature, TemperatureDifference, TimeSpan};
use std::sync::Arc;

/// Holds a number and its unit together on one line.
pub const NO_BREAK: char = '\u{a0}';

/// How this person reads numbers and times.
#[derive(Clone, Debug, PartialEq)]
pub struct Formats {
    /// Units of quantities.
    pub units: Units,
    /// Twelve or twenty-four hours.
    pub clock: ClockStyle,
    /// The local clock around the plan.
    pub zone: Arc<Zone>,
}

impl Formats {
    /// A time of day: `14:40` or `2:40 pm`.
    #[must_use]
    pub fn time(&self, moment: Moment) -> String {
        self.clock.time(self.zone.local(moment).time())
    }

    /// A time of day as it stands in the plan.
    #[must_use]
    pub fn time_of_day(&self, time: NaiveTime) -> String {
        self.clock.time(time)
    }

    /// A day and a time: `Sat 14:40`.
    #[must_use]
    pub fn day_time(&self, moment: Moment) -> String {
        format!("{} {}", self.weekday(moment), self.time(moment))
    }

    /// A day of the week: `Sat`.
    #[must_use]
    pub fn weekday(&self, moment: Moment) -> String {
        self.zone.local(moment).format("%a").to_string()
    }

    /// A day of the week in full: `Saturday`.
    #[must_use]
    pub fn day_name(&self, moment: Moment) -> String {
        self.zone.local(moment).format("%A").to_string()
    }

    /// A date: `Sat 12 Sep`.
    #[must_use]
    pub fn date(&self, moment: Moment) -> String {
        self.zone.local(moment).format("%a %-d %b").to_string()
    }

    /// Two times with a dash, for tables: `14:00–17:00`, `2:00–5:00 pm`.
    #[must_use]
    pub fn from_to(&self, from: Moment, to: Moment) -> String {
        let (from, to) = (self.zone.local(from).time(), self.zone.local(to).time());
        self.clock.from_to(from, to)
    }

    /// A window with a dash, rounded as a forecast may be.
    #[must_use]
    pub fn window(&self, window: &Window) -> String {
        let [from, _, to] = rounded(window);
        self.from_to(from, to)
    }

    /// A span of time: `45 min`, `2 h 40 min`, `3 days`.
    #[must_use]
    pub fn span(&self, span: TimeSpan) -> String {
        Span(span).to_string()
    }

    /// A temperature: `120 °C`, `250 °F`.
    #[must_use]
    pub fn temperature(&self, temperature: Temperature) -> String {
        Measure::Core.say(temperature.celsius(), self.units)
    }

    /// A temperature without its unit, where the unit stands beside it: `120`.
    #[must_use]
    pub fn bare_temperature(&self, temperature: Temperature) -> String {
        Measure::Core.show(temperature.celsius(), self.units)
    }

    /// A wind, given in m/s: `12 km/h`, `7 mph`.
    #[must_use]
    pub fn wind(&self, metres_per_second: f64) -> String {
        Measure::Wind.say(metres_per_second, self.units)
    }

    /// A rise or fall of temperature.
    #[must_use]
    pub fn difference(&self, difference: TemperatureDifference) -> String {
        Measure::Difference.say(difference.kelvin(), self.units)
    }

    /// A weight: `3.8 kg`, `80 g`, `8.4 lb`, `2.8 oz`.
    #[must_use]
    pub fn mass(&self, mass: Mass) -> String {
        Measure::for_mass(mass, self.units).say(mass.kilograms(), self.units)
    }

    /// An amount of anything, in the unit in which it reads best.
    #[must_use]
    pub fn quantity(&self, quantity: Quantity) -> String {
        Measure::of(quantity, self.units).say(quantity.number(), self.units)
    }

    /// A thickness by the ruler: `11 cm`, `4.5 in`.
    #[must_use]
    pub fn thickness(&self, thickness: Length) -> String {
        Measure::Thickness.say(thickness.metres(), self.units)
    }

    /// A height above the sea: `140 m`, `460 ft`.
    #[must_use]
    pub fn altitude(&self, altitude: Length) -> String {
        Measure::Altitude.say(altitude.metres(), self.units)
    }

    /// Room on a grate: `4050 cm²`, `628 sq in`.
    #[must_use]
    pub fn area(&self, area: Area) -> String {
        Measure::GrateArea.say(area.square_metres(), self.units)
    }
}

/// The ends and the likely point of a window, rounded to five minutes where it is wider than an hour: a forecast that
/// uncertain has no minutes.
#[must_use]
pub fn rounded(window: &Window) -> [Moment; 3] {
    let wide = (window.to() - window.from()).minutes() > 60.0;
    let step = if wide { 300 } else { 60 };
    [window.from(), window.likely(), window.to()].map(|moment| to_step(moment, step))
}

/// A moment at the nearest multiple of some seconds.
#[must_use]
pub fn to_step(moment: Moment, seconds: i64) -> Moment {
    let at = moment.unix_seconds();
    Moment::from_unix_seconds((at + seconds / 2).div_euclid(seconds) * seconds)
}

/// Odds as cooks: `18 cooks in 20`, rounded down and never 20.
#[must_use]
pub fn cooks(odds: Odds) -> String {
    match odds.in_twenty() {
        1 => "1 cook in 20".to_owned(),
        count => format!("{count} cooks in 20"),
    }
}

/// Odds as a count: `18 in 20`, rounded down and never 20.
#[must_use]
pub fn odds(odds: Odds) -> String {
    format!("{} in 20", odds.in_twenty())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn formats(units: Units, clock: ClockStyle) -> Formats {
        Formats {
            units,
            clock,
            zone: Arc::new(Zone::fixed(3600)),
        }
    }

    fn moment(utc: &str) -> Moment {
        let utc: chrono::NaiveDateTime = utc.parse().expect("a date and time");
        Moment::from_unix_seconds(utc.and_utc().timestamp())
    }

    #[test]
    fn metric_and_customary_say_the_same_thing() {
        let metric = formats(Units::METRIC, ClockStyle::Hours24);
        let customary = formats(Units::CUSTOMARY, ClockStyle::Hours12);
        let butt = Mass::from_kilograms(3.8);
        assert_eq!(metric.mass(butt), "3.8\u{a0}kg");
        assert_eq!(customary.mass(butt), "8.4\u{a0}lb");
        assert_eq!(metric.mass(Mass::from_grams(80.0)), "80\u{a0}g");
        assert_eq!(customary.mass(Mass::from_grams(80.0)), "2.8\u{a0}oz");
        let pit = Temperature::from_fahrenheit(250.0);
        assert_eq!(metric.temperature(pit), "121\u{a0}°C");
        assert_eq!(customary.temperature(pit), "250\u{a0}°F");
        let thickness = Length::from_inches(4.5);
        assert_eq!(metric.thickness(thickness), "11.4\u{a0}cm");
        assert_eq!(customary.thickness(thickness), "4.5\u{a0}in");
    }

    #[test]
    fn times_go_by_the_local_clock() {
        let day = formats(Units::METRIC, ClockStyle::Hours24);
        let serving = moment("2026-09-12T17:00:00");
        assert_eq!(day.day_time(serving), "Sat 18:00");
        assert_eq!(day.date(serving), "Sat 12 Sep");
        let half = formats(Units::METRIC, ClockStyle::Hours12);
        assert_eq!(half.time(serving), "6:00\u{a0}pm");
        let noon = moment("2026-09-12T10:30:00");
        assert_eq!(half.from_to(noon, serving), "11:30\u{a0}am–6:00\u{a0}pm");
    }

    #[test]
    fn a_wide_window_has_no_odd_minutes() {
        let from = moment("2026-09-12T13:42:31");
        let mut window = Window::at(from);
        window.deciles[8] = moment("2026-09-12T16:28:00");
        let [from, _, to] = rounded(&window);
        assert_eq!(from, moment("2026-09-12T13:45:00"));
        assert_eq!(to, moment("2026-09-12T16:30:00"));
        assert_eq!(rounded(&Window::at(from))[0], from);
    }

    #[test]
    fn odds_are_never_certain() {
        assert_eq!(odds(Odds { kept: 64, of: 64 }), "19 in 20");
        assert_eq!(odds(Odds { kept: 0, of: 0 }), "0 in 20");
    }
}
