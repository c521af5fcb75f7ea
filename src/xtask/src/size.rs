//! What a visitor loads: the size of the bundle, held to a budget.

use std::{fs, io::Write, path::Path};

use anyhow::{Context, ensure};
use flate2::{Compression, write::GzEncoder};
use xtask::precache;

use crate::project::say;

/// Most that the whole release bundle may have, compressed file by file as servers do (gzip, level 9), in bytes: 2.25 MB
/// were measured, and 2.88 MB while what is shown was made for speed too. Lower it when it can be; raise it only with a
/// reason.
const BUDGET: u64 = 2_500_000;

/// Says how large the bundle is, and refuses one beyond the budget.
pub(crate) fn check(folder: &Path) -> anyhow::Result<()> {
    let mut sizes = Vec::new();
    for name in precache::files(folder)? {
        let content = fs::read(folder.join(&name))
            .with_context(|| format!("{name} of the bundle cannot be read"))?;
        sizes.push((compressed(&content)?, content.len(), name));
    }
    sizes.sort_unstable();
    let (packed, plain) = sizes.iter().fold((0, 0), |sum, (packed, plain, _)| {
        (sum.0 + packed, sum.1 + plain)
    });
    say(&format!(
        "the app has {} files of {} kB, {} kB compressed (at most {} kB)",
        sizes.len(),
        plain / 1000,
        packed / 1000,
        BUDGET / 1000
    ));
    let largest = sizes.last().map_or("nothing", |(_, _, name)| name.as_str());
    ensure!(
        packed <= BUDGET,
        "the app is {} kB over its budget; its largest file is {largest}",
        (packed - BUDGET) / 1000 + 1
    );
    Ok(())
}

/// Bytes that go over the wire.
fn compressed(content: &[u8]) -> anyhow::Result<u64> {
    let mut counter = GzEncoder::new(Vec::new(), Compression::best());
    counter.write_all(content)?;
    Ok(counter.finish()?.len() as u64)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bundle_within_the_budget_passes_and_one_beyond_it_is_named() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("app.wasm"), vec![0_u8; 3_000_000]).unwrap();
        check(folder.path()).unwrap();
        // Nothing to save here: the low bits of a linear congruential sequence (from memory).
        let mut state = 1_u64;
        let noise: Vec<u8> = (0..2_600_000)
            .map(|_| {
                state = state
                    .wrapping_mul(6_364_136_223_846_793_005)
                    .wrapping_add(1);
                (state >> 56) as u8
            })
            .collect();
        fs::write(folder.path().join("noise.bin"), noise).unwrap();
        let error = check(folder.path()).unwrap_err().to_string();
        assert!(error.contains("noise.bin"), "{error}");
    }
}
