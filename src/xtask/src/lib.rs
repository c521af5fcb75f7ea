//! The part of the project's commands that the browser tests use too.

pub mod precache;
pub mod site;
