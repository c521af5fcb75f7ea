//! How a plan is kept, handed over and merged: identities, clocks, fields, the journal and the file.

mod decode;
mod document;
pub mod identity;
mod stamp;

pub use decode::{Reading, Unreadable};
pub use document::{Document, Field, FieldPath};
pub use stamp::{Clock, NotAStamp, Stamp};
