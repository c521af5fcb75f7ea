//! The last step of bundling, called by Trunk before the new files take the place of the old: optimise the compiled
//! module, then write into the service worker what it has to keep.

use std::{env, fs, path::PathBuf};

use anyhow::Context;
use xtask::precache;

use crate::tool::wasm_opt;

/// Finishes the bundle in `TRUNK_STAGING_DIR`.
pub(crate) fn run() -> anyhow::Result<()> {
    let staging = env::var_os("TRUNK_STAGING_DIR")
        .map(PathBuf::from)
        .context("finish-bundle is called by trunk, not by hand: use `cargo xtask build`")?;
    if env::var("TRUNK_PROFILE").is_ok_and(|profile| profile == "release") {
        for module in precache::files(&staging)?
            .iter()
            .filter(|name| name.ends_with(".wasm"))
        {
            wasm_opt::optimise(&staging.join(module))?;
        }
    }
    let template =
        fs::read_to_string(staging.join("sw.js")).context("the bundle has no service worker")?;
    precache::write(&staging, &template)
}
