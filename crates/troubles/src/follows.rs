//! How well entries follow a cause, summed up over all the ways in which it may be; of all entries, and as some troubles are left out in turn.

use dewrun_numeric::elementary::{exp, ln};

use crate::comparison::{log_mean, normalised};
use crate::hours_of_log::Placed;

/// Troubles are left out in so many turns.
pub(crate) const TURNS: usize = 8;
/// So many of all entries may have nothing to do with the cause, each with its weight; the weights are one together. Common practice, no source.
const OTHERS: [(f64, f64); 6] = [
    (0.08, 0.1),
    (0.16, 0.2),
    (0.26, 0.25),
    (0.38, 0.25),
    (0.52, 0.15),
    (0.72, 0.05),
];
/// A product of so little or so much is put away as its logarithm: no factor is as far off as the rest of what a number holds.
const FAR: (f64, f64) = (1e-150, 1e150);
/// Ways that are less likely than the likeliest by so much, as a logarithm, tell nothing of single entries.
const TELLS: f64 = 9.0;

/// Whether a turn leaves in what another turn leaves out; turn 0 leaves all.
pub(crate) const fn is_left(out_in: usize, turn: usize) -> bool {
    turn == 0 || out_in != turn
}

/// A number of all entries, and one of those that each turn leaves.
pub(crate) type InTurns = [f64; 1 + TURNS];

/// How well a log follows a cause.
#[derive(Debug, Clone)]
pub(crate) struct Follows {
    /// By how much the logarithm of the likelihood lies above that of entries at any time.
    pub(crate) gains: InTurns,
    /// The same of all entries, without what was read of the airflow.
    pub(crate) unread: f64,
    /// The chance that each trouble is of this cause, and how many times as likely it is as at any time.
    pub(crate) told: Vec<(f64, f64)>,
}

impl Follows {
    /// Of a cause of which each entry is as likely as at any time.
    pub(crate) fn nothing(entries: usize) -> Self {
        Self {
            gains: [0.0; 1 + TURNS],
            unread: 0.0,
            told: vec![(0.0, 1.0); entries],
        }
    }
}

/// The ways in which a cause may be, taken one by one.
pub(crate) struct Ways {
    read: [LogSum; 1 + TURNS],
    unread: LogSum,
    /// Of all ways, before anything is known of a log.
    weights: f64,
    told: Told,
}

/// A sum of likelihoods, by their logarithms.
#[derive(Clone, Copy)]
struct LogSum {
    most: f64,
    sum: f64,
}

/// What the ways tell of single entries, each by its part in them.
struct Told {
    parts: LogSum,
    sums: Vec<(f64, f64)>,
}

/// How likely entries are under a way, against any time, for each share that may have nothing to do with it.
pub(crate) struct Mixed {
    logs: [[f64; OTHERS.len()]; 1 + TURNS],
}

impl LogSum {
    const NONE: Self = Self {
        most: f64::NEG_INFINITY,
        sum: 0.0,
    };

    /// Adds one, and says by how much the sum so far shrinks and what the new one is in it.
    fn add(&mut self, log: f64) -> (f64, f64) {
        if log == f64::NEG_INFINITY {
            return (1.0, 0.0);
        }
        let (shrinks, part) = if log <= self.most {
            (1.0, exp(log - self.most))
        } else if self.sum <= 0.0 {
            (0.0, 1.0)
        } else {
            (exp(self.most - log), 1.0)
        };
        self.most = self.most.max(log);
        self.sum = shrinks * self.sum + part;
        (shrinks, part)
    }

    fn log(&self) -> f64 {
        self.most + ln(self.sum)
    }
}

impl Ways {
    /// None yet, of so many entries.
    pub(crate) fn none(entries: usize) -> Self {
        Self {
            read: [LogSum::NONE; 1 + TURNS],
            unread: LogSum::NONE,
            weights: 0.0,
            told: Told {
                parts: LogSum::NONE,
                sums: vec![(0.0, 0.0); entries],
            },
        }
    }

