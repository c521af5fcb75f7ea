//! How often a fire is fed, and with how much.

use crate::plan::CookerKind;
use crate::units::{Mass, TimeSpan};
use serde::{Deserialize, Serialize};

/// The habit of feeding a kind of cooker. Common practice.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Feeding {
    /// Usual time between two rounds.
    pub every: TimeSpan,
    /// Shortest.
    pub soonest: TimeSpan,
    /// Longest.
    pub latest: TimeSpan,
    /// One piece of fuel where it is fed by the piece: a split. None where it is fed by the basket or hopper.
    pub piece: Option<Mass>,
    /// Lit first, before the fire proper: a chimney of charcoal.
    pub first_bed: Mass,
}

const fn hours(value: f64) -> TimeSpan {
    TimeSpan::from_hours(value)
}

/// How a kind of cooker is fed. None for cookers that feed themselves from a line or need nothing.
#[must_use]
pub const fn feeding(kind: CookerKind) -> Option<Feeding> {
    let chimney = Mass::from_kilograms(1.5);
    let handful = Mass::from_kilograms(0.4);
    let (every, soonest, latest, piece, first_bed) = match kind {
        CookerKind::Offset => (0.75, 0.5, 1.0, Some(Mass::from_kilograms(0.5)), chimney),
        CookerKind::Kettle => (3.0, 2.0, 4.0, None, handful),
        CookerKind::Drum => (5.0, 4.0, 6.0, None, handful),
        CookerKind::Ceramic => (10.0, 8.0, 12.0, None, Mass::from_kilograms(0.1)),
        CookerKind::Cabinet => (8.0, 6.0, 10.0, None, handful),
        CookerKind::Pellet => (10.0, 8.0, 12.0, None, Mass::ZERO),
        CookerKind::Gas | CookerKind::Electric | CookerKind::Oven | CookerKind::FanOven => {
            return None;
        }
    };
    Some(Feeding {
        every: hours(every),
        soonest: hours(soonest),
        latest: hours(latest),
        piece,
        first_bed,
    })
}
