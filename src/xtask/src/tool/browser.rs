//! The browser that the tests use, and the program that drives it.

use std::path::PathBuf;

use anyhow::{Context, bail};
use xshell::cmd;

use super::in_path;
use crate::project;

/// Where the two programs are.
#[derive(Debug)]
pub(crate) struct Browser {
    pub(crate) chromium: PathBuf,
    pub(crate) chromedriver: PathBuf,
}

/// Finds Chromium and its driver; on Debian, as root, installs them.
///
/// # Errors
/// When they are missing and cannot be installed from here.
pub(crate) fn browser() -> anyhow::Result<Browser> {
    if let Some(found) = find() {
        return Ok(found);
    }
    let shell = project::shell()?;
    let root = cmd!(shell, "id -u")
        .quiet()
        .read()
        .is_ok_and(|id| id == "0");
    if !root || in_path("apt-get").next().is_none() {
        bail!(
            "the browser tests need chromium and chromedriver of the same version in PATH: \
             on Debian, `sudo apt-get install chromium chromium-driver`"
        );
    }
    project::step(
        "installing chromium and chromium-driver: half a minute",
        || {
            let _quiet = shell.push_env("DEBIAN_FRONTEND", "noninteractive");
            cmd!(shell, "apt-get update -qq").quiet().run()?;
            cmd!(
            shell,
            "apt-get install -qq -y --no-install-recommends chromium chromium-driver"
        )
        .quiet()
        .ignore_stdout()
        .run()
        .context("apt-get could not install the browser (see above): check the network and try again")
        },
    )?;
    find().context("chromium and chromium-driver were installed but are not in PATH")
}

fn find() -> Option<Browser> {
    Some(Browser {
        chromium: ["chromium", "chromium-browser", "google-chrome"]
            .iter()
            .find_map(|name| in_path(name).next())?,
        chromedriver: in_path("chromedriver").next()?,
    })
}
