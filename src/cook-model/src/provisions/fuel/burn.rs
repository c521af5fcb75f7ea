//! How fast a fire burns, and how much a whole cook burns.

use super::air::SPECIFIC_HEAT;
use super::feeding::{Feeding, feeding};
use super::heat_loss::heat_loss;
use super::kind_of_fuel::Fuel;
use super::learned::LearnedFactor;
use super::vessel::Vessel;
use crate::plan::{CookerKind, Place};
use crate::provisions::counting::fitting;
use crate::units::{Energy, Length, Mass, Power, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// The weather a fire stands in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct FireWeather {
    /// Air around the cooker.
    pub air: Temperature,
    /// Wind at the cooker, m/s.
    pub wind_metres_per_second: f64,
    /// Height above the sea.
    pub altitude: Length,
}

impl From<&Place> for FireWeather {
    fn from(place: &Place) -> Self {
        Self {
            air: place.air,
            wind_metres_per_second: place.wind_metres_per_second,
            altitude: place.altitude,
        }
    }
}

/// A stretch of a cook at one pit temperature.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stretch {
    /// Air at the meat.
    pub pit: Temperature,
    /// How long, likely.
    pub lasts: TimeSpan,
}

/// A fire from its lighting to the last piece off.
#[derive(Clone, Debug, PartialEq)]
pub struct Burn {
    /// The kind of cooker: how it is fed and what bed it is started on.
    pub kind: CookerKind,
    /// Its walls.
    pub vessel: Vessel,
    /// What it burns.
    pub fuel: Fuel,
    /// Where it stands.
    pub weather: FireWeather,
    /// The pit programme with its likely lengths.
    pub stretches: Vec<Stretch>,
    /// How many times its likely length the whole cook may last in one case of ten, 1 to 3.
    pub longer: f64,
    /// What all the meat takes, from fridge to finish.
    pub meat: Energy,
    /// What the cooker taught.
    pub learned: LearnedFactor,
}

/// What a cook burns, and how that came about. Weights are kilowatt-hours for electricity: see [`FuelNeed::unit_is_kilowatt_hours`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FuelNeed {
    /// What burns.
    pub fuel: Fuel,
    /// Lost by the walls while the fire stands, mean.
    pub walls: Power,
    /// Taken by the meat, mean.
    pub meat: Power,
    /// Rate while the fire stands, by the model alone, per hour.
    pub rate: Mass,
    /// To heat the cooker itself, by the model alone.
    pub start_up: Mass,
    /// Charcoal lit first, where it is another fuel or a bed under the first.
    pub first_bed: Mass,
    /// Likely, with the learned factor, the first bed left out.
    pub likely: Mass,
    /// Suffices in nine cooks of ten: have this. The first bed left out.
    pub have: Mass,
    /// Likely time between two rounds, within what the trade is used to. None where nobody feeds it.
    pub feed_every: Option<TimeSpan>,
    /// Rounds of feeding over the likely cook.
    pub rounds: u32,
}

impl FuelNeed {
    /// Whether the amounts are kilowatt-hours instead of kilograms.
    #[must_use]
    pub const fn unit_is_kilowatt_hours(&self) -> bool {
        matches!(self.fuel, Fuel::Electricity)
    }
}

/// Heat that a kilogram of fuel leaves in the cooker: its net heating value as far as it burns, less what the smoke
/// carries off at the temperature of the pit. MJ/kg, and never below a tenth of the heating value.
fn useful(vessel: &Vessel, fuel: Fuel, pit: Temperature, weather: &FireWeather) -> f64 {
    let heating = vessel.burnt_share * fuel.net_heating_value();
    let smoke = vessel.excess_air * fuel.air_needed() + 1.0;
    let carried = if matches!(fuel, Fuel::Electricity) {
        0.0
    } else {
        smoke * SPECIFIC_HEAT * (pit - weather.air).kelvin() / 1e6
    };
    (heating - carried).max(0.1 * heating)
}

