//! From what was told of a cook to what the model is asked: pit and wrap are taken as told.

use crate::record::{How, Record, WrapTold};
use anyhow::{Context, Result, bail};
use cook_model::forecast::{DishScenario, Knowledge, OwnerKey, Owners};
use cook_model::meat::{Cut, CutId, Kind};
use cook_model::physics::{
    CookerClass, Cover, Finish, PitChange, Scenario, Surroundings, When, WrapChange,
};
use cook_model::units::{Length, Mass, Temperature, TimeSpan};

/// Where wrapping has neither an hour nor a core temperature and the cut has no usual one. Common practice.
const USUAL_WRAP: Temperature = Temperature::from_fahrenheit(165.0);

/// A minimum that never holds a crossing up.
const NO_MINIMUM: Temperature = Temperature::from_celsius(30.0);

/// What the model is asked about one record.
#[derive(Clone, Debug)]
pub(crate) struct Question {
    pub(crate) dish: DishScenario,
    /// Mean air until it ended, °C.
    pub(crate) mean_pit: f64,
    /// Wrapped before it ended.
    pub(crate) wrapped: bool,
}

/// The cut of a record.
pub(crate) fn cut(record: &Record) -> Result<&'static Cut> {
    let id: CutId = record.cut.parse().with_context(|| record.id.clone())?;
    Ok(id.cut())
}

/// Asks when it is done.
pub(crate) fn question(record: &Record) -> Result<Question> {
    let cut = cut(record)?;
    let (cooker, cooker_unknown) = cooker(record)?;
    let mass = record
        .weight_kg
        .map_or(cut.shape.mass, Mass::from_kilograms);
    let measured = record.thickness_mm.map(Length::from_millimetres);
    let wraps = wraps(record, cut);
    let mut scenario = Scenario {
        thickness: measured,
        pieces: record.pieces.unwrap_or(1),
        pit: pit(record)?,
        wraps,
        finish: finish(record, cut),
        surroundings: surroundings(record),
        ..Scenario::usual(cut.id, mass, cooker)
    };
    if let Some(start) = record.start_core_c {
        scenario.start = Temperature::from_celsius(start);
    }
    let key = OwnerKey::from_text(&record.id);
    Ok(Question {
        mean_pit: mean_pit(record)?,
        wrapped: scenario.wraps.iter().any(|wrap| wrap.cover != Cover::Bare),
        dish: DishScenario {
            scenario,
            knowledge: Knowledge {
                thickness_measured: measured.is_some(),
                cooker_unknown,
                ..Knowledge::default()
            },
            owners: Owners {
                cooker: key,
                piece: key,
            },
        },
    })
}

/// The same cook followed well past its last reading, whatever it is like.
pub(crate) fn followed(question: &Question, last_reading: f64) -> DishScenario {
    let mut dish = question.dish.clone();
    dish.scenario.finish = Finish::AfterOn(TimeSpan::from_hours((last_reading * 1.5).min(60.0)));
    dish
}

fn cooker(record: &Record) -> Result<(CookerClass, bool)> {
    Ok(match record.cooker.as_str() {
        "offset" => (CookerClass::Offset, false),
        "kettle" => (CookerClass::Kettle, false),
        "drum" => (CookerClass::Drum, false),
        "ceramic" => (CookerClass::Ceramic, false),
        "electric" => (CookerClass::Electric, false),
        "cabinet" | "vertical-water" => (CookerClass::Cabinet, false),
        "pellet" | "gas" => (CookerClass::Generic, false),
        "oven" => (CookerClass::StillOven, false),
        "unknown" => (CookerClass::Generic, true),
        other => bail!("{}: no class for the cooker \"{other}\"", record.id),
    })
}

fn pit(record: &Record) -> Result<Vec<PitChange>> {
    let told = record
        .pit
        .iter()
        .filter_map(|step| Some((step.from_h, step.air()?)));
    let mut changes: Vec<PitChange> = told
        .map(|(from, air)| PitChange {
            when: When::AfterOn(TimeSpan::from_hours(from)),
            set: Temperature::from_celsius(air),
        })
        .collect();
    let first = changes
        .first_mut()
        .with_context(|| format!("{}: no pit told", record.id))?;
    first.when = When::AfterOn(TimeSpan::ZERO);
    Ok(changes)
}

