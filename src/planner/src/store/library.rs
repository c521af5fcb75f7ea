//! Every plan on this device, and which of them is open.

use super::{HeldPlan, Index, Marker};
use cook_model::handover::Clock;
use cook_model::handover::identity::PlanId;
use std::collections::BTreeMap;

/// A record that could not be read: its text, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptAside {
    /// Checksum of the text, its name among the records.
    pub checksum: u32,
    /// As it was found.
    pub text: String,
}

/// The plans.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Library {
    /// By id, those taken away included.
    pub plans: BTreeMap<PlanId, HeldPlan>,
    /// Which were taken away.
    pub index: Index,
    /// Records that could not be read.
    pub aside: Vec<KeptAside>,
    /// The one on the screen.
    pub open: Option<PlanId>,
}

impl Library {
    /// The plan on the screen.
    #[must_use]
    pub fn open_plan(&self) -> Option<&HeldPlan> {
        self.plans.get(&self.open?)
    }

    /// The plans on the shelf, the next to be served first, then those already served, the latest first.
    #[must_use]
    pub fn on_the_shelf(&self, now: cook_model::units::Moment) -> Vec<&HeldPlan> {
        let mut plans: Vec<_> = self
            .plans
            .values()
            .filter(|held| !self.index.is_away(held.id()))
            .collect();
        plans.sort_by_key(|held| {
            let serving = held.plan().serving.moment();
            let served = serving < now;
            let seconds = serving.unix_seconds();
            (served, if served { -seconds } else { seconds }, held.id())
        });
        plans
    }

    /// The plans taken away, the last one first.
    #[must_use]
    pub fn away(&self) -> Vec<&HeldPlan> {
        let mut plans: Vec<_> = self
            .plans
            .values()
            .filter(|held| self.index.is_away(held.id()))
            .collect();
        plans.sort_by_key(|held| std::cmp::Reverse(self.index.plans[&held.id()].stamp));
        plans
    }

    /// Takes a plan away or brings it back.
    pub fn mark(&mut self, plan: PlanId, away: bool, clock: &mut Clock, wall: u64) {
        for marker in self.index.plans.values() {
            clock.see(marker.stamp);
        }
        let stamp = clock.tick(wall);
        self.index.plans.insert(plan, Marker { away, stamp });
    }

    /// Puts a plan on the screen: this one if it is there, else the first on the shelf.
    pub fn open_or_first(&mut self, wanted: Option<PlanId>, now: cook_model::units::Moment) {
        let there = |plan: &PlanId| self.plans.contains_key(plan) && !self.index.is_away(*plan);
        self.open = wanted
            .filter(there)
            .or_else(|| self.on_the_shelf(now).first().map(|held| held.id()));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::handover::identity::ReplicaId;
    use cook_model::plan::{Plan, Serving};
    use cook_model::units::Moment;

    fn library(days: &[u32]) -> (Library, Clock) {
        let mut clock = Clock::new(ReplicaId::new(1));
        let mut library = Library::default();
        for day in days {
            let serving = Serving {
                local: format!("2026-09-{day:02}T18:00:00")
                    .parse()
                    .expect("a date"),
                zone: "Europe/London".to_owned(),
                offset_seconds: 3600,
            };
            let id = PlanId::new(u64::from(*day), 0);
            let held = HeldPlan::new(id, Plan::new(serving), &mut clock, 1);
            library.plans.insert(id, held);
        }
        (library, clock)
    }

    fn days(plans: &[&HeldPlan]) -> Vec<u64> {
        let ids = (1..31).map(|day| (day, PlanId::new(day, 0)));
        let day_of: BTreeMap<_, _> = ids.map(|(day, id)| (id, day)).collect();
        plans.iter().map(|held| day_of[&held.id()]).collect()
    }

    /// 10 September 2026, noon UTC.
    const NOW: Moment = Moment::from_unix_seconds(1_789_041_600);

    #[test]
    fn the_next_to_be_served_comes_first_and_what_is_over_comes_last() {
        let (library, _) = library(&[8, 12, 3, 26]);
        assert_eq!(days(&library.on_the_shelf(NOW)), [12, 26, 8, 3]);
    }

    #[test]
    fn a_plan_taken_away_is_kept_and_comes_back() {
        let (mut library, mut clock) = library(&[12, 26]);
        let plan = PlanId::new(12, 0);
        library.mark(plan, true, &mut clock, 5);
        library.open_or_first(Some(plan), NOW);
        assert_eq!(library.open, Some(PlanId::new(26, 0)));
        assert_eq!(days(&library.away()), [12]);
        library.mark(plan, false, &mut clock, 5);
        assert_eq!(days(&library.on_the_shelf(NOW)), [12, 26]);
    }

    #[test]
    fn an_empty_shelf_opens_nothing() {
        let mut library = Library::default();
        library.open_or_first(Some(PlanId::new(1, 1)), NOW);
        assert_eq!(library.open_plan(), None);
    }
}
