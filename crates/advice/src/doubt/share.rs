//! Which part of a spread comes from which input.

/// For each input the part of the spread of a result that it alone makes, 0 to 1.
///
/// Inputs come as shares of their own distributions, 0 to 1, one list a case; results one a case.
/// They add up to 1 where inputs act alone, and to less where they act together.
///
/// # Range
/// From some 200 cases on; with fewer the shares of small inputs are noise, and are cut at 0.
///
/// # Accuracy
/// 0.03 with 4096 even points.
///
/// # Source
/// Variance of the means in slices of equal chance, less what chance makes of it, the largest first and the others of what it leaves: the correlation ratio, K. Pearson 1905, as an estimate of first-order shares in A. Saltelli et al., Global Sensitivity Analysis (2008), section 1.2.
///
/// ```
/// use dewrun_advice::first_order_shares;
/// let points: Vec<Vec<f64>> = (0..1000u32).map(|n| vec![f64::from(n) / 1000.0, f64::from(n * 617 % 1000) / 1000.0]).collect();
/// let results: Vec<f64> = points.iter().map(|point| 3.0 * point[0]).collect();
/// let shares = first_order_shares(&points, &results);
/// assert!(0.98 < shares[0] && shares[1] < 0.02);
/// ```
#[must_use]
pub fn first_order_shares(points: &[Vec<f64>], results: &[f64]) -> Vec<f64> {
    weighted_shares(points, results, &vec![1.0; results.len()])
}

/// As [`first_order_shares`], of cases that count by weights of their own; equal weights give the same.
///
/// # Range
/// As [`first_order_shares`]; where few cases bear most of the weight, the shares of small inputs are noise.
///
/// # Accuracy
/// As [`first_order_shares`] with as many cases as the weights are worth.
///
/// # Source
/// As [`first_order_shares`]; sums of squares are freed of what weights make of chance: `V1 - V2/V1`, V the sums of weights and of their squares.
///
/// ```
/// use dewrun_advice::{first_order_shares, weighted_shares};
/// let points: Vec<Vec<f64>> = (0..1000u32).map(|n| vec![f64::from(n) / 1000.0, f64::from(n * 617 % 1000) / 1000.0]).collect();
/// let results: Vec<f64> = points.iter().map(|point| 3.0 * point[0] + point[1]).collect();
/// assert_eq!(weighted_shares(&points, &results, &[1.0; 1000]), first_order_shares(&points, &results));
/// ```
#[must_use]
pub fn weighted_shares(points: &[Vec<f64>], results: &[f64], weights: &[f64]) -> Vec<f64> {
    let inputs = points.first().map_or(0, Vec::len);
    let variance = Slice::of(results.iter().copied().zip(weights.iter().copied())).variance();
    let mut shares = vec![0.0; inputs];
    if variance <= 0.0 {
        return shares;
    }
    // The largest first, each of what those before it have left: few points hold two inputs apart only where neither hides the other.
    let mut left = results.to_vec();
    let mut rest: Vec<usize> = (0..inputs).collect();
    for _ in 0..LARGEST {
        let of_rest = |input: &usize| of_one(points, (&left, weights), *input) / variance;
        let found: Vec<f64> = rest.iter().map(of_rest).collect();
        for (input, share) in rest.iter().zip(&found) {
            if let Some(place) = shares.get_mut(*input) {
                *place = *share;
            }
        }
        let pairs = rest.iter().copied().zip(found);
        let largest = pairs.max_by(|one, other| one.1.total_cmp(&other.1));
        let Some((input, _)) = largest.filter(|(_, share)| 0.0 < *share) else {
            break;
        };
        rest.retain(|one| *one != input);
        remove(points, (&mut left, weights), input);
    }
    shares
}

/// The variance that an input makes by itself.
fn of_one(points: &[Vec<f64>], (results, weights): (&[f64], &[f64]), input: usize) -> f64 {
    let slices = sliced(points, (results, weights), input);
    let within: f64 = slices.iter().map(Slice::squares_about_mean).sum();
    let free: f64 = slices.iter().map(Slice::free).sum();
    let all = Slice::of(results.iter().copied().zip(weights.iter().copied()));
    if free <= 0.0 {
        return 0.0;
    }
    // What is left within slices, counted for the means that were taken, is not made by this input.
    (all.variance() - within / free).max(0.0)
}

