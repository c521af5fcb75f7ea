//! Heat and water in a piece of meat, from the moment it goes on until it has rested.
//!
//! One right-hand side (conduction, juice, drying front, film, cooker air, rest box) is marched for eight members side
//! by side. A [`Scenario`] says what is cooked and how; a [`Draw`] says how one possible world differs from it.

mod cooker;
mod draw;
mod error;
mod member;
mod scenario;
mod settings;

pub use cooker::CookerClass;
pub use draw::{Draw, SWING_PERIODS_HOURS, SwingMode};
pub use error::ModelError;
pub use member::{MemberRun, Sample, Span, Totals};
pub use scenario::{
    Cover, Finish, PitChange, Place, RestStage, Scenario, Spray, Surroundings, When, WrapChange,
};
pub use settings::Settings;
