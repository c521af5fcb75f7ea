//! The least temperature at the coldest point.

use super::RuleId;
use crate::meat::Make;
use crate::plan::Intact;
use crate::units::{Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// What safety needs to know of a piece: what it is and what was done to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sort {
    /// Whole muscle of red meat, intact: not injected, blade-tenderised, boned and rolled, stuffed or ground.
    IntactMuscle,
    /// Whole muscle of red meat that is not intact, or of which that is not known.
    PiercedMuscle,
    /// Ground or chopped red meat, sausages.
    Ground,
    /// Poultry in any form.
    Poultry,
    /// Anything stuffed.
    Stuffed,
    /// Fish.
    Fish,
    /// Cooked before, and cold since.
    Leftovers,
}

impl Sort {
    /// The sort of a piece of a cut. Unknown counts as not intact.
    #[must_use]
    pub const fn of(make: Make, intact: Intact) -> Self {
        match (make, intact) {
            (Make::WholeMuscle, Intact::Yes) => Self::IntactMuscle,
            (Make::WholeMuscle, Intact::No | Intact::Unknown) => Self::PiercedMuscle,
            (Make::Ground, _) => Self::Ground,
            (Make::Poultry, _) => Self::Poultry,
            (Make::Fish, _) => Self::Fish,
        }
    }

    /// Every sort.
    pub const ALL: [Self; 7] = [
        Self::IntactMuscle,
        Self::PiercedMuscle,
        Self::Ground,
        Self::Poultry,
        Self::Stuffed,
        Self::Fish,
        Self::Leftovers,
    ];
}

/// The least that the coldest point must see.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Minimum {
    /// It must reach this. A rise after coming off is never counted.
    pub temperature: Temperature,
    /// It must stay there, or rest, so long.
    pub then: TimeSpan,
    /// By which rule.
    pub rule: RuleId,
}

/// The minimum that holds for a sort of food.
///
/// Whole muscle that is not intact is held to the food service minimum, the stricter of the two that are published; the
/// rule says what the other is.
#[must_use]
pub const fn minimum(sort: Sort) -> Minimum {
    let (fahrenheit, celsius, then, rule) = match sort {
        Sort::IntactMuscle => (145.0, 62.8, 180.0, RuleId::MinimumWholeMuscle),
        Sort::PiercedMuscle => (155.0, 68.3, 17.0, RuleId::MinimumPierced),
        Sort::Ground => (160.0, 71.1, 0.0, RuleId::MinimumGround),
        Sort::Poultry => (165.0, 73.9, 0.0, RuleId::MinimumPoultry),
        Sort::Stuffed => (165.0, 73.9, 0.0, RuleId::MinimumStuffed),
        Sort::Fish => (145.0, 62.8, 15.0, RuleId::MinimumFish),
        Sort::Leftovers => (165.0, 73.9, 15.0, RuleId::ReheatThrough),
    };
    Minimum {
        temperature: printed(fahrenheit, celsius),
        then: TimeSpan::from_seconds(then),
        rule,
    }
}

/// A limit that is printed on both scales, the Celsius figure rounded: met by a reading that meets it on either.
pub(super) const fn printed(fahrenheit: f64, celsius: f64) -> Temperature {
    let exact = Temperature::from_fahrenheit(fahrenheit).celsius();
    Temperature::from_celsius(if exact < celsius { exact } else { celsius })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_minimum_is_below_the_consumer_chart() {
        for make in [Make::WholeMuscle, Make::Ground, Make::Poultry, Make::Fish] {
            for intact in [Intact::Yes, Intact::No, Intact::Unknown] {
                let least = minimum(Sort::of(make, intact));
                // The chart's own rounding to a tenth of a degree Celsius.
                let chart = make.consumer_minimum().celsius() - 0.05;
                assert!(least.temperature.celsius() >= chart);
                let rested = least.then >= make.minimum_rest();
                assert!(rested || least.temperature.celsius() > chart + 0.1);
            }
        }
    }

    #[test]
    fn unknown_is_held_to_the_same_as_not_intact() {
        let known = Sort::of(Make::WholeMuscle, Intact::No);
        assert_eq!(Sort::of(Make::WholeMuscle, Intact::Unknown), known);
        let whole = minimum(Sort::of(Make::WholeMuscle, Intact::Yes));
        assert!(minimum(known).temperature > whole.temperature);
    }
}
