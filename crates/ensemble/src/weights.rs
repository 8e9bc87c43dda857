//! What was measured, as weights of the members: agreement counts, and nothing is computed anew.

use dewrun_advice::Spread;
use dewrun_numeric::elementary::exp;

use crate::gathered::Gathered;
use crate::measured::Measurement;
use crate::member::Member;
use crate::told::worth;

/// A reading that is further off every member than so many of its errors contradicts the model.
const FAR_OFF: f64 = 3.0;
/// The members that are left are worth no fewer than this; where readings leave fewer, they count for less than they say.
const LEAST_WORTH: f64 = 16.0;
/// Halvings of what readings count for.
const HALVINGS: u32 = 40;

/// Weights of the members, and what readings say.
#[derive(Debug, Clone, PartialEq)]
pub struct Reweighted {
    /// One for each member, in the order of [`Gathered::members`]; the largest is 1.
    pub weights: Vec<f64>,
    /// How many members of equal weight would know as much.
    pub worth: f64,
    /// What readings count for, 0 to 1: less than 1 where the ensemble is too coarse to follow them.
    pub trust: f64,
    /// Reading by reading.
    pub readings: Vec<MeasurementTold>,
}

/// What a reading says.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasurementTold {
    /// The reading.
    pub measurement: Measurement,
    /// What all members alike expect; none where none has such a thing, and the reading is left out.
    pub before: Option<Spread>,
    /// What they expect under the weights.
    pub after: Option<Spread>,
    /// The nearest of all, where even it is too far off: the reading contradicts the model and is left out.
    pub contradicts: Option<f64>,
}

/// Weights of the members by how well they agree with what was measured.
///
/// # Range
/// Errors above zero.
/// # Accuracy
/// That of the members: with few of them left alike, see [`Reweighted::worth`].
/// # Source
/// Normal likelihood, K. J. Beven & A. Binley, Hydrol. Process. 6 (1992) 279; raised to a power below 1 where it would leave too few members, as in R. M. Neal, Stat. Comput. 11 (2001) 125.
#[must_use]
pub fn reweighted(gathered: &Gathered, measurements: &[Measurement]) -> Reweighted {
    let members: Vec<&Member> = gathered.members().collect();
    let mut off = vec![0.0; members.len()];
    let mut readings: Vec<MeasurementTold> = Vec::new();
    for measurement in measurements {
        let expected = expected(&members, measurement);
        let told = first_look(measurement, expected.as_deref());
        if let (Some(expected), None) = (&expected, told.contradicts) {
            for (sum, expected) in off.iter_mut().zip(expected) {
                let z = errors_off(measurement, *expected);
                *sum += 0.5 * z * z;
            }
        }
        readings.push(told);
    }
    let (weights, trust) = weights_of(&off);
    for reading in &mut readings {
        reading.after = expected(&members, &reading.measurement).and_then(|expected| {
            let pairs: Vec<(f64, f64)> =
                expected.into_iter().zip(weights.iter().copied()).collect();
            Spread::weighted(&pairs)
        });
    }
    Reweighted {
        worth: worth(&weights),
        weights,
        trust,
        readings,
    }
}

fn errors_off(measurement: &Measurement, expected: f64) -> f64 {
    (expected - measurement.value) / measurement.error
}

/// What each member expects; none where one of them has no such thing.
fn expected(members: &[&Member], measurement: &Measurement) -> Option<Vec<f64>> {
    let expected = members
        .iter()
        .map(|one| one.on_site.expects(measurement.what));
    expected
        .collect::<Option<Vec<f64>>>()
        .filter(|all| !all.is_empty())
}

fn first_look(measurement: &Measurement, expected: Option<&[f64]>) -> MeasurementTold {
    let off = |expected: f64| errors_off(measurement, expected).abs();
    let nearest = expected.and_then(|expected| {
        let all = expected.iter().copied();
        all.min_by(|one, other| off(*one).total_cmp(&off(*other)))
    });
    MeasurementTold {
        measurement: *measurement,
        before: expected.and_then(Spread::of),
        after: None,
        contradicts: nearest.filter(|nearest| FAR_OFF < off(*nearest)),
    }
}

/// Weights from how far off members are, and the largest power of the likelihood that leaves enough of them.
fn weights_of(off: &[f64]) -> (Vec<f64>, f64) {
    let least = off.iter().copied().fold(f64::INFINITY, f64::min);
    let at =
        |trust: f64| -> Vec<f64> { off.iter().map(|off| exp(-trust * (off - least))).collect() };
    let full = at(1.0);
    #[expect(clippy::cast_precision_loss, reason = "far below 2^52 members")]
    let enough = LEAST_WORTH.min(0.5 * off.len() as f64);
    if enough <= worth(&full) {
        return (full, 1.0);
    }
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if enough <= worth(&at(middle)) {
            low = middle;
        } else {
            high = middle;
        }
    }
    (at(low), low)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: e^-0.5 of 0.6065 beside 1 and 1 is worth 2.6065²/2.3679 = 2.869.
    #[test]
    fn weights_follow_the_normal_law() {
        let (weights, trust) = weights_of(&[2.0, 2.0, 2.5]);
        assert_eq!(trust, 1.0, "nothing is held back");
        assert!((weights[2] - 0.606_53).abs() < 1e-5, "{weights:?}");
        assert!((worth(&weights) - 2.869).abs() < 1e-3, "{weights:?}");
    }

    /// One of a hundred agrees far better than all others: readings count for less, and sixteen are left.
    #[test]
    fn enough_members_are_left() {
        let off: Vec<f64> = (0..100).map(|at| 5.0 * f64::from(at)).collect();
        let (weights, trust) = weights_of(&off);
        assert!(0.0 < trust && trust < 1.0, "{trust}");
        assert!(
            (worth(&weights) - LEAST_WORTH).abs() < 1e-3,
            "{}",
            worth(&weights)
        );
    }
}
