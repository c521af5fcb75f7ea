//! An ensemble smoother: moves the members' draws towards what was read.
//!
//! Each pass takes in the same readings with their errors enlarged by the number of passes (Emerick, A. A. and Reynolds,
//! A. C. (2013), Ensemble smoother with multiple data assimilation, Computers & Geosciences 55:3-15). Errors have heavy
//! tails: a reading counts by how well the others bear it out, with the weight of a t variable of four degrees of
//! freedom. Draws of an owner that a reading tells nothing about stay as they are. The sums are written out in a fixed
//! order, because the products of a linear algebra library round differently from machine to machine.

use super::evidence::Evidence;
use crate::forecast::normal_quantile;

/// Degrees of freedom of the errors' tails.
const TAILS: f64 = 4.0;
/// Rounds in which weights and residuals settle.
const ROUNDS: u32 = 6;

/// One reading with the piece that it is of.
#[derive(Clone, Copy, Debug)]
pub(super) struct Datum {
    pub(super) piece: usize,
    pub(super) says: Evidence,
}

/// Readings and what each member makes of them.
pub(super) struct Seen<'a> {
    pub(super) data: &'a [Datum],
    /// By member, then by reading.
    pub(super) figures: &'a [Vec<f64>],
}

/// A square matrix, by rows.
type Matrix = Vec<Vec<f64>>;

impl Seen<'_> {
    /// How much each reading counts, 0 to 1, by how well it fits the members and the other readings.
    pub(super) fn weights(&self) -> Vec<f64> {
        let n = self.data.len();
        let spread = covariance(&centred(self.figures), &centred(self.figures));
        let members = self.figures.len() as f64;
        let missed: Vec<f64> = (0..n)
            .map(|j| {
                let by = self
                    .figures
                    .iter()
                    .map(|row| self.data[j].says.misses_by(row[j]));
                by.sum::<f64>() / members
            })
            .collect();
        let counts = |square: f64| ((TAILS + 1.0) / (TAILS + square)).min(1.0);
        // First each by itself against the members: one that is far off must not make the sound ones look wrong.
        let own = self.errors(&vec![1.0; n]);
        let alone = |j: usize| counts(missed[j] * missed[j] / (spread[j][j] + own[j][j]));
        let mut weights: Vec<f64> = (0..n).map(alone).collect();
        for _ in 0..ROUNDS {
            let total = sum(&spread, &self.errors(&weights), 1.0);
            let Some(factor) = cholesky(total) else { break };
            let inverse: Matrix = (0..n).map(|j| solve(&factor, &unit(n, j))).collect();
            let pulled = solve(&factor, &missed);
            for j in 0..n {
                // The residual against what all others foretell, in its own deviations: Dubrule, O. (1983), Cross
                // validation of kriging in a unique neighborhood, Mathematical Geology 15(6):687-699.
                let square = pulled[j] * pulled[j] / inverse[j][j];
                weights[j] = counts(square);
            }
        }
        weights
    }

    /// Moves the members' coordinates. `touches` says whether a coordinate has to do with a piece.
    pub(super) fn assimilate(
        &self,
        coordinates: &mut [Vec<f64>],
        weights: &[f64],
        passes: f64,
        seed: u64,
        touches: impl Fn(usize, usize) -> bool,
    ) {
        let errors = self.errors(weights);
        let apart = centred(self.figures);
        let spread = covariance(&apart, &apart);
        let (Some(factor), Some(root)) = (
            cholesky(sum(&spread, &errors, passes)),
            cholesky(errors.clone()),
        ) else {
            return;
        };
        let noise = self.noise(&root, passes, seed);
        let pulls: Vec<Vec<f64>> = self
            .figures
            .iter()
            .zip(&noise)
            .map(|(figures, noise)| {
                let missed: Vec<f64> = (0..self.data.len())
                    .map(|j| self.data[j].says.misses_by(figures[j] - noise[j]))
                    .collect();
                solve(&factor, &missed)
            })
            .collect();
        let cross = covariance(&centred(coordinates), &apart);
        for (member, pull) in coordinates.iter_mut().zip(&pulls) {
            for (c, coordinate) in member.iter_mut().enumerate() {
                for (j, datum) in self.data.iter().enumerate() {
                    if touches(c, datum.piece) {
                        *coordinate += cross[c][j] * pull[j];
                    }
                }
            }
        }
    }

    /// Covariance of errors. What makes a reading count for less is its own error alone: one that is far off says
    /// nothing about those beside it.
    fn errors(&self, weights: &[f64]) -> Matrix {
        let entry = |i: usize, j: usize| {
            let (a, b) = (&self.data[i], &self.data[j]);
            if a.piece != b.piece {
                return 0.0;
            }
            let both = a.says.covariance(&b.says, i == j);
            if i == j { both / weights[i] } else { both }
        };
        let n = self.data.len();
        (0..n)
            .map(|i| (0..n).map(|j| entry(i, j)).collect())
            .collect()
    }

    /// Errors drawn for every member, without a mean.
    fn noise(&self, root: &Matrix, passes: f64, seed: u64) -> Vec<Vec<f64>> {
        let n = self.data.len();
        let scale = libm::sqrt(passes);
        let drawn: Vec<Vec<f64>> = (0..self.figures.len())
            .map(|member| {
                let plain: Vec<f64> = (0..n).map(|j| normal(seed, member, j)).collect();
                let row = |i: usize| (0..=i).map(|j| root[i][j] * plain[j]).sum::<f64>() * scale;
                (0..n).map(row).collect()
            })
            .collect();
        centred(&drawn)
    }
}

