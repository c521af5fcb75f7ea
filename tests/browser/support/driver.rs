//! The program that drives the browser.

use std::{
    io::{BufRead, BufReader},
    process::{Child, Command, Stdio},
    thread,
};

use anyhow::{Context, bail};

use super::{path, process::kill_tree};

/// A running driver on a port that it has chosen itself. Dropped, it ends with every browser that it has started.
pub(crate) struct Driver {
    child: Child,
    port: u16,
}

impl Driver {
    pub(crate) fn start() -> anyhow::Result<Self> {
        let program = path("LONGCOOK_CHROMEDRIVER");
        let mut child = Command::new(&program)
            .arg("--port=0")
            .stdout(Stdio::piped())
            .spawn()
            .with_context(|| format!("{} cannot be started", program.display()))?;
        let output = child
            .stdout
            .take()
            .context("the driver's output is piped")?;
        let mut lines = BufReader::new(output).lines();
        while let Some(line) = lines.next() {
            if let Some(port) = port_in(&line?) {
                // The driver would stop if nobody read what it says.
                thread::spawn(move || lines.for_each(drop));
                return Ok(Self { child, port });
            }
        }
        bail!(
            "{} ended without naming its port: {}",
            program.display(),
            child.wait()?
        )
    }

    pub(crate) fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        kill_tree(self.child.id());
        let _status = self.child.wait();
    }
}

/// "ChromeDriver was started successfully on port 38119."
fn port_in(line: &str) -> Option<u16> {
    let (_, port) = line.split_once("started successfully on port ")?;
    port.trim_end_matches('.').parse().ok()
}