    /// How plausible the ways that follow are, all together.
    pub(crate) const fn weigh(&mut self, weight: f64) {
        self.weights += weight;
    }

    /// A way as far as the times of entries go.
    pub(crate) fn take_unread(&mut self, gain: f64, weight: f64) {
        self.unread.add(gain + ln(weight));
    }

    /// A way with all that is known of entries; what it tells of each is asked for if it counts.
    pub(crate) fn take<T>(&mut self, gains: &InTurns, weight: f64, told: impl FnOnce() -> T)
    where
        T: IntoIterator<Item = (f64, f64)>,
    {
        let weight = ln(weight);
        for (sum, gain) in self.read.iter_mut().zip(gains) {
            sum.add(gain + weight);
        }
        let score = gains.first().copied().unwrap_or(0.0) + weight;
        if self.told.parts.most - TELLS <= score {
            self.told.take(score, told());
        }
    }

    /// A way that is a sum of ways itself.
    pub(crate) fn take_sum(&mut self, follows: Follows, weight: f64) {
        self.weigh(weight);
        self.take_unread(follows.unread, weight);
        self.take(&follows.gains, weight, || follows.told);
    }

    /// All of them; none where there is none.
    pub(crate) fn all(self) -> Option<Follows> {
        if self.weights <= 0.0 {
            return None;
        }
        let weights = ln(self.weights);
        let sum = self.told.parts.sum;
        // Of ways that can't be at all nothing is told.
        let told = self.told.sums.into_iter().map(|(chance, factor)| {
            if 0.0 < sum {
                (chance / sum, factor / sum)
            } else {
                (0.0, 1.0)
            }
        });
        Some(Follows {
            gains: self.read.map(|one| one.log() - weights),
            unread: self.unread.log() - weights,
            told: told.collect(),
        })
    }
}

impl Told {
    fn take(&mut self, score: f64, each: impl IntoIterator<Item = (f64, f64)>) {
        let (shrinks, part) = self.parts.add(score);
        for (sum, one) in self.sums.iter_mut().zip(each) {
            *sum = (
                shrinks * sum.0 + part * one.0,
                shrinks * sum.1 + part * one.1,
            );
        }
    }
}

impl Mixed {
    /// Of entries under a way that makes each so many times as likely as at any time.
    pub(crate) fn of(entries: &[Placed], ratios: &[f64]) -> Self {
        let of = |at: usize| {
            let ratio = ratios.get(at).copied().unwrap_or(1.0);
            OTHERS.map(|(others, _)| others + (1.0 - others) * ratio)
        };
        Self {
            logs: logs(entries, of),
        }
    }

    /// By how much they are likelier than at any time: the mean over what nobody knows of others.
    ///
    /// How many entries there are is equally likely in its logarithm, which is alike for all causes.
    pub(crate) fn gains(&self) -> InTurns {
        self.logs.map(|logs| {
            let each = logs.iter().zip(OTHERS);
            let weighted: Vec<(f64, f64)> = each.map(|(log, (_, weight))| (*log, weight)).collect();
            log_mean(&weighted)
        })
    }

    /// The chance that each entry is of the cause, and how many times as likely it is as at any time.
    pub(crate) fn told(&self, ratios: &[f64]) -> impl Iterator<Item = (f64, f64)> {
        let logs = self.logs.first().into_iter().flatten();
        let scores: Vec<f64> = (logs.zip(OTHERS))
            .map(|(log, (_, weight))| log + ln(weight))
            .collect();
        let parts = normalised(&scores);
        ratios.iter().map(move |ratio| {
            let (mut chance, mut factor) = (0.0, 0.0);
            for ((others, _), part) in OTHERS.iter().zip(&parts) {
                let of = others + (1.0 - others) * ratio;
                chance += part * (1.0 - others) * ratio / of;
                factor += part * of;
            }
            (chance, factor)
        })
    }
}

