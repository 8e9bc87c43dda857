//! Another value for an input of how a run is installed.

use dewrun_quantity::{
    Density, FlowResistance, Length, Mass, MassPerArea, MassPerLength, Modulus, Pressure, Time,
    Volume, VolumeFlow,
};

use super::Figure;
use crate::error::{Place, Tube};
use crate::installation::{DuctEnd, Fan, Installation, LegInstallation, Trap, TubeInstallation};

/// Puts another value, in the unit of the figure's kind, into how a run is installed; none where it has no such input.
///
/// Holes are of one kind: another diameter or discharge is that of all.
#[must_use = "none tells that nothing was changed"]
pub fn set_installed(
    installation: &mut Installation,
    figure: Figure,
    place: Place,
    value: f64,
) -> Option<()> {
    match place {
        Place::Run => set_line(installation, figure, value),
        Place::Duct(Tube::Intake) => set_end(&mut installation.duct.intake, figure, value),
        Place::Duct(Tube::Exhaust) => set_end(&mut installation.duct.exhaust, figure, value),
        Place::Space(at) if figure == Figure::SpacePressure => {
            *installation.spaces.get_mut(at)? = Pressure::pascals(value);
            Some(())
        }
        Place::Leg(tube, at) => set_leg(of(installation, tube).legs.get_mut(at)?, figure, value),
        Place::Trap(tube, at) => set_trap(of(installation, tube).traps.get_mut(at)?, figure, value),
        Place::DuctAir | Place::Space(_) | Place::Detector | Place::Flow => None,
    }
}

fn of(installation: &mut Installation, tube: Tube) -> &mut TubeInstallation {
    match tube {
        Tube::Intake => &mut installation.intake,
        Tube::Exhaust => &mut installation.exhaust,
    }
}

fn set_line(installation: &mut Installation, figure: Figure, value: f64) -> Option<()> {
    let path = &mut installation.detector;
    match figure {
        Figure::HoleDiameter => {
            for hole in &mut installation.holes {
                hole.diameter = Length::millimetres(value);
            }
        }
        Figure::HoleDischarge => {
            for hole in &mut installation.holes {
                hole.discharge = value;
            }
        }
        Figure::HoleCount => {
            let hole = *installation.holes.first()?;
            let mut counted = 1.0;
            installation.holes.clear();
            // Holes are counted one by one: a number between two counts is the lower one.
            while counted <= value {
                installation.holes.push(hole);
                counted += 1.0;
            }
        }
        Figure::FilterResistance => {
            path.filter = FlowResistance::pascals_per_litre_per_minute(value);
        }
        Figure::FilterDust => installation.dust_after_year = value,
        Figure::ChamberLoss => path.chamber_loss = value,
        Figure::ChamberVolume => path.chamber_volume = Volume::millilitres(value),
        Figure::StartSuction => path.start_suction = Pressure::pascals(value),
        Figure::FanPressure | Figure::FanFlow => return set_fan(&mut path.fan, figure, value),
        Figure::LimitMargin => installation.limit_margin = 0.01 * value,
        Figure::DrainInterval => installation.drain_interval = Time::days(value),
        Figure::RetainedFilm => {
            installation.film = MassPerArea::grams_per_square_metre(value);
        }
        _ => return None,
    }
    Some(())
}

/// A curve of its own is measured as a whole.
fn set_fan(fan: &mut Fan, figure: Figure, value: f64) -> Option<()> {
    match (fan, figure) {
        (Fan::Generic { standing, .. }, Figure::FanPressure) => {
            *standing = Pressure::pascals(value);
        }
        (Fan::Generic { free, .. }, Figure::FanFlow) => {
            *free = VolumeFlow::litres_per_minute(value);
        }
        _ => return None,
    }
    Some(())
}

fn set_end(end: &mut DuctEnd, figure: Figure, value: f64) -> Option<()> {
    match figure {
        Figure::DuctStatic => end.static_pressure = Pressure::pascals(value),
        Figure::DuctVelocity => end.velocity_pressure = Pressure::pascals(value),
        Figure::Catch => end.catch = value,
        _ => return None,
    }
    Some(())
}

fn set_leg(leg: &mut LegInstallation, figure: Figure, value: f64) -> Option<()> {
    match figure {
        Figure::Roughness => leg.roughness = Length::millimetres(value),
        Figure::Corrugations => leg.corrugations = MassPerLength::grams_per_metre(value),
        Figure::TubeDensity => leg.density = Density::kilograms_per_cubic_metre(value),
        Figure::Modulus => leg.long_term_modulus = Modulus::megapascals(value),
        Figure::HangerSpacing => leg.hanger_spacing = Some(Length::metres(value)),
        _ => return None,
    }
    Some(())
}

fn set_trap(trap: &mut Trap, figure: Figure, value: f64) -> Option<()> {
    match figure {
        // A millilitre of water is a gram, within what a trap's capacity is known to.
        Figure::TrapCapacity => trap.capacity = Mass::grams(value),
        Figure::TrapSeal => trap.seal = Length::millimetres(value),
        Figure::TrapDrop => trap.outlet_drop = Length::millimetres(value),
        Figure::TrapPlace => trap.at = Length::metres(value),
        _ => return None,
    }
    Some(())
}
