//! Time at temperature: every printed row, from both sides.

use cook_model::safety::{Dwell, LethalityTable};
use cook_model::units::{Temperature, TimeSpan};
use serde::Deserialize;

#[derive(Deserialize)]
struct Printed {
    source: String,
    rows: Vec<[f64; 3]>,
}

#[derive(Deserialize)]
struct PrintedFahrenheit {
    source: String,
    rows: Vec<[f64; 2]>,
}

#[derive(Deserialize)]
struct Tables {
    red_meat_seven_log: Printed,
    red_meat_six_and_a_half_log: Printed,
    food_code_roasts: Printed,
    poultry_seven_log: Printed,
    poultry_other_columns: PrintedFahrenheit,
}

fn tables() -> Tables {
    serde_json::from_str(include_str!("../data/lethality.json")).expect("the data file is sound")
}

fn met(table: LethalityTable, at: Temperature, seconds: f64) -> bool {
    let mut dwell = Dwell::new(table);
    dwell.add(TimeSpan::from_seconds(seconds), at, at);
    dwell.met()
}

fn meets_every_row(table: LethalityTable, printed: &Printed) {
    assert!(!printed.source.is_empty());
    let below = 1e-6;
    for pair in printed.rows.windows(2) {
        let ([fahrenheit, celsius, seconds], [next, _, _]) = (pair[0], pair[1]);
        for at in [
            Temperature::from_celsius(celsius),
            Temperature::from_fahrenheit(fahrenheit),
        ] {
            assert!(
                met(table, at, seconds),
                "{fahrenheit} °F for {seconds} s is the printed row"
            );
            assert!(
                seconds == 0.0 || !met(table, at, seconds - below),
                "{fahrenheit} °F for less than {seconds} s is shorter than printed"
            );
        }
        // Just below the next row there is no credit for the next row.
        let almost = Temperature::from_fahrenheit(next - 0.2);
        assert!(
            seconds == 0.0 || !met(table, almost, seconds - below),
            "{fahrenheit} to {next} °F"
        );
        assert!(met(table, almost, seconds));
    }
    let [first, _, _] = printed.rows[0];
    let under = Temperature::from_fahrenheit(first - 0.2);
    assert!(
        !met(table, under, 1e9),
        "below the first row no time is enough"
    );
    let [last, _, seconds] = printed.rows[printed.rows.len() - 1];
    assert!(met(table, Temperature::from_fahrenheit(last), seconds));
}

#[test]
fn red_meat_meets_every_printed_row_and_no_shorter_time() {
    meets_every_row(LethalityTable::RedMeat, &tables().red_meat_seven_log);
}

#[test]
fn poultry_meets_every_printed_row_and_no_shorter_time() {
    meets_every_row(LethalityTable::Poultry, &tables().poultry_seven_log);
}

#[test]
fn the_column_in_use_is_never_shorter_than_the_others_that_are_printed() {
    let tables = tables();
    for other in [
        &tables.red_meat_six_and_a_half_log,
        &tables.food_code_roasts,
    ] {
        for [fahrenheit, _, seconds] in &other.rows {
            let at = Temperature::from_fahrenheit(*fahrenheit);
            let used = LethalityTable::RedMeat
                .time_at(at)
                .expect("a row")
                .seconds();
            assert!(
                used >= *seconds,
                "{fahrenheit} °F: {used} s against {seconds} s in {}",
                other.source
            );
        }
    }
    let others = &tables.poultry_other_columns;
    for [fahrenheit, seconds] in &others.rows {
        let at = Temperature::from_fahrenheit(*fahrenheit);
        let used = LethalityTable::Poultry
            .time_at(at)
            .expect("a row")
            .seconds();
        assert!(
            used >= *seconds,
            "{fahrenheit} °F: {used} s against {seconds} s in {}",
            others.source
        );
    }
}

#[test]
fn poultry_always_takes_longer_than_red_meat() {
    let tables = tables();
    for [fahrenheit, _, _] in &tables.poultry_seven_log.rows {
        let at = Temperature::from_fahrenheit(*fahrenheit);
        assert!(LethalityTable::Poultry.time_at(at) >= LethalityTable::RedMeat.time_at(at));
    }
}
