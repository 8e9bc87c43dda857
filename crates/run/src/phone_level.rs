//! A phone as a level: two readings on the same place of a tube, the phone turned end for end between them.
//!
//! What the phone's own sensor or back is off by adds to one reading and takes from the other, so that half their difference is free of it.

use dewrun_numeric::elementary::tan_of_eighth;
use dewrun_quantity::Angle;
use dewrun_quantity::format::entered;
use thiserror::Error;

/// What browsers round an angle to: 0.1 degrees, 1.7 mm/m; finer could tell devices apart.
pub const SENSOR_STEP: Angle = Angle::degrees(0.1);
/// The most that a phone at rest may wander: with it the fall is known to 3.5 mm/m, enough to tell 1:100 from 1:60.
pub const MOST_WANDER: Angle = Angle::degrees(0.4);
/// On a steeper tube a phone slides, and a fall says little.
pub const STEEPEST: Angle = Angle::degrees(45.0);
/// A phone that leans more to a side rests on its edge.
pub const MOST_ROLL: Angle = Angle::degrees(30.0);
/// Turned round is 180 degrees; a compass among ducts and motors is off by some.
pub const LEAST_TURN: Angle = Angle::degrees(120.0);

/// What the sensor said at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Where the top of the phone points, counted from anywhere; none where the device does not know.
    pub heading: Option<Angle>,
    /// How far the top of the phone stands above its bottom.
    pub pitch: Angle,
    /// How far it leans to a side.
    pub roll: Angle,
}

/// A phone that lay still.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lying {
    /// Middle of all its pitches.
    pitch: Angle,
    /// From the lowest to the highest of them, never under a step of the sensor.
    wander: Angle,
    heading: Option<Angle>,
}

/// What two readings say of a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Levelled {
    /// How steeply the tube rises the way the phone pointed first; negative where it falls.
    pub rise: Angle,
    /// So far it may be off to either side.
    pub doubt: Angle,
    /// What the phone is off by, which cancelled.
    pub offset: Angle,
}

/// Why a reading can't be used.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[non_exhaustive]
pub enum LevelError {
    /// There is no sensor, or no right to it: type the fall.
    #[error("this device has no sensor for it, or does not let the page read it")]
    NoSensor,
    /// The phone moved while it was read: hold it still.
    #[error("the phone moved by {}\u{b0} while it was read, more than {}\u{b0}", tenths(*.by), tenths(MOST_WANDER))]
    Moved {
        /// From the lowest to the highest pitch.
        by: Angle,
    },
    /// The phone does not lie on its back: lay it flat.
    #[error("the phone leans {}\u{b0} to a side, it must lie on its back", tenths(*.by))]
    OnEdge {
        /// How far it leans.
        by: Angle,
    },
    /// The tube is too steep for a phone to lie on.
    #[error("the phone is tilted by {}\u{b0}, it can be a level up to {}\u{b0}", tenths(*.by), tenths(STEEPEST))]
    TooSteep {
        /// How far it is tilted.
        by: Angle,
    },
    /// Both readings point much the same way: turn it end for end.
    #[error("the phone was turned by {}\u{b0}, it must be turned end for end", tenths(*.by))]
    NotTurned {
        /// How far it was turned.
        by: Angle,
    },
}

