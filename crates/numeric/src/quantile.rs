//! Values below which a share of a distribution lies.

use crate::elementary::ln;
use crate::polynomial::polynomial;

/// The value below which a share of the triangular distribution lies: from low over the usual, its peak, to high.
///
/// # Range
/// Low up to the usual up to high; a share from 0 to 1. All equal gives the value itself.
///
/// # Source
/// The inverse of the integral of two straight lines; S. Kotz & J. R. van Dorp, Beyond Beta (2004), chapter 1.
///
/// ```
/// use dewrun_numeric::quantile::triangular;
/// assert_eq!(triangular(16.0, 20.0, 24.0, 0.5), 20.0);
/// assert_eq!(triangular(0.0, 0.0, 2.0, 0.75), 1.0);
/// ```
#[must_use]
pub fn triangular(low: f64, usual: f64, high: f64, share: f64) -> f64 {
    let width = high - low;
    if width <= 0.0 {
        return usual;
    }
    let below = (usual - low) / width;
    if share < below {
        low + (share * width * (usual - low)).sqrt()
    } else {
        high - ((1.0 - share) * width * (high - usual)).sqrt()
    }
}

/// The value below which a share of the normal distribution of mean 0 and deviation 1 lies.
///
/// # Range
/// A share from 1e-300 to below 1; outside, an infinity.
///
/// # Accuracy
/// 1e-15 relative, as published.
///
/// # Source
/// M. J. Wichura, Algorithm AS 241, Appl. Stat. 37 (1988) 477, <https://doi.org/10.2307/2347330>, routine PPND16.
///
/// ```
/// let found = dewrun_numeric::quantile::normal(0.975);
/// assert!((found - 1.959_963_984_540_054).abs() < 1e-14);
/// ```
#[must_use]
pub fn normal(share: f64) -> f64 {
    /// Within so much of the middle one ratio serves.
    const CENTRAL: f64 = 0.425;
    /// Where the tail becomes far.
    const FAR: f64 = 5.0;
    let from_middle = share - 0.5;
    if from_middle.abs() <= CENTRAL {
        let r = CENTRAL * CENTRAL - from_middle * from_middle;
        return from_middle * polynomial(&A, r) / polynomial(&B, r);
    }
    let tail = share.min(1.0 - share);
    if tail <= 0.0 {
        return f64::INFINITY.copysign(from_middle);
    }
    let r = (-ln(tail)).sqrt();
    let size = if r <= FAR {
        polynomial(&C, r - 1.6) / polynomial(&D, r - 1.6)
    } else {
        polynomial(&E, r - FAR) / polynomial(&F, r - FAR)
    };
    size.copysign(from_middle)
}
const A: [f64; 8] = [
    3.3871328727963665,
    133.14166789178438,
    1971.5909503065513,
    13731.69376550946,
    45921.95393154987,
    67265.7709270087,
    33430.57558358813,
    2509.0809287301227,
];
const B: [f64; 8] = [
    1.0,
    42.31333070160091,
    687.1870074920579,
    5394.196021424751,
    21213.794301586597,
    39307.89580009271,
    28729.085735721943,
    5226.495278852854,
];
const C: [f64; 8] = [
    1.4234371107496835,
    4.630337846156546,
    5.769497221460691,
    3.6478483247632045,
    1.2704582524523684,
    0.2417807251774506,
    0.022723844989269184,
    0.0007745450142783414,
];
const D: [f64; 8] = [
    1.0,
    2.053191626637759,
    1.6763848301838038,
    0.6897673349851,
    0.14810397642748008,
    0.015198666563616457,
    0.0005475938084995345,
    1.0507500716444169e-09,
];
const E: [f64; 8] = [
    6.657904643501103,
    5.463784911164114,
    1.7848265399172913,
    0.29656057182850487,
    0.026532189526576124,
    0.0012426609473880784,
    2.7115555687434876e-05,
    2.0103343992922881e-07,
];
const F: [f64; 8] = [
    1.0,
    0.599832206555888,
    0.1369298809227358,
    0.014875361290850615,
    0.0007868691311456133,
    1.8463183175100548e-05,
    1.421511758316446e-07,
    2.0442631033899397e-15,
];
