//! Random numbers for ids, from the browser's own source.

use super::clock::wall_milliseconds;
use cook_model::handover::identity::{
    CookerId, CrewId, DishId, EntryId, ExtraId, PieceId, PlanId, ReplicaId,
};

/// A source of ids for everything made on this device.
#[derive(Clone, Copy, Debug)]
pub struct Ids;

impl Ids {
    fn parts(self) -> (u64, u128) {
        let random = u128::from(random()) << 64 | u128::from(random());
        (wall_milliseconds(), random)
    }

    /// For a plan.
    #[must_use]
    pub fn plan(self) -> PlanId {
        let (wall, random) = self.parts();
        PlanId::new(wall, random)
    }

    /// For a dish.
    #[must_use]
    pub fn dish(self) -> DishId {
        let (wall, random) = self.parts();
        DishId::new(wall, random)
    }

    /// For a piece.
    #[must_use]
    pub fn piece(self) -> PieceId {
        let (wall, random) = self.parts();
        PieceId::new(wall, random)
    }

    /// For a cooker.
    #[must_use]
    pub fn cooker(self) -> CookerId {
        let (wall, random) = self.parts();
        CookerId::new(wall, random)
    }

    /// For somebody of the crew.
    #[must_use]
    pub fn crew(self) -> CrewId {
        let (wall, random) = self.parts();
        CrewId::new(wall, random)
    }

    /// For a thing of one's own on the list.
    #[must_use]
    pub fn extra(self) -> ExtraId {
        let (wall, random) = self.parts();
        ExtraId::new(wall, random)
    }

    /// For an entry of a journal, after every other: a clock that was set back must not put it before what it follows.
    #[must_use]
    pub fn entry(self, last: Option<EntryId>) -> EntryId {
        let (wall, random) = self.parts();
        EntryId::new(following(wall, last), random)
    }

    /// For this copy of the app.
    #[must_use]
    pub fn replica(self) -> ReplicaId {
        ReplicaId::new(random())
    }
}

/// The milliseconds of an id that follows another.
fn following(wall: u64, last: Option<EntryId>) -> u64 {
    last.map_or(wall, |last| wall.max(last.milliseconds() + 1))
}

/// Sixty-four random bits.
fn random() -> u64 {
    // Browsers on which the app starts at all have the source; a page that could not get at it must not make ids that
    // might clash.
    getrandom::u64().expect("the browser gives random numbers")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_set_back_does_not_change_the_order() {
        let last = EntryId::new(5_000, 9);
        assert_eq!(following(4_000, Some(last)), 5_001);
        assert_eq!(following(6_000, Some(last)), 6_000);
        assert_eq!(following(6_000, None), 6_000);
    }
}
