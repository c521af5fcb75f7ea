//! When a piece is done: tenderness, bark, and the published times at temperature.

pub mod bark;
pub mod lethality;
pub mod tenderness;
