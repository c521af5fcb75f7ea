//! What runs on this machine without a browser.

use anyhow::Context;
use xshell::cmd;

use crate::{project, tool};

/// Runs the tests of all packages; the filter picks by name.
pub(crate) fn run(filter: &[String]) -> anyhow::Result<()> {
    tool::toolchain()?;
    let shell = project::shell()?;
    let locked = project::unattended().then_some("--locked");
    if tool::in_path("cargo-nextest").next().is_some() {
        // Tests that a filter leaves nothing of are not a failure: it may be meant for another part.
        cmd!(
            shell,
            "cargo nextest run --workspace {locked...} --no-fail-fast --no-tests pass {filter...}"
        )
        .quiet()
        .run()
        .context("see the report above")?;
        // Nextest leaves the examples in the documentation out.
        return match filter {
            [] => cmd!(
                shell,
                "cargo test --workspace {locked...} --doc --no-fail-fast"
            )
            .quiet()
            .run()
            .context("an example in the documentation failed, see the report above"),
            _ => Ok(()),
        };
    }
    cmd!(
        shell,
        "cargo test --workspace {locked...} --no-fail-fast -- {filter...}"
    )
    .quiet()
    .run()
    .context("see the report above")
}
