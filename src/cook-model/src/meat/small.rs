//! Sausages and fish.

use super::cut::{composition, kilograms, programme, rest, shape};
use super::{Bone, Cut, CutId, EdibleYield, Kind, Make};
use crate::units::TimeSpan;

pub(super) const SAUSAGE: Cut = Cut {
    id: CutId::SausageLinks,
    name: "Sausage links, raw",
    imps: None,
    imps_verified: false,
    kind: Kind::Pork,
    make: Make::Ground,
    composition: composition([0.5628, 0.1508, 0.2663, 0.0201], "from memory"),
    shape: shape(0.25, [1.25, 1.25, 6.0], 0.80, [0.33, 0.33, 0.34]),
    bone: Bone::None,
    evaporating_share: 0.62,
    demand: None,
    programme: programme(235.0, None, 160.0),
    finish: "160 °F for pork and beef, 165 °F with poultry in it",
    rest: rest(5.0, 5.0, 60.0),
    slice: TimeSpan::from_minutes(5.0),
    trim: TimeSpan::ZERO,
    usual_mass: kilograms(0.06, 0.4),
    edible_yield: EdibleYield {
        share: 0.75,
        source: "from memory",
    },
};

pub(super) const SALMON: Cut = Cut {
    id: CutId::SalmonSide,
    name: "Salmon side",
    imps: None,
    imps_verified: false,
    kind: Kind::Fish,
    make: Make::Fish,
    composition: composition([0.6687, 0.2046, 0.1148, 0.012], "from memory"),
    shape: shape(2.75, [1.0, 6.0, 15.0], 0.85, [0.25, 0.3, 0.45]),
    bone: Bone::None,
    evaporating_share: 0.62,
    demand: None,
    programme: programme(225.0, None, 135.0),
    finish: "125-140 °F by taste, 145 °F by the consumer chart",
    rest: rest(5.0, 5.0, 30.0),
    slice: TimeSpan::from_minutes(5.0),
    trim: TimeSpan::from_minutes(5.0),
    usual_mass: kilograms(0.5, 2.5),
    edible_yield: EdibleYield {
        share: 0.783,
        source: "USDA SR28, 15085 and 15086: half a fillet, 198 g raw, 155 g by dry heat",
    },
};
