//! The derivatives of the linear system against differences of the right-hand side, in random states.

use super::body::Body;
use super::cooker::Climate;
use super::environment::Environment;
use super::inside::Block;
use super::linear::Linear;
use super::rates::Rates;
use super::real::{LANES, Row};
use super::state::{Pieces, State};
use super::{CookerClass, Cover, Draw, Scenario};
use crate::meat::CutId;
use proptest::prelude::*;
use proptest::test_runner::{TestRng, TestRunner};

const CELLS: usize = 12;

struct Setup {
    pieces: Pieces<f64>,
    environment: Environment<f64>,
    state: State<f64>,
    fat: Vec<Row<f64>>,
}

fn setup(cut: CutId, cover: Cover, boxed: bool, seed: &[f64]) -> Setup {
    let scenario = Scenario::usual(cut, cut.cut().shape.mass, CookerClass::Generic);
    let body = Body::new(&scenario, &Draw::NOMINAL, CELLS).unwrap();
    let mut pieces = Pieces::<f64>::new(CELLS, body.bone_cells);
    let mut environment = Environment::default();
    let mut state = State::new(CELLS);
    let mut fat = vec![Row::default(); CELLS];
    let climate = if boxed {
        Climate::REST_BOX
    } else {
        CookerClass::Generic.climate()
    };
    let mut numbers = seed.iter().copied().cycle();
    let mut between =
        |low: f64, high: f64| low + (high - low) * numbers.next().expect("it repeats");
    for l in 0..LANES {
        pieces.set(l, &body, &Draw::NOMINAL, 1, 101_325.0);
        environment.cover(l, cover);
        environment.place(l, &climate, body.flow_length, 1.0);
        environment.moment(
            l,
            between(90.0, 180.0),
            between(80.0, 170.0),
            match cover {
                Cover::Bare => 0.0,
                Cover::Paper => 3e8,
                Cover::Foil => 5e9,
            },
        );
        environment.room[l] = 20.0;
        let (middle, rise) = (between(5.0, 95.0), between(0.0, 30.0));
        for i in 0..CELLS {
            let out = f64::from(u32::try_from(i).unwrap()) / 11.0;
            state.temperature[i][l] = middle + rise * out * out;
            let dry = if i + 3 > CELLS {
                between(0.0, 1.5)
            } else {
                0.0
            };
            let held = pieces.water_raw[l].min(2.4);
            state.water[i][l] = if i < body.bone_cells {
                0.0
            } else {
                held - dry + between(-0.2, 0.2)
            };
            fat[i][l] = pieces.fat_raw[l];
        }
        state.film[l] = between(0.002, 0.2);
        state.air[l] = between(0.01, 0.1);
        state.rest_box[l] = between(25.0, 70.0);
    }
    Setup {
        pieces,
        environment,
        state,
        fat,
    }
}

/// What the linear system leaves out: how volume and conductivity change.
struct Held {
    volume: Row<f64>,
    conductivity: Vec<Row<f64>>,
}

/// Rates at a state.
fn rates<const SLOPES: bool>(
    setup: &Setup,
    state: &State<f64>,
    held: &mut Option<Held>,
) -> Rates<f64> {
    let (pieces, environment) = (&setup.pieces, &setup.environment);
    let mut rates = Rates::new(CELLS);
    let volume = rates.cells.work_out(state, &setup.fat, pieces);
    let held = held.get_or_insert_with(|| Held {
        volume,
        conductivity: rates.cells.conductivity.clone(),
    });
    rates.cells.conductivity.clone_from(&held.conductivity);
    // Until the balance of the surface stands still.
    rates.surface.temperature = state.temperature[CELLS - 1];
    rates.surface.bottom_temperature = state.temperature[0];
    for _ in 0..5 {
        rates.fluxes::<SLOPES>(state, held.volume, pieces, environment);
    }
    rates
}

