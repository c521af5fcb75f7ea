//! Between which moments each step can begin, given the rules between steps: a simple temporal network.
//!
//! Steps are points; a rule says that one begins at least so long after another. The windows are the longest paths from
//! and to the bounds (Dechter, Meiri and Pearl 1991, "Temporal constraint networks": a network of differences is
//! consistent when no cycle is positive, and any value within a propagated window can be completed). Seconds.

use std::collections::VecDeque;

/// Before and after all times.
const FAR: i64 = i64::MAX / 4;

/// A rule: `to` begins at least `least` after `from` begins. A most between two is a least with both turned round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Arc {
    pub(super) from: usize,
    pub(super) to: usize,
    pub(super) least: i64,
}

/// A window does not exist: what was asked for cannot be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Impossible;

/// Windows of all steps.
#[derive(Clone, Debug)]
pub(super) struct Network {
    earliest: Vec<i64>,
    latest: Vec<i64>,
    arcs: Vec<Arc>,
    out: Vec<Vec<usize>>,
    into: Vec<Vec<usize>>,
}

impl Network {
    /// Steps without any rule.
    pub(super) fn new(steps: usize) -> Self {
        Self {
            earliest: vec![-FAR; steps],
            latest: vec![FAR; steps],
            arcs: Vec::new(),
            out: vec![Vec::new(); steps],
            into: vec![Vec::new(); steps],
        }
    }

    /// The earliest and the latest beginning of a step.
    pub(super) fn window(&self, step: usize) -> (i64, i64) {
        (self.earliest[step], self.latest[step])
    }

    /// Whether a bound is there at all.
    pub(super) const fn is_bound(at: i64) -> bool {
        -FAR / 2 < at && at < FAR / 2
    }

    /// Rules into and out of a step.
    pub(super) fn around(&self, step: usize) -> impl Iterator<Item = Arc> {
        let both = self.out[step].iter().chain(&self.into[step]);
        both.map(|arc| self.arcs[*arc])
    }

    /// Adds a rule; windows follow. Where it cannot be, nothing is changed.
    pub(super) fn add(&mut self, arc: Arc) -> Result<(), Impossible> {
        self.arcs.push(arc);
        self.out[arc.from].push(self.arcs.len() - 1);
        self.into[arc.to].push(self.arcs.len() - 1);
        let done = self.change(|network, changed| {
            network.raise(
                arc.to,
                network.earliest[arc.from].saturating_add(arc.least),
                changed,
            )?;
            network.lower(
                arc.from,
                network.latest[arc.to].saturating_sub(arc.least),
                changed,
            )
        });
        if done.is_err() {
            self.arcs.pop();
            self.out[arc.from].pop();
            self.into[arc.to].pop();
        }
        done
    }

    /// Holds a step between two moments.
    pub(super) fn hold(
        &mut self,
        step: usize,
        earliest: i64,
        latest: i64,
    ) -> Result<(), Impossible> {
        self.change(|network, changed| {
            network.raise(step, earliest, changed)?;
            network.lower(step, latest, changed)
        })
    }

    /// Puts a step at a moment.
    pub(super) fn put(&mut self, step: usize, at: i64) -> Result<(), Impossible> {
        self.hold(step, at, at)
    }

    fn change(
        &mut self,
        first: impl FnOnce(&mut Self, &mut Changed) -> Result<(), Impossible>,
    ) -> Result<(), Impossible> {
        let mut changed = Changed::default();
        let done = first(self, &mut changed).and_then(|()| self.spread(&mut changed));
        if done.is_err() {
            for (step, earliest, latest) in changed.before.into_iter().rev() {
                (self.earliest[step], self.latest[step]) = (earliest, latest);
            }
        }
        done
    }

