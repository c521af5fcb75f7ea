//! Cuts of beef.

use super::cut::{composition, kilograms, programme, rest, shape};
use super::{Bone, Cut, CutId, EdibleYield, Kind, Make};
use crate::physics::Cover;
use crate::units::{Length, TimeSpan};

pub(super) const PACKER: Cut = Cut {
    id: CutId::BeefPackerBrisket,
    name: "Beef brisket, whole packer",
    imps: Some("120"),
    imps_verified: true,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition([0.6142, 0.1852, 0.1917, 0.0088], "USDA SR28, 13803"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(13.0, [3.63, 10.16, 15.97], 0.60, [0.34, 0.33, 0.33]),
    bone: Bone::None,
    evaporating_share: 0.72,
    demand: Some(0.716),
    programme: programme(250.0, Some((Cover::Paper, 165.0)), 203.0),
    finish: "probe-tender; 195-205 °F",
    rest: rest(45.0, 120.0, 480.0),
    slice: TimeSpan::from_minutes(20.0),
    trim: TimeSpan::from_minutes(40.0),
    usual_mass: kilograms(4.0, 8.5),
    edible_yield: EdibleYield {
        share: 0.692,
        source: "USDA SR28, 13367: whole brisket, braised; as bought, with its refuse",
    },
};

pub(super) const FLAT: Cut = Cut {
    id: CutId::BeefBrisketFlat,
    name: "Beef brisket, flat",
    imps: Some("120A"),
    imps_verified: true,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition([0.6956, 0.2022, 0.0925, 0.0098], "USDA SR28, 13904"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(6.0, [2.62, 8.06, 10.74], 0.72, [0.3, 0.35, 0.35]),
    bone: Bone::None,
    evaporating_share: 0.78,
    demand: Some(0.428),
    programme: programme(250.0, Some((Cover::Paper, 165.0)), 200.0),
    finish: "probe-tender; 195-203 °F",
    rest: rest(45.0, 120.0, 480.0),
    slice: TimeSpan::from_minutes(20.0),
    trim: TimeSpan::from_minutes(20.0),
    usual_mass: kilograms(1.5, 4.5),
    edible_yield: EdibleYield {
        share: 0.646,
        source: "USDA SR28, 13369: flat half, braised; boneless raw to cooked",
    },
};

pub(super) const POINT: Cut = Cut {
    id: CutId::BeefBrisketPoint,
    name: "Beef brisket, point",
    imps: Some("120B"),
    imps_verified: true,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition([0.6032, 0.1775, 0.211, 0.0082], "USDA SR28, 13807"),
    shape: shape(5.0, [2.9, 7.5, 9.5], 0.68, [0.33, 0.33, 0.34]),
    bone: Bone::None,
    evaporating_share: 0.78,
    demand: Some(0.569),
    programme: programme(250.0, Some((Cover::Paper, 170.0)), 205.0),
    finish: "probe-tender; 200-208 °F",
    rest: rest(45.0, 120.0, 480.0),
    slice: TimeSpan::from_minutes(20.0),
    trim: TimeSpan::from_minutes(20.0),
    usual_mass: kilograms(1.5, 4.0),
    edible_yield: EdibleYield {
        share: 0.692,
        source: "USDA SR28, 13371: point half, braised; as bought, with its refuse",
    },
};

pub(super) const PLATE_SHORT_RIBS: Cut = Cut {
    id: CutId::BeefPlateShortRibs,
    name: "Beef plate short ribs",
    imps: Some("123A"),
    imps_verified: false,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition(
        [0.575, 0.165, 0.250, 0.010],
        "from memory; lies between USDA SR28 13147 (36 % fat) and 23128 (18 %)",
    ),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(5.0, [2.22, 6.04, 8.56], 0.90, [0.15, 0.15, 0.7]),
    bone: Bone::Under {
        thickness: Length::from_inches(0.6),
        share: 0.25,
    },
    evaporating_share: 0.98,
    demand: Some(0.52),
    programme: programme(275.0, Some((Cover::Paper, 185.0)), 203.0),
    finish: "probe-tender; 200-208 °F",
    rest: rest(30.0, 60.0, 180.0),
    slice: TimeSpan::from_minutes(10.0),
    trim: TimeSpan::from_minutes(15.0),
    usual_mass: kilograms(1.5, 4.0),
    edible_yield: EdibleYield {
        share: 0.496,
        source: "USDA SR28, 13148: short ribs, braised; as bought, with bone",
    },
};

pub(super) const CHUCK_SHORT_RIBS: Cut = Cut {
    id: CutId::BeefChuckShortRibs,
    name: "Beef chuck short ribs",
    imps: Some("130"),
    imps_verified: true,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition([0.6353, 0.1739, 0.1824, 0.0084], "USDA SR28, 23128"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(4.0, [1.96, 5.42, 8.37], 0.90, [0.15, 0.15, 0.7]),
    bone: Bone::Under {
        thickness: Length::from_inches(0.55),
        share: 0.27,
    },
    evaporating_share: 0.98,
    demand: Some(0.458),
    programme: programme(275.0, Some((Cover::Paper, 185.0)), 203.0),
    finish: "probe-tender; 200-205 °F",
    rest: rest(30.0, 60.0, 180.0),
    slice: TimeSpan::from_minutes(10.0),
    trim: TimeSpan::from_minutes(10.0),
    usual_mass: kilograms(1.0, 3.0),
    edible_yield: EdibleYield {
        share: 0.496,
        source: "USDA SR28, 13148: short ribs, braised; as bought, with bone",
    },
};

pub(super) const BACK_RIBS: Cut = Cut {
    id: CutId::BeefBackRibs,
    name: "Beef back ribs",
    imps: Some("124"),
    imps_verified: false,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition([0.5434, 0.1628, 0.2865, 0.0074], "USDA SR28, 23236"),
    shape: shape(3.5, [1.3, 6.0, 14.0], 0.80, [0.25, 0.25, 0.5]),
    bone: Bone::Within { share: 0.52 },
    evaporating_share: 0.88,
    demand: Some(0.61),
    programme: programme(250.0, None, 200.0),
    finish: "bend test; 198-205 °F",
    rest: rest(10.0, 20.0, 120.0),
    slice: TimeSpan::from_minutes(10.0),
    trim: TimeSpan::from_minutes(10.0),
    usual_mass: kilograms(1.0, 2.5),
    edible_yield: EdibleYield {
        share: 0.285,
        source: "computed from USDA SR28, 23233: braised, 1,587 g raw give 1,159 g, of which 61 % is bone and gristle",
    },
};

pub(super) const CHUCK_ROAST: Cut = Cut {
    id: CutId::BeefChuckRoast,
    name: "Beef chuck roast, for pulling",
    imps: Some("116A"),
    imps_verified: true,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition([0.6209, 0.174, 0.1968, 0.0083], "USDA SR28, 13815"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(3.5, [3.12, 5.98, 6.94], 0.75, [0.33, 0.33, 0.34]),
    bone: Bone::None,
    evaporating_share: 0.83,
    demand: Some(0.483),
    programme: programme(250.0, Some((Cover::Foil, 165.0)), 203.0),
    finish: "probe-tender; 200-208 °F",
    rest: rest(30.0, 60.0, 300.0),
    slice: TimeSpan::from_minutes(20.0),
    trim: TimeSpan::from_minutes(5.0),
    usual_mass: kilograms(1.0, 3.0),
    edible_yield: EdibleYield {
        share: 0.64,
        source: "computed from USDA SR28: 13379, blade roast, braised, 235 g of a pound with bone; 13815, 19 % of it bone raw",
    },
};

pub(super) const TRI_TIP: Cut = Cut {
    id: CutId::BeefTriTip,
    name: "Beef tri-tip",
    imps: Some("185C"),
    imps_verified: false,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition([0.6987, 0.2058, 0.0852, 0.0103], "USDA SR28, 13954"),
    shape: shape(2.2, [2.1, 4.8, 9.0], 0.62, [0.33, 0.33, 0.34]),
    bone: Bone::None,
    evaporating_share: 0.88,
    demand: None,
    programme: programme(250.0, None, 130.0),
    finish: "pulled at 125-135 °F by taste, 145 °F by the consumer chart; sliced across the grain",
    rest: rest(15.0, 20.0, 40.0),
    slice: TimeSpan::from_minutes(15.0),
    trim: TimeSpan::from_minutes(5.0),
    usual_mass: kilograms(0.7, 1.6),
    edible_yield: EdibleYield {
        share: 0.825,
        source: "USDA SR28, 13953: tri-tip, roasted; boneless raw to cooked",
    },
};

pub(super) const RIB_ROAST: Cut = Cut {
    id: CutId::BeefRibRoast,
    name: "Beef rib roast, on the bone",
    imps: Some("109"),
    imps_verified: false,
    kind: Kind::Beef,
    make: Make::WholeMuscle,
    composition: composition([0.56, 0.1676, 0.2646, 0.0079], "USDA SR28, 13824"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(5.0, [3.69, 6.32, 7.41], 0.80, [0.05, 0.05, 0.9]),
    bone: Bone::Within { share: 0.15 },
    evaporating_share: 0.72,
    demand: None,
    programme: programme(250.0, None, 125.0),
    finish: "pulled at 120-130 °F by taste, 145 °F by the consumer chart",
    rest: rest(15.0, 20.0, 40.0),
    slice: TimeSpan::from_minutes(15.0),
    trim: TimeSpan::from_minutes(15.0),
    usual_mass: kilograms(1.8, 8.0),
    edible_yield: EdibleYield {
        share: 0.639,
        source: "USDA SR28, 13386: large end rib, roasted; as bought, with bone",
    },
};
