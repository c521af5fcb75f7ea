//! Whole cooks against a library's stiff solver on the same equations and cells, against finer steps and finer cells,
//! and the books of water and heat. `python3 tests/reference/stiff/solve.py` marches them anew.

use super::stiff::{Cook, data};
use crate::rows::Rows;
use cook_model::physics::{Draw, MemberRun, Settings, run};
use cook_model::units::TimeSpan;

/// The usual cooks of the catalogue come after these in the file.
const FIXED: usize = 21;

fn follow(cook: &Cook, settings: Settings) -> MemberRun {
    let mut runs = run(&cook.scenario(), &[Draw::NOMINAL], &settings).expect("in range");
    runs.remove(0)
}

fn audited() -> Settings {
    Settings {
        audit: true,
        ..Settings::default()
    }
}

fn hours(time: Option<TimeSpan>) -> f64 {
    time.map_or(f64::NAN, TimeSpan::hours)
}

#[test]
fn the_march_follows_the_stiff_solver() {
    let data = data();
    assert_eq!(data.cells, Settings::default().cells);
    let mut rows = Rows::new("cooks, 18 cells", &data.source);
    for row in &data.rows {
        let (name, wanted) = (&row.cook.name, &row.result);
        let got = follow(&row.cook, audited());
        let ends: Vec<f64> = got
            .covered
            .iter()
            .copied()
            .chain(got.pit_changed.iter().skip(1).copied())
            .chain([got.ready])
            .chain(got.stage_ends.iter().copied().map(Some))
            .map(hours)
            .collect();
        let solved: Vec<f64> = wanted
            .covered_h
            .iter()
            .chain(&wanted.pit_changed_h)
            .chain([&wanted.ready_h])
            .chain(&wanted.stage_ends_h)
            .copied()
            .collect();
        assert_eq!(ends.len(), solved.len(), "{name}");
        for (end, wanted) in ends.into_iter().zip(solved) {
            let name = format!("{name}: what comes at {wanted} h, relative");
            rows.holds(&name, end / wanted, 1.0, 0.003);
        }
        for (hour, [core, probe]) in (1..).zip(&wanted.hourly_core_and_probe_c) {
            let after = f64::from(hour);
            let sample = got
                .samples
                .iter()
                .find(|s| (s.after.hours() - after).abs() < 1e-9);
            let at = |wanted: f64, of: fn(&cook_model::physics::Sample) -> f64| {
                (sample.map_or(f64::NAN, of), wanted)
            };
            // The march rounds off which of the middle cells is the coldest.
            for (what, (got, wanted), tolerance) in [
                ("core", at(*core, |s| s.core.celsius()), 0.4),
                ("probe", at(*probe, |s| s.probe.celsius()), 0.25),
            ] {
                let name = format!("{name}: {what} at {hour} h");
                rows.holds(&name, got, wanted, tolerance);
            }
        }
        for (what, mass, wanted) in [
            ("evaporated", got.at_end.evaporated, wanted.evaporated_kg),
            ("dripped", got.at_end.dripped, wanted.dripped_kg),
            ("fat", got.at_end.fat, wanted.fat_kg),
        ] {
            let share = (mass.kilograms() - wanted) / got.meat.kilograms();
            rows.holds(&format!("{name}: {what}, of the meat"), share, 0.0, 0.001);
        }
        // The catalogue's fractions add up to one within their rounding; the crate evens them out.
        let meat = got.meat.kilograms() / wanted.meat_kg;
        rows.holds(&format!("{name}: meat, relative"), meat, 1.0, 2e-4);
        let at = &wanted.at_ready;
        rows.holds(
            &format!("{name}: loss when ready"),
            got.loss_at_ready(),
            at.loss,
            0.001,
        );
        let probe = got.probe_at_ready.map_or(f64::NAN, |p| p.celsius());
        rows.holds(&format!("{name}: probe when ready"), probe, at.probe, 0.25);
        if let Some(tenderness) = got.tenderness_at_ready {
            let name = format!("{name}: tenderness when ready");
            rows.holds(&name, tenderness, at.tenderness, 0.006);
        }
    }
}

