//! The map from dimensions to one coordinate at shapes whose answer is known.

use crate::rows::Rows;
use cook_model::physics::shape::Shape;
use std::f64::consts::{FRAC_PI_6, PI};

#[test]
fn a_ball_a_long_rod_and_a_wide_plate_are_themselves() {
    let mut rows = Rows::new(
        "shapes",
        "geometry; first roots of conduction π², 5.783, π²/4",
    );
    let ball = Shape::of([0.05; 3], FRAC_PI_6);
    rows.holds("exponent of a ball", ball.exponent, 2.0, 0.09);
    rows.holds("radius of a ball", ball.radius / 0.05, 1.0, 0.02);
    rows.holds("area of a ball", ball.area / (4.0 * PI * 0.0025), 1.0, 1e-3);
    let plate = Shape::of([0.02, 0.5, 0.5], 1.0);
    rows.holds("exponent of a plate", plate.exponent, 0.0, 1e-6);
    rows.holds("radius of a plate", plate.radius / 0.02, 1.0, 1e-3);
    // What counts for the pace is (first root / radius)².
    let pace = |shape: Shape| {
        let n = shape.exponent;
        (2.467 + 3.0 * n + 0.35 * n * n) / (shape.radius * shape.radius)
    };
    rows.holds("pace of a ball", pace(ball) * 0.0025 / (PI * PI), 1.0, 0.01);
    rows.holds(
        "pace of a plate",
        pace(plate) * 0.0004 / (PI * PI / 4.0),
        1.0,
        0.01,
    );
    let bar = Shape::of([0.03, 0.03, 3.0], 1.0);
    rows.holds(
        "pace of a long square bar",
        pace(bar) * 0.0009 / (PI * PI / 2.0),
        1.0,
        0.01,
    );
}
