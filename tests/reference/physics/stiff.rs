//! Cooks that a library's stiff solver has marched (`tests/reference/stiff`), read back as scenarios.

use cook_model::meat::CutId;
use cook_model::physics::{
    CookerClass, Cover, Finish, PitChange, Place, RestStage, Scenario, Spray, When, WrapChange,
};
use cook_model::units::{Length, Mass, Temperature, TimeSpan};
use serde::Deserialize;

#[derive(Deserialize)]
pub(super) struct Data {
    pub(super) source: String,
    pub(super) cells: usize,
    pub(super) rows: Vec<Row>,
}

#[derive(Deserialize)]
pub(super) struct Row {
    pub(super) cook: Cook,
    pub(super) result: Solved,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum At {
    H(f64),
    Probe(f64),
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Until {
    H(f64),
    Probe(f64),
    Tender(f64),
}

#[derive(Deserialize)]
struct Stage {
    place: String,
    hours: f64,
    air_c: Option<f64>,
    cover: Option<Cover>,
    until_core_c: Option<f64>,
}

/// What was cooked.
#[derive(Deserialize)]
pub(super) struct Cook {
    pub(super) name: String,
    pub(super) cut: CutId,
    kg: f64,
    thickness_mm: Option<f64>,
    cooker: CookerClass,
    start_c: f64,
    outside_c: Option<f64>,
    resting_c: Option<f64>,
    altitude_m: Option<f64>,
    pieces: Option<u32>,
    pit: Vec<(At, f64)>,
    #[serde(default)]
    wraps: Vec<(At, Cover)>,
    spray: Option<(f64, f64, f64)>,
    finish: Until,
    #[serde(default)]
    after: Vec<Stage>,
}

/// What the stiff solver found.
#[derive(Deserialize)]
pub(super) struct Solved {
    pub(super) covered_h: Vec<f64>,
    pub(super) pit_changed_h: Vec<f64>,
    pub(super) ready_h: f64,
    pub(super) stage_ends_h: Vec<f64>,
    pub(super) at_ready: AtReady,
    pub(super) evaporated_kg: f64,
    pub(super) dripped_kg: f64,
    pub(super) fat_kg: f64,
    pub(super) meat_kg: f64,
    pub(super) hourly_core_and_probe_c: Vec<[f64; 2]>,
}

#[derive(Deserialize)]
pub(super) struct AtReady {
    pub(super) probe: f64,
    pub(super) tenderness: f64,
    pub(super) loss: f64,
}

pub(super) fn data() -> Data {
    serde_json::from_str(include_str!("../data/stiff_solver.json")).expect("the data file is sound")
}

fn celsius(degrees: f64) -> Temperature {
    Temperature::from_celsius(degrees)
}

fn when(at: At) -> When {
    match at {
        At::H(hours) => When::AfterOn(TimeSpan::from_hours(hours)),
        At::Probe(degrees) => When::Probe(celsius(degrees)),
    }
}

impl Cook {
    /// The scenario that the stiff solver marched: no safety minimum holds the finish up.
    pub(super) fn scenario(&self) -> Scenario {
        let minimum = celsius(0.0);
        let mut scenario = Scenario::usual(self.cut, Mass::from_kilograms(self.kg), self.cooker);
        scenario.thickness = self.thickness_mm.map(Length::from_millimetres);
        scenario.start = celsius(self.start_c);
        scenario.pieces = self.pieces.unwrap_or(1);
        let change = |&(at, degrees): &(At, f64)| PitChange {
            when: when(at),
            set: celsius(degrees),
        };
        scenario.pit = self.pit.iter().map(change).collect();
        let wrap = |&(at, cover): &(At, Cover)| WrapChange {
            when: when(at),
            cover,
        };
        scenario.wraps = self.wraps.iter().map(wrap).collect();
        scenario.spray = self.spray.map(|(first, every, water)| Spray {
            first: TimeSpan::from_hours(first),
            every: TimeSpan::from_hours(every),
            kilograms_per_square_metre: water,
        });
        scenario.finish = match self.finish {
            Until::H(hours) => Finish::AfterOn(TimeSpan::from_hours(hours)),
            Until::Probe(degrees) => Finish::Temperature {
                target: celsius(degrees),
                minimum,
            },
            Until::Tender(degrees) => Finish::Tender {
                target: celsius(degrees),
                minimum,
            },
        };
        scenario.after = self.after.iter().map(Stage::read).collect();
        let around = &mut scenario.surroundings;
        around.outside = self.outside_c.map_or(around.outside, celsius);
        around.resting = self.resting_c.map_or(around.resting, celsius);
        around.altitude = self.altitude_m.map_or(around.altitude, Length::from_metres);
        scenario
    }
}

impl Stage {
    fn read(&self) -> RestStage {
        let place = match (self.place.as_str(), self.air_c) {
            ("counter", None) => Place::Counter,
            ("rest-box", None) => Place::RestBox,
            ("warm-oven", Some(air)) => Place::WarmOven(celsius(air)),
            (other, _) => panic!("no such place: {other}"),
        };
        RestStage {
            place,
            cover: self.cover,
            lasts: TimeSpan::from_hours(self.hours),
            until_core: self.until_core_c.map(celsius),
        }
    }
}
