//! A run and its installation as an airflow line, in the air of the steady answer.

use dewrun_airflow::{
    Air, Detector, FanCurve, Fitting, Inlet, Line, OpenEnd, Side, Stretch, Trap, Tube as AirTube,
};
use dewrun_moist_air::mixture::{density_kg_m3, mole_fraction};
use dewrun_moist_air::transport::viscosity_pa_s;
use dewrun_quantity::{Density, Length, Viscosity, Volume};

use crate::error::Tube;
use crate::input::{Leg, Run};
use crate::installation::{Installation, TubeInstallation};
use crate::outcome::{AirPoint, Outcome, TubeOutcome};

/// The side of a line that a tube is.
pub(super) const fn side(tube: Tube) -> Side {
    match tube {
        Tube::Intake => Side::Intake,
        Tube::Exhaust => Side::Exhaust,
    }
}

/// The line with a fan, its air warmer by so many kelvins than in the steady answer.
pub(super) fn line(
    run: &Run,
    installation: &Installation,
    steady: &Outcome,
    fan: FanCurve,
    warmer_k: f64,
) -> Line {
    let p_pa = run.pressure.to_pascals();
    let make = Making {
        p_pa,
        warmer_k,
        transition: installation.transition,
    };
    let chamber = make.between(&steady.chamber, &steady.chamber);
    let bore = run.intake.last().map_or(Length::ZERO, |leg| leg.tube.bore);
    let path = &installation.detector;
    let exhaust = match &steady.exhaust {
        Some(outcome) => make.tube(
            &run.exhaust,
            &installation.exhaust,
            outcome,
            &steady.chamber,
        ),
        None => none(bore, chamber),
    };
    Line {
        inlet: Inlet::Holes(installation.holes.clone()),
        intake: make.tube(
            &run.intake,
            &installation.intake,
            &steady.intake,
            &steady.duct_air,
        ),
        detector: Detector {
            filter: path.filter,
            filter_volume: Volume::ZERO,
            chamber_loss_coefficient: path.chamber_loss,
            chamber_bore: bore,
            chamber_volume: path.chamber_volume,
            fan,
            air: chamber,
        },
        exhaust,
        outlet: OpenEnd::SHARP,
        duct: installation.duct.total(),
        room: make.room(run),
    }
}

/// No tube: an end of that bore.
fn none(bore: Length, air: Air) -> AirTube {
    AirTube {
        stretches: vec![Stretch {
            length: Length::ZERO,
            bore,
            roughness: Length::ZERO,
            transition: 1.0,
            rise: Length::ZERO,
            air,
        }],
        fittings: Vec::new(),
        traps: Vec::new(),
    }
}

struct Making {
    p_pa: f64,
    warmer_k: f64,
    transition: f64,
}

impl Making {
    fn tube(
        &self,
        legs: &[Leg],
        installed: &TubeInstallation,
        outcome: &TubeOutcome,
        inlet: &AirPoint,
    ) -> AirTube {
        let (mut stretches, mut fittings) = (Vec::new(), Vec::new());
        let (mut before, mut at) = (inlet, Length::ZERO);
        for ((leg, built), found) in legs.iter().zip(&installed.legs).zip(&outcome.legs) {
            stretches.push(Stretch {
                length: leg.length,
                bore: leg.tube.bore,
                roughness: built.roughness,
                transition: self.transition,
                rise: leg.rise,
                air: self.between(before, &found.air_at_end),
            });
            let fitted = built
                .fittings
                .iter()
                .map(|(from_start, loss_coefficient)| Fitting {
                    at: at + from_start.min(leg.length),
                    loss_coefficient: *loss_coefficient,
                });
            fittings.extend(fitted);
            at += leg.length;
            before = &found.air_at_end;
        }
        let traps = installed.traps.iter().map(|trap| Trap {
            at: trap.at.min(at),
            volume: Volume::litres(trap.capacity.to_kilograms()),
        });
        AirTube {
            stretches,
            fittings,
            traps: traps.collect(),
        }
    }

    /// The air half way between two states.
    fn between(&self, from: &AirPoint, to: &AirPoint) -> Air {
        let t_c =
            0.5 * (from.temperature.to_celsius() + to.temperature.to_celsius()) + self.warmer_k;
        let w = 0.5
            * (from.humidity_ratio.to_kilograms_per_kilogram()
                + to.humidity_ratio.to_kilograms_per_kilogram());
        Air {
            density: Density::kilograms_per_cubic_metre(density_kg_m3(t_c, w, self.p_pa)),
            viscosity: Viscosity::pascal_seconds(viscosity_pa_s(t_c, mole_fraction(w))),
        }
    }

    /// Dry air at the temperature of the space in which the intake tube ends: the detector's room.
    fn room(&self, run: &Run) -> Density {
        let space = run.intake.last().and_then(|leg| run.spaces.get(leg.space));
        let t_c = space.map_or(20.0, |space| space.temperature.to_celsius());
        Density::kilograms_per_cubic_metre(density_kg_m3(t_c + self.warmer_k, 0.0, self.p_pa))
    }
}
