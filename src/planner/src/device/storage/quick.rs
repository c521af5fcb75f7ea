//! The quick copy: local storage. It takes a change at once, and other tabs hear of it; a browser may write it to disk
//! much later, which is why there is a strict copy as well.

use super::{Envelope, Key};
use gloo_storage::errors::StorageError;
use gloo_storage::{LocalStorage, Storage as _};
use std::collections::BTreeMap;

/// Why a change could not be kept in one of the two stores.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// The browser allows no more room.
    #[error("the browser allows no more room")]
    NoRoom,
    /// Anything else, in the browser's words.
    #[error("{0}")]
    Other(String),
}

impl Refused {
    pub(super) fn by_name(name: &str, message: String) -> Self {
        match name {
            "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => Self::NoRoom,
            _ => Self::Other(message),
        }
    }
}

impl From<StorageError> for Refused {
    fn from(error: StorageError) -> Self {
        match error {
            StorageError::JsError(error) => Self::by_name(&error.name, error.message),
            other => Self::Other(other.to_string()),
        }
    }
}

/// Every record of this app, unopened.
pub(super) fn read_all() -> BTreeMap<Key, String> {
    let store = LocalStorage::raw();
    let length = LocalStorage::length();
    (0..length)
        .filter_map(|at| store.key(at).ok().flatten())
        .filter_map(|name| {
            let key = name.parse().ok()?;
            let text = store.get_item(&name).ok().flatten()?;
            Some((key, text))
        })
        .collect()
}

/// Writes a record.
pub(super) fn write(key: Key, envelope: &Envelope) -> Result<(), Refused> {
    Ok(LocalStorage::set(key.to_string(), envelope)?)
}

/// Takes a record out.
pub(super) fn erase(key: Key) {
    LocalStorage::delete(key.to_string());
}
