//! What is needed and how much of it: meat from the shop to the plate, salt, and the room it takes on the grate.
//!
//! Everything here is arithmetic on a plan; nothing needs a forecast unless it says so. Amounts are given in SI units
//! and exact; rounding to what a shop sells comes last and only ever upwards.

mod coating;
mod cold_and_hot_box;
mod counting;
mod fires;
pub mod fuel;
mod keep_plan;
mod keeping;
mod offer;
mod pans;
mod piece_swap;
mod portions;
mod quantity;
mod salt;
mod salt_diffusion;
pub mod shopping;
mod size;
mod spoons;
mod spraying;
mod trimming;
mod weights;
mod whole_pieces;
mod wrapping;

pub use coating::{BINDER, CoatingRate, RUB, rubbed_surface};
pub use cold_and_hot_box::{HotBox, hot_box, ice_to_chill, ice_to_keep_cold};
pub use fires::{FireNeed, burnt, fires};
pub use keep_plan::{Keeping, keeping};
pub use keeping::{BuyWindow, Frozen, Thaw, ThawPlace, ThawRefusal, buy_fresh, buy_frozen, thaw};
pub use offer::{Instead, Offer, OfferError, SwapWay, mass_per_bone};
pub use pans::{drip_pans, serving_pans};
pub use piece_swap::{Side, SwapEffect, swap_effect, take_offer};
pub use portions::{Hunger, Sides, appetite, portions, short_by, to_buy};
pub use quantity::{Quantity, UnlikeQuantities};
pub use salt::{RATE, Rate, SaltAmount, grams_of_salt, salt_for};
pub use salt_diffusion::{
    Diffusivity, EvenOut, IN_FRIDGE, Soak, centre_over_mean, even_out, reach, soak,
};
pub use size::{Size, grate_room};
pub use spoons::{SaltKind, Spoonful, TEASPOONS_IN_A_TABLESPOON, teaspoons};
pub use spraying::{SprayNeed, spray_need, spray_rounds};
pub use trimming::{Trimming, trimming};
pub use weights::{CountedFrom, Weights, counted_from, dish_weights};
pub use whole_pieces::{Choice, Lot, equal_pieces, from_sizes};
pub use wrapping::{Lie, Roll, WrapNeed, wrap_need};
