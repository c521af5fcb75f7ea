//! Bundles the app: the compiled module, its loader, the page, the styles, the service worker.

use std::{
    env, fs,
    path::{Path, PathBuf},
};

use anyhow::Context;
use sha2::{Digest, Sha256};
use walkdir::WalkDir;
use xshell::cmd;

use crate::{
    flags,
    project::{self, say, step},
    size, tool,
};

/// How the app is compiled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Profile {
    /// Quick to compile, for trying things.
    Debug,
    /// What people get.
    Release,
}

impl Profile {
    fn folder(self) -> PathBuf {
        match self {
            Self::Debug => project::target().join("dist-debug"),
            Self::Release => project::root().join("dist"),
        }
    }
}

/// Everything that goes into the bundle.
const INPUTS: [&str; 10] = [
    ".cargo",
    "Cargo.lock",
    "Cargo.toml",
    "Trunk.toml",
    "public",
    "rust-toolchain.toml",
    "src/cook-model",
    "src/planner",
    "src/xtask/src",
    "style",
];

/// Installs what is missing, builds unless nothing has changed, and tells the folder of the finished app.
pub(crate) fn build(profile: Profile) -> anyhow::Result<PathBuf> {
    tool::toolchain()?;
    let trunk = tool::trunk()?;
    let bindgen = tool::wasm_bindgen()?;
    if profile == Profile::Release {
        tool::wasm_opt::install()?;
    }

    let folder = profile.folder();
    let stamp = project::target().join(format!("{profile:?}-bundle.stamp").to_lowercase());
    let state = format!(
        "{} optimised: {}",
        fingerprint(&project::root())?,
        tool::wasm_opt::is_there()
    );
    let unchanged = fs::read_to_string(&stamp).is_ok_and(|text| text == state);
    if unchanged && folder.join("sw.js").is_file() {
        say("nothing has changed since the last build");
        return held_to_size(profile, folder);
    }

    let words = match profile {
        Profile::Debug => "building the app: some seconds, the first time about 3 minutes",
        Profile::Release => "building the app: 1 to 2 minutes, the first time about 5",
    };
    step(words, || bundle(profile, &folder, [&trunk, &bindgen]))?;
    fs::write(&stamp, state).with_context(|| format!("{} cannot be written", stamp.display()))?;
    held_to_size(profile, folder)
}

/// Only what people get has a budget, and only where the module could be optimised.
fn held_to_size(profile: Profile, folder: PathBuf) -> anyhow::Result<PathBuf> {
    if profile == Profile::Release && tool::wasm_opt::is_there() {
        size::check(&folder)?;
    }
    Ok(folder)
}

fn bundle(profile: Profile, folder: &Path, tools: [&tool::Tool; 2]) -> anyhow::Result<()> {
    let shell = project::shell()?;
    let path = env::var_os("PATH").unwrap_or_default();
    let folders = tools
        .into_iter()
        .map(|tool| tool.folder.clone())
        .chain(env::split_paths(&path));
    let _path = shell.push_env("PATH", env::join_paths(folders)?);
    let _quiet = shell.push_env("TRUNK_SKIP_VERSION_CHECK", "true");
    // Trunk takes NO_COLOR for a switch and stops at the usual value.
    let _color = shell.push_env("NO_COLOR", "true");
    // The quick build keeps the flags that plain cargo commands use, and so what they have compiled.
    let _flags = match profile {
        Profile::Debug => None,
        Profile::Release => Some(shell.push_env(flags::VARIABLE, flags::wasm("+simd128")?)),
    };
    let release = (profile == Profile::Release).then_some("--release");
    let locked = project::unattended().then_some("--locked");
    cmd!(
        shell,
        "trunk build --offline --dist {folder} {release...} {locked...}"
    )
    .quiet()
    .run()
    .context("the app could not be built (see above)")
}

/// A hash over the names and contents of all inputs below this folder.
fn fingerprint(root: &Path) -> anyhow::Result<String> {
    let mut hash = Sha256::new();
    for input in INPUTS {
        for entry in WalkDir::new(root.join(input)).sort_by_file_name() {
            let entry = entry?;
            if entry.file_type().is_file() {
                let content = fs::read(entry.path())?;
                hash.update(
                    entry
                        .path()
                        .strip_prefix(root)?
                        .as_os_str()
                        .as_encoded_bytes(),
                );
                hash.update(content.len().to_le_bytes());
                hash.update(content);
            }
        }
    }
    Ok(format!("{:x}", hash.finalize()))
}
