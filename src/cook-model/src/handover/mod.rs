//! How a plan is kept, handed over and merged: identities, clocks, fields, the journal and the file.

mod decode;
mod document;
mod event;
mod fault;
pub mod file;
pub mod identity;
mod journal;
mod stamp;

pub use decode::{Reading, Unreadable};
pub use document::{Document, Field, FieldPath};
pub use event::{FuelKind, Gauge, HeatLoss, KnownEvent, ProbeFeel, ProbePlace};
pub use file::{HandOver, Refusal};
pub use journal::{Entry, Event, Journal, ReplicaText};
pub use stamp::{Clock, NotAStamp, Stamp};
