//! Conduction alone: the march without water against series solutions.

use crate::rows::Rows;
use cook_model::physics::conduction::middle_while_cooling;
use cook_model::physics::shape::Shape;
use serde::Deserialize;

#[derive(Deserialize)]
struct Table {
    source: String,
    rows: Vec<Vec<f64>>,
}

#[derive(Deserialize)]
struct Data {
    middle_of_power_bodies: Table,
    middle_of_bricks: Table,
}

fn data() -> Data {
    serde_json::from_str(include_str!("../data/conduction.json")).expect("the data file is sound")
}

/// One-term solution; 0.2 < Fourier.
#[derive(Deserialize)]
struct OneTerm {
    source: String,
    rows: Vec<(f64, [[f64; 2]; 3])>,
}

#[test]
fn slab_cylinder_and_sphere_follow_the_one_term_tables() {
    let table: OneTerm = serde_json::from_str(include_str!("../data/one_term.json"))
        .expect("the data file is sound");
    let mut rows = Rows::new("one-term solutions, 18 cells", &table.source);
    for (biot, shapes) in table.rows {
        for (exponent, [root, constant]) in [0.0, 1.0, 2.0].into_iter().zip(shapes) {
            let fourier = [0.4, 0.8];
            let got = middle_while_cooling(exponent, biot, &fourier, 18).expect("in range");
            for (fourier, got) in fourier.into_iter().zip(got) {
                let wanted = constant * (-root * root * fourier).exp();
                let name = format!("exponent {exponent}, Biot {biot}, Fourier {fourier}");
                rows.holds(&name, got, wanted, 0.0025);
            }
        }
    }
}

#[test]
fn bodies_between_slab_and_sphere_follow_their_series() {
    let table = data().middle_of_power_bodies;
    for (cells, tolerance) in [(18, 0.002), (36, 0.0003)] {
        let mut rows = Rows::new(&format!("power bodies, {cells} cells"), &table.source);
        for row in &table.rows {
            let [exponent, biot, fourier, wanted] = row[..] else {
                panic!("four columns")
            };
            let got = middle_while_cooling(exponent, biot, &[fourier], cells).expect("in range")[0];
            let name = format!("exponent {exponent}, Biot {biot}, Fourier {fourier}");
            rows.holds(&name, got, wanted, tolerance);
        }
    }
}

/// First roots of ζ tan ζ = Bi by bisection, and the slab series with them.
fn slab_series(biot: f64, fourier: f64) -> f64 {
    (0..60)
        .map(|k| {
            let base = f64::from(k) * std::f64::consts::PI;
            let (mut low, mut high) = (base, base + std::f64::consts::FRAC_PI_2);
            for _ in 0..80 {
                let middle = 0.5 * (low + high);
                if middle * middle.tan() < biot {
                    low = middle
                } else {
                    high = middle
                }
            }
            let z = 0.5 * (low + high);
            4.0 * z.sin() / (2.0 * z + (2.0 * z).sin()) * (-z * z * fourier).exp()
        })
        .sum()
}

#[test]
fn the_slab_series_of_these_tests_is_right() {
    let table = data().middle_of_bricks;
    let mut rows = Rows::new("product of slabs", &table.source);
    for row in &table.rows {
        let [a, b, c, biot, fourier, wanted] = row[..] else {
            panic!("six columns")
        };
        let got: f64 = [a, b, c]
            .into_iter()
            .map(|l| slab_series(biot * l, fourier / (l * l)))
            .product();
        rows.holds(
            &format!("{a} : {b} : {c}, Biot {biot}, Fourier {fourier}"),
            got,
            wanted,
            1.1e-4,
        );
    }
}

/// Fourier number on the smallest half dimension at which the middle of a brick has fallen to a share.
fn brick_time(sides: [f64; 3], biot: f64, share: f64) -> f64 {
    let (mut low, mut high) = (0.0, 50.0);
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        let left: f64 = sides
            .into_iter()
            .map(|l| slab_series(biot * l, middle / (l * l)))
            .product();
        if left > share {
            low = middle
        } else {
            high = middle
        }
    }
    low
}

/// The same for the body of one coordinate, with its surface fluxes multiplied by the flux ratio.
fn body_time(sides: [f64; 3], biot: f64, share: f64) -> f64 {
    let shape = Shape::of(sides, 1.0);
    let (radius, biot) = (
        shape.radius / sides[0],
        biot * shape.radius / sides[0] * shape.flux_ratio,
    );
    let times: Vec<f64> = (1..=400).map(|i| 0.01 * f64::from(i)).collect();
    let middle = middle_while_cooling(shape.exponent, biot, &times, 24).expect("in range");
    let after = middle
        .iter()
        .position(|m| *m < share)
        .expect("cooled within the times");
    let before = if after == 0 {
        (0.0, 1.0)
    } else {
        (times[after - 1], middle[after - 1])
    };
    let part = (before.1 - share) / (before.1 - middle[after]);
    (before.0 + part * (times[after] - before.0)) * radius * radius
}

#[test]
fn one_coordinate_stands_for_a_brick() {
    let mut rows = Rows::new(
        "time of the middle of bricks by one coordinate, relative",
        "product of three slab series, reckoned here",
    );
    let bricks = [
        [1.0, 1.0, 1.0],
        [1.0, 1.0, 2.0],
        [1.0, 1.5, 2.0],
        [1.0, 1.5, 3.0],
        [1.0, 2.0, 2.0],
        [1.0, 2.0, 4.0],
        [1.0, 3.0, 3.0],
        [1.0, 3.6, 5.7],
        [1.0, 4.0, 6.0],
        [1.0, 1.0, 4.0],
    ];
    let (mut squares, mut count) = (0.0, 0.0);
    for sides in bricks {
        for biot in [0.5, 2.0, 5.0, 20.0] {
            for share in [0.6, 0.3, 0.1] {
                let exact = brick_time(sides, biot, share);
                let shape = Shape::of(sides, 1.0);
                if exact / (shape.radius * shape.radius) > 3.9 {
                    continue;
                }
                let ratio = body_time(sides, biot, share) / exact;
                let tolerance = if biot < 5.0 { 0.125 } else { 0.09 };
                let name = format!("{sides:?}, Biot {biot}, to {share}");
                rows.holds(&name, ratio, 1.0, tolerance);
                squares += (ratio - 1.0) * (ratio - 1.0);
                count += 1.0;
            }
        }
    }
    let root_mean_square: f64 = squares / count;
    rows.holds(
        "root mean square error of them all",
        root_mean_square.sqrt(),
        0.0,
        0.052,
    );
}
