//! How long a bare tube has to be for its air to come near the wall's temperature: the length that sheds water on purpose.

use dewrun_numeric::elementary::{exp, ln};
use dewrun_numeric::integrate::gauss_legendre_8;
use dewrun_numeric::itp;
use dewrun_quantity::Length;
use dewrun_tube::film_inside::local;

/// Longer than so many bores nobody makes it.
const LONGEST: f64 = 1e6;
/// Nobody measures finer, in cube roots of bores.
const FINE: f64 = 1e-6;

/// The length behind an inlet after which a share of the difference between air and wall is left; none beyond a million bores.
///
/// Arguments: bore, Reynolds number (-), Prandtl number (-), share that is left (-), such as 0.1.
///
/// # Range
/// Re up to 1e6, Pr 0.5 to 2000, shares between 0 and 1; a wall of one temperature.
///
/// # Accuracy
/// That of the inside film: laminar 6 %, turbulent 10 %.
///
/// # Errors
/// None.
///
/// # Source
/// Root of `ln(1/share) = integral of 4 Nu/(Re Pr) over x/D`, the local film that of [`dewrun_tube::film_inside`].
///
/// ```
/// use dewrun_quantity::Length;
/// use dewrun_remedies::inverse::shedding_length;
/// // 10 L/min of air at 20 °C through 12 mm.
/// let length = shedding_length(Length::millimetres(12.0), 1166.0, 0.71, 0.1).unwrap();
/// assert!((length.to_metres() - 1.43).abs() < 0.07);
/// ```
#[must_use]
pub fn shedding_length(bore: Length, reynolds: f64, prandtl: f64, left: f64) -> Option<Length> {
    let wanted = -ln(left);
    let root = itp(
        |root| transfer_units(reynolds, prandtl, root) - wanted,
        FINE,
        exp(ln(LONGEST) / 3.0),
        FINE,
    );
    let root = root.ok()?;
    Some(bore * (root * root * root))
}

/// `4 Nu/(Re Pr)` from the inlet to a place, which is told by the cube root of its distance in bores: in that the film is smooth.
fn transfer_units(reynolds: f64, prandtl: f64, root: f64) -> f64 {
    gauss_legendre_8(0.0, root)
        .iter()
        .map(|(at, weight)| {
            let nusselt = local(reynolds, prandtl, at * at * at);
            weight * 3.0 * at * at * 4.0 * nusselt / (reynolds * prandtl)
        })
        .sum()
}
