//! The continuous ranked probability score: how far a forecast distribution is from what happened, in its units.

use statrs::distribution::{ContinuousCDF, Normal};

/// Of members of equal weight, which it sorts: mean |x − y| − ½ mean |x − x′|.
///
/// Gneiting, T. and Raftery, A. E. (2007), Strictly proper scoring rules, prediction, and estimation, JASA
/// 102(477):359-378, equation 21.
pub(crate) fn of_members(members: &mut [f64], happened: f64) -> f64 {
    members.sort_unstable_by(f64::total_cmp);
    let n = members.len() as f64;
    let mut distance = 0.0;
    let mut weighted = 0.0;
    for (i, x) in members.iter().enumerate() {
        distance += (x - happened).abs();
        // In rising order the sum of all |x − x′| is 2 Σ (2i − n + 1) x.
        weighted += (2.0 * i as f64 - n + 1.0) * x;
    }
    distance / n - weighted / (n * n)
}

/// Of a variable whose logarithm is normal.
///
/// Baran, S. and Lerch, S. (2015), Log-normal distribution based ensemble model output statistics models for
/// probabilistic wind-speed forecasting, Q. J. R. Meteorol. Soc. 141:2289-2299.
pub(crate) fn of_log_normal(mean_log: f64, deviation: f64, happened: f64) -> f64 {
    let omega = (libm::log(happened) - mean_log) / deviation;
    let mean = libm::exp(mean_log + 0.5 * deviation * deviation);
    let spread = phi(omega - deviation) + phi(deviation / 2_f64.sqrt()) - 1.0;
    happened * (2.0 * phi(omega) - 1.0) - 2.0 * mean * spread
}

fn phi(z: f64) -> f64 {
    Normal::standard().cdf(z)
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::forecast::normal_quantile;
    use statrs::distribution::Continuous;

    /// Of a normal variable: Gneiting, T., Raftery, A. E., Westveld, A. H. and Goldman, T. (2005), Monthly Weather
    /// Review 133:1098-1118, equation 5.
    fn of_normal(mean: f64, deviation: f64, happened: f64) -> f64 {
        let z = (happened - mean) / deviation;
        let density = Normal::standard().pdf(z);
        deviation * (z * (2.0 * phi(z) - 1.0) + 2.0 * density - 1.0 / std::f64::consts::PI.sqrt())
    }

    fn members(count: u32, of: impl Fn(f64) -> f64) -> Vec<f64> {
        let p = |i: u32| (f64::from(i) + 0.5) / f64::from(count);
        (0..count).map(|i| of(normal_quantile(p(i)))).collect()
    }

    #[test]
    fn many_members_meet_the_closed_form_of_the_normal() {
        for (mean, deviation, happened) in [(0.0, 1.0, 0.0), (10.0, 2.0, 13.0), (5.0, 0.5, 3.0)] {
            let mut members = members(2000, |z| mean + deviation * z);
            let score = of_members(&mut members, happened);
            let closed = of_normal(mean, deviation, happened);
            assert!(
                (score - closed).abs() < 1e-3 * deviation,
                "{score} {closed}"
            );
        }
    }

    #[test]
    fn many_members_meet_the_closed_form_of_the_log_normal() {
        for (mean, deviation, happened) in [(2.0, 0.3, 7.0), (2.3, 0.1, 14.0), (1.0, 0.5, 1.0)] {
            let mut members = members(4000, |z| libm::exp(mean + deviation * z));
            let score = of_members(&mut members, happened);
            let closed = of_log_normal(mean, deviation, happened);
            assert!((score / closed - 1.0).abs() < 2e-3, "{score} {closed}");
        }
    }

    #[test]
    fn one_member_scores_its_distance() {
        assert_eq!(of_members(&mut [4.0], 6.5), 2.5);
    }
}
