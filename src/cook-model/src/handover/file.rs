//! The hand-over file: one JSON document with a plan's fields and its journal.
//!
//! Reading is a total function: a file either yields a valid plan or a list of what is wrong and where. Nothing in it
//! is ever taken for markup. Fields of a later version are kept.

use super::decode::Unreadable;
use super::document::{Document, is_path};
use super::fault::because;
use super::journal::Journal;
use crate::plan::Plan;
use schemars::{JsonSchema, Schema, schema_for};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// What such a file calls itself.
pub const FORMAT: &str = "longcook-plan";
/// The version written, and the latest that can be read.
pub const VERSION: u32 = 1;
/// Largest file taken in, bytes. A plan with a day's journal has a few hundred thousand.
pub const MOST_BYTES: usize = 4_000_000;
/// Most fields in a document.
pub const MOST_FIELDS: usize = 20_000;
/// Most entries in a journal.
pub const MOST_ENTRIES: usize = 20_000;
/// Longest text in a field, in characters.
pub const LONGEST_TEXT: usize = 2_000;

/// A plan with its journal, as handed over and as kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct HandOver {
    /// Always `longcook-plan`.
    #[schemars(extend("const" = FORMAT))]
    pub format: String,
    /// Version of the format.
    pub version: u32,
    /// The plan's fields.
    pub document: Document,
    /// What happened.
    #[serde(default)]
    pub journal: Journal,
}

/// Why a file was not taken in.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refusal {
    /// Too large to be a plan.
    #[error(
        "this file has {bytes} bytes; a plan has at most {most}. Choose the file that Longcook wrote."
    )]
    TooLarge {
        /// Its size.
        bytes: usize,
        /// The largest taken in.
        most: usize,
    },
    /// Not JSON.
    #[error(
        "this file is not readable as a plan (line {line}, column {column}). It may be cut short: ask for it again."
    )]
    NotJson {
        /// Where reading stopped.
        line: usize,
        /// Where reading stopped.
        column: usize,
    },
    /// JSON, but something else.
    #[error("this file is not a Longcook plan. Choose a file that was exported by Longcook.")]
    AnotherFormat,
    /// Written by a later version.
    #[error(
        "this file was written by a newer Longcook (format {found}, this one reads up to {known}). Update Longcook, then open it again."
    )]
    Newer {
        /// Its version.
        found: u64,
        /// The latest known here.
        known: u32,
    },
    /// The right kind of file with wrong things in it.
    #[error("{} thing(s) in this file cannot be read; nothing was changed", .0.len())]
    Wrong(Vec<Unreadable>),
}

impl HandOver {
    /// Wraps a document and its journal.
    #[must_use]
    pub fn new(document: Document, journal: Journal) -> Self {
        Self {
            format: FORMAT.to_owned(),
            version: VERSION,
            document,
            journal,
        }
    }

    /// As text, for a file or for keeping.
    #[must_use]
    pub fn to_text(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// Takes over what the other copy has that is later or missing here.
    pub fn merge(&mut self, other: &Self) {
        self.document.merge(&other.document);
        self.journal.merge(&other.journal);
    }
}

/// Reads a file. The envelope, every path, every field and every entry are checked.
///
/// # Errors
/// [`Refusal`] says what is wrong and what to do; with [`Refusal::Wrong`], each place and reason.
pub fn read(bytes: &[u8]) -> Result<(HandOver, Plan), Refusal> {
    let hand_over = open(bytes)?;
    let mut wrong = bounds(&hand_over);
    let reading = hand_over.document.read();
    wrong.extend(reading.unreadable);
    match reading.plan {
        Some(plan) if wrong.is_empty() => Ok((hand_over, plan)),
        _ => Err(Refusal::Wrong(wrong)),
    }
}

/// Opens the envelope without judging the fields: for copies of one's own, where a damaged field must not cost the rest.
///
/// # Errors
/// As [`read`], for the envelope alone.
pub fn open(bytes: &[u8]) -> Result<HandOver, Refusal> {
    if bytes.len() > MOST_BYTES {
        return Err(Refusal::TooLarge {
            bytes: bytes.len(),
            most: MOST_BYTES,
        });
    }
    let json: Value = serde_json::from_slice(bytes).map_err(|error| Refusal::NotJson {
        line: error.line(),
        column: error.column(),
    })?;
    if json.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(Refusal::AnotherFormat);
    }
    match json.get("version").and_then(Value::as_u64) {
        Some(found) if found > u64::from(VERSION) => {
            return Err(Refusal::Newer {
                found,
                known: VERSION,
            });
        }
        Some(1) => {}
        _ => return Err(Refusal::AnotherFormat),
    }
    serde_path_to_error::deserialize(&json).map_err(|error| {
        let at = error.path().to_string();
        Refusal::Wrong(vec![Unreadable {
            at,
            because: because(&error.into_inner().to_string()),
        }])
    })
}

