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

#[cfg(test)]
mod tests {
    use super::*;

    /// Few cooks, so wide bounds: one in ten more or less either way is chance.
    #[test]
    fn windows_are_honest_and_narrow_as_readings_come_in() -> Result<()> {
        let summary = score::ask(0..40, 32)?.summary();
        let [put_on, half, late] = summary.stages[..] else {
            bail!("three stages are wanted");
        };
        println!("{put_on:?}\n{half:?}\n{late:?}");
        for stage in [put_on, half, late] {
            assert!((60.0..=95.0).contains(&stage.in_window_pct), "{stage:?}");
        }
        assert!(half.width_h < 0.8 * put_on.width_h);
        assert!(late.width_h < 0.5 * put_on.width_h);
        assert!(half.mean_abs_h < 0.75 * put_on.mean_abs_h);
        assert!(half.median_abs_pct < 12.0);
        Ok(())
    }
}
