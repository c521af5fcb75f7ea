//! Every cut by its usual programme against the prototype of these equations.

use super::start;
use crate::rows::Rows;
use cook_model::meat::CutId;
use cook_model::physics::{CookerClass, Draw, Finish, Scenario, Settings, run};
use cook_model::units::{Temperature, TimeSpan};
use serde::Deserialize;

type Row = (CutId, f64, f64, Option<f64>, f64, f64, f64, f64, f64);

#[derive(Deserialize)]
struct Data {
    source: String,
    rows: Vec<Row>,
}

#[test]
fn every_cut_follows_the_prototype() {
    let data: Data = serde_json::from_str(include_str!("../data/catalogue.json"))
        .expect("the data file is sound");
    let mut rows = Rows::new("the catalogue", &data.source);
    assert_eq!(data.rows.len(), CutId::ALL.len());
    for (cut, hours, core, tenderness, loss, meat, ..) in data.rows {
        let entry = cut.cut();
        let mut scenario = Scenario::usual(cut, entry.shape.mass, CookerClass::Generic);
        scenario.start = start();
        // The prototype ran to the trade's target and looked at no safety minimum.
        let (target, minimum) = (entry.programme.target, Temperature::from_celsius(0.0));
        scenario.finish = if entry.cooks_to_tenderness() {
            Finish::Tender { target, minimum }
        } else {
            Finish::Temperature { target, minimum }
        };
        let got = &run(&scenario, &[Draw::NOMINAL], &Settings::default()).expect("in range")[0];
        let ready = got.ready.map_or(f64::NAN, TimeSpan::hours);
        rows.holds(
            &format!("{cut}: hours, relative"),
            ready / hours,
            1.0,
            0.016,
        );
        let probe = got.probe_at_ready.map_or(f64::NAN, Temperature::celsius);
        rows.holds(&format!("{cut}: core when ready, K"), probe, core, 0.36);
        if let Some(tenderness) = tenderness {
            let at_ready = got.tenderness_at_ready.unwrap_or(f64::NAN);
            rows.holds(&format!("{cut}: tenderness"), at_ready, tenderness, 0.011);
        }
        rows.holds(&format!("{cut}: loss"), got.loss_at_ready(), loss, 0.005);
        // The prototype's figure is rounded to 10 g.
        let meat_error = got.meat.kilograms() - meat;
        rows.holds(&format!("{cut}: meat, kg"), meat_error, 0.0, 0.0055);
    }
}
