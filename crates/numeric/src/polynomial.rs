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
    let mut rest = coefficients.iter().rev();
    // Not from nought on: a product with it is a product all the same.
    let (mut same, mut other) = match (rest.next(), rest.next()) {
        (Some(last), Some(before)) => (*last, *before),
        (only, _) => return only.copied().unwrap_or(0.0),
    };
    for coefficient in rest {
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
    let mut rest = coefficients.iter().rev();
    let (mut same, mut other) = match (rest.next(), rest.next()) {
        (Some(last), Some(before)) => ((*last, 0.0), (*before, 0.0)),
        (only, _) => return (only.copied().unwrap_or(0.0), 0.0),
    };
    for (place, coefficient) in rest.enumerate() {
        let (value, slope) = same;
        // The first of either has no slope yet.
        let slope = if place < 2 {
            value
        } else {
            slope * square + value
        };
        (same, other) = (other, (value * square + coefficient, slope));
    }
    // As above, with the slopes of both in `x^2`.
    let (even, odd) = (other, same);
    let value = even.0 + x * odd.0;
    let slope = odd.0 + 2.0 * (x * even.1 + square * odd.1);
    (value, slope)
}
