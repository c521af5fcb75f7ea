//! Correlations and air against an independent library: ht 1.2.0 for the Nusselt numbers, CoolProp 8.0.0 for air.

use cook_model::provisions::fuel::{
    AirProperties, crossflow_cylinder, horizontal_cylinder, mixed_convection, sphere,
    vertical_plate,
};
use cook_model::units::Temperature;

#[test]
fn still_air_on_plate_cylinder_and_ball() {
    // Prandtl, Grashof; plate, lying cylinder.
    for (prandtl, grashof, plate, cylinder) in [
        (0.71, 1e6, 15.125_902, 13.209_720),
        (0.71, 1e9, 110.562_317, 103.958_183),
        (0.69, 2.63e9, 147.161_852, 139.134_940),
        (0.70, 1e4, 5.028_409, 4.014_496),
    ] {
        let rayleigh = prandtl * grashof;
        assert!((vertical_plate(rayleigh, prandtl) / plate - 1.0).abs() < 1e-6);
        assert!((horizontal_cylinder(rayleigh, prandtl) / cylinder - 1.0).abs() < 1e-6);
    }
    for (prandtl, grashof, ball) in [(0.70, 1e6, 15.145_453), (0.71, 1e9, 97.117_790)] {
        assert!((sphere(prandtl * grashof, prandtl) / ball - 1.0).abs() < 1e-6);
    }
}

#[test]
fn wind_across_a_cylinder() {
    // Reynolds, Prandtl, Nusselt: worked examples for the correlation of Churchill and Bernstein.
    for (reynolds, prandtl, nusselt) in [
        (6071.0, 0.7, 40.6371),
        (120.0, 0.71, 5.653_56),
        (25_000.0, 4.0, 174.054),
        (200_000.0, 60.0, 1727.58),
    ] {
        assert!((crossflow_cylinder(reynolds, prandtl) / nusselt - 1.0).abs() < 1e-5);
    }
}

#[test]
fn the_stronger_current_rules() {
    assert!((mixed_convection(3.0, 0.0) - 3.0).abs() < 1e-12);
    assert!((mixed_convection(3.0, 4.0) - 4.497_94).abs() < 1e-5);
}

#[test]
fn air_is_air() {
    // Kelvin; conductivity, viscosity over density, Prandtl number at 101,325 Pa.
    for (kelvin, conductivity, viscosity, density, prandtl) in [
        (250.0, 0.022_564, 1.603_81e-5, 1.413_31, 0.714_72),
        (300.0, 0.026_384, 1.853_73e-5, 1.176_996, 0.707_064),
        (350.0, 0.030_003, 2.086_71e-5, 1.008_53, 0.701_90),
        (400.0, 0.033_453, 2.305_54e-5, 0.882_31, 0.698_93),
        (500.0, 0.039_945, 2.709_01e-5, 0.705_74, 0.698_45),
        (600.0, 0.046_011, 3.076_87e-5, 0.588_10, 0.702_96),
    ] {
        let air = AirProperties::at(Temperature::from_celsius(kelvin - 273.15), 101_325.0);
        let errors = [
            air.conductivity / conductivity - 1.0,
            air.kinematic_viscosity / (viscosity / density) - 1.0,
            air.prandtl / prandtl - 1.0,
        ];
        println!("{kelvin} K: conductivity, viscosity, Prandtl number off by {errors:.4?}");
        assert!(errors[0].abs() < 0.017 && errors[1].abs() < 0.020 && errors[2].abs() < 0.028);
    }
}
