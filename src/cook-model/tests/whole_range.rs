//! The march over everything that its ranges let in: a finite result with closed books, or an error that says why.

use cook_model::meat::CutId;
use cook_model::physics::{
    CookerClass, Cover, Draw, Finish, MemberRun, ModelError, PitChange, Place, RestStage,
    SWING_PERIODS_HOURS, Scenario, Settings, Spray, Surroundings, SwingMode, When, WrapChange, run,
};
use cook_model::units::{Length, Mass, Temperature, TemperatureDifference, TimeSpan};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

const COOKERS: [CookerClass; 5] = [
    CookerClass::Offset,
    CookerClass::Kettle,
    CookerClass::Drum,
    CookerClass::Ceramic,
    CookerClass::Generic,
];

/// Anything in a range, its ends often.
fn ends(low: f64, high: f64) -> impl Strategy<Value = f64> {
    prop_oneof![1 => Just(low), 1 => Just(high), 4 => low..=high]
}

/// The same for a factor: evenly by its logarithm.
fn factor(low: f64, high: f64) -> impl Strategy<Value = f64> {
    ends(libm::log(low), libm::log(high)).prop_map(move |x| libm::exp(x).clamp(low, high))
}

fn celsius(low: f64, high: f64) -> impl Strategy<Value = Temperature> {
    ends(low, high).prop_map(Temperature::from_celsius)
}

fn hours(low: f64, high: f64) -> impl Strategy<Value = TimeSpan> {
    ends(low, high).prop_map(TimeSpan::from_hours)
}

fn kelvin(low: f64, high: f64) -> impl Strategy<Value = TemperatureDifference> {
    ends(low, high).prop_map(TemperatureDifference::from_kelvin)
}

fn when() -> impl Strategy<Value = When> {
    prop_oneof![
        hours(0.0, 20.0).prop_map(When::AfterOn),
        celsius(-1.0, 110.0).prop_map(When::Probe)
    ]
}

fn cover() -> impl Strategy<Value = Cover> {
    prop_oneof![Just(Cover::Bare), Just(Cover::Paper), Just(Cover::Foil)]
}

fn pit() -> impl Strategy<Value = Vec<PitChange>> {
    let later = (when(), celsius(40.0, 300.0)).prop_map(|(when, set)| PitChange { when, set });
    let first = celsius(40.0, 300.0).prop_map(|set| PitChange {
        when: When::AfterOn(TimeSpan::ZERO),
        set,
    });
    (first, prop::collection::vec(later, 0..3)).prop_map(|(first, mut later)| {
        later.insert(0, first);
        later
    })
}

fn finish() -> impl Strategy<Value = Finish> {
    let temperatures = || (celsius(30.0, 110.0), celsius(0.0, 100.0));
    prop_oneof![
        temperatures().prop_map(|(target, minimum)| Finish::Tender { target, minimum }),
        temperatures().prop_map(|(target, minimum)| Finish::Temperature { target, minimum }),
        hours(0.0, 40.0).prop_map(Finish::AfterOn),
    ]
}

fn after() -> impl Strategy<Value = Vec<RestStage>> {
    let place = prop_oneof![
        Just(Place::Counter),
        Just(Place::RestBox),
        celsius(40.0, 150.0).prop_map(Place::WarmOven)
    ];
    let stage = (
        place,
        prop::option::of(cover()),
        hours(0.0, 48.0),
        prop::option::of(celsius(0.0, 110.0)),
    );
    let stage = stage.prop_map(|(place, cover, lasts, until_core)| RestStage {
        place,
        cover,
        lasts,
        until_core,
    });
    prop::collection::vec(stage, 0..4)
}

fn spray() -> impl Strategy<Value = Spray> {
    (hours(0.0, 5.0), factor(5.0, 1440.0), ends(0.0, 1.0)).prop_map(
        |(first, minutes, kilograms_per_square_metre)| Spray {
            first,
            every: TimeSpan::from_minutes(minutes),
            kilograms_per_square_metre,
        },
    )
}

fn surroundings() -> impl Strategy<Value = Surroundings> {
    let altitude = ends(-430.0, 5000.0).prop_map(Length::from_metres);
    (celsius(-40.0, 50.0), celsius(-20.0, 50.0), altitude).prop_map(
        |(outside, resting, altitude)| Surroundings {
            outside,
            resting,
            altitude,
        },
    )
}

fn scenario() -> impl Strategy<Value = Scenario> {
    let piece = (
        prop::sample::select(CutId::ALL),
        factor(0.02, 40.0),
        prop::option::weighted(0.3, factor(8.0, 400.0)),
        celsius(-1.0, 40.0),
        factor(1.0, 200.0),
    );
    let wraps = (when(), cover()).prop_map(|(when, cover)| WrapChange { when, cover });
    let cooking = (
        prop::sample::select(&COOKERS[..]),
        pit(),
        prop::collection::vec(wraps, 0..4),
        prop::option::of(spray()),
        prop::collection::vec(hours(0.0, 10.0), 0..4),
        finish(),
    );
    (piece, cooking, after(), surroundings()).prop_map(
        |(
            (cut, kilograms, millimetres, start, pieces),
            (cooker, pit, wraps, spray, mut lid_openings, finish),
            after,
            surroundings,
        )| {
            lid_openings.sort_by(|a, b| a.seconds().total_cmp(&b.seconds()));
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            let pieces = pieces as u32;
            Scenario {
                thickness: millimetres.map(Length::from_millimetres),
                start,
                pieces,
                pit,
                wraps,
                spray,
                lid_openings,
                finish,
                after,
                surroundings,
                ..Scenario::usual(cut, Mass::from_kilograms(kilograms), cooker)
            }
        },
    )
}

