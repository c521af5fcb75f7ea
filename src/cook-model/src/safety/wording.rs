//! Words that carry their figures on both scales.
//!
//! A figure stands in a text as `{62.8 °C|145 °F}`: first metric, then as the trade in pounds and degrees Fahrenheit
//! says it, each rounded the way it is published. [`say`] keeps the one that the person reads.

use crate::units::{Length, Mass, Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The scales that a person reads.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
pub struct Units {
    /// Temperatures in °F instead of °C.
    #[serde(default)]
    pub fahrenheit: bool,
    /// Weights in pounds instead of kilograms.
    #[serde(default)]
    pub pounds: bool,
    /// Lengths in inches and feet instead of millimetres and metres.
    #[serde(default)]
    pub inches: bool,
}

/// A text with each figure on the scale that the person reads.
#[must_use]
pub fn say(text: &str, units: Units) -> String {
    let mut said = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        said.push_str(before);
        let Some((figure, tail)) = after.split_once('}') else {
            said.push('{');
            rest = after;
            continue;
        };
        let (metric, other) = figure.split_once('|').unwrap_or((figure, figure));
        let wanted = if metric.ends_with("°C") {
            units.fahrenheit
        } else if metric.ends_with('g') {
            units.pounds
        } else {
            units.inches
        };
        said.push_str(if wanted { other } else { metric });
        rest = tail;
    }
    said.push_str(rest);
    said
}

/// A temperature as a figure on both scales, to the whole degree.
#[must_use]
pub fn degrees(temperature: Temperature) -> String {
    let whole = |value: f64| libm::round(value) + 0.0;
    format!(
        "{{{} °C|{} °F}}",
        whole(temperature.celsius()),
        whole(temperature.fahrenheit())
    )
}

/// A weight as a figure on both scales, to the tenth.
#[must_use]
pub fn weight(mass: Mass) -> String {
    format!("{{{:.1} kg|{:.1} lb}}", mass.kilograms(), mass.pounds())
}

/// A thickness as a figure on both scales, in whole millimetres and tenths of an inch.
#[must_use]
pub fn thickness(length: Length) -> String {
    format!(
        "{{{:.0} mm|{:.1} in}}",
        length.millimetres(),
        length.inches()
    )
}

/// A time to the five minutes, such as 2 h 10 min; below a quarter of an hour to the minute, above a day in hours.
#[must_use]
pub fn span(time: TimeSpan) -> String {
    let minutes = time.minutes();
    if !minutes.is_finite() {
        return "a very long time".to_owned();
    }
    let step = if minutes.abs() < 15.0 { 1.0 } else { 5.0 };
    let rounded = libm::round(minutes / step) * step + 0.0;
    let hours = libm::trunc(rounded / 60.0);
    let rest = rounded - 60.0 * hours;
    match (hours, rest) {
        (0.0, rest) => format!("{rest} min"),
        (hours, _) if hours.abs() >= 24.0 => format!("{} h", libm::round(minutes / 60.0)),
        (hours, 0.0) => format!("{hours} h"),
        (hours, rest) => format!("{hours} h {rest} min"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const METRIC: Units = Units {
        fahrenheit: false,
        pounds: false,
        inches: false,
    };
    const POUNDS: Units = Units {
        fahrenheit: true,
        pounds: true,
        inches: true,
    };

    #[test]
    fn each_figure_is_said_on_one_scale() {
        let text = "keep {62.8 °C|145 °F} for {2.3 kg|5 lb}, {1 m|3 ft} away";
        assert_eq!(say(text, METRIC), "keep 62.8 °C for 2.3 kg, 1 m away");
        assert_eq!(say(text, POUNDS), "keep 145 °F for 5 lb, 3 ft away");
        let mixed = Units {
            fahrenheit: true,
            pounds: false,
            inches: false,
        };
        assert_eq!(say(text, mixed), "keep 145 °F for 2.3 kg, 1 m away");
    }

    #[test]
    fn times_are_said_as_a_cook_says_them() {
        let cases = [
            (0.0, "0 min"),
            (7.4, "7 min"),
            (58.0, "1 h"),
            (62.0, "1 h"),
            (90.0, "1 h 30 min"),
            (1500.0, "25 h"),
            (f64::INFINITY, "a very long time"),
        ];
        for (minutes, said) in cases {
            assert_eq!(span(TimeSpan::from_minutes(minutes)), said);
        }
    }

    #[test]
    fn a_lone_brace_is_left_alone() {
        assert_eq!(say("a { b", METRIC), "a { b");
        assert_eq!(say("", METRIC), "");
    }

    #[test]
    fn figures_are_rounded_on_each_scale() {
        assert_eq!(
            degrees(Temperature::from_fahrenheit(165.0)),
            "{74 °C|165 °F}"
        );
        assert_eq!(degrees(Temperature::from_celsius(-0.2)), "{0 °C|32 °F}");
        assert_eq!(weight(Mass::from_pounds(5.0)), "{2.3 kg|5.0 lb}");
        assert_eq!(thickness(Length::from_inches(3.0)), "{76 mm|3.0 in}");
    }
}
