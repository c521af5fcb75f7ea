//! What the model itself gets wrong: a heavy-tailed factor on the time of each cook.

use super::student::t4_quantile;
use crate::meat::{Cut, Kind};

/// The model's own error in ln(time): a centre and a scale, with the tails of a t variable with four degrees of
/// freedom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Remainder {
    /// Added to ln(time).
    pub centre: f64,
    /// Multiplies the t variable. At least [`Remainder::FLOOR`].
    pub scale: f64,
}

impl Remainder {
    /// No remainder is narrower than this, however well the records were met: they are few.
    pub const FLOOR: f64 = 0.10;

    /// A cook's first go at a cut has a remainder wider by this factor. Set by hand.
    pub const FIRST_TIME: f64 = 1.5;

    /// Birds. The scale is fitted by likelihood to the ten birds among 45 real cooks. The centre that goes with it is
    /// −0.08, within its own uncertainty of nothing, so it is left at nothing.
    pub const BIRDS: Self = Self {
        centre: 0.0,
        scale: 0.32,
    };

    /// All other meat. Fitted by likelihood to the other 35 of the same cooks the scale is 0.09, under the floor, and
    /// the centre +0.04, left at nothing likewise.
    pub const OTHERS: Self = Self {
        centre: 0.0,
        scale: Self::FLOOR,
    };

    /// The remainder that belongs to a cut.
    #[must_use]
    pub const fn of(cut: &Cut) -> Self {
        match cut.kind {
            Kind::Chicken | Kind::Turkey => Self::BIRDS,
            Kind::Beef | Kind::Pork | Kind::Lamb | Kind::Fish => Self::OTHERS,
        }
    }

    /// The same, for a cook who makes this cut for the first time.
    #[must_use]
    pub const fn first_time(self) -> Self {
        Self {
            centre: self.centre,
            scale: self.scale * Self::FIRST_TIME,
        }
    }

    /// The factor on all times at probability `p`, 0 < p < 1; held between a quarter and four.
    #[must_use]
    pub fn stretch(self, p: f64) -> f64 {
        libm::exp(self.centre + self.scale * t4_quantile(p)).clamp(0.25, 4.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stretches_about_its_centre() {
        let remainder = Remainder {
            centre: 0.05,
            scale: 0.2,
        };
        assert!((remainder.stretch(0.5) - libm::exp(0.05)).abs() < 1e-12);
        let (early, late) = (remainder.stretch(0.1), remainder.stretch(0.9));
        // 80 % of a t variable with four degrees of freedom lie within 1.533.
        assert!((libm::log(late / early) - 2.0 * 0.2 * 1.533_206).abs() < 1e-5);
        assert_eq!(remainder.stretch(1e-9), 0.25);
        assert_eq!(remainder.first_time().scale, 0.2 * Remainder::FIRST_TIME);
    }
}
