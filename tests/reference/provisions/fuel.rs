//! Fuel against the trade's rates, a simpler balance, and its own balance of heat.

use cook_model::plan::CookerKind;
use cook_model::provisions::fuel::{
    Burn, FireWeather, Fuel, LearnedFactor, Stretch, Vessel, fuel_need, heat_loss, rate,
};
use cook_model::units::{Energy, Length, Power, Temperature, TimeSpan};

fn weather(celsius: f64, wind: f64) -> FireWeather {
    FireWeather {
        air: Temperature::from_celsius(celsius),
        wind_metres_per_second: wind,
        altitude: Length::ZERO,
    }
}

const MEAT: Power = Power::from_watts(120.0);

/// A cook of so many hours at 225 °F on a mild day with a breath of wind.
fn cook(kind: CookerKind, hours: f64) -> Burn {
    let lasts = TimeSpan::from_hours(hours);
    Burn {
        kind,
        vessel: Vessel::usual(kind).expect("a cooker that is fed"),
        fuel: Fuel::usual(kind).expect("a cooker that is fed"),
        weather: weather(20.0, 0.5),
        stretches: vec![Stretch {
            pit: Temperature::from_fahrenheit(225.0),
            lasts,
        }],
        longer: 1.0,
        meat: MEAT * lasts,
        learned: LearnedFactor::default(),
    }
}

#[test]
fn whole_cooks_burn_what_the_trade_tells() {
    // Common practice, kg an hour over the whole cook: an offset a split of 0.4 to 0.6 kg every 30 to 45 min; a kettle
    // about 2.3 kg in 8 to 10 h; a drum 0.3 to 0.4; a ceramic 0.15 to 0.2; a pellet cooker one to two pounds an hour.
    // The last figure is how far outside the model with its starting factor of 1.3 comes out: it may only shrink.
    let told = [
        (CookerKind::Offset, 10.0, [0.60, 1.10], 0.0),
        (CookerKind::Kettle, 9.0, [0.23, 0.29], 0.0),
        (CookerKind::Drum, 10.0, [0.30, 0.40], 0.0),
        (CookerKind::Ceramic, 10.0, [0.15, 0.20], 0.013),
        (CookerKind::Pellet, 10.0, [0.45, 0.91], 0.0),
    ];
    for (kind, hours, [least, most], known_miss) in told {
        let need = fuel_need(&cook(kind, hours));
        // The offset's first bed is charcoal under wood; elsewhere it is the same fuel.
        let bed = if kind == CookerKind::Offset {
            0.0
        } else {
            need.first_bed.kilograms()
        };
        let hourly = (need.likely.number() + bed) / hours;
        let miss = (least - hourly).max(hourly - most).max(0.0);
        println!(
            "{kind:?}: {hourly:.3} kg/h over {hours} h, told {least} to {most}, miss {miss:.3}"
        );
        assert!(miss <= known_miss, "{kind:?}: {hourly}");
    }
}

#[test]
fn a_simpler_balance_agrees_within_about_a_quarter() {
    // kg an hour by one coefficient for each wall (inside 10 to 14 W/m²K, outside 11.5 + 4 × wind), worked out by hand
    // for the same five cookers; set by judgement, so it bounds blunders, no more. Pit °F, wind m/s, kg/h.
    let rows = [
        (CookerKind::Offset, 225.0, 0.5, 0.6199),
        (CookerKind::Offset, 275.0, 0.5, 0.781),
        (CookerKind::Offset, 225.0, 4.0, 0.7926),
        (CookerKind::Kettle, 225.0, 0.5, 0.192),
        (CookerKind::Kettle, 275.0, 0.5, 0.2452),
        (CookerKind::Kettle, 225.0, 4.0, 0.2508),
        (CookerKind::Ceramic, 225.0, 0.5, 0.08641),
        (CookerKind::Ceramic, 275.0, 0.5, 0.1107),
        (CookerKind::Ceramic, 225.0, 4.0, 0.09764),
        (CookerKind::Cabinet, 225.0, 0.5, 0.07408),
        (CookerKind::Cabinet, 275.0, 0.5, 0.09174),
        (CookerKind::Cabinet, 225.0, 4.0, 0.07603),
        (CookerKind::Drum, 225.0, 0.5, 0.3048),
        (CookerKind::Drum, 275.0, 0.5, 0.3954),
        (CookerKind::Drum, 225.0, 4.0, 0.3934),
    ];
    for (kind, fahrenheit, wind, simple) in rows {
        let vessel = Vessel::usual(kind).expect("fed");
        let fuel = Fuel::usual(kind).expect("fed");
        let pit = Temperature::from_fahrenheit(fahrenheit);
        let hourly = rate(&vessel, fuel, pit, &weather(20.0, wind), MEAT).number();
        let ratio = hourly / simple;
        println!(
            "{kind:?} {fahrenheit} °F, {wind} m/s: {hourly:.4} kg/h, simpler {simple}, ratio {ratio:.2}"
        );
        assert!((0.73..=1.23).contains(&ratio), "{kind:?}: {ratio}");
    }
}

