//! When to buy, how to thaw, and how long raw meat keeps.

use crate::meat::{CutId, Make};
use crate::plan::Thawing;
use crate::safety::{ThawSpan, keeps_raw, keeps_thawed, thaw_in_cold_water, thaw_in_fridge};
use crate::units::{Mass, Moment, TimeSpan};
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Where something thaws.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ThawPlace {
    /// In the fridge.
    Fridge,
    /// In cold water that is changed every half hour.
    ColdWater,
    /// Out on the counter: always refused.
    Counter,
}

impl ThawPlace {
    /// All, the refused one last.
    pub const ALL: [Self; 3] = [Self::Fridge, Self::ColdWater, Self::Counter];
}

impl From<Thawing> for ThawPlace {
    fn from(thawing: Thawing) -> Self {
        match thawing {
            Thawing::Fridge => Self::Fridge,
            Thawing::ColdWater => Self::ColdWater,
        }
    }
}

/// Why a way of thawing is refused, and what to do instead.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(tag = "why", rename_all = "snake_case")]
pub enum ThawRefusal {
    /// Never on the counter.
    #[error(
        "not on the counter: the outside warms past 4 °C and spoils for hours while the inside is still frozen; thaw it in the fridge, or in cold water changed every 30 min"
    )]
    Counter,
    /// Thawed in water it is cooked at once; it cannot wait in salt.
    #[error(
        "thawed in cold water it has to be cooked at once, and this is salted {:.0} h ahead; thaw it in the fridge, or salt it as it goes on", ahead.hours()
    )]
    WaterThenWait {
        /// Planned time in salt.
        ahead: TimeSpan,
    },
    /// There is not enough time left.
    #[error(
        "{:.0} h are left and thawing takes up to {:.0} h; thaw it another way, serve later, or buy it fresh", left.hours(), takes.hours()
    )]
    TooLate {
        /// Until it is wanted.
        left: TimeSpan,
        /// Longest by the published rate.
        takes: TimeSpan,
    },
}

/// A piece to thaw: one of those that are handled apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frozen {
    /// The cut.
    pub cut: CutId,
    /// Weight of one piece.
    pub mass: Mass,
    /// When it is first wanted thawed: for trimming, salting, or the grate.
    pub wanted: Moment,
    /// How long it is to lie in salt before it goes on.
    pub salted_ahead: TimeSpan,
}

/// How it thaws.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Thaw {
    /// Where.
    pub place: ThawPlace,
    /// Begins at the latest, by the longest published time.
    pub begins: Moment,
    /// Shortest published time.
    pub least: TimeSpan,
    /// Longest published time.
    pub most: TimeSpan,
    /// How often the water is changed.
    pub water_changes: u32,
    /// It is cooked at once and does not wait.
    pub cook_at_once: bool,
    /// Thawed early, it keeps in the fridge this long before it is cooked, by the shorter figure. None: it is cooked at
    /// once.
    pub then_keeps: Option<TimeSpan>,
}

/// Plans the thawing of a piece, from now on.
///
/// Sources: USDA FSIS, The Big Thaw, and FoodSafety.gov, cold food storage chart, by way of the rules of
/// [`crate::safety`].
///
/// # Errors
/// If it is refused: on the counter, in water before it lies in salt, or too late.
pub fn thaw(frozen: &Frozen, place: ThawPlace, now: Moment) -> Result<Thaw, ThawRefusal> {
    let span = match place {
        ThawPlace::Counter => return Err(ThawRefusal::Counter),
        ThawPlace::Fridge => thaw_in_fridge(frozen.cut, frozen.mass),
        ThawPlace::ColdWater => thaw_in_cold_water(frozen.cut, frozen.mass),
    };
    let in_water = place == ThawPlace::ColdWater;
    // Trimming and rubbing are part of cooking at once; hours in salt are not.
    if in_water && frozen.salted_ahead > TimeSpan::from_hours(1.0) {
        return Err(ThawRefusal::WaterThenWait {
            ahead: frozen.salted_ahead,
        });
    }
    let left = frozen.wanted - now;
    if left < span.most {
        return Err(ThawRefusal::TooLate {
            left: left.max(TimeSpan::ZERO),
            takes: span.most,
        });
    }
    let entry = frozen.cut.cut();
    Ok(Thaw {
        place,
        begins: frozen.wanted - span.most,
        least: span.least,
        most: span.most,
        water_changes: if in_water {
            super::counting::whole(span.most / TimeSpan::from_minutes(30.0)).saturating_sub(1)
        } else {
            0
        },
        cook_at_once: in_water,
        then_keeps: (!in_water).then(|| keeps_thawed(entry.kind, entry.make).least),
    })
}

