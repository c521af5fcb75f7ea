//! From a plan's words to what the physics takes.

use super::hands::VENT;
use super::method::{CutMethod, Settled};
use super::{CookerKind, Cover, Dish, HoldPlace, Piece, Place, WrapWhen};
use crate::forecast::{DishScenario, Knowledge, Owners};
use crate::physics::{
    self, CookerClass, Finish, PitChange, RestStage, Scenario, Surroundings, When, WrapChange,
};
use crate::provisions::Weights;
use crate::units::{Temperature, TimeSpan};

/// Out of the fridge. Raw meat stays there until it goes on.
const FRIDGE: Temperature = Temperature::from_celsius(4.0);
/// Indoors, where it rests. Set by hand.
const KITCHEN: Temperature = Temperature::from_celsius(20.0);
/// Vented to this before it is shut into a box, so that it does not go on cooking. Common practice.
const VENTED: Temperature = Temperature::from_celsius(80.0);
/// Followed in its holding place for so long.
const HELD: TimeSpan = TimeSpan::from_hours(12.0);
/// Water that stays on the meat after one spray, kg/m². Set by hand.
const SPRAYED: f64 = 0.05;

/// What the physics calls a kind of cooker.
pub(super) const fn cooker_class(kind: CookerKind) -> CookerClass {
    match kind {
        CookerKind::Offset => CookerClass::Offset,
        CookerKind::Kettle => CookerClass::Kettle,
        CookerKind::Drum => CookerClass::Drum,
        CookerKind::Ceramic => CookerClass::Ceramic,
        CookerKind::Cabinet => CookerClass::Cabinet,
        CookerKind::Electric => CookerClass::Electric,
        CookerKind::Pellet | CookerKind::Gas => CookerClass::Generic,
        CookerKind::Oven => CookerClass::StillOven,
        CookerKind::FanOven => CookerClass::FanOven,
    }
}

/// The cook of one piece, or of several alike, of a dish.
pub(super) fn scenario(
    settled: &Settled<'_>,
    method: &CutMethod<'_>,
    (piece, owners): (&Piece, Owners),
    kind: CookerKind,
    pit: &[PitChange],
    place: &Place,
) -> DishScenario {
    let cut = method.cut;
    let (target, minimum) = (method.target, method.minimum);
    let scenario = Scenario {
        cut: cut.id,
        mass: Weights::of_one(cut.id, piece).trimmed,
        thickness: piece.thickness,
        start: FRIDGE,
        cooker: cooker_class(kind),
        pieces: piece.count,
        pit: pit.to_vec(),
        departures: Vec::new(),
        wraps: method.wrap.map(wrapped).into_iter().collect(),
        spray: spray(settled.dish),
        lid_openings: Vec::new(),
        finish: if cut.cooks_to_tenderness() {
            Finish::Tender { target, minimum }
        } else {
            Finish::Temperature { target, minimum }
        },
        after: after(settled),
        surroundings: Surroundings {
            outside: place.air,
            resting: KITCHEN,
            altitude: place.altitude,
        },
    };
    DishScenario {
        scenario,
        knowledge: Knowledge {
            thickness_measured: piece.thickness.is_some(),
            first_time: settled.dish.first_time,
            ..Knowledge::default()
        },
        owners,
    }
}

fn wrapped((cover, when): (Cover, WrapWhen)) -> WrapChange {
    WrapChange {
        when: match when {
            WrapWhen::Core { core } => When::Probe(core),
            WrapWhen::AfterOn { span } => When::AfterOn(span),
        },
        cover: match cover {
            Cover::Paper => physics::Cover::Paper,
            Cover::Foil => physics::Cover::Foil,
        },
    }
}

fn spray(dish: &Dish) -> Option<physics::Spray> {
    dish.spray.map(|spray| physics::Spray {
        first: spray.first,
        every: spray.every,
        kilograms_per_square_metre: SPRAYED,
    })
}

/// Rest and hold: vented on the counter before a box or a warm oven; on the counter it stays where it is.
fn after(settled: &Settled<'_>) -> Vec<RestStage> {
    let stage = |place, lasts, until_core| RestStage {
        place,
        cover: None,
        lasts,
        until_core,
    };
    let vent = stage(physics::Place::Counter, VENT, Some(VENTED));
    match settled.hold {
        HoldPlace::RestBox => vec![vent, stage(physics::Place::RestBox, HELD, None)],
        HoldPlace::WarmOven { air } => {
            vec![vent, stage(physics::Place::WarmOven(air), HELD, None)]
        }
        HoldPlace::Counter => vec![stage(physics::Place::Counter, settled.keeps_good, None)],
    }
}