/// The logarithms of products over entries, several at once: of all entries, and of those that each turn leaves.
pub(crate) fn logs<const N: usize>(
    entries: &[Placed],
    of: impl Fn(usize) -> [f64; N],
) -> [[f64; N]; 1 + TURNS] {
    let mut products = [[1.0; N]; 1 + TURNS];
    let mut logs = [[0.0; N]; 1 + TURNS];
    for (at, one) in entries.iter().enumerate() {
        let (Some(products), Some(logs)) = (products.get_mut(one.turn), logs.get_mut(one.turn))
        else {
            continue;
        };
        for ((product, log), factor) in products.iter_mut().zip(logs).zip(of(at)) {
            *product *= factor;
            if *product < FAR.0 || FAR.1 < *product {
                *log += ln(*product);
                *product = 1.0;
            }
        }
    }
    let each = logs.iter_mut().flatten().zip(products.iter().flatten());
    for (log, product) in each.filter(|(_, product)| **product != 1.0) {
        *log += ln(*product);
    }
    left(logs)
}

/// What is left of sums as each turn is taken from all; the first is what no turn leaves out.
pub(crate) fn left<const N: usize>(by_turn: [[f64; N]; 1 + TURNS]) -> [[f64; N]; 1 + TURNS] {
    let mut all = [0.0; N];
    for one in &by_turn {
        for (all, one) in all.iter_mut().zip(one) {
            *all += one;
        }
    }
    let mut turn = 0;
    by_turn.map(|mut one| {
        for (one, all) in one.iter_mut().zip(all) {
            *one = if turn == 0 { all } else { all - *one };
        }
        turn += 1;
        one
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The mean of e, 1/e² and e³ with weights 1, 2 and 5, in any order; its logarithm by Python's math module.
    #[test]
    fn ways_are_averaged_by_their_weights() {
        let by_hand = 2.559324306976413;
        for order in [[0, 1, 2], [2, 1, 0], [1, 2, 0]] {
            let mut ways = Ways::none(1);
            for at in order {
                let (gain, weight) = [(1.0, 1.0), (-2.0, 2.0), (3.0, 5.0)][at];
                ways.take_sum(
                    Follows {
                        gains: [gain; 1 + TURNS],
                        unread: gain,
                        told: vec![(0.5, gain)],
                    },
                    weight,
                );
            }
            let follows = ways.all().expect("three ways");
            for gain in follows.gains.into_iter().chain([follows.unread]) {
                assert!((gain - by_hand).abs() < 1e-12, "{gain} {by_hand}");
            }
            assert!((follows.told[0].0 - 0.5).abs() < 1e-12, "{follows:?}");
        }
        assert!(Ways::none(1).all().is_none());
    }

    /// Three thousand entries that are very likely or hardly are: products are far from what a number holds, their logarithms are not; and what a turn leaves is what the others sum to.
    #[test]
    fn products_are_told_by_their_logarithms() {
        let entries: Vec<Placed> = (0..3000)
            .map(|at| Placed {
                turn: at % (1 + TURNS),
                ..Placed::EMPTY
            })
            .collect();
        let value = |at: usize| if at.is_multiple_of(3) { 1e-9 } else { 2e7 };
        let found = logs(&entries, |at| [value(at), 1.0]);
        for (turn, found) in found.iter().enumerate() {
            let counts = |at: &usize| turn == 0 || at % (1 + TURNS) != turn;
            let by_hand: f64 = (0..3000).filter(counts).map(|at| ln(value(at))).sum();
            assert!(
                (found[0] - by_hand).abs() < 1e-9 * by_hand.abs(),
                "{turn} {found:?} {by_hand}"
            );
            assert!(found[1].abs() < 1e-12, "{found:?}");
        }
    }
}
