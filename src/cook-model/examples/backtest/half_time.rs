//! The forecast again at half time, with the readings told by then.

use crate::record::Record;
use crate::scenario::Question;
use crate::score::Effort;
use anyhow::{Context, Result};
use cook_model::handover::ProbePlace;
use cook_model::handover::identity::EntryId;
use cook_model::live::{CoreReading, MEMBERS, PASSES, PieceLog, Reforecast, UnderWay};
use cook_model::physics::{Settings, When};
use cook_model::units::{Temperature, TimeSpan};

/// Hours of each member at half time. None where no reading was told by then.
pub(crate) fn hours(
    record: &Record,
    question: &Question,
    finish: f64,
    effort: Effort,
) -> Result<Option<Vec<f64>>> {
    let log = log(record, question, 0.5 * finish);
    if log.cores.is_empty() {
        return Ok(None);
    }
    let under_way = UnderWay {
        dish: question.dish.clone(),
        log,
    };
    let settings = Settings::default();
    let mut run = Reforecast::new(vec![under_way], MEMBERS, PASSES, effort.seed, settings);
    while !run.step()? {}
    let members = run.forecast(0).context("not done")?.members();
    let limit = settings.limit;
    let ready = members.iter().map(|run| run.ready.unwrap_or(limit).hours());
    Ok(Some(ready.collect()))
}

/// Core readings by a time and covers told by the hour; the air is in the scenario as it was told.
fn log(record: &Record, question: &Question, now: f64) -> PieceLog {
    let readings = record.scored_readings();
    let by_now = readings.iter().filter(|reading| reading.h <= now);
    let cores = by_now.zip(1..).map(|(reading, number)| CoreReading {
        entry: EntryId::new(number, 0),
        after: TimeSpan::from_hours(reading.h),
        reading: Temperature::from_celsius(reading.core_c),
        place: ProbePlace::NotSaid,
        doubtful: false,
    });
    let wraps = question.dish.scenario.wraps.iter();
    let covers = wraps.filter_map(|wrap| match wrap.when {
        When::AfterOn(after) if after.hours() <= now => Some((after, wrap.cover)),
        When::AfterOn(_) | When::Probe(_) => None,
    });
    PieceLog {
        now: TimeSpan::from_hours(now),
        cores: cores.collect(),
        covers: covers.collect(),
        ..PieceLog::default()
    }
}
