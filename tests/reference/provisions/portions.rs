//! Raw weights per guest against what the trade tells.

use cook_model::meat::CutId;
use cook_model::provisions::to_buy;
use cook_model::units::Mass;

/// Raw per guest as told (common practice), kg, for 150 to 200 g cooked; and how far outside of it the published yield
/// with the usual trimming comes out, kg. A miss may only shrink.
const TOLD: [(CutId, [f64; 2], f64); 5] = [
    (CutId::BeefPackerBrisket, [0.27, 0.33], 0.032),
    (CutId::PorkShoulderButt, [0.27, 0.35], 0.015),
    (CutId::BeefPlateShortRibs, [0.45, 0.60], 0.122),
    (CutId::PorkSpareRibs, [0.45, 0.55], 0.046),
    (CutId::ChickenWhole, [0.40, 0.50], 0.018),
];

#[test]
fn raw_weight_per_guest_is_what_the_trade_tells() {
    for (cut, [least, most], known_miss) in TOLD {
        let light = to_buy(cut, Mass::from_grams(150.0)).bought.kilograms();
        let usual = to_buy(cut, Mass::from_grams(200.0)).bought.kilograms();
        let miss = (least - light).max(usual - most).max(0.0);
        println!("{cut}: {light:.3} to {usual:.3} kg, told {least} to {most}, miss {miss:.3}");
        assert!(miss <= known_miss, "{cut}: {miss}");
    }
}

#[test]
fn a_whole_packer_gives_half_of_what_was_bought() {
    // Common practice: about half of an untrimmed packer ends on the plate, 45 to 60 %.
    let bought = to_buy(CutId::BeefPackerBrisket, Mass::from_kilograms(1.0)).bought;
    let share = 1.0 / bought.kilograms();
    println!("packer: {share:.3} of the weight bought");
    assert!((0.45..=0.60).contains(&share));
}
