//! What goes into the spray bottle.

use super::counting::whole;
use crate::plan::Spray;
use crate::units::{Area, TimeSpan, Volume};
use serde::{Deserialize, Serialize};

/// Litres on each square metre in one round, what misses included. Common practice: a butt of 4 kg takes a small shot
/// glass (30 ml), a generous hand twice that.
const LITRES_PER_SQUARE_METRE: f64 = 0.21;

/// Rounds and volume.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SprayNeed {
    /// How often it is sprayed.
    pub rounds: u32,
    /// Surface that is sprayed.
    pub surface: Area,
    /// In the bottle.
    pub volume: Volume,
}

/// Rounds from the first until it is wrapped or off, `until` after it went on; none where that comes first.
#[must_use]
pub fn spray_rounds(spray: Spray, until: TimeSpan) -> u32 {
    let sprayed_for = until - spray.first;
    if sprayed_for.seconds() <= 0.0 || spray.every.seconds() <= 0.0 {
        return 0;
    }
    whole(sprayed_for / spray.every)
}

/// What a surface wants in the bottle.
#[must_use]
pub fn spray_need(surface: Area, spray: Spray, until: TimeSpan) -> SprayNeed {
    let rounds = spray_rounds(spray, until);
    let litres = LITRES_PER_SQUARE_METRE * surface.square_metres() * f64::from(rounds);
    SprayNeed {
        rounds,
        surface,
        volume: Volume::from_litres(litres),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spray(first: f64, every: f64) -> Spray {
        Spray {
            first: TimeSpan::from_minutes(first),
            every: TimeSpan::from_minutes(every),
        }
    }

    #[test]
    fn rounds_fall_from_the_first_until_it_is_wrapped() {
        let rounds = |until| spray_rounds(spray(120.0, 45.0), TimeSpan::from_minutes(until));
        assert_eq!(rounds(119.0), 0);
        assert_eq!(rounds(120.0), 0);
        assert_eq!(rounds(121.0), 1);
        assert_eq!(rounds(165.0), 1);
        assert_eq!(rounds(166.0), 2);
    }

    #[test]
    fn a_span_of_nothing_between_rounds_sprays_nothing() {
        assert_eq!(spray_rounds(spray(60.0, 0.0), TimeSpan::from_hours(9.0)), 0);
    }
}
