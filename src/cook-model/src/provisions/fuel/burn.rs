//! How fast a fire burns, and how much a whole cook burns.

use super::air::SPECIFIC_HEAT;
use super::feeding::{Feeding, feeding};
use super::heat_loss::heat_loss;
use super::kind_of_fuel::Fuel;
use super::learned::LearnedFactor;
use super::vessel::Vessel;
use crate::plan::{CookerKind, Place};
use crate::provisions::Quantity;
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

/// What a cook burns, and how that came about. By weight, but by current for electricity.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FuelNeed {
    /// What burns.
    pub fuel: Fuel,
    /// Lost by the walls while the fire stands, mean.
    pub walls: Power,
    /// Taken by the meat, mean.
    pub meat: Power,
    /// Rate while the fire stands, by the model alone, per hour.
    pub rate: Quantity,
    /// To heat the cooker itself, by the model alone.
    pub start_up: Quantity,
    /// Charcoal lit first, where it is another fuel or a bed under the first.
    pub first_bed: Mass,
    /// Likely, with the learned factor, the first bed left out.
    pub likely: Quantity,
    /// Suffices in nine cooks of ten: have this. The first bed left out.
    pub have: Quantity,
    /// Likely time between two rounds, within what the trade is used to. None where nobody feeds it.
    pub feed_every: Option<TimeSpan>,
    /// Rounds of feeding over the likely cook.
    pub rounds: u32,
    /// What the cooker taught: in `likely` and `have`, and in how often it is fed.
    pub learned: LearnedFactor,
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
) -> Quantity {
    fuel.amount(hourly(vessel, fuel, pit, weather, meat))
}

/// The rate as a bare number: kg or kWh an hour.
pub(crate) fn hourly(
    vessel: &Vessel,
    fuel: Fuel,
    pit: Temperature,
    weather: &FireWeather,
    meat: Power,
) -> f64 {
    let heat = (walls(vessel, pit, weather) + meat) * TimeSpan::from_hours(1.0);
    heat.megajoules().max(0.0) / useful(vessel, fuel, pit, weather)
}

fn walls(vessel: &Vessel, pit: Temperature, weather: &FireWeather) -> Power {
    let losses = heat_loss(vessel, pit, weather);
    losses.iter().map(|loss| loss.power).sum()
}

/// Fuel to bring the walls up, kg or kWh: they end between the pit and the air outside, and lose half of their standing
/// loss on the way.
fn start_up(burn: &Burn, pit: Temperature) -> f64 {
    let losses = heat_loss(&burn.vessel, pit, &burn.weather);
    let stored: f64 = burn
        .vessel
        .bodies
        .iter()
        .zip(&losses)
        .map(|(body, loss)| {
            let mean = 0.5 * (loss.inside.celsius() + loss.outside.celsius());
            let area = body.shape.surface().square_metres() * body.open_share;
            body.wall.heat_capacity * area * (mean - burn.weather.air.celsius()).max(0.0)
        })
        .sum();
    let on_the_way = walls(&burn.vessel, pit, &burn.weather) * warm_up(burn.kind) * 0.5;
    let heat = Energy::from_joules(stored) + on_the_way;
    heat.megajoules() / useful(&burn.vessel, burn.fuel, pit, &burn.weather)
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
    let lasts = lasts.max(TimeSpan::from_seconds(1.0));
    let meat = Power::from_watts(burn.meat.joules() / lasts.seconds());
    let mut standing = 0.0;
    let mut wall_heat = Energy::ZERO;
    for stretch in &burn.stretches {
        let (pit, weather) = (stretch.pit, &burn.weather);
        standing += hourly(&burn.vessel, burn.fuel, pit, weather, meat) * stretch.lasts.hours();
        wall_heat += walls(&burn.vessel, pit, weather) * stretch.lasts;
    }
    let start_up = burn
        .stretches
        .first()
        .map_or(0.0, |first| start_up(burn, first.pit));
    let habit = feeding(burn.kind);
    let likely = burn.learned.likely();
    let rate = standing / lasts.hours();
    let feed_every = habit.map(|habit| feed_every(&habit, rate * likely));
    FuelNeed {
        fuel: burn.fuel,
        walls: Power::from_watts(wall_heat.joules() / lasts.seconds()),
        meat,
        rate: burn.fuel.amount(rate),
        start_up: burn.fuel.amount(start_up),
        first_bed: habit.map_or(Mass::ZERO, |habit| habit.first_bed),
        likely: burn.fuel.amount((standing + start_up) * likely),
        have: burn
            .fuel
            .amount((standing * burn.longer.max(1.0) + start_up) * burn.learned.nine_in_ten()),
        feed_every,
        rounds: feed_every.map_or(0, |every| fitting(lasts / every)),
        learned: burn.learned,
    }
}

/// `rate` in kg an hour.
fn feed_every(habit: &Feeding, rate: f64) -> TimeSpan {
    match habit.piece {
        Some(piece) if rate > 0.0 => TimeSpan::from_hours(piece.kilograms() / rate)
            .max(habit.soonest)
            .min(habit.latest),
        _ => habit.every,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn burn(kind: CookerKind) -> Burn {
        Burn {
            kind,
            vessel: Vessel::usual(kind).expect("fed"),
            fuel: Fuel::usual(kind).expect("fed"),
            weather: FireWeather {
                air: Temperature::from_celsius(15.0),
                wind_metres_per_second: 2.0,
                altitude: Length::ZERO,
            },
            stretches: vec![Stretch {
                pit: Temperature::from_celsius(121.0),
                lasts: TimeSpan::from_hours(8.0),
            }],
            longer: 1.25,
            meat: Energy::from_megajoules(4.0),
            learned: LearnedFactor::default(),
        }
    }

    #[test]
    fn two_halves_burn_what_the_whole_burns() {
        let whole = burn(CookerKind::Drum);
        let half = Stretch {
            lasts: TimeSpan::from_hours(4.0),
            ..whole.stretches[0]
        };
        let halves = Burn {
            stretches: vec![half, half],
            ..whole.clone()
        };
        let (whole, halves) = (fuel_need(&whole), fuel_need(&halves));
        assert!((whole.likely.number() - halves.likely.number()).abs() < 1e-9);
    }

    #[test]
    fn current_is_counted_as_current() {
        let need = fuel_need(&burn(CookerKind::Electric));
        let Quantity::Energy(likely) = need.likely else {
            panic!("current")
        };
        // Walls of a few hundred watts for 8 h.
        assert!((1.0..8.0).contains(&likely.kilowatt_hours()), "{likely:?}");
        assert_eq!(need.feed_every, None);
    }

    #[test]
    fn no_stretch_burns_nothing() {
        let nothing = Burn {
            stretches: Vec::new(),
            ..burn(CookerKind::Kettle)
        };
        assert_eq!(fuel_need(&nothing).have.number(), 0.0);
    }
}
