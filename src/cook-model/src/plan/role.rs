//! Who owns the chance in a plan: cookers and pieces by the part they play, never by their ids.
//!
//! Ids are made at random, so draws that followed them would give two people who type in the same plan two answers. A
//! cooker is known by its place among the cookers; a piece by its cut and its place among the pieces of that cut, so
//! that adding, moving or taking out a dish of another cut leaves its draws alone.

use super::{Dish, Food, Plan, in_order};
use crate::forecast::{OwnerKey, Owners};
use crate::handover::identity::{CookerId, DishId, PieceId};
use std::collections::BTreeMap;

/// The owners of all draws of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Roles {
    cookers: BTreeMap<CookerId, OwnerKey>,
    pieces: BTreeMap<(DishId, PieceId), OwnerKey>,
    own: BTreeMap<DishId, OwnerKey>,
}

impl Roles {
    /// The roles of everything in a plan.
    pub(super) fn of(plan: &Plan) -> Self {
        let mut roles = Self::default();
        let cookers = in_order(&plan.cookers, |cooker| &cooker.order);
        for (place, (id, _)) in cookers.into_iter().enumerate() {
            roles.cookers.insert(id, nth("cooker", place));
        }
        let mut places = BTreeMap::new();
        for (id, dish) in in_order(&plan.dishes, |dish| &dish.order) {
            roles.add(id, dish, &mut places);
        }
        roles
    }

    /// Counts a dish and its pieces in. `places` holds how many there are of each cut so far.
    fn add<'a>(&mut self, id: DishId, dish: &'a Dish, places: &mut BTreeMap<&'a str, usize>) {
        match &dish.food {
            Food::Cut { cut } => {
                for (piece, _) in in_order(&dish.pieces, |piece| &piece.order) {
                    let place = places.entry(cut).or_default();
                    self.pieces.insert((id, piece), nth(cut, *place));
                    *place += 1;
                }
            }
            Food::Own { .. } => {
                // No cut is called so: slugs have no blanks.
                let place = places.entry("own dish").or_default();
                self.own.insert(id, nth("own dish", *place));
                *place += 1;
            }
        }
    }

    /// The owners of a piece's draws. None for a cooker or a piece that is not in the plan.
    pub(super) fn owners(&self, cooker: CookerId, dish: DishId, piece: PieceId) -> Option<Owners> {
        Some(Owners {
            cooker: *self.cookers.get(&cooker)?,
            piece: *self.pieces.get(&(dish, piece))?,
        })
    }

    /// The owner of the minutes of a dish of one's own. None for another dish.
    pub(super) fn own(&self, dish: DishId) -> Option<OwnerKey> {
        self.own.get(&dish).copied()
    }
}

fn nth(role: &str, place: usize) -> OwnerKey {
    OwnerKey::from_text(&format!("{role} {place}"))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::{CookerKind, derive};
    use super::*;
    use crate::plan::{demo, outlook::Outlook};

    fn owners(sample: &Sample, dish: DishId) -> Owners {
        let of = &sample.plan.dishes[&dish];
        let piece = *of.pieces.keys().next().expect("a piece");
        let cooker = of.cooker.expect("a cooker");
        Roles::of(&sample.plan)
            .owners(cooker, dish, piece)
            .expect("both are in the plan")
    }

    #[test]
    fn a_dish_of_another_cut_moves_no_draws() {
        let mut sample = Sample::new();
        let drum = sample.cooker(CookerKind::Drum);
        let butt = sample.dish("pork-shoulder-butt", 3.0, drum);
        let alone = owners(&sample, butt);
        let ribs = sample.dish("pork-back-ribs", 1.0, drum);
        let second = sample.dish("pork-shoulder-butt", 3.0, drum);
        assert_eq!(owners(&sample, butt), alone);
        assert_eq!(owners(&sample, ribs).cooker, alone.cooker);
        assert_ne!(owners(&sample, ribs).piece, alone.piece);
        assert_ne!(owners(&sample, second).piece, alone.piece);
        sample.plan.dishes.remove(&ribs);
        assert_ne!(owners(&sample, second).piece, alone.piece);
        assert_eq!(owners(&sample, butt), alone);
        let kettle = sample.cooker(CookerKind::Kettle);
        sample.dish_mut(butt).cooker = Some(kettle);
        assert_eq!(owners(&sample, butt).piece, alone.piece);
        assert_ne!(owners(&sample, butt).cooker, alone.cooker);
    }

    /// The sample plan as a device with these random bits would make it, without its ids.
    fn told_by(bits: u128) -> (Vec<String>, Vec<String>) {
        let mut sample = Sample::new();
        let mut next = bits;
        sample.plan = demo(sample.plan.serving, || {
            // An odd multiplier (from memory), so that ids fall in another order each time.
            next = next.wrapping_mul(0xda94_2042_e4dd_58b5).wrapping_add(1);
            (1, next >> 48)
        });
        let Outlook { dishes, steps, .. } = derive(&sample.plan, &sample.situation, 8);
        let letters: Vec<_> = dishes.iter().map(|dish| (dish.dish, dish.letter)).collect();
        let times = dishes
            .into_iter()
            .map(|dish| format!("{:?}", dish.forecast));
        let steps = steps.into_iter().map(|step| {
            let letter = letters.iter().find(|(dish, _)| Some(*dish) == step.dish);
            format!(
                "{:?} {:?} {:?}",
                step.kind,
                letter.map(|(_, l)| l),
                step.when
            )
        });
        let mut steps: Vec<_> = steps.collect();
        steps.sort_unstable();
        (times.collect(), steps)
    }

    #[test]
    fn two_devices_say_the_same_of_the_same_plan() {
        let here = told_by(7);
        for bits in [11, 1 << 70, u128::MAX / 3] {
            assert_eq!(told_by(bits), here);
        }
    }
}
