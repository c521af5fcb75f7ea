//! Minimums, clocks and rates, from both sides of each limit.

use cook_model::meat::{CutId, Make, catalogue};
use cook_model::plan::{Audience, Intact};
use cook_model::safety::{
    Sort, hold_minimum, keeps_raw, minimum, out_of_fridge_limit, thaw_in_cold_water, thaw_in_fridge,
};
use cook_model::units::{Mass, Temperature};

/// FoodSafety.gov, safe minimum internal temperature chart: °F, and minutes of rest.
const CONSUMER: [(Make, f64, f64); 4] = [
    (Make::WholeMuscle, 145.0, 3.0),
    (Make::Ground, 160.0, 0.0),
    (Make::Poultry, 165.0, 0.0),
    (Make::Fish, 145.0, 0.0),
];

/// The chart prints °F and °C rounded to a tenth; the limit is the lower of the two.
fn same_to_a_tenth(limit: Temperature, fahrenheit: f64) {
    let exact = Temperature::from_fahrenheit(fahrenheit).celsius();
    assert!(
        limit.celsius() <= exact && limit.celsius() > exact - 0.05,
        "{fahrenheit} °F"
    );
}

#[test]
fn intact_food_is_held_to_the_consumer_chart() {
    for (make, fahrenheit, rest) in CONSUMER {
        let least = minimum(Sort::of(make, Intact::Yes));
        same_to_a_tenth(least.temperature, fahrenheit);
        assert!(least.then.minutes() >= rest, "{make:?}");
    }
}

#[test]
fn pierced_stuffed_and_reheated_food_is_held_to_the_stricter_figures() {
    // Food Code 3-401.11: 155 °F for 17 s; 165 °F for stuffed meat. FoodSafety.gov: 165 °F for leftovers; Food Code
    // 3-403.11: for 15 s.
    let cases = [
        (Sort::PiercedMuscle, 155.0, 17.0),
        (Sort::Stuffed, 165.0, 0.0),
        (Sort::Leftovers, 165.0, 15.0),
    ];
    for (sort, fahrenheit, seconds) in cases {
        let least = minimum(sort);
        same_to_a_tenth(least.temperature, fahrenheit);
        assert_eq!(least.then.seconds(), seconds);
    }
}

#[test]
fn every_cut_starts_from_a_target_at_or_above_its_minimum_when_intact() {
    for cut in catalogue() {
        let least = minimum(Sort::of(cut.make, Intact::Yes)).temperature;
        assert!(cut.default_target() >= least, "{}", cut.name);
    }
}

#[test]
fn out_of_the_fridge_two_hours_and_one_above_ninety_fahrenheit() {
    // USDA FSIS, basics for handling food safely.
    assert_eq!(
        out_of_fridge_limit(Temperature::from_fahrenheit(90.0)).hours(),
        2.0
    );
    assert_eq!(
        out_of_fridge_limit(Temperature::from_fahrenheit(90.1)).hours(),
        1.0
    );
}

#[test]
fn holding_by_audience() {
    // 140 °F by USDA FSIS for homes; 135 °F and, for roasts by the table, 130 °F by the Food Code, 3-501.16.
    let cases = [
        (Audience::Household, false, 140.0),
        (Audience::Public, false, 135.0),
        (Audience::Household, true, 130.0),
        (Audience::Public, true, 130.0),
    ];
    for (audience, by_table, fahrenheit) in cases {
        let (least, _) = hold_minimum(audience, by_table);
        // 135 °F is printed as 57 °C.
        assert!((least.fahrenheit() - fahrenheit).abs() < 0.41 && least.fahrenheit() <= fahrenheit);
    }
}

#[test]
fn thawing_by_the_printed_rates() {
    // USDA FSIS, The Big Thaw: a day for 4 to 5 lb in the fridge; 30 min a pound in cold water. Printed for turkeys:
    // 4 to 12 lb 1 to 3 days and 2 to 6 h, 12 to 16 lb 3 to 4 and 6 to 8, 16 to 20 lb 4 to 5 and 8 to 10, 20 to 24 lb
    // 5 to 6 and 10 to 12.
    let turkeys = [
        (8.0, [1.0, 3.0], [2.0, 6.0]),
        (14.0, [3.0, 4.0], [6.0, 8.0]),
        (18.0, [4.0, 5.0], [8.0, 10.0]),
        (22.0, [5.0, 6.0], [10.0, 12.0]),
    ];
    for (pounds, days, hours) in turkeys {
        let mass = Mass::from_pounds(pounds);
        let fridge = thaw_in_fridge(CutId::TurkeyWhole, mass);
        let water = thaw_in_cold_water(CutId::TurkeyWhole, mass);
        assert_eq!(
            [fridge.least.hours(), fridge.most.hours()],
            days.map(|day| day * 24.0)
        );
        assert_eq!([water.least.hours(), water.most.hours()], hours);
    }
    for pounds in [5.0, 8.0, 13.0, 20.0] {
        let mass = Mass::from_pounds(pounds);
        let fridge = thaw_in_fridge(CutId::PorkShoulderButt, mass);
        assert!((fridge.least.hours() - 24.0 * pounds / 5.0).abs() < 1e-9);
        assert!((fridge.most.hours() - 24.0 * pounds / 4.0).abs() < 1e-9);
        let water = thaw_in_cold_water(CutId::PorkShoulderButt, mass);
        assert!((water.least.minutes() - 30.0 * pounds).abs() < 1e-9);
    }
}

#[test]
fn raw_meat_keeps_as_the_chart_says() {
    // FoodSafety.gov, cold food storage chart: red meat 3 to 5 days, ground meat and poultry 1 to 2.
    for (make, days) in [
        (Make::WholeMuscle, [3.0, 5.0]),
        (Make::Ground, [1.0, 2.0]),
        (Make::Poultry, [1.0, 2.0]),
    ] {
        let keeps = keeps_raw(make);
        assert_eq!(
            [keeps.least.hours() / 24.0, keeps.most.hours() / 24.0],
            days
        );
    }
}
