//! The matrix function `phi2(A) = (exp(A) - 1 - A) / A^2` of a 2 by 2 matrix, which gives the mean of a linear decay.

use dewrun_numeric::fast::fast_exp;
use dewrun_numeric::polynomial::polynomial;

/// A 2 by 2 matrix, by rows.
pub(crate) type Matrix = [[f64; 2]; 2];

/// `phi2(A)`, ready to be applied.
///
/// By the eigenvalues: `phi2(A) = a + b A` with the divided difference b of phi2 over them.
/// A pair of complex eigenvalues, which the tube does not have, would be taken as its real part.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Phi2(Matrix);

impl Phi2 {
    #[inline]
    pub(crate) fn of(matrix: &Matrix) -> Self {
        let [[a, b], [c, d]] = *matrix;
        let half_trace = 0.5 * (a + d);
        let half_difference = 0.5 * (a - d);
        let root = (half_difference * half_difference + b * c).max(0.0).sqrt();
        let (slow, fast) = (half_trace + root, half_trace - root);
        let (at_slow, at_fast) = (phi2(slow), phi2(fast));
        let divided = if 1e-4 * (1.0 + slow.abs()) < slow - fast {
            (at_slow - at_fast) / (slow - fast)
        } else {
            phi2_slope(half_trace)
        };
        let constant = at_slow - divided * slow;
        Self([
            [constant + divided * a, divided * b],
            [divided * c, constant + divided * d],
        ])
    }

    /// `phi2(A) v`.
    #[inline]
    pub(crate) fn times(&self, v: [f64; 2]) -> [f64; 2] {
        let [[a, b], [c, d]] = self.0;
        [a * v[0] + b * v[1], c * v[0] + d * v[1]]
    }
}

/// Below this size the closed forms lose digits and the series takes over.
const SERIES_BELOW: f64 = 0.3;

fn phi2(z: f64) -> f64 {
    if z.abs() < SERIES_BELOW {
        // Coefficients 1 / (k + 2)!; the next term is below 1e-12.
        const SERIES: [f64; 9] = [
            1.0 / 2.0,
            1.0 / 6.0,
            1.0 / 24.0,
            1.0 / 120.0,
            1.0 / 720.0,
            1.0 / 5040.0,
            1.0 / 40_320.0,
            1.0 / 362_880.0,
            1.0 / 3_628_800.0,
        ];
        return polynomial(&SERIES, z);
    }
    (fast_exp(z.min(300.0)) - 1.0 - z) / (z * z)
}

/// Derivative of phi2.
fn phi2_slope(z: f64) -> f64 {
    if z.abs() < SERIES_BELOW {
        // Coefficients (k + 1) / (k + 3)!.
        const SERIES: [f64; 7] = [
            1.0 / 6.0,
            1.0 / 12.0,
            1.0 / 40.0,
            1.0 / 180.0,
            1.0 / 1008.0,
            1.0 / 6720.0,
            1.0 / 51_840.0,
        ];
        return polynomial(&SERIES, z);
    }
    let e = fast_exp(z.min(300.0));
    (z * e - 2.0 * e + 2.0 + z) / (z * z * z)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The series itself, term by term, which converges everywhere.
    fn series(z: f64) -> f64 {
        let mut term = 0.5;
        let mut sum = 0.0;
        for k in 0..200 {
            sum += term;
            term *= z / (f64::from(k) + 3.0);
        }
        sum
    }

    #[test]
    fn scalars_are_the_series() {
        for z in [-12.0, -2.0, -0.31, -0.29, -1e-3, 0.0, 1e-5, 0.2, 0.5, 3.0] {
            assert!((phi2(z) / series(z) - 1.0).abs() < 1e-9, "phi2 of {z}");
            let slope = (series(z + 1e-5) - series(z - 1e-5)) / 2e-5;
            assert!((phi2_slope(z) / slope - 1.0).abs() < 1e-6, "slope at {z}");
        }
    }

    #[test]
    fn a_matrix_is_the_series_of_its_powers() {
        let matrix = [[-0.8, 0.3], [0.1, -1.4]];
        let v = [1.0, -2.0];
        let mut power = v;
        let mut factor = 0.5;
        let mut sum = [0.0, 0.0];
        for k in 0..60 {
            sum = [sum[0] + factor * power[0], sum[1] + factor * power[1]];
            power = [
                matrix[0][0] * power[0] + matrix[0][1] * power[1],
                matrix[1][0] * power[0] + matrix[1][1] * power[1],
            ];
            factor /= f64::from(k) + 3.0;
        }
        let got = Phi2::of(&matrix).times(v);
        assert!(
            (got[0] - sum[0]).abs() < 1e-9 && (got[1] - sum[1]).abs() < 1e-9,
            "{got:?} {sum:?}"
        );
    }
}
