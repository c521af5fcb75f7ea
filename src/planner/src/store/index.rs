//! Which plans were taken away. A plan that was is still kept, until it is erased for good.

use cook_model::handover::Stamp;
use cook_model::handover::identity::PlanId;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A plan's last coming or going.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Marker {
    /// Taken away, or brought back.
    pub away: bool,
    /// When.
    pub stamp: Stamp,
}

/// The markers of all plans that ever were taken away here.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Index {
    /// By plan.
    pub plans: BTreeMap<PlanId, Marker>,
}

impl Index {
    /// Whether a plan was taken away.
    #[must_use]
    pub fn is_away(&self, plan: PlanId) -> bool {
        self.plans.get(&plan).is_some_and(|marker| marker.away)
    }

    /// Takes over the other's later markers. Returns whether this one is different now.
    pub fn merge(&mut self, other: &Self) -> bool {
        let mut changed = false;
        for (plan, theirs) in &other.plans {
            let ours = self.plans.entry(*plan).or_insert_with(|| {
                changed = true;
                *theirs
            });
            if theirs.stamp > ours.stamp {
                *ours = *theirs;
                changed = true;
            }
        }
        changed
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::handover::Clock;
    use cook_model::handover::identity::ReplicaId;

    #[test]
    fn the_later_marker_stands_whatever_the_order() {
        let plan = PlanId::new(1, 1);
        let mut clock = Clock::new(ReplicaId::new(1));
        let mut with = |away| {
            let marker = Marker {
                away,
                stamp: clock.tick(5),
            };
            Index {
                plans: BTreeMap::from([(plan, marker)]),
            }
        };
        let (gone, back) = (with(true), with(false));
        for (first, second) in [(&gone, &back), (&back, &gone)] {
            let mut merged = first.clone();
            merged.merge(second);
            assert!(!merged.is_away(plan));
            assert!(!merged.merge(second));
        }
    }
}
