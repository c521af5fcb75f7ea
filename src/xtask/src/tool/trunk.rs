//! Trunk, which bundles the app.

use anyhow::Context;
use xshell::cmd;

use super::{Tool, cache, find};
use crate::project;

/// The last one that the pinned compiler can build.
const VERSION: &str = "0.21.14";

/// Finds Trunk or compiles it.
///
/// # Errors
/// When it has to be compiled and that fails.
pub(crate) fn trunk() -> anyhow::Result<Tool> {
    let folder = cache::folder("trunk", VERSION)?;
    if let Some(tool) = find("trunk", VERSION, &folder) {
        return Ok(tool);
    }
    let words = format!(
        "compiling trunk {VERSION}, the bundler, once for this user: 5 to 12 minutes on two cores"
    );
    project::step(&words, || {
        let shell = project::shell()?;
        // Its own release profile links for minutes to make a program a little faster that runs for seconds.
        let _lto = shell.push_env("CARGO_PROFILE_RELEASE_LTO", "off");
        let _units = shell.push_env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16");
        let _level = shell.push_env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "1");
        cmd!(
            shell,
            "cargo install --locked --no-default-features --root {folder} trunk --version {VERSION}"
        )
        .quiet()
        .run()
        .context("trunk could not be compiled (see above): check the network and try again")
    })?;
    find("trunk", VERSION, &folder)
        .with_context(|| format!("trunk {VERSION} was installed but does not run"))
}
