//! What is said beside fields.

/// The key that makes a number smaller.
#[must_use]
pub fn less(what: &str) -> String {
    format!("{what}: less")
}

/// The key that makes a number larger.
#[must_use]
pub fn more(what: &str) -> String {
    format!("{what}: more")
}

/// Text where a number is wanted.
#[must_use]
pub fn not_a_number(text: &str) -> String {
    let text = text.trim();
    if text.is_empty() {
        "A number is wanted here; the last one still counts.".to_owned()
    } else {
        format!(
            "“{text}” is not a number. Write it in figures, like 3.8; until then the last one counts."
        )
    }
}
