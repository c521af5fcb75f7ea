//! The shortest schedule that is found for a project within so many schedules.
//!
//! Several priority lists to begin with, each laid out and improved forward and backward (Li and Willis 1992, "An
//! iterative scheduling technique for resource-constrained project scheduling", European Journal of Operational Research
//! 56); then lists that cross the best ones and are shaken (the list crossover of Hartmann 1998, "A competitive genetic
//! algorithm for resource-constrained project scheduling", Naval Research Logistics 45). The same project gives the same
//! schedule.

use super::project::{Laid, Project};

/// Good schedules that are kept to make others of. Chosen on projects of our own.
const KEPT: usize = 12;
/// A list is shaken so often at most.
const SHAKES: usize = 5;
/// Draws for the shaking. Part of the answer.
const SEED: u32 = 20_260_912;

/// A schedule and what it took to find it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shortest {
    /// When each activity begins, from 0.
    pub begins: Vec<i64>,
    /// When the last one is over.
    pub length: i64,
    /// Schedules laid out for it.
    pub schedules: u32,
}

impl Project {
    /// The shortest schedule found, with about so many laid out at most. It stops sooner where none can be shorter.
    #[must_use]
    pub fn shortest(&self, most: u32) -> Shortest {
        let mut search = Search {
            project: self,
            schedules: 0,
            kept: Vec::new(),
        };
        let bound = self.critical_path();
        for list in self.lists() {
            search.lay_out(&list);
        }
        let mut round = 0;
        while search.schedules < most && search.best() > bound && self.len() > 1 {
            let list = search.next_list(round);
            search.lay_out(&list);
            round += 1;
        }
        let best = search.kept.into_iter().next();
        let (begins, length) = best.map_or((Vec::new(), 0), |best| (best.begins, best.length));
        Shortest {
            begins,
            length,
            schedules: search.schedules,
        }
    }

    /// Lists by the usual rules: least latest beginning, least slack, most that comes after it, longest way after it.
    fn lists(&self) -> Vec<Vec<usize>> {
        let mut followers = vec![0_i64; self.len()];
        let mut weight = vec![0_i64; self.len()];
        for place in self.sorted().iter().rev() {
            let later = self.before(*place);
            followers[*place] = later.iter().map(|later| followers[*later] + 1).sum();
            let rest: i64 = later.iter().map(|later| self.takes(*later)).sum();
            weight[*place] = self.takes(*place) + rest;
        }
        let rules: [&dyn Fn(usize) -> i64; 5] = [
            &|place| self.window(place).1,
            &|place| self.window(place).1 + self.takes(place),
            &|place| self.window(place).1 - self.window(place).0,
            &|place| -followers[place],
            &|place| -weight[place],
        ];
        rules.iter().map(|rule| self.list_by(rule)).collect()
    }

    /// A list that keeps the rules; of those that may come next the one with the least rank.
    fn list_by(&self, rank: &dyn Fn(usize) -> i64) -> Vec<usize> {
        let mut waits: Vec<usize> = (0..self.len())
            .map(|place| self.after(place).len())
            .collect();
        let mut ready: Vec<usize> = (0..self.len()).filter(|place| waits[*place] == 0).collect();
        let mut list = Vec::with_capacity(self.len());
        while let Some(at) = (0..ready.len()).min_by_key(|at| (rank(ready[*at]), ready[*at])) {
            let next = ready.swap_remove(at);
            list.push(next);
            for later in self.before(next) {
                waits[*later] -= 1;
                if waits[*later] == 0 {
                    ready.push(*later);
                }
            }
        }
        list
    }
}

struct Search<'a> {
    project: &'a Project,
    schedules: u32,
    /// Shortest first; of equally long ones the older first.
    kept: Vec<Laid>,
}

impl Search<'_> {
    fn best(&self) -> i64 {
        self.kept.first().map_or(i64::MAX, |best| best.length)
    }

    /// Lays a list out forward, and improves it backward and forward while that helps.
    fn lay_out(&mut self, list: &[usize]) {
        let Some(mut laid) = self.project.lay_out(list, false) else {
            return;
        };
        self.schedules += 1;
        loop {
            let mut list: Vec<usize> = self.project.sorted().to_vec();
            list.sort_by_key(|place| laid.begins[*place] + self.project.takes(*place));
            list.reverse();
            let Some(back) = self.project.lay_out(&list, true) else {
                break;
            };
            list = self.project.sorted().to_vec();
            list.sort_by_key(|place| back.begins[*place]);
            let Some(forth) = self.project.lay_out(&list, false) else {
                break;
            };
            self.schedules += 2;
            let better = forth.length < laid.length;
            if forth.length <= laid.length {
                laid = forth;
            }
            if !better {
                break;
            }
        }
        self.keep(laid);
    }

    fn keep(&mut self, laid: Laid) {
        let known = self.kept.iter().any(|kept| kept.begins == laid.begins);
        if known {
            return;
        }
        let at = self.kept.partition_point(|kept| kept.length <= laid.length);
        self.kept.insert(at, laid);
        self.kept.truncate(KEPT);
    }

    /// Two good lists crossed, and shaken.
    fn next_list(&self, round: u32) -> Vec<usize> {
        // A scrambled sequence repeats after 2^16: a new scramble goes on from there.
        let draw =
            |dimension: u32| sobol_burley::sample(round & 0xffff, dimension, SEED + (round >> 16));
        let one = self.list_of(pick(draw(0) * draw(0), self.kept.len()));
        let other = self.list_of(pick(draw(1), self.kept.len()));
        let (from, to) = (pick(draw(2), one.len()), pick(draw(3), one.len()));
        let mut list = crossed(&one, &other, from.min(to), from.max(to));
        let shakes = pick(draw(4), SHAKES);
        for shake in 0..u32::try_from(shakes).unwrap_or(0) {
            self.shake(&mut list, draw(5 + 2 * shake), draw(6 + 2 * shake));
        }
        list
    }

    fn list_of(&self, kept: usize) -> Vec<usize> {
        let mut list = self.project.sorted().to_vec();
        if let Some(laid) = self.kept.get(kept) {
            list.sort_by_key(|place| laid.begins[*place]);
        }
        list
    }

    /// Moves one activity to another place that keeps the rules.
    fn shake(&self, list: &mut Vec<usize>, which: f32, whither: f32) {
        let at = pick(which, list.len());
        let place = list.remove(at);
        let position = |other: &usize| list.iter().position(|one| one == other);
        let after = self.project.after(place).iter().filter_map(position);
        let low = after.max().map_or(0, |last| last + 1);
        let before = self.project.before(place).iter().filter_map(position);
        let high = before.min().unwrap_or(list.len());
        list.insert(low + pick(whither, high - low + 1), place);
    }
}

/// The first of a list, then what is left of the other until `to`, then what is left of the first.
fn crossed(one: &[usize], other: &[usize], from: usize, to: usize) -> Vec<usize> {
    let mut list: Vec<usize> = one[..from].to_vec();
    let mut has = vec![false; one.len()];
    for place in &list {
        has[*place] = true;
    }
    let rest = |list: &mut Vec<usize>, has: &mut Vec<bool>, of: &[usize], until: usize| {
        for place in of {
            if list.len() >= until {
                return;
            }
            if !has[*place] {
                has[*place] = true;
                list.push(*place);
            }
        }
    };
    rest(&mut list, &mut has, other, to);
    rest(&mut list, &mut has, one, one.len());
    list
}

/// One of so many, by a draw from 0 to 1.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "counts of activities"
)]
fn pick(draw: f32, of: usize) -> usize {
    ((draw * of as f32) as usize).min(of.saturating_sub(1))
}
