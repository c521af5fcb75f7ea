//! Least squares with a ridge.

use nalgebra::{DMatrix, DVector};

/// A line through many dimensions: an intercept and a slope for each feature.
pub(crate) struct Line {
    intercept: f64,
    slopes: DVector<f64>,
    centre: DVector<f64>,
}

impl Line {
    /// Fits `values` to `features` (one row each); `ridge` is added to the diagonal, the intercept is left free.
    /// None if there is nothing to fit.
    /// Without a ridge the features must tell the slopes apart.
    ///
    /// Hoerl, A. E. and Kennard, R. W. (1970), Ridge regression, Technometrics 12(1):55-67.
    pub(crate) fn fit(features: &[Vec<f64>], values: &[f64], ridge: f64) -> Option<Self> {
        let (rows, columns) = (features.len(), features.first()?.len());
        let raw = DMatrix::from_fn(rows, columns, |row, column| features[row][column]);
        let centre = raw.row_mean().transpose();
        let x = DMatrix::from_fn(rows, columns, |row, column| {
            raw[(row, column)] - centre[column]
        });
        let mean = values.iter().sum::<f64>() / rows as f64;
        let y = DVector::from_fn(rows, |row, _| values[row] - mean);
        let normal = x.transpose() * &x + DMatrix::identity(columns, columns) * ridge;
        let slopes = normal.cholesky()?.solve(&(x.transpose() * y));
        Some(Self {
            intercept: mean,
            slopes,
            centre,
        })
    }

    /// The value at a row of features.
    pub(crate) fn at(&self, features: &[f64]) -> f64 {
        let away = DVector::from_column_slice(features) - &self.centre;
        self.intercept + self.slopes.dot(&away)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first two rows of Anscombe's quartet: y = 3.00 + 0.500 x. Anscombe, F. J. (1973), Graphs in statistical
    /// analysis, The American Statistician 27(1):17-21.
    #[test]
    fn meets_a_printed_regression() {
        let x = [10.0, 8.0, 13.0, 9.0, 11.0, 14.0, 6.0, 4.0, 12.0, 7.0, 5.0];
        let y = [
            8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68,
        ];
        let rows: Vec<Vec<f64>> = x.iter().map(|x| vec![*x]).collect();
        let line = Line::fit(&rows, &y, 0.0).unwrap();
        assert!((line.at(&[0.0]) - 3.00).abs() < 0.005);
        assert!((line.at(&[1.0]) - line.at(&[0.0]) - 0.500).abs() < 0.0005);
    }

    #[test]
    fn a_ridge_draws_the_slope_in() {
        // Centred x squared sums to 2, x·y to 2: slope 2 / (2 + ridge).
        let rows = [vec![1.0], vec![2.0], vec![3.0]];
        let line = Line::fit(&rows, &[1.0, 2.0, 3.0], 2.0).unwrap();
        assert!((line.at(&[3.0]) - line.at(&[2.0]) - 0.5).abs() < 1e-12);
        assert!((line.at(&[2.0]) - 2.0).abs() < 1e-12);
        // Two features that say the same share the slope: each 1 / (2 + ridge / 2).
        let twins = [vec![1.0, 1.0], vec![2.0, 2.0], vec![3.0, 3.0]];
        let line = Line::fit(&twins, &[1.0, 2.0, 3.0], 2.0).unwrap();
        assert!((line.at(&[3.0, 2.0]) - line.at(&[2.0, 2.0]) - 1.0 / 3.0).abs() < 1e-12);
    }
}
