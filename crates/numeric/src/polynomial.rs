//! Polynomials of fixed degree, evaluated in short chains of dependent operations.

/// `c[0] + c[1] x + c[2] x^2 + ..`, even and odd powers side by side.
///
/// Two Horner chains in `x^2` take half the latency of one in `x`; rounding stays within a few units in the last place of the largest term.
///
/// ```
/// use dewrun_numeric::polynomial::polynomial;
/// assert_eq!(polynomial(&[1.0, 2.0, 3.0], 2.0), 17.0);
/// ```
#[must_use]
#[inline]
pub fn polynomial<const N: usize>(coefficients: &[f64; N], x: f64) -> f64 {
    let square = x * x;
    let (mut same, mut other) = (0.0, 0.0);
    for coefficient in coefficients.iter().rev() {
        (same, other) = (other, same * square + coefficient);
    }
    // The last coefficient taken is the constant, so `other` holds the even powers and `same` the odd ones.
    other + x * same
}

/// Value and derivative of `c[0] + c[1] x + c[2] x^2 + ..`.
///
/// ```
/// use dewrun_numeric::polynomial::polynomial_with_slope;
/// assert_eq!(polynomial_with_slope(&[1.0, 2.0, 3.0], 2.0), (17.0, 14.0));
/// ```
#[must_use]
#[inline]
pub fn polynomial_with_slope<const N: usize>(coefficients: &[f64; N], x: f64) -> (f64, f64) {
    let square = x * x;
    let (mut same, mut other) = ((0.0, 0.0), (0.0, 0.0));
    for coefficient in coefficients.iter().rev() {
        let (value, slope) = same;
        (same, other) = (
            other,
            (value * square + coefficient, slope * square + value),
        );
    }
    // As above, with the slopes of both in `x^2`.
    let (even, odd) = (other, same);
    let value = even.0 + x * odd.0;
    let slope = odd.0 + 2.0 * (x * even.1 + square * odd.1);
    (value, slope)
}
