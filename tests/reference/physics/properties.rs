//! Conductivity, heat capacity and density of raw meat.

use crate::rows::Rows;
use cook_model::meat::Composition;
use cook_model::physics::properties::{conductivity, density, heat_capacity, water_holding};
use cook_model::units::Temperature;
use serde::Deserialize;

#[derive(Deserialize)]
struct Table {
    source: String,
    rows: Vec<(String, [f64; 4], f64, f64, f64, f64)>,
}

#[test]
fn raw_meat_follows_choi_and_okos() {
    let table: Table = serde_json::from_str(include_str!("../data/properties.json"))
        .expect("the data file is sound");
    let mut rows = Rows::new("properties of raw meat, relative", &table.source);
    for (food, grams, celsius, k, c, rho) in table.rows {
        let sum: f64 = grams.iter().sum();
        let [water, protein, fat, ash] = grams.map(|g| g / sum);
        let meat = Composition {
            water,
            protein,
            fat,
            ash,
            source: "the row",
        };
        let at = Temperature::from_celsius(celsius);
        // Ash is held at round values, and densities at those of 20 °C: that is the difference.
        let name = format!("{food} at {celsius} °C");
        rows.holds(
            &format!("conductivity of {name}"),
            conductivity(&meat, at) / k,
            1.0,
            0.005,
        );
        rows.holds(
            &format!("heat capacity of {name}"),
            heat_capacity(&meat, at) / c,
            1.0,
            0.001,
        );
        if celsius < 20.0 {
            rows.holds(
                &format!("density of {name}"),
                density(&meat) / rho,
                1.0,
                0.006,
            );
        }
    }
}

#[test]
fn cooking_drives_water_out_where_muscle_shrinks_most() {
    let meat = cook_model::meat::CutId::BeefBrisketFlat.cut().composition;
    let held = |celsius| water_holding(&meat, Temperature::from_celsius(celsius));
    let lost = |from, to| held(from) - held(to);
    let all = lost(20.0, 95.0);
    let mut rows = Rows::new(
        "share of the water given up",
        "common practice: meat juices run between 60 and 72 °C",
    );
    rows.holds("between 60 and 72 °C", lost(60.0, 72.0) / all, 0.65, 0.1);
    rows.holds("below 50 °C", lost(20.0, 50.0) / all, 0.0, 0.05);
}
