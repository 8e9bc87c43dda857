//! Airflow limits: the tightest that no expected state trips, what given ones catch, and what they miss.
//!
//! Readings are parts of the reading as fitted: 1 is as fitted, 0.8 is 80 %.

use crate::error::AirflowError;

/// Below this sample share a detector counts as blind.
pub const BLIND_SHARE: f64 = 0.8;

/// A low and a high airflow limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirflowLimits {
    low: f64,
    high: f64,
}

/// Which limit a reading trips.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trip {
    /// It lies below the low limit.
    Low,
    /// It lies above the high limit.
    High,
}

/// A reading in an expected state or a fault, and how much duct air there was in what the detector drew.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Observed {
    /// As a part of the reading as fitted.
    pub reading: f64,
    /// Sample share, 0 to 1.
    pub share: f64,
}

/// The tightest limits and the states that set them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tightest {
    /// The limits.
    pub limits: AirflowLimits,
    /// The expected state with the least reading, by its place in the list.
    pub low_set_by: usize,
    /// The one with the largest.
    pub high_set_by: usize,
}

/// What limits do with a list of states and faults.
#[derive(Debug, Clone, PartialEq)]
pub struct Judgement {
    /// Expected states that trip although nothing is wrong: place in the list, limit.
    pub false_alarms: Vec<(usize, Trip)>,
    /// Of each fault, in the order of the list.
    pub verdicts: Vec<Verdict>,
}

/// What limits make of a fault.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Verdict {
    /// It trips a limit.
    Caught(Trip),
    /// It stays within the limits.
    Missed {
        /// Sample share while it goes unseen.
        share: f64,
    },
}

/// What keeps a fault from being caught.
#[derive(Debug, Clone, PartialEq)]
pub struct InTheWay {
    /// The limit that would catch it, moved past its reading.
    pub limit: Trip,
    /// The expected states that would trip too, by their place in the list.
    pub states: Vec<usize>,
}

impl AirflowLimits {
    /// A pair of limits.
    ///
    /// # Errors
    /// [`AirflowError::LimitsCrossed`] where the low one lies above the high one, or one is not a number.
    pub fn new(low: f64, high: f64) -> Result<Self, AirflowError> {
        if low <= high {
            return Ok(Self { low, high });
        }
        Err(AirflowError::LimitsCrossed {
            low_percent: 100.0 * low,
            high_percent: 100.0 * high,
        })
    }

    /// The low limit.
    #[must_use]
    pub const fn low(self) -> f64 {
        self.low
    }

    /// The high limit.
    #[must_use]
    pub const fn high(self) -> f64 {
        self.high
    }

    /// Which limit a reading trips; a reading on a limit trips none.
    #[must_use]
    pub fn trips(self, reading: f64) -> Option<Trip> {
        if reading < self.low {
            Some(Trip::Low)
        } else if self.high < reading {
            Some(Trip::High)
        } else {
            None
        }
    }
}

/// The tightest limits that no expected state trips, with a margin to both sides.
///
/// Arguments: readings of the expected states, margin as a part of the reading as fitted.
///
/// # Range
/// Readings from -10 to 10 and a margin from 0 to 1; the margin covers the sensor's own scatter and its steps.
///
/// # Accuracy
/// Exact: each limit is the outermost reading and the margin.
///
/// # Errors
/// [`AirflowError::NothingExpected`] without a state, [`AirflowError::OutOfRange`] where a number is out of range.
///
/// # Source
/// Definition.
///
/// ```
/// let tightest = dewrun_airflow::tightest_limits(&[1.0, 0.86, 1.04], 0.02)?;
/// assert!((tightest.limits.low() - 0.84).abs() < 1e-12);
/// assert!((tightest.limits.high() - 1.06).abs() < 1e-12);
/// assert_eq!((tightest.low_set_by, tightest.high_set_by), (1, 2));
/// # Ok::<(), dewrun_airflow::AirflowError>(())
/// ```
pub fn tightest_limits(expected: &[f64], margin: f64) -> Result<Tightest, AirflowError> {
    crate::range::MARGIN.check(margin)?;
    for reading in expected {
        crate::range::READING.check(*reading)?;
    }
    let readings = || expected.iter().copied().enumerate();
    let least = readings().min_by(|(_, a), (_, b)| a.total_cmp(b));
    let largest = readings().max_by(|(_, a), (_, b)| a.total_cmp(b));
    let (Some((low_set_by, least)), Some((high_set_by, largest))) = (least, largest) else {
        return Err(AirflowError::NothingExpected);
    };
    Ok(Tightest {
        limits: AirflowLimits::new(least - margin, largest + margin)?,
        low_set_by,
        high_set_by,
    })
}

