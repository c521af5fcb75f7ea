//! Cook records: what people told of real cooks. Hours count from the moment the meat went on; `None` is not told.

use anyhow::{Context, Result, bail};
use serde::Deserialize;

/// The whole file.
#[derive(Debug, Deserialize)]
struct File {
    format: String,
    version: u32,
    cooks: Vec<Record>,
}

/// One cook.
#[derive(Clone, Debug, Deserialize)]
pub(crate) struct Record {
    pub(crate) id: String,
    pub(crate) cut: String,
    /// Of one piece.
    pub(crate) weight_kg: Option<f64>,
    pub(crate) pieces: Option<u32>,
    pub(crate) thickness_mm: Option<f64>,
    pub(crate) cooker: String,
    pub(crate) pit: Vec<PitTold>,
    pub(crate) wrap: Vec<WrapTold>,
    pub(crate) start_core_c: Option<f64>,
    pub(crate) ambient_c: Option<f64>,
    pub(crate) altitude_m: Option<f64>,
    pub(crate) readings: Vec<Reading>,
    pub(crate) finish: Option<FinishTold>,
    pub(crate) censored: Option<Censored>,
    #[serde(rename = "use")]
    pub(crate) good_for: Vec<String>,
}

/// Air by the gauge from an hour on, as a range.
#[derive(Clone, Copy, Debug, Deserialize)]
pub(crate) struct PitTold {
    pub(crate) from_h: f64,
    pub(crate) low_c: Option<f64>,
    pub(crate) high_c: Option<f64>,
}

/// Wrapped in what (`none` is bare, `None` not told), at which hour or core temperature.
#[derive(Clone, Debug, Deserialize)]
pub(crate) struct WrapTold {
    pub(crate) kind: Option<String>,
    pub(crate) at_h: Option<f64>,
    pub(crate) at_core_c: Option<f64>,
}

/// A core temperature at an hour.
#[derive(Clone, Copy, Debug, Deserialize)]
pub(crate) struct Reading {
    pub(crate) h: f64,
    pub(crate) core_c: f64,
}

/// When and how it ended.
#[derive(Clone, Debug, Deserialize)]
pub(crate) struct FinishTold {
    pub(crate) h: f64,
    pub(crate) core_c: Option<f64>,
    pub(crate) how: How,
}

/// What an end means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum How {
    /// Judged by feel.
    Tender,
    /// Taken off at a core temperature.
    Temperature,
    /// It was done at this hour or earlier.
    FoundDone,
    /// Taken off before it was done.
    PulledEarly,
    /// Left the cooker before it was done; the end is not told.
    Moved,
}

/// It had not finished by then.
#[derive(Clone, Copy, Debug, Deserialize)]
pub(crate) struct Censored {
    pub(crate) at_h: f64,
}

/// What a record says about the finish.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Told {
    /// Done at this hour.
    Exactly(f64),
    /// Done at this hour or earlier.
    AtMost(f64),
    /// Not done by this hour.
    AtLeast(f64),
}

impl Record {
    /// What the record says about the finish, if its finish is good for scoring.
    pub(crate) fn told(&self) -> Option<Told> {
        if !self.serves("finish") || self.pit.iter().all(|step| step.air().is_none()) {
            return None;
        }
        match self.finish.as_ref().map(|finish| (finish.how, finish.h)) {
            Some((How::Tender | How::Temperature, h)) => Some(Told::Exactly(h)),
            Some((How::FoundDone, h)) => Some(Told::AtMost(h)),
            Some((How::PulledEarly | How::Moved, _)) | None => {
                self.censored.map(|censored| Told::AtLeast(censored.at_h))
            }
        }
    }

    /// Its readings before it was done, if they are good for scoring.
    pub(crate) fn scored_readings(&self) -> Vec<Reading> {
        if !self.serves("readings") || self.pit.iter().all(|step| step.air().is_none()) {
            return Vec::new();
        }
        let end = self
            .finish
            .as_ref()
            .map_or(f64::INFINITY, |finish| finish.h);
        let before = |reading: &&Reading| reading.h <= end;
        self.readings.iter().filter(before).copied().collect()
    }

