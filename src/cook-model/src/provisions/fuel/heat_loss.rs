//! What the walls of a cooker lose: air and heat radiation inside, the wall, air, wind and heat radiation outside.

use super::air::AirProperties;
use super::burn::FireWeather;
use super::convection::{
    crossflow_cylinder, horizontal_cylinder, mixed_convection, rayleigh, sphere, vertical_plate,
};
use super::vessel::{Body, Shape, Vessel};
use crate::physics::air::pressure_at;
use crate::units::{Power, Temperature};

/// Stefan-Boltzmann constant, W/(m² K⁴) (CODATA).
const STEFAN_BOLTZMANN: f64 = 5.670_374e-8;

/// Share of the inside that trades heat radiation with things as hot as its air: coals, deflector, grate, meat, smoke.
/// Set by hand.
const INNER_EXCHANGE: f64 = 0.5;

/// What one body loses, and how hot its wall is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatLoss {
    /// Lost to the open.
    pub power: Power,
    /// Outside of the wall.
    pub outside: Temperature,
    /// Inside of the wall.
    pub inside: Temperature,
}

/// The loss of each body of a cooker whose air at the meat is `pit`.
#[must_use]
pub fn heat_loss(vessel: &Vessel, pit: Temperature, weather: &FireWeather) -> Vec<HeatLoss> {
    vessel
        .bodies
        .iter()
        .map(|body| body_loss(body, pit, weather))
        .collect()
}

fn body_loss(body: &Body, pit: Temperature, weather: &FireWeather) -> HeatLoss {
    let inner_air = pit.celsius() + body.hotter;
    let outer_air = weather.air.celsius();
    let pascals = pressure_at(weather.altitude);
    let resistance = body.wall.insulation.metres() / body.wall.conductivity;
    let height = height(&body.shape);
    // Flux outwards through the inner film less the flux away from the outside, for a guessed outer face.
    let flux_away = |outside: f64| {
        outside_flux(
            body,
            outside,
            outer_air,
            weather.wind_metres_per_second,
            pascals,
        )
    };
    let excess = |outside: f64| {
        let flux = flux_away(outside);
        let inside = outside + flux * resistance;
        inside_flux(inner_air, inside, height, pascals) - flux
    };
    // The excess only falls as the outer face gets hotter: bisect.
    let (mut cold, mut hot) = (outer_air, inner_air.max(outer_air));
    for _ in 0..50 {
        let middle = 0.5 * (cold + hot);
        if excess(middle) > 0.0 {
            cold = middle;
        } else {
            hot = middle;
        }
    }
    let flux = flux_away(hot);
    let area = body.shape.surface().square_metres() * body.open_share;
    HeatLoss {
        power: Power::from_watts(flux * area),
        outside: Temperature::from_celsius(hot),
        inside: Temperature::from_celsius(hot + flux * resistance),
    }
}

fn height(shape: &Shape) -> f64 {
    match *shape {
        Shape::LyingBarrel { diameter, .. } | Shape::Ball { diameter } => diameter.metres(),
        Shape::StandingBarrel { height, .. } | Shape::Cabinet { height, .. } => height.metres(),
    }
}

/// What the wind meets.
fn breadth(shape: &Shape) -> f64 {
    match *shape {
        Shape::LyingBarrel { diameter, .. }
        | Shape::Ball { diameter }
        | Shape::StandingBarrel { diameter, .. } => diameter.metres(),
        Shape::Cabinet { width, .. } => width.metres(),
    }
}

fn radiation(hot: f64, cold: f64, emissivity: f64) -> f64 {
    let fourth = |celsius: f64| {
        let kelvin = celsius + 273.15;
        kelvin * kelvin * kelvin * kelvin
    };
    emissivity * STEFAN_BOLTZMANN * (fourth(hot) - fourth(cold))
}

/// From the air and the hot things inside to the wall, W/m².
fn inside_flux(air: f64, wall: f64, height: f64, pascals: f64) -> f64 {
    let difference = air - wall;
    if difference <= 0.0 {
        return difference;
    }
    let film = AirProperties::at(Temperature::from_celsius(0.5 * (air + wall)), pascals);
    let nusselt = vertical_plate(rayleigh(film, height, difference), film.prandtl);
    nusselt * film.conductivity / height * difference + radiation(air, wall, INNER_EXCHANGE)
}

/// From the outside of the wall to air and surroundings, which are taken to be as cold as the air, W/m².
fn outside_flux(body: &Body, wall: f64, air: f64, wind: f64, pascals: f64) -> f64 {
    let difference = wall - air;
    if difference <= 0.0 {
        return 0.0;
    }
    let film = AirProperties::at(Temperature::from_celsius(0.5 * (air + wall)), pascals);
    let (height, breadth) = (height(&body.shape), breadth(&body.shape));
    let rayleigh = rayleigh(film, height, difference);
    let nusselt = match body.shape {
        Shape::LyingBarrel { .. } => horizontal_cylinder(rayleigh, film.prandtl),
        Shape::Ball { .. } => sphere(rayleigh, film.prandtl),
        Shape::StandingBarrel { .. } | Shape::Cabinet { .. } => {
            vertical_plate(rayleigh, film.prandtl)
        }
    };
    let still = nusselt * film.conductivity / height;
    let reynolds = wind.max(0.0) * breadth / film.kinematic_viscosity;
    let windy = crossflow_cylinder(reynolds, film.prandtl) * film.conductivity / breadth;
    mixed_convection(still, windy) * difference + radiation(wall, air, body.wall.emissivity)
}
