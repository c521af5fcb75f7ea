//! axe-core, which looks for what would keep people out.

use std::path::PathBuf;

use anyhow::Context;

use super::npm;

const VERSION: &str = "4.14.1";

/// Finds the checker's script or fetches it.
///
/// # Errors
/// When it cannot be fetched, or there is no Node to do it with.
pub(crate) fn axe() -> anyhow::Result<PathBuf> {
    npm::package("axe-core", VERSION, "the accessibility checker: some seconds")?
        .map(|files| files.join("axe.min.js"))
        .context("the browser tests need Node 18 or newer with npm in PATH: on Debian, `sudo apt-get install npm`")
}
