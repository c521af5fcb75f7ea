//! The reckoning runs in a worker: what page and worker say to each other, and how the worker minds its desk.

mod desk;
mod protocol;
mod reckoning;
mod worker;

pub use desk::{Desk, Turn};
pub use protocol::{Answer, Effort, Line, Question, Reply, Request, Wanted};
pub use reckoning::Reckoning;
pub use worker::{is_worker, serve};
