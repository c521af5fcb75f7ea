//! When a piece is done: tenderness and bark. The published times at temperature are in [`crate::safety`].

pub mod bark;
pub mod tenderness;
