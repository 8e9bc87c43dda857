//! Says where insulation makes a thin tube colder instead of warmer.

use dewrun_moist_air::fast::SaturationCurve;
use dewrun_tube::Segment;
use dewrun_tube::film_outside::{FilmOutside, OuterSurface, Surroundings, radiation_coefficient};
use dewrun_tube::layers::{critical_radius_m, cylinder_resistance_mk_w, surface_resistance_mk_w};

use crate::error::{Place, RunNote};

/// Difference between surface and space, K, at which the outside coefficient is taken for the critical radius.
const USUAL_DIFFERENCE_K: f64 = 5.0;

/// A note where the insulated surface lies inside the critical radius, or lets more heat through than the bare tube would.
pub(crate) fn insulation_note(segment: &Segment, p_pa: f64, place: Place) -> Option<RunNote> {
    if segment.insulation_m <= 0.0 {
        return None;
    }
    let outside_m = segment.tube_outside_m + 2.0 * segment.insulation_m;
    let outside_radius_m = 0.5 * outside_m;
    let covered = coefficient(segment, outside_m, p_pa);
    let critical = critical_radius_m(segment.insulation_w_mk, covered);
    let bare_mk_w = surface_resistance_mk_w(
        segment.tube_outside_m,
        coefficient(segment, segment.tube_outside_m, p_pa),
    );
    let covered_mk_w = surface_resistance_mk_w(outside_m, covered)
        + cylinder_resistance_mk_w(segment.tube_outside_m, outside_m, segment.insulation_w_mk);
    let worse = outside_radius_m < critical || covered_mk_w < bare_mk_w;
    worse.then_some(RunNote::InsulationBelowCriticalRadius {
        place,
        critical_radius_m: critical,
        outside_radius_m,
    })
}

/// Coefficient of an outer surface of a diameter, convection and radiation, W/(m2 K).
fn coefficient(segment: &Segment, diameter_m: f64, p_pa: f64) -> f64 {
    let curve = SaturationCurve::at(p_pa);
    let surface = OuterSurface {
        diameter_m,
        emissivity: segment.emissivity,
        riser_m: segment.riser_m,
    };
    let around = Surroundings {
        air_c: segment.air_c,
        w: 0.0,
        radiant_c: segment.radiant_c,
        wind_m_s: segment.wind_m_s,
        p_pa,
    };
    let surface_c = segment.air_c + USUAL_DIFFERENCE_K;
    let convection = FilmOutside::new(&curve, surface, around)
        .at(surface_c)
        .convection_w_m2k;
    let radiation = radiation_coefficient(
        segment.emissivity,
        surface_c + 273.15,
        segment.radiant_c + 273.15,
    );
    convection + radiation
}
