//! From a plan to its outlook, in chunks of work so that a newer question can end an older one between two.

mod hindrance;
mod levers;
mod live;
mod outlook;
mod planner;
mod shelf;
mod work;

pub use levers::{levers, pulls};
pub(super) use live::PieceNews;
pub use planner::{Planner, derive};

/// The seed of every plan's ensemble: plans, dishes and phones share their worlds. Part of the format.
pub const SEED: u64 = 20_260_912;

#[cfg(test)]
mod tests;
