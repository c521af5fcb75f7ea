//! Height: wet meat in foil and the boiling point.

use super::{bare, celsius, fahrenheit};
use crate::rows::Rows;
use cook_model::meat::CutId;
use cook_model::physics::air::{boiling_point, pressure_at};
use cook_model::physics::{CookerClass, Cover, Draw, Finish, Settings, When, WrapChange, run};
use cook_model::units::{Length, TimeSpan};

#[test]
fn wet_meat_in_foil_comes_to_the_boiling_point_of_its_height() {
    let source = "physics: water boils when its vapour has the pressure of the air";
    let mut rows = Rows::new("packer at 107 °C, foil at 73.9 °C", source);
    for metres in [0.0, 1000.0, 1600.0, 2500.0] {
        let cut = CutId::BeefPackerBrisket;
        let mass = cut.cut().shape.mass;
        let pit = fahrenheit(225.0);
        let mut scenario = bare(cut, mass, CookerClass::Generic, pit, celsius(90.0));
        scenario.wraps.push(WrapChange {
            when: When::Probe(fahrenheit(165.0)),
            cover: Cover::Foil,
        });
        scenario.finish = Finish::AfterOn(TimeSpan::from_hours(20.0));
        let height = Length::from_metres(metres);
        scenario.surroundings.altitude = height;
        let got = &run(&scenario, &[Draw::NOMINAL], &Settings::default()).expect("in range")[0];
        let probe = got.probe_at_ready.map_or(f64::NAN, |p| p.celsius());
        let boiling = boiling_point(pressure_at(height)).celsius();
        // Salts and the bound water put the boiling point of meat up by a few tenths.
        rows.holds(&format!("{metres} m, °C"), probe, boiling, 0.7);
    }
}