    /// The hour at which it ended or was last seen.
    pub(crate) fn last_h(&self) -> Option<f64> {
        let seen = self.readings.last().map(|reading| reading.h);
        let censored = self.censored.map(|censored| censored.at_h);
        self.finish
            .as_ref()
            .map(|finish| finish.h)
            .or(censored)
            .or(seen)
    }

    fn serves(&self, what: &str) -> bool {
        self.good_for.iter().any(|use_| use_ == what)
    }
}

impl PitTold {
    /// The middle of the range, °C.
    pub(crate) fn air(&self) -> Option<f64> {
        match (self.low_c, self.high_c) {
            (Some(low), Some(high)) => Some(0.5 * (low + high)),
            (one, None) | (None, one) => one,
        }
    }
}

/// Reads a file of records.
pub(crate) fn read(text: &str) -> Result<Vec<Record>> {
    let mut json = serde_json::Deserializer::from_str(text);
    let file: File = serde_path_to_error::deserialize(&mut json)
        .context("this is not a file of cook records")?;
    if file.format != "cook-records" || file.version != 1 {
        bail!(
            "this is \"{}\" version {}; cook-records version 1 is wanted",
            file.format,
            file.version
        );
    }
    Ok(file.cooks)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn record(finish: &str, censored: &str, uses: &str) -> Record {
        let text = format!(
            r#"{{"format":"cook-records","version":1,"cooks":[{{"id":"A000","cut":"pork-loin","bone_in":null,
            "pieces":1,"weight_kg":1.5,"weight_basis":"unknown","thickness_mm":null,"cooker":"kettle","water_pan":null,
            "pit":[{{"from_h":0,"low_c":110,"high_c":130}}],"wrap":[],"spritz":null,"start_core_c":null,
            "ambient_c":null,"wind":null,"altitude_m":null,"readings":[{{"h":1,"core_c":30,"plus_minus_h":0.25}},
            {{"h":3,"core_c":60,"plus_minus_h":0.25}}],"stall":null,"finish":{finish},"censored":{censored},
            "rest_h":null,"hold_h":null,"outcome":"invented","grade":"low","use":{uses},"notes":"OPENED FLAT"}}]}}"#
        );
        read(&text).unwrap().remove(0)
    }

    #[test]
    fn ends_are_exact_or_bounds() {
        let finish = |how: &str| format!(r#"{{"h":2.5,"core_c":62,"how":"{how}"}}"#);
        let at_2 = r#"{"at_h":2,"core_c":null}"#;
        let told = |how, censored| record(&finish(how), censored, r#"["finish"]"#).told();
        assert_eq!(told("tender", "null"), Some(Told::Exactly(2.5)));
        assert_eq!(told("temperature", "null"), Some(Told::Exactly(2.5)));
        assert_eq!(told("found-done", "null"), Some(Told::AtMost(2.5)));
        assert_eq!(told("moved", at_2), Some(Told::AtLeast(2.0)));
        assert_eq!(
            record("null", at_2, r#"["finish"]"#).told(),
            Some(Told::AtLeast(2.0))
        );
        assert_eq!(record(&finish("tender"), "null", "[]").told(), None);
    }

    #[test]
    fn readings_after_the_end_are_left_out() {
        let finish = r#"{"h":2.5,"core_c":62,"how":"tender"}"#;
        let record = record(finish, "null", r#"["readings"]"#);
        assert_eq!(record.scored_readings().len(), 1);
        assert_eq!(record.pit[0].air(), Some(120.0));
    }

    #[test]
    fn other_files_are_refused() {
        let other = read(r#"{"format":"cook-records","version":2,"cooks":[]}"#);
        assert!(other.unwrap_err().to_string().contains("version 2"));
        assert!(read("[]").is_err());
    }
}
