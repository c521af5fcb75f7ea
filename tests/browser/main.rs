//! The app in a real browser, at the size of a phone: one file for each thing that people rely on.
//!
//! `cargo xtask test browser` builds the app, finds the browser and runs these; a word after it picks by name.

mod accessibility;
mod broken;
mod crash;
mod fireside;
mod install;
mod offline;
mod planning;
mod safe;
mod shopping;
mod support;
mod update;
