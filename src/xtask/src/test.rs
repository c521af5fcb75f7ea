//! `cargo xtask test`: every check that runs the project's code.

mod bits;
mod browser;
mod native;

use std::time::Instant;

use anyhow::bail;

use crate::project::say;

/// Which tests to run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Part {
    /// The model, the app's own arithmetic and the checks from outside, on this machine.
    Native,
    /// The model's numbers on this machine and in WebAssembly.
    Bits,
    /// The whole app in a browser.
    Browser,
}

impl Part {
    const ALL: [Self; 3] = [Self::Native, Self::Bits, Self::Browser];

    fn words(self) -> &'static str {
        match self {
            Self::Native => "native tests",
            Self::Bits => "the same bits in WebAssembly",
            Self::Browser => "browser tests",
        }
    }

    fn run(self, filter: &[String]) -> anyhow::Result<()> {
        match self {
            Self::Native => native::run(filter),
            Self::Bits => bits::run(),
            Self::Browser => browser::run(filter),
        }
    }
}

/// Runs one part or all of them, goes on after a failure, and ends with one line for each.
pub(crate) fn run(part: Option<Part>, filter: &[String]) -> anyhow::Result<()> {
    let parts = Part::ALL
        .into_iter()
        .filter(|each| part.is_none_or(|only| only == *each));
    let mut summary = Vec::new();
    let mut failed = Vec::new();
    for each in parts {
        let words = each.words();
        say(&format!("{words}:"));
        let start = Instant::now();
        let outcome = each.run(filter);
        let time = start.elapsed().as_secs();
        match outcome {
            Ok(()) => summary.push(format!("passed  {words} ({time} s)")),
            Err(error) => {
                summary.push(format!("FAILED  {words} ({time} s): {error:#}"));
                failed.push(words);
            }
        }
    }
    eprintln!();
    summary.iter().for_each(|line| say(line));
    if failed.is_empty() {
        return Ok(());
    }
    bail!("{} failed", failed.join(" and "))
}
