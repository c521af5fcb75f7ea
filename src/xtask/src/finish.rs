//! The last step of bundling, called by Trunk before the new files take the place of the old: optimise the compiled
//! module, then write into the service worker what it has to keep.

use std::{
    collections::BTreeMap,
    env, fs,
    path::{Path, PathBuf},
};

use anyhow::{Context, ensure};
use base64::{Engine, prelude::BASE64_STANDARD};
use sha2::{Digest, Sha256};
use walkdir::WalkDir;

use crate::tool::wasm_opt;

/// Finishes the bundle in `TRUNK_STAGING_DIR`.
pub(crate) fn run() -> anyhow::Result<()> {
    let staging = env::var_os("TRUNK_STAGING_DIR")
        .map(PathBuf::from)
        .context("finish-bundle is called by trunk, not by hand: use `cargo xtask build`")?;
    if env::var("TRUNK_PROFILE").is_ok_and(|profile| profile == "release") {
        for module in files(&staging)?
            .iter()
            .filter(|name| name.ends_with(".wasm"))
        {
            wasm_opt::optimise(&staging.join(module))?;
        }
    }
    list_for_service_worker(&staging)
}

/// Fills in the service worker's list of files and the version, which is a hash over all of them.
fn list_for_service_worker(folder: &Path) -> anyhow::Result<()> {
    let worker = folder.join("sw.js");
    let template = fs::read_to_string(&worker).context("the bundle has no service worker")?;
    let mut digests = BTreeMap::new();
    let mut version = Sha256::new();
    version.update(&template);
    for name in files(folder)? {
        if name == "sw.js" {
            continue;
        }
        let digest = Sha256::digest(fs::read(folder.join(&name))?);
        version.update(&name);
        version.update(digest);
        let address = if name == "index.html" {
            "./".to_owned()
        } else {
            name
        };
        digests.insert(address, BASE64_STANDARD.encode(digest));
    }
    let version = format!("{:x}", version.finalize());
    let mut text = template;
    for (mark, value) in [
        ("'__VERSION__'", format!("'{}'", &version[..16])),
        ("'__FILES__'", serde_json::to_string_pretty(&digests)?),
    ] {
        ensure!(text.contains(mark), "sw.js has no place marked {mark}");
        text = text.replace(mark, &value);
    }
    fs::write(&worker, text).context("the service worker cannot be written")
}

/// The files below the folder, by name with forward slashes, in order.
fn files(folder: &Path) -> anyhow::Result<Vec<String>> {
    let mut names = Vec::new();
    for entry in WalkDir::new(folder).sort_by_file_name() {
        let entry = entry?;
        if entry.file_type().is_file() {
            let name = entry.path().strip_prefix(folder)?;
            let name = name
                .to_str()
                .context("a file of the bundle has a name that is not text")?;
            names.push(name.replace(std::path::MAIN_SEPARATOR, "/"));
        }
    }
    Ok(names)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bundle(page: &str) -> String {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path();
        fs::create_dir(path.join("fonts")).unwrap();
        fs::write(path.join("index.html"), page).unwrap();
        fs::write(path.join("fonts/a.woff2"), "font").unwrap();
        fs::write(path.join("sw.js"), include_str!("../../../public/sw.js")).unwrap();
        list_for_service_worker(path).unwrap();
        fs::read_to_string(path.join("sw.js")).unwrap()
    }

    #[test]
    fn every_file_is_listed_with_its_hash() {
        let text = bundle("abc");
        // SHA-256 of "abc": FIPS 180-4, example B.1.
        assert!(
            text.contains("\"./\": \"ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=\""),
            "{text}"
        );
        assert!(text.contains("\"fonts/a.woff2\": "), "{text}");
        assert!(!text.contains("sw.js\": "), "{text}");
        assert!(!text.contains("__"), "{text}");
    }

    #[test]
    fn the_version_is_that_of_the_contents() {
        assert_eq!(bundle("one"), bundle("one"));
        let version = |text: String| {
            text.lines()
                .find(|line| line.starts_with("const VERSION"))
                .map(str::to_owned)
        };
        assert_ne!(version(bundle("one")), version(bundle("two")));
        assert!(version(bundle("one")).is_some());
    }
}
