//! Chicken and turkey. Skin lets hardly any water through, so their evaporating share is small: fitted to real cooks and
//! roasting charts. A bird is one body here, without its cavity; its thickness says how fast
//! the whole of it heats, not what a ruler would find.

use super::cut::{composition, kilograms, programme, rest, shape};
use super::{Bone, Cut, CutId, EdibleYield, Kind, Make};
use crate::units::TimeSpan;

pub(super) const CHICKEN: Cut = Cut {
    id: CutId::ChickenWhole,
    name: "Whole chicken",
    imps: None,
    imps_verified: false,
    kind: Kind::Chicken,
    make: Make::Poultry,
    composition: composition([0.657, 0.1852, 0.1499, 0.0079], "USDA SR28, 05006"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(3.5, [2.63, 5.69, 9.52], 0.63, [0.40, 0.295, 0.305]),
    bone: Bone::Within { share: 0.25 },
    evaporating_share: 0.078,
    demand: None,
    programme: programme(275.0, None, 162.0),
    finish: "165 °F at the coldest point by the consumer chart; thigh 175-185 °F",
    rest: rest(15.0, 30.0, 60.0),
    slice: TimeSpan::from_minutes(10.0),
    trim: TimeSpan::from_minutes(10.0),
    usual_mass: kilograms(1.0, 3.2),
    edible_yield: EdibleYield {
        share: 0.392,
        source: "USDA SR28, 05009: meat and skin, roasted; as bought, with bone",
    },
};

pub(super) const QUARTERS: Cut = Cut {
    id: CutId::ChickenQuarters,
    name: "Chicken leg quarters",
    imps: None,
    imps_verified: false,
    kind: Kind::Chicken,
    make: Make::Poultry,
    composition: composition([0.6701, 0.163, 0.1588, 0.0081], "USDA SR28, 05075"),
    shape: shape(0.85, [1.5, 3.6, 6.0], 0.70, [0.33, 0.33, 0.34]),
    bone: Bone::Within { share: 0.27 },
    // Half of it is cut faces without skin.
    evaporating_share: 0.4,
    demand: Some(0.096),
    programme: programme(275.0, None, 178.0),
    finish: "175-185 °F",
    rest: rest(15.0, 30.0, 60.0),
    slice: TimeSpan::from_minutes(5.0),
    trim: TimeSpan::from_minutes(5.0),
    usual_mass: kilograms(0.25, 0.6),
    edible_yield: EdibleYield {
        share: 0.548,
        source: "computed from USDA SR28: leg with skin and back, 344 g raw (05075) give 258 g roasted (05078); 27 % of it bone raw",
    },
};

pub(super) const TURKEY: Cut = Cut {
    id: CutId::TurkeyWhole,
    name: "Whole turkey",
    imps: None,
    imps_verified: false,
    kind: Kind::Turkey,
    make: Make::Poultry,
    composition: composition([0.7201, 0.2144, 0.0559, 0.0097], "USDA SR28, 05165"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(13.0, [4.43, 9.05, 15.54], 0.62, [0.40, 0.295, 0.305]),
    bone: Bone::Within { share: 0.22 },
    evaporating_share: 0.078,
    demand: None,
    programme: programme(300.0, None, 162.0),
    finish: "165 °F at the coldest point by the consumer chart; thigh 175 °F",
    rest: rest(15.0, 30.0, 60.0),
    slice: TimeSpan::from_minutes(25.0),
    trim: TimeSpan::from_minutes(20.0),
    usual_mass: kilograms(3.5, 11.0),
    edible_yield: EdibleYield {
        share: 0.456,
        source: "computed from USDA SR28: breast 05192, leg 05194 and wing 05196 per lb of bird, roasted",
    },
};

pub(super) const TURKEY_BREAST: Cut = Cut {
    id: CutId::TurkeyBreast,
    name: "Turkey breast, on the bone",
    imps: None,
    imps_verified: false,
    kind: Kind::Turkey,
    make: Make::Poultry,
    composition: composition([0.7008, 0.216, 0.0736, 0.0097], "USDA SR28, 05732"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(6.0, [3.96, 5.83, 7.71], 0.72, [0.33, 0.33, 0.34]),
    bone: Bone::Within { share: 0.15 },
    evaporating_share: 0.078,
    demand: None,
    programme: programme(275.0, None, 160.0),
    finish: "165 °F at the coldest point by the consumer chart; 157-160 °F only with a tabled hold",
    rest: rest(15.0, 30.0, 60.0),
    slice: TimeSpan::from_minutes(15.0),
    trim: TimeSpan::from_minutes(5.0),
    usual_mass: kilograms(1.5, 4.5),
    edible_yield: EdibleYield {
        share: 0.645,
        source: "computed from USDA SR28: breast with skin, 1,150 g raw (05732) give 863 g roasted (05733); 14 % of it bone raw",
    },
};
