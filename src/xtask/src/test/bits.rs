//! Whether the model reckons the same bits on this machine and in WebAssembly, with vector instructions and without.

use anyhow::{Context, ensure};
use xshell::cmd;

use crate::{
    flags,
    project::{self, say},
    tool,
};

/// Reckons here, then compares in Node.
pub(crate) fn run() -> anyhow::Result<()> {
    ensure!(
        tool::in_path("node").next().is_some(),
        "this comparison needs Node in PATH: on Debian, `sudo apt-get install nodejs`"
    );
    tool::toolchain()?;
    let runner = tool::wasm_bindgen()?
        .folder
        .join("wasm-bindgen-test-runner");
    let shell = project::shell()?;
    let locked = project::unattended().then_some("--locked");
    // As people get it: the release profile.
    let package = ["--release", "-p", "longcook-tests"];
    let sums = cmd!(
        shell,
        "cargo run {package...} {locked...} --example same_bits"
    )
    .quiet()
    .read()
    .context("the numbers could not be reckoned on this machine")?;
    say(&format!("on this machine: {sums}"));
    let _sums = shell.push_env("LONGCOOK_SUMS", &sums);
    let _runner = shell.push_env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", runner);
    for feature in ["+simd128", "-simd128"] {
        say(&format!("in WebAssembly, {feature}:"));
        let _flags = shell.push_env(flags::VARIABLE, flags::wasm(feature)?);
        cmd!(
            shell,
            "cargo test {package...} {locked...} --target wasm32-unknown-unknown --features same-bits --test same_bits"
        )
        .quiet()
        .run()
        .with_context(|| format!("other bits in WebAssembly with {feature}, see above"))?;
    }
    Ok(())
}
