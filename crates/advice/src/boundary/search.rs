//! The search of all boundaries: along one axis from dry to wet, to the last place that is dry.

use dewrun_run::RunError;

use super::error::BoundaryError;
use super::probe::Probe;

/// More steps than any search has needed by three times; halving alone takes 14 from 160 K to 0.01 K.
const MAX_STEPS: u32 = 60;
/// Each step that has not crossed the threshold is so much longer than the one before.
const GROWTH: f64 = 2.5;
/// Share of the tolerance that a place within a bracket keeps off its ends, so that both ends close in.
const OFF_ENDS: f64 = 0.4;

/// One axis from dry to wet.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Axis {
    /// What is changed, in words and with its unit, for errors.
    pub(crate) quantity: (&'static str, &'static str),
    /// Where it is driest.
    pub(crate) driest: f64,
    /// Where it is wettest, further up.
    pub(crate) wettest: f64,
    /// Where the search begins.
    pub(crate) guess: f64,
    /// How narrow the bracket is to be.
    pub(crate) tolerance: f64,
    /// How far one kelvin between dew point and wall reaches along the axis.
    pub(crate) per_kelvin: f64,
}

/// What was found along an axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Found {
    /// Dry here, and wet no further than the tolerance on.
    LastDry(f64),
    /// Dry up to the wettest end.
    AllDry,
    /// Wet down to the driest end.
    AllWet,
}

/// A place on the axis and the level there.
type Place = (f64, f64);

/// The last dry place below a wet one.
///
/// Where wet and dry change more than once along the axis, it is one of the changes from dry to wet; on the axes of this crate they change once.
///
/// # Errors
/// What the probe says, or the bracket that is left after [`MAX_STEPS`].
pub(crate) fn last_dry(
    axis: &Axis,
    probe: &mut dyn FnMut(f64) -> Result<Probe, RunError>,
) -> Result<Found, BoundaryError> {
    let (quantity, unit) = axis.quantity;
    let (mut dry, mut wet): (Option<Place>, Option<Place>) = (None, None);
    let mut at = axis.guess.max(axis.driest).min(axis.wettest);
    let mut least_stride = axis.tolerance;
    for step in 0..MAX_STEPS {
        let found = probe(at).map_err(|source| BoundaryError::Run {
            quantity,
            value: at.abs(),
            unit,
            source: Box::new(source),
        })?;
        let stride = (found.excess_k.abs() * axis.per_kelvin).max(least_stride);
        least_stride *= GROWTH;
        if found.is_dry {
            if axis.wettest <= at {
                return Ok(Found::AllDry);
            }
            dry = Some((at, found.level));
        } else {
            if at <= axis.driest {
                return Ok(Found::AllWet);
            }
            wet = Some((at, found.level));
        }
        at = match (dry, wet) {
            (Some((low, _)), None) => (low + stride + axis.tolerance).min(axis.wettest),
            (None, Some((high, _))) => (high - stride).max(axis.driest),
            (Some(low), Some(high)) if axis.tolerance < high.0 - low.0 => {
                inside(low, high, axis.tolerance, step)
            }
            (Some((low, _)), Some(_)) => return Ok(Found::LastDry(low)),
            (None, None) => at,
        };
    }
    Err(BoundaryError::NotConverged {
        quantity,
        low: dry.map_or(axis.driest, |(at, _)| at),
        high: wet.map_or(axis.wettest, |(at, _)| at),
        unit,
    })
}

/// A place between two of opposite sign: on the straight line through them, or in the middle each third time.
fn inside((low, low_level): Place, (high, high_level): Place, tolerance: f64, step: u32) -> f64 {
    let middle = 0.5 * (low + high);
    let rise = high_level - low_level;
    if step % 3 == 2 || rise <= 0.0 {
        return middle;
    }
    let straight = low - low_level * (high - low) / rise;
    let off = (OFF_ENDS * tolerance).min(0.5 * (high - low));
    straight.max(low + off).min(high - off)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn axis(guess: f64) -> Axis {
        Axis {
            quantity: ("dew point", "°C"),
            driest: -60.0,
            wettest: 40.0,
            guess,
            tolerance: 0.01,
            per_kelvin: 1.0,
        }
    }

    /// A run that gets wet at `edge`, and the number of evaluations taken.
    fn search(edge: f64, guess: f64) -> (Result<Found, BoundaryError>, u32) {
        let mut count = 0;
        let found = last_dry(&axis(guess), &mut |at| {
            count += 1;
            let level = at - edge;
            Ok(Probe {
                is_dry: level <= 0.0,
                level: if level < 0.0 { level } else { level * level },
                excess_k: level,
            })
        });
        (found, count)
    }

    #[test]
    fn edge_is_found_from_either_side_in_few_steps() {
        for edge in [-59.0, -20.0, 0.0, 19.37, 39.9] {
            for guess in [-60.0, edge - 0.004, edge + 3.0, 40.0, 100.0] {
                let (found, count) = search(edge, guess);
                let Ok(Found::LastDry(at)) = found else {
                    panic!("edge {edge}, guess {guess}: {found:?}");
                };
                assert!(at <= edge, "{at} is dry, edge {edge}");
                assert!(edge - at <= 0.01, "{at} is near the edge {edge}");
                assert!(
                    count <= 12,
                    "{count} evaluations, edge {edge}, guess {guess}"
                );
            }
        }
    }

    #[test]
    fn ends_are_told() {
        assert_eq!(search(50.0, 10.0).0, Ok(Found::AllDry), "no edge below 40");
        assert_eq!(
            search(-70.0, 10.0).0,
            Ok(Found::AllWet),
            "no edge above -60"
        );
    }
}
