//! The browser, one idea a file. Nothing outside this folder calls it for anything but drawing.

pub mod clock;
pub mod files;
pub mod ids;
pub mod locale;
pub mod money;
pub mod screen;
pub mod service_worker;
pub mod storage;
pub mod worker;
pub mod zone;