fn mean_pit(record: &Record) -> Result<f64> {
    let end = record.last_h().unwrap_or(0.0);
    let steps: Vec<(f64, f64)> = record
        .pit
        .iter()
        .filter_map(|step| Some((step.from_h, step.air()?)))
        .collect();
    let first = steps
        .first()
        .with_context(|| format!("{}: no pit told", record.id))?;
    let mut total = 0.0;
    for (i, (from, air)) in steps.iter().enumerate() {
        let to = steps.get(i + 1).map_or(end, |next| next.0).min(end);
        total += air * (to - from).max(0.0);
    }
    Ok(if end > 0.0 { total / end } else { first.1 })
}

/// Wrapping at the hour of the end is for the rest and left out; `none` counts only as taking a wrap off; a wrap whose
/// material is not told is taken for foil.
fn wraps(record: &Record, cut: &Cut) -> Vec<WrapChange> {
    let end = record.last_h().unwrap_or(f64::INFINITY);
    let mut wraps: Vec<WrapChange> = Vec::new();
    for told in &record.wrap {
        let cover = match told.kind.as_deref() {
            Some("none") => Cover::Bare,
            Some("paper") => Cover::Paper,
            _ => Cover::Foil,
        };
        let for_the_rest = told.at_h.is_some_and(|hour| hour >= end);
        if for_the_rest || (cover == Cover::Bare && wraps.is_empty()) {
            continue;
        }
        wraps.push(WrapChange {
            when: wrap_when(told, cut),
            cover,
        });
    }
    wraps
}

fn wrap_when(told: &WrapTold, cut: &Cut) -> When {
    match (told.at_h, told.at_core_c) {
        (Some(hour), _) => When::AfterOn(TimeSpan::from_hours(hour)),
        (None, Some(core)) => When::Probe(Temperature::from_celsius(core)),
        (None, None) => When::Probe(cut.programme.wrap.map_or(USUAL_WRAP, |(_, core)| core)),
    }
}

/// A finish told as a temperature is compared with that crossing, whatever the safety minimum; one told as tender, and
/// bounds, with ready. A cut without a demand that was told as tender at a temperature counts as told by temperature.
fn finish(record: &Record, cut: &Cut) -> Finish {
    let told = record.finish.as_ref();
    let by_temperature =
        |how| how == How::Temperature || (how == How::Tender && !cut.cooks_to_tenderness());
    let crossing = told
        .filter(|finish| by_temperature(finish.how))
        .and_then(|finish| finish.core_c);
    let minimum = cut.make.consumer_minimum();
    match crossing {
        Some(core) => Finish::Temperature {
            target: Temperature::from_celsius(core),
            minimum: NO_MINIMUM,
        },
        None if cut.cooks_to_tenderness() => Finish::Tender {
            target: cut.default_target(),
            minimum,
        },
        None => Finish::Temperature {
            target: cut.default_target(),
            minimum,
        },
    }
}

fn surroundings(record: &Record) -> Surroundings {
    let usual = Surroundings::default();
    Surroundings {
        outside: record
            .ambient_c
            .map_or(usual.outside, Temperature::from_celsius),
        altitude: record
            .altitude_m
            .map_or(usual.altitude, Length::from_metres),
        ..usual
    }
}

/// Groups in which errors are told apart.
pub(crate) fn group(cut: &Cut) -> &'static str {
    match (cut.kind, cut.id) {
        (Kind::Chicken | Kind::Turkey, _) => "birds",
        (_, CutId::PorkSpareRibs | CutId::PorkStLouisRibs | CutId::PorkBackRibs) => "ribs",
        (_, CutId::BeefPlateShortRibs | CutId::BeefChuckShortRibs | CutId::BeefBackRibs) => "ribs",
        (Kind::Pork, _) => "pork",
        _ => "beef, lamb, fish",
    }
}
