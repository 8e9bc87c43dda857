//! Where along a run a figure is read.

use core::fmt;

use dewrun_quantity::{Length, format, parse};

use crate::error::{Place, Tube};
use crate::figure::Figure;
use crate::input::{Leg, Run};
use crate::outcome::{Outcome, ProfilePoint, TubeOutcome};
use crate::reading::{Reading, reading};

/// Places nearer to each other than this are the same, m.
const SAME_PLACE_M: f64 = 1e-6;

/// Where along a run a figure is read: a tube, one of its legs, a place along it.
///
/// Written `intake`, `intake.2` or, 5.2 m from the inlet, `intake.2@5.2`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// The tube.
    pub tube: Tube,
    /// The position of the leg in it.
    pub leg: Option<usize>,
    /// The distance from the tube's inlet, m.
    pub at_m: Option<f64>,
}

impl Spot {
    /// A tube as a whole.
    #[must_use]
    pub const fn tube(tube: Tube) -> Self {
        Self {
            tube,
            leg: None,
            at_m: None,
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

    /// A place along a leg.
    #[must_use]
    pub fn at(tube: Tube, leg: usize, x: Length) -> Self {
        Self {
            at_m: Some(x.to_metres()),
            ..Self::leg(tube, leg)
        }
    }

    /// A place along a tube, in whichever leg.
    #[must_use]
    pub fn along(tube: Tube, x: Length) -> Self {
        Self {
            at_m: Some(x.to_metres()),
            ..Self::tube(tube)
        }
    }

    /// The spot with the leg that its place is in, where it names none.
    #[must_use]
    pub fn in_leg(self, run: &Run) -> Self {
        let (None, Some(at_m)) = (self.leg, self.at_m) else {
            return self;
        };
        let legs = match self.tube {
            Tube::Intake => &run.intake,
            Tube::Exhaust => &run.exhaust,
        };
        let mut end_m = 0.0;
        let leg = legs.iter().position(|leg| {
            end_m += leg.length.to_metres();
            at_m <= end_m + SAME_PLACE_M
        });
        Self { leg, ..self }
    }

    /// Reads what [`Spot`] writes.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (part, place) = match text.split_once('@') {
            Some((part, place)) => (part, Some(place)),
            None => (text, None),
        };
        let (tube, leg) = match part.split_once('.') {
            Some((tube, leg)) => (tube, Some(leg)),
            None => (part, None),
        };
        let tube = match tube {
            "intake" => Tube::Intake,
            "exhaust" => Tube::Exhaust,
            _ => return None,
        };
        Some(Self {
            tube,
            leg: leg.map(str::parse).transpose().ok()?,
            at_m: place.map(parse::number).transpose().ok()?,
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

    /// The spot with the place at which a figure is best looked into: where most water or frost forms, or comes nearest to forming, from one bore behind the inlet on; for the end of a leg that end, for its lowest wall the coldest place.
    #[must_use]
    pub fn looked_into(self, figure: Figure, run: &Run, outcome: &Outcome) -> Self {
        let Some(tube) = self.answer(outcome) else {
            return self;
        };
        if self.at_m.is_some() {
            return self;
        }
        // At an inlet the film is singular: what is read there says little.
        let bore_m = Self::leg(self.tube, 0)
            .leg_of(run)
            .map_or(0.0, |leg| leg.tube.bore.to_metres());
        let is_there = |point: &&ProfilePoint| {
            bore_m <= point.x.to_metres() && self.leg.is_none_or(|leg| leg == point.leg)
        };
        let mut here = tube.profile.iter().filter(is_there);
        let found = match figure {
            Figure::LowestWall | Figure::ColdestWall | Figure::ColdestWallAt => {
                here.min_by(|a, b| wall(a).total_cmp(&wall(b)))
            }
            Figure::AirAtEnd
            | Figure::RatioAtEnd
            | Figure::MistAtEnd
            | Figure::HumidityAtEnd
            | Figure::DewPointAtEnd => here.next_back(),
            Figure::LegSweat | Figure::TubeSweat | Figure::LegRime => {
                here.max_by(|a, b| sweats(a).total_cmp(&sweats(b)))
            }
            Figure::TubeFrost | Figure::LegFrost | Figure::FrostFrom => {
                here.max_by(|a, b| frosts(a).total_cmp(&frosts(b)))
            }
            _ => here.max_by(|a, b| wets(a).total_cmp(&wets(b))),
        };
        found.map_or(self, |point| Self::at(self.tube, point.leg, point.x))
    }

    /// Every quantity at its place; at a joint, those of its leg.
    #[must_use]
    pub fn reading(self, run: &Run, outcome: &Outcome) -> Option<Reading> {
        let x = Length::metres(self.at_m?);
        let tube = self.answer(outcome)?;
        let read = reading(tube, run.pressure, x)?;
        let is_here = |point: &&ProfilePoint| {
            Some(point.leg) == self.leg && (point.x - x).to_metres().abs() < SAME_PLACE_M
        };
        let point = tube.profile.iter().find(is_here).copied();
        Some(Reading {
            point: point.unwrap_or(read.point),
            ..read
        })
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
            Figure::Pressure
            | Figure::Altitude
            | Figure::HoleCount
            | Figure::HoleDiameter
            | Figure::HoleDischarge
            | Figure::FilterResistance
            | Figure::FilterDust
            | Figure::ChamberLoss
            | Figure::ChamberVolume
            | Figure::FanPressure
            | Figure::FanFlow
            | Figure::StartSuction
            | Figure::AirflowLimit
            | Figure::LimitMargin
            | Figure::DrainInterval
            | Figure::RetainedFilm
            | Figure::Season => Place::Run,
            Figure::DuctStatic | Figure::DuctVelocity | Figure::Catch => Place::Duct(self.tube),
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

fn wall(point: &ProfilePoint) -> f64 {
    point.inner_wall.to_celsius()
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

/// How much frost forms; where none does, below zero by how warm the wall is.
fn frosts(point: &ProfilePoint) -> f64 {
    let frost = point.deposit.to_grams_per_hour_metre() * point.frozen_share;
    if 0.0 < frost {
        frost
    } else {
        -1e3 - wall(point)
    }
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
        }
        if let Some(at_m) = self.at_m {
            write!(f, "@{}", format::entered(at_m))?;
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
        let place = Spot::at(Tube::Intake, 2, Length::metres(5.2));
        for spot in [whole, leg, place] {
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
            "intake.-1",
            "intake.1@",
            "intake@far",
        ] {
            assert_eq!(Spot::parse(text), None, "{text}");
        }
    }
}
