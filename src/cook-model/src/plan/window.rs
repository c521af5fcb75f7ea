//! Windows from the times of an ensemble's members.

use super::outlook::Window;
use crate::forecast::{quantile, time_quantile};
use crate::units::{Moment, TimeSpan};

/// The longest cook reckoned with: members that take longer are never ready, and a window that would reach beyond ends
/// here.
pub(super) const LONGEST_COOK: TimeSpan = TimeSpan::from_hours(36.0);

const DECILES: [f64; 9] = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

/// The window of something that every member comes to sooner or later. None if half or more never do.
pub(super) fn window(
    start: Moment,
    times: impl IntoIterator<Item = Option<TimeSpan>>,
) -> Option<Window> {
    let times: Vec<_> = times.into_iter().collect();
    time_quantile(times.iter().copied(), 0.5)?;
    let at = |share| {
        let time = time_quantile(times.iter().copied(), share);
        start + time.unwrap_or(LONGEST_COOK)
    };
    Some(Window {
        deciles: DECILES.map(at),
    })
}

/// The window of something that only some members come to, over those. None if fewer than half do.
pub(super) fn window_of_those(
    start: Moment,
    times: impl IntoIterator<Item = Option<TimeSpan>>,
) -> Option<Window> {
    let all: Vec<_> = times.into_iter().collect();
    let those: Vec<_> = all.iter().copied().filter(Option::is_some).collect();
    if those.len() * 2 < all.len() {
        return None;
    }
    window(start, those)
}

/// The 10, 50 and 90 % points of spans of which every member has one. None without members.
pub(super) fn three_points(spans: impl IntoIterator<Item = TimeSpan>) -> Option<[TimeSpan; 3]> {
    let mut seconds: Vec<f64> = spans.into_iter().map(TimeSpan::seconds).collect();
    let mut point = |share| Some(TimeSpan::from_seconds(quantile(&mut seconds, share)?));
    Some([point(0.1)?, point(0.5)?, point(0.9)?])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hours(hours: f64) -> Option<TimeSpan> {
        Some(TimeSpan::from_hours(hours))
    }

    #[test]
    fn deciles_rise_from_the_start() {
        let start = Moment::from_unix_seconds(0);
        let window = window(start, (0..10).map(|hour| hours(f64::from(hour)))).unwrap();
        assert!(window.deciles.is_sorted());
        assert_eq!(window.likely(), start + TimeSpan::from_hours(4.5));
    }

    #[test]
    fn what_never_comes_ends_at_the_longest_cook() {
        let start = Moment::from_unix_seconds(0);
        let late = window(start, [hours(4.0), hours(5.0), None]).unwrap();
        assert_eq!(late.to(), start + LONGEST_COOK);
        assert!(window(start, [hours(4.0), None, None]).is_none());
        assert!(window_of_those(start, [hours(4.0), None, None]).is_none());
        let those = window_of_those(start, [hours(4.0), hours(6.0), None]).unwrap();
        assert_eq!(those.likely(), start + TimeSpan::from_hours(5.0));
    }
}
