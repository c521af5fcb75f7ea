//! Room for everything: tickets that would lie on each other move aside, bars that overlap in time lie side by side.

use std::ops::Range;

/// Places for tickets in one lane, all counted in hours: each at or behind its own time, in the order given, and at
/// least `pitch` apart. The times must not fall.
#[must_use]
pub fn pushed(times: &[f64], pitch: f64) -> Vec<f64> {
    let mut free = f64::NEG_INFINITY;
    times
        .iter()
        .map(|time| {
            let place = time.max(free);
            free = place + pitch;
            place
        })
        .collect()
}

/// The furthest that a ticket is pushed from its own time.
#[must_use]
pub fn furthest_push(times: &[f64], pitch: f64) -> f64 {
    pushed(times, pitch)
        .iter()
        .zip(times)
        .map(|(place, time)| place - time)
        .fold(0.0, f64::max)
}

/// For each span the lowest row in which it touches no earlier one. The starts must not fall.
#[must_use]
pub fn rows(spans: &[(f64, f64)]) -> Vec<usize> {
    let mut ends: Vec<f64> = Vec::new();
    spans
        .iter()
        .map(
            |(start, end)| match ends.iter().position(|busy| busy <= start) {
                Some(row) => {
                    ends[row] = *end;
                    row
                }
                None => {
                    ends.push(*end);
                    ends.len() - 1
                }
            },
        )
        .collect()
}

/// Runs of neighbours that lie closer than `pitch` to the first of their run. The times must not fall.
#[must_use]
pub fn bundles(times: &[f64], pitch: f64) -> Vec<Range<usize>> {
    let mut runs: Vec<Range<usize>> = Vec::new();
    for (index, time) in times.iter().enumerate() {
        match runs.last_mut() {
            Some(run) if time - times[run.start] < pitch => run.end = index + 1,
            _ => runs.push(index..index + 1),
        }
    }
    runs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tickets_with_room_stay_at_their_times() {
        assert_eq!(pushed(&[0.0, 1.0, 2.5], 1.0), [0.0, 1.0, 2.5]);
        assert_eq!(furthest_push(&[0.0, 1.0, 2.5], 1.0), 0.0);
    }

    #[test]
    fn crowded_tickets_move_behind_their_times_and_keep_their_order() {
        assert_eq!(pushed(&[0.0, 0.0, 0.25, 4.0], 1.0), [0.0, 1.0, 2.0, 4.0]);
        assert_eq!(furthest_push(&[0.0, 0.0, 0.25, 4.0], 1.0), 1.75);
    }

    #[test]
    fn no_tickets_need_no_room() {
        assert!(pushed(&[], 1.0).is_empty());
        assert_eq!(furthest_push(&[], 1.0), 0.0);
        assert!(bundles(&[], 1.0).is_empty());
    }

    #[test]
    fn bars_that_overlap_lie_side_by_side_and_a_freed_row_is_taken_again() {
        let spans = [(0.0, 4.0), (1.0, 2.0), (2.0, 3.0), (2.5, 5.0), (4.0, 6.0)];
        assert_eq!(rows(&spans), [0, 1, 1, 2, 0]);
    }

    #[test]
    fn no_two_bars_of_a_row_overlap() {
        let spans: Vec<(f64, f64)> = (0..40_u32)
            .map(|n| {
                let start = f64::from(n) * 0.3;
                (start, start + 0.5 + f64::from(n * 7 % 5))
            })
            .collect();
        let placed = rows(&spans);
        for later in 0..spans.len() {
            for earlier in 0..later {
                let apart = placed[earlier] != placed[later] || spans[earlier].1 <= spans[later].0;
                assert!(apart, "{earlier} and {later} lie on each other");
            }
        }
    }

    #[test]
    fn near_neighbours_make_one_bundle() {
        assert_eq!(bundles(&[0.0, 0.5, 0.9, 1.0, 3.0], 1.0), [0..3, 3..4, 4..5]);
    }
}
