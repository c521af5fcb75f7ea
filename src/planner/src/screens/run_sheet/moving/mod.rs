//! Moving steps by hand: with a finger, a mouse or a pen, with keys, and with the buttons of the Dock.
//!
//! Plain modules say what a move comes to: [`judge`] asks the rules, [`hand`] turns a finger's way into a time,
//! [`room`] lets neighbours make room, [`preview`] shows the day as it will be until the worker has answered. The others
//! listen and draw.

pub mod hand;
pub mod handle_view;
pub mod judge;
pub mod keys_view;
pub mod landing_view;
pub mod pointer;
pub mod preview;
pub mod room;
pub mod session;
