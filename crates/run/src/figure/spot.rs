//! Where along a run a figure is read.

use core::fmt;

use crate::error::Tube;
use crate::input::{Leg, Run};
use crate::outcome::{Outcome, ProfilePoint, TubeOutcome};
use crate::{Place, figure::Figure};

/// Where along a run a figure is read: a tube, one of its legs, a point of its profile.
///
/// Written `intake`, `intake.2` or `intake.2.17`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spot {
    /// The tube.
    pub tube: Tube,
    /// The position of the leg in it.
    pub leg: Option<usize>,
    /// The position of the point in the tube's profile.
    pub point: Option<usize>,
}

impl Spot {
    /// A tube as a whole.
    #[must_use]
    pub const fn tube(tube: Tube) -> Self {
        Self {
            tube,
            leg: None,
            point: None,
        }
    }

    /// One leg of a tube.
    #[must_use]
    pub const fn leg(tube: Tube, leg: usize) -> Self {
        Self {
            leg: Some(leg),
            ..Self::tube(tube)
        }
    }

    /// Reads what [`Spot`] writes.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let mut parts = text.split('.');
        let tube = match parts.next()? {
            "intake" => Tube::Intake,
            "exhaust" => Tube::Exhaust,
            _ => return None,
        };
        let mut number = || parts.next().map(|part| part.parse().ok());
        let leg = number().unwrap_or(Some(0))?;
        let has_leg = text.contains('.');
        let point = number().map_or(Some(None), |point: Option<usize>| point.map(Some))?;
        Some(Self {
            tube,
            leg: has_leg.then_some(leg),
            point,
        })
    }

    /// The answer for its tube; none for an exhaust tube that is not drawn.
    #[must_use]
    pub fn answer(self, outcome: &Outcome) -> Option<&TubeOutcome> {
        match self.tube {
            Tube::Intake => Some(&outcome.intake),
            Tube::Exhaust => outcome.exhaust.as_ref(),
        }
    }

    /// The spot with the point at which a figure is best looked into: where most water forms, or comes nearest to forming; for the end of a leg that end, for its lowest wall the coldest place.
    #[must_use]
    pub fn looked_into(self, figure: Figure, outcome: &Outcome) -> Self {
        let Some(tube) = self.answer(outcome) else {
            return self;
        };
        let is_there =
            |point: &&(usize, &ProfilePoint)| self.leg.is_none_or(|leg| leg == point.1.leg);
        if self.point.is_some() {
            return self;
        }
        let points: Vec<(usize, &ProfilePoint)> = tube.profile.iter().enumerate().collect();
        let mut here = points.iter().filter(is_there);
        let found = match figure {
            Figure::LowestWall | Figure::ColdestWall | Figure::ColdestWallAt => {
                here.min_by(|a, b| {
                    a.1.inner_wall
                        .to_celsius()
                        .total_cmp(&b.1.inner_wall.to_celsius())
                })
            }
            Figure::AirAtEnd
            | Figure::RatioAtEnd
            | Figure::MistAtEnd
            | Figure::HumidityAtEnd
            | Figure::DewPointAtEnd => here.next_back(),
            Figure::LegSweat | Figure::TubeSweat | Figure::LegRime => {
                here.max_by(|a, b| sweats(a.1).total_cmp(&sweats(b.1)))
            }
            _ => here.max_by(|a, b| wets(a.1).total_cmp(&wets(b.1))),
        };
        found.map_or(self, |&(point, at)| Self {
            leg: Some(at.leg),
            point: Some(point),
            ..self
        })
    }

    /// The point of the profile.
    #[must_use]
    pub fn profile_point(self, outcome: &Outcome) -> Option<&ProfilePoint> {
        self.answer(outcome)?.profile.get(self.point?)
    }

    /// The leg.
    #[must_use]
    pub fn leg_of(self, run: &Run) -> Option<&Leg> {
        let legs = match self.tube {
            Tube::Intake => &run.intake,
            Tube::Exhaust => &run.exhaust,
        };
        legs.get(self.leg?)
    }

    /// The part of the run that an input belongs to, here.
    #[must_use]
    pub fn place(self, figure: Figure, run: &Run) -> Option<Place> {
        let id = figure.id();
        Some(match figure {
            Figure::Pressure | Figure::Altitude => Place::Run,
            Figure::Flow => Place::Flow,
            Figure::DetectorHeat | Figure::HumidityRating => Place::Detector,
            Figure::Wind | Figure::RadiantTemperature => Place::Space(self.leg_of(run)?.space),
            _ if id.starts_with("space-") => Place::Space(self.leg_of(run)?.space),
            _ if id.starts_with("duct-") => Place::DuctAir,
            _ if figure.is_given() => Place::Leg(self.tube, self.leg?),
            _ => return None,
        })
    }

    /// A spot from which the input of a place is seen; none where no leg meets it.
    #[must_use]
    pub fn of_place(place: Place, run: &Run) -> Option<Self> {
        let meets = |legs: &[Leg], space| legs.iter().position(|leg| leg.space == space);
        match place {
            Place::Leg(tube, leg) => Some(Self::leg(tube, leg)),
            Place::Space(space) => meets(&run.intake, space)
                .map(|leg| Self::leg(Tube::Intake, leg))
                .or_else(|| meets(&run.exhaust, space).map(|leg| Self::leg(Tube::Exhaust, leg))),
            _ => Some(Self::tube(Tube::Intake)),
        }
    }
}

/// How much water forms; where none does, below zero by how far the wall is above the dew point.
fn wets(point: &ProfilePoint) -> f64 {
    let deposit = point.deposit.to_grams_per_hour_metre();
    if 0.0 < deposit {
        return deposit;
    }
    let dew_point = point
        .dew_point
        .map_or(f64::NEG_INFINITY, |t| t.to_celsius());
    dew_point - point.inner_wall.to_celsius()
}

/// The same of the outer surface, by its temperature.
fn sweats(point: &ProfilePoint) -> f64 {
    let sweat = point.sweat.to_grams_per_hour_metre();
    if 0.0 < sweat {
        return sweat;
    }
    -1e3 - point.outer_surface.to_celsius()
}

impl fmt::Display for Spot {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self.tube {
            Tube::Intake => "intake",
            Tube::Exhaust => "exhaust",
        })?;
        if let Some(leg) = self.leg {
            write!(f, ".{leg}")?;
            if let Some(point) = self.point {
                write!(f, ".{point}")?;
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_spot_is_read_back_as_it_was_written() {
        let whole = Spot::tube(Tube::Exhaust);
        let leg = Spot::leg(Tube::Intake, 2);
        let point = Spot {
            point: Some(17),
            ..leg
        };
        for spot in [whole, leg, point] {
            assert_eq!(Spot::parse(&spot.to_string()), Some(spot), "{spot}");
        }
    }

    #[test]
    fn what_is_no_spot_is_none() {
        for text in [
            "",
            "duct",
            "intake.",
            "intake.x",
            "intake.1.",
            "intake.1.-2",
        ] {
            assert_eq!(Spot::parse(text), None, "{text}");
        }
    }
}
