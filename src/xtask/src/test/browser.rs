//! What needs the whole app in a browser.

use anyhow::Context;
use xshell::cmd;

use crate::{
    bundle::{self, Profile},
    project, tool,
};

/// Installs the browser, builds the app as people get it, and runs the tests; the filter picks by name.
pub(crate) fn run(filter: &[String]) -> anyhow::Result<()> {
    let browser = tool::browser()?;
    let axe = tool::axe()?;
    let bundle = bundle::build(Profile::Release)?;
    let shell = project::shell()?;
    let shots = project::target().join("browser-shots");
    shell.remove_path(&shots)?;
    let _settings = [
        shell.push_env("LONGCOOK_DIST", bundle),
        shell.push_env("LONGCOOK_CHROMIUM", browser.chromium),
        shell.push_env("LONGCOOK_CHROMEDRIVER", browser.chromedriver),
        shell.push_env("LONGCOOK_AXE", axe),
        shell.push_env("LONGCOOK_SHOTS", shots),
    ];
    let locked = project::unattended().then_some("--locked");
    let package = [
        "-p",
        "longcook-tests",
        "--features",
        "browser",
        "--test",
        "browser",
    ];
    if tool::in_path("cargo-nextest").next().is_some() {
        cmd!(
            shell,
            "cargo nextest run {package...} {locked...} --no-fail-fast {filter...}"
        )
        .quiet()
        .run()
    } else {
        // Two at a time: each has a browser of its own.
        cmd!(
            shell,
            "cargo test {package...} {locked...} --no-fail-fast -- --test-threads 2 {filter...}"
        )
        .quiet()
        .run()
    }
    .context("see the report above")
}
