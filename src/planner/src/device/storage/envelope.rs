//! The envelope around every record: what it is, by which version it was written, how often, and a checksum, so that
//! a torn or foreign record is known for what it is before anything is believed.

use super::Key;
use serde::{Deserialize, Serialize};

/// The version of records written here, and the latest that can be read.
pub const VERSION: u32 = 1;

/// A record as it lies in a store.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Envelope {
    /// What is inside: `plan`, `journal`, `index`, `device`.
    pub kind: String,
    /// Version of the record.
    pub version: u32,
    /// Counts the writes of this record on this device.
    pub revision: u64,
    /// CRC-32 of the content, as eight hexadecimal digits (checksum of ISO 3309, as in Ethernet and zip).
    pub checksum: String,
    /// The content, as text.
    pub content: String,
}

/// Why a record was not believed.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Fault {
    /// Not an envelope at all.
    #[error("it is not a record of Longcook")]
    NotAnEnvelope,
    /// Cut short or changed.
    #[error("its content is damaged: checksum {found}, written as {written}")]
    Damaged {
        /// As written.
        written: String,
        /// As found.
        found: String,
    },
    /// A record of one kind under the name of another.
    #[error("it holds {found} where {expected} belongs")]
    AnotherKind {
        /// By its name.
        expected: &'static str,
        /// By its envelope.
        found: String,
    },
    /// Written by a later version.
    #[error(
        "it was written by a newer Longcook (records of version {found}, this one reads up to {VERSION})"
    )]
    Newer {
        /// Its version.
        found: u32,
    },
    /// The envelope is sound and what is inside is not.
    #[error("its content cannot be read: {0}")]
    Content(String),
}

/// The checksum of a text.
#[must_use]
pub fn checksum(text: &str) -> u32 {
    crc32fast::hash(text.as_bytes())
}

impl Envelope {
    /// Wraps a content.
    #[must_use]
    pub fn new(key: Key, revision: u64, content: String) -> Self {
        Self {
            kind: key.kind().to_owned(),
            version: VERSION,
            revision,
            checksum: format!("{:08x}", checksum(&content)),
            content,
        }
    }

    /// Opens a record found under a name.
    ///
    /// # Errors
    /// [`Fault`] says why it cannot be believed.
    pub fn open(key: Key, text: &str) -> Result<Self, Fault> {
        /// What can be read of a record of any version.
        #[derive(Deserialize)]
        struct Label {
            version: u32,
        }
        let label: Label = serde_json::from_str(text).map_err(|_| Fault::NotAnEnvelope)?;
        if label.version > VERSION {
            return Err(Fault::Newer {
                found: label.version,
            });
        }
        let envelope: Self = serde_json::from_str(text).map_err(|_| Fault::NotAnEnvelope)?;
        let found = format!("{:08x}", checksum(&envelope.content));
        if found != envelope.checksum {
            return Err(Fault::Damaged {
                written: envelope.checksum,
                found,
            });
        }
        if envelope.kind != key.kind() {
            return Err(Fault::AnotherKind {
                expected: key.kind(),
                found: envelope.kind,
            });
        }
        Ok(envelope)
    }

    /// As it lies in a store.
    #[must_use]
    pub fn to_text(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sealed(content: &str) -> String {
        Envelope::new(Key::Index, 3, content.to_owned()).to_text()
    }

    #[test]
    fn a_sound_record_opens() {
        let envelope = Envelope::open(Key::Index, &sealed("{\"a\":1}")).expect("a record");
        assert_eq!(envelope.content, "{\"a\":1}");
        assert_eq!(envelope.revision, 3);
    }

    #[test]
    fn a_record_cut_short_is_no_envelope() {
        let text = sealed("content");
        let cut = &text[..text.len() / 2];
        assert_eq!(Envelope::open(Key::Index, cut), Err(Fault::NotAnEnvelope));
        assert_eq!(Envelope::open(Key::Index, ""), Err(Fault::NotAnEnvelope));
    }

    #[test]
    fn a_changed_content_is_noticed() {
        let text = sealed("serving at 18").replace("18", "19");
        let fault = Envelope::open(Key::Index, &text);
        assert!(matches!(fault, Err(Fault::Damaged { .. })), "{fault:?}");
    }

    #[test]
    fn a_record_under_a_wrong_name_is_noticed() {
        let fault = Envelope::open(Key::Device, &sealed("x"));
        assert!(matches!(fault, Err(Fault::AnotherKind { .. })), "{fault:?}");
    }

    #[test]
    fn a_newer_record_is_known_even_where_its_shape_changed() {
        let text = r#"{"version": 9, "body": [1, 2]}"#;
        assert_eq!(
            Envelope::open(Key::Index, text),
            Err(Fault::Newer { found: 9 })
        );
    }
}
