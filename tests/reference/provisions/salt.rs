//! Salt through a slab against the equation itself: Fick's second law marched by small explicit steps, with the source
//! and its walls as Crank, The Mathematics of Diffusion, sets the problem (a finite layer at a tight wall).

use cook_model::provisions::{
    IN_FRIDGE, RATE, SaltKind, TEASPOONS_IN_A_TABLESPOON, centre_over_mean, reach, soak,
};
use cook_model::units::{Length, Mass, TimeSpan};

/// Centre over mean by marching: half a slab in `cells`, all salt in the outermost one at the start, walls tight.
fn marched(half_metres: f64, hours: f64, diffusivity: f64) -> f64 {
    let cells = 200_usize;
    let width = half_metres / 200.0;
    let mut salt = vec![0.0_f64; cells];
    salt[cells - 1] = 200.0;
    let step = 0.4 * width * width / diffusivity;
    let mut left = hours * 3600.0;
    while left > 0.0 {
        let taken = step.min(left);
        let share = diffusivity * taken / (width * width);
        let flows: Vec<f64> = salt
            .windows(2)
            .map(|pair| share * (pair[1] - pair[0]))
            .collect();
        for (index, flow) in flows.iter().enumerate() {
            salt[index] += flow;
            salt[index + 1] -= flow;
        }
        left -= taken;
    }
    salt[0]
}

#[test]
fn a_dry_brined_slab_evens_out_as_the_equation_says() {
    // Half thickness in m, hours, share known from the cosine series worked out by hand.
    for (half, hours, series) in [
        (0.0125, 24.0, 0.8694),
        (0.02, 72.0, 0.9183),
        (0.035, 72.0, 0.3266),
    ] {
        let model = centre_over_mean(
            Length::from_metres(half),
            TimeSpan::from_hours(hours),
            5e-10,
        );
        let march = marched(half, hours, 5e-10);
        println!("{half} m, {hours} h: model {model:.4}, series {series:.4}, marched {march:.4}");
        assert!((model - series).abs() < 1e-4);
        assert!((model - march).abs() < 5e-3);
    }
}

#[test]
fn nothing_reaches_the_middle_of_a_shoulder_butt_in_three_days() {
    let share = centre_over_mean(
        Length::from_millimetres(60.0),
        TimeSpan::from_hours(72.0),
        IN_FRIDGE.usual,
    );
    // Said of a 120 mm butt (common practice): nothing; a hundredth of the mean is nothing to the tongue.
    assert!(share < 0.01, "{share}");
}

#[test]
fn a_day_reaches_about_six_millimetres() {
    // 0.954 √(D t): 6.3 mm at 5e-10 m²/s, 4.9 mm at 3e-10.
    let day = TimeSpan::from_hours(24.0);
    assert!((reach(day, 5e-10).millimetres() - 6.27).abs() < 0.01);
    assert!((reach(day, 3e-10).millimetres() - 4.86).abs() < 0.01);
}

#[test]
fn a_wet_brined_slab_takes_up_what_the_series_says() {
    // Half thickness in m, hours; share of the final uptake and centre over surface, D = 5e-10 m²/s, from the series for
    // a plane sheet with a constant surface, worked out by hand.
    for (half, hours, uptake, centre) in [
        (0.0125, 24.0, 0.5901, 0.3573),
        (0.02, 24.0, 0.3708, 0.062_85),
        (0.02, 72.0, 0.6355, 0.4279),
        (0.035, 72.0, 0.3670, 0.059_42),
    ] {
        let soak = soak(
            Length::from_metres(half),
            TimeSpan::from_hours(hours),
            5e-10,
        );
        assert!((soak.uptake - uptake).abs() < 2e-4, "{soak:?}");
        assert!((soak.centre - centre).abs() < 2e-4, "{soak:?}");
    }
}

#[test]
fn spoons_hold_what_is_printed() {
    // USDA SR28, 02047, table salt: 6.0 g a teaspoon, 18 g a tablespoon, 292 g a cup (48 teaspoons).
    let spoon = SaltKind::Table.teaspoon();
    assert!((spoon.most.grams() * TEASPOONS_IN_A_TABLESPOON - 18.0).abs() < 0.1);
    assert!((spoon.most.grams() * 48.0 / 292.0 - 1.0).abs() < 0.02);
    // Conversion pages print 14.4 to 16 g a tablespoon of coarse salt in dense flakes, 8.4 to 10 in light ones.
    for (kind, least, most) in [
        (SaltKind::CoarseDense, 14.4, 16.0),
        (SaltKind::CoarseLight, 8.4, 10.0),
        (SaltKind::FineSea, 15.0, 16.0),
        (SaltKind::FlakeSea, 9.0, 9.0),
    ] {
        let spoon = kind.teaspoon();
        assert!(
            (spoon.least.grams() * TEASPOONS_IN_A_TABLESPOON - least).abs() < 0.05,
            "{kind:?}"
        );
        assert!(
            (spoon.most.grams() * TEASPOONS_IN_A_TABLESPOON - most).abs() < 0.15,
            "{kind:?}"
        );
    }
}

#[test]
fn half_a_teaspoon_a_pound_is_far_below_the_rate_by_weight() {
    // The two habits of the trade differ: half a teaspoon of coarse salt a pound is 3.1 to 5.8 g/kg.
    let per_kilogram = |grams: f64| 0.5 * grams / Mass::from_pounds(1.0).kilograms();
    let light = per_kilogram(SaltKind::CoarseLight.teaspoon().least.grams());
    let dense = per_kilogram(SaltKind::CoarseDense.teaspoon().most.grams());
    println!("half a teaspoon a pound: {light:.1} to {dense:.1} g/kg, by weight 8 to 15");
    assert!((light - 3.1).abs() < 0.05 && (dense - 5.8).abs() < 0.1);
    assert!(dense / 1000.0 < RATE.least);
}