/// A draw at the ends of what the march takes, far beyond any prior.
fn wild_draw() -> impl Strategy<Value = Draw> {
    let mode = (kelvin(0.0, 40.0), ends(-3.0, 3.0))
        .prop_map(|(amplitude, phase)| SwingMode { amplitude, phase });
    let swing = prop::collection::vec(mode, SWING_PERIODS_HOURS.len());
    let factors = (
        factor(0.3, 3.0),
        factor(0.05, 20.0),
        factor(0.05, 20.0),
        factor(0.2, 5.0),
        factor(0.2, 5.0),
        factor(0.01, 100.0),
        factor(0.1, 3.0),
        factor(0.1, 10.0),
        ends(0.5, 1.5),
        factor(0.1, 10.0),
    );
    let others = (
        ends(-0.6, 0.6),
        ends(-0.15, 0.15),
        kelvin(-60.0, 60.0),
        kelvin(-30.0, 30.0),
        ends(0.0, 0.9),
    );
    (factors, others, swing).prop_map(|(f, o, swing)| Draw {
        thickness: f.0,
        free_water: f.1,
        crust_vapour: f.2,
        heat_transfer: f.3,
        evaporating_share: f.4,
        paper: f.5,
        shrink: f.6,
        humidity: f.7,
        walls: f.8,
        tenderness: f.9,
        water_holding: o.0,
        fat: o.1,
        gauge: o.2,
        outside: o.3,
        probe: o.4,
        swing: std::array::from_fn(|k| swing[k]),
    })
}

/// Every figure is a number, and the books of water and heat close.
fn is_sound(run: &MemberRun, of: &str) {
    for sample in &run.samples {
        let figures = [
            sample.core.celsius(),
            sample.probe.celsius(),
            sample.surface.celsius(),
            sample.air.celsius(),
            sample.tenderness,
            sample.loss,
        ];
        assert!(figures.iter().all(|x| x.is_finite()), "{figures:?} of {of}");
        // The hottest walls that a draw can make of a pit at 300 °C.
        assert!(
            (-60.0..700.0).contains(&sample.core.celsius()),
            "{sample:?} of {of}"
        );
    }
    let totals = &run.at_end;
    let (water, energy) = (totals.water_residual, totals.energy_residual);
    assert!(
        water.is_some_and(|share| share.abs() < 1e-5),
        "water {water:?} of {of}"
    );
    // In a sound cook it is below 1 %.
    assert!(
        energy.is_some_and(|share| share.abs() < 0.05),
        "heat {energy:?} of {of}"
    );
}

#[test]
fn anything_within_the_ranges_comes_to_an_end_or_to_a_clear_error() {
    const COOKS: u32 = 250;
    let settings = Settings {
        audit: true,
        ..Settings::default()
    };
    let mut runner = TestRunner::deterministic();
    let (mut sound, mut refused, mut given_up) = (0, 0, 0);
    for _ in 0..COOKS {
        let cook = (scenario(), wild_draw()).new_tree(&mut runner);
        let (scenario, draw) = cook.expect("a cook").current();
        let of = format!("{scenario:?} {draw:?}");
        match run(&scenario, &[draw], &settings) {
            Ok(runs) => {
                is_sound(&runs[0], &of);
                sound += 1;
            }
            Err(ModelError::TooManySteps { .. }) => given_up += 1,
            Err(error) => {
                assert!(error.to_string().contains(char::is_numeric), "{error}");
                refused += 1;
            }
        }
    }
    println!("{sound} sound, {refused} refused, {given_up} given up");
    assert!(sound > COOKS / 2, "most are cooks");
    // Fewer than one in 100 of these impossible cooks is given up; no sound one is.
    assert!(given_up <= 3, "{given_up} given up");
}

#[test]
fn a_cook_as_people_cook_is_never_given_up() {
    let settings = Settings {
        audit: true,
        ..Settings::default()
    };
    let mut runner = TestRunner::deterministic();
    let draw = (
        factor(0.65, 1.5),
        kelvin(-25.0, 25.0),
        factor(0.4, 2.5),
        factor(0.15, 6.0),
    );
    let draw = draw.prop_map(|(thickness, gauge, heat_transfer, water)| Draw {
        thickness,
        gauge,
        heat_transfer,
        free_water: water,
        crust_vapour: 1.0 / water,
        ..Draw::NOMINAL
    });
    for &cut in CutId::ALL {
        for pit in [110.0, 135.0, 180.0] {
            let mass = cut.cut().shape.mass;
            let mut scenario = Scenario::usual(cut, mass, CookerClass::Offset);
            scenario.pit[0].set = Temperature::from_celsius(pit);
            scenario.after = vec![
                RestStage {
                    place: Place::Counter,
                    cover: None,
                    lasts: TimeSpan::from_minutes(15.0),
                    until_core: Some(Temperature::from_celsius(80.0)),
                },
                RestStage {
                    place: Place::RestBox,
                    cover: None,
                    lasts: TimeSpan::from_hours(8.0),
                    until_core: None,
                },
            ];
            let draws: Vec<Draw> = (0..8)
                .map(|_| draw.new_tree(&mut runner).expect("a draw").current())
                .collect();
            let runs = run(&scenario, &draws, &settings).expect("no march is given up");
            for run in &runs {
                is_sound(run, &format!("{} at {pit} °C", cut.slug()));
            }
        }
    }
}
