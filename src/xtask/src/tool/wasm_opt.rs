//! wasm-opt, which makes the compiled app smaller and faster.
//!
//! Never the one in `PATH`: Debian's of 2022 writes a module that passes every check and then fails at start.

use std::path::{Path, PathBuf};

use anyhow::Context;
use xshell::cmd;

use super::{cache, npm};
use crate::project;

const VERSION: &str = "132.0.0";

/// Finds the optimiser or fetches it; without Node there is none, and the app is larger but the same.
///
/// # Errors
/// When it cannot be fetched.
pub(crate) fn install() -> anyhow::Result<()> {
    if npm::package("binaryen", VERSION, "the optimiser: half a minute")?.is_none() {
        project::say(
            "no Node on this machine: building without the optimiser, the app will be larger and a bit slower",
        );
    }
    Ok(())
}

/// Optimises a module in place, if there is an optimiser.
///
/// # Errors
/// When the optimiser refuses the module.
pub(crate) fn optimise(module: &Path) -> anyhow::Result<()> {
    let program = program()?;
    if !program.is_file() {
        return Ok(());
    }
    let shell = project::shell()?;
    cmd!(shell, "node {program} -O3 --output {module} {module}")
        .quiet()
        .run()
        .context("the optimiser refused the compiled app (see above)")
}

/// Whether there is an optimiser in the cache.
pub(crate) fn is_there() -> bool {
    program().is_ok_and(|program| program.is_file())
}

fn program() -> anyhow::Result<PathBuf> {
    Ok(cache::folder("binaryen", VERSION)?.join("node_modules/binaryen/bin/wasm-opt"))
}
