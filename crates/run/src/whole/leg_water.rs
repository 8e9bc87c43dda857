//! Each leg: its course, its bore, its hangers, and the air against which water runs.

use core::f64::consts::PI;

use dewrun_airflow::friction::churchill_1977;
use dewrun_quantity::{Density, MassPerArea, Speed, VolumeFlow};
use dewrun_water::Water;
use dewrun_water::drainage::{Course, LegReport};
use dewrun_water::hanger::{HungTube, Support, largest_spacing, sag};
use dewrun_water::held::Puddle;
use dewrun_water::moving::{SHARP_EDGED, incline_that_air_holds, wall_shear, wallis_1969_flooding};
use dewrun_water::water_lock::{Lock, lock_of};

use super::error::WholeError;
use super::outcome::{HangerAdvice, LegWater};
use crate::error::Place;
use crate::input::Leg;
use crate::installation::LegInstallation;

/// A leg steeper than this, per horizontal length, is no beam across.
const NO_BEAM: f64 = 0.5;

/// The air in a leg.
pub(super) struct LegAir {
    pub(super) flow: VolumeFlow,
    pub(super) density: Density,
    pub(super) reynolds: f64,
    /// The film that it drags.
    pub(super) film: MassPerArea,
}

/// What a leg does with water.
pub(super) fn leg_water(
    place: Place,
    leg: &Leg,
    built: &LegInstallation,
    report: LegReport,
    (water, air): (Water, &LegAir),
) -> Result<LegWater, WholeError> {
    let bore = leg.tube.bore;
    let bore_m = bore.to_metres();
    let area_m2 = 0.25 * PI * bore_m * bore_m;
    let against = report.course == Course::AgainstAir;
    let air_speed = Speed::metres_per_second(air.flow.to_cubic_metres_per_second() / area_m2);
    let friction = churchill_1977(air.reynolds, built.roughness / bore);
    let shear = wall_shear(friction, air.density, air_speed);
    let held = incline_that_air_holds(shear, air.film);
    Ok(LegWater {
        dragged: against && report.fall.sine() < held.sine(),
        lock: lock_of(bore, Puddle::USUAL.mean_angle, water).unwrap_or(Lock::Runs),
        hangers: hangers(place, leg, built, &report, water)?,
        air_speed,
        flooding: (against && report.steep)
            .then(|| wallis_1969_flooding(bore, air.density, water.density, SHARP_EDGED)),
        report,
    })
}

fn hangers(
    place: Place,
    leg: &Leg,
    built: &LegInstallation,
    report: &LegReport,
    water: Water,
) -> Result<HangerAdvice, WholeError> {
    let tangent = report.fall.tangent();
    if NO_BEAM < tangent {
        return Ok(HangerAdvice::Steep);
    }
    if built.coiled {
        return Ok(HangerAdvice::AllAlong);
    }
    if tangent <= 0.0 {
        return Ok(HangerAdvice::Level);
    }
    let hung = HungTube {
        bore: leg.tube.bore,
        outside_diameter: leg.tube.outside_diameter,
        density: built.density,
        long_term_modulus: built.long_term_modulus,
        water: water.density,
    };
    let failed = |source| WholeError::Hanger { place, source };
    let support = Support::EndSpanOfMore;
    let now = match built.hanger_spacing {
        Some(spacing) => Some((spacing, sag(&hung, support, spacing).map_err(failed)?)),
        None => None,
    };
    Ok(HangerAdvice::Spacing {
        largest: largest_spacing(&hung, support, report.fall).map_err(failed)?,
        now,
    })
}

impl HangerAdvice {
    /// Hangers as they are let the leg sag so far that it does not drain.
    #[must_use]
    pub fn sags(&self) -> bool {
        matches!(self, Self::Spacing { largest, now: Some((spacing, _)) } if largest < spacing)
    }
}
