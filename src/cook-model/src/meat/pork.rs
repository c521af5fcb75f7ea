//! Cuts of pork.

use super::cut::{composition, kilograms, programme, rest, shape};
use super::{Bone, Cut, CutId, EdibleYield, Kind, Make};
use crate::physics::Cover;
use crate::units::TimeSpan;

pub(super) const BUTT: Cut = Cut {
    id: CutId::PorkShoulderButt,
    name: "Pork shoulder butt, on the bone",
    imps: Some("406"),
    imps_verified: true,
    kind: Kind::Pork,
    make: Make::WholeMuscle,
    composition: composition([0.6933, 0.1746, 0.1239, 0.0083], "USDA SR28, 10080"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(8.0, [3.94, 7.27, 9.62], 0.76, [0.33, 0.33, 0.34]),
    bone: Bone::Within { share: 0.08 },
    evaporating_share: 0.78,
    demand: Some(0.723),
    programme: programme(250.0, Some((Cover::Foil, 165.0)), 203.0),
    finish: "the bone pulls free; 195-205 °F",
    rest: rest(30.0, 60.0, 300.0),
    slice: TimeSpan::from_minutes(20.0),
    trim: TimeSpan::from_minutes(10.0),
    usual_mass: kilograms(2.0, 5.0),
    edible_yield: EdibleYield {
        share: 0.578,
        source: "USDA SR28, 10083: shoulder blade roast, roasted; as bought, with refuse",
    },
};

pub(super) const PICNIC: Cut = Cut {
    id: CutId::PorkPicnic,
    name: "Pork picnic shoulder, on the bone",
    imps: Some("405"),
    imps_verified: true,
    kind: Kind::Pork,
    make: Make::WholeMuscle,
    composition: composition([0.6797, 0.1861, 0.1244, 0.0097], "USDA SR28, 10074"),
    // Made thinner in the same proportion as the butt's.
    shape: shape(8.0, [3.85, 7.06, 10.26], 0.74, [0.33, 0.33, 0.34]),
    bone: Bone::Within { share: 0.18 },
    evaporating_share: 0.62,
    demand: Some(0.62),
    programme: programme(250.0, Some((Cover::Foil, 165.0)), 200.0),
    finish: "195-203 °F",
    rest: rest(30.0, 60.0, 300.0),
    slice: TimeSpan::from_minutes(20.0),
    trim: TimeSpan::from_minutes(15.0),
    usual_mass: kilograms(2.0, 5.5),
    edible_yield: EdibleYield {
        share: 0.539,
        source: "computed from USDA SR28, 10079: roasted, 191 g lean of a pound as bought; lean is 57 % and fat 16 % of the cooked piece",
    },
};

pub(super) const SPARE_RIBS: Cut = Cut {
    id: CutId::PorkSpareRibs,
    name: "Pork spareribs",
    imps: Some("416"),
    imps_verified: true,
    kind: Kind::Pork,
    make: Make::WholeMuscle,
    composition: composition([0.6018, 0.1558, 0.2357, 0.0067], "USDA SR28, 10088"),
    shape: shape(3.5, [1.0, 6.5, 17.0], 0.85, [0.25, 0.25, 0.5]),
    bone: Bone::Within { share: 0.30 },
    evaporating_share: 0.88,
    demand: Some(1.02),
    programme: programme(235.0, None, 198.0),
    finish: "bend test; 195-203 °F",
    rest: rest(10.0, 20.0, 120.0),
    slice: TimeSpan::from_minutes(10.0),
    trim: TimeSpan::from_minutes(15.0),
    usual_mass: kilograms(1.2, 2.5),
    edible_yield: EdibleYield {
        share: 0.39,
        source: "USDA SR28, 10089: spareribs, braised; as bought, with bone",
    },
};

pub(super) const ST_LOUIS_RIBS: Cut = Cut {
    id: CutId::PorkStLouisRibs,
    name: "Pork spareribs, St. Louis style",
    imps: Some("416A"),
    imps_verified: true,
    kind: Kind::Pork,
    make: Make::WholeMuscle,
    composition: composition([0.6018, 0.1558, 0.2357, 0.0067], "USDA SR28, 10088"),
    shape: shape(2.6, [1.0, 5.2, 14.5], 0.90, [0.25, 0.25, 0.5]),
    bone: Bone::Within { share: 0.28 },
    evaporating_share: 0.88,
    demand: Some(0.868),
    programme: programme(235.0, None, 198.0),
    finish: "bend test; 195-203 °F",
    rest: rest(10.0, 20.0, 120.0),
    slice: TimeSpan::from_minutes(10.0),
    trim: TimeSpan::from_minutes(20.0),
    usual_mass: kilograms(0.9, 1.6),
    edible_yield: EdibleYield {
        share: 0.39,
        source: "USDA SR28, 10089: spareribs, braised; as bought, with bone",
    },
};

pub(super) const BACK_RIBS: Cut = Cut {
    id: CutId::PorkBackRibs,
    name: "Pork back ribs",
    imps: Some("422"),
    imps_verified: false,
    kind: Kind::Pork,
    make: Make::WholeMuscle,
    composition: composition([0.6353, 0.1909, 0.1635, 0.0103], "USDA SR28, 10192"),
    shape: shape(2.25, [0.9, 4.5, 17.0], 0.85, [0.25, 0.25, 0.5]),
    bone: Bone::Within { share: 0.30 },
    evaporating_share: 0.88,
    demand: Some(0.837),
    programme: programme(235.0, None, 198.0),
    finish: "bend test; 190-200 °F",
    rest: rest(10.0, 20.0, 120.0),
    slice: TimeSpan::from_minutes(10.0),
    trim: TimeSpan::from_minutes(10.0),
    usual_mass: kilograms(0.7, 1.4),
    edible_yield: EdibleYield {
        share: 0.398,
        source: "computed from USDA SR28: bone is 30 % of raw back ribs (10192) and 43 % of roasted ones (10193)",
    },
};

pub(super) const BELLY: Cut = Cut {
    id: CutId::PorkBelly,
    name: "Pork belly, without skin",
    imps: Some("409"),
    imps_verified: false,
    kind: Kind::Pork,
    make: Make::WholeMuscle,
    composition: composition([0.3689, 0.0938, 0.5323, 0.0049], "USDA SR28, 10005"),
    shape: shape(5.0, [1.6, 8.0, 11.5], 0.92, [0.15, 0.4, 0.45]),
    bone: Bone::None,
    evaporating_share: 0.57,
    demand: Some(0.308),
    programme: programme(250.0, None, 195.0),
    finish: "165 °F to slice; 195-203 °F to cube or pull",
    rest: rest(10.0, 20.0, 120.0),
    slice: TimeSpan::from_minutes(10.0),
    trim: TimeSpan::from_minutes(5.0),
    usual_mass: kilograms(1.0, 5.0),
    edible_yield: EdibleYield {
        share: 0.65,
        source: "set by hand: this model loses 29 % of the meat, the rest is trimming",
    },
};

pub(super) const LOIN: Cut = Cut {
    id: CutId::PorkLoin,
    name: "Pork loin roast, boneless",
    imps: Some("413"),
    imps_verified: true,
    kind: Kind::Pork,
    make: Make::WholeMuscle,
    composition: composition([0.6679, 0.197, 0.1255, 0.0096], "USDA SR28, 10020"),
    shape: shape(3.5, [2.8, 4.3, 8.8], 0.85, [0.1, 0.1, 0.8]),
    bone: Bone::None,
    evaporating_share: 0.72,
    demand: None,
    programme: programme(250.0, None, 140.0),
    finish: "pulled at 138-143 °F by taste, 145 °F with 3 min rest by the consumer chart",
    rest: rest(15.0, 20.0, 40.0),
    slice: TimeSpan::from_minutes(15.0),
    trim: TimeSpan::from_minutes(5.0),
    usual_mass: kilograms(0.8, 4.5),
    edible_yield: EdibleYield {
        share: 0.699,
        source: "USDA SR28, 10198: center rib roast, boneless, roasted; as bought",
    },
};
