//! Which units a person reads.

use serde::{Deserialize, Serialize};

/// The scale of temperatures.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TemperatureScale {
    /// °C.
    #[default]
    Celsius,
    /// °F.
    Fahrenheit,
}

/// The unit of weights.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MassUnit {
    /// Kilograms and grams.
    #[default]
    Kilograms,
    /// Pounds and ounces.
    Pounds,
}

/// The unit of lengths, and with it of heights, areas and wind.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LengthUnit {
    /// Centimetres and metres.
    #[default]
    Metric,
    /// Inches and feet.
    Inches,
}

/// The three together. A setting of the device; nothing is stored in them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Units {
    /// Temperatures.
    pub temperature: TemperatureScale,
    /// Weights.
    pub mass: MassUnit,
    /// Lengths.
    pub length: LengthUnit,
}

impl Units {
    /// °C, kg, cm.
    pub const METRIC: Self = Self {
        temperature: TemperatureScale::Celsius,
        mass: MassUnit::Kilograms,
        length: LengthUnit::Metric,
    };

    /// °F, lb, in.
    pub const CUSTOMARY: Self = Self {
        temperature: TemperatureScale::Fahrenheit,
        mass: MassUnit::Pounds,
        length: LengthUnit::Inches,
    };

    /// The same for texts of the model, which carry their figures on both scales.
    #[must_use]
    pub fn scales(self) -> cook_model::safety::Units {
        cook_model::safety::Units {
            fahrenheit: self.temperature == TemperatureScale::Fahrenheit,
            pounds: self.mass == MassUnit::Pounds,
            inches: self.length == LengthUnit::Inches,
        }
    }

    /// What people of a locale mostly read: customary units in the United States, Liberia and Myanmar, metric
    /// elsewhere (common practice).
    #[must_use]
    pub fn usual_in(locale: &str) -> Self {
        let region = locale
            .split(['-', '_'])
            .skip(1)
            .find(|part| part.len() == 2);
        match region.map(str::to_ascii_uppercase).as_deref() {
            Some("US" | "LR" | "MM") => Self::CUSTOMARY,
            _ => Self::METRIC,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_region_of_a_locale_decides() {
        assert_eq!(Units::usual_in("en-US"), Units::CUSTOMARY);
        assert_eq!(Units::usual_in("es-Latn-US"), Units::CUSTOMARY);
        assert_eq!(Units::usual_in("en-GB"), Units::METRIC);
        assert_eq!(Units::usual_in("en"), Units::METRIC);
        assert_eq!(Units::usual_in(""), Units::METRIC);
    }
}
