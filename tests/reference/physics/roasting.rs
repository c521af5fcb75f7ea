//! Roasts by the government charts: a still oven, fridge-cold, to the temperature of the chart.

use super::{bare, celsius, fahrenheit};
use crate::rows::Rows;
use cook_model::meat::CutId;
use cook_model::physics::{CookerClass, Draw, Settings, run};
use cook_model::units::{Mass, TimeSpan};
use serde::Deserialize;

#[derive(Deserialize)]
struct Data {
    source: String,
    rows: Vec<(CutId, f64, f64, f64, f64, f64, String)>,
}

/// Hours by which rows are known to lie further outside than granted: cut, lb, oven °F, error.
const KNOWN_MISSES: [(CutId, f64, f64, f64); 2] = [
    (CutId::PorkLoin, 3.5, 350.0, 0.173),
    // The chart has it well done: 45 min a pound are far more than 62.8 °C takes.
    (CutId::PorkShoulderButt, 4.5, 350.0, -1.51),
];

#[test]
fn roasts_take_as_long_as_the_charts_say() {
    let data: Data = serde_json::from_str(include_str!("../data/roasting.json"))
        .expect("the data file is sound");
    let mut rows = Rows::new("roasting charts, hours", &data.source);
    for (cut, pounds, oven, shortest, longest, core, source) in data.rows {
        let mass = Mass::from_pounds(pounds);
        let mut scenario = bare(
            cut,
            mass,
            CookerClass::StillOven,
            fahrenheit(oven),
            fahrenheit(core),
        );
        scenario.start = celsius(4.0);
        let got = &run(&scenario, &[Draw::NOMINAL], &Settings::default()).expect("in range")[0];
        let hours = got.ready.map_or(f64::NAN, TimeSpan::hours);
        let middle = 0.5 * (shortest + longest);
        // A chart has round figures: a tenth is granted on top of its range.
        let tolerance = 0.5 * (longest - shortest) + 0.1 * middle;
        let name = format!("{cut}, {pounds} lb at {oven} °F ({source})");
        let known = KNOWN_MISSES
            .iter()
            .find(|k| (k.0, k.1, k.2) == (cut, pounds, oven));
        rows.row(&name, hours, middle, tolerance, known.map(|k| k.3));
    }
}
