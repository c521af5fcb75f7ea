//! Where things are, and how this tool speaks.

use std::{
    env,
    path::{Path, PathBuf},
    time::Instant,
};

use anyhow::Context;
use xshell::Shell;

/// The folder that holds the workspace.
pub(crate) fn root() -> PathBuf {
    let here = env::var_os("CARGO_MANIFEST_DIR")
        .map_or_else(|| env!("CARGO_MANIFEST_DIR").into(), PathBuf::from);
    here.ancestors()
        .nth(2)
        .map_or_else(|| here.clone(), Path::to_path_buf)
}

/// A shell in the workspace's folder.
pub(crate) fn shell() -> anyhow::Result<Shell> {
    let shell = Shell::new().context("the current folder cannot be read")?;
    shell.change_dir(root());
    Ok(shell)
}

/// Where cargo puts what it builds.
pub(crate) fn target() -> PathBuf {
    env::var_os("CARGO_TARGET_DIR")
        .map_or_else(|| root().join("target"), |folder| root().join(folder))
}

/// Whether this runs unattended, where nothing may change the lock files.
pub(crate) fn unattended() -> bool {
    env::var("CI").is_ok_and(|value| !matches!(value.as_str(), "" | "0" | "false"))
}

/// Says what is being done.
pub(crate) fn say(words: &str) {
    eprintln!("xtask: {words}");
}

/// Says what is being done, does it, and says how long it took.
pub(crate) fn step<T>(words: &str, work: impl FnOnce() -> anyhow::Result<T>) -> anyhow::Result<T> {
    say(words);
    let start = Instant::now();
    let value = work()?;
    say(&format!(
        "... done in {:.0} s",
        start.elapsed().as_secs_f64()
    ));
    Ok(value)
}
