//! Points that fill a cube evenly: the Sobol sequence, scrambled so that its errors are those of chance and no pattern of its own.

mod directions;

use directions::DIRECTIONS;

/// Bits of a coordinate.
const BITS: u32 = 32;
/// Half of the last place, so that no coordinate is 0 or 1.
const HALF: f64 = 0.5;
/// Bits of the number of a point within its stretch: so many points are scrambled alike.
const STRETCH: u32 = 8;

/// A scrambled Sobol sequence: the same seed gives the same points everywhere.
///
/// The first 2, 4, 8 .. 256 points are each as even as so many points can be, so that more can be taken until enough is known.
/// Each further 256 are the same points scrambled anew: what a scrambling has of two or more dimensions that hang together
/// is not carried on (of 4096 points of the plain sequence, ten pairs of the first 42 dimensions leave half their sixteenths by sixteenths empty), and the mean over many stretches is no worse than that of chance.
///
/// # Source
/// I. M. Sobol', USSR Comput. Math. Math. Phys. 7 (1967) 86; scrambled as A. B. Owen, J. Complexity 14 (1998) 466, <https://doi.org/10.1006/jcom.1998.0487>, the flips by a hash of the bits before them;
/// past the table's 128 dimensions the points of earlier ones come in another order, B. Burley, J. Comput. Graph. Tech. 9 (2020) no. 4.
///
/// ```
/// use dewrun_numeric::sobol::Sobol;
/// let points = Sobol::new(7);
/// // Of 256 points as many as can be lie in each quarter.
/// let low = (0..256).filter(|at| points.at(*at, 3) < 0.25).count();
/// assert_eq!(low, 64);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sobol {
    seed: u64,
}

impl Sobol {
    /// The sequence of a seed.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self { seed }
    }

    /// One dimension of the sequence; any number of them.
    #[must_use]
    pub fn dimension(self, dimension: usize) -> Dimension {
        let (round, place) = (dimension / DIRECTIONS.len(), dimension % DIRECTIONS.len());
        let own = mixed(self.seed ^ mixed(wide(round)));
        Dimension {
            numbers: direction_numbers(place),
            seed: mixed(own ^ mixed(wide(place) + 1)),
            order: (0 < round).then_some(own),
        }
    }

    /// A coordinate of a point, above 0 and below 1: points count from 0, dimensions too.
    #[must_use]
    pub fn at(self, point: u32, dimension: usize) -> f64 {
        self.dimension(dimension).at(point)
    }
}

/// One dimension of a [`Sobol`] sequence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dimension {
    numbers: [u32; 32],
    seed: u64,
    /// In which order the points come, where it is another one.
    order: Option<u64>,
}

impl Dimension {
    /// The coordinate of a point, above 0 and below 1; points count from 0.
    #[must_use]
    pub fn at(&self, point: u32) -> f64 {
        let stretch = u64::from(point >> STRETCH);
        let own = |seed: u64| {
            if stretch == 0 {
                seed
            } else {
                mixed(seed ^ mixed(stretch))
            }
        };
        let point = point & ((1 << STRETCH) - 1);
        // Swapping halves of halves keeps neighbouring 2, 4, 8 .. points together.
        let point = self.order.map_or(point, |seed| scrambled(point, own(seed)));
        fraction(scrambled(coordinate(&self.numbers, point), own(self.seed)))
    }
}

fn wide(number: usize) -> u64 {
    u64::try_from(number).unwrap_or(u64::MAX)
}

fn fraction(bits: u32) -> f64 {
    (f64::from(bits) + HALF) / (f64::from(u32::MAX) + 1.0)
}

/// A coordinate of an unscrambled point, as a binary fraction.
fn coordinate(numbers: &[u32; 32], point: u32) -> u32 {
    let mut found = 0;
    for (bit, number) in numbers.iter().enumerate() {
        if point >> bit & 1 == 1 {
            found ^= number;
        }
    }
    found
}

/// The direction numbers of a dimension, the first by the table, the others by its recurrence.
fn direction_numbers(dimension: usize) -> [u32; 32] {
    let mut numbers = [0_u32; 32];
    let Some((polynomial, first)) = DIRECTIONS.get(dimension) else {
        return numbers;
    };
    if dimension == 0 {
        // The first dimension counts in the base of two, backwards.
        for (at, number) in numbers.iter_mut().enumerate() {
            *number = 1 << (31 - at);
        }
        return numbers;
    }
    let degree = first.len();
    for at in 0..numbers.len() {
        let number = match first.get(at) {
            Some(given) => given << (31 - at),
            None => {
                let before = |back: usize| numbers.get(at - back).copied().unwrap_or(0);
                let last = before(degree);
                let mut number = last ^ last >> degree;
                for back in 1..degree {
                    if polynomial >> (degree - back) & 1 == 1 {
                        number ^= before(back);
                    }
                }
                number
            }
        };
        if let Some(place) = numbers.get_mut(at) {
            *place = number;
        }
    }
    numbers
}

