//! Elementary functions, the same bits natively and in the browser.
//!
//! The standard library calls the platform's own, which differ in the last place; these come from the crate `libm` everywhere.

/// The exponential function.
#[must_use]
#[inline]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// `exp(x) - 1`, right for small `x` too.
#[must_use]
#[inline]
pub fn exp_m1(x: f64) -> f64 {
    libm::expm1(x)
}

/// The natural logarithm; NaN below zero.
#[must_use]
#[inline]
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// `ln(1 + x)`, right for small `x` too.
#[must_use]
#[inline]
pub fn ln_1p(x: f64) -> f64 {
    libm::log1p(x)
}

/// The decimal logarithm.
#[must_use]
#[inline]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// `x` to the power `y`.
#[must_use]
#[inline]
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// The cube root, of either sign.
#[must_use]
#[inline]
pub fn cbrt(x: f64) -> f64 {
    libm::cbrt(x)
}

/// The sine, of an angle in radians.
#[must_use]
#[inline]
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}

/// The cosine, of an angle in radians.
#[must_use]
#[inline]
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}

/// The angle of the point (x, y), in radians from -pi to pi.
#[must_use]
#[inline]
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// The tangent, of an angle in radians up to an eighth of a turn either way.
///
/// Lambert's continued fraction `x/(1 - x^2/(3 - x^2/(5 - ..)))` (Abramowitz and Stegun, 1964, 4.3.94), cut where the
/// next part is below 1e-12 of the whole: for any angle `libm` brings along what reduces it, which is more than all else here.
#[must_use]
pub fn tan_of_eighth(x: f64) -> f64 {
    let square = x * x;
    let below = [11.0, 9.0, 7.0, 5.0, 3.0, 1.0];
    x / below
        .into_iter()
        .fold(13.0, |rest, odd| odd - square / rest)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tangent_is_that_of_the_library() {
        for hundredth in -79..=79 {
            let x = f64::from(hundredth) / 100.0;
            let (found, expected) = (tan_of_eighth(x), libm::tan(x));
            assert!((found - expected).abs() < 1e-12, "{x}: {found}, {expected}");
        }
    }
}
