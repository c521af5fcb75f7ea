//! Fuel: how much heat a cooker gives to the air around it and to the meat, what burns for it, and how much to have.
//!
//! The balance is for a fire that stands: what the fuel gives, less what leaves with the smoke, is what the walls lose
//! and the meat takes. It is the least certain part of the model; what the fire was really fed teaches a factor for the
//! cooker, and the amount to have is the one that suffices in nine cooks of ten.

mod air;
mod burn;
mod convection;
mod fed;
mod feeding;
mod heat_loss;
mod kind_of_fuel;
mod learned;
mod lessons;
mod meat_heat;
mod usual_vessel;
mod vessel;

pub use air::AirProperties;
pub(crate) use burn::hourly;
pub use burn::{Burn, FireWeather, FuelNeed, Stretch, fuel_need, rate};
pub use convection::{
    crossflow_cylinder, horizontal_cylinder, mixed_convection, sphere, vertical_plate,
};
pub use fed::{Fed, fed};
pub use feeding::{Feeding, feeding};
pub use heat_loss::{HeatLoss, heat_loss};
pub use kind_of_fuel::{Fuel, Ultimate};
pub use learned::LearnedFactor;
pub use lessons::learned;
pub use meat_heat::meat_heat;
pub use vessel::{Body, Shape, Vessel, Wall};
