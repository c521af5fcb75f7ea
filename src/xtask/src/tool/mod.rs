//! The programs that building and testing need: found where they are already, else installed into the user's cache.

mod axe;
mod browser;
mod cache;
mod npm;
mod rust;
mod trunk;
mod wasm_bindgen;

pub(crate) mod wasm_opt;

pub(crate) use {
    axe::axe, browser::browser, rust::toolchain, trunk::trunk, wasm_bindgen::wasm_bindgen,
};

use std::{
    path::{Path, PathBuf},
    process::Command,
};

/// A program and the folder it lies in, for `PATH`.
#[derive(Debug, Clone)]
pub(crate) struct Tool {
    pub(crate) folder: PathBuf,
}

/// Whether `program --version` tells exactly this version.
fn has_version(program: &Path, version: &str) -> bool {
    Command::new(program)
        .arg("--version")
        .output()
        .ok()
        .and_then(|output| String::from_utf8(output.stdout).ok())
        .is_some_and(|text| text.split_whitespace().any(|word| word == version))
}

/// The programs of this name in `PATH`.
pub(crate) fn in_path(name: &str) -> impl Iterator<Item = PathBuf> {
    let path = std::env::var_os("PATH").unwrap_or_default();
    let folders: Vec<PathBuf> = std::env::split_paths(&path).collect();
    let name = format!("{name}{}", std::env::consts::EXE_SUFFIX);
    folders
        .into_iter()
        .map(move |folder| folder.join(&name))
        .filter(|file| file.is_file())
}

/// Looks for the program at this version, first in the cache and then in `PATH`.
fn find(name: &str, version: &str, cached: &Path) -> Option<Tool> {
    let file = format!("{name}{}", std::env::consts::EXE_SUFFIX);
    std::iter::once(cached.join("bin").join(file))
        .chain(in_path(name))
        .find(|program| has_version(program, version))
        .and_then(|program| program.parent().map(Path::to_path_buf))
        .map(|folder| Tool { folder })
}