#[test]
fn water_and_heat_are_all_accounted_for() {
    let mut rows = Rows::new("books of water and heat", "conservation");
    for row in &data().rows {
        let got = follow(&row.cook, audited());
        let name = &row.cook.name;
        for (when, totals) in [("ready", got.at_ready), ("the end", got.at_end)] {
            let water = totals.water_residual.expect("audited");
            let energy = totals.energy_residual.expect("audited");
            rows.holds(&format!("{name}: water at {when}"), water, 0.0, 1e-9);
            rows.holds(&format!("{name}: heat at {when}"), energy, 0.0, 0.001);
        }
    }
}

/// Cooks whose steps cost more of the time than 0.0006.
const STEPS_COST: [(&str, f64); 5] = [
    ("packer bare", -0.0007),
    ("packer in paper, rest box", 0.0007),
    ("packer in paper, to tenderness, vented, rest box", 0.0008),
    ("four butts in an electric cabinet", 0.00075),
    ("turkey on a kettle, counter", 0.0007),
];

/// Cooks whose probe the steps move by more than 0.1 K.
const STEPS_MOVE: [(&str, f64); 2] = [
    ("packer in paper, rest box", 0.101),
    ("packer in paper, to tenderness, vented, rest box", 0.174),
];

/// Cooks whose probe the cells move by more than 0.5 K: thin pieces, in whose middle few cells lie.
const CELLS_MOVE: [(&str, f64); 7] = [
    ("plate ribs", 0.70),
    ("plate ribs, pit rising, paper, counter", 1.00),
    ("chuck short ribs in foil, rest box", 0.60),
    ("spareribs by the clock", 0.98),
    ("back ribs to tenderness", 1.12),
    ("rib roast, low then hot, counter", 0.55),
    ("sausages", 0.92),
];

fn known(list: &[(&str, f64)], name: &str) -> Option<f64> {
    list.iter()
        .find(|(known, _)| *known == name)
        .map(|(_, miss)| *miss)
}

/// How far apart two marches of one cook are: ready, relative; the largest difference of the probe at any sample, K.
fn apart(a: &MemberRun, b: &MemberRun) -> (f64, f64) {
    let probe = a
        .samples
        .iter()
        .zip(&b.samples)
        .map(|(a, b)| (a.probe.celsius() - b.probe.celsius()).abs())
        .fold(0.0, f64::max);
    (hours(a.ready) / hours(b.ready), probe)
}

#[test]
fn finer_steps_change_little() {
    let mut rows = Rows::new(
        "against steps a hundred times finer in error",
        "convergence",
    );
    for row in data().rows.iter().take(FIXED) {
        let fine = Settings {
            tolerance: 0.01,
            ..Settings::default()
        };
        let usual = follow(&row.cook, Settings::default());
        let (ready, probe) = apart(&usual, &follow(&row.cook, fine));
        let name = &row.cook.name;
        let cost = known(&STEPS_COST, name);
        rows.row(
            &format!("{name}: ready, relative"),
            ready,
            1.0,
            0.0006,
            cost,
        );
        let moved = known(&STEPS_MOVE, name);
        rows.row(&format!("{name}: probe, K"), probe, 0.0, 0.1, moved);
    }
}

#[test]
fn finer_cells_change_little() {
    let mut rows = Rows::new("18 cells against 60", "convergence");
    for row in data().rows.iter().take(FIXED) {
        let fine = Settings {
            cells: 60,
            tolerance: 0.1,
            ..Settings::default()
        };
        let usual = follow(&row.cook, Settings::default());
        let (ready, probe) = apart(&usual, &follow(&row.cook, fine));
        let name = &row.cook.name;
        rows.holds(&format!("{name}: ready, relative"), ready, 1.0, 0.0045);
        let moved = known(&CELLS_MOVE, name);
        rows.row(&format!("{name}: probe, K"), probe, 0.0, 0.5, moved);
    }
}
