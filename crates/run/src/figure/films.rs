//! The values that stand between a result and its inputs, at one point of a tube: films, resistances, properties of the air.

use dewrun_moist_air::ZERO_CELSIUS_K;
use dewrun_moist_air::fast::{SaturationCurve, diffusivity_m2_s, transport};
use dewrun_moist_air::latent::{sublimation_j_kg, vaporisation_j_kg};
use dewrun_moist_air::mixture::{density_kg_m3, heat_capacity_j_kgk, mole_fraction};
use dewrun_tube::Segment;
use dewrun_tube::film_inside::FilmInside;
use dewrun_tube::film_outside::{FilmOutside, OuterSurface, Surroundings, radiation_coefficient};
use dewrun_tube::layers::cylinder_resistance_mk_w;

use super::Figure;
use crate::error::Tube;
use crate::input::Run;
use crate::outcome::{Outcome, ProfilePoint};
use crate::prepare::Prepared;

/// The value at a point of a tube; none where no air flows or the figure is of another kind.
pub(super) fn value(
    run: &Run,
    outcome: &Outcome,
    figure: Figure,
    point: &ProfilePoint,
    tube: Tube,
) -> Option<f64> {
    let prepared = Prepared::new(run, &mut Vec::new()).ok()?;
    let segments = match tube {
        Tube::Intake => &prepared.intake,
        Tube::Exhaust => &prepared.exhaust,
    };
    let segment = segments.get(point.leg)?;
    let dry_air_kg_s = outcome.dry_air.to_kilograms_per_second();
    inside(figure, segment, point, dry_air_kg_s, prepared.p_pa)
        .or_else(|| outside(figure, segment, point, prepared.p_pa))
}

fn inside(
    figure: Figure,
    segment: &Segment,
    point: &ProfilePoint,
    dry_air_kg_s: f64,
    p_pa: f64,
) -> Option<f64> {
    let t_c = point.air.to_celsius();
    let w = point.humidity_ratio.to_kilograms_per_kilogram();
    let properties = transport(t_c, mole_fraction(w));
    let (viscosity, conductivity) = (properties.viscosity_pa_s, properties.conductivity_w_mk);
    let density = density_kg_m3(t_c, w, p_pa);
    let diffusivity = diffusivity_m2_s(t_c, p_pa);
    match figure {
        Figure::Viscosity => return Some(viscosity * 1e6),
        Figure::AirConductivity => return Some(conductivity),
        Figure::Density => return Some(density),
        Figure::Diffusivity => return Some(diffusivity * 1e6),
        _ if dry_air_kg_s <= 0.0 => return None,
        _ => {}
    }
    let d_m = segment.bore_m;
    let reynolds = 4.0 * dry_air_kg_s * (1.0 + w) / (core::f64::consts::PI * d_m * viscosity);
    let prandtl = viscosity * heat_capacity_j_kgk(w) / conductivity;
    let schmidt = viscosity / (density * diffusivity);
    // At the very inlet the film is singular: it is read from one bore behind it on.
    let film = FilmInside::at(reynolds, point.x.to_metres().max(d_m), d_m);
    Some(match figure {
        Figure::Reynolds => reynolds,
        Figure::Prandtl => prandtl,
        Figure::Schmidt => schmidt,
        Figure::Nusselt => film.number(prandtl),
        Figure::Sherwood => film.number(schmidt),
        Figure::FilmInside => film.number(prandtl) * conductivity / d_m,
        _ => return None,
    })
}

fn outside(figure: Figure, segment: &Segment, point: &ProfilePoint, p_pa: f64) -> Option<f64> {
    let wall_c = point.inner_wall.to_celsius();
    let surface_c = point.outer_surface.to_celsius();
    let outer_m = segment.tube_outside_m + 2.0 * segment.insulation_m;
    let curve = SaturationCurve::at(p_pa);
    Some(match figure {
        Figure::FilmOutside => {
            let surface = OuterSurface {
                diameter_m: outer_m,
                emissivity: segment.emissivity,
                riser_m: segment.riser_m,
            };
            let around = Surroundings {
                air_c: segment.air_c,
                w: segment.air_w,
                radiant_c: segment.radiant_c,
                wind_m_s: segment.wind_m_s,
                p_pa,
            };
            let film = FilmOutside::new(&curve, surface, around);
            film.at(surface_c).convection_w_m2k
        }
        Figure::Radiation => radiation_coefficient(
            segment.emissivity,
            surface_c + ZERO_CELSIUS_K,
            segment.radiant_c + ZERO_CELSIUS_K,
        ),
        Figure::WallResistance => {
            let tube =
                cylinder_resistance_mk_w(segment.bore_m, segment.tube_outside_m, segment.tube_w_mk);
            let layer =
                cylinder_resistance_mk_w(segment.tube_outside_m, outer_m, segment.insulation_w_mk);
            if 0.0 < segment.insulation_m {
                tube + layer
            } else {
                tube
            }
        }
        Figure::Saturation => curve.mole_fraction(wall_c).0 * p_pa,
        Figure::HeatOfDeposition if wall_c < 0.0 => sublimation_j_kg(wall_c) * 1e-3,
        Figure::HeatOfDeposition => vaporisation_j_kg(wall_c) * 1e-3,
        _ => return None,
    })
}
