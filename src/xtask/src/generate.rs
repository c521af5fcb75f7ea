//! `cargo xtask generate`: the files in the repository that are made from the code.

use std::fs;

use anyhow::{Context, bail};
use xshell::cmd;

use crate::project::{self, say};

/// A generated file, the example that prints it and its arguments.
const FILES: [(&str, &str, &[&str]); 3] = [
    (
        "src/cook-model/schema/hand-over.schema.json",
        "schema",
        &["hand-over"],
    ),
    (
        "src/cook-model/schema/plan.schema.json",
        "schema",
        &["plan"],
    ),
    ("tests/reference/stiff/cuts.json", "cuts", &[]),
];

/// Writes the files anew, or, when only asked to check, tells which are not what they would be.
pub(crate) fn run(check: bool) -> anyhow::Result<()> {
    let shell = project::shell()?;
    let mut stale = Vec::new();
    for (name, example, arguments) in FILES {
        let text = cmd!(
            shell,
            "cargo run --quiet -p cook-model --example {example} -- {arguments...}"
        )
        .quiet()
        .read()
        .with_context(|| format!("{name} cannot be made"))?
            + "\n";
        let file = project::root().join(name);
        if fs::read_to_string(&file).is_ok_and(|old| old == text) {
            continue;
        }
        if check {
            stale.push(name);
            continue;
        }
        let folder = file.parent().context("a generated file is in a folder")?;
        fs::create_dir_all(folder)?;
        fs::write(&file, text).with_context(|| format!("{name} cannot be written"))?;
        say(&format!("{name} is new"));
    }
    if stale.is_empty() {
        return Ok(());
    }
    bail!(
        "out of date, run `cargo xtask generate`: {}",
        stale.join(", ")
    )
}