/// What limits do with expected states and faults.
///
/// Arguments: limits, expected states, faults. Where [`tightest_limits`] miss a fault, no pair of limits tells it from the expected states.
///
/// # Range
/// Any readings; one that is not a number counts as within the limits, so that it is never told as caught.
///
/// # Accuracy
/// Exact.
///
/// # Errors
/// None.
///
/// # Source
/// Definition.
///
/// ```
/// use dewrun_airflow::{AirflowLimits, Observed, Trip, Verdict, judge};
/// let limits = AirflowLimits::new(0.8, 1.2)?;
/// let observed = |reading, share| Observed { reading, share };
/// let judgement = judge(limits, &[observed(1.0, 1.0)], &[observed(1.77, 0.0), observed(1.07, 0.0)]);
/// assert!(judgement.false_alarms.is_empty());
/// assert_eq!(judgement.verdicts, [Verdict::Caught(Trip::High), Verdict::Missed { share: 0.0 }]);
/// # Ok::<(), dewrun_airflow::AirflowError>(())
/// ```
#[must_use]
pub fn judge(limits: AirflowLimits, expected: &[Observed], faults: &[Observed]) -> Judgement {
    let tripping = |(place, state): (usize, &Observed)| {
        let trip = limits.trips(state.reading)?;
        Some((place, trip))
    };
    let verdict = |fault: &Observed| {
        limits
            .trips(fault.reading)
            .map_or(Verdict::Missed { share: fault.share }, Verdict::Caught)
    };
    Judgement {
        false_alarms: expected.iter().enumerate().filter_map(tripping).collect(),
        verdicts: faults.iter().map(verdict).collect(),
    }
}

/// The expected states that keep a fault from being caught: those that would trip if a limit were moved past its reading.
///
/// Of the two limits the one with fewer states in its way; nothing stands in the way of a fault that the tightest limits catch.
///
/// Arguments: reading of the fault, readings of the expected states, margin as for [`tightest_limits`].
///
/// # Range
/// Any readings.
///
/// # Accuracy
/// Exact.
///
/// # Errors
/// None.
///
/// # Source
/// Definition.
///
/// ```
/// use dewrun_airflow::{Trip, in_the_way};
/// // A joint parted near the duct reads 107 %; only the open filter at 110 % keeps the high limit above it.
/// let found = in_the_way(1.07, &[1.0, 0.83, 1.10], 0.02);
/// assert_eq!((found.limit, found.states), (Trip::High, vec![2]));
/// ```
#[must_use]
pub fn in_the_way(fault: f64, expected: &[f64], margin: f64) -> InTheWay {
    let places = |trips_too: &dyn Fn(f64) -> bool| -> Vec<usize> {
        let with_places = expected.iter().enumerate();
        with_places
            .filter(|(_, reading)| trips_too(**reading))
            .map(|(place, _)| place)
            .collect()
    };
    let below = places(&|reading| reading - margin <= fault);
    let above = places(&|reading| fault <= reading + margin);
    if below.len() < above.len() {
        return InTheWay {
            limit: Trip::Low,
            states: below,
        };
    }
    InTheWay {
        limit: Trip::High,
        states: above,
    }
}

impl Judgement {
    /// The limits tell every fault from every expected state.
    #[must_use]
    pub fn separates(&self) -> bool {
        let caught = |verdict: &Verdict| matches!(verdict, Verdict::Caught(_));
        self.false_alarms.is_empty() && self.verdicts.iter().all(caught)
    }

    /// The faults that go unseen: place in the list, sample share while they do, least share first.
    #[must_use]
    pub fn missed(&self) -> Vec<(usize, f64)> {
        let share = |(place, verdict): (usize, &Verdict)| match verdict {
            Verdict::Missed { share } => Some((place, *share)),
            Verdict::Caught(_) => None,
        };
        let mut missed: Vec<(usize, f64)> =
            self.verdicts.iter().enumerate().filter_map(share).collect();
        missed.sort_by(|(_, a), (_, b)| a.total_cmp(b));
        missed
    }
}

