//! Integration of a smooth function over an interval.

/// Half of the nodes of the eight-point rule on -1..1 with their weights; the other half mirrors them.
///
/// Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 25.4, n = 8.
const EIGHT: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_27),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_48),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_26),
];

/// Nodes and weights of Gauss and Legendre's eight-point rule on an interval: the sum of weight times value is the integral.
///
/// Exact for polynomials up to degree 15.
///
/// ```
/// use dewrun_numeric::integrate::gauss_legendre_8;
/// let cubes: f64 = gauss_legendre_8(1.0, 3.0).map(|(x, weight)| weight * x * x * x).iter().sum();
/// assert!((cubes - 20.0).abs() < 1e-13);
/// ```
#[must_use]
pub fn gauss_legendre_8(low: f64, high: f64) -> [(f64, f64); 8] {
    let (middle, half) = (0.5 * (low + high), 0.5 * (high - low));
    let [a, b, c, d] = EIGHT;
    let at = |sign: f64, (node, weight): (f64, f64)| (middle + sign * half * node, half * weight);
    [
        at(-1.0, d),
        at(-1.0, c),
        at(-1.0, b),
        at(-1.0, a),
        at(1.0, a),
        at(1.0, b),
        at(1.0, c),
        at(1.0, d),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn powers_up_to_fifteen_are_exact() {
        for power in 0..=15_i32 {
            // The integral of x^n from 0 to 1 is 1/(n + 1).
            let mut sum = 0.0;
            for (x, weight) in gauss_legendre_8(0.0, 1.0) {
                sum += weight * (0..power).fold(1.0, |product, _| product * x);
            }
            let expected = 1.0 / (f64::from(power) + 1.0);
            assert!((sum - expected).abs() < 1e-15, "x^{power}: {sum}");
        }
    }

    #[test]
    fn a_steep_decay_is_met() {
        let sum: f64 = gauss_legendre_8(0.0, 2.3)
            .iter()
            .map(|(x, weight)| weight * crate::elementary::exp(-4.0 * x))
            .sum();
        let expected = 0.25 * (1.0 - crate::elementary::exp(-9.2));
        assert!((sum / expected - 1.0).abs() < 1e-6, "{sum}");
    }
}
