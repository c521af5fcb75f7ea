//! What the trade tells of its usual cooks. All of it is common practice: programmes, not measurements.

use super::{bare, celsius, fahrenheit};
use crate::rows::Rows;
use cook_model::meat::CutId;
use cook_model::physics::{
    CookerClass, Cover, Draw, MemberRun, PitChange, Scenario, Settings, When, WrapChange, run,
};
use cook_model::units::{Mass, Temperature, TimeSpan};

const SOURCE: &str = "common practice";

fn follow(scenario: &Scenario) -> MemberRun {
    let settings = Settings {
        sample_every: TimeSpan::from_minutes(5.0),
        ..Settings::default()
    };
    let mut runs = run(scenario, &[Draw::NOMINAL], &settings).expect("in range");
    runs.remove(0)
}

fn hours(span: Option<TimeSpan>) -> f64 {
    span.map_or(f64::NAN, TimeSpan::hours)
}

/// Hours at which the probe first reaches a temperature, between two samples.
fn reaches(run: &MemberRun, goal: Temperature) -> f64 {
    let pair = run
        .samples
        .windows(2)
        .find(|pair| pair[0].probe < goal && pair[1].probe >= goal);
    pair.map_or(f64::NAN, |pair| {
        let share = (goal - pair[0].probe) / (pair[1].probe - pair[0].probe);
        pair[0].after.hours() + share * (pair[1].after - pair[0].after).hours()
    })
}

/// The probe at an hour.
fn probe_at(run: &MemberRun, hour: f64) -> f64 {
    let sample = run
        .samples
        .iter()
        .find(|s| (s.after.hours() - hour).abs() < 1e-6);
    sample.map_or(f64::NAN, |s| s.probe.celsius())
}

fn cook(cut: CutId, pounds: f64, cooker: CookerClass, pit: f64, target: f64) -> Scenario {
    let mass = Mass::from_pounds(pounds);
    let mut scenario = bare(cut, mass, cooker, fahrenheit(pit), fahrenheit(target));
    scenario.start = celsius(4.0);
    scenario
}

fn wrapped(mut scenario: Scenario, cover: Cover, core: f64) -> Scenario {
    scenario.wraps.push(WrapChange {
        when: When::Probe(fahrenheit(core)),
        cover,
    });
    scenario
}

#[test]
fn plate_short_ribs_at_135_rising_to_150() {
    let mut scenario = cook(
        CutId::BeefPlateShortRibs,
        5.0,
        CookerClass::Offset,
        275.0,
        203.0,
    );
    scenario = wrapped(scenario, Cover::Paper, 190.0);
    scenario.pit.push(PitChange {
        when: When::Probe(fahrenheit(190.0)),
        set: fahrenheit(300.0),
    });
    let got = follow(&scenario);
    let mut rows = Rows::new("plate short ribs, 2.3 kg", SOURCE);
    rows.known_miss("°C after 5.5 h", probe_at(&got, 5.5), 77.8, 2.2, -4.08);
    rows.known_miss("°C after 6.5 h", probe_at(&got, 6.5), 84.4, 2.2, -4.95);
    rows.known_miss(
        "hours to 190 °F",
        reaches(&got, fahrenheit(190.0)),
        6.9,
        0.5,
        0.71,
    );
    rows.holds(
        "hours to 200 °F",
        reaches(&got, fahrenheit(200.0)),
        8.0,
        0.6,
    );
    rows.holds("loss", got.loss_at_ready(), 0.33, 0.06);
}

#[test]
fn packer_brisket_at_107_and_135() {
    let bare = cook(
        CutId::BeefPackerBrisket,
        13.0,
        CookerClass::Generic,
        225.0,
        203.0,
    );
    let hot = cook(
        CutId::BeefPackerBrisket,
        13.0,
        CookerClass::Generic,
        275.0,
        203.0,
    );
    let mut rows = Rows::new("packer brisket, 5.9 kg", SOURCE);
    let got = follow(&bare);
    rows.holds("107 °C bare: hours to 203 °F", hours(got.ready), 16.0, 2.0);
    let slow = reaches(&got, fahrenheit(170.0)) - reaches(&got, fahrenheit(150.0));
    rows.holds("107 °C bare: hours from 150 to 170 °F", slow, 4.5, 1.5);
    rows.holds(
        "107 °C bare: hours to 150 °F",
        reaches(&got, fahrenheit(150.0)),
        5.0,
        1.0,
    );
    rows.holds("107 °C bare: loss", got.loss_at_ready(), 0.40, 0.06);
    let unwrapped = hours(got.ready);
    let paper = hours(follow(&wrapped(bare.clone(), Cover::Paper, 165.0)).ready);
    rows.known_miss("107 °C paper: hours", paper, 12.0, 1.5, 1.83);
    rows.known_miss(
        "107 °C paper: hours saved against bare",
        unwrapped - paper,
        4.0,
        2.5,
        -3.04,
    );
    let foil = hours(follow(&wrapped(bare, Cover::Foil, 165.0)).ready);
    rows.known_miss("107 °C foil: hours", foil, 10.8, 1.5, 2.28);
    let got = follow(&wrapped(hot.clone(), Cover::Paper, 165.0));
    rows.holds("135 °C paper: hours", hours(got.ready), 8.0, 1.0);
    rows.known_miss(
        "135 °C bare: hours",
        hours(follow(&hot).ready),
        10.0,
        1.5,
        -2.67,
    );
}

#[test]
fn pork_shoulder_butt_at_107_121_and_135() {
    let mut rows = Rows::new("pork shoulder butt, 3.6 kg", SOURCE);
    for (pit, name, wanted, tolerance) in [
        (225.0, "107 °C", 14.0, 2.0),
        (250.0, "121 °C", 10.5, 1.5),
        (275.0, "135 °C", 8.0, 1.0),
    ] {
        let got = follow(&cook(
            CutId::PorkShoulderButt,
            8.0,
            CookerClass::Generic,
            pit,
            200.0,
        ));
        rows.holds(
            &format!("{name}: hours to 200 °F"),
            hours(got.ready),
            wanted,
            tolerance,
        );
        if pit == 225.0 {
            let slow = reaches(&got, fahrenheit(170.0)) - reaches(&got, fahrenheit(150.0));
            rows.holds("107 °C: hours from 150 to 170 °F", slow, 4.0, 1.5);
            rows.holds("107 °C: loss", got.loss_at_ready(), 0.37, 0.06);
        }
    }
}

#[test]
fn spare_and_back_ribs() {
    let mut rows = Rows::new("pork ribs at 113 °C", SOURCE);
    for (cut, name, wanted) in [
        (CutId::PorkSpareRibs, "spareribs", 5.5),
        (CutId::PorkBackRibs, "back ribs", 4.5),
    ] {
        let mass = cut.cut().shape.mass;
        let got = follow(&Scenario::usual(cut, mass, CookerClass::Generic));
        let name_of_hours = format!("{name}: hours");
        rows.holds(&name_of_hours, hours(got.ready), wanted, 0.6);
        let core = got.probe_at_ready.map_or(f64::NAN, Temperature::celsius);
        // The rack sits at the pit's temperature long before it is tender.
        rows.known_miss(&format!("{name}: °C when tender"), core, 91.7, 3.3, 9.0);
    }
}
