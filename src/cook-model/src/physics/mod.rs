//! Heat and water in a piece of meat, from the moment it goes on until it has rested.
//!
//! One right-hand side (conduction, juice, drying front, film, cooker air, rest box) is marched for eight members side
//! by side by a Rosenbrock-W method with an analytic Jacobian. A [`Scenario`] says what is cooked and how; a [`Draw`] says
//! how one possible world differs from it; [`run`] follows a member for each draw.

#![expect(
    clippy::needless_range_loop,
    reason = "one index runs over the lanes of many arrays at once"
)]

pub mod air;
mod body;
mod cells;
pub mod conduction;
mod constants;
mod cooker;
mod course;
mod draw;
mod environment;
mod error;
mod fingerprint;
mod inside;
mod kernel;
mod linear;
mod march;
mod member;
mod mesh;
mod pit;
pub mod properties;
mod rates;
mod real;
mod recorder;
mod scenario;
mod settings;
pub mod shape;
#[cfg(test)]
mod slopes;
mod state;
mod surface;
mod tableau;

pub use air::reachable_target;
pub use cooker::{CookerClass, convection};
pub use draw::{Draw, SWING_PERIODS_HOURS, SwingMode};
pub use error::ModelError;
pub use fingerprint::fingerprint;
pub use march::{run, run_each};
pub use member::{MemberRun, Sample, Span, Totals};
pub(crate) use real::Real;
pub use scenario::{
    Cover, Finish, PitChange, PitDeparture, Place, RestStage, Scenario, Spray, Surroundings, When,
    WrapChange,
};
pub use settings::Settings;
