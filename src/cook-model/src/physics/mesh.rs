//! Cells from the middle to the surface, thin where the water goes.

/// Thickness of the cell at a drying surface, m.
const FINEST: f64 = 0.4e-3;

/// Largest over smallest cell.
const LARGEST_RATIO: f64 = 25.0;

/// Cells over a length (m), thinnest at the far end, each thinner than the one before by the same ratio.
pub(crate) fn fine_at_surface(length: f64, cells: usize) -> Vec<f64> {
    graded(length, cells, |i| cells - 1 - i)
}

/// Cells over a length (m), thinnest at both ends.
pub(crate) fn fine_at_both_ends(length: f64, cells: usize) -> Vec<f64> {
    graded(length, cells, |i| i.min(cells - 1 - i))
}

/// Cells of size q^rank, with q found so that the finest has its size if the largest ratio allows it.
fn graded(length: f64, cells: usize, rank: impl Fn(usize) -> usize) -> Vec<f64> {
    let sizes = |q: f64| -> Vec<f64> {
        let powers: Vec<f64> = std::iter::successors(Some(1.0), |p| Some(p * q))
            .take(cells)
            .collect();
        (0..cells).map(|i| powers[rank(i)]).collect()
    };
    let finest = |q: f64| length / sizes(q).iter().sum::<f64>();
    let top_rank = (0..cells).map(&rank).max().unwrap_or(0).max(1);
    #[expect(clippy::cast_precision_loss, reason = "at most 60")]
    let (mut low, mut high) = (1.0, libm::pow(LARGEST_RATIO, 1.0 / top_rank as f64));
    if finest(low) <= FINEST {
        high = low;
    } else if finest(high) >= FINEST {
        low = high;
    }
    for _ in 0..100 {
        let middle = 0.5 * (low + high);
        if finest(middle) > FINEST {
            low = middle;
        } else {
            high = middle;
        }
    }
    let unit = finest(high);
    sizes(high).iter().map(|size| size * unit).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_fill_the_length_and_are_thin_where_they_should_be() {
        for length in [3e-3, 12e-3, 45e-3, 120e-3] {
            for cells in [8, 14, 18, 60] {
                let one = fine_at_surface(length, cells);
                let both = fine_at_both_ends(length, cells);
                for mesh in [&one, &both] {
                    assert!((mesh.iter().sum::<f64>() / length - 1.0).abs() < 1e-12);
                    let largest = mesh.iter().fold(0.0, |a: f64, b| a.max(*b));
                    let smallest = mesh.iter().fold(f64::MAX, |a, b| a.min(*b));
                    assert!(largest / smallest < LARGEST_RATIO * 1.000_001);
                }
                assert!(one[0] >= one[cells - 1] && both[0] == both[cells - 1]);
            }
        }
        let packer = fine_at_surface(45.4e-3, 18);
        assert!((packer[17] - FINEST).abs() < 1e-9);
    }
}
