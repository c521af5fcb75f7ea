//! Whole pieces only: nobody sells half a shoulder.

use super::counting::whole;
use super::weights::Weights;
use crate::meat::CutId;
use crate::units::Mass;
use serde::{Deserialize, Serialize};

/// So many pieces of a size.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lot {
    /// How many.
    pub count: u32,
    /// Weight of one as bought.
    pub each: Mass,
}

/// Pieces that feed the table.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Choice {
    /// What to buy, largest size first.
    pub lots: Vec<Lot>,
    /// All of it along its way.
    pub weights: Weights,
    /// On the plate beyond what is wanted.
    pub over: Mass,
}

/// Most pieces of one dish that are reckoned with.
const MOST_PIECES: u32 = 200;

impl Choice {
    fn of(cut: CutId, wanted: Mass, lots: Vec<Lot>) -> Self {
        let weights: Weights = lots
            .iter()
            .map(|lot| Weights::from_bought(cut, lot.each) * f64::from(lot.count))
            .sum();
        Self {
            over: weights.on_plate - wanted,
            lots,
            weights,
        }
    }
}

/// Equal pieces within the usual range of the cut that together put `on_plate` on the plate: the fewest, then one more
/// and two more of them, smaller. Where even the smallest usual piece is more than is wanted, that one.
#[must_use]
pub fn equal_pieces(cut: CutId, on_plate: Mass) -> Vec<Choice> {
    if on_plate <= Mass::ZERO {
        return Vec::new();
    }
    let (smallest, largest) = cut.cut().usual_mass;
    let bought = Weights::from_plate(cut, on_plate).bought;
    let fewest = whole(bought / largest).max(1);
    (fewest..=fewest.saturating_add(2).min(MOST_PIECES))
        .filter_map(|count| {
            let each = (bought / f64::from(count)).max(smallest);
            let too_small = count > fewest && bought / f64::from(count) < smallest;
            (!too_small).then(|| Choice::of(cut, on_plate, vec![Lot { count, each }]))
        })
        .collect()
}

/// From the sizes that a shop has (at most six are looked at): the whole pieces that put at least `on_plate` on the
/// plate with the least over, then with the fewest pieces. None where no size has a weight, or nothing is wanted.
#[must_use]
pub fn from_sizes(cut: CutId, on_plate: Mass, sizes: &[Mass]) -> Option<Choice> {
    let mut sizes: Vec<Mass> = sizes
        .iter()
        .copied()
        .filter(|size| *size > Mass::ZERO && size.kilograms().is_finite())
        .take(6)
        .collect();
    sizes.sort_by(|a, b| b.kilograms().total_cmp(&a.kilograms()));
    sizes.dedup();
    let wanted = Weights::from_plate(cut, on_plate).bought;
    if sizes.is_empty() || wanted <= Mass::ZERO {
        return None;
    }
    let mut best: Option<(Mass, u32, Vec<u32>)> = None;
    let mut counts = vec![0; sizes.len()];
    search(&sizes, wanted, 0, &mut counts, &mut best, &mut 20_000);
    let (_, _, counts) = best?;
    let lots = sizes
        .iter()
        .zip(counts)
        .filter(|(_, count)| *count > 0)
        .map(|(each, count)| Lot { count, each: *each })
        .collect();
    Some(Choice::of(cut, on_plate, lots))
}

/// Tries counts of the sizes from the largest down, each from as many as would do alone to none; what is left falls to
/// the smallest. Stops when `tries` are used up: the first answer, mostly of large pieces, stands by then.
fn search(
    sizes: &[Mass],
    left: Mass,
    at: usize,
    counts: &mut Vec<u32>,
    best: &mut Option<(Mass, u32, Vec<u32>)>,
    tries: &mut u32,
) {
    let Some(size) = sizes.get(at) else { return };
    let enough = whole((left / *size).max(0.0)).min(MOST_PIECES);
    let last = at + 1 == sizes.len();
    let from = if last { enough } else { 0 };
    for count in (from..=enough).rev() {
        if *tries == 0 {
            return;
        }
        *tries -= 1;
        counts[at] = count;
        let over = *size * f64::from(count) - left;
        // A weight told in pounds and back must not ask for one piece more.
        if over.kilograms() >= -1e-9 {
            let pieces: u32 = counts.iter().sum();
            let better = best.as_ref().is_none_or(|(least, fewest, _)| {
                over.kilograms() < least.kilograms() - 1e-9
                    || (over.kilograms() < least.kilograms() + 1e-9 && pieces < *fewest)
            });
            if better {
                *best = Some((over, pieces, counts.clone()));
            }
        } else {
            search(
                sizes,
                left - *size * f64::from(count),
                at + 1,
                counts,
                best,
                tries,
            );
        }
        counts[at] = 0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BUTT: CutId = CutId::PorkShoulderButt;

    fn plate(bought: f64) -> Mass {
        Weights::from_bought(BUTT, Mass::from_kilograms(bought)).on_plate
    }

    #[test]
    fn the_fewest_equal_pieces_come_first() {
        let choices = equal_pieces(BUTT, plate(7.6));
        assert_eq!(choices[0].lots[0].count, 2);
        assert!((choices[0].lots[0].each.kilograms() - 3.8).abs() < 1e-9);
        assert_eq!(choices[1].lots[0].count, 3);
    }

    #[test]
    fn a_small_table_still_buys_a_whole_piece() {
        let choices = equal_pieces(BUTT, plate(0.5));
        assert_eq!(choices.len(), 1);
        assert_eq!(choices[0].lots[0].each, BUTT.cut().usual_mass.0);
        assert!(choices[0].over > Mass::ZERO);
    }

    #[test]
    fn the_shop_has_these_sizes() {
        let sizes = [2.4, 3.1, 4.4].map(Mass::from_kilograms);
        let choice = from_sizes(BUTT, plate(7.4), &sizes).expect("a choice");
        // 4.4 + 3.1 = 7.5; three of 2.4 are 7.2, too little.
        assert_eq!(choice.lots.len(), 2);
        assert!((choice.weights.bought.kilograms() - 7.5).abs() < 1e-9);
        assert!(from_sizes(BUTT, plate(7.4), &[]).is_none());
    }
}