impl Verdict {
    /// The fault goes unseen and the detector hardly samples its duct meanwhile.
    #[must_use]
    pub fn is_blind(self) -> bool {
        matches!(self, Self::Missed { share } if share < BLIND_SHARE)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::collection::vec;
    use proptest::prelude::{prop_assert, proptest};

    fn observed(reading: f64, share: f64) -> Observed {
        Observed { reading, share }
    }

    #[test]
    fn on_a_limit_is_within() {
        let limits = AirflowLimits::new(0.8, 1.2).unwrap();
        assert_eq!(limits.trips(0.8), None, "on the low limit");
        assert_eq!(limits.trips(1.2), None, "on the high limit");
        assert_eq!(limits.trips(0.799), Some(Trip::Low), "below");
        assert_eq!(limits.trips(1.201), Some(Trip::High), "above");
        assert_eq!(limits.trips(-0.1), Some(Trip::Low), "reversed");
    }

    #[test]
    fn crossed_limits_are_refused() {
        let crossed = AirflowLimits::new(1.2, 0.8);
        let sentence = crossed.map_err(|error| error.to_string());
        assert_eq!(
            sentence,
            Err("the low airflow limit of 120 % lies above the high one of 80 %".to_owned()),
            "with both numbers"
        );
        assert!(AirflowLimits::new(f64::NAN, 1.0).is_err(), "no number");
    }

    #[test]
    fn limits_need_a_state() {
        assert_eq!(
            tightest_limits(&[], 0.02),
            Err(AirflowError::NothingExpected),
            "none"
        );
        assert!(tightest_limits(&[f64::NAN], 0.02).is_err(), "no number");
    }

    /// A fault inside the span of the expected states: no pair tells it apart, and the sample share says how bad that is.
    #[test]
    fn a_fault_between_the_states_is_missed_by_any_pair() {
        let expected = [observed(1.0, 1.0), observed(0.83, 1.0), observed(1.10, 1.0)];
        let readings = expected.map(|state| state.reading);
        let limits = tightest_limits(&readings, 0.02).unwrap().limits;
        let faults = [
            observed(1.066, 0.0),
            observed(0.42, 1.0),
            observed(1.028, 0.9),
        ];
        let judgement = judge(limits, &expected, &faults);
        assert!(!judgement.separates(), "two are missed");
        assert_eq!(
            judgement.missed(),
            [(0, 0.0), (2, 0.9)],
            "the blind one first"
        );
        let blind: Vec<bool> = judgement
            .verdicts
            .iter()
            .map(|verdict| verdict.is_blind())
            .collect();
        assert_eq!(blind, [true, false, false], "only the parted joint");
    }

    #[test]
    fn nothing_is_in_the_way_of_what_is_caught() {
        assert_eq!(
            in_the_way(0.5, &[1.0, 0.8], 0.02).states,
            Vec::<usize>::new(),
            "low"
        );
        assert_eq!(
            in_the_way(1.5, &[1.0, 0.8], 0.02).states,
            Vec::<usize>::new(),
            "high"
        );
    }

    proptest! {
        /// Moved inward by a hundredth and the margin, each limit trips an expected state; as they are, none does.
        #[test]
        fn tightest_limits_trip_nothing_and_moved_inward_something(
            readings in vec(-2.0..3.0_f64, 1..12),
            margin in 0.0..0.3_f64,
        ) {
            let tightest = tightest_limits(&readings, margin).unwrap();
            let (low, high) = (tightest.limits.low(), tightest.limits.high());
            let trips = |low: f64, high: f64| {
                readings.iter().any(|&reading| reading < low || high < reading)
            };
            prop_assert!(!trips(low, high), "a state trips");
            prop_assert!(trips(low + margin + 0.01, f64::INFINITY), "the low limit is not tight");
            prop_assert!(trips(f64::NEG_INFINITY, high - margin - 0.01), "the high limit is not tight");
        }

        /// Without the states in its way the tightest limits catch the fault.
        #[test]
        fn a_fault_is_caught_once_nothing_is_in_its_way(
            readings in vec(0.2..2.0_f64, 2..10),
            fault in 0.0..2.2_f64,
        ) {
            let found = in_the_way(fault, &readings, 0.02);
            let left: Vec<f64> = (0..).zip(&readings)
                .filter(|(place, _)| !found.states.contains(place))
                .map(|(_, &reading)| reading)
                .collect();
            if let Ok(tightest) = tightest_limits(&left, 0.02) {
                prop_assert!(tightest.limits.trips(fault) == Some(found.limit), "{found:?}");
            }
        }
    }
}
