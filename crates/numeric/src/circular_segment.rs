//! The part of a circle below a chord: area, chord, arc, the integral of the area over the height, and back.
//!
//! Heights count from the lowest point of the circle; below it there is nothing, from the highest point on the whole circle.
//! Lengths are in any one unit, areas and integrals in its square and cube.

use core::f64::consts::PI;

use crate::elementary::{atan2, cos, pow, sin};
use crate::within;

/// Below this share of the diameter the closed forms lose digits to cancellation, and the series needs few terms.
const SHALLOW: f64 = 0.05;
/// Terms of the series that bring it to the last digit at [`SHALLOW`].
const TERMS: u32 = 12;
/// Newton's steps on the integral: it is convex, so a handful reaches the last digit from anywhere.
const MAX_STEPS: u32 = 60;

/// Area of a circle.
///
/// ```
/// assert!((dewrun_numeric::circular_segment::whole_area(2.0) - core::f64::consts::PI).abs() < 1e-15);
/// ```
#[must_use]
pub fn whole_area(diameter: f64) -> f64 {
    0.25 * PI * diameter * diameter
}

/// Area of the segment: `D^2/4 (u - sin u cos u)`, `cos u = 1 - 2 h/D`.
///
/// Arguments: height of the segment, diameter of the circle.
/// Relative error below 1e-13 for any height above zero.
///
/// ```
/// use dewrun_numeric::circular_segment::area;
/// assert!((area(1.0, 2.0) - core::f64::consts::FRAC_PI_2).abs() < 1e-14, "half the circle");
/// ```
#[must_use]
pub fn area(height: f64, diameter: f64) -> f64 {
    if height <= 0.0 {
        return 0.0;
    }
    if diameter <= height {
        return whole_area(diameter);
    }
    let share = height / diameter;
    if share < SHALLOW {
        let series = series(share, |k| 2.0 / (k + 1.5));
        return diameter * diameter * share * share.sqrt() * series;
    }
    let u = half_angle(height, diameter);
    0.25 * diameter * diameter * (u - sin(u) * cos(u))
}

/// Length of the chord: `2 sqrt(h (D - h))`.
///
/// Arguments: height of the segment, diameter of the circle. Nothing where the segment is empty or the whole circle.
///
/// ```
/// use dewrun_numeric::circular_segment::chord;
/// assert_eq!(chord(1.0, 2.0), 2.0);
/// ```
#[must_use]
pub fn chord(height: f64, diameter: f64) -> f64 {
    2.0 * (height * (diameter - height)).max(0.0).sqrt()
}

/// Length of the arc below the chord: `D u`.
///
/// Arguments: height of the segment, diameter of the circle.
///
/// ```
/// use dewrun_numeric::circular_segment::arc;
/// assert!((arc(1.0, 2.0) - core::f64::consts::PI).abs() < 1e-15, "half round");
/// ```
#[must_use]
pub fn arc(height: f64, diameter: f64) -> f64 {
    diameter * half_angle(height, diameter)
}

/// Integral of the segment's area over its height, from nothing: `D^3/8 (sin u - u cos u - sin^3 u / 3)`.
///
/// Arguments: height of the segment, diameter of the circle.
/// Above the circle it goes on with the whole area. Relative error below 1e-12 for any height above zero.
///
/// ```
/// use dewrun_numeric::circular_segment::area_integral;
/// assert!((area_integral(1.0, 2.0) - 2.0 / 3.0).abs() < 1e-14, "D^3/12 at half height");
/// ```
#[must_use]
pub fn area_integral(height: f64, diameter: f64) -> f64 {
    if height <= 0.0 {
        return 0.0;
    }
    if diameter <= height {
        return whole_area(diameter) * (height - 0.5 * diameter);
    }
    let share = height / diameter;
    let cube = diameter * diameter * diameter;
    if share < SHALLOW {
        let series = series(share, |k| 2.0 / ((k + 1.5) * (k + 2.5)));
        return cube * share * share * share.sqrt() * series;
    }
    let u = half_angle(height, diameter);
    let (sine, cosine) = (sin(u), cos(u));
    0.125 * cube * (sine - u * cosine - sine * sine * sine / 3.0)
}

