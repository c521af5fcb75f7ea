//! Quantiles of times of which some never come.

use crate::units::TimeSpan;

/// The time by which a share `p` (0 to 1) of the members have come; `None` stands for a member that never comes and
/// counts as later than all others. None when the share falls among those, or there are no members.
///
/// The k-th of n members stands at (k − ½)/n, with straight lines between (definition 5 of Hyndman and Fan 1996, The
/// American Statistician 50(4):361-365).
#[must_use]
pub fn time_quantile(
    times: impl IntoIterator<Item = Option<TimeSpan>>,
    p: f64,
) -> Option<TimeSpan> {
    let mut seconds: Vec<f64> = times
        .into_iter()
        .map(|time| time.map_or(f64::INFINITY, TimeSpan::seconds))
        .collect();
    let value = quantile(&mut seconds, p)?;
    value.is_finite().then(|| TimeSpan::from_seconds(value))
}

/// The same for bare numbers, which it sorts. None for an empty list.
#[must_use]
pub fn quantile(values: &mut [f64], p: f64) -> Option<f64> {
    values.sort_unstable_by(f64::total_cmp);
    let last = values.len().checked_sub(1)?;
    let place = (p * values.len() as f64 - 0.5).clamp(0.0, last as f64);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "held between 0 and the last index"
    )]
    let below = libm::floor(place) as usize;
    let share = place - below as f64;
    let (low, high) = (values[below], values[last.min(below + 1)]);
    Some(if share == 0.0 || low == high {
        low
    } else {
        low + share * (high - low)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stands_at_the_middle_of_each_member_s_share() {
        let mut values = [4.0, 1.0, 3.0, 2.0];
        assert_eq!(quantile(&mut values, 0.125), Some(1.0));
        assert_eq!(quantile(&mut values, 0.5), Some(2.5));
        assert_eq!(quantile(&mut values, 0.0), Some(1.0));
        assert_eq!(quantile(&mut values, 1.0), Some(4.0));
        assert_eq!(quantile(&mut [], 0.5), None);
    }

    #[test]
    fn members_that_never_come_are_late() {
        let hours = |h| Some(TimeSpan::from_hours(h));
        let times = [hours(5.0), None, hours(4.0), hours(6.0)];
        assert_eq!(time_quantile(times, 0.125), hours(4.0));
        assert_eq!(time_quantile(times, 0.5), hours(5.5));
        assert_eq!(time_quantile(times, 0.9), None);
        assert_eq!(time_quantile([], 0.5), None);
    }
}
