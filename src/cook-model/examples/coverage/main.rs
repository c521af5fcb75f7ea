//! How honest live windows are: invented cooks from a wider world than the forecast believes in, asked when they go on, at
//! half time, and when four fifths of the time are over.
//!
//! `cargo run --release -p cook-model --example coverage [-- --cooks N] [--members N]`

mod chance;
mod score;
mod world;

use anyhow::{Result, bail};
use cook_model::live::MEMBERS;
use lexopt::prelude::*;

/// Cooks asked about by default.
const COOKS: u32 = 500;

fn main() -> Result<()> {
    let (mut cooks, mut members) = (COOKS, MEMBERS);
    let mut arguments = lexopt::Parser::from_env();
    while let Some(argument) = arguments.next()? {
        match argument {
            Long("cooks") => cooks = arguments.value()?.parse()?,
            Long("members") => members = arguments.value()?.parse()?,
            other => return Err(other.unexpected().into()),
        }
    }
    if !(1..=60_000).contains(&cooks) || !(16..=1024).contains(&members) {
        bail!("--cooks from 1 to 60000 and --members from 16 to 1024 are wanted");
    }
    let report = score::ask(0..cooks, members)?;
    report.print();
    println!("{}", serde_json::to_string(&report.summary())?);
    Ok(())
}
