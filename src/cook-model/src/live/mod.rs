//! The day itself: how far each dish is, by what was logged.

mod stage;

pub(crate) use stage::OVEN_COOKS;
pub use stage::{Stage, stage_of};
