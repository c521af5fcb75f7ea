//! Fits the remainder to cooks: centre and scale of a t variable (four degrees of freedom) in ln(time), on top of the
//! members.

use cook_model::forecast::{Remainder, t4_density};

/// Pulls the centre towards zero: the standard deviation of its prior.
const CENTRE_PRIOR: f64 = 0.10;

/// Centres and scales that are tried.
fn grid() -> impl Iterator<Item = Remainder> {
    (0..=30).flat_map(|step| {
        let scale = 0.01 * libm::pow(1.17, f64::from(step));
        (-60..=60).map(move |hundredth| Remainder {
            centre: f64::from(hundredth) / 100.0,
            scale,
        })
    })
}

fn square(value: f64) -> f64 {
    value * value
}

/// Log-likelihood of one cook at every point of the grid.
pub(crate) struct Likelihood(Vec<f64>);

impl Likelihood {
    /// Of a cook that took `hours`, by members whose times (without remainder, h) are given; members that are never
    /// ready have no time but count.
    pub(crate) fn new(members: &[Option<f64>], hours: f64) -> Self {
        let logs: Vec<f64> = members
            .iter()
            .flatten()
            .map(|time| libm::log(*time))
            .collect();
        let n = members.len() as f64;
        let happened = libm::log(hours);
        let at = |remainder: Remainder| {
            let away = |log: &f64| (happened - log - remainder.centre) / remainder.scale;
            let density: f64 = logs.iter().map(|log| t4_density(away(log))).sum();
            libm::log((density / (n * remainder.scale)).max(1e-300))
        };
        Self(grid().map(at).collect())
    }
}

/// The remainder under which these cooks are likeliest.
pub(crate) fn fit<'a>(cooks: impl Iterator<Item = &'a Likelihood>) -> Remainder {
    let mut total: Vec<f64> = grid()
        .map(|remainder| -0.5 * square(remainder.centre / CENTRE_PRIOR))
        .collect();
    for cook in cooks {
        for (sum, value) in total.iter_mut().zip(&cook.0) {
            *sum += value;
        }
    }
    let best = grid().zip(&total).max_by(|a, b| a.1.total_cmp(b.1));
    best.map_or(
        Remainder {
            centre: 0.0,
            scale: Remainder::FLOOR,
        },
        |(remainder, _)| remainder,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use cook_model::forecast::t4_quantile;

    #[test]
    fn finds_the_remainder_that_the_cooks_were_made_with() {
        let members = [Some(10.0)];
        let cooks: Vec<Likelihood> = (0..400)
            .map(|i| {
                let t = t4_quantile((f64::from(i) + 0.5) / 400.0);
                Likelihood::new(&members, 10.0 * libm::exp(0.06 + 0.2 * t))
            })
            .collect();
        let found = fit(cooks.iter());
        assert!((found.centre - 0.06).abs() < 0.011, "{found:?}");
        assert!((found.scale / 0.2 - 1.0).abs() < 0.10, "{found:?}");
    }

    #[test]
    fn without_cooks_nothing_is_moved() {
        assert_eq!(fit([].iter()).centre, 0.0);
    }
}
