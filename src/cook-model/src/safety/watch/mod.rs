//! The clock over one piece of food: from what happened and what was read to a state, its reason and the next moment.
//!
//! What a person has to read is never made up. Where a reading is missing that a verdict needs, the state is
//! [`Standing::Unknown`]; a forecast may say when to look, not that all is well.

mod chilling;
mod heating;
mod journal;
mod judge;
mod keeping;
mod state;
mod track;

pub use journal::{Watched, track_of, watch_dish};
pub use judge::judge;
pub use state::{Next, SafeState, Standing};
pub use track::{Happened, Happening, Portion, Standard, Track, Waiting};

#[cfg(test)]
mod tests;
