//! The Rosenbrock-W method of the march.

/// Stages of the method.
pub(crate) const STAGES: usize = 4;

/// Coefficients in the form that needs no product with the Jacobian.
#[derive(Clone, Debug)]
pub(crate) struct Tableau {
    /// Diagonal of the method.
    pub(crate) gamma: f64,
    /// Time of each stage as a fraction of the step.
    pub(crate) time: [f64; STAGES],
    /// State of each stage from the increments before it.
    pub(crate) state: [[f64; STAGES]; STAGES],
    /// What earlier increments, over the step, add to the right-hand side of each stage.
    pub(crate) carry: [[f64; STAGES]; STAGES],
    /// The result, and how it differs from the lower order.
    pub(crate) result: [f64; STAGES],
    pub(crate) error: [f64; STAGES],
}

/// ROS34PW2 of Rang and Angermann, BIT Numerical Mathematics 45 (2005) 761: four stages, third order with any Jacobian,
/// second order embedded, L-stable. Coefficients from memory; the tests check every order condition.
const ALPHA: [[f64; STAGES]; STAGES] = [
    [0.0; STAGES],
    [0.871_733_043_016_918, 0.0, 0.0, 0.0],
    [0.844_570_600_153_694_2, -0.112_990_642_364_841_85, 0.0, 0.0],
    [0.0, 0.0, 1.0, 0.0],
];
const GAMMA: [[f64; STAGES]; STAGES] = [
    [0.435_866_521_508_459, 0.0, 0.0, 0.0],
    [-0.871_733_043_016_918, 0.435_866_521_508_459, 0.0, 0.0],
    [
        -0.903_380_570_130_440_8,
        0.054_180_672_388_095_326,
        0.435_866_521_508_459,
        0.0,
    ],
    [
        0.242_123_807_060_953_46,
        -1.223_250_583_904_514_7,
        0.545_260_255_335_102_1,
        0.435_866_521_508_459,
    ],
];
const WEIGHTS: [f64; STAGES] = [
    0.242_123_807_060_953_46,
    -1.223_250_583_904_514_7,
    1.545_260_255_335_102,
    0.435_866_521_508_459,
];
const WEIGHTS_BELOW: [f64; STAGES] = [
    0.378_109_031_458_193_7,
    -0.096_042_292_212_423_18,
    0.5,
    0.217_933_260_754_229_5,
];

impl Tableau {
    /// The method in the form of the march: with u = Γ k, so that (1/(γh) − J) u_i = f(y + Σ a_ij u_j) + Σ c_ij u_j / h.
    pub(crate) fn new() -> Self {
        let inverse = inverse_of_lower(&GAMMA);
        let mut state = [[0.0; STAGES]; STAGES];
        let mut carry = [[0.0; STAGES]; STAGES];
        let mut time = [0.0; STAGES];
        let mut result = [0.0; STAGES];
        let mut error = [0.0; STAGES];
        for i in 0..STAGES {
            time[i] = ALPHA[i].iter().sum();
            for j in 0..STAGES {
                for k in 0..STAGES {
                    state[i][j] += ALPHA[i][k] * inverse[k][j];
                }
                if i != j {
                    carry[i][j] = -inverse[i][j];
                }
                result[j] += WEIGHTS[i] * inverse[i][j];
                error[j] += (WEIGHTS[i] - WEIGHTS_BELOW[i]) * inverse[i][j];
            }
        }
        Self {
            gamma: GAMMA[0][0],
            time,
            state,
            carry,
            result,
            error,
        }
    }
}

/// Inverse of a lower triangular matrix by forward substitution.
fn inverse_of_lower(m: &[[f64; STAGES]; STAGES]) -> [[f64; STAGES]; STAGES] {
    let mut inverse = [[0.0; STAGES]; STAGES];
    for column in 0..STAGES {
        for row in column..STAGES {
            let unit = if row == column { 1.0 } else { 0.0 };
            let sum: f64 = (column..row).map(|k| m[row][k] * inverse[k][column]).sum();
            inverse[row][column] = (unit - sum) / m[row][row];
        }
    }
    inverse
}

#[cfg(test)]
mod tests {
    use super::*;

    fn dot(a: [f64; STAGES], b: [f64; STAGES]) -> f64 {
        a.iter().zip(b).map(|(x, y)| x * y).sum()
    }

    fn times(m: &[[f64; STAGES]; STAGES], v: [f64; STAGES]) -> [f64; STAGES] {
        m.map(|row| dot(row, v))
    }

    #[test]
    fn every_order_condition_of_a_w_method_holds() {
        let one = [1.0; STAGES];
        let a = times(&ALPHA, one);
        let g = times(&GAMMA, one);
        let square = a.map(|x| x * x);
        let close =
            |value: f64, wanted: f64| assert!((value - wanted).abs() < 1e-14, "{value} {wanted}");
        for weights in [WEIGHTS, WEIGHTS_BELOW] {
            close(dot(weights, one), 1.0);
            close(dot(weights, a), 0.5);
            close(dot(weights, g), 0.0);
        }
        close(dot(WEIGHTS, square), 1.0 / 3.0);
        close(dot(WEIGHTS, times(&ALPHA, a)), 1.0 / 6.0);
        close(dot(WEIGHTS, times(&ALPHA, g)), 0.0);
        close(dot(WEIGHTS, times(&GAMMA, a)), 0.0);
        close(dot(WEIGHTS, times(&GAMMA, g)), 0.0);
    }
}
