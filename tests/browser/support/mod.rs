//! What the browser tests stand on: a server with the bundled app, a driver, a browser with a fresh profile.
//!
//! `cargo xtask test browser` tells by environment variables where things are:
//! `LONGCOOK_DIST` (the bundled app), `LONGCOOK_CHROMIUM`, `LONGCOOK_CHROMEDRIVER`, `LONGCOOK_AXE` (axe.min.js) and
//! `LONGCOOK_SHOTS` (a folder for pictures of tests that failed).

mod app;
mod browser;
mod console;
mod driver;
mod hands;
mod process;

pub(crate) use app::{App, with_app};

use std::path::PathBuf;

/// The path in an environment variable.
fn path(variable: &str) -> PathBuf {
    std::env::var_os(variable).map_or_else(
        || panic!("{variable} is not set: run these tests by `cargo xtask test browser`"),
        PathBuf::from,
    )
}