/// Covariance over the members of two sets of columns without mean.
pub(super) fn covariance(a: &[Vec<f64>], b: &[Vec<f64>]) -> Matrix {
    let (rows, columns) = (a.first().map_or(0, Vec::len), b.first().map_or(0, Vec::len));
    let mut sums = vec![vec![0.0; columns]; rows];
    for (a, b) in a.iter().zip(b) {
        for (row, a) in sums.iter_mut().zip(a) {
            for (sum, b) in row.iter_mut().zip(b) {
                *sum += a * b;
            }
        }
    }
    let over = (a.len() as f64 - 1.0).max(1.0);
    for sum in sums.iter_mut().flatten() {
        *sum /= over;
    }
    sums
}

/// Every column without its mean.
pub(super) fn centred(rows: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let columns = rows.first().map_or(0, Vec::len);
    let mean = |j: usize| rows.iter().map(|row| row[j]).sum::<f64>() / rows.len() as f64;
    let means: Vec<f64> = (0..columns).map(mean).collect();
    rows.iter()
        .map(|row| row.iter().zip(&means).map(|(x, mean)| x - mean).collect())
        .collect()
}

fn sum(a: &Matrix, b: &Matrix, times: f64) -> Matrix {
    let row =
        |(a, b): (&Vec<f64>, &Vec<f64>)| a.iter().zip(b).map(|(a, b)| a + times * b).collect();
    a.iter().zip(b).map(row).collect()
}

fn unit(n: usize, j: usize) -> Vec<f64> {
    (0..n).map(|i| if i == j { 1.0 } else { 0.0 }).collect()
}

/// The lower triangle whose product with its transpose is a symmetric matrix. None if it is not positive.
pub(super) fn cholesky(mut a: Matrix) -> Option<Matrix> {
    for i in 0..a.len() {
        for j in 0..=i {
            let known: f64 = (0..j).map(|k| a[i][k] * a[j][k]).sum();
            let left = a[i][j] - known;
            if i == j {
                if left.is_nan() || left <= 0.0 {
                    return None;
                }
                a[i][i] = libm::sqrt(left);
            } else {
                a[i][j] = left / a[j][j];
            }
        }
    }
    Some(a)
}

/// Solves for a right-hand side, given that triangle.
pub(super) fn solve(factor: &Matrix, right: &[f64]) -> Vec<f64> {
    let n = factor.len();
    let mut x = right.to_vec();
    for i in 0..n {
        let known: f64 = (0..i).map(|k| factor[i][k] * x[k]).sum();
        x[i] = (x[i] - known) / factor[i][i];
    }
    for i in (0..n).rev() {
        let known: f64 = (i + 1..n).map(|k| factor[k][i] * x[k]).sum();
        x[i] = (x[i] - known) / factor[i][i];
    }
    x
}

/// A standard normal number for a member and a place: the finaliser of Steele, Lea and Flood (2014), Fast splittable
/// pseudorandom number generators, over the three.
pub(super) fn normal(seed: u64, member: usize, place: usize) -> f64 {
    let mut x = seed
        .wrapping_add((member as u64 + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15))
        .wrapping_add((place as u64 + 1).wrapping_mul(0xd1b5_4a32_d192_ed03));
    x = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    x = (x ^ (x >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    x ^= x >> 31;
    let share = ((x >> 11) as f64 + 0.5) / (1_u64 << 53) as f64;
    normal_quantile(share)
}
