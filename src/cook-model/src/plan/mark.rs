//! The letter and the hue by which a dish is known on every picture.

use super::{Plan, in_order};
use crate::handover::identity::DishId;
use std::collections::BTreeSet;

/// Hues on marks; they repeat after these.
const HUES: u8 = 5;

/// How a dish is marked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mark {
    /// Which dish.
    pub dish: DishId,
    /// Its letter, unique among the first 26 dishes.
    pub letter: char,
    /// Its hue, 1 to 5.
    pub hue: u8,
}

/// The marks of all dishes in the person's order. A dish is marked with the first letter of its name that is not taken
/// yet, or else with the first free one of the alphabet.
#[must_use]
pub fn marks(plan: &Plan) -> Vec<Mark> {
    let mut taken = BTreeSet::new();
    let dishes = in_order(&plan.dishes, |dish| &dish.order);
    let mark = |(place, (id, dish)): (usize, (DishId, &super::Dish))| {
        let own = dish
            .name
            .chars()
            .filter(char::is_ascii_alphabetic)
            .map(|letter| letter.to_ascii_uppercase());
        let letter = own
            .chain('A'..='Z')
            .find(|letter| !taken.contains(letter))
            .unwrap_or('Z');
        taken.insert(letter);
        #[expect(clippy::cast_possible_truncation, reason = "below the number of hues")]
        let hue = (place % usize::from(HUES)) as u8 + 1;
        Mark {
            dish: id,
            letter,
            hue,
        }
    };
    dishes.into_iter().enumerate().map(mark).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{Dish, Order, Serving};

    fn plan(names: &[&str]) -> Plan {
        let mut plan = Plan::new(Serving {
            local: "2026-09-12T18:00:00".parse().expect("a date and time"),
            zone: "UTC".to_owned(),
            offset_seconds: 0,
        });
        let mut order = Order::default();
        for (number, name) in (0..).zip(names) {
            let food = serde_json::json!({"is": "cut", "cut": "lamb-shoulder"});
            let json = serde_json::json!({"name": name, "food": food});
            let mut dish: Dish = serde_json::from_value(json).expect("a dish");
            order = Order::between(Some(&order), None);
            dish.order = order.clone();
            plan.dishes.insert(DishId::new(100 - number, 1), dish);
        }
        plan
    }

    fn letters(names: &[&str]) -> String {
        marks(&plan(names)).iter().map(|mark| mark.letter).collect()
    }

    #[test]
    fn the_first_free_letter_of_the_name_in_the_person_s_order() {
        assert_eq!(letters(&["Pork", "Lamb", "Sausages", "Corn"]), "PLSC");
        assert_eq!(letters(&["Pork", "Poussin", "pp", "", "Крупа"]), "POABC");
    }

    #[test]
    fn letters_are_unique_and_hues_repeat_after_five() {
        let names = ["Pork"; 26];
        let all = letters(&names);
        let different: BTreeSet<char> = all.chars().collect();
        assert_eq!(different.len(), 26);
        let hues: Vec<u8> = marks(&plan(&names)).iter().map(|mark| mark.hue).collect();
        assert_eq!(&hues[..7], [1, 2, 3, 4, 5, 1, 2]);
    }
}
