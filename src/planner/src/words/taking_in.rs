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

/// Where something in a file is wrong, in words: the field, and whose it is. Names that are not words of the plan are
/// shown as they stand.
#[must_use]
pub fn place(at: &str) -> String {
    let names = || at.split(['/', '.']).filter(|name| !name.is_empty());
    let owners: Vec<&str> = names().filter_map(owner).collect();
    let last = names().next_back().unwrap_or_default();
    let field = match owner(last) {
        Some(_) => String::new(),
        None if last.is_empty() || is_id(last) => String::new(),
        None => field(last),
    };
    let of = owners
        .iter()
        .rev()
        .copied()
        .filter(|of| !field.ends_with(of));
    let chain: Vec<&str> = Some(field.as_str())
        .filter(|field| !field.is_empty())
        .into_iter()
        .chain(of)
        .collect();
    let whole = if chain.is_empty() {
        "the file".to_owned()
    } else {
        chain.join(" of ")
    };
    super::capital(&whole)
}

/// Things of which a plan has several.
fn owner(name: &str) -> Option<&'static str> {
    Some(match name {
        "dishes" => "a dish",
        "pieces" => "a piece",
        "cookers" => "a cooker",
        "programme" => "a pit temperature",
        "crew" => "a helper",
        "purchases" => "a line of the shopping list",
        "extras" => "a thing of one’s own on the shopping list",
        "steps" => "a step",
        "own_steps" => "a step of one’s own",
        "journal" => "the journal",
        _ => return None,
    })
}

fn field(name: &str) -> String {
    let words = match name {
        "serving" => "the serving time",
        "local" => "the local date and time",
        "zone" => "the time zone",
        "offset_seconds" => "the distance from universal time",
        "guests" => "the guests",
        "grown" => "the number of grown guests",
        "small" => "the number of children",
        "mass" => "the weight",
        "thickness" => "the thickness",
        "food" => "the food",
        "cut" => "the cut",
        "pit" | "set" => "the pit temperature",
        "wrap" => "the wrap",
        "target" => "the target",
        "promise" => "the promise",
        "place" => "the place",
        "altitude" => "the height above the sea",
        "kind" => "the kind",
        "grate" => "the grate",
        "order" => "the place in the order",
        "name" => "the name",
        "document" => "the plan itself",
        other => return format!("“{}”", other.replace('_', " ")),
    };
    words.to_owned()
}

/// Ids are long and mean nothing to a person.
fn is_id(name: &str) -> bool {
    name.len() >= 20 && name.chars().all(|c| c.is_ascii_alphanumeric())
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
    fn a_place_is_said_without_its_ids() {
        let id = "01K6Q3P5ZJ4X0A7B8C9D0E1F2G";
        let at = |path: &str| place(&path.replace("ID", id));
        assert_eq!(at("promise"), "The promise");
        assert_eq!(at("guests/grown"), "The number of grown guests");
        assert_eq!(at("dishes/ID/food"), "The food of a dish");
        assert_eq!(
            at("dishes/ID/pieces/ID/mass"),
            "The weight of a piece of a dish"
        );
        assert_eq!(at("dishes/ID"), "A dish");
        assert_eq!(at("dishes"), "A dish");
        assert_eq!(at("cookers/ID/hot_side"), "“hot side” of a cooker");
        assert_eq!(at(""), "The file");
    }

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
