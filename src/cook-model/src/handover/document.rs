//! A plan as it is kept: one stamped value a field, so that any two copies merge the same way in any order.
//!
//! The typed [`Plan`](crate::plan::Plan) is turned into JSON and taken apart into fields. A collection (dishes, pieces,
//! cookers, crew, steps) is a map by id; every other value is one field and changes as a whole. Each thing in a collection has
//! a marker field at its own path: present, or taken out. Fields that this version does not know are kept and merged
//! like the others.

use super::identity::PlanId;
use super::stamp::{Clock, Stamp};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use std::collections::BTreeMap;

/// Names of the collections, wherever they stand.
pub(super) const COLLECTIONS: [&str; 8] = [
    "cookers",
    "crew",
    "dishes",
    "extras",
    "own_steps",
    "pieces",
    "purchases",
    "steps",
];

/// Where a field stands, as names and ids with slashes between: `dishes/ID/pieces/ID/mass`.
pub type FieldPath = String;

/// One field: its value and when it was last changed. No value means taken out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Field {
    /// The value, absent where the field was taken out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<Value>,
    /// When it was last changed.
    pub stamp: Stamp,
}

/// A plan as fields.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Document {
    /// Which plan this is a copy of.
    pub id: PlanId,
    /// Every field that was ever set.
    pub fields: BTreeMap<FieldPath, Field>,
}

impl Document {
    /// A document with nothing in it.
    #[must_use]
    pub const fn new(id: PlanId) -> Self {
        Self {
            id,
            fields: BTreeMap::new(),
        }
    }

    /// Stamps every field in which `after` differs from `before`. Returns whether anything changed.
    pub(super) fn record_json(
        &mut self,
        before: &Value,
        after: &Value,
        clock: &mut Clock,
        wall: u64,
    ) -> bool {
        let (before, after) = (flatten(before), flatten(after));
        let mut changed = Vec::new();
        for (path, value) in &after {
            if before.get(path) != Some(value) || !self.fields.contains_key(path) {
                changed.push((path.clone(), Some(value.clone())));
            }
        }
        for path in before.keys().filter(|path| !after.contains_key(*path)) {
            // What went away with its owner stays, so that putting the owner back brings it back.
            let owner_gone =
                owners(path).any(|owner| before.contains_key(owner) && !after.contains_key(owner));
            if !owner_gone {
                changed.push((path.clone(), None));
            }
        }
        if changed.is_empty() {
            return false;
        }
        for field in self.fields.values() {
            clock.see(field.stamp);
        }
        let stamp = clock.tick(wall);
        for (path, value) in changed {
            self.fields.insert(path, Field { value, stamp });
        }
        true
    }

    /// Takes over every field that the other copy changed later. The order of merging does not matter.
    pub fn merge(&mut self, other: &Self) {
        for (path, theirs) in &other.fields {
            match self.fields.get_mut(path) {
                None => {
                    self.fields.insert(path.clone(), theirs.clone());
                }
                Some(ours) => {
                    if wins(theirs, ours) {
                        *ours = theirs.clone();
                    }
                }
            }
        }
    }

    /// The latest stamp in it.
    #[must_use]
    pub fn latest(&self) -> Option<Stamp> {
        self.fields.values().map(|field| field.stamp).max()
    }

    /// The fields put together again, without what was taken out.
    pub(super) fn to_json(&self) -> Value {
        let mut root = Map::new();
        'fields: for (path, field) in &self.fields {
            let Some(value) = &field.value else { continue };
            if owners(path).any(|owner| {
                self.fields
                    .get(owner)
                    .is_none_or(|marker| marker.value.is_none())
            }) {
                continue;
            }
            let names: Vec<&str> = path.split('/').collect();
            let is_marker = names.len().is_multiple_of(2);
            let (last, way) = names.split_last().unwrap_or((&"", &[]));
            let mut place = &mut root;
            for name in way {
                // A well-formed path only passes through collections; any other is left out rather than believed.
                let Value::Object(next) = place
                    .entry(*name)
                    .or_insert_with(|| Value::Object(Map::new()))
                else {
                    continue 'fields;
                };
                place = next;
            }
            if is_marker {
                place
                    .entry(*last)
                    .or_insert_with(|| Value::Object(Map::new()));
            } else {
                place.insert((*last).to_owned(), value.clone());
            }
        }
        Value::Object(root)
    }
}

/// Whether a field beats another at the same path. Equal stamps with different values cannot be made by this app, but
/// a file may hold them: then the greater text wins, so that every copy still agrees.
fn wins(theirs: &Field, ours: &Field) -> bool {
    let text = |field: &Field| field.value.as_ref().map(ToString::to_string);
    theirs.stamp > ours.stamp || (theirs.stamp == ours.stamp && text(theirs) > text(ours))
}

/// The things in collections that hold this path, outermost first, the path itself not included.
fn owners(path: &str) -> impl Iterator<Item = &str> {
    path.match_indices('/')
        .map(|(at, _)| &path[..at])
        .filter(|owner| owner.split('/').count().is_multiple_of(2))
}

