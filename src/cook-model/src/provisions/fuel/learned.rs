//! What a cooker teaches: how much more, or less, it burns than the model says.

use serde::{Deserialize, Serialize};

/// The factor from the model's fuel to a cooker's own, as a log-normal belief.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LearnedFactor {
    /// Logarithm of the likely factor.
    pub log: f64,
    /// Standard deviation of the logarithm.
    pub spread: f64,
    /// Cooks it was learned from.
    pub cooks: u32,
}

/// Spread of one cook around its cooker's factor: fuel weighed roughly, coals left over, wind. Set by hand.
const ONE_COOK: f64 = 0.2;

/// One in ten of a normal distribution lies beyond so many standard deviations.
const NINE_IN_TEN: f64 = 1.281_551_6;

impl Default for LearnedFactor {
    /// Before the first cook: 1.3 ± 0.4. Set by hand from what the trade tells of five kinds of cooker.
    fn default() -> Self {
        Self {
            log: libm::log(1.3),
            spread: 0.4 / 1.3,
            cooks: 0,
        }
    }
}

impl LearnedFactor {
    /// The model as it is: what a cook's fuel is held against.
    pub const NONE: Self = Self {
        log: 0.0,
        spread: 0.0,
        cooks: 0,
    };

    /// The likely factor.
    #[must_use]
    pub fn likely(&self) -> f64 {
        libm::exp(self.log)
    }

    /// The factor that suffices in nine cooks of ten: what is not known of the cooker, and what differs from cook to
    /// cook.
    #[must_use]
    pub fn nine_in_ten(&self) -> f64 {
        let spread = libm::sqrt(self.spread * self.spread + ONE_COOK * ONE_COOK);
        libm::exp(self.log + NINE_IN_TEN * spread)
    }

    /// After a cook in which so many times the model's amount was fed. A ratio that is not above zero teaches nothing.
    #[must_use]
    pub fn after(&self, fed_over_modelled: f64) -> Self {
        if !(fed_over_modelled > 0.0 && fed_over_modelled.is_finite()) {
            return *self;
        }
        let (before, cook) = (self.spread * self.spread, ONE_COOK * ONE_COOK);
        let gain = before / (before + cook);
        Self {
            log: self.log + gain * (libm::log(fed_over_modelled) - self.log),
            spread: libm::sqrt(before * (1.0 - gain)),
            cooks: self.cooks.saturating_add(1),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_cook_narrows_it_and_draws_it_nearer() {
        let mut factor = LearnedFactor::default();
        let mut reserve = factor.nine_in_ten() / factor.likely();
        for _ in 0..10 {
            let next = factor.after(0.9);
            assert!((next.likely() - 0.9).abs() < (factor.likely() - 0.9).abs());
            assert!(next.nine_in_ten() / next.likely() < reserve);
            reserve = next.nine_in_ten() / next.likely();
            factor = next;
        }
        assert_eq!(factor.cooks, 10);
        assert!((factor.likely() - 0.9).abs() < 0.03);
    }

    #[test]
    fn nonsense_teaches_nothing() {
        let factor = LearnedFactor::default();
        for ratio in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(factor.after(ratio), factor);
        }
    }
}