fn bounds(hand_over: &HandOver) -> Vec<Unreadable> {
    let mut wrong = Vec::new();
    let mut say = |at: &str, because: String| {
        wrong.push(Unreadable {
            at: at.to_owned(),
            because,
        })
    };
    let fields = &hand_over.document.fields;
    if fields.len() > MOST_FIELDS {
        say(
            "document",
            format!(
                "It has {} fields; at most {MOST_FIELDS} are taken in.",
                fields.len()
            ),
        );
    }
    if hand_over.journal.0.len() > MOST_ENTRIES {
        say(
            "journal",
            format!(
                "It has {} entries; at most {MOST_ENTRIES} are taken in.",
                hand_over.journal.0.len()
            ),
        );
    }
    for (path, field) in fields {
        if !is_path(path) {
            say(path, "A plan has no field here.".to_owned());
        }
        if let Some(Value::String(text)) = &field.value
            && text.chars().count() > LONGEST_TEXT
        {
            say(
                path,
                format!("This text is longer than {LONGEST_TEXT} characters; shorten it."),
            );
        }
    }
    wrong
}

/// The JSON Schema of a hand-over file, made from the types.
#[must_use]
pub fn schema() -> Schema {
    schema_for!(HandOver)
}

/// The JSON Schema of the plan that the fields of a document put together make.
#[must_use]
pub fn plan_schema() -> Schema {
    schema_for!(Plan)
}

#[cfg(test)]
mod tests {
    use super::super::identity::{PlanId, ReplicaId};
    use super::super::stamp::Clock;
    use super::*;
    use crate::plan::Serving;
    use serde_json::json;

    fn sample() -> (HandOver, Plan) {
        let local = "2026-09-12T18:00:00".parse().expect("a date and time");
        let mut plan = Plan::new(Serving {
            local,
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        });
        plan.name = "Supper".to_owned();
        let mut document = Document::new(PlanId::new(1, 1));
        document.record(None, &plan, &mut Clock::new(ReplicaId::new(1)), 1_000);
        (HandOver::new(document, Journal::default()), plan)
    }

    #[test]
    fn a_file_comes_back_as_it_was_written() {
        let (hand_over, plan) = sample();
        assert_eq!(read(hand_over.to_text().as_bytes()), Ok((hand_over, plan)));
    }

    #[test]
    fn every_wrong_file_is_refused_with_its_reason() {
        let newer = json!({"format": FORMAT, "version": 2, "document": {}}).to_string();
        assert_eq!(
            read(newer.as_bytes()).err(),
            Some(Refusal::Newer { found: 2, known: 1 })
        );
        assert!(matches!(
            read(b"{\"format\": ").err(),
            Some(Refusal::NotJson { line: 1, .. })
        ));
        assert_eq!(read(b"[1, 2]").err(), Some(Refusal::AnotherFormat));
        let large = vec![b' '; MOST_BYTES + 1];
        assert!(matches!(read(&large).err(), Some(Refusal::TooLarge { .. })));
    }

    #[test]
    fn all_that_is_wrong_is_listed_at_once() {
        let (mut hand_over, _) = sample();
        let stamp = hand_over.document.latest().expect("a stamp");
        let field = |value| super::super::Field {
            value: Some(value),
            stamp,
        };
        hand_over
            .document
            .fields
            .insert("promise".to_owned(), field(json!("high")));
        hand_over
            .document
            .fields
            .insert("guests".to_owned(), field(json!(-3)));
        hand_over
            .document
            .fields
            .insert("a//b".to_owned(), field(json!(1)));
        let Err(Refusal::Wrong(wrong)) = read(hand_over.to_text().as_bytes()) else {
            panic!("it should be refused")
        };
        let mut places: Vec<_> = wrong.iter().map(|one| one.at.as_str()).collect();
        places.sort_unstable();
        assert_eq!(places, ["a//b", "guests", "promise"]);
    }
}
