//! Run sheet: the day as lanes of cookers and hands.

pub mod axis;
pub mod frame;
pub mod key;
pub mod lane;
pub mod pack;
pub mod quiet;
#[cfg(test)]
mod sample;
pub mod scope;
pub mod screen;
pub mod sheet;
pub mod stay;
pub mod ticket;

pub use screen::RunSheet;