#[test]
fn heat_in_is_heat_out() {
    for kind in [
        CookerKind::Offset,
        CookerKind::Kettle,
        CookerKind::Drum,
        CookerKind::Ceramic,
        CookerKind::Cabinet,
        CookerKind::Pellet,
        CookerKind::Gas,
    ] {
        let (vessel, fuel) = (
            Vessel::usual(kind).expect("fed"),
            Fuel::usual(kind).expect("fed"),
        );
        let (pit, weather) = (Temperature::from_celsius(121.0), weather(12.0, 2.0));
        let burnt = rate(&vessel, fuel, pit, &weather, MEAT).number() / 3600.0;
        let given = burnt * vessel.burnt_share * fuel.net_heating_value() * 1e6;
        let smoke = burnt * (vessel.excess_air * fuel.air_needed() + 1.0) * 1015.0 * (121.0 - 12.0);
        let walls: f64 = heat_loss(&vessel, pit, &weather)
            .iter()
            .map(|loss| loss.power.watts())
            .sum();
        let error = given - smoke - walls - MEAT.watts();
        println!(
            "{kind:?}: fire {given:.1} W = smoke {smoke:.1} + walls {walls:.1} + meat 120, off by {error:.1e}"
        );
        assert!(error.abs() < 1e-6 * given);
        for (body, loss) in vessel.bodies.iter().zip(heat_loss(&vessel, pit, &weather)) {
            let resistance = body.wall.insulation.metres() / body.wall.conductivity;
            let area = body.shape.surface().square_metres() * body.open_share;
            let through = (loss.inside - loss.outside).kelvin() * area;
            assert!((through - loss.power.watts() * resistance).abs() < 1e-9);
        }
    }
}

#[test]
fn wood_gives_what_the_printed_table_says() {
    // Water by weight, net MJ/kg, from 8,600 Btu/lb of oven-dry hardwood with 6 % hydrogen (US Forest Products
    // Laboratory, fuel value calculator; the net column worked out by hand).
    for (moisture, net) in [
        (0.0, 18.68),
        (0.1, 16.57),
        (0.15, 15.51),
        (0.2, 14.46),
        (0.25, 13.40),
        (0.3, 12.34),
        (0.4, 10.23),
        (0.5, 8.12),
    ] {
        let model = Fuel::Wood { moisture }.net_heating_value();
        assert!((model - net).abs() < 0.006, "{moisture}: {model}");
    }
}

#[test]
fn combustion_draws_the_air_and_makes_the_water_of_stoichiometry() {
    // Dry air for dry wood of 50 % C, 6 % H, 44 % O: 5.93 kg/kg worked out by hand with 23.1 % of oxygen in air.
    let wood = Fuel::Wood { moisture: 0.0 }.air_needed();
    assert!((wood / 5.93 - 1.0).abs() < 0.01, "{wood}");
    // Propane: 5 O2 for each C3H8: 160/44/0.232 = 15.7.
    assert!((Fuel::Propane.air_needed() - 15.67).abs() < 0.02);
    // Wood of 18 % water and five times the air: 0.02542 worked out by hand with the air rounded to 4.9 kg/kg.
    let humidity = Fuel::Wood { moisture: 0.18 }.smoke_humidity(5.0);
    println!("smoke of an offset: {humidity:.5} kg/kg, by hand 0.02542");
    assert!((humidity / 0.02542 - 1.0).abs() < 0.015);
}

#[test]
fn briquettes_give_at_least_what_their_carbon_gives() {
    // EN 1860-2: at least 60 % fixed carbon when dry, at most 8 % water; carbon burns with 32.8 MJ/kg. On a trader's page
    // good lump is told as 10,000 to 12,000 Btu/lb and briquettes with much filler as 7,000 to 9,000.
    let carbon_alone = 0.60 * 0.92 * 32.8;
    assert!(Fuel::Briquettes.net_heating_value() >= carbon_alone);
    let lump = Fuel::Lump.net_heating_value() / 2.326e-3;
    assert!((10_000.0..=12_600.0).contains(&lump), "{lump} Btu/lb");
}

#[test]
fn the_offset_is_fed_as_often_as_the_trade_feeds_it() {
    let need = fuel_need(&cook(CookerKind::Offset, 12.0));
    let every = need.feed_every.expect("fed by hand").minutes();
    println!(
        "offset: a split every {every:.0} min, {} rounds",
        need.rounds
    );
    assert!((30.0..=60.0).contains(&every));
    assert!(need.have.number() > need.likely.number());
}

#[test]
fn nothing_on_the_grate_still_burns() {
    let mut burn = cook(CookerKind::Kettle, 5.0);
    burn.meat = Energy::ZERO;
    assert!(fuel_need(&burn).likely.number() > 0.2);
}
