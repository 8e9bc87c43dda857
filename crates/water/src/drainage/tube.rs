//! A tube as water sees it: legs with their rise, what its wall keeps, and the traps on it.

use dewrun_quantity::format::entered;
use dewrun_quantity::{Length, Limits, Mass, MassFlow, OutOfRange};
use thiserror::Error;

use crate::Water;
use crate::held::Keeping;

const LENGTH: Limits = Limits::new("the length", "m", 1e-3, 1000.0);
const BORE: Limits = Limits::new("the bore", "mm", 0.5, 500.0);
const CAPACITY: Limits = Limits::new("the capacity of a trap", "g", 0.0, 1e6);
const FILM: Limits = Limits::new("the retained film", "g/m2", 0.0, 5000.0);
const CORRUGATIONS: Limits = Limits::new("what corrugations keep", "g/m", 0.0, 1e5);
const PUDDLE: Limits = Limits::new("the length of a puddle", "m", 1e-3, 100.0);
const ANGLE: Limits = Limits::new("the contact angle", "degrees", 1.0, 180.0);
const DIFFERENCE: Limits = Limits::new("the difference of the cosines", "", 0.0, 2.0);
const RATE: Limits = Limits::new("the water that forms", "kg/h", -1e4, 1e4);

/// Why water has no way.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[non_exhaustive]
pub enum DrainageError {
    /// A number of a leg lies where no leg is: bring it within the limits.
    #[error("{source}")]
    Leg {
        /// The leg, counted from 0.
        leg: usize,
        /// What is out of range.
        source: OutOfRange,
    },
    /// A rate of water or the capacity of a trap lies where none is: bring it within the limits.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// There is no leg: draw at least one.
    #[error("the tube has no legs, must have at least one")]
    NoLegs,
    /// A leg rises or falls by more than it is long: mend its length or its fall.
    #[error("a rise of {} m is more than the length of {} m", entered(*.rise_m), entered(*.length_m))]
    SteeperThanUpright {
        /// The leg, counted from 0.
        leg: usize,
        /// Its rise, m.
        rise_m: f64,
        /// Its length, m.
        length_m: f64,
    },
    /// A trap does not lie on the tube: put it between its ends.
    #[error("the trap lies at {} m, must be from 0 to {} m", entered(*.at_m), entered(*.end_m))]
    TrapOffTube {
        /// The trap, counted from 0.
        trap: usize,
        /// Where it lies, m.
        at_m: f64,
        /// The length of the tube, m.
        end_m: f64,
    },
    /// A stretch on which water forms ends before it begins or lies off the tube.
    #[error("water forms from {} to {} m, must be within 0 to {} m", entered(*.from_m), entered(*.to_m), entered(*.end_m))]
    StretchOffTube {
        /// Its beginning, m.
        from_m: f64,
        /// Its end, m.
        to_m: f64,
        /// The length of the tube, m.
        end_m: f64,
    },
}

/// A straight leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrainLeg {
    /// Length along the tube.
    pub length: Length,
    /// Rise from its start to its end in the direction of normal flow; negative where it falls.
    pub rise: Length,
    /// Inside diameter.
    pub bore: Length,
    /// What its wall keeps.
    pub keeping: Keeping,
    /// Whether a person can reach it to empty a trap.
    pub reachable: bool,
}

/// A trap on the tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrapAt {
    /// Where along the tube.
    pub at: Length,
    /// What it takes until it is emptied by hand; none where it drains itself.
    pub capacity: Option<Mass>,
}

/// A stretch on which water forms evenly, or up to so much evaporates where the rate is negative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Formed {
    /// Its beginning along the tube.
    pub from: Length,
    /// Its end.
    pub to: Length,
    /// All that forms on it.
    pub rate: MassFlow,
}

/// A tube from end to end.
#[derive(Debug, Clone, PartialEq)]
pub struct DrainTube {
    /// Its legs in the direction of normal flow.
    pub legs: Vec<DrainLeg>,
    /// Its traps.
    pub traps: Vec<TrapAt>,
    /// The water in it.
    pub water: Water,
}

/// Positions nearer than this are one.
pub(super) const SAME_PLACE_M: f64 = 1e-9;

impl DrainTube {
    /// Length of all legs \[m\].
    pub(super) fn end_m(&self) -> f64 {
        self.legs.iter().map(|leg| leg.length.to_metres()).sum()
    }

    /// Height of a place over the first end \[m\].
    pub(super) fn height_m(&self, place_m: f64) -> f64 {
        let (mut at_m, mut z_m) = (0.0, 0.0);
        for leg in &self.legs {
            let (length_m, rise_m) = (leg.length.to_metres(), leg.rise.to_metres());
            if place_m < at_m + length_m {
                return z_m + (place_m - at_m).max(0.0) / length_m * rise_m;
            }
            at_m += length_m;
            z_m += rise_m;
        }
        z_m
    }

    pub(super) fn check(&self) -> Result<(), DrainageError> {
        if self.legs.is_empty() {
            return Err(DrainageError::NoLegs);
        }
        for (number, leg) in self.legs.iter().enumerate() {
            leg.check(number)?;
        }
        let end_m = self.end_m();
        for (trap, given) in self.traps.iter().enumerate() {
            let at_m = given.at.to_metres();
            if !(-SAME_PLACE_M..=end_m + SAME_PLACE_M).contains(&at_m) {
                return Err(DrainageError::TrapOffTube { trap, at_m, end_m });
            }
            if let Some(capacity) = given.capacity {
                CAPACITY.check(capacity.to_grams())?;
            }
        }
        Ok(())
    }

    pub(super) fn check_formed(&self, formed: &[Formed]) -> Result<(), DrainageError> {
        let end_m = self.end_m();
        for stretch in formed {
            RATE.check(stretch.rate.to_kilograms_per_second() * 3600.0)?;
            let (from_m, to_m) = (stretch.from.to_metres(), stretch.to.to_metres());
            let within = -SAME_PLACE_M <= from_m && from_m < to_m && to_m <= end_m + SAME_PLACE_M;
            if !within {
                return Err(DrainageError::StretchOffTube {
                    from_m,
                    to_m,
                    end_m,
                });
            }
        }
        Ok(())
    }
}

impl DrainLeg {
    fn check(&self, leg: usize) -> Result<(), DrainageError> {
        let in_range = |source| DrainageError::Leg { leg, source };
        let length_m = LENGTH.check(self.length.to_metres()).map_err(in_range)?;
        BORE.check(self.bore.to_millimetres()).map_err(in_range)?;
        check_keeping(&self.keeping).map_err(in_range)?;
        let rise_m = self.rise.to_metres();
        if !(-length_m..=length_m).contains(&rise_m) {
            return Err(DrainageError::SteeperThanUpright {
                leg,
                rise_m,
                length_m,
            });
        }
        Ok(())
    }
}

fn check_keeping(keeping: &Keeping) -> Result<(), OutOfRange> {
    FILM.check(keeping.film.to_grams_per_square_metre())?;
    CORRUGATIONS.check(keeping.corrugations.to_grams_per_metre())?;
    PUDDLE.check(keeping.puddle.length.to_metres())?;
    ANGLE.check(keeping.puddle.mean_angle.to_degrees())?;
    DIFFERENCE.check(keeping.puddle.cosine_difference)?;
    Ok(())
}