/// The height at which [`area_integral`] has a value.
///
/// Arguments: the integral, diameter of the circle (above zero).
/// Relative error below 1e-12; nothing for an integral of zero or less.
///
/// ```
/// use dewrun_numeric::circular_segment::height_of_integral;
/// assert!((height_of_integral(2.0 / 3.0, 2.0) - 1.0).abs() < 1e-14);
/// ```
#[must_use]
pub fn height_of_integral(integral: f64, diameter: f64) -> f64 {
    if integral <= 0.0 || diameter <= 0.0 {
        return 0.0;
    }
    let to_the_top = area_integral(diameter, diameter);
    if to_the_top <= integral {
        return diameter + (integral - to_the_top) / whole_area(diameter);
    }
    // The first term of the series is too large by itself, so its height is too small: Newton rises from there.
    let cube = diameter * diameter * diameter;
    let first = diameter * pow(1.875 * integral / cube, 0.4);
    let (mut low, mut high) = (0.0, diameter);
    let mut height = within(low, high, first, 0.0);
    for _ in 0..MAX_STEPS {
        let off = area_integral(height, diameter) - integral;
        if off < 0.0 {
            low = height;
        } else {
            high = height;
        }
        let next = within(low, high, height - off / area(height, diameter), 0.0);
        let step = (next - height).abs();
        height = next;
        if step <= 1e-15 * diameter.min(height) {
            break;
        }
    }
    height
}

/// Half the angle that the chord subtends at the centre: `cos u = 1 - 2 h/D`, without its loss of digits at either end.
fn half_angle(height: f64, diameter: f64) -> f64 {
    let below = height.max(0.0).min(diameter.max(0.0));
    2.0 * atan2(below.sqrt(), (diameter - below).max(0.0).sqrt())
}

