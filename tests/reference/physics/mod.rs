//! Heat and water in meat against series solutions, property tables, a stiff library solver, roasting charts and the
//! trade's practice.

mod circumstances;
mod conduction;
mod cooks;
mod demands;
mod practice;
mod properties;
mod psychrometrics;
mod roasting;
mod shape;
mod stiff;

use cook_model::meat::CutId;
use cook_model::physics::{CookerClass, Finish, Scenario};
use cook_model::units::{Mass, Temperature};

/// The start that the stiff solver's curves were made with: 3.7 °C, inferred from their first hour.
fn start() -> Temperature {
    Temperature::from_celsius(3.667)
}

/// A cut bare at one pit temperature, taken off when the probe reaches a target.
fn bare(
    cut: CutId,
    mass: Mass,
    cooker: CookerClass,
    pit: Temperature,
    target: Temperature,
) -> Scenario {
    let mut scenario = Scenario::usual(cut, mass, cooker);
    scenario.start = start();
    scenario.pit[0].set = pit;
    scenario.wraps.clear();
    scenario.finish = Finish::Temperature {
        target,
        minimum: Temperature::from_celsius(0.0),
    };
    scenario
}

fn fahrenheit(degrees: f64) -> Temperature {
    Temperature::from_fahrenheit(degrees)
}

fn celsius(degrees: f64) -> Temperature {
    Temperature::from_celsius(degrees)
}