/// Sizes of what adds up to the change of each gain: small differences of large parts are not to be held to their own size.
fn size_of_parts(base: &Rates<f64>, change: &State<f64>) -> State<f64> {
    let mut sizes = State::new(CELLS);
    let (inside, surface) = (&base.inside, &base.surface);
    let last = CELLS - 1;
    let along = |block: &Block<f64>, i: usize, at: usize, l: usize| {
        (block[at][l] * change.temperature[i][l]).abs()
            + (block[at + 1][l] * change.water[i][l]).abs()
    };
    let five = [
        change.temperature[last],
        change.water[last],
        change.film,
        change.air,
        change.rest_box,
    ];
    for l in 0..LANES {
        for face in 0..last {
            let through = |at| {
                along(&inside.by_below[face], face, at, l)
                    + along(&inside.by_above[face], face + 1, at, l)
            };
            for i in [face, face + 1] {
                sizes.temperature[i][l] += through(0);
                sizes.water[i][l] += through(2);
            }
        }
        for (k, change) in five.iter().enumerate() {
            sizes.temperature[last][l] += (surface.heat_by[k][l] * change[l]).abs();
            sizes.water[last][l] += (surface.water_by[k][l] * change[l]).abs();
            sizes.film[l] += (surface.film_by[k][l] * change[l]).abs();
        }
    }
    sizes
}

/// Solves for a step of `seconds` with a random right-hand side, and puts the solution back into differences of the rates.
fn close(setup: &Setup, seconds: f64, wanted: &[f64]) -> Result<(), TestCaseError> {
    let (pieces, environment) = (&setup.pieces, &setup.environment);
    let mut held = None;
    let base = rates::<true>(setup, &setup.state, &mut held);
    let mut linear = Linear::new(CELLS);
    linear.weigh(&base, pieces);
    let per_step = [1.0 / seconds; LANES];
    linear.factorise(&per_step, &setup.state, &base, pieces, environment);
    // A right-hand side that alone would move temperatures by half a kelvin and water by 0.005.
    let mut numbers = wanted.iter().copied().cycle();
    let mut aim = State::new(CELLS);
    for l in 0..LANES {
        let mut number = || 2.0 * numbers.next().expect("it repeats") - 1.0;
        for i in 0..CELLS {
            aim.temperature[i][l] = 0.5 * number();
            aim.water[i][l] = if i < pieces.bone_cells {
                0.0
            } else {
                0.005 * number()
            };
        }
        aim.film[l] = 1e-3 * number();
        aim.air[l] = 1e-3 * number();
        aim.rest_box[l] = 0.5 * number();
    }
    let mut right = State::new(CELLS);
    linear.add_mass_times(&mut right, &per_step, &aim);
    let mut change = right.clone();
    linear.solve(&mut change);

    // masses × change / step − change of the rates along it = right-hand side.
    let mut left = State::new(CELLS);
    linear.add_mass_times(&mut left, &per_step, &change);
    let mut slope_along = |change: &State<f64>| {
        let small = 1e-4;
        let mut moved = |by: f64| {
            let mut state = setup.state.clone();
            state.add_scaled(by, change);
            rates::<false>(setup, &state, &mut held)
        };
        let (ahead, behind) = (moved(small), moved(-small));
        let mut slope = State::new(CELLS);
        slope.add_scaled(0.5 / small, &ahead.gain);
        slope.add_scaled(-0.5 / small, &behind.gain);
        slope
    };
    let slope = slope_along(&change);
    // The lower face of a slab on the bone sees air and box too; the linear system leaves that out.
    let mut without = change.clone();
    without.air = Row::default();
    without.rest_box = Row::default();
    let slope_without = slope_along(&without);
    let parts = size_of_parts(&base, &change);
    let row_closes =
        |name: &str, slope: &State<f64>, share, of: &dyn Fn(&State<f64>) -> Row<f64>| {
            let (left, slope, right) = (of(&left), of(slope), of(&right));
            for l in 0..LANES {
                let error = (left[l] - slope[l] - right[l]).abs();
                let size = left[l].abs() + right[l].abs() + of(&parts)[l];
                prop_assert!(error <= share * size, "{name}, lane {l}: {error} of {size}");
            }
            Ok(())
        };
    for i in 0..CELLS {
        // Left out: the mean temperature of a face, and at the lower face of a slab its convection.
        let (slope, share) = if i <= pieces.bone_cells {
            (&slope_without, 0.25)
        } else {
            // The linear system leaves out how activity and permeability of the last cell move the balance of the
            // surface a second time. Known size, over these 512 cases: 14 % in the water of the last cell, below a
            // tenth elsewhere.
            (&slope, if i + 1 == CELLS { 0.16 } else { 0.1 })
        };
        row_closes(&format!("heat of cell {i}"), slope, share, &|s| {
            s.temperature[i]
        })?;
        row_closes(&format!("water of cell {i}"), slope, share, &|s| s.water[i])?;
    }
    // The rows of air and box leave out steam from inside; what the surface gives them is compared flux by flux below.
    row_closes("film", &slope, 0.1, &|s| s.film)
}

