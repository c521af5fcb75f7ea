//! `cargo xtask check`: everything that can be found out without running the project's code.

use anyhow::{Context, bail};
use xshell::{Shell, cmd};

use crate::{
    generate,
    project::{self, say, step},
    tidy, tool,
};

/// Runs every check, goes on after a failure, and ends with one line for each.
pub(crate) fn run() -> anyhow::Result<()> {
    tool::toolchain()?;
    let shell = project::shell()?;
    let checks: [(&str, &dyn Fn() -> anyhow::Result<()>); 5] = [
        ("format", &|| format(&shell)),
        ("lints, on this machine", &|| native_lints(&shell)),
        ("lints, in the browser", &|| wasm_lints(&shell)),
        ("generated files", &|| generate::run(true)),
        ("habits", &|| tidy::run(&project::root())),
    ];
    let mut summary = Vec::new();
    let mut failed = Vec::new();
    for (words, check) in checks {
        match step(&format!("checking: {words}"), check) {
            Ok(()) => summary.push(format!("passed  {words}")),
            Err(error) => {
                summary.push(format!("FAILED  {words}: {error:#}"));
                failed.push(words);
            }
        }
    }
    eprintln!();
    summary.iter().for_each(|line| say(line));
    if failed.is_empty() {
        return Ok(());
    }
    bail!("not in order: {}", failed.join("; "))
}

fn format(shell: &Shell) -> anyhow::Result<()> {
    for manifest in ["Cargo.toml", "src/xtask/tools/Cargo.toml"] {
        cmd!(shell, "cargo fmt --manifest-path {manifest} --all --check")
            .quiet()
            .run()
            .context("run `cargo fmt --all`")?;
    }
    Ok(())
}

fn native_lints(shell: &Shell) -> anyhow::Result<()> {
    let locked = project::unattended().then_some("--locked");
    cmd!(
        shell,
        "cargo clippy {locked...} --workspace --all-targets --features longcook-tests/browser -- -D warnings"
    )
    .quiet()
    .run()
    .context("see above")
}

fn wasm_lints(shell: &Shell) -> anyhow::Result<()> {
    let locked = project::unattended().then_some("--locked");
    cmd!(
        shell,
        "cargo clippy {locked...} -p cook-model -p planner --target wasm32-unknown-unknown -- -D warnings"
    )
    .quiet()
    .run()
    .context("see above")
}