/// Whether a path is well formed: names and ids in turn, collections where collections stand.
pub(super) fn is_path(path: &str) -> bool {
    let names: Vec<&str> = path.split('/').collect();
    let plain = |name: &&str| {
        !name.is_empty()
            && name.len() <= 64
            && name.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'_')
    };
    names.len() <= 6
        && names.iter().all(plain)
        && names.iter().enumerate().all(|(at, name)| {
            let last = at + 1 == names.len();
            !at.is_multiple_of(2) || (COLLECTIONS.contains(name) != last)
        })
}

/// Takes a plan's JSON apart into fields.
fn flatten(json: &Value) -> BTreeMap<FieldPath, Value> {
    fn walk(prefix: &str, object: &Map<String, Value>, into: &mut BTreeMap<FieldPath, Value>) {
        for (name, value) in object {
            let path = if prefix.is_empty() {
                name.clone()
            } else {
                format!("{prefix}/{name}")
            };
            match value {
                Value::Object(things) if COLLECTIONS.contains(&name.as_str()) => {
                    for (id, thing) in things {
                        let Value::Object(thing) = thing else {
                            continue;
                        };
                        let path = format!("{path}/{id}");
                        walk(&path, thing, into);
                        into.insert(path, Value::Bool(true));
                    }
                }
                _ => {
                    into.insert(path, value.clone());
                }
            }
        }
    }
    let mut fields = BTreeMap::new();
    if let Value::Object(object) = json {
        walk("", object, &mut fields);
    }
    fields
}

#[cfg(test)]
mod tests {
    use super::super::identity::ReplicaId;
    use super::*;
    use serde_json::json;

    fn document() -> Document {
        Document::new(PlanId::new(1, 1))
    }

    fn clock(replica: u64) -> Clock {
        Clock::new(ReplicaId::new(replica))
    }

    #[test]
    fn fields_come_apart_and_together() {
        let plan = json!({"name": "Supper", "place": {"altitude": 3.0},
            "dishes": {"A1": {"name": "Lamb", "pieces": {"P1": {"mass": 2.6}}}}, "crew": {}});
        let mut document = document();
        document.record_json(&json!({}), &plan, &mut clock(1), 5);
        assert_eq!(
            document.to_json(),
            json!({"name": "Supper", "place": {"altitude": 3.0},
            "dishes": {"A1": {"name": "Lamb", "pieces": {"P1": {"mass": 2.6}}}}})
        );
    }

    #[test]
    fn a_dish_taken_out_and_put_back_has_its_pieces_again() {
        let full = json!({"dishes": {"A1": {"name": "Lamb", "pieces": {"P1": {"mass": 2.6}}}}});
        let empty = json!({"dishes": {}});
        let (mut document, mut clock) = (document(), clock(1));
        document.record_json(&json!({}), &full, &mut clock, 5);
        document.record_json(&full, &empty, &mut clock, 6);
        assert_eq!(document.to_json(), json!({}));
        document.record_json(&empty, &full, &mut clock, 7);
        assert_eq!(document.to_json(), full);
    }

    #[test]
    fn two_phones_edit_different_fields_and_both_edits_live() {
        let start = json!({"name": "Supper", "guests": 8});
        let mut here = document();
        here.record_json(&json!({}), &start, &mut clock(1), 5);
        let mut there = here.clone();
        here.record_json(
            &start,
            &json!({"name": "Supper at six", "guests": 8}),
            &mut clock(1),
            50,
        );
        there.record_json(
            &start,
            &json!({"name": "Supper", "guests": 9}),
            &mut clock(2),
            40,
        );
        let mut one = here.clone();
        one.merge(&there);
        let mut other = there.clone();
        other.merge(&here);
        assert_eq!(one, other);
        assert_eq!(one.to_json(), json!({"name": "Supper at six", "guests": 9}));
    }

    #[test]
    fn a_field_of_a_later_version_survives_an_edit() {
        let mut document = document();
        document.record_json(
            &json!({}),
            &json!({"name": "Supper", "mood": "merry"}),
            &mut clock(1),
            5,
        );
        document.record_json(
            &json!({"name": "Supper"}),
            &json!({"name": "Feast"}),
            &mut clock(1),
            6,
        );
        assert_eq!(
            document.to_json(),
            json!({"name": "Feast", "mood": "merry"})
        );
    }

    #[test]
    fn paths_are_names_and_ids_in_turn() {
        for good in [
            "name",
            "dishes/A1",
            "dishes/A1/name",
            "dishes/A1/pieces/P1/mass",
        ] {
            assert!(is_path(good), "{good}");
        }
        for bad in [
            "",
            "/",
            "dishes",
            "dishes/A1/pieces",
            "name/A1",
            "dishes//name",
            "dishes/A1/name/x",
            "a b",
        ] {
            assert!(!is_path(bad), "{bad}");
        }
    }
}
