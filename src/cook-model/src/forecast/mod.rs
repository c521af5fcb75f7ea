//! How long a dish may take: an ensemble of possible cooks, and its quantiles.
//!
//! Every uncertain input has an owner: the world, a cooker, or a piece. [`draw`] spreads the members evenly over what
//! the [`Prior`] leaves open and gives dishes with the same seed the same worlds, so that odds of several dishes at once
//! can be counted over members with the same index. On top of the physics each cook's time carries a heavy-tailed
//! [`Remainder`]: what the model itself gets wrong.

mod dish;
mod draws;
mod normal;
mod owner;
mod prior;
mod quantile;
mod remainder;
mod run;
mod stretch;
mod student;

pub use dish::{DishForecast, sample_at};
pub use draws::{MemberDraw, Owners, Standard, draw};
pub use normal::{normal_quantile, normal_share};
pub use owner::OwnerKey;
pub use prior::{Knowledge, Prior};
pub use quantile::{quantile, time_quantile};
pub use remainder::Remainder;
pub(crate) use run::march;
pub use run::{CHUNK, DishScenario, FULL, ForecastRun, ROUGH, SEARCH, forecast};
pub use student::{t4_density, t4_quantile};