/// `sum over k of b_k s^k weight(k)`, b_k the coefficients of `sqrt(1 - s)`: the chord's series, integrated.
fn series(share: f64, weight: impl Fn(f64) -> f64) -> f64 {
    let (mut coefficient, mut power, mut sum) = (1.0, 1.0, 0.0);
    for k in 0..TERMS {
        let k = f64::from(k);
        sum += coefficient * power * weight(k);
        coefficient *= (k - 0.5) / (k + 1.0);
        power *= share;
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Height, area and its integral of a circle of diameter 1 by SciPy 1.17.1 `quad` over `y = sin^2 t`,
    /// where the integrands `4 (sin t cos t)^2` and `(h - sin^2 t) 4 (sin t cos t)^2` are smooth.
    const QUADRATURE: [(f64, f64, f64); 12] = [
        (1e-6, 1.333_332_933_333_262e-9, 5.333_332_190_476_031e-16),
        (1e-3, 4.215_105_076_528_91e-5, 1.686_186_632_051_112e-8),
        (0.02, 3.748_527_302_081_96e-3, 3.004_022_833_399_185e-5),
        (0.049, 1.424_765_967_409_51e-2, 2.804_612_481_658_176e-4),
        (0.051, 1.511_942_336_231_878e-2, 3.098_255_781_219_016e-4),
        (0.1, 4.087_527_719_832_11e-2, 1.649_889_120_671_562e-3),
        (0.25, 1.535_462_123_260_946e-1, 1.574_003_465_500_377e-2),
        (0.4, 2.933_698_066_454_78e-1, 4.904_669_110_451_392e-2),
        (0.5, 3.926_990_816_987_243e-1, 8.333_333_333_333_333e-2),
        (0.8, 6.735_743_588_970_453e-1, 2.447_389_743_357_803e-1),
        (0.95, 7.707_166_866_780_478e-1, 3.537_240_989_990_609e-1),
        (0.999, 7.853_560_123_466_83e-1, 3.919_137_003_971_93e-1),
    ];

    #[track_caller]
    fn near(got: f64, expected: f64, relative: f64) {
        assert!(
            (got - expected).abs() <= relative * expected.abs(),
            "{got:e}, expected {expected:e}"
        );
    }

    #[test]
    fn quadrature_is_met() {
        for (height, expected_area, expected_integral) in QUADRATURE {
            near(area(height, 1.0), expected_area, 1e-13);
            near(area_integral(height, 1.0), expected_integral, 1e-12);
            // In another unit the square and the cube of the factor.
            near(area(height * 19.0, 19.0), 361.0 * expected_area, 1e-12);
            near(
                area_integral(height * 19.0, 19.0),
                6859.0 * expected_integral,
                1e-12,
            );
        }
    }

    /// A quarter of the diameter: u = 60 degrees, sin u = sqrt(3)/2, cos u = 1/2.
    #[test]
    fn a_quarter_of_the_height_has_closed_forms() {
        let (d, root) = (4.0, 3.0_f64.sqrt());
        near(chord(1.0, d), 2.0 * root, 1e-15);
        near(arc(1.0, d), d * PI / 3.0, 1e-15);
        near(area(1.0, d), 4.0 * (PI / 3.0 - 0.25 * root), 1e-14);
        // D^3/8 = 8, sin^3 u / 3 = sqrt(3)/8.
        let expected = 8.0 * (0.5 * root - PI / 6.0 - 0.125 * root);
        near(area_integral(1.0, d), expected, 1e-13);
    }

    #[test]
    fn nothing_below_and_all_above() {
        for height in [-1.0, 0.0] {
            assert_eq!(area(height, 2.0), 0.0, "no area at {height}");
            assert_eq!(arc(height, 2.0), 0.0, "no arc at {height}");
            assert_eq!(chord(height, 2.0), 0.0, "no chord at {height}");
            assert_eq!(area_integral(height, 2.0), 0.0, "no integral at {height}");
        }
        near(area(3.0, 2.0), PI, 1e-15);
        near(arc(3.0, 2.0), 2.0 * PI, 1e-15);
        assert_eq!(chord(3.0, 2.0), 0.0, "no chord above the circle");
        // pi at the top of a circle of diameter 2, and pi more for a height of 1 more.
        near(area_integral(2.0, 2.0), PI, 1e-15);
        near(area_integral(3.0, 2.0), 2.0 * PI, 1e-15);
    }

    #[test]
    fn segment_and_its_complement_are_the_circle() {
        for step in 1..200 {
            let height = f64::from(step) * 0.095;
            let both = area(height, 19.0) + area(19.0 - height, 19.0);
            near(both, whole_area(19.0), 1e-13);
            near(
                arc(height, 19.0) + arc(19.0 - height, 19.0),
                19.0 * PI,
                1e-14,
            );
        }
    }

    #[test]
    fn height_comes_back_from_its_integral() {
        let mut height = 1e-9;
        while height < 60.0 {
            let back = height_of_integral(area_integral(height, 19.0), 19.0);
            near(back, height, 1e-12);
            height *= 1.17;
        }
        for height in [18.9, 18.999, 18.999_999, 19.0, 19.000_001] {
            near(
                height_of_integral(area_integral(height, 19.0), 19.0),
                height,
                1e-13,
            );
        }
        assert_eq!(height_of_integral(0.0, 19.0), 0.0, "nothing for nothing");
        assert_eq!(height_of_integral(-1.0, 19.0), 0.0, "nor for less");
    }

    #[test]
    fn all_rise_with_the_height() {
        let mut before = (0.0, 0.0, 0.0);
        for step in 1..=2000 {
            let height = f64::from(step) * 1e-3;
            let now = (
                area(height, 2.0),
                arc(height, 2.0),
                area_integral(height, 2.0),
            );
            assert!(
                before.0 < now.0 && before.1 < now.1 && before.2 < now.2,
                "falls at {height}: {before:?} to {now:?}"
            );
            before = now;
        }
    }
}
