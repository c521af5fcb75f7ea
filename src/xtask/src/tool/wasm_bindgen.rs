//! wasm-bindgen and its test runner, which must be of exactly the version that the app is compiled with.

use anyhow::Context;
use xshell::cmd;

use super::{Tool, cache, find};
use crate::project;

/// The version in the workspace's manifest, in `tools/Cargo.toml` and in `Trunk.toml`.
const VERSION: &str = "0.2.130";

/// Finds both programs or compiles them from the pinned helper workspace.
///
/// # Errors
/// When they have to be compiled and that fails.
pub(crate) fn wasm_bindgen() -> anyhow::Result<Tool> {
    let folder = cache::folder("wasm-bindgen", VERSION)?;
    if let Some(tool) = find_both(&folder) {
        return Ok(tool);
    }
    let words =
        format!("compiling wasm-bindgen {VERSION} once for this user: 2 to 6 minutes on two cores");
    project::step(&words, || {
        let shell = project::shell()?;
        let built = project::target().join("wasm-tools");
        cmd!(
            shell,
            "cargo install --locked --path src/xtask/tools --root {folder} --target-dir {built}"
        )
        .quiet()
        .run()
        .context(
            "wasm-bindgen could not be compiled (see above): check the network and try again",
        )?;
        shell
            .remove_path(&built)
            .context("what was left from compiling could not be removed")
    })?;
    find_both(&folder)
        .with_context(|| format!("wasm-bindgen {VERSION} was installed but does not run"))
}

fn find_both(folder: &std::path::Path) -> Option<Tool> {
    let runner = find("wasm-bindgen-test-runner", VERSION, folder)?;
    let tool = find("wasm-bindgen", VERSION, folder)?;
    (runner.folder == tool.folder).then_some(tool)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_version_everywhere() {
        let version = format!("{VERSION}\"");
        for (file, text, before) in [
            (
                "Cargo.toml",
                include_str!("../../../../Cargo.toml"),
                "wasm-bindgen = \"=",
            ),
            (
                "tools/Cargo.toml",
                include_str!("../../tools/Cargo.toml"),
                "wasm-bindgen-cli = \"=",
            ),
            (
                "Trunk.toml",
                include_str!("../../../../Trunk.toml"),
                "wasm_bindgen = \"",
            ),
        ] {
            assert!(
                text.contains(&format!("{before}{version}")),
                "{file}: {before}"
            );
        }
    }
}
