//! What a cook would expect of a forecast that takes readings in. The cooks are invented.

use super::*;
use crate::forecast::{DishForecast, DishScenario, Knowledge, OwnerKey, Owners, sample_at};
use crate::handover::identity::EntryId;
use crate::handover::{Gauge, ProbeFeel, ProbePlace};
use crate::meat::CutId;
use crate::physics::{CookerClass, Draw, MemberRun, Scenario, Settings, run};
use crate::units::{Mass, Temperature, TemperatureDifference, TimeSpan};

const SEED: u64 = 7;

fn hours(hours: f64) -> TimeSpan {
    TimeSpan::from_hours(hours)
}

/// A chuck roast in a kettle at 121 °C.
fn roast() -> DishScenario {
    let mass = Mass::from_kilograms(1.8);
    DishScenario {
        scenario: Scenario::usual(CutId::BeefChuckRoast, mass, CookerClass::Kettle),
        knowledge: Knowledge::default(),
        owners: Owners {
            cooker: OwnerKey::from_text("cooker 0"),
            piece: OwnerKey::from_text("beef-chuck-roast 0"),
        },
    }
}

/// A cook that really was like this.
fn cooked(draw: &Draw) -> MemberRun {
    let all = run(&roast().scenario, &[*draw], &Settings::default()).expect("a cook");
    all.into_iter().next().expect("one member")
}

/// Core readings of that cook at these hours.
fn readings(cook: &MemberRun, at: &[f64]) -> Vec<CoreReading> {
    let number = (1..).zip(at);
    let reading = |(number, at): (u64, &f64)| CoreReading {
        entry: EntryId::new(number, 0),
        after: hours(*at),
        reading: sample_at(&cook.samples, hours(*at))
            .expect("a sample")
            .probe,
        place: ProbePlace::ThickMiddle,
        doubtful: false,
    };
    number.map(reading).collect()
}

fn log(now: f64, cores: Vec<CoreReading>) -> PieceLog {
    PieceLog {
        now: hours(now),
        cores,
        ..PieceLog::default()
    }
}

fn reforecast(log: &PieceLog) -> Reforecast {
    let under_way = UnderWay {
        dish: roast(),
        log: log.clone(),
    };
    let mut run = Reforecast::new(vec![under_way], 32, PASSES, SEED, Settings::default());
    while !run.step().expect("a cook") {}
    run
}

fn forecast(log: &PieceLog) -> DishForecast {
    reforecast(log).forecast(0).expect("done").clone()
}

/// The 10, 50 and 90 % points of ready, h.
fn window(forecast: &DishForecast) -> [f64; 3] {
    [0.1, 0.5, 0.9].map(|share| {
        let ready = forecast.quantile(|run| run.ready, share);
        ready.expect("ready").hours()
    })
}

fn slow() -> Draw {
    Draw {
        thickness: 1.15,
        gauge: TemperatureDifference::from_kelvin(-6.0),
        ..Draw::NOMINAL
    }
}

#[test]
fn readings_narrow_the_window_and_bring_it_to_the_truth() {
    let cook = cooked(&slow());
    let truth = cook.ready.expect("ready").hours();
    let [low, before, high] = window(&forecast(&log(0.1, Vec::new())));
    let half = 0.5 * truth;
    let told = readings(&cook, &[0.25 * half, 0.5 * half, 0.75 * half, half]);
    let [from, likely, to] = window(&forecast(&log(half, told)));
    println!("{truth:.2} h; {low:.2} {before:.2} {high:.2}; {from:.2} {likely:.2} {to:.2}");
    assert!(to - from < 0.8 * (high - low));
    assert!((likely - truth).abs() < (before - truth).abs());
    assert!((from..=to).contains(&truth));
}

#[test]
fn one_absurd_reading_cannot_throw_the_forecast() {
    let cook = cooked(&slow());
    let half = 0.5 * cook.ready.expect("ready").hours();
    let at = [0.25 * half, 0.5 * half, 0.75 * half, half];
    let sound = readings(&cook, &at);
    let mut without = sound.clone();
    without.remove(2);
    let [_, likely, _] = window(&forecast(&log(half, without)));
    for absurd in [98.0, 4.0] {
        let mut told = sound.clone();
        told[2].reading = Temperature::from_celsius(absurd);
        let run = reforecast(&log(half, told));
        let weight = run.fits(0).nth(2).expect("a fit").weight;
        let [_, thrown, _] = window(run.forecast(0).expect("done"));
        println!("{absurd} °C: {thrown:.2} h for {likely:.2} h, weight {weight:.3}");
        assert!(weight < 0.1);
        assert!((thrown / likely - 1.0).abs() < 0.05);
    }
}

#[test]
fn a_doubtful_reading_says_less() {
    let mut told = readings(&cooked(&slow()), &[3.0]);
    let [from, _, to] = window(&forecast(&log(3.0, told.clone())));
    told[0].doubtful = true;
    let [low, _, high] = window(&forecast(&log(3.0, told)));
    assert!(high - low > to - from);
}

#[test]
fn a_fire_that_sagged_makes_it_later_and_one_that_ran_hot_sooner() {
    let read = |celsius: f64| PieceLog {
        pit: (1..=6)
            .map(|half_hours: u32| PitReading {
                entry: EntryId::new(u64::from(half_hours), 0),
                after: hours(0.5 * f64::from(half_hours)),
                reading: Temperature::from_celsius(celsius),
                gauge: Gauge::AtMeat,
            })
            .collect(),
        ..log(3.0, Vec::new())
    };
    let set = roast().scenario.pit[0].set.celsius();
    let [cold, kept, hot] = [-20.0, 0.0, 20.0].map(|off| window(&forecast(&read(set + off)))[1]);
    println!("{cold:.2} {kept:.2} {hot:.2} h");
    assert!(cold > 1.05 * kept && hot < 0.97 * kept);
}

#[test]
fn the_probe_by_hand_moves_tenderness() {
    let usual = window(&forecast(&log(0.1, Vec::new())))[1];
    let felt = |feel| {
        let feels = vec![Felt {
            entry: EntryId::new(1, 0),
            after: hours(usual),
            feel,
        }];
        let log = PieceLog {
            feels,
            ..log(usual, Vec::new())
        };
        window(&forecast(&log))
    };
    let [tight, drags, soft] =
        [ProbeFeel::Tight, ProbeFeel::Drags, ProbeFeel::SoftButter].map(felt);
    println!("{usual:.2} h: {tight:.2?} {drags:.2?} {soft:.2?}");
    assert!(tight[1] > drags[1] && drags[1] >= usual * 0.98);
    assert!(soft.iter().all(|time| (time - usual).abs() < 0.01));
}

#[test]
fn a_wrap_counts_from_when_it_was_logged() {
    let planned = window(&forecast(&log(3.0, Vec::new())))[1];
    let mut early = log(3.0, Vec::new());
    early.covers = vec![(hours(2.0), crate::physics::Cover::Foil)];
    let early = window(&forecast(&early))[1];
    assert!(early < planned, "{early:.2} h for {planned:.2} h");
}

#[test]
fn the_same_log_gives_the_same_bits() {
    let told = log(3.0, readings(&cooked(&slow()), &[1.0, 2.0, 3.0]));
    assert_eq!(forecast(&told), forecast(&told));
}
