//! The folder where installed tools stay, one for each user: a second clone finds them there.

use std::{env, path::PathBuf};

use anyhow::Context;

/// The folder of one tool at one version: `XDG_CACHE_HOME` or `~/.cache`, `longcook-tools/NAME-VERSION`.
///
/// # Errors
/// When neither that variable nor the home folder is known.
pub(crate) fn folder(name: &str, version: &str) -> anyhow::Result<PathBuf> {
    let caches = env::var_os("XDG_CACHE_HOME")
        .map(PathBuf::from)
        .filter(|folder| folder.is_absolute())
        .or_else(|| env::home_dir().map(|home| home.join(".cache")))
        .context("there is no home folder to keep tools in: set XDG_CACHE_HOME")?;
    Ok(caches
        .join("longcook-tools")
        .join(format!("{name}-{version}")))
}