/// The days on which it can be bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct BuyWindow {
    /// Not before, or it would not keep by the shorter published figure. None for frozen pieces: the freezer keeps them.
    pub earliest: Option<Moment>,
    /// Not before even by the longer published figure.
    pub earliest_at_the_longest: Option<Moment>,
    /// At the latest: in time for thawing, and for what is done first.
    pub latest: Moment,
}

/// When a fresh piece can be bought: it is first wanted at `wanted` and goes on at `on`.
///
/// Source: FoodSafety.gov, cold food storage chart: red meat 3 to 5 days raw, poultry, ground meat and fish 1 to 2.
#[must_use]
pub fn buy_fresh(make: Make, wanted: Moment, on: Moment) -> BuyWindow {
    let ThawSpan { least, most } = keeps_raw(make);
    BuyWindow {
        earliest: Some(on - least),
        earliest_at_the_longest: Some(on - most),
        latest: wanted,
    }
}

/// When a frozen piece has to be in the fridge or in the water.
#[must_use]
pub const fn buy_frozen(thaw: &Thaw) -> BuyWindow {
    BuyWindow {
        earliest: None,
        earliest_at_the_longest: None,
        latest: thaw.begins,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOW: Moment = Moment::from_unix_seconds(1_789_000_000);

    fn frozen(hours_left: f64, ahead: f64) -> Frozen {
        Frozen {
            cut: CutId::PorkShoulderButt,
            mass: Mass::from_pounds(8.0),
            wanted: NOW + TimeSpan::from_hours(hours_left),
            salted_ahead: TimeSpan::from_hours(ahead),
        }
    }

    #[test]
    fn the_counter_is_refused_with_its_reason() {
        let refusal = thaw(&frozen(100.0, 0.0), ThawPlace::Counter, NOW).expect_err("refused");
        assert!(refusal.to_string().contains("inside is still frozen"));
    }

    #[test]
    fn a_butt_wants_two_days_in_the_fridge_or_four_hours_in_water() {
        let fridge = thaw(&frozen(72.0, 18.0), ThawPlace::Fridge, NOW).expect("time enough");
        assert_eq!(fridge.most.hours(), 48.0);
        assert_eq!(fridge.begins, NOW + TimeSpan::from_hours(24.0));
        assert_eq!(fridge.then_keeps.map(TimeSpan::hours), Some(72.0));
        let water = thaw(&frozen(5.0, 0.0), ThawPlace::ColdWater, NOW).expect("time enough");
        assert_eq!(water.most.hours(), 4.0);
        assert_eq!(water.water_changes, 7);
        assert!(water.cook_at_once && water.then_keeps.is_none());
    }

    #[test]
    fn too_late_and_salted_after_water_are_refused() {
        assert!(matches!(
            thaw(&frozen(47.9, 0.0), ThawPlace::Fridge, NOW),
            Err(ThawRefusal::TooLate { .. })
        ));
        assert!(thaw(&frozen(48.0, 0.0), ThawPlace::Fridge, NOW).is_ok());
        assert!(matches!(
            thaw(&frozen(30.0, 18.0), ThawPlace::ColdWater, NOW),
            Err(ThawRefusal::WaterThenWait { .. })
        ));
    }

    #[test]
    fn fresh_meat_is_bought_not_too_early_and_in_time() {
        let on = NOW + TimeSpan::from_hours(90.0);
        let wanted = NOW + TimeSpan::from_hours(70.0);
        let window = buy_fresh(Make::WholeMuscle, wanted, on);
        assert_eq!(window.earliest, Some(on - TimeSpan::from_hours(72.0)));
        assert_eq!(window.latest, wanted);
        let bird = buy_fresh(Make::Poultry, wanted, on);
        assert!(bird.earliest > window.earliest);
    }
}
