//! Salt through a slab against the equation itself: Fick's second law marched by small explicit steps, with the source
//! and its walls as Crank, The Mathematics of Diffusion, sets the problem (a finite layer at a tight wall).

use cook_model::provisions::{IN_FRIDGE, centre_over_mean, reach};
use cook_model::units::{Length, TimeSpan};

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
