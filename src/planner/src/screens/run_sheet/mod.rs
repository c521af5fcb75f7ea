//! Run sheet: the day as lanes of cookers and hands.
//!
//! Plain modules lay the sheet out: [`scope`] sorts the steps, [`axis`] has the hours, [`stay`] and [`ticket`] say what
//! there is, [`lane`] and [`frame`] where it belongs and how much room it gets, [`sheet`] puts all of it together,
//! [`facts`] and [`reason`] what is told about a step. The views only draw what these say.

pub mod axis;
pub mod axis_view;
pub mod bar;
pub mod board;
pub mod cooker_view;
pub mod days_view;
pub mod dock;
pub mod facts;
pub mod frame;
pub mod heads;
pub mod lane;
pub mod moving;
pub mod number;
pub mod pack;
pub mod quiet;
pub mod reason;
#[cfg(test)]
pub(crate) mod sample;
pub mod scope;
pub mod screen;
pub mod sheet;
pub mod sheet_view;
pub mod stay;
pub mod ticket;
pub mod ticket_view;
pub mod zoom;

pub use screen::RunSheet;
