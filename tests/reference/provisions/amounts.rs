//! Small amounts against handbooks, standards and what the trade tells.

use cook_model::meat::CutId;
use cook_model::plan::{Cover, Spray};
use cook_model::provisions::{
    BINDER, RUB, Roll, Size, drip_pans, ice_to_chill, ice_to_keep_cold, mass_per_bone,
    serving_pans, spray_need, wrap_need,
};
use cook_model::units::{Area, Length, Mass, Temperature, TimeSpan};

/// Heat of melting of ice, J/kg: 333.4 to 333.7 kJ/kg in the usual steam and ice tables (from memory).
const MELTING: f64 = 333_550.0;

#[test]
fn ice_melts_by_the_heat_that_leaks_in() {
    // 1 W/K for 8 h at 30 °C outside and 2 °C inside.
    let ice = ice_to_keep_cold(TimeSpan::from_hours(8.0), Temperature::from_celsius(30.0));
    let handbook = 1.0 * 28.0 * 8.0 * 3600.0 / MELTING;
    println!(
        "ice for a day out: {:.3} kg, by hand {handbook:.3} kg",
        ice.kilograms()
    );
    assert!((ice.kilograms() / handbook - 1.0).abs() < 0.005);
}

#[test]
fn an_ice_bath_takes_up_what_the_meat_gives_off() {
    // Specific heat of raw brisket by composition, 3349 J/(kg K) (USDA SR28 13803 by Choi and Okos; ASHRAE Handbook,
    // Refrigeration, thermal properties of foods). Cooked meat holds less water: a few per cent less.
    let given_off = 3349.3 * (57.0 - 5.0);
    let melted = MELTING + 4186.0 * 5.0;
    let least = given_off / melted;
    let ice = ice_to_chill(Mass::from_kilograms(1.0)).kilograms();
    println!("ice for a kilogram left over: {ice:.3} kg, of which the balance asks {least:.3} kg");
    assert!((ice / (1.5 * least) - 1.0).abs() < 0.03);
}

#[test]
fn pans_are_those_of_the_standard() {
    // EN 631-1: a half-size pan is 325 × 265 mm.
    let one = Area::from_square_metres(0.325 * 0.265);
    assert_eq!(drip_pans(one), 1);
    assert_eq!(drip_pans(one * 1.001), 2);
    // Common practice: 2 to 2.5 kg of pulled meat in a half-size pan.
    assert_eq!(serving_pans(Mass::from_kilograms(2.0)), 1);
    assert_eq!(serving_pans(Mass::from_kilograms(2.6)), 2);
}

#[test]
fn a_rack_weighs_what_its_bones_say() {
    // Retail racks as printed by a university's meat programme: spareribs about 3.5 lb with 11 ribs or more, St. Louis
    // style 2.5 to 3 lb with 11 or more, back ribs 1.5 to 3 lb with 8 or more. Racks of twelve.
    for (cut, least, most) in [
        (CutId::PorkSpareRibs, 3.15, 3.85),
        (CutId::PorkStLouisRibs, 2.5, 3.0),
        (CutId::PorkBackRibs, 1.5, 3.0),
    ] {
        let each = mass_per_bone(cut).expect("counted by bones");
        let rack = (each * 12.0).pounds();
        println!("{cut}: twelve bones weigh {rack:.2} lb, printed {least} to {most} lb");
        assert!((least..=most).contains(&rack), "{cut}: {rack}");
    }
    // A plate of beef short ribs: three to four bones, 4 to 5 lb and above (IMPS 123A; bands from memory).
    let plate = mass_per_bone(CutId::BeefPlateShortRibs).expect("counted by bones");
    assert!((4.0..=6.0).contains(&(plate * 4.0).pounds()));
}

#[test]
fn a_packer_takes_as_much_paper_as_the_trade_tears_off() {
    // Common practice: two sheets of about 1.2 m (4 ft) of paper 61 cm (24 in) wide around a packer of 6 kg.
    let packer = Size::of(CutId::BeefPackerBrisket, Mass::from_kilograms(6.0), None);
    let need = wrap_need(&packer, Roll::usual(Cover::Paper));
    println!(
        "paper for a packer: {:.2} m, told 2.4 m",
        need.length.metres()
    );
    assert!((1.6..=2.6).contains(&need.length.metres()));
}

#[test]
fn a_shoulder_takes_a_handful_of_rub() {
    // Common practice: 40 to 80 g of rub without salt, and a spoon or two of mustard, on a shoulder butt of 3.6 kg.
    let butt = Size::of(CutId::PorkShoulderButt, Mass::from_kilograms(3.6), None);
    let rub = RUB.on(butt.surface()).grams();
    let binder = BINDER.on(butt.surface()).grams();
    println!("rub {rub:.0} g, told 40 to 80 g; mustard {binder:.0} g, told 10 to 30 g");
    assert!((40.0..=80.0).contains(&rub) && (10.0..=30.0).contains(&binder));
}

#[test]
fn a_round_of_spray_is_a_shot_glass() {
    // Common practice: 20 to 40 ml on a shoulder butt of 3.6 kg in one round.
    let butt = Size::of(CutId::PorkShoulderButt, Mass::from_kilograms(3.6), None);
    let spray = Spray {
        first: TimeSpan::from_hours(2.0),
        every: TimeSpan::from_minutes(45.0),
    };
    let need = spray_need(butt.surface(), spray, TimeSpan::from_hours(2.5));
    let round = need.volume.millilitres() / f64::from(need.rounds);
    println!("a round of spray: {round:.0} ml, told 20 to 40 ml");
    assert!(need.rounds == 1 && (20.0..=40.0).contains(&round));
}

#[test]
fn a_narrow_roll_is_told() {
    // Kitchen foil is 30 cm (12 in) wide: too narrow for a packer in one sheet (common practice).
    let packer = Size::of(CutId::BeefPackerBrisket, Mass::from_kilograms(6.0), None);
    let kitchen = Roll {
        width: Length::from_inches(12.0),
        turns: 2.0,
    };
    assert!(wrap_need(&packer, kitchen).narrowest > kitchen.width);
}
