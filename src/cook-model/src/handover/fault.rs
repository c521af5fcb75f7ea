//! What is wrong with a field, said so that whoever made the file can mend it.

/// Puts what the reader of JSON says into plain words: what stands there and what belongs there. Says the reader's own
/// words where it knows no better.
pub(super) fn because(said: &str) -> String {
    let said = said.split(" at line ").next().unwrap_or(said);
    let wrong = ["invalid type: ", "invalid value: ", "invalid length "];
    let wrong = wrong.iter().find_map(|kind| said.strip_prefix(kind));
    if let Some((found, wanted)) = wrong.and_then(|rest| rest.split_once(", expected ")) {
        return format!("It holds {}; {} belongs here.", stands(found), kind(wanted));
    }
    if let Some(name) = said.strip_prefix("missing field ") {
        return format!("Its “{}” is missing.", bare(name));
    }
    if let Some((found, known)) = said
        .strip_prefix("unknown variant ")
        .and_then(|rest| rest.split_once(", expected "))
    {
        let known = known.strip_prefix("one of ").unwrap_or(known);
        let known = known.replace('`', "");
        return format!("It holds “{}”, which is none of: {known}.", bare(found));
    }
    format!("It cannot be read: {said}.")
}

fn bare(name: &str) -> &str {
    name.trim_matches(['`', '"'])
}

/// What was found.
fn stands(found: &str) -> String {
    if let Some(text) = found.strip_prefix("string ") {
        return format!("the text “{}”", bare(text));
    }
    for number in ["integer ", "floating point "] {
        if let Some(number) = found.strip_prefix(number) {
            return format!("the number {}", bare(number));
        }
    }
    match found {
        "null" | "unit value" => "nothing".to_owned(),
        "map" => "a group of fields".to_owned(),
        "sequence" => "a list".to_owned(),
        other => other.replace("boolean", "the answer").replace('`', ""),
    }
}

/// What belongs there.
fn kind(wanted: &str) -> String {
    let plain = match wanted {
        "f64" | "f32" => "a number",
        "u8" | "u16" | "u32" | "u64" | "u128" | "usize" => "a whole number, 0 or more,",
        "i8" | "i16" | "i32" | "i64" | "i128" | "isize" => "a whole number",
        "a string" | "a borrowed string" | "string" | "str" => "a text",
        "a boolean" => "true or false",
        "a map" => "a group of fields",
        "a sequence" => "a list",
        other if other.starts_with("struct ") || other.contains("enum ") => "a group of fields",
        other if other.starts_with("tuple ") || other.starts_with("an array") => "a list",
        other => other,
    };
    plain.to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Plan;
    use serde_json::json;

    /// What is said of a plan with this in it.
    fn said(field: &str, value: serde_json::Value) -> String {
        let serving = json!({
            "local": "2026-09-12T18:00:00", "zone": "Europe/London", "offset_seconds": 3600
        });
        let mut plan = json!({ "serving": serving });
        plan[field] = value;
        let error = serde_json::from_value::<Plan>(plan).expect_err("a fault");
        because(&error.to_string())
    }

    #[test]
    fn every_fault_says_what_stands_there_and_what_belongs_there() {
        let guests = said("guests", json!({"grown": -3, "small": 0}));
        assert_eq!(
            guests,
            "It holds the number -3; a whole number, 0 or more, belongs here."
        );
        let promise = said("promise", json!("high"));
        assert_eq!(promise, "It holds the text “high”; a number belongs here.");
        let name = said("name", json!(["a"]));
        assert_eq!(name, "It holds a list; a text belongs here.");
        let audience = said("audience", json!("huge"));
        assert!(
            audience.starts_with("It holds “huge”, which is none of: "),
            "{audience}"
        );
        let serving = said("serving", json!({"zone": "UTC", "offset_seconds": 0}));
        assert_eq!(serving, "Its “local” is missing.");
    }

    #[test]
    fn an_unknown_fault_keeps_its_words() {
        assert_eq!(because("odd"), "It cannot be read: odd.");
        assert_eq!(because("odd at line 3 column 4"), "It cannot be read: odd.");
    }
}
