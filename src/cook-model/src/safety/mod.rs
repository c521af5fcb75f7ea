//! Safety: the published rules as data, the clocks that run over plan and journal, and straight answers.
//!
//! Every figure names where it is from. Where published rules differ, the stricter one is used and the other can be
//! read beside it; the one exception is intact whole muscle, where the surface governs ([`governing`]). No function
//! here says that food is safe: the best it says is that it looks safe on what was told, and a reading that is missing
//! is never taken for a good one.

mod cautions;
mod clock;
pub mod cooling;
mod governing;
mod holding;
mod lethality;
mod line;
mod minimum;
mod planned;
mod rule;
mod rules;
mod source;
mod thaw;
pub mod watch;
pub mod wording;

pub use cautions::{CautionContext, cautions_for};
pub use clock::{OutOfFridge, out_of_fridge_limit};
pub use governing::{CORE_LIMIT, Governs, SURFACE_HOT, SURFACE_LIMIT, governing};
pub use holding::{hold_minimum, time_without_heat};
pub use lethality::{Dwell, LethalityTable, PrintedRow};
pub use line::{DishLine, Foreseen, Phase, SafeLine, safe_line, who_to_ask};
pub use minimum::{Minimum, Sort, minimum};
pub use planned::{Concern, Measure, PlannedFood, judge_planned};
pub use rule::{Basis, Rule, Severity, Subject};
pub use rules::{RuleId, UnknownRule};
pub use source::Source;
pub use thaw::{ThawSpan, keeps_raw, keeps_thawed, thaw_in_cold_water, thaw_in_fridge};
pub use wording::{Units, say};
