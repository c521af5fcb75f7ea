//! Six whole cooks against a stiff library solver on the same equations and cells, and the books of water and heat.

use super::{bare, celsius, fahrenheit, start};
use crate::rows::Rows;
use cook_model::meat::CutId;
use cook_model::physics::{
    CookerClass, Cover, Draw, MemberRun, Place, RestStage, Scenario, Settings, When, WrapChange,
    run,
};
use cook_model::units::TimeSpan;
use serde::Deserialize;

#[derive(Deserialize)]
struct Cook {
    name: String,
    cut: CutId,
    pit_fahrenheit: f64,
    cooker: CookerClass,
    wrap: Option<(Cover, f64)>,
    end_celsius: f64,
    box_hours: f64,
    stage_end_hours: Vec<f64>,
    hourly_celsius: Vec<f64>,
    evaporated_kg: f64,
    dripped_kg: f64,
    fat_kg: f64,
}

#[derive(Deserialize)]
struct Data {
    source: String,
    cooks: Vec<Cook>,
}

fn data() -> Data {
    serde_json::from_str(include_str!("../data/stiff_solver.json")).expect("the data file is sound")
}

fn scenario(cook: &Cook) -> Scenario {
    let mass = cook.cut.cut().shape.mass;
    let pit = fahrenheit(cook.pit_fahrenheit);
    let mut scenario = bare(cook.cut, mass, cook.cooker, pit, celsius(cook.end_celsius));
    assert_eq!(scenario.start, start());
    if let Some((cover, core)) = cook.wrap {
        scenario.wraps.push(WrapChange {
            when: When::Probe(celsius(core)),
            cover,
        });
    }
    if cook.box_hours > 0.0 {
        scenario.after.push(RestStage {
            place: Place::RestBox,
            cover: None,
            lasts: TimeSpan::from_hours(cook.box_hours),
            until_core: None,
        });
    }
    scenario
}

fn follow(cook: &Cook, settings: Settings) -> MemberRun {
    let mut runs = run(&scenario(cook), &[Draw::NOMINAL], &settings).expect("in range");
    runs.remove(0)
}

fn audited() -> Settings {
    Settings {
        audit: true,
        ..Settings::default()
    }
}

#[test]
fn six_cooks_follow_the_stiff_solver() {
    let data = data();
    let mut rows = Rows::new("six cooks, 18 cells", &data.source);
    for cook in &data.cooks {
        let got = follow(cook, audited());
        let ends = got
            .covered
            .iter()
            .copied()
            .chain([got.ready])
            .chain(got.stage_ends.iter().copied().map(Some));
        for (end, wanted) in ends.zip(&cook.stage_end_hours) {
            let end = end.map_or(f64::NAN, TimeSpan::hours);
            let name = format!("{}: stage ends at {wanted} h, relative", cook.name);
            rows.holds(&name, end / wanted, 1.0, 0.002);
        }
        for (hour, wanted) in (1..).zip(&cook.hourly_celsius) {
            let after = f64::from(hour);
            let sample = got
                .samples
                .iter()
                .find(|s| (s.after.hours() - after).abs() < 1e-9);
            let probe = sample.map_or(f64::NAN, |s| s.probe.celsius());
            rows.holds(
                &format!("{} after {hour} h, K", cook.name),
                probe,
                *wanted,
                0.2,
            );
        }
        for (what, mass, wanted) in [
            ("evaporated", got.at_end.evaporated, cook.evaporated_kg),
            ("dripped", got.at_end.dripped, cook.dripped_kg),
            ("fat", got.at_end.fat, cook.fat_kg),
        ] {
            let name = format!("{}: {what}, relative", cook.name);
            rows.holds(&name, mass.kilograms() / wanted, 1.0, 0.008);
        }
    }
}

#[test]
fn water_and_heat_are_all_accounted_for() {
    let data = data();
    let mut rows = Rows::new("books of water and heat", "conservation");
    for cook in &data.cooks {
        let got = follow(cook, audited());
        for (when, totals) in [("ready", got.at_ready), ("the end", got.at_end)] {
            let water = totals.water_residual.expect("audited");
            let energy = totals.energy_residual.expect("audited");
            rows.holds(&format!("{}: water at {when}", cook.name), water, 0.0, 1e-9);
            rows.holds(
                &format!("{}: heat at {when}", cook.name),
                energy,
                0.0,
                0.001,
            );
        }
    }
}

#[test]
fn finer_steps_change_little() {
    let data = data();
    let mut rows = Rows::new(
        "against steps a hundred times finer in error",
        "convergence",
    );
    for cook in &data.cooks {
        let usual = follow(cook, Settings::default());
        let fine = follow(
            cook,
            Settings {
                tolerance: 0.01,
                ..Settings::default()
            },
        );
        let hours = |run: &MemberRun| run.ready.map_or(f64::NAN, TimeSpan::hours);
        let name = format!("{}: ready, relative", cook.name);
        // Where the steps grow again after the foil is on, they cost a thousandth of the time.
        let miss = (cook.name == "packer 225 foil").then_some(0.00105);
        rows.row(&name, hours(&usual) / hours(&fine), 1.0, 0.0006, miss);
        let apart = usual
            .samples
            .iter()
            .zip(&fine.samples)
            .map(|(a, b)| (a.probe.celsius() - b.probe.celsius()).abs())
            .fold(0.0, f64::max);
        rows.holds(&format!("{}: probe, K", cook.name), apart, 0.0, 0.1);
    }
}

#[test]
fn finer_cells_change_little() {
    let data = data();
    let mut rows = Rows::new("18 cells against 60", "convergence");
    for cook in &data.cooks {
        let usual = follow(cook, Settings::default());
        let fine = follow(
            cook,
            Settings {
                cells: 60,
                tolerance: 0.1,
                ..Settings::default()
            },
        );
        let hours = |run: &MemberRun| run.ready.map_or(f64::NAN, TimeSpan::hours);
        let name = format!("{}: ready, relative", cook.name);
        rows.holds(&name, hours(&usual) / hours(&fine), 1.0, 0.0045);
        let apart = usual
            .samples
            .iter()
            .zip(&fine.samples)
            .map(|(a, b)| (a.probe.celsius() - b.probe.celsius()).abs())
            .fold(0.0, f64::max);
        rows.holds(&format!("{}: probe, K", cook.name), apart, 0.0, 0.75);
    }
}
