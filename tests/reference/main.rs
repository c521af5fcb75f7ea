//! The model against figures from outside the project, each with its source beside it.

mod provisions;
mod safety;
