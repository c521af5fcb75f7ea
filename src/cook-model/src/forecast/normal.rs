//! The quantile of the normal distribution, with the same bits on every machine.

/// The value below which a standard normal variable falls with probability `p`, 0 < p < 1.
///
/// Wichura, M. J. (1988), Algorithm AS 241: the percentage points of the normal distribution, Applied Statistics
/// 37(3):477-484 (routine PPND16, relative error about 1e-16). Outside 0..1 the result is not a number.
#[must_use]
pub fn normal_quantile(p: f64) -> f64 {
    let q = p - 0.5;
    if q.abs() <= 0.425 {
        let r = 0.425 * 0.425 - q * q;
        return q * ratio(r, &CENTRE);
    }
    let tail = if q < 0.0 { p } else { 1.0 - p };
    let r = libm::sqrt(-libm::log(tail));
    let size = if r <= 5.0 {
        ratio(r - 1.6, &FLANK)
    } else {
        ratio(r - 5.0, &TAIL)
    };
    if q < 0.0 { -size } else { size }
}

/// The share of a standard normal variable below `z`.
#[must_use]
pub fn normal_share(z: f64) -> f64 {
    0.5 * libm::erfc(-z * std::f64::consts::FRAC_1_SQRT_2)
}

/// Coefficients of numerator and denominator, lowest power first.
type Rational = ([f64; 8], [f64; 8]);

fn ratio(r: f64, (above, below): &Rational) -> f64 {
    let value = |coefficients: &[f64; 8]| coefficients.iter().rev().fold(0.0, |sum, c| sum * r + c);
    value(above) / value(below)
}

const CENTRE: Rational = (
    [
        3.387_132_872_796_366_5,
        133.141_667_891_784_38,
        1_971.590_950_306_551_3,
        13_731.693_765_509_46,
        45_921.953_931_549_87,
        67_265.770_927_008_7,
        33_430.575_583_588_13,
        2_509.080_928_730_122_7,
    ],
    [
        1.0,
        42.313_330_701_600_91,
        687.187_007_492_057_9,
        5_394.196_021_424_751,
        21_213.794_301_586_597,
        39_307.895_800_092_71,
        28_729.085_735_721_943,
        5_226.495_278_852_854,
    ],
);

const FLANK: Rational = (
    [
        1.423_437_110_749_683_5,
        4.630_337_846_156_546,
        5.769_497_221_460_691,
        3.647_848_324_763_204_5,
        1.270_458_252_452_368_4,
        0.241_780_725_177_450_6,
        0.022_723_844_989_269_184,
        7.745_450_142_783_414e-4,
    ],
    [
        1.0,
        2.053_191_626_637_759,
        1.676_384_830_183_803_8,
        0.689_767_334_985_1,
        0.148_103_976_427_480_08,
        0.015_198_666_563_616_457,
        5.475_938_084_995_345e-4,
        1.050_750_071_644_416_9e-9,
    ],
);

const TAIL: Rational = (
    [
        6.657_904_643_501_103,
        5.463_784_911_164_114,
        1.784_826_539_917_291_3,
        0.296_560_571_828_504_87,
        0.026_532_189_526_576_124,
        0.001_242_660_947_388_078_4,
        2.711_555_568_743_487_6e-5,
        2.010_334_399_292_288_1e-7,
    ],
    [
        1.0,
        0.599_832_206_555_888,
        0.136_929_880_922_735_8,
        0.014_875_361_290_850_615,
        7.868_691_311_456_133e-4,
        1.846_318_317_510_054_8e-5,
        1.421_511_758_316_446e-7,
        2.044_263_103_389_94e-15,
    ],
);

#[cfg(test)]
mod tests {
    use super::*;
    use statrs::distribution::{ContinuousCDF, Normal};

    #[test]
    fn undoes_the_distribution_of_a_library() {
        let standard = Normal::new(0.0, 1.0).unwrap();
        for exponent in -12..=-1 {
            for lead in [1.0, 2.0, 4.9] {
                let p = lead * libm::pow(10.0, f64::from(exponent));
                let z = normal_quantile(p);
                let back = standard.cdf(z);
                assert!((back / p - 1.0).abs() < 1e-9, "{p}: {z} gives {back}");
                assert_eq!(normal_quantile(0.5), 0.0);
            }
        }
    }

    #[test]
    fn meets_the_printed_percentage_points() {
        // Two-sided 95 % and 99 %, as in any printed table.
        assert!((normal_quantile(0.975) - 1.959_963_984_540_054).abs() < 1e-14);
        assert!((normal_quantile(0.995) - 2.575_829_303_548_900_4).abs() < 1e-14);
        assert!((normal_quantile(0.975) + normal_quantile(0.025)).abs() < 1e-14);
    }

    #[test]
    fn is_not_a_number_outside_the_open_interval() {
        assert!(normal_quantile(-0.1).is_nan());
        assert!(normal_quantile(1.1).is_nan());
    }
}
