//! Habits of the project that no other tool looks after.

use std::{fs, path::Path};

use anyhow::bail;
use walkdir::{DirEntry, WalkDir};

/// Words that promise work instead of doing it, or hide that it was not done.
const UNFINISHED: [&str; 7] = [
    concat!("TO", "DO"),
    concat!("FIX", "ME"),
    concat!("to", "do!("),
    concat!("unimple", "mented!("),
    concat!("#[ig", "nore"),
    concat!("allow(dead", "_code)"),
    concat!("should", "_panic"),
];

/// What would make the model depend on a machine, a moment or a browser.
const OUTSIDE_WORLD: [&str; 10] = [
    "std::time::Instant",
    "SystemTime",
    "std::thread",
    "std::fs",
    "std::env",
    "std::net",
    "HashMap",
    "HashSet",
    "web_sys",
    "js_sys",
];

/// Looks through the repository in this folder.
pub(crate) fn run(root: &Path) -> anyhow::Result<()> {
    let mut faults = Vec::new();
    for folder in [
        "src", "tests", "public", "style", ".ci", ".config", ".cargo",
    ] {
        for entry in WalkDir::new(root.join(folder))
            .into_iter()
            .filter_entry(is_ours)
        {
            let entry = entry?;
            // What is not text has no habits.
            if entry.file_type().is_file()
                && let Ok(text) = fs::read_to_string(entry.path())
            {
                let name = entry.path().strip_prefix(root)?.to_string_lossy();
                faults.extend(
                    faults_in(&name, &text)
                        .into_iter()
                        .map(|fault| format!("{name}: {fault}")),
                );
            }
        }
    }
    faults.extend(unlinked_styles(root)?);
    faults.extend(lost_paths(root));
    if faults.is_empty() {
        return Ok(());
    }
    bail!("\n  {}", faults.join("\n  "))
}

fn is_ours(entry: &DirEntry) -> bool {
    !matches!(
        entry.file_name().to_str(),
        Some("target" | "node_modules" | "OFL.txt")
    )
}

/// What is wrong with one file.
fn faults_in(name: &str, text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    if name.ends_with(".rs") {
        if !text.starts_with("//! ") {
            faults.push("begins without saying what it is for (`//! ...`)".to_owned());
        }
        for word in UNFINISHED.iter().filter(|word| text.contains(**word)) {
            faults.push(format!("holds `{word}`"));
        }
    }
    if name.starts_with("src/cook-model/src/") {
        for word in OUTSIDE_WORLD.iter().filter(|word| text.contains(**word)) {
            faults.push(format!(
                "the model knows no outside world, but holds `{word}`"
            ));
        }
    }
    if text.lines().any(|line| line.ends_with([' ', '\t'])) {
        faults.push("has blanks at the end of a line".to_owned());
    }
    if !text.is_empty() && !text.ends_with('\n') {
        faults.push("ends without a line break".to_owned());
    }
    faults
}

/// Style sheets that the page does not use.
fn unlinked_styles(root: &Path) -> anyhow::Result<Vec<String>> {
    let page = fs::read_to_string(root.join("public/index.html"))?;
    let mut unlinked = Vec::new();
    for entry in fs::read_dir(root.join("style"))? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if name.ends_with(".css") && !page.contains(&format!("\"../style/{name}\"")) {
            unlinked.push(format!("style/{name}: not linked in public/index.html"));
        }
    }
    Ok(unlinked)
}

/// Paths that the map of the code names in `backticks` and that are not there.
fn lost_paths(root: &Path) -> Vec<String> {
    let mut lost = Vec::new();
    for paper in ["README.md", "DEVELOPERS.md"] {
        let text = fs::read_to_string(root.join(paper)).unwrap_or_default();
        for path in text.split('`').skip(1).step_by(2) {
            let is_path = ["src/", "tests/", "public/", "style/"]
                .iter()
                .any(|start| path.starts_with(start))
                && !path.contains([' ', '*', '<', '{', '\n']);
            if is_path && !root.join(path).exists() {
                lost.push(format!("{paper}: {path} is not there"));
            }
        }
    }
    lost
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(name: &str, text: &str, wanted: &[&str]) {
        let found = faults_in(name, text);
        assert_eq!(found.len(), wanted.len(), "{found:?}");
        for (fault, words) in found.iter().zip(wanted) {
            assert!(fault.contains(words), "{fault}");
        }
    }

    #[test]
    fn one_fault_each() {
        check("src/a.rs", "//! Good.\nfn a() {}\n", &[]);
        check("src/a.rs", "fn a() {}\n", &["without saying"]);
        check("src/a.rs", concat!("//! A.\n// TO", "DO\n"), &["holds"]);
        check("src/a.rs", "//! A. \n", &["blanks"]);
        check("style/a.css", "a {}", &["line break"]);
        let map = "//! A.\nuse std::collections::HashMap;\n";
        check("src/cook-model/src/a.rs", map, &["HashMap"]);
        check("src/planner/src/a.rs", map, &[]);
    }

    #[test]
    fn a_path_that_is_gone_is_told() {
        let root = tempfile::tempdir().unwrap();
        fs::create_dir(root.path().join("src")).unwrap();
        fs::write(root.path().join("src/here.rs"), "").unwrap();
        fs::write(
            root.path().join("README.md"),
            "See `src/here.rs` and `src/gone.rs`, not src/else.rs.",
        )
        .unwrap();
        assert_eq!(
            lost_paths(root.path()),
            ["README.md: src/gone.rs is not there"]
        );
    }
}
