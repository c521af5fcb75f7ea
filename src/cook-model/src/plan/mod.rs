//! A plan: what is intended. Everything shown about it is worked out anew from these values.

mod arrangement;
mod check;
mod cooker;
mod crew;
mod currency;
mod day;
mod demo;
mod derive;
mod dish;
mod ensemble;
mod findings;
mod foreseen;
mod gathering;
mod hands;
mod mark;
mod member;
mod method;
pub mod outlook;
mod programme;
mod progress;
mod put_on;
pub mod range;
mod role;
#[cfg(test)]
mod sample;
mod scenario;
mod sheet;
mod situation;
mod step_key;
mod steps;
mod table;
mod trial;
mod up;
mod window;

pub use arrangement::{Kitchen, OwnStep, OwnStepPlace, OwnWhen, StepWish};
pub use check::{Problem, Trouble, check};
pub use cooker::{Cooker, CookerKind, PitStep, PitWhen, Rack};
pub use crew::{CrewMember, QuietHours};
pub use currency::{Currency, NotACurrency};
pub use demo::demo;
pub use derive::{Planner, SEED, derive, levers, pulls};
pub use dish::{
    BasisOfWeight, Cover, Dish, Food, HoldPlace, Intact, OwnPlace, Piece, SaltAhead, Spray,
    Thawing, Wrap, WrapWhen,
};
pub use gathering::{Appetite, Audience, Guests, Place, Serving, Zone, ZoneChange};
pub use mark::{Mark, marks};
pub use progress::Progress;
pub use situation::Situation;
pub use step_key::{NotAStep, StepKey, StepOf};
pub use trial::{Start, Trial};

use crate::handover::identity::{CookerId, CrewId, DishId, ExtraId, OwnStepId};
use crate::provisions::shopping::{Extra, Item, Purchase, Supplies};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A gathering with everything that is planned for it. Stored in SI units; ids are keys, order is a field.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Plan {
    /// What the person calls it.
    #[serde(default)]
    pub name: String,
    /// When the table is served.
    pub serving: Serving,
    /// Who comes.
    #[serde(default)]
    pub guests: Guests,
    /// How much they eat.
    #[serde(default)]
    pub appetite: Appetite,
    /// Where it happens and in what weather.
    #[serde(default)]
    pub place: Place,
    /// Each dish is to be table-ready by serving with at least this probability, 0.5 to 0.99.
    #[serde(default = "nine_in_ten")]
    pub promise: f64,
    /// Whether the food is served to the public.
    #[serde(default)]
    pub audience: Audience,
    /// Who lends a hand.
    #[serde(default)]
    pub crew: BTreeMap<CrewId, CrewMember>,
    /// What it is cooked on.
    #[serde(default)]
    pub cookers: BTreeMap<CookerId, Cooker>,
    /// What is cooked.
    #[serde(default)]
    pub dishes: BTreeMap<DishId, Dish>,
    /// What the person says about lines of the shopping list that were worked out.
    #[serde(default)]
    pub purchases: BTreeMap<Item, Purchase>,
    /// Things of one's own on the shopping list.
    #[serde(default)]
    pub extras: BTreeMap<ExtraId, Extra>,
    /// How this kitchen uses salt, rub, paper, foil and spray.
    #[serde(default)]
    pub supplies: Supplies,
    /// The currency of every price in the plan. None: nobody has said yet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub currency: Option<Currency>,
    /// Room in the kitchen.
    #[serde(default)]
    pub kitchen: Kitchen,
    /// What the person wishes of steps.
    #[serde(default)]
    pub steps: BTreeMap<StepKey, StepWish>,
    /// Steps that the person added.
    #[serde(default)]
    pub own_steps: BTreeMap<OwnStepId, OwnStep>,
}

const fn nine_in_ten() -> f64 {
    0.9
}

impl Plan {
    /// A plan with a serving time and nothing else.
    #[must_use]
    pub fn new(serving: Serving) -> Self {
        Self {
            name: String::new(),
            serving,
            guests: Guests::default(),
            appetite: Appetite::default(),
            place: Place::default(),
            promise: nine_in_ten(),
            audience: Audience::default(),
            crew: BTreeMap::new(),
            cookers: BTreeMap::new(),
            dishes: BTreeMap::new(),
            purchases: BTreeMap::new(),
            extras: BTreeMap::new(),
            supplies: Supplies::default(),
            currency: None,
            kitchen: Kitchen::default(),
            steps: BTreeMap::new(),
            own_steps: BTreeMap::new(),
        }
    }

    /// The plan without its shopping: all that the forecast rests on. Ticks and prices ask for no new one.
    #[must_use]
    pub fn without_shopping(&self) -> Self {
        Self {
            purchases: BTreeMap::new(),
            extras: BTreeMap::new(),
            supplies: Supplies::default(),
            currency: None,
            ..self.clone()
        }
    }
}

/// Things in the order that the person gave them; equal keys go by id.
pub fn in_order<Id: Ord + Copy, T>(
    things: &BTreeMap<Id, T>,
    order: impl Fn(&T) -> &Order,
) -> Vec<(Id, &T)> {
    let mut sorted: Vec<(Id, &T)> = things.iter().map(|(id, thing)| (*id, thing)).collect();
    sorted.sort_by(|(_, a), (_, b)| order(a).cmp(order(b)));
    sorted
}

/// A place in an order that can always be split: a fractional key.
#[derive(
    Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(transparent)]
pub struct Order(#[schemars(with = "String")] fractional_index::FractionalIndex);

impl Order {
    /// A place between two others; nothing on a side means at that end. Where the two are out of order, or equal, the
    /// place is behind the first.
    #[must_use]
    pub fn between(before: Option<&Self>, after: Option<&Self>) -> Self {
        use fractional_index::FractionalIndex;
        let key = match (before, after) {
            (None, None) => FractionalIndex::default(),
            (None, Some(after)) => FractionalIndex::new_before(&after.0),
            (Some(before), None) => FractionalIndex::new_after(&before.0),
            (Some(before), Some(after)) => FractionalIndex::new_between(&before.0, &after.0)
                .unwrap_or_else(|| FractionalIndex::new_after(&before.0)),
        };
        Self(key)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_is_always_room_between() {
        let first = Order::between(None, None);
        let last = Order::between(Some(&first), None);
        let mut low = first;
        for _ in 0..100 {
            let middle = Order::between(Some(&low), Some(&last));
            assert!(low < middle && middle < last);
            low = middle;
        }
    }
}
