//! `cargo xtask serve`: the app, built and served on this machine.

use std::{io, path::Path, thread};

use anyhow::{Context, bail};
use xtask::site::Site;

use crate::{
    bundle::{self, Profile},
    project::{self, say},
};

/// Builds, serves and stays until it is interrupted.
pub(crate) fn run(port: u16, profile: Profile) -> anyhow::Result<()> {
    // Asked first: it would be a pity to build for minutes and fail then.
    open(&project::root(), port)?.stop();
    let folder = bundle::build(profile)?;
    let site = open(&folder, port)?;
    say(&format!("Longcook is at {} (Ctrl+C ends it)", site.url()));
    loop {
        thread::park();
    }
}

fn open(folder: &Path, port: u16) -> anyhow::Result<Site> {
    match Site::start(folder, port) {
        Err(error) if error.kind() == io::ErrorKind::AddrInUse => bail!(
            "port {port} is taken: end the program that has it, or choose another with --port \
             (plans are kept apart by port)"
        ),
        other => other.with_context(|| format!("port {port} cannot be opened")),
    }
}
