//! Monotone cubic interpolation: no overshoot between the points.

/// Slopes at the points of a curve, such that a cubic between each two of them never overshoots.
///
/// Inside, the weighted harmonic mean of the slopes of both sides, zero at an extreme; at the ends a three-point formula that keeps the sign.
/// Points whose `x` do not rise get the slope zero.
///
/// # Source
/// Fritsch & Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300, <https://doi.org/10.1137/0905021>; the ends as in Fritsch & Carlson, SIAM J. Numer. Anal. 17 (1980) 238.
///
/// ```
/// let slopes = dewrun_numeric::interpolate::fritsch_butland_slopes(&[0.0, 1.0, 2.0], &[0.0, 1.0, 2.0]);
/// assert_eq!(slopes, [1.0, 1.0, 1.0]);
/// ```
#[must_use]
pub fn fritsch_butland_slopes(xs: &[f64], ys: &[f64]) -> Vec<f64> {
    let pieces: Vec<(f64, f64)> = xs
        .windows(2)
        .zip(ys.windows(2))
        .map(|(x, y)| match (x, y) {
            (&[x0, x1], &[y0, y1]) if x0 < x1 => (x1 - x0, (y1 - y0) / (x1 - x0)),
            _ => (0.0, 0.0),
        })
        .collect();
    let (Some(&first), Some(&last)) = (pieces.first(), pieces.last()) else {
        return vec![0.0; xs.len()];
    };
    let inner = pieces.windows(2).map(|pair| match *pair {
        [before, after] => inner_slope(before, after),
        _ => 0.0,
    });
    let next_to_first = pieces.get(1).copied().unwrap_or(first);
    let next_to_last = pieces.iter().rev().nth(1).copied().unwrap_or(last);
    let mut slopes = Vec::with_capacity(xs.len());
    slopes.push(end_slope(first, next_to_first));
    slopes.extend(inner);
    slopes.push(end_slope(last, next_to_last));
    slopes
}

/// The cubic between two points with given slopes, at `x`.
///
/// Each point is `(x, y, slope)`; `x` between them.
///
/// ```
/// use dewrun_numeric::interpolate::hermite;
/// assert_eq!(hermite((0.0, 0.0, 0.0), (2.0, 4.0, 0.0), 1.0), 2.0);
/// ```
#[must_use]
pub fn hermite(from: (f64, f64, f64), to: (f64, f64, f64), x: f64) -> f64 {
    let width = to.0 - from.0;
    if width <= 0.0 {
        return from.1;
    }
    let s = (x - from.0) / width;
    let rest = 1.0 - s;
    from.1 * rest * rest * (1.0 + 2.0 * s)
        + to.1 * s * s * (3.0 - 2.0 * s)
        + width * s * rest * (from.2 * rest - to.2 * s)
}

fn inner_slope((before_x, before): (f64, f64), (after_x, after): (f64, f64)) -> f64 {
    if before * after <= 0.0 {
        return 0.0;
    }
    let weight = (before_x + 2.0 * after_x) / (3.0 * (before_x + after_x));
    before * after / (weight * after + (1.0 - weight) * before)
}

fn end_slope((end_x, end): (f64, f64), (next_x, next): (f64, f64)) -> f64 {
    if end_x + next_x <= 0.0 {
        return 0.0;
    }
    let slope = ((2.0 * end_x + next_x) * end - end_x * next) / (end_x + next_x);
    if slope * end <= 0.0 {
        return 0.0;
    }
    if end * next <= 0.0 && 3.0 * end.abs() < slope.abs() {
        3.0 * end
    } else {
        slope
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of an exponential decay on uneven points, between which the cubic is compared with it.
    #[test]
    fn a_decay_is_met_and_stays_monotone() {
        let xs = [0.0, 0.2, 0.5, 1.0, 1.7, 2.6];
        let ys = xs.map(|x| crate::elementary::exp(-x));
        let slopes = fritsch_butland_slopes(&xs, &ys);
        let mut before = f64::INFINITY;
        for i in 0..=260 {
            let x = f64::from(i) * 0.01;
            let piece = xs.iter().rposition(|&from| from <= x).unwrap_or(0).min(4);
            let at = |j: usize| (xs[j], ys[j], slopes[j]);
            let y = hermite(at(piece), at(piece + 1), x);
            assert!((y - crate::elementary::exp(-x)).abs() < 0.006, "{y} at {x}");
            assert!(y <= before, "rises at {x}");
            before = y;
        }
    }

    #[test]
    fn an_extreme_is_not_passed() {
        let slopes = fritsch_butland_slopes(&[0.0, 1.0, 2.0, 3.0], &[0.0, 1.0, 1.0, 0.0]);
        assert_eq!(slopes[1], 0.0, "flat beside a plateau");
        assert_eq!(slopes[2], 0.0, "flat beside a plateau");
    }

    #[test]
    fn points_on_one_place_are_no_trouble() {
        let slopes = fritsch_butland_slopes(&[1.0, 1.0, 2.0], &[0.0, 5.0, 6.0]);
        assert!(slopes.iter().all(|slope| slope.is_finite()), "{slopes:?}");
        assert_eq!(
            fritsch_butland_slopes(&[1.0], &[3.0]),
            [0.0],
            "one point has no slope"
        );
    }
}
