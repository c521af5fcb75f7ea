//! Parts that screens share, by the names of the look: rim, bar, plate, grain, mark, and the fields.

pub mod asked;
pub mod bar;
pub mod check_field;
pub mod choice;
pub mod footing;
pub mod grain;
mod hand_on;
pub mod last_line;
pub mod mark;
pub mod notices;
pub mod number_field;
pub mod rim;
pub mod rule_said;
pub mod safe_line;
pub mod select_field;
pub mod slip;
pub mod take_in;
pub mod text_field;

pub use asked::Asked;
pub use bar::Bar;
pub use check_field::CheckField;
pub use choice::{Choice, Way};
pub use footing::Footing;
pub use grain::{Grain, Tile, tiles};
pub use hand_on::hand_on;
pub use last_line::LastLine;
pub use mark::Mark;
pub use notices::Notices;
pub use number_field::NumberField;
pub use rim::{Rim, keep_light};
pub use rule_said::Rule;
pub use safe_line::SafeLine;
pub use select_field::SelectField;
pub use slip::Slip;
pub use take_in::TakeIn;
pub use text_field::{TextField, TimeField};
