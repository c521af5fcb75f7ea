//! The day itself: how far each dish is by what was logged, and the forecast that rests on it.

mod boundary;
mod evidence;
mod lever;
mod log;
mod moved;
mod pace;
mod reforecast;
mod smoother;
mod stage;
mod state;

pub use lever::{Effect, Lever, Pull};
pub use log::{AirChange, CoreReading, Felt, PieceLog, PitReading, Unheated};
pub use moved::{Shift, shifts};
pub use reforecast::{Fit, MEMBERS, PASSES, Reforecast, UnderWay};
pub(crate) use stage::OVEN_COOKS;
pub use stage::{Stage, stage_of};
pub use state::{Bark, Expected, Live, Moved, MovedBy, News, Reading, ReadingFit, Stall, Wanted};

#[cfg(test)]
mod tests;
