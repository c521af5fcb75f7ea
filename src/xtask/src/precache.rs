//! Tells the service worker which files it has to keep.

use std::{collections::BTreeMap, fs, path::Path};

use anyhow::{Context, ensure};
use base64::{Engine, prelude::BASE64_STANDARD};
use sha2::{Digest, Sha256};
use walkdir::WalkDir;

/// Writes `sw.js` into the folder of the bundle: the template with the hash of every file, and with the version, which
/// is a hash over all of them and the template.
///
/// # Errors
/// When a file cannot be read or the template lacks one of the two marks.
pub fn write(folder: &Path, template: &str) -> anyhow::Result<()> {
    let mut digests = BTreeMap::new();
    let mut version = Sha256::new();
    version.update(template);
    for name in files(folder)?.into_iter().filter(|name| name != "sw.js") {
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
    let mut text = template.to_owned();
    for (mark, value) in [
        ("'__VERSION__'", format!("'{}'", &version[..16])),
        ("'__FILES__'", serde_json::to_string_pretty(&digests)?),
    ] {
        ensure!(text.contains(mark), "sw.js has no place marked {mark}");
        text = text.replace(mark, &value);
    }
    fs::write(folder.join("sw.js"), text).context("the service worker cannot be written")
}

/// The files below the folder, by name with forward slashes, in order.
///
/// # Errors
/// When the folder cannot be read or a name is not text.
pub fn files(folder: &Path) -> anyhow::Result<Vec<String>> {
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
        write(path, include_str!("../../../public/sw.js")).unwrap();
        fs::read_to_string(path.join("sw.js")).unwrap()
    }

    #[test]
    fn every_file_is_listed_with_its_hash() {
        let text = bundle("abc");
        // SHA-256 of "abc": the example in FIPS 180-4 and its predecessors.
        assert!(
            text.contains("\"./\": \"ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=\""),
            "{text}"
        );
        assert!(text.contains("\"fonts/a.woff2\": "), "{text}");
        assert!(!text.contains("\"sw.js\": "), "{text}");
        assert!(!text.contains("__"), "{text}");
    }

    #[test]
    fn the_version_is_that_of_the_contents() {
        assert_eq!(bundle("one"), bundle("one"));
        let version = |page| {
            let text = bundle(page);
            let line = text.lines().find(|line| line.starts_with("const VERSION"));
            line.unwrap().to_owned()
        };
        assert_ne!(version("one"), version("two"));
    }

    #[test]
    fn a_template_without_marks_is_refused() {
        let folder = tempfile::tempdir().unwrap();
        let error = write(folder.path(), "const VERSION = 1;").unwrap_err();
        assert!(error.to_string().contains("__VERSION__"), "{error}");
    }
}
