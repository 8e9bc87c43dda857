//! Root of a function between two points of opposite sign.

/// How a search for a root ends without one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RootError {
    /// The function has the same sign at both ends (or is not a number there): no root is known to lie between.
    NoSignChange {
        /// Lower end and the function there.
        low: (f64, f64),
        /// Upper end and the function there.
        high: (f64, f64),
    },
    /// The iteration bound was reached; the bracket is what is left.
    NotConverged {
        /// Lower end of the last bracket.
        low: f64,
        /// Upper end of the last bracket.
        high: f64,
    },
}

/// The next place to look for a root: the proposal where it lies within what is known, else the middle, or a stride from the only known end.
///
/// `low` and `high` are where the function is known to lie on either side of the root; either may be infinite, not both.
///
/// ```
/// use dewrun_numeric::within;
/// assert_eq!(within(0.0, f64::INFINITY, -3.0, 40.0), 40.0);
/// assert_eq!(within(0.0, 1.0, 7.0, 40.0), 0.5);
/// assert_eq!(within(0.0, 1.0, 0.3, 40.0), 0.3);
/// ```
#[must_use]
#[inline]
pub fn within(low: f64, high: f64, proposal: f64, stride: f64) -> f64 {
    if low < proposal && proposal < high {
        return proposal;
    }
    match (low.is_finite(), high.is_finite()) {
        (true, false) => low + stride,
        (false, true) => high - stride,
        _ => 0.5 * (low + high),
    }
}

/// More steps than bisection needs for any bracket of doubles that `itp` is given here.
const MAX_STEPS: u32 = 200;

/// Root of `f` in `[low, high]` to within `tolerance` in `x`, by interpolation, truncation and projection.
///
/// The signs of `f` at the ends must differ; never more steps than bisection plus one.
///
/// # Errors
/// [`RootError::NoSignChange`] where the ends have the same sign, [`RootError::NotConverged`] past the iteration bound.
///
/// # Source
/// Oliveira & Takahashi, ACM Trans. Math. Softw. 47 (2021) 5, <https://doi.org/10.1145/3423597>; k1 = 0.2/(b-a), k2 = 2, n0 = 1.
///
/// ```
/// let root = dewrun_numeric::itp(|x| x * x - 2.0, 0.0, 2.0, 1e-12).unwrap();
/// assert!((root - 2.0_f64.sqrt()).abs() < 1e-11);
/// ```
pub fn itp(
    mut f: impl FnMut(f64) -> f64,
    low: f64,
    high: f64,
    tolerance: f64,
) -> Result<f64, RootError> {
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (f(a), f(b));
    if fa == 0.0 {
        return Ok(a);
    }
    if fb == 0.0 {
        return Ok(b);
    }
    let opposite = (fa < 0.0 && 0.0 < fb) || (fb < 0.0 && 0.0 < fa);
    if !opposite || !(b - a).is_finite() {
        return Err(RootError::NoSignChange {
            low: (a, fa),
            high: (b, fb),
        });
    }
    let k1 = 0.2 / (b - a);
    let mut radius = tolerance * 0.5;
    while radius < b - a {
        radius *= 2.0;
    }
    for _ in 0..MAX_STEPS {
        let half = 0.5 * (a + b);
        let width = b - a;
        if width <= 2.0 * tolerance || half <= a || b <= half {
            return Ok(half);
        }
        let reach = (radius - 0.5 * width).max(0.0);
        let regula = (fb * a - fa * b) / (fb - fa);
        let sigma = if regula <= half { 1.0 } else { -1.0 };
        let delta = k1 * width * width;
        let truncated = if delta <= (half - regula).abs() {
            regula + sigma * delta
        } else {
            half
        };
        let x = if (truncated - half).abs() <= reach {
            truncated
        } else {
            half - sigma * reach
        };
        let fx = f(x);
        radius *= 0.5;
        if fx == 0.0 {
            return Ok(x);
        }
        if (fx < 0.0) == (fa < 0.0) {
            a = x;
            fa = fx;
        } else {
            b = x;
            fb = fx;
        }
    }
    Err(RootError::NotConverged { low: a, high: b })
}
