//! What is needed and how much of it: meat from the shop to the plate, salt, and the room it takes on the grate.
//!
//! Everything here is arithmetic on a plan; nothing needs a forecast unless it says so. Amounts are given in SI units
//! and exact; rounding to what a shop sells comes last and only ever upwards.

pub mod fuel;
mod portions;
mod salt;
mod salt_diffusion;
mod size;
mod trimming;
mod weights;

pub use portions::{Hunger, Sides, appetite, portions, short_by, to_buy};
pub use salt::{RATE, Rate, SaltAmount, grams_of_salt, salt_for};
pub use salt_diffusion::{Diffusivity, EvenOut, IN_FRIDGE, centre_over_mean, even_out, reach};
pub use size::{Size, grate_room};
pub use trimming::{Trimming, trimming};
pub use weights::{CountedFrom, Weights, counted_from, dish_weights};
