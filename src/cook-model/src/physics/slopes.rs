//! The derivatives of the surface fluxes against differences, in states of a cook under way.

use super::body::Body;
use super::cooker::Climate;
use super::environment::Environment;
use super::rates::Rates;
use super::real::{LANES, Row};
use super::state::{Pieces, State};
use super::{CookerClass, Cover, Draw, Scenario};
use crate::meat::CutId;

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
