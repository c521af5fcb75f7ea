//! How much cooked meat the table wants, how much is planned, and what to buy for it.

use super::weights::{Weights, dish_weights};
use crate::meat::CutId;
use crate::plan::outlook::Portions;
use crate::plan::{Appetite, Plan};
use crate::units::Mass;
use serde::{Deserialize, Serialize};

/// What else is on the table.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sides {
    /// Meat is the meal: bread and pickles at most.
    Few,
    /// Two or three sides.
    #[default]
    Some,
    /// A laid table of them.
    Many,
}

/// How hungry the company is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Hunger {
    /// Pickers.
    Light,
    /// As people are.
    #[default]
    Usual,
    /// They dug the allotment all day.
    Hearty,
}

/// A usual appetite to start from: cooked edible meat for each grown and each small eater, all dishes together.
///
/// Common practice: 300 g where meat is the meal, 200 g with some sides, 150 g with many; a quarter less for light
/// eaters, a quarter more for hearty ones; half for children; each further meat on the table adds 5 % because people
/// take some of each, 20 % at most.
#[must_use]
pub fn appetite(sides: Sides, hunger: Hunger, meat_dishes: u32) -> Appetite {
    let plate = match sides {
        Sides::Few => Mass::from_grams(300.0),
        Sides::Some => Mass::from_grams(200.0),
        Sides::Many => Mass::from_grams(150.0),
    };
    let hungry = match hunger {
        Hunger::Light => 0.75,
        Hunger::Usual => 1.0,
        Hunger::Hearty => 1.25,
    };
    let further = f64::from(meat_dishes.saturating_sub(1));
    let grown = plate * (hungry * (1.0 + (0.05 * further).min(0.20)));
    Appetite {
        grown,
        small: grown * 0.5,
        leftovers: Mass::ZERO,
    }
}

/// Wanted by the guests and planned by the pieces, both cooked and on the plate. Dishes of one's own feed nobody here:
/// the appetite counts meat.
#[must_use]
pub fn portions(plan: &Plan) -> Portions {
    Portions {
        wanted: plan.appetite.wanted(plan.guests),
        planned: plan
            .dishes
            .values()
            .filter_map(dish_weights)
            .map(|weights| weights.on_plate)
            .sum(),
    }
}

/// What is missing on the plate; zero where there is enough.
#[must_use]
pub fn short_by(portions: Portions) -> Mass {
    (portions.wanted - portions.planned).max(Mass::ZERO)
}

/// What to buy of a cut so that this much lands on the plate, with the weight that goes on and the check on the plate.
///
/// A share lost is a division: for 2 kg on the plate at a yield of 0.5, 4 kg are bought, not 3.
#[must_use]
pub fn to_buy(cut: CutId, on_plate: Mass) -> Weights {
    Weights::from_plate(cut, on_plate)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Guests;

    #[test]
    fn the_defaults_of_a_plan_are_the_usual_appetite_for_one_meat() {
        assert_eq!(appetite(Sides::Some, Hunger::Usual, 1), Appetite::default());
    }

    #[test]
    fn more_meats_want_more_up_to_a_fifth() {
        let of = |dishes| appetite(Sides::Some, Hunger::Usual, dishes).grown.grams();
        assert_eq!(of(0), of(1));
        assert!((of(3) - 220.0).abs() < 1e-9);
        assert!((of(40) - 240.0).abs() < 1e-9);
    }

    #[test]
    fn buying_divides_by_the_yield() {
        let wanted = Appetite::default().wanted(Guests::of(10, 0));
        let buy = to_buy(CutId::PorkShoulderButt, wanted);
        // 2 kg on the plate / 0.578 (USDA SR28, 10083) / 0.95 left by the knife.
        assert!((buy.bought.kilograms() - 3.642).abs() < 1e-3);
        assert!((buy.on_plate - wanted).kilograms().abs() < 1e-12);
    }
}
