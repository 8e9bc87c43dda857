//! Each leg by itself: which way it drains, and what it holds before it does.

use dewrun_quantity::{Length, Mass};

use super::tube::{DrainTube, DrainageError};
use crate::Incline;
use crate::held::{held_per_length, incline_that_moves, is_flat};

/// Which way water runs in a leg, against the normal flow of the air.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Course {
    /// The leg falls in the direction of flow.
    WithAir,
    /// It rises in the direction of flow.
    AgainstAir,
    /// It does neither.
    Level,
}

/// What a leg does with water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LegReport {
    /// Its beginning along the tube.
    pub from: Length,
    /// Its end.
    pub to: Length,
    /// Height of its beginning and of its end over the first end of the tube.
    pub heights: [Length; 2],
    /// Which way water runs in it.
    pub course: Course,
    /// Its fall in that direction.
    pub fall: Incline,
    /// Steeper than 45 degrees.
    pub steep: bool,
    /// The incline that moves its puddle.
    pub moves: Incline,
    /// Flatter than that: water stands in it.
    pub flat: bool,
    /// What it holds before any of it runs.
    pub holds: Mass,
}

/// The elevation of a tube, leg by leg.
///
/// # Range
/// As [`held_per_length`].
/// # Accuracy
/// As [`held_per_length`].
/// # Errors
/// [`DrainageError`] where a leg or a trap is none.
/// # Source
/// [`crate::held`].
///
/// ```
/// use dewrun_quantity::{Length, Temperature};
/// use dewrun_water::{Water, drainage::{Course, DrainLeg, DrainTube, legs}, held::Keeping};
/// let leg = |rise_mm| DrainLeg {
///     length: Length::metres(4.0),
///     rise: Length::millimetres(rise_mm),
///     bore: Length::millimetres(19.0),
///     keeping: Keeping::USUAL,
///     reachable: true,
/// };
/// let tube = DrainTube { legs: vec![leg(-80.0), leg(10.0)], traps: vec![], water: Water::at(Temperature::celsius(15.0)) };
/// let report = legs(&tube).unwrap();
/// assert_eq!(report[0].course, Course::WithAir);
/// assert!(!report[0].flat && report[1].flat);
/// assert!((report[0].holds.to_grams() - 11.94).abs() < 0.01, "pi 19 mm times 4 m times 50 g/m2");
/// ```
pub fn legs(tube: &DrainTube) -> Result<Vec<LegReport>, DrainageError> {
    tube.check()?;
    let (mut at, mut height) = (Length::ZERO, Length::ZERO);
    let mut reports = Vec::with_capacity(tube.legs.len());
    for leg in &tube.legs {
        let incline = Incline::of(leg.length, -leg.rise).unwrap_or(Incline::LEVEL);
        let (to, end) = (at + leg.length, height + leg.rise);
        let per_length = held_per_length(leg.bore, incline, &leg.keeping, tube.water);
        let holds_kg = per_length.to_kilograms_per_metre() * leg.length.to_metres();
        reports.push(LegReport {
            from: at,
            to,
            heights: [height, end],
            course: if leg.rise == Length::ZERO {
                Course::Level
            } else if leg.rise < Length::ZERO {
                Course::WithAir
            } else {
                Course::AgainstAir
            },
            fall: incline.size(),
            steep: incline.is_steep(),
            moves: incline_that_moves(leg.bore, &leg.keeping.puddle, tube.water),
            flat: is_flat(leg.bore, incline, &leg.keeping.puddle, tube.water),
            holds: Mass::kilograms(holds_kg),
        });
        (at, height) = (to, end);
    }
    Ok(reports)
}
