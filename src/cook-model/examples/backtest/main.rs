//! Runs the model on records of real cooks and scores it beside two rules that know nothing of heat.
//!
//! `cargo run --release -p cook-model --example backtest -- COOKS.json [--members N] [--seed N]`

mod crps;
mod fit;
mod half_time;
mod record;
mod regression;
mod report;
mod rules;
mod scenario;
mod score;

use anyhow::{Context, Result, bail};
use cook_model::forecast::{CHUNK, FULL};
use lexopt::prelude::*;
use score::{Effort, Run};
use std::io::{BufWriter, Write, stdout};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

fn main() -> Result<()> {
    let mut path = None;
    let mut effort = Effort {
        members: FULL,
        seed: 1,
    };
    let mut arguments = lexopt::Parser::from_env();
    while let Some(argument) = arguments.next()? {
        match argument {
            Long("members") => effort.members = arguments.value()?.parse()?,
            Long("seed") => effort.seed = arguments.value()?.parse()?,
            Value(file) if path.is_none() => path = Some(file),
            other => return Err(other.unexpected().into()),
        }
    }
    let Some(path) = path else {
        bail!("say which file: backtest COOKS.json [--members N] [--seed N]");
    };
    if effort.members == 0 || !effort.members.is_multiple_of(CHUNK) || effort.members > 4096 {
        bail!("--members must be a multiple of {CHUNK} up to 4096");
    }
    let text = std::fs::read_to_string(&path)
        .with_context(|| format!("cannot read {}", path.to_string_lossy()))?;
    let records = record::read(&text)?;
    let (runs, left_out) = run_all(&records, effort);
    let mut out = BufWriter::new(stdout().lock());
    report::print(&mut out, &runs, &left_out)?;
    out.flush()?;
    Ok(())
}

/// Runs the records side by side; the result does not depend on how many at once. Records that the model cannot reckon
/// with are told apart, with the reason.
fn run_all(records: &[record::Record], effort: Effort) -> (Vec<Run>, Vec<String>) {
    let next = AtomicUsize::new(0);
    let workers = thread::available_parallelism().map_or(1, usize::from);
    let work = || -> Vec<(usize, Result<Option<Run>>)> {
        let mut done = Vec::new();
        loop {
            let index = next.fetch_add(1, Ordering::Relaxed);
            let Some(record) = records.get(index) else {
                return done;
            };
            done.push((index, Run::new(record, effort)));
        }
    };
    let mut done: Vec<_> = thread::scope(|scope| {
        let handles: Vec<_> = (0..workers).map(|_| scope.spawn(work)).collect();
        handles
            .into_iter()
            .flat_map(|handle| {
                handle
                    .join()
                    .unwrap_or_else(|panic| std::panic::resume_unwind(panic))
            })
            .collect()
    });
    done.sort_by_key(|(index, _)| *index);
    let (mut runs, mut left_out) = (Vec::new(), Vec::new());
    for (index, run) in done {
        match run {
            Ok(run) => runs.extend(run),
            Err(error) => left_out.push(format!("{}: {error:#}", records[index].id)),
        }
    }
    (runs, left_out)
}