impl Lying {
    /// A phone that lay still, from what its sensor said at moments that are equally far apart.
    ///
    /// # Errors
    /// [`LevelError`] where there is nothing to read, or the phone moved, stood on its edge or was too steep.
    pub fn of(samples: &[Sample]) -> Result<Self, LevelError> {
        let last = samples.last().ok_or(LevelError::NoSensor)?;
        let (mut lowest, mut highest) = (last.pitch, last.pitch);
        let (mut sum, mut count) = (Angle::ZERO, 0.0);
        let mut leaning = Angle::ZERO;
        for sample in samples {
            lowest = lowest.min(sample.pitch);
            highest = highest.max(sample.pitch);
            leaning = leaning.max(size(sample.roll));
            sum += sample.pitch;
            count += 1.0;
        }
        let pitch = sum * (1.0 / count);
        let wander = (highest - lowest).max(SENSOR_STEP);
        if !(pitch.is_finite() && leaning.is_finite()) {
            return Err(LevelError::NoSensor);
        }
        if STEEPEST < size(pitch) {
            return Err(LevelError::TooSteep { by: size(pitch) });
        }
        if MOST_ROLL < leaning {
            return Err(LevelError::OnEdge { by: leaning });
        }
        if MOST_WANDER < wander {
            return Err(LevelError::Moved { by: wander });
        }
        Ok(Self {
            pitch,
            wander,
            heading: last.heading,
        })
    }
}

/// The rise of a tube from a phone that lay on it one way, then turned end for end.
///
/// With `rise` the tube's and `offset` the phone's own tilt it reads `pitch = rise + offset` first and
/// `pitch = offset - rise` then, so that `rise = (first - then)/2` and `offset = (first + then)/2`.
///
/// # Range
/// Tilts up to 45 degrees either way, the phone on its back: its long axis then stands at its pitch above the horizontal, however it leans.
///
/// # Accuracy
/// Each reading is known to half of what it wandered, or half a step of the sensor; the rise to the mean of both.
///
/// # Errors
/// [`LevelError::NotTurned`] where both readings point much the same way.
///
/// # Source
/// Pitch and heading: DeviceOrientation Event Specification (W3C Working Draft, 2024), beta and alpha of the rotations Z-X'-Y''.
/// Reversal: Evans, Hocken and Estler, Self-calibration: reversal, redundancy, error separation, and "absolute testing", CIRP Annals 45 (1996) 617 to 634.
///
/// ```
/// use dewrun_quantity::Angle;
/// use dewrun_run::phone_level::{Lying, Sample, levelled};
/// let lying = |heading, pitch| {
///     Lying::of(&[Sample {
///         heading: Some(Angle::degrees(heading)),
///         pitch: Angle::degrees(pitch),
///         roll: Angle::ZERO,
///     }])
/// };
/// // A tube that falls by 1.1 degrees, read by a phone that is off by 0.4.
/// let found = levelled(&lying(20.0, -0.7)?, &lying(200.0, 1.5)?)?;
/// assert!((found.rise.to_degrees() + 1.1).abs() < 1e-9);
/// assert!((found.offset.to_degrees() - 0.4).abs() < 1e-9);
/// assert!((found.doubt.to_degrees() - 0.05).abs() < 1e-9);
/// # Ok::<(), dewrun_run::phone_level::LevelError>(())
/// ```
pub fn levelled(first: &Lying, then: &Lying) -> Result<Levelled, LevelError> {
    if let (Some(before), Some(after)) = (first.heading, then.heading) {
        let by = turn(before, after);
        if by < LEAST_TURN {
            return Err(LevelError::NotTurned { by });
        }
    }
    Ok(Levelled {
        rise: (first.pitch - then.pitch) * 0.5,
        doubt: (first.wander + then.wander) * 0.25,
        offset: (first.pitch + then.pitch) * 0.5,
    })
}

/// Fall per horizontal length of a tube that rises at an angle; negative where it rises.
///
/// # Range
/// Up to [`STEEPEST`] either way.
///
/// # Source
/// Definition of the tangent.
#[must_use]
pub fn fall_of(rise: Angle) -> f64 {
    -tan_of_eighth(rise.to_radians())
}

/// The smaller of the two turns between two headings.
fn turn(before: Angle, after: Angle) -> Angle {
    let round = Angle::degrees(360.0);
    let by = size(after - before);
    by.min(size(round - by))
}

fn size(angle: Angle) -> Angle {
    angle.max(Angle::ZERO - angle)
}

