//! Two rules that know nothing of heat, each fitted without the cook that it forecasts.

use crate::crps;
use crate::regression::Line;

/// What the rules may look at.
#[derive(Clone, Debug)]
pub(crate) struct Features {
    /// Cut, as spelled in the records.
    pub(crate) cut: String,
    /// Weight of one piece, kg.
    pub(crate) kilograms: f64,
    /// Mean air over the cook as told, °C.
    pub(crate) pit: f64,
    /// Wrapped at all.
    pub(crate) wrapped: bool,
    /// Time that it took, h.
    pub(crate) hours: f64,
}

/// A log-normal forecast of one cook.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LogNormal {
    /// Mean of ln(hours).
    pub(crate) mean: f64,
    /// Standard deviation of ln(hours).
    pub(crate) deviation: f64,
}

impl LogNormal {
    pub(crate) fn likely(self) -> f64 {
        libm::exp(self.mean)
    }

    pub(crate) fn score(self, happened: f64) -> f64 {
        crps::of_log_normal(self.mean, self.deviation, happened)
    }
}

/// The ridge of the regression: the better of 0.3 and 1 on these features.
const RIDGE: f64 = 1.0;

/// Hours per kilogram of the cut; of all cuts where the cut has no other record.
pub(crate) fn weight_rule(cooks: &[Features]) -> Vec<LogNormal> {
    leave_one_out(cooks, |others, cook| {
        let rate = |f: &&Features| libm::log(f.hours / f.kilograms);
        let alike: Vec<f64> = others
            .iter()
            .filter(|f| f.cut == cook.cut)
            .map(rate)
            .collect();
        let rates = if alike.is_empty() {
            others.iter().map(rate).collect()
        } else {
            alike
        };
        mean(&rates) + libm::log(cook.kilograms)
    })
}

/// ln(hours) by cut, ln(weight), pit and wrap.
pub(crate) fn regression(cooks: &[Features]) -> Vec<LogNormal> {
    let mut cuts: Vec<&str> = cooks.iter().map(|cook| cook.cut.as_str()).collect();
    cuts.sort_unstable();
    cuts.dedup();
    let row = |cook: &Features| -> Vec<f64> {
        let of_cut = cuts.iter().map(|cut| f64::from(u8::from(*cut == cook.cut)));
        of_cut
            .chain([
                libm::log(cook.kilograms),
                (cook.pit - 120.0) / 20.0,
                f64::from(u8::from(cook.wrapped)),
            ])
            .collect()
    };
    leave_one_out(cooks, |others, cook| {
        let rows: Vec<Vec<f64>> = others.iter().map(|other| row(other)).collect();
        let values: Vec<f64> = others.iter().map(|other| libm::log(other.hours)).collect();
        Line::fit(&rows, &values, RIDGE).map_or_else(|| mean(&values), |line| line.at(&row(cook)))
    })
}

/// Forecasts each cook from the others; its spread is that of the others' own left-out errors.
fn leave_one_out(
    cooks: &[Features],
    forecast: impl Fn(&[&Features], &Features) -> f64,
) -> Vec<LogNormal> {
    let centres: Vec<f64> = (0..cooks.len())
        .map(|left_out| {
            let others: Vec<&Features> = without(cooks, left_out).collect();
            forecast(&others, &cooks[left_out])
        })
        .collect();
    let errors: Vec<f64> = cooks
        .iter()
        .zip(&centres)
        .map(|(cook, centre)| libm::log(cook.hours) - centre)
        .collect();
    (0..cooks.len())
        .map(|left_out| {
            let squares: Vec<f64> = without(&errors, left_out)
                .map(|error| error * error)
                .collect();
            LogNormal {
                mean: centres[left_out],
                deviation: mean(&squares).sqrt(),
            }
        })
        .collect()
}

/// All but one.
pub(crate) fn without<T>(all: &[T], left_out: usize) -> impl Iterator<Item = &T> {
    let (before, after) = (&all[..left_out], &all[left_out + 1..]);
    before.iter().chain(after)
}

pub(crate) fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cook(cut: &str, kilograms: f64, pit: f64, hours: f64) -> Features {
        Features {
            cut: cut.to_owned(),
            kilograms,
            pit,
            wrapped: false,
            hours,
        }
    }

    #[test]
    fn the_weight_rule_uses_the_other_cooks_of_the_cut() {
        let cooks = [
            cook("a", 1.0, 120.0, 2.0),
            cook("a", 2.0, 120.0, 4.0),
            cook("b", 1.0, 120.0, 8.0),
        ];
        let rule = weight_rule(&cooks);
        assert!((rule[0].likely() - 2.0).abs() < 1e-12);
        // "b" has no other record: all the others pooled.
        assert!((rule[2].likely() - 2.0).abs() < 1e-12);
        // The first two miss by nothing, the third by ln 4.
        let expected = (libm::log(4.0) * libm::log(4.0) / 2.0).sqrt();
        assert!((rule[0].deviation - expected).abs() < 1e-12);
        assert!(rule[2].deviation < 1e-12);
    }

    #[test]
    fn the_regression_finds_a_power_of_the_weight_through_its_ridge() {
        let cooks: Vec<Features> = (0..280)
            .map(|i| {
                let kilograms = 1.0 + f64::from(i % 8);
                let pit = 105.0 + 5.0 * f64::from(i % 7);
                let hours = 3.0 * libm::sqrt(kilograms) * libm::exp(-(pit - 120.0) / 60.0);
                cook("a", kilograms, pit, hours)
            })
            .collect();
        for (forecast, cook) in regression(&cooks).iter().zip(&cooks) {
            let error = forecast.likely() / cook.hours - 1.0;
            assert!(error.abs() < 0.01, "{error}");
        }
    }
}
