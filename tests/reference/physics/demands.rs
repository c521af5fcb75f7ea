//! The demands: how tender the model has a cut when the trade takes it off.

use super::bare;
use crate::rows::Rows;
use cook_model::meat::{Cut, CutId};
use cook_model::physics::{CookerClass, Draw, Finish, Scenario, Settings, run};
use cook_model::units::{Temperature, TimeSpan};

/// Thin cuts are at the pit's temperature long before they are tender: the trade cooks them by the clock. Hours at the
/// programme's pit, common practice.
const BY_THE_CLOCK: [(CutId, f64); 5] = [
    (CutId::PorkSpareRibs, 5.5),
    (CutId::PorkStLouisRibs, 5.0),
    (CutId::PorkBackRibs, 4.5),
    (CutId::BeefBackRibs, 4.0),
    (CutId::PorkBelly, 3.5),
];

/// The usual cook, taken off when the trade does.
fn usual(cut: &Cut) -> Scenario {
    let mass = cut.shape.mass;
    let by_the_clock = BY_THE_CLOCK.iter().find(|(id, _)| *id == cut.id);
    if let Some((id, hours)) = by_the_clock {
        let (pit, target) = (cut.programme.pit, cut.programme.target);
        let mut scenario = bare(*id, mass, CookerClass::Generic, pit, target);
        scenario.finish = Finish::AfterOn(TimeSpan::from_hours(*hours));
        return scenario;
    }
    let mut scenario = Scenario::usual(cut.id, mass, CookerClass::Generic);
    scenario.finish = Finish::Temperature {
        target: cut.programme.target,
        minimum: Temperature::from_celsius(0.0),
    };
    scenario
}

#[test]
fn the_usual_programme_ends_tender() {
    let mut rows = Rows::new(
        "tenderness when the trade takes it off",
        "common practice: the programmes of the catalogue",
    );
    for cut in CutId::ALL.iter().map(|id| id.cut()) {
        let Some(demand) = cut.demand else { continue };
        let got = &run(&usual(cut), &[Draw::NOMINAL], &Settings::default()).expect("in range")[0];
        let tenderness = got.tenderness_at_ready.unwrap_or(f64::NAN);
        println!(
            "  {}: a demand of {:.3} would give 1",
            cut.id,
            demand * tenderness
        );
        rows.holds(&cut.id.to_string(), tenderness, 1.0, 0.02);
    }
}
