//! Height, rest box, spray and carryover against the prototype of these equations: figures that this crate is to
//! reproduce, not facts about meat.

use super::{bare, celsius, fahrenheit, start};
use crate::rows::Rows;
use cook_model::meat::CutId;
use cook_model::physics::{
    CookerClass, Cover, Draw, Finish, MemberRun, Place, RestStage, Scenario, Settings, Spray, When,
    WrapChange, run,
};
use cook_model::units::{Length, Mass, TimeSpan};

const SOURCE: &str = "prototype of these equations, backward Euler with steps of 60 s";

fn follow(scenario: &Scenario) -> MemberRun {
    let mut runs = run(scenario, &[Draw::NOMINAL], &Settings::default()).expect("in range");
    runs.remove(0)
}

fn hours(span: Option<TimeSpan>) -> f64 {
    span.map_or(f64::NAN, TimeSpan::hours)
}

fn packer(pit: f64, target: f64) -> Scenario {
    let cut = CutId::BeefPackerBrisket;
    let mass = cut.cut().shape.mass;
    bare(
        cut,
        mass,
        CookerClass::Generic,
        fahrenheit(pit),
        celsius(target),
    )
}

fn stage(place: Place, hours: f64) -> RestStage {
    RestStage {
        place,
        cover: None,
        lasts: TimeSpan::from_hours(hours),
        until_core: None,
    }
}

#[test]
fn wet_meat_in_foil_stays_below_the_boiling_point_of_its_height() {
    let mut rows = Rows::new("packer at 107 °C, foil at 73.9 °C", SOURCE);
    for (metres, ready, core, after) in [
        (0.0, 11.38, 92.8, 99.99),
        (1000.0, 11.37, 92.8, 96.75),
        (1600.0, 11.39, 92.6, 94.79),
        (2500.0, 11.53, 90.9, 92.06),
    ] {
        let mut scenario = packer(225.0, core);
        scenario.wraps.push(WrapChange {
            when: When::Probe(fahrenheit(165.0)),
            cover: Cover::Foil,
        });
        scenario.surroundings.altitude = Length::from_metres(metres);
        let got = follow(&scenario);
        let name = format!("{metres} m: hours to {core} °C, relative");
        rows.holds(&name, hours(got.ready) / ready, 1.0, 0.006);
        let wrapped = got.covered[0].expect("it was wrapped");
        scenario.finish = Finish::AfterOn(wrapped + TimeSpan::from_hours(8.0));
        let got = follow(&scenario);
        let probe = got.probe_at_ready.map_or(f64::NAN, |p| p.celsius());
        rows.holds(
            &format!("{metres} m: °C after 8 h in foil"),
            probe,
            after,
            0.2,
        );
    }
}

#[test]
fn a_rest_box_keeps_a_packer_hot() {
    let mut scenario = packer(250.0, 95.0);
    scenario.wraps.push(WrapChange {
        when: When::Probe(celsius(73.9)),
        cover: Cover::Paper,
    });
    scenario.after.push(stage(Place::RestBox, 9.0));
    let got = follow(&scenario);
    let off = hours(got.ready);
    let mut rows = Rows::new("packer in the rest box, hours", SOURCE);
    rows.holds("to 73.9 °C", hours(got.core_below_73_9) - off, 2.42, 0.08);
    rows.holds("to 60 °C", hours(got.core_below_60) - off, 5.59, 0.08);
}

#[test]
fn spray_costs_time() {
    let mut rows = Rows::new(
        "butt at 121 °C, sprayed every 45 min from 3 h, hours",
        SOURCE,
    );
    for (water, wanted) in [(0.0, 10.71), (0.05, 11.26), (0.1, 11.94)] {
        let cut = CutId::PorkShoulderButt;
        let mass = cut.cut().shape.mass;
        let pit = fahrenheit(250.0);
        let mut scenario = bare(cut, mass, CookerClass::Generic, pit, fahrenheit(200.0));
        scenario.spray = Some(Spray {
            first: TimeSpan::from_hours(3.0),
            every: TimeSpan::from_minutes(45.0),
            kilograms_per_square_metre: water,
        });
        let got = follow(&scenario);
        rows.holds(&format!("{water} kg/m²"), hours(got.ready), wanted, 0.05);
    }
}

#[test]
fn the_core_rises_after_a_hot_oven() {
    let source = "the same equations by BDF of scipy 1.17.1 at a relative tolerance of 1e-6";
    let mut rows = Rows::new("rise in 20 min on the counter, K", source);
    for (cut, pounds, oven, core, cooker, wanted) in [
        (
            CutId::BeefRibRoast,
            5.0,
            325.0,
            145.0,
            CookerClass::StillOven,
            6.72,
        ),
        (
            CutId::TurkeyWhole,
            13.0,
            325.0,
            165.0,
            CookerClass::StillOven,
            2.31,
        ),
        (
            CutId::ChickenWhole,
            3.5,
            350.0,
            165.0,
            CookerClass::StillOven,
            -5.92,
        ),
    ] {
        let mass = Mass::from_pounds(pounds);
        let mut scenario = bare(cut, mass, cooker, fahrenheit(oven), fahrenheit(core));
        assert_eq!(scenario.start, start());
        scenario.after.push(stage(Place::Counter, 1.0));
        let settings = Settings {
            sample_every: TimeSpan::from_minutes(1.0),
            ..Settings::default()
        };
        let got = &run(&scenario, &[Draw::NOMINAL], &settings).expect("in range")[0];
        let after = got.ready.expect("it gets done") + TimeSpan::from_minutes(20.0);
        let later = got.samples.iter().position(|s| s.after >= after);
        let later = later.expect("the counter lasts an hour");
        let (a, b) = (&got.samples[later - 1], &got.samples[later]);
        let share = (after - a.after) / (b.after - a.after);
        let there = a.probe.celsius() + share * (b.probe - a.probe).kelvin();
        let rise = there - fahrenheit(core).celsius();
        rows.holds(&format!("{cut}"), rise, wanted, 0.2);
    }
}
