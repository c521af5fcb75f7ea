//! Packages for Node, pinned with the hashes of their contents in a lock file of their own.

use std::path::PathBuf;

use anyhow::Context;
use xshell::cmd;

use super::{cache, in_path};
use crate::project;

/// Installs the package that `src/xtask/tools/NAME/package-lock.json` pins into the cache, or finds it there, and
/// tells where its files are. `None` when there is no Node on this machine.
///
/// # Errors
/// When npm fails.
pub(crate) fn package(name: &str, version: &str, why: &str) -> anyhow::Result<Option<PathBuf>> {
    let folder = cache::folder(name, version)?;
    let files = folder.join("node_modules").join(name);
    if files.join("package.json").is_file() {
        return Ok(Some(files));
    }
    if in_path("npm").next().is_none() {
        return Ok(None);
    }
    project::step(&format!("fetching {name} {version}, {why}"), || {
        let shell = project::shell()?;
        let caches = folder.parent().context("a cache folder has a parent")?;
        shell.create_dir(caches)?;
        // Moved into place when it is whole: an interrupted installation is not taken for a finished one.
        let fresh = tempfile::tempdir_in(caches)?;
        let pins = project::root().join("src/xtask/tools").join(name);
        for file in ["package.json", "package-lock.json"] {
            shell.copy_file(pins.join(file), fresh.path())?;
        }
        let here = fresh.path();
        cmd!(
            shell,
            "npm ci --prefix {here} --ignore-scripts --no-audit --no-fund"
        )
        .quiet()
        .ignore_stdout()
        .run()
        .with_context(|| {
            format!("npm could not fetch {name} (see above): check the network and try again")
        })?;
        shell.remove_path(&folder)?;
        std::fs::rename(fresh.keep(), &folder)
            .with_context(|| format!("{} cannot be written", folder.display()))
    })?;
    Ok(Some(files))
}