/// The bits with each flipped or not by a hash of those before it.
fn scrambled(bits: u32, seed: u64) -> u32 {
    let mut found = bits;
    for bit in 0..BITS {
        let before = if bit == 0 { 0 } else { bits >> (BITS - bit) };
        let key = u64::from(before) << 8 | u64::from(bit);
        let flip = mixed(seed ^ mixed(key)) & 1 == 1;
        if flip {
            found ^= 1 << (BITS - 1 - bit);
        }
    }
    found
}

/// Bits well mixed.
///
/// # Source
/// The finisher of SplitMix64: G. L. Steele, D. Lea and C. H. Flood, OOPSLA 2014, <https://doi.org/10.1145/2714064.2660195>.
fn mixed(bits: u64) -> u64 {
    let mut z = bits.wrapping_add(0x9E37_79B9_7F4A_7C15);
    z = (z ^ z >> 30).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ z >> 27).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ z >> 31
}

/// A coordinate of an unscrambled point of the sequence by Gray code, as other libraries count them.
///
/// For comparison; [`Sobol::at`] is what samples are drawn by.
#[must_use]
pub fn unscrambled(point: u32, dimension: usize) -> f64 {
    f64::from(coordinate(
        &direction_numbers(dimension),
        point ^ point >> 1,
    )) / (f64::from(u32::MAX) + 1.0)
}

#[cfg(test)]
mod tests {
    use super::Sobol;

    /// Each of the first powers of two has one point in each of so many slices, in every dimension.
    #[test]
    fn points_fill_every_slice() {
        for dimension in [0, 1, 5, 40, 127, 128, 200] {
            let sequence = Sobol::new(99);
            for power in [1_u32, 4, 8] {
                let count = 1_u32 << power;
                let slice = |point| (sequence.at(point, dimension) * f64::from(count)).floor();
                let mut slices: Vec<f64> = (0..count).map(slice).collect();
                slices.sort_unstable_by(f64::total_cmp);
                let all: Vec<f64> = (0..count).map(f64::from).collect();
                assert_eq!(slices, all, "{count} points of dimension {dimension}");
            }
        }
    }

    /// Two dimensions of one round and of two do not go together.
    #[test]
    fn dimensions_do_not_follow_each_other() {
        let sequence = Sobol::new(5);
        for (one, other) in [(0, 1), (0, 128), (3, 131), (7, 90)] {
            let sum: f64 = (0..1024)
                .map(|point| (sequence.at(point, one) - 0.5) * (sequence.at(point, other) - 0.5))
                .sum();
            // The variance of a coordinate is 1/12.
            let correlation = 12.0 * sum / 1024.0;
            assert!(
                correlation.abs() < 0.1,
                "{correlation} of {one} and {other}"
            );
        }
    }

    /// Of 4096 points every two dimensions have some in three quarters of the 256 squares a sixteenth wide at the least; of one scrambling some pairs keep to half of them.
    #[test]
    fn two_dimensions_do_not_keep_to_half_the_squares() {
        let sequence = Sobol::new(1);
        let slices = |dimension| -> Vec<usize> {
            let dimension = sequence.dimension(dimension);
            let slice = |point| {
                let at = dimension.at(point);
                (0..16_u32).rfind(|slice| f64::from(*slice) <= 16.0 * at)
            };
            let slices = (0..4096).filter_map(slice);
            slices.map(|slice| slice as usize).collect()
        };
        let all: Vec<Vec<usize>> = (0..42).map(slices).collect();
        for (at, one) in all.iter().enumerate() {
            for (before, other) in all.iter().take(at).enumerate() {
                let mut squares = [false; 256];
                for (one, other) in one.iter().zip(other) {
                    squares[16 * one + other] = true;
                }
                let filled = squares.iter().filter(|is_filled| **is_filled).count();
                assert!(192 < filled, "{before} and {at}: {filled} of 256");
            }
        }
    }

    #[test]
    fn another_seed_is_another_sequence() {
        assert_ne!(
            Sobol::new(1).at(3, 2),
            Sobol::new(2).at(3, 2),
            "by the seed"
        );
        assert_eq!(
            Sobol::new(1).at(3, 2),
            Sobol::new(1).at(3, 2),
            "and it alone"
        );
    }
}
