//! How long a lot of hot meat stays hot in a container, as one lump of heat with one loss.

use super::body::HEAT_CAPACITY_J_PER_KG_K;
use crate::units::{Mass, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// What hot meat is shut into. Every figure is set by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Container {
    /// A lidded box with towels, warmed before.
    RestBox,
    /// An insulated cabinet or ceramic cooker, its fire out, its lid shut.
    ShutCabinet,
    /// A thin steel cooker, its fire out, its lid shut.
    ShutCooker,
    /// A kitchen oven, switched off, its door shut.
    ShutOven,
    /// Wrapped, on a counter.
    Wrapped,
}

impl Container {
    /// Loss in W/K for a lump of 4 kg, least, likely and most; and the container's own heat capacity in J/K that comes
    /// along hot.
    const fn loss_and_heat(self) -> ([f64; 3], f64) {
        match self {
            // The likely one is that of the rest box in the cook model: 0.6 W/K and 6 kJ/K.
            Self::RestBox => ([0.4, 0.6, 1.2], 6000.0),
            Self::ShutCabinet => ([0.7, 1.0, 1.8], 15_000.0),
            Self::ShutCooker => ([2.0, 4.0, 8.0], 8000.0),
            Self::ShutOven => ([1.5, 2.5, 4.0], 15_000.0),
            // 0.15 m² with 6 to 10 W/(m² K) around it, towels or none.
            Self::Wrapped => ([0.7, 1.1, 1.5], 0.0),
        }
    }
}

/// A time, as short as it may be, likely, and as long as it may be.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
pub struct WarmSpan {
    /// Count on no more.
    pub short: TimeSpan,
    /// Likely.
    pub likely: TimeSpan,
    /// At best.
    pub long: TimeSpan,
}

/// How long a lot of meat stays above a temperature. Zero where it is not above it; endless where its surroundings are.
#[must_use]
pub fn stays_above(
    container: Container,
    meat: Mass,
    from: Temperature,
    floor: Temperature,
    around: Temperature,
) -> WarmSpan {
    let ([least, likely, most], heat) = container.loss_and_heat();
    let capacity = meat.kilograms() * HEAT_CAPACITY_J_PER_KG_K + heat;
    // A container holds what it holds; what is only wrapped loses by its own surface, which grows as mass^(2/3).
    let surface = match container {
        Container::Wrapped => libm::pow(meat.kilograms() / 4.0, 2.0 / 3.0),
        _ => 1.0,
    };
    let above = |temperature: Temperature| (temperature - around).kelvin();
    let span = |loss: f64| {
        if from <= floor {
            TimeSpan::ZERO
        } else if above(floor) <= 0.0 {
            TimeSpan::from_seconds(f64::INFINITY)
        } else {
            TimeSpan::from_seconds(
                capacity / (loss * surface) * libm::log(above(from) / above(floor)),
            )
        }
    };
    WarmSpan {
        short: span(most),
        likely: span(likely),
        long: span(least),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn celsius(value: f64) -> Temperature {
        Temperature::from_celsius(value)
    }

    #[test]
    fn a_packer_stays_hot_in_a_box_as_long_as_in_the_cook_model() {
        // The cook model's packer of 5.98 kg raw, a third of it lost, from 95 °C: 5.6 h to 60 °C at 0.6 W/K.
        let span = stays_above(
            Container::RestBox,
            Mass::from_kilograms(4.0),
            celsius(95.0),
            celsius(60.0),
            celsius(20.0),
        );
        assert!(
            (span.likely.hours() - 5.6).abs() < 0.4,
            "{:.2} h",
            span.likely.hours()
        );
        assert!(span.short < span.likely && span.likely < span.long);
    }

    #[test]
    fn more_meat_stays_hot_longer() {
        for container in [
            Container::RestBox,
            Container::ShutCabinet,
            Container::ShutCooker,
            Container::ShutOven,
            Container::Wrapped,
        ] {
            let mut before = TimeSpan::ZERO;
            for kilograms in [0.5, 1.0, 2.0, 5.0, 12.0] {
                let span = stays_above(
                    container,
                    Mass::from_kilograms(kilograms),
                    celsius(90.0),
                    celsius(60.0),
                    celsius(15.0),
                );
                assert!(span.likely > before, "{container:?} {kilograms} kg");
                before = span.likely;
            }
        }
    }

    #[test]
    fn what_is_not_hot_does_not_stay_hot() {
        let kilogram = Mass::from_kilograms(1.0);
        let cold = stays_above(
            Container::RestBox,
            kilogram,
            celsius(59.0),
            celsius(60.0),
            celsius(20.0),
        );
        assert_eq!(cold.long, TimeSpan::ZERO);
        let oven = stays_above(
            Container::RestBox,
            kilogram,
            celsius(80.0),
            celsius(60.0),
            celsius(70.0),
        );
        assert!(oven.short.seconds().is_infinite());
    }
}
