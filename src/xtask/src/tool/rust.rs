//! The pinned compiler with its parts, as `rust-toolchain.toml` names them.

use anyhow::{Context, bail};
use xshell::cmd;

use crate::project;

/// Installs whatever `rust-toolchain.toml` asks for and is missing, then fetches the sources of all dependencies.
///
/// # Errors
/// When rustup is not there or the network is.
pub(crate) fn toolchain() -> anyhow::Result<()> {
    let shell = project::shell()?;
    // Cargo hands its own toolchain down in this variable, and rustup would look at that instead of at the file.
    let output = cmd!(shell, "rustup toolchain install")
        .env_remove("RUSTUP_TOOLCHAIN")
        .quiet()
        .ignore_status()
        .output()
        .context("rustup is not installed: get it from https://rustup.rs, version 1.28 or newer")?;
    if !output.status.success() {
        bail!(
            "the pinned Rust cannot be installed: rustup 1.28 or newer and a network are needed; rustup says:\n{}",
            String::from_utf8_lossy(&output.stderr).trim_end()
        );
    }
    let locked = project::unattended().then_some("--locked");
    cmd!(shell, "cargo fetch --quiet {locked...}")
        .quiet()
        .run()
        .context(
            "the sources of the dependencies cannot be fetched: check the network and try again",
        )
}
