//! Edible yields of the catalogue against the weights printed in the USDA National Nutrient Database for Standard
//! Reference, Release 28 (2015), files WEIGHT and FOOD_DES: grams raw and grams cooked and edible.

use cook_model::meat::CutId;

struct Printed {
    cut: CutId,
    number: &'static str,
    raw_grams: f64,
    cooked_grams: f64,
}

const fn printed(cut: CutId, number: &'static str, raw_grams: f64, cooked_grams: f64) -> Printed {
    Printed {
        cut,
        number,
        raw_grams,
        cooked_grams,
    }
}

const POUND: f64 = 453.6;

/// Rows whose quotient is the yield itself.
const ROWS: [Printed; 14] = [
    printed(CutId::BeefPackerBrisket, "13367", POUND, 314.0),
    printed(CutId::BeefBrisketFlat, "13369", 418.0, 270.0),
    printed(CutId::BeefBrisketPoint, "13371", POUND, 314.0),
    printed(CutId::BeefPlateShortRibs, "13148", POUND, 225.0),
    printed(CutId::BeefChuckShortRibs, "13148", POUND, 225.0),
    printed(CutId::BeefTriTip, "13953", 690.0, 569.0),
    printed(CutId::BeefRibRoast, "13386", POUND, 290.0),
    printed(CutId::PorkShoulderButt, "10083", POUND, 262.0),
    printed(CutId::PorkSpareRibs, "10089", POUND, 177.0),
    printed(CutId::PorkLoin, "10198", POUND, 317.0),
    printed(CutId::LambShoulder, "17036", POUND, 218.0),
    printed(CutId::LambLeg, "17012", POUND, 265.0),
    printed(CutId::ChickenWhole, "05009", POUND, 178.0),
    printed(CutId::SalmonSide, "15085, 15086", 198.0, 155.0),
];

#[test]
fn the_catalogue_prints_what_the_database_prints() {
    for row in &ROWS {
        let published = row.cooked_grams / row.raw_grams;
        let error = row.cut.cut().edible_yield.share - published;
        println!(
            "{} ({}): {published:.3}, off by {error:+.4}",
            row.cut, row.number
        );
        assert!(error.abs() <= 0.0006, "{}: {published}", row.cut);
    }
}

#[test]
fn the_picnic_follows_from_its_lean_row() {
    // 10079: 191 g lean from a pound; of the cooked piece 27 % is bone and skin, 16 % separable fat.
    let whole = 191.0 / (1.0 - 0.27 - 0.16);
    let lean_and_fat = whole * (1.0 - 0.27);
    assert!((CutId::PorkPicnic.cut().edible_yield.share - lean_and_fat / POUND).abs() < 0.0006);
}

#[test]
fn the_turkey_is_the_sum_of_its_parts() {
    // 05192 breast, 05194 leg, 05196 wing, cooked from a ready-to-cook pound, meat and skin.
    let parts = 112.0 + 71.0 + 24.0;
    assert!((CutId::TurkeyWhole.cut().edible_yield.share - parts / POUND).abs() < 0.0006);
}

#[test]
fn computed_yields_follow_from_their_rows() {
    let computed = [
        // 23233: cooked over raw, less 61 % bone and connective tissue of the cooked piece.
        (CutId::BeefBackRibs, 1159.0 / 1587.0 * (1.0 - 0.61)),
        // 13379 over what is not bone (13815).
        (CutId::BeefChuckRoast, 235.0 / POUND / (1.0 - 0.19)),
        // Bone stays: 30 % raw (10192) is 43 % roasted (10193).
        (CutId::PorkBackRibs, 0.30 / 0.43 * (1.0 - 0.43)),
        // 05078 over 05075, less 27 % bone raw.
        (CutId::ChickenQuarters, 258.0 / 344.0 * (1.0 - 0.27)),
        // 05733 over 05732, less 14 % bone raw.
        (CutId::TurkeyBreast, 863.0 / 1150.0 * (1.0 - 0.14)),
    ];
    for (cut, share) in computed {
        let error = cut.cut().edible_yield.share - share;
        assert!(error.abs() < 0.0006, "{cut}: {share:.4}");
    }
}
