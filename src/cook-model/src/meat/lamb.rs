//! Cuts of lamb.

use super::cut::{composition, kilograms, programme, rest, shape};
use super::{Bone, Cut, CutId, EdibleYield, Kind, Make};
use crate::physics::Cover;
use crate::units::TimeSpan;

pub(super) const SHOULDER: Cut = Cut {
    id: CutId::LambShoulder,
    name: "Lamb shoulder, on the bone",
    imps: Some("207"),
    imps_verified: false,
    kind: Kind::Lamb,
    make: Make::WholeMuscle,
    composition: composition([0.6317, 0.1702, 0.189, 0.0091], "USDA SR28, 17242"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(5.5, [3.71, 6.75, 8.31], 0.74, [0.33, 0.33, 0.34]),
    bone: Bone::Within { share: 0.20 },
    evaporating_share: 0.78,
    demand: Some(0.564),
    programme: programme(250.0, Some((Cover::Foil, 165.0)), 200.0),
    finish: "195-203 °F",
    rest: rest(30.0, 60.0, 300.0),
    slice: TimeSpan::from_minutes(20.0),
    trim: TimeSpan::from_minutes(10.0),
    usual_mass: kilograms(1.3, 4.0),
    edible_yield: EdibleYield {
        share: 0.481,
        source: "USDA SR28, 17036: whole shoulder, braised; as bought, with bone",
    },
};

pub(super) const LEG: Cut = Cut {
    id: CutId::LambLeg,
    name: "Leg of lamb, on the bone",
    imps: Some("233A"),
    imps_verified: false,
    kind: Kind::Lamb,
    make: Make::WholeMuscle,
    composition: composition([0.6622, 0.1843, 0.1439, 0.0097], "USDA SR28, 17230"),
    // Thickness fitted to real cooks and roasting charts; width and length keep the volume.
    shape: shape(7.0, [4.05, 5.7, 11.71], 0.66, [0.33, 0.33, 0.34]),
    bone: Bone::Within { share: 0.18 },
    evaporating_share: 0.72,
    demand: None,
    programme: programme(275.0, None, 135.0),
    finish: "pulled at 130-140 °F by taste, 145 °F by the consumer chart",
    rest: rest(15.0, 20.0, 40.0),
    slice: TimeSpan::from_minutes(20.0),
    trim: TimeSpan::from_minutes(10.0),
    usual_mass: kilograms(1.8, 4.5),
    edible_yield: EdibleYield {
        share: 0.584,
        source: "USDA SR28, 17012: whole leg, roasted; as bought, with bone",
    },
};
