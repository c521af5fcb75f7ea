//! Saturation, wet bulb, pressure and boiling point at a height.

use crate::rows::Rows;
use cook_model::physics::air::{boiling_point, pressure_at, saturation_pressure, wet_bulb};
use cook_model::units::{Length, Temperature};
use serde::Deserialize;

#[derive(Deserialize)]
struct Table {
    source: String,
    rows: Vec<Vec<f64>>,
}

#[derive(Deserialize)]
struct Data {
    saturation: Table,
    wet_bulb: Table,
    height: Table,
}

fn data() -> Data {
    serde_json::from_str(include_str!("../data/psychrometrics.json"))
        .expect("the data file is sound")
}

#[test]
fn saturation_follows_the_steam_tables() {
    let table = data().saturation;
    let mut rows = Rows::new("saturation pressure, relative", &table.source);
    for row in &table.rows {
        let [celsius, pascal] = row[..] else {
            panic!("two columns")
        };
        let got = saturation_pressure(Temperature::from_celsius(celsius)) / pascal;
        // Wet meat boils at 100 °C; above 110 °C only dry crust is that hot.
        let tolerance = match celsius {
            ..=100.0 => 0.0012,
            ..=110.0 => 0.0023,
            _ => 0.0125,
        };
        rows.holds(&format!("{celsius} °C"), got, 1.0, tolerance);
    }
}

#[test]
fn the_wet_bulb_of_the_surface_balance_is_near_the_thermodynamic_one() {
    let table = data().wet_bulb;
    let mut rows = Rows::new("wet bulb, K", &table.source);
    for row in &table.rows {
        let [dry, humidity, pressure, wanted] = row[..] else {
            panic!("four columns")
        };
        let got = wet_bulb(Temperature::from_celsius(dry), humidity, pressure).celsius();
        rows.holds(&format!("{dry} °C, {humidity} kg/kg"), got, wanted, 1.0);
    }
}

#[test]
fn water_boils_colder_the_higher_the_place() {
    let table = data().height;
    let mut rows = Rows::new(
        "pressure (relative) and boiling point (K) at a height",
        &table.source,
    );
    for row in &table.rows {
        let [metres, pascal, celsius] = row[..] else {
            panic!("three columns")
        };
        let pressure = pressure_at(Length::from_metres(metres));
        rows.holds(
            &format!("pressure at {metres} m"),
            pressure / pascal,
            1.0,
            1e-4,
        );
        rows.holds(
            &format!("boiling at {metres} m"),
            boiling_point(pressure).celsius(),
            celsius,
            0.05,
        );
    }
}
