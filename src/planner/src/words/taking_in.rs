//! What became of a file that was taken in.

use super::Told;
use super::screens::plan_name;
use crate::store::TakenIn;
use cook_model::handover::Refusal;

/// Where something in a file is wrong, and how many places are shown.
pub const MOST_PLACES: usize = 20;

/// A plan came in.
#[must_use]
pub fn taken(taken: &TakenIn, name: &str) -> Told {
    let name = plan_name(name);
    match taken {
        TakenIn::New(_) => Told::new(
            format!("{name} is here now"),
            "It is kept on this device and open.",
        ),
        TakenIn::Merged(_) => Told::new(
            format!("{name} is up to date"),
            "It was here already. What was changed later on either side stands.",
        ),
        TakenIn::NothingNew(_) => Told::new(
            format!("{name} was here already"),
            "The file holds nothing later than what is here.",
        ),
    }
}

/// A file was not taken in.
pub const REFUSED: &str = "This file was not taken in";

/// Why, and what to do.
#[must_use]
pub fn refusal(refusal: &Refusal) -> String {
    match refusal {
        Refusal::TooLarge { bytes, most } => format!(
            "It has {} MB; a plan has at most {}. Choose the file that Longcook wrote.",
            megabytes(*bytes),
            megabytes(*most)
        ),
        Refusal::Wrong(places) if places.len() == 1 => {
            "One thing in it cannot be read. Nothing here was changed. Ask whoever sent it to hand it on again.".to_owned()
        }
        Refusal::Wrong(places) => format!(
            "{} things in it cannot be read. Nothing here was changed. Ask whoever sent it to hand it on again.",
            places.len()
        ),
        other => super::capital(&other.to_string()),
    }
}

fn megabytes(bytes: usize) -> String {
    #[expect(
        clippy::cast_precision_loss,
        reason = "a file's size, shown to a tenth"
    )]
    let megabytes = bytes as f64 / 1e6;
    crate::format::number(megabytes, 1)
}

/// More places than are shown.
#[must_use]
pub fn and_more(number: usize) -> String {
    format!("and {number} more")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_refusal_says_what_to_do() {
        let refusals = [
            Refusal::TooLarge {
                bytes: 50_000_000,
                most: 4_000_000,
            },
            Refusal::NotJson { line: 1, column: 1 },
            Refusal::AnotherFormat,
            Refusal::Newer { found: 9, known: 1 },
            Refusal::Wrong(vec![]),
        ];
        for one in refusals {
            let said = refusal(&one);
            let ways = ["Choose", "Ask", "ask", "Update"];
            assert!(ways.iter().any(|way| said.contains(way)), "{said}");
        }
    }
}
