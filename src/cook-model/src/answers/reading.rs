//! A reading that looks odd.

use super::{Answer, Figure, Missing, Verdict};
use crate::safety::RuleId;
use crate::safety::wording::degrees;
use crate::units::Temperature;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Can this reading be right?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OddReading {
    /// Readings of the same thing, in several places or by several thermometers, as they were taken.
    pub readings: Vec<Temperature>,
    /// What was read.
    pub of: ReadOf,
    /// What the forecast expects. None: there is none.
    #[serde(default)]
    pub expected: Option<Temperature>,
    /// All of them by one thermometer.
    #[serde(default)]
    pub one_thermometer: bool,
    /// Somebody else is to act on it.
    #[serde(default)]
    pub handed_over: bool,
    /// The pit was read at the lid, not at the meat.
    #[serde(default)]
    pub at_the_lid: bool,
}

/// What was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ReadOf {
    /// The core of the meat.
    Core,
    /// The air of the pit.
    Pit,
}

impl ReadOf {
    /// Where such a reading lies in a cook that goes well, °C. Set by hand.
    const fn usual(self) -> std::ops::RangeInclusive<f64> {
        match self {
            Self::Core => 0.0..=102.0,
            Self::Pit => 80.0..=230.0,
        }
    }
}

/// Readings of one thing that lie farther apart than this disagree: 5 K. Set by hand.
const APART: f64 = 5.0;

/// A reading farther from the forecast than this is looked at: 10 K. Set by hand.
const OFF: f64 = 10.0;

impl OddReading {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let celsius = || {
            self.readings
                .iter()
                .map(|reading| reading.celsius())
                .filter(|value| value.is_finite())
        };
        let Some(lowest) = celsius().reduce(f64::min) else {
            return Answer::new(Verdict::NotKnown)
                .say("Without a reading there is nothing to go by. Read it in several places.")
                .by(RuleId::ColdestPoint)
                .missing(Missing::CoreNow);
        };
        let highest = celsius().fold(lowest, f64::max);
        let core = Temperature::from_celsius(lowest);
        self.wrong_scale(lowest)
            .or_else(|| (highest - lowest > APART).then(|| self.disagree(core)))
            .or_else(|| self.off_the_forecast(core))
            .unwrap_or_else(|| self.plausible(core))
    }

    /// A number that only makes sense on the other scale.
    fn wrong_scale(&self, celsius: f64) -> Option<Answer> {
        let usual = self.of.usual();
        let number_in_fahrenheit = Temperature::from_celsius(celsius).fahrenheit();
        // The same number, read on the other scale: told in °F and meant in °C, and the other way round.
        let [meant_celsius, meant_fahrenheit] = [
            number_in_fahrenheit,
            Temperature::from_fahrenheit(celsius).celsius(),
        ];
        let fits = |value: f64| match self.expected {
            Some(expected) => usual.contains(&value) && (value - expected.celsius()).abs() <= OFF,
            None => usual.contains(&value),
        };
        let as_told = match self.expected {
            Some(expected) => (celsius - expected.celsius()).abs() <= 2.0 * OFF,
            None => usual.contains(&celsius),
        };
        if as_told
            || (self.expected.is_some()
                && usual.contains(&celsius)
                && !fits(meant_celsius)
                && !fits(meant_fahrenheit))
        {
            return None;
        }
        let why = if fits(meant_celsius) {
            let number = libm::round(number_in_fahrenheit);
            format!(
                "Look at the scale: {number} °F makes no sense here, {number} °C does. The display may have changed it."
            )
        } else if fits(meant_fahrenheit) {
            let number = libm::round(celsius);
            format!(
                "Look at the scale: {number} °C makes no sense here, {number} °F does. The display may have changed it."
            )
        } else {
            format!(
                "{} cannot be. Look at the probe, its plug and its cable.",
                degrees(Temperature::from_celsius(celsius))
            )
        };
        Some(
            Answer::new(Verdict::ActNow)
                .say(why)
                .say("Check with a second thermometer before you touch the fire. Note the scale with each reading.")
                .by(RuleId::TrueThermometer)
                .missing_if(self.one_thermometer, Missing::SecondThermometer),
        )
    }

    /// Several readings that do not agree.
    fn disagree(&self, lowest: Temperature) -> Answer {
        let by_hand = self.handed_over || self.one_thermometer;
        Answer::new(if self.handed_over { Verdict::NotKnown } else { Verdict::WithCare })
            .say(format!("They do not agree. Plan on the lowest: {}. A high one may sit at a bone, in fat, or near the air.", degrees(lowest)))
            .say("Read it again in several places of the thickest part. Feel counts too: does the probe slide in?")
            .say_if(by_hand, "A pinched cable or a bad probe shows a steady wrong number. Use a second thermometer before anyone acts on it.")
            .say_if(self.handed_over, "Write for your helper: what to do at which reading, by when, and what to do if it looks odd.")
            .by(RuleId::ColdestPoint)
            .by(RuleId::TrueThermometer)
            .figure(Figure::Core { core: lowest })
            .missing_if(by_hand, Missing::SecondThermometer)
    }

    fn off_the_forecast(&self, reading: Temperature) -> Option<Answer> {
        let expected = self.expected?;
        let off = (reading - expected).kelvin();
        if off.abs() <= OFF {
            return None;
        }
        let answer = Answer::new(Verdict::WithCare)
            .say(format!("The forecast has {} here, and it reads {}.", degrees(expected), degrees(reading)))
            .say_if(self.of == ReadOf::Core && off < 0.0, "Either the pit was cooler than you think, or the probe sits badly. Read the air at the meat now, and note it.")
            .say_if(self.of == ReadOf::Core && off > 0.0, "The probe may touch bone or sit near the surface. Read it in other places.")
            .say_if(self.at_the_lid, "The air at the lid is not the air at the meat. Note where you read it.")
            .by(RuleId::ColdestPoint)
            .by(RuleId::SmokerAir)
            .figure(Figure::Core { core: reading });
        Some(answer.missing_if(self.of == ReadOf::Core, Missing::Pit))
    }

    fn plausible(&self, reading: Temperature) -> Answer {
        let doubt = self.one_thermometer && self.handed_over;
        Answer::new(if doubt || self.at_the_lid { Verdict::WithCare } else { Verdict::LooksFine })
            .say(format!("{} fits. Take it as the lowest of several places.", degrees(reading)))
            .say_if(self.at_the_lid, "It was read at the lid. At the meat it may be well off: read it there, and note where.")
            .say_if(doubt, "A helper with one number to watch has nothing to doubt it by. Leave a second thermometer, and a note on what to do when it looks odd.")
            .by(RuleId::ColdestPoint)
            .by(RuleId::TrueThermometer)
            .figure(Figure::Core { core: reading })
            .missing_if(doubt, Missing::SecondThermometer)
    }
}
