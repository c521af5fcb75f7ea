//! Thawing: how long it takes in the fridge and in cold water, and how long it keeps.

use crate::meat::{CutId, Kind, Make};
use crate::units::{Mass, TimeSpan};

/// The shortest and the longest time that the published rates give.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
pub struct ThawSpan {
    /// Shortest.
    pub least: TimeSpan,
    /// Longest: plan with this.
    pub most: TimeSpan,
}

const DAY: TimeSpan = TimeSpan::from_hours(24.0);

/// Rows for whole birds: up to so many pounds, days in the fridge and hours in cold water, shortest and longest.
///
/// Source: USDA FSIS, The Big Thaw, rows for whole turkeys of 4 to 24 lb.
const WHOLE_BIRDS: [(f64, [f64; 2], [f64; 2]); 4] = [
    (12.0, [1.0, 3.0], [2.0, 6.0]),
    (16.0, [3.0, 4.0], [6.0, 8.0]),
    (20.0, [4.0, 5.0], [8.0, 10.0]),
    (24.0, [5.0, 6.0], [10.0, 12.0]),
];

const fn is_whole_bird(cut: CutId) -> bool {
    matches!(cut, CutId::TurkeyWhole | CutId::ChickenWhole)
}

fn bird_row(cut: CutId, mass: Mass) -> Option<&'static (f64, [f64; 2], [f64; 2])> {
    let pounds = mass.pounds();
    WHOLE_BIRDS
        .iter()
        .find(|row| is_whole_bird(cut) && pounds >= 4.0 && pounds <= row.0)
}

/// Thawing in a fridge at 4 °C or below. Whole birds of 4 to 24 lb by the printed rows, everything else a day for every
/// 4 to 5 lb (1.8 to 2.3 kg), and a day at least.
///
/// Source: USDA FSIS, The Big Thaw, read at extension.illinois.edu/meat-safety/thawing.
#[must_use]
pub fn thaw_in_fridge(cut: CutId, mass: Mass) -> ThawSpan {
    if let Some((_, [least, most], _)) = bird_row(cut, mass) {
        return ThawSpan {
            least: DAY * *least,
            most: DAY * *most,
        };
    }
    let pounds = mass.pounds();
    ThawSpan {
        least: (DAY * (pounds / 5.0)).max(DAY),
        most: (DAY * (pounds / 4.0)).max(DAY),
    }
}

/// Thawing under cold water that is changed every 30 min, wrapped so that it leaks neither way; then it is cooked at
/// once. Whole birds of 4 to 24 lb by the printed rows; else 30 min a pound (66 min/kg), at least the time printed for
/// small packs: up to 1 h at 1 lb, 2 to 3 h at 3 to 4 lb.
///
/// Source: USDA FSIS, The Big Thaw, read at extension.illinois.edu/meat-safety/thawing.
#[must_use]
pub fn thaw_in_cold_water(cut: CutId, mass: Mass) -> ThawSpan {
    if let Some((_, _, [least, most])) = bird_row(cut, mass) {
        return ThawSpan {
            least: TimeSpan::from_hours(*least),
            most: TimeSpan::from_hours(*most),
        };
    }
    let pounds = mass.pounds();
    let rate = TimeSpan::from_minutes(30.0) * pounds;
    let small_packs = if pounds <= 1.0 {
        TimeSpan::from_hours(1.0)
    } else {
        TimeSpan::from_hours((1.0 + (pounds - 1.0) * (2.0 / 3.0)).min(3.0))
    };
    ThawSpan {
        least: rate,
        most: rate.max(small_packs),
    }
}

/// How long raw meat keeps in the fridge from the day it was bought: the shortest and the longest that is printed.
///
/// Source: FoodSafety.gov, cold food storage chart; fish from memory (1 to 2 days).
#[must_use]
pub const fn keeps_raw(make: Make) -> ThawSpan {
    let (least, most) = match make {
        Make::WholeMuscle => (3.0, 5.0),
        Make::Ground | Make::Poultry | Make::Fish => (1.0, 2.0),
    };
    ThawSpan {
        least: TimeSpan::from_hours(24.0 * least),
        most: TimeSpan::from_hours(24.0 * most),
    }
}

/// How long a piece that thawed in the fridge keeps there before it is cooked.
///
/// Source: USDA FSIS, The Big Thaw: red meat 3 to 5 days, poultry and ground meat 1 to 2; fish from memory as poultry.
#[must_use]
pub const fn keeps_thawed(kind: Kind, make: Make) -> ThawSpan {
    match (kind, make) {
        (Kind::Beef | Kind::Pork | Kind::Lamb, Make::WholeMuscle) => keeps_raw(Make::WholeMuscle),
        _ => keeps_raw(Make::Poultry),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_big_piece_thaws_a_day_for_four_to_five_pounds() {
        let packer = thaw_in_fridge(CutId::BeefPackerBrisket, Mass::from_pounds(13.0));
        assert!((packer.least.hours() - 62.4).abs() < 1e-9);
        assert!((packer.most.hours() - 78.0).abs() < 1e-9);
        let water = thaw_in_cold_water(CutId::BeefPackerBrisket, Mass::from_pounds(13.0));
        assert!((water.most.hours() - 6.5).abs() < 1e-9);
    }

    #[test]
    fn whole_birds_go_by_the_printed_rows_at_both_sides_of_each_step() {
        let cases = [
            (4.0, 3.0, 6.0),
            (12.0, 3.0, 6.0),
            (12.01, 4.0, 8.0),
            (16.0, 4.0, 8.0),
            (16.01, 5.0, 10.0),
            (20.0, 5.0, 10.0),
            (20.01, 6.0, 12.0),
            (24.0, 6.0, 12.0),
        ];
        for (pounds, days, hours) in cases {
            let mass = Mass::from_pounds(pounds);
            assert_eq!(
                thaw_in_fridge(CutId::TurkeyWhole, mass).most.hours(),
                24.0 * days,
                "{pounds} lb"
            );
            assert_eq!(
                thaw_in_cold_water(CutId::TurkeyWhole, mass).most.hours(),
                hours,
                "{pounds} lb"
            );
        }
    }

    #[test]
    fn small_packs_by_their_own_words() {
        let one = thaw_in_cold_water(CutId::SausageLinks, Mass::from_pounds(1.0));
        assert_eq!(one.most.hours(), 1.0);
        let four = thaw_in_cold_water(CutId::BeefChuckRoast, Mass::from_pounds(4.0));
        assert_eq!((four.least.hours(), four.most.hours()), (2.0, 3.0));
    }

    #[test]
    fn heavier_never_thaws_faster() {
        for cut in CutId::ALL {
            for (fridge, pounds) in [(true, 0.5), (false, 0.5)] {
                let mut before = TimeSpan::ZERO;
                for step in 0..300 {
                    let mass = Mass::from_pounds(pounds + f64::from(step) * 0.1);
                    let span = if fridge {
                        thaw_in_fridge(*cut, mass)
                    } else {
                        thaw_in_cold_water(*cut, mass)
                    };
                    assert!(
                        span.most >= before && span.least <= span.most,
                        "{cut} {}",
                        mass.pounds()
                    );
                    before = span.most;
                }
            }
        }
    }
}
