//! The screens.

pub mod fireside;
pub mod gathering;
pub mod in_doubt;
pub mod plans;
pub mod run_sheet;
pub mod shopping;
