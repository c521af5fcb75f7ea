//! The screens.

pub mod run_sheet;
