//! Everything the app says, one module a subject, in short plain English. Functions take the figures that the words
//! need and the person's formats; no sentence is put together anywhere else.
//!
//! Habits: the fact first, what to do second. Odds as counts. Never plainly “safe”: “looks safe on what you told me”.

pub mod cookers;
pub mod crash;
pub mod dish_form;
pub mod dishes;
pub mod edits;
pub mod fields;
pub mod findings;
pub mod fireside;
pub mod footing;
pub mod gathering;
pub mod habits;
pub mod held;
pub mod hindrances;
pub mod in_doubt;
pub mod journal;
pub mod keeping;
pub mod moves;
pub mod plans;
pub mod reasons;
pub mod run_sheet;
pub mod safety;
pub mod saving;
pub mod screens;
pub mod shopping;
pub mod steps;
pub mod swap;
pub mod taking_in;
pub mod times;

/// A fact, and what it means or what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// The fact.
    pub head: String,
    /// What it means, what to do.
    pub note: String,
}

impl Told {
    /// From both.
    pub fn new(head: impl Into<String>, note: impl Into<String>) -> Self {
        Self {
            head: head.into(),
            note: note.into(),
        }
    }
}

/// `one dish`, `four dishes`: small numbers in words.
#[must_use]
pub fn count(number: usize, one: &str, many: &str) -> String {
    const WORDS: [&str; 13] = [
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
        "eleven", "twelve",
    ];
    let noun = if number == 1 { one } else { many };
    match WORDS.get(number) {
        Some(word) => format!("{word} {noun}"),
        None => format!("{number} {noun}"),
    }
}

/// The same, at the start of a sentence.
#[must_use]
pub fn count_at_start(number: usize, one: &str, many: &str) -> String {
    capital(&count(number, one, many))
}

/// With its first letter large.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// `Joss`, `Joss and Mirela`, `Joss, Mirela and Tam`.
#[must_use]
pub fn list<T: AsRef<str>>(names: &[T]) -> String {
    match names {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [first @ .., last] => {
            let first: Vec<&str> = first.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", first.join(", "), last.as_ref())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_numbers_are_words() {
        assert_eq!(count(1, "dish", "dishes"), "one dish");
        assert_eq!(count_at_start(4, "dish", "dishes"), "Four dishes");
        assert_eq!(count(0, "dish", "dishes"), "no dishes");
        assert_eq!(count(18, "link", "links"), "18 links");
    }

    #[test]
    fn names_are_joined_as_they_are_spoken() {
        assert_eq!(list::<&str>(&[]), "");
        assert_eq!(list(&["Joss"]), "Joss");
        assert_eq!(list(&["Joss", "Mirela", "Tam"]), "Joss, Mirela and Tam");
    }
}