#[test]
fn the_linear_system_is_the_slope_of_the_rates() {
    let config = ProptestConfig {
        cases: 512,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let generator = TestRng::deterministic_rng(config.rng_algorithm);
    let numbers = || prop::collection::vec(0.0..1.0f64, 97);
    let cuts = vec![CutId::BeefPackerBrisket, CutId::BeefPlateShortRibs];
    let covers = vec![Cover::Bare, Cover::Paper, Cover::Foil];
    let cases = (
        numbers(),
        numbers(),
        prop::sample::select(cuts),
        prop::sample::select(covers),
        any::<bool>(),
        prop::sample::select(vec![0.1, 10.0, 300.0]),
    );
    TestRunner::new_with_rng(config, generator)
        .run(&cases, |(seed, wanted, cut, cover, boxed, seconds)| {
            close(&setup(cut, cover, boxed, &seed), seconds, &wanted)
        })
        .unwrap();
}

#[test]
fn each_flux_at_the_surface_has_the_slopes_that_differences_have() {
    let seed: Vec<f64> = (0..97)
        .map(|i| (f64::from(i) * 0.618_034).fract())
        .collect();
    for boxed in [false, true] {
        for cover in [Cover::Bare, Cover::Paper, Cover::Foil] {
            let setup = setup(CutId::BeefPackerBrisket, cover, boxed, &seed);
            let mut held = None;
            let base = rates::<true>(&setup, &setup.state, &mut held).surface;
            for (k, small) in [1e-4, 1e-5, 1e-6, 1e-6, 1e-4].into_iter().enumerate() {
                let mut moved = |by: f64| {
                    let mut state = setup.state.clone();
                    let last = CELLS - 1;
                    let row = match k {
                        0 => &mut state.temperature[last],
                        1 => &mut state.water[last],
                        2 => &mut state.film,
                        3 => &mut state.air,
                        _ => &mut state.rest_box,
                    };
                    row.iter_mut().for_each(|x| *x += by);
                    rates::<false>(&setup, &state, &mut held).surface
                };
                let (ahead, behind) = (moved(small), moved(-small));
                for (name, slope, a, b) in [
                    ("heat", &base.heat_by, ahead.heat, behind.heat),
                    ("water", &base.water_by, ahead.water, behind.water),
                    ("film", &base.film_by, ahead.film, behind.film),
                    (
                        "evaporated",
                        &base.evaporated_by,
                        ahead.evaporated,
                        behind.evaporated,
                    ),
                    ("taken", &base.taken_by, ahead.taken, behind.taken),
                    ("latent", &base.latent_by, ahead.latent, behind.latent),
                ] {
                    for l in 0..LANES {
                        let numeric = (a[l] - b[l]) / (2.0 * small);
                        let slope = slope[k][l];
                        let error = (slope - numeric).abs();
                        assert!(
                            error <= 0.03 * numeric.abs() + 1e-11,
                            "{name} by unknown {k}, {cover:?}, boxed {boxed}: {slope} against {numeric}"
                        );
                    }
                }
            }
        }
    }
}