/// In tenths of a degree, the most that a sensor tells.
fn tenths(angle: Angle) -> String {
    entered((angle.to_degrees() * 10.0).round() / 10.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{prop_assert, proptest};

    fn sample(heading: f64, pitch: f64) -> Sample {
        Sample {
            heading: Some(Angle::degrees(heading)),
            pitch: Angle::degrees(pitch),
            roll: Angle::degrees(2.0),
        }
    }

    fn lying(heading: f64, pitch: f64) -> Lying {
        Lying::of(&[sample(heading, pitch)]).expect("it lies still")
    }

    #[track_caller]
    fn refused(samples: &[Sample], sentence: &str) {
        let told = Lying::of(samples).map_err(|error| error.to_string());
        assert_eq!(told, Err(sentence.to_owned()), "{samples:?}");
    }

    /// 1 % is the tangent of 0.57294 degrees, 1:50 that of 1.14576, by any table of tangents.
    #[test]
    fn falls_are_tangents() {
        for (degrees, fall) in [
            (0.572_94, -0.01),
            (-1.145_76, 0.02),
            (0.0, 0.0),
            (-45.0, 1.0),
        ] {
            let found = fall_of(Angle::degrees(degrees));
            assert!(
                (found - fall).abs() < 1e-6,
                "{degrees}: {found}, not {fall}"
            );
        }
    }

    #[test]
    fn a_phone_that_wanders_is_in_doubt_and_one_that_moves_is_refused() {
        let still = Lying::of(&[sample(0.0, 1.0), sample(0.0, 1.2), sample(0.0, 1.1)]);
        let other = lying(180.0, -1.0);
        let found = still.and_then(|still| levelled(&still, &other));
        let doubt = found.map(|found| (found.doubt.to_degrees() * 1e6).round());
        // A quarter of 0.2 and of the sensor's step of 0.1.
        assert_eq!(doubt, Ok(75_000.0), "wandered by 0.2");
        refused(
            &[sample(0.0, 1.0), sample(0.0, 1.5)],
            "the phone moved by 0.5\u{b0} while it was read, more than 0.4\u{b0}",
        );
    }

    #[test]
    fn a_phone_that_lies_wrong_is_told_how() {
        refused(
            &[],
            "this device has no sensor for it, or does not let the page read it",
        );
        refused(
            &[sample(0.0, f64::NAN)],
            "this device has no sensor for it, or does not let the page read it",
        );
        refused(
            &[sample(0.0, 71.0)],
            "the phone is tilted by 71\u{b0}, it can be a level up to 45\u{b0}",
        );
        let roll = Angle::degrees(-88.0);
        refused(
            &[Sample {
                roll,
                ..sample(0.0, 1.0)
            }],
            "the phone leans 88\u{b0} to a side, it must lie on its back",
        );
    }

    #[test]
    fn a_phone_that_was_not_turned_is_refused() {
        for (before, after, is_turned) in [
            (10.0, 185.0, true),
            (350.0, 175.0, true),
            (350.0, 10.0, false),
            (0.0, 90.0, false),
        ] {
            let found = levelled(&lying(before, 1.0), &lying(after, -1.0));
            assert_eq!(found.is_ok(), is_turned, "from {before} to {after}");
        }
        let blind = Lying {
            heading: None,
            ..lying(0.0, 1.0)
        };
        let found = levelled(&blind, &lying(0.0, -1.0));
        assert!(found.is_ok(), "who has no compass is believed");
    }

    proptest! {
        #[test]
        fn what_the_phone_is_off_by_cancels(rise in -40.0..40.0_f64, offset in -4.0..4.0_f64, heading in 0.0..360.0_f64) {
            let first = lying(heading, rise + offset);
            let then = lying(heading + 180.0, offset - rise);
            let found = levelled(&first, &then);
            let near = |angle: Angle, degrees: f64| (angle.to_degrees() - degrees).abs() < 1e-9;
            prop_assert!(found.is_ok_and(|found| near(found.rise, rise) && near(found.offset, offset)));
        }
    }
}