/// Takes from results what follows an input: a straight line in each slice.
fn remove(points: &[Vec<f64>], (results, weights): (&mut [f64], &[f64]), input: usize) {
    let share = |point: &Vec<f64>| point.get(input).copied().unwrap_or(0.0);
    let along: Vec<f64> = points.iter().map(share).collect();
    let slices = sliced(points, (results, weights), input);
    let places = sliced(points, (&along, weights), input);
    let mut slopes = vec![(0.0, 0.0); slices.len()];
    for ((at, result), weight) in along.iter().zip(results.iter()).zip(weights) {
        let slice = slice_of(*at, slices.len());
        let (Some(mean), Some(place)) = (slices.get(slice), places.get(slice)) else {
            continue;
        };
        let off = at - place.mean();
        if let Some((both, square)) = slopes.get_mut(slice) {
            *both += weight * off * (result - mean.mean());
            *square += weight * off * off;
        }
    }
    for (at, result) in along.iter().zip(results) {
        let slice = slice_of(*at, slices.len());
        let (Some(mean), Some(place)) = (slices.get(slice), places.get(slice)) else {
            continue;
        };
        let (both, square) = slopes.get(slice).copied().unwrap_or_default();
        let slope = if 0.0 < square { both / square } else { 0.0 };
        *result -= mean.mean() + slope * (at - place.mean());
    }
}

/// So many inputs are told apart one after the other.
const LARGEST: u32 = 8;
/// So many slices at the most: enough to follow a wave.
const SLICES: usize = 24;
/// So many cases in each at least: even points of few cases fall into few patterns, and each would be taken for an input's own.
const CASES_A_SLICE: usize = 32;

#[derive(Clone, Copy, Default)]
struct Slice {
    count: f64,
    /// Sum of the squares of the weights.
    crowding: f64,
    sum: f64,
    squares: f64,
}

impl Slice {
    fn of(values: impl Iterator<Item = (f64, f64)>) -> Self {
        let mut found = Self::default();
        for (value, weight) in values {
            found.add(value, weight);
        }
        found
    }

    fn add(&mut self, value: f64, weight: f64) {
        self.count += weight;
        self.crowding += weight * weight;
        self.sum += weight * value;
        self.squares += weight * value * value;
    }

    fn mean(&self) -> f64 {
        if self.count == 0.0 {
            return 0.0;
        }
        self.sum / self.count
    }

    fn squares_about_mean(&self) -> f64 {
        if self.count == 0.0 {
            return 0.0;
        }
        (self.squares - self.sum * self.sum / self.count).max(0.0)
    }

    /// What is left of the count once a mean was taken.
    fn free(&self) -> f64 {
        if self.count == 0.0 {
            return 0.0;
        }
        self.count - self.crowding / self.count
    }

    fn variance(&self) -> f64 {
        let free = self.free();
        if free <= 0.0 {
            return 0.0;
        }
        self.squares_about_mean() / free
    }
}

fn sliced(points: &[Vec<f64>], (results, weights): (&[f64], &[f64]), input: usize) -> Vec<Slice> {
    let count = SLICES.min(points.len() / CASES_A_SLICE).max(2);
    let mut slices = vec![Slice::default(); count];
    for ((point, result), weight) in points.iter().zip(results).zip(weights) {
        let share = point.get(input).copied().unwrap_or(0.0);
        if let Some(slice) = slices.get_mut(slice_of(share, count)) {
            slice.add(*result, *weight);
        }
    }
    slices
}

/// The slice that a share lies in, of so many.
fn slice_of(share: f64, count: usize) -> usize {
    let count = u32::try_from(count).unwrap_or(1);
    let edges = (1..count).map(|edge| f64::from(edge) / f64::from(count));
    edges.take_while(|edge| *edge <= share).count()
}

#[cfg(test)]
mod tests {
    use dewrun_numeric::sobol::Sobol;

    use super::*;

    /// 3a + b of even points: variances 9/12 and 1/12, so nine tenths and one; an input that does nothing has none, however few points.
    #[test]
    fn parts_are_told_apart_with_few_points() {
        for (cases, near) in [(256, 0.03), (1024, 0.01)] {
            let sequence = Sobol::new(5);
            let point = |at| (0..30).map(|input| sequence.at(at, input)).collect();
            let points: Vec<Vec<f64>> = (0..cases).map(point).collect();
            let results: Vec<f64> = points.iter().map(|x| 3.0 * x[4] + x[17]).collect();
            for (input, share) in first_order_shares(&points, &results).iter().enumerate() {
                let expected = [(4, 0.9), (17, 0.1)].iter().find(|(at, _)| *at == input);
                let expected = expected.map_or(0.0, |(_, share)| *share);
                assert!((share - expected).abs() < near, "{cases}, {input}: {share}");
            }
        }
    }
}
