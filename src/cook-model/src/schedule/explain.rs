//! What each step is told about itself: where it may be, what holds it, and what became of its pin.

use super::binding::Binding;
use super::lattice::{Lattice, Tie};
use super::network::Network;
use super::reason::{Allowed, Pin, Reason};
use crate::plan::outlook::Step;
use crate::units::Moment;

impl Lattice {
    /// Writes into each step its reasons, bounds and pin. The steps stand in the order of the tasks.
    pub(crate) fn explain(&self, steps: &mut [Step]) {
        let all = Binding::of(self, None);
        for (place, step) in steps.iter_mut().enumerate().take(self.tasks.len()) {
            let task = &self.tasks[place];
            step.held_by = all.held_by(place);
            for reason in &mut step.held_by {
                if let Reason::Meat { core, .. } = reason {
                    *core = step.core;
                    break;
                }
            }
            let mut alone = Binding::of(self, Some(place));
            alone.hold_dishes(Some(place));
            step.allowed = match task.tie {
                Tie::Fixed | Tie::With { .. } => Allowed {
                    earliest: Some(task.begins),
                    latest: Some(task.begins),
                },
                Tie::Free | Tie::Near { .. } => allowed(&alone.network, place),
            };
            step.pin = match task.pinned {
                None => Pin::Free,
                Some(pinned) if pinned == task.begins => Pin::Kept,
                Some(pinned) => {
                    let chain = if pinned < task.begins {
                        alone.why_not_sooner(place)
                    } else {
                        alone.why_not_later(place)
                    };
                    let with = chain.into_iter().next().unwrap_or(Reason::Best);
                    Pin::Collides { pinned, with }
                }
            };
        }
    }
}

fn allowed(network: &Network, place: usize) -> Allowed {
    let (low, high) = network.window(place);
    let bound = |at| {
        Some(at)
            .filter(|at| Network::is_bound(*at))
            .map(Moment::from_unix_seconds)
    };
    Allowed {
        earliest: bound(low),
        latest: bound(high),
    }
}

impl Lattice {
    /// Writes the solved times, hands and reasons into the steps, which stand in the order of the tasks.
    pub(crate) fn write_into(&self, steps: &mut [Step]) {
        for (task, step) in self.tasks.iter().zip(&mut *steps) {
            let moved = task.begins - step.when.likely();
            step.when = step.when.moved(moved);
            step.who = task.who.first().copied();
        }
        self.explain(steps);
    }
}
