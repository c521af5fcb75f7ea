//! How the compiler is told to make the WebAssembly that people get.

use std::{env, path::PathBuf};

use anyhow::Context;

use crate::project;

/// The variable that hands flags over to cargo, and in which each may hold blanks.
pub(crate) const VARIABLE: &str = "CARGO_ENCODED_RUSTFLAGS";

/// The flags with this target feature, as that variable wants them. What the program says of itself when it fails
/// names the project's files, not the folders of whoever compiled it, so that two machines make the same app.
///
/// # Errors
/// When there is no home folder.
pub(crate) fn wasm(feature: &str) -> anyhow::Result<String> {
    let cargo = env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| env::home_dir().map(|home| home.join(".cargo")))
        .context("there is no home folder: set CARGO_HOME")?;
    let flags = [
        format!("-Ctarget-feature={feature}"),
        format!("--remap-path-prefix={}=cargo", cargo.display()),
        format!("--remap-path-prefix={}=longcook", project::root().display()),
    ];
    Ok(flags.join("\u{1f}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_feature_as_in_the_configuration() {
        let configuration = include_str!("../../../.cargo/config.toml");
        assert!(configuration.contains("target-feature=+simd128"));
        let flags = wasm("+simd128").unwrap();
        assert!(
            flags.starts_with("-Ctarget-feature=+simd128\u{1f}--remap"),
            "{flags}"
        );
    }
}