/// Fuel per hour while the fire stands, by the model alone, with the meat taking so much.
#[must_use]
pub fn rate(
    vessel: &Vessel,
    fuel: Fuel,
    pit: Temperature,
    weather: &FireWeather,
    meat: Power,
) -> Mass {
    let walls: Power = heat_loss(vessel, pit, weather)
        .iter()
        .map(|loss| loss.power)
        .sum();
    let hourly = (walls + meat).watts().max(0.0) * 3600.0 / 1e6;
    Mass::from_kilograms(hourly / useful(vessel, fuel, pit, weather))
}

/// Fuel to bring the walls up: they end between the pit and the air outside, and lose half of their standing loss on the
/// way.
fn start_up(burn: &Burn, pit: Temperature) -> Mass {
    let losses = heat_loss(&burn.vessel, pit, &burn.weather);
    let stored: f64 = burn
        .vessel
        .bodies
        .iter()
        .zip(&losses)
        .map(|(body, loss)| {
            let mean = 0.5 * (loss.inside.celsius() + loss.outside.celsius());
            let capacity =
                body.wall.heat_capacity * body.shape.surface().square_metres() * body.open_share;
            capacity * (mean - burn.weather.air.celsius()).max(0.0)
        })
        .sum();
    let walls: Power = losses.iter().map(|loss| loss.power).sum();
    let on_the_way = 0.5 * walls.watts() * warm_up(burn.kind).seconds();
    Mass::from_kilograms(
        (stored + on_the_way) / 1e6 / useful(&burn.vessel, burn.fuel, pit, &burn.weather),
    )
}

/// From lighting to a clean steady fire. Common practice.
const fn warm_up(kind: CookerKind) -> TimeSpan {
    TimeSpan::from_minutes(match kind {
        CookerKind::Offset | CookerKind::Ceramic | CookerKind::Cabinet => 60.0,
        CookerKind::Drum => 45.0,
        CookerKind::Kettle => 40.0,
        CookerKind::Pellet | CookerKind::Gas | CookerKind::Electric => 20.0,
        CookerKind::Oven | CookerKind::FanOven => 0.0,
    })
}

/// What a cook burns. Nothing planned burns nothing.
#[must_use]
pub fn fuel_need(burn: &Burn) -> FuelNeed {
    let lasts: TimeSpan = burn.stretches.iter().map(|stretch| stretch.lasts).sum();
    let seconds = lasts.seconds().max(1.0);
    let meat = Power::from_watts(burn.meat.joules() / seconds);
    let mut standing = Mass::ZERO;
    let mut wall_heat = 0.0;
    for stretch in &burn.stretches {
        standing +=
            rate(&burn.vessel, burn.fuel, stretch.pit, &burn.weather, meat) * stretch.lasts.hours();
        wall_heat += heat_loss(&burn.vessel, stretch.pit, &burn.weather)
            .iter()
            .map(|loss| loss.power.watts())
            .sum::<f64>()
            * stretch.lasts.seconds();
    }
    let start_up = burn
        .stretches
        .first()
        .map_or(Mass::ZERO, |first| start_up(burn, first.pit));
    let habit = feeding(burn.kind);
    let likely = (standing + start_up) * burn.learned.likely();
    let have = (standing * burn.longer.max(1.0) + start_up) * burn.learned.nine_in_ten();
    let rate = standing / (seconds / 3600.0);
    let feed_every = habit.map(|habit| feed_every(&habit, rate * burn.learned.likely()));
    FuelNeed {
        fuel: burn.fuel,
        walls: Power::from_watts(wall_heat / seconds),
        meat,
        rate,
        start_up,
        first_bed: habit.map_or(Mass::ZERO, |habit| habit.first_bed),
        likely,
        have,
        feed_every,
        rounds: feed_every.map_or(0, |every| fitting(lasts / every)),
    }
}

fn feed_every(habit: &Feeding, rate: Mass) -> TimeSpan {
    match habit.piece {
        Some(piece) if rate > Mass::ZERO => TimeSpan::from_hours(piece / rate)
            .max(habit.soonest)
            .min(habit.latest),
        _ => habit.every,
    }
}
