//! The model against figures from outside the project, each with its source beside it.

mod answers;
mod physics;
mod provisions;
mod rows;
mod safety;
mod schedule;
