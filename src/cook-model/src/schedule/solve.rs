//! Settling the steps around one that is moved.

use super::binding::Binding;
use super::lattice::{Lattice, Tie};
use crate::units::Moment;

/// Why a step cannot stand where it was put.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Fault {
    /// Rules between steps do not allow it.
    Rules {
        /// It is too soon rather than too late.
        too_soon: bool,
    },
}

/// The lattice with a step at a moment and the others settled around it.
pub(super) fn settle(lattice: &Lattice, step: usize, at: Moment) -> Result<Lattice, Fault> {
    let mut binding = Binding::of(lattice, Some(step));
    binding.hold_dishes(Some(step));
    let (low, _) = binding.network.window(step);
    let too_soon = at.unix_seconds() < low;
    binding
        .network
        .put(step, at.unix_seconds())
        .map_err(|_| Fault::Rules { too_soon })?;
    let mut settled = lattice.clone();
    let places = 0..lattice.tasks.len();
    for place in places {
        let task = &lattice.tasks[place];
        let liked = match task.tie {
            Tie::Near { task: root, .. } | Tie::With { task: root, .. } => {
                let moved =
                    binding.network.window(root).0 - lattice.tasks[root].begins.unix_seconds();
                task.begins.unix_seconds() + moved
            }
            Tie::Free | Tie::Fixed => task.begins.unix_seconds(),
        };
        let (low, high) = binding.network.window(place);
        let begins = liked.clamp(low, high);
        binding
            .network
            .put(place, begins)
            .map_err(|_| Fault::Rules { too_soon })?;
        settled.tasks[place].begins = Moment::from_unix_seconds(begins);
    }
    Ok(settled)
}

impl Lattice {
    /// Puts every pinned step where it was pinned, or as near as rules allow.
    pub fn hold_pins(&mut self) {
        let mut binding = Binding::of(self, None);
        binding.hold_dishes(None);
        let mut begins = Vec::new();
        for (place, task) in self.tasks.iter().enumerate() {
            let (low, high) = binding.network.window(place);
            let at = task.begins.unix_seconds().clamp(low, high);
            binding.network.put(place, at).ok();
            begins.push(Moment::from_unix_seconds(at));
        }
        for (task, at) in self.tasks.iter_mut().zip(begins) {
            task.begins = at;
        }
    }
}
