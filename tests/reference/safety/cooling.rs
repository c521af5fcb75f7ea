//! Cooling of what is left against the one-term solution of textbooks, and the limits of two-stage cooling.

use cook_model::safety::cooling::{
    Body, Chilling, Face, Form, TwoStages, follow, how_to_portion, two_stages,
};
use cook_model::units::{Length, Mass, Temperature, TimeSpan};
use serde::Deserialize;

/// First root and constant for slab, cylinder and sphere at a Biot number.
#[derive(Deserialize)]
struct OneTerm {
    source: String,
    rows: Vec<(f64, [[f64; 2]; 3])>,
}

/// Of cooked meat, as the cooling model states them: Choi and Okos at 40 °C.
const CONDUCTIVITY: f64 = 0.476;
const DIFFUSIVITY: f64 = 0.476 / (1053.0 * 3319.0);

#[test]
fn the_middle_follows_the_one_term_solution() {
    let half = 0.030;
    let [start, air] = [60.0, 4.0];
    let mut worst = 0.0_f64;
    let table: OneTerm = serde_json::from_str(include_str!("../data/one_term.json"))
        .expect("the data file is sound");
    println!("{}", table.source);
    for (biot, by_form) in table.rows {
        for (form, [root, constant]) in [Form::Layer, Form::Round, Form::Lump]
            .into_iter()
            .zip(by_form)
        {
            let body = Body {
                form,
                thickness: Length::from_metres(2.0 * half),
            };
            let face = Face {
                air: Temperature::from_celsius(air),
                transfer: biot * CONDUCTIVITY / half,
            };
            let course = follow(
                body,
                Temperature::from_celsius(start),
                face,
                face,
                TimeSpan::from_hours(60.0),
            );
            for left in [0.6, 0.3, 0.1] {
                let fourier = (constant / left).ln() / (root * root);
                if fourier < 0.25 {
                    continue;
                }
                let exact = fourier * half * half / DIFFUSIVITY;
                let goal = Temperature::from_celsius(air + left * (start - air));
                let got = course.reaches(goal).expect("reached").seconds();
                let error = got / exact - 1.0;
                println!(
                    "{form:?} Bi {biot}: to {left} of the difference {got:.0} s against {exact:.0} s ({:+.2} %)",
                    100.0 * error
                );
                worst = worst.max(error.abs());
            }
        }
    }
    println!("worst {:.2} %", 100.0 * worst);
    assert!(worst < 0.0072, "worst {worst}");
}

#[test]
fn the_two_stages_are_the_published_ones_from_both_sides() {
    // Food Code 3-501.14: 135 to 70 °F within 2 h and to 41 °F within 6 h in all.
    let stages = |first: f64, second: f64| TwoStages {
        to_21: Some(TimeSpan::from_minutes(first)),
        to_5: Some(TimeSpan::from_minutes(second)),
    };
    assert!(stages(120.0, 360.0).kept());
    assert!(!stages(120.1, 360.0).kept());
    assert!(!stages(120.0, 360.1).kept());
    let never = TwoStages {
        to_21: Some(TimeSpan::from_minutes(60.0)),
        to_5: None,
    };
    assert!(!never.kept());
}

#[test]
fn what_the_model_calls_in_time_is_in_time_and_one_step_deeper_is_not() {
    let fridge = Chilling::Fridge {
        air: Temperature::from_celsius(3.0),
    };
    for chilling in [
        fridge,
        Chilling::PanInIceWater {
            air: Temperature::from_celsius(3.0),
        },
        Chilling::Freezer,
    ] {
        let start = Temperature::from_celsius(65.0);
        let portions = how_to_portion(Mass::from_kilograms(5.0), start, chilling)
            .expect("some depth cools in time");
        assert!(two_stages(Body::layer(portions.depth), start, chilling).kept());
        let deeper = Body::layer(portions.depth + Length::from_millimetres(5.0));
        assert!(!two_stages(deeper, start, chilling).kept());
        assert!(
            portions.depth <= Length::from_inches(3.0),
            "never deeper than the code allows"
        );
    }
}

#[test]
fn an_eleven_pound_butt_left_whole_in_a_weak_fridge_stays_warm_for_nine_hours() {
    // A told case: 11 lb wrapped whole into a weak fridge in the night read 96 °F after 8.75 h.
    let body = Body::lump(Mass::from_pounds(11.0) * 0.65);
    let weak = Chilling::Fridge {
        air: Temperature::from_celsius(10.0),
    };
    let stages = two_stages(body, Temperature::from_celsius(90.0), weak);
    assert!(!stages.kept());
    assert!(
        stages
            .to_21
            .is_none_or(|span| span > TimeSpan::from_hours(6.0))
    );
}
