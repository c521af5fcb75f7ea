//! The day itself: from what was logged to what is known now.

mod lever;
mod stage;
mod state;

pub use lever::{Effect, Lever, Pull};
pub(crate) use stage::OVEN_COOKS;
pub use stage::stage_of;
pub use state::{
    Bark, Live, LivePoint, Moved, MovedBy, News, Reading, ReadingFit, Stage, Stall, Wanted,
};
