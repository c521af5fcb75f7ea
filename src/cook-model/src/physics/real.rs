//! The scalar of the march and its own elementary functions: the same bits on every machine, and plain enough that a
//! loop over eight lanes becomes vector instructions.

use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// Members that are marched side by side.
pub(crate) const LANES: usize = 8;

/// One value for each lane.
pub(crate) type Row<S> = [S; LANES];

/// What the march reckons in.
pub(crate) trait Real:
    Copy
    + Default
    + PartialOrd
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
    + AddAssign
    + SubAssign
{
    /// The nearest value.
    fn of(value: f64) -> Self;
    /// Square root, correctly rounded.
    fn root(self) -> Self;
    /// e to the power of this; arguments are held within −80 and 80.
    fn exp(self) -> Self;

    /// The larger; the second if either is not a number.
    #[inline(always)]
    fn at_least(self, low: Self) -> Self {
        if self > low { self } else { low }
    }

    /// The smaller; the second if either is not a number.
    #[inline(always)]
    fn at_most(self, high: Self) -> Self {
        if self < high { self } else { high }
    }
}

impl Real for f64 {
    #[inline(always)]
    fn of(value: f64) -> Self {
        value
    }

    #[inline(always)]
    fn root(self) -> Self {
        self.sqrt()
    }

    /// Relative error below 1e-10: exponent and remainder, the remainder by a polynomial of degree 7 whose
    /// coefficients were fitted to the smallest largest error on ±ln(2)/2.
    #[inline(always)]
    fn exp(self) -> Self {
        /// Adding this leaves the nearest integer in the low bits.
        const SHIFT: f64 = 6_755_399_441_055_744.0;
        let x = self.at_least(-80.0).at_most(80.0);
        let n = x * std::f64::consts::LOG2_E + SHIFT;
        let r = x - (n - SHIFT) * std::f64::consts::LN_2;
        let p = 0.000_197_751_706_544_590_68;
        let p = p * r + 0.001_394_818_331_518_911_4;
        let p = p * r + 0.008_333_561_091_932_843;
        let p = p * r + 0.041_666_225_425_715_714;
        let p = p * r + 0.166_666_651_261_290_54;
        let p = p * r + 0.500_000_010_453_620_6;
        let p = p * r + 1.000_000_000_243_096_7;
        let p = p * r + 0.999_999_999_961_682_3;
        Self::from_bits(p.to_bits().wrapping_add(n.to_bits() << 52))
    }
}

/// sin(2π turns), absolute error below 1e-9, for any number of turns below 2^40.
#[inline(always)]
pub(crate) fn sine_of_turns(turns: f64) -> f64 {
    const SHIFT: f64 = 6_755_399_441_055_744.0;
    // Into −½..½ turn, then into −¼..¼ by reflection.
    let x = turns - ((turns + SHIFT) - SHIFT);
    let x = if x > 0.25 {
        0.5 - x
    } else if x < -0.25 {
        -0.5 - x
    } else {
        x
    };
    let z = x * x;
    let p = -14.381_390_707_895_17;
    let p = p * z + 42.007_797_131_717_204;
    let p = p * z - 76.704_170_252_002_09;
    let p = p * z + 81.605_223_690_124_63;
    let p = p * z - 41.341_702_096_925_92;
    let p = p * z + 6.283_185_307_046_687;
    p * x
}

/// (a³ + b³)^(1/3) for a, b ≥ 0, relative error below 1e-9: a polynomial in (smaller/larger)³, then one Newton step.
#[inline(always)]
pub(crate) fn root_of_cubes<S: Real>(a: S, b: S) -> S {
    let (low, high) = if a < b { (a, b) } else { (b, a) };
    let ratio = low / high.at_least(S::of(1e-12));
    let s = ratio * ratio * ratio;
    let p = S::of(0.005_348_545_452_421_25);
    let p = p * s - S::of(0.023_643_796_125_060_24);
    let p = p * s + S::of(0.054_716_544_620_097_45);
    let p = p * s - S::of(0.109_730_788_328_463_95);
    let p = p * s + S::of(0.333_230_864_219_954_4);
    let p = p * s + S::of(1.000_001_230_965_05);
    let whole = S::of(1.0) + s;
    let p = (p + p + whole / (p * p)) * S::of(1.0 / 3.0);
    high * p
}

/// Natural logarithm for 0.5 to 1.6, absolute error below 2e-7: six terms of the series of the inverse hyperbolic
/// tangent.
#[inline(always)]
pub(crate) fn log_near_one<S: Real>(x: S) -> S {
    let z = (x - S::of(1.0)) / (x + S::of(1.0));
    let q = z * z;
    let p = S::of(2.0 / 11.0);
    let p = p * q + S::of(2.0 / 9.0);
    let p = p * q + S::of(2.0 / 7.0);
    let p = p * q + S::of(2.0 / 5.0);
    let p = p * q + S::of(2.0 / 3.0);
    let p = p * q + S::of(2.0);
    p * z
}

/// The positive part, rounded off over a width: 0 below 0, x²/(2·width) up to the width, then x − width/2. Returns the
/// value and its slope.
#[inline(always)]
pub(crate) fn positive_part<S: Real>(x: S, width: S) -> (S, S) {
    let held = x.at_least(S::of(0.0));
    let slope = (held / width).at_most(S::of(1.0));
    (slope * (held - S::of(0.5) * slope * width), slope)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn worst(low: f64, high: f64, error: impl Fn(f64) -> f64) -> f64 {
        (0..=100_000)
            .map(|i| low + (high - low) * f64::from(i) / 100_000.0)
            .map(error)
            .fold(0.0, f64::max)
    }

    #[test]
    fn the_exponential_keeps_its_error() {
        let error = worst(-79.0, 79.0, |x| (Real::exp(x) / libm::exp(x) - 1.0).abs());
        assert!(error < 1e-10, "{error:e}");
        assert!(Real::exp(1e9).is_finite() && Real::exp(-1e9) > 0.0);
    }

    #[test]
    fn the_sine_keeps_its_error() {
        let error = worst(-37.0, 37.0, |x| {
            (sine_of_turns(x) - libm::sin(2.0 * std::f64::consts::PI * x)).abs()
        });
        assert!(error < 1e-9, "{error:e}");
    }

    #[test]
    fn the_root_of_cubes_keeps_its_error() {
        let error = worst(0.0, 40.0, |a| {
            (root_of_cubes(a, 11.0) / libm::cbrt(a * a * a + 1331.0) - 1.0).abs()
        });
        assert!(error < 1e-9, "{error:e}");
    }

    #[test]
    fn the_logarithm_keeps_its_error() {
        let error = worst(0.5, 1.6, |x| (log_near_one(x) - libm::log(x)).abs());
        assert!(error < 2e-7, "{error:e}");
    }

    #[test]
    fn the_positive_part_is_smooth() {
        let (value, slope) = positive_part(-1.0, 0.1);
        assert_eq!((value, slope), (0.0, 0.0));
        let (value, slope) = positive_part(0.1, 0.1);
        assert!((value - 0.05).abs() < 1e-15 && (slope - 1.0).abs() < 1e-15);
        let (value, slope) = positive_part(3.0, 0.1);
        assert!((value - 2.95).abs() < 1e-15 && (slope - 1.0).abs() < 1e-15);
        let (value, slope) = positive_part(0.05, 0.1);
        assert!((value - 0.0125).abs() < 1e-15 && (slope - 0.5).abs() < 1e-15);
    }
}
