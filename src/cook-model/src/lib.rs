//! The physics and the planning of a long cook, backwards from the serving hour.
//!
//! Nothing here knows a browser, a clock or a file: everything comes in as values and goes out as values, and the same
//! values in give the same bits out on every machine.

pub mod answers;
pub mod doneness;
pub mod forecast;
pub mod handover;
pub mod live;
pub mod meat;
pub mod physics;
pub mod plan;
pub mod provisions;
pub mod safety;
pub mod schedule;
pub mod units;