    fn spread(&mut self, changed: &mut Changed) -> Result<(), Impossible> {
        // A window that no rule can settle within so many changes stands in a circle that cannot be.
        let most = (self.earliest.len() + 1) * (self.arcs.len() + 1) * 4;
        let mut spent = 0_usize;
        while let Some(step) = changed.queue.pop_front() {
            spent += 1;
            if spent > most {
                return Err(Impossible);
            }
            for place in 0..self.out[step].len() {
                let arc = self.arcs[self.out[step][place]];
                let at = self.earliest[step];
                if at > -FAR / 2 {
                    self.raise(arc.to, at + arc.least, changed)?;
                }
            }
            for place in 0..self.into[step].len() {
                let arc = self.arcs[self.into[step][place]];
                let at = self.latest[step];
                if at < FAR / 2 {
                    self.lower(arc.from, at - arc.least, changed)?;
                }
            }
        }
        Ok(())
    }

    fn raise(&mut self, step: usize, at: i64, changed: &mut Changed) -> Result<(), Impossible> {
        if at <= self.earliest[step] {
            return Ok(());
        }
        changed.note(step, self.earliest[step], self.latest[step]);
        self.earliest[step] = at;
        if at > self.latest[step] {
            Err(Impossible)
        } else {
            Ok(())
        }
    }

    fn lower(&mut self, step: usize, at: i64, changed: &mut Changed) -> Result<(), Impossible> {
        if at >= self.latest[step] {
            return Ok(());
        }
        changed.note(step, self.earliest[step], self.latest[step]);
        self.latest[step] = at;
        if at < self.earliest[step] {
            Err(Impossible)
        } else {
            Ok(())
        }
    }
}

#[derive(Default)]
struct Changed {
    queue: VecDeque<usize>,
    before: Vec<(usize, i64, i64)>,
}

impl Changed {
    fn note(&mut self, step: usize, earliest: i64, latest: i64) {
        self.before.push((step, earliest, latest));
        self.queue.push_back(step);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn windows_follow_the_rules_on_both_sides() {
        let mut network = Network::new(3);
        network
            .add(Arc {
                from: 0,
                to: 1,
                least: 10,
            })
            .unwrap();
        network
            .add(Arc {
                from: 1,
                to: 2,
                least: 5,
            })
            .unwrap();
        network
            .add(Arc {
                from: 2,
                to: 1,
                least: -8,
            })
            .unwrap();
        network.put(2, 100).unwrap();
        assert_eq!(network.window(1), (92, 95));
        assert_eq!(network.window(0), (-FAR, 85));
        assert_eq!(network.put(0, 86), Err(Impossible));
        assert_eq!(network.window(0), (-FAR, 85));
        network.put(0, 85).unwrap();
        assert_eq!(network.window(1), (95, 95));
    }

    #[test]
    fn a_circle_that_cannot_be_is_refused_and_leaves_no_trace() {
        let mut network = Network::new(2);
        network.hold(0, 0, 1000).unwrap();
        network.hold(1, 0, 1000).unwrap();
        network
            .add(Arc {
                from: 0,
                to: 1,
                least: 10,
            })
            .unwrap();
        let before = (network.window(0), network.window(1));
        assert_eq!(
            network.add(Arc {
                from: 1,
                to: 0,
                least: -5
            }),
            Err(Impossible)
        );
        assert_eq!((network.window(0), network.window(1)), before);
        assert_eq!(network.arcs.len(), 1);
    }

    proptest! {
        #[test]
        fn whatever_is_chosen_within_a_window_can_be_completed(rules in prop::collection::vec((0..6_usize, 0..6_usize, -50..50_i64), 0..14), choose in prop::collection::vec(0.0..1.0f64, 6)) {
            let mut network = Network::new(6);
            for step in 0..6 {
                network.hold(step, 0, 200).unwrap();
            }
            let mut kept = Vec::new();
            for (from, to, least) in rules {
                if from != to && network.add(Arc { from, to, least }).is_ok() {
                    kept.push((from, to, least));
                }
            }
            let mut at = [0; 6];
            for step in 0..6 {
                let (low, high) = network.window(step);
                at[step] = low + ((high - low) as f64 * choose[step]) as i64;
                prop_assert!(network.put(step, at[step]).is_ok());
            }
            for (from, to, least) in kept {
                prop_assert!(at[to] - at[from] >= least);
            }
        }
    }
}
