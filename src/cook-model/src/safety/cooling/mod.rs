//! How cooked meat cools down, keeps warm, and warms up again.
//!
//! Conduction in one direction with the heat transfer of the place, from uniform start; drying of the surface is left
//! out, so cooling comes out on the slow side. Every heat transfer here is set by hand within what is usual for still
//! air, ovens and ice water.

mod body;
mod conduction;
mod keep_warm;
mod leftovers;
mod reheat;

pub use body::{Body, Form};
pub use conduction::{Course, Face, follow};
pub use keep_warm::{Container, WarmSpan, stays_above};
pub use leftovers::{Chilling, Portioning, TwoStages, cools_in_time, how_to_portion, two_stages};
pub use reheat::{OvenHeat, reheat_time};
