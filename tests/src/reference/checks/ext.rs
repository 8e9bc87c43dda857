//! The film outside a tube, and insulation.

use core::f64::consts::PI;

use dewrun_moist_air::fast::SaturationCurve;
use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::latent::DRY_AIR_CP;
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio};
use dewrun_moist_air::transport::{dry_air_conductivity_w_mk, dry_air_viscosity_pa_s};
use dewrun_moist_air::{ZERO_CELSIUS_K, dew_point};
use dewrun_numeric::itp;
use dewrun_tube::film_outside::{
    FilmOutside, OuterSurface, OutsideFluxes, Surroundings, blended, churchill_bernstein_1977,
    churchill_chu_1975_horizontal, churchill_chu_1975_vertical, popiel_2008_slender,
    radiation_coefficient,
};
use dewrun_tube::layers::{cylinder_resistance_mk_w, surface_resistance_mk_w};
use serde_json::json;

use super::{Computed, Rows};
use crate::reference::compare::{Comparison, Tolerance};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("EXT-01", library_cylinder),
    ("EXT-02", churchill_chu),
    ("EXT-03", incropera_example_9_4),
    ("EXT-04", incropera_example_7_4),
    ("EXT-05", churchill_bernstein),
    ("EXT-06", library_vertical_cylinder),
    ("EXT-10", incropera_example_3_5),
    ("EXT-11", least_insulation),
    ("EXT-12", small_tubes),
    ("EXT-51", tube_in_wind),
    ("EXT-52", thin_riser),
    ("EXT-53", sweat),
];

const GRAVITY: f64 = 9.80665;
const ATMOSPHERE_PA: f64 = 101_325.0;
const GRAMS_PER_HOUR: f64 = 3.6e6;

/// Dry air at the film temperature between a surface and the air around it.
struct Film {
    kinematic: f64,
    conductivity: f64,
    prandtl: f64,
    /// Buoyancy, 1/m3: the Grashof number of a metre.
    grashof_of_a_metre: f64,
}

impl Film {
    fn between(surface_c: f64, air_c: f64, p_pa: f64) -> Self {
        let film_c = 0.5 * (surface_c + air_c);
        let (mu, conductivity) = (
            dry_air_viscosity_pa_s(film_c),
            dry_air_conductivity_w_mk(film_c),
        );
        let kinematic = mu / density_kg_m3(film_c, 0.0, p_pa);
        let buoyancy = GRAVITY * (surface_c - air_c).abs() / (film_c + ZERO_CELSIUS_K);
        Self {
            kinematic,
            conductivity,
            prandtl: mu * DRY_AIR_CP / conductivity,
            grashof_of_a_metre: buoyancy / (kinematic * kinematic),
        }
    }

    fn rayleigh(&self, size_m: f64) -> f64 {
        self.grashof_of_a_metre * size_m * size_m * size_m * self.prandtl
    }
}

/// The film that the march uses, at one surface temperature.
fn prepared(surface: OuterSurface, around: Surroundings, surface_c: f64) -> OutsideFluxes {
    FilmOutside::new(&SaturationCurve::at(around.p_pa), surface, around).at(surface_c)
}

fn still_air(air_c: f64, p_pa: f64) -> Surroundings {
    Surroundings {
        air_c,
        w: 0.0,
        radiant_c: air_c,
        wind_m_s: 0.0,
        p_pa,
    }
}

/// CalebBell/ht, `tests/test_conv_free_immersed.py`.
fn library_cylinder(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let pr = inputs.number("Pr")?;
    let nu = churchill_chu_1975_horizontal(inputs.number("Gr")? * pr, pr);
    Ok(Computed::of([("Nu", nu.into())]))
}

/// Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1049.
fn churchill_chu(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let pr = inputs.number("Pr")?;
    let nu = inputs.each("Ra", |ra| churchill_chu_1975_horizontal(ra, pr))?;
    Ok(Computed::of([("Nu", nu)]))
}

/// Incropera et al., 6th ed. (2007), example 9.4.
fn incropera_example_9_4(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (d, pr) = (inputs.number("D_m")?, inputs.number("Pr")?);
    let (surface, air) = (inputs.number("Ts_C")?, inputs.number("Tinf_C")?);
    let difference = surface - air;
    let ra = GRAVITY * inputs.number("beta")? * difference * d * d * d
        / (inputs.number("nu")? * inputs.number("alpha")?);
    let nu = churchill_chu_1975_horizontal(ra, pr);
    let h = nu * inputs.number("k")? / d;
    let radiation = radiation_coefficient(
        inputs.number("emissivity")?,
        surface + ZERO_CELSIUS_K,
        air + ZERO_CELSIUS_K,
    );
    let (convective, radiant) = (PI * d * h * difference, PI * d * radiation * difference);
    Ok(Computed::of([
        ("Ra", ra.into()),
        ("Nu", nu.into()),
        ("h", h.into()),
        ("q_conv_W_m", convective.into()),
        ("q_rad_W_m", radiant.into()),
        ("q_W_m", (convective + radiant).into()),
    ]))
}

/// Incropera et al., 6th ed. (2007), example 7.4, with the properties at 350 K.
fn incropera_example_7_4(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (d, air) = (inputs.number("D_m")?, inputs.within("props_350K"));
    let reynolds = inputs.number("V_m_s")? * d / air.number("nu")?;
    let nu = churchill_bernstein_1977(reynolds, air.number("Pr")?);
    let h = nu * air.number("k")? / d;
    Ok(Computed::of([
        ("Nu_ChurchillBernstein", nu.into()),
        ("h_CB", h.into()),
    ]))
}

/// Churchill & Bernstein, J. Heat Transfer 99 (1977) 300.
fn churchill_bernstein(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let pr = inputs.number("Pr")?;
    Ok(Computed::of([(
        "Nu",
        inputs.each("Re", |re| churchill_bernstein_1977(re, pr))?,
    )]))
}

/// CalebBell/ht, `tests/test_conv_free_immersed.py`: Popiel 2008 on Churchill's plate.
fn library_vertical_cylinder(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (prandtl, grashof) = (inputs.list("Pr")?, inputs.list("Gr")?);
    let (lengths, bores) = (inputs.list("L_m")?, inputs.list("D_m")?);
    let nu: Vec<f64> = prandtl
        .into_iter()
        .zip(grashof)
        .zip(lengths.into_iter().zip(bores))
        .map(|((pr, gr), (l, d))| {
            churchill_chu_1975_vertical(gr * pr, pr) * popiel_2008_slender(gr, l / d)
        })
        .collect();
    let [first, second] = nu[..] else {
        return Err("two cylinders are expected".to_owned());
    };
    Ok(Computed::of([
        ("Nu_Popiel_Churchill", first.into()),
        ("Nu_Popiel_2", second.into()),
    ]))
}

/// Incropera et al., 6th ed. (2007), example 3.5.
fn incropera_example_3_5(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (k, h) = (inputs.number("k")?, inputs.number("h")?);
    let (inner, critical) = (
        2.0 * inputs.number("r_i_m")?,
        2.0 * inputs.number("r_cr_m")?,
    );
    let at_critical =
        cylinder_resistance_mk_w(inner, critical, k) + surface_resistance_mk_w(critical, h);
    Ok(Computed::of([
        ("R_total_bare", surface_resistance_mk_w(inner, h).into()),
        ("R_total_at_cr", at_critical.into()),
    ])
    .also(Comparison::number(
        "r_cr_m",
        dewrun_tube::layers::critical_radius_m(k, h),
        0.5 * critical,
        Tolerance::relative(1e-4),
    )))
}

/// ISO 12241 and the TIASA handbook, section 5.2.7: the surface is just at the dew point of the room.
fn least_insulation(inputs: &Inputs<'_>) -> Result<Computed, String> {
    // A tube so wide that its wall is flat.
    const FLAT_M: f64 = 1000.0;
    let (inside, room) = (inputs.number("Ti_C")?, inputs.number("Ta_C")?);
    let (k, h) = (inputs.number("k")?, inputs.number("h_o")?);
    let thickness_mm = |diameter: f64, dew_c: f64| {
        let residual = |thickness: f64| {
            let outside = diameter + 2.0 * thickness;
            (room - dew_c) * cylinder_resistance_mk_w(diameter, outside, k)
                - (dew_c - inside) * surface_resistance_mk_w(outside, h)
        };
        itp(residual, 1e-6, 0.5, 1e-9).map(|thickness| thickness * 1000.0)
    };
    let (mut dew, mut pipe, mut flat) = (Vec::new(), Vec::new(), Vec::new());
    for rh in inputs.list("RH")? {
        let x = rh * saturated_over_water(room, ATMOSPHERE_PA);
        let dew_c =
            dew_point::over_water_c(x, ATMOSPHERE_PA).map_err(|error| format!("{error:?}"))?;
        dew.push(dew_c);
        pipe.push(
            thickness_mm(inputs.number("OD_m")?, dew_c).map_err(|error| format!("{error:?}"))?,
        );
        flat.push(thickness_mm(FLAT_M, dew_c).map_err(|error| format!("{error:?}"))?);
    }
    Ok(Computed::of([
        ("Tdp_C", json!(dew)),
        ("pipe_mm", json!(pipe)),
        ("flat_mm", json!(flat)),
    ]))
}

/// Churchill & Chu 1975 with CoolProp air at the film temperature, room at 20 °C.
fn small_tubes(inputs: &Inputs<'_>) -> Result<Computed, String> {
    const ROOM_C: f64 = 20.0;
    let (mut rayleigh, mut coefficients, mut by_march) = (Vec::new(), Vec::new(), Vec::new());
    for (d, difference) in inputs.list("D_m")?.into_iter().zip(inputs.list("dT_K")?) {
        let film = Film::between(ROOM_C + difference, ROOM_C, ATMOSPHERE_PA);
        let ra = film.rayleigh(d);
        rayleigh.push(ra);
        coefficients.push(churchill_chu_1975_horizontal(ra, film.prandtl) * film.conductivity / d);
        let surface = OuterSurface {
            diameter_m: d,
            emissivity: 0.0,
            riser_m: None,
        };
        let fluxes = prepared(
            surface,
            still_air(ROOM_C, ATMOSPHERE_PA),
            ROOM_C + difference,
        );
        by_march.push(fluxes.convection_w_m2k);
    }
    Ok(Computed::of([
        ("Ra", json!(rayleigh)),
        ("h_ChurchillChu", json!(coefficients)),
    ])
    .route("h_ChurchillChu", "the march", by_march))
}

/// ht 1.2.0 with CoolProp air at 30 °C, `Nu^3 = Nu_n^3 + Nu_f^3`.
fn tube_in_wind(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (d, wind, p_pa) = (
        inputs.number("do_m")?,
        inputs.number("wind_m_s")?,
        inputs.number("p_Pa")?,
    );
    let (surface_c, air_c) = (inputs.number("Ts_C")?, inputs.number("Ta_C")?);
    let emissivity = inputs.number("emissivity")?;
    let film = Film::between(surface_c, air_c, p_pa);
    let natural = churchill_chu_1975_horizontal(film.rayleigh(d), film.prandtl);
    let forced = churchill_bernstein_1977(wind * d / film.kinematic, film.prandtl);
    let surface = OuterSurface {
        diameter_m: d,
        emissivity,
        riser_m: None,
    };
    let around = Surroundings {
        wind_m_s: wind,
        ..still_air(air_c, p_pa)
    };
    let fluxes = prepared(surface, around, surface_c);
    let radiation = radiation_coefficient(
        emissivity,
        surface_c + ZERO_CELSIUS_K,
        air_c + ZERO_CELSIUS_K,
    );
    Ok(Computed::of([
        ("Nu_natural", natural.into()),
        ("Nu_forced", forced.into()),
        ("Nu", blended(natural, forced).into()),
        ("h", fluxes.convection_w_m2k.into()),
        ("h_rad", radiation.into()),
        ("q_W_m", fluxes.loss_w_m.into()),
    ]))
}

/// ht 1.2.0, `Nu_vertical_cylinder_Popiel_Churchill`, CoolProp air at 25 °C.
fn thin_riser(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (l, d, p_pa) = (
        inputs.number("L_m")?,
        inputs.number("do_m")?,
        inputs.number("p_Pa")?,
    );
    let (surface_c, air_c) = (inputs.number("Ts_C")?, inputs.number("Ta_C")?);
    let film = Film::between(surface_c, air_c, p_pa);
    let surface = OuterSurface {
        diameter_m: d,
        emissivity: 0.0,
        riser_m: Some(l),
    };
    let fluxes = prepared(surface, still_air(air_c, p_pa), surface_c);
    let factor = popiel_2008_slender(film.grashof_of_a_metre * l * l * l, l / d);
    Ok(Computed::of([
        ("h", fluxes.convection_w_m2k.into()),
        ("factor_over_plate", factor.into()),
    ]))
}

/// ht 1.2.0, Chilton & Colburn with Massman's diffusivity, humidity ratios by CoolProp 8.0.0.
fn sweat(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    let (surface_c, air_c) = (inputs.number("Ts_C")?, inputs.number("Ta_C")?);
    let x = inputs.number("RH_pct")? / 100.0 * saturated_over_water(air_c, p_pa);
    let around = Surroundings {
        w: humidity_ratio(x),
        wind_m_s: inputs.number("wind_m_s")?,
        ..still_air(air_c, p_pa)
    };
    let surface = OuterSurface {
        diameter_m: inputs.number("do_m")?,
        emissivity: 0.0,
        riser_m: None,
    };
    let fluxes = prepared(surface, around, surface_c);
    Ok(Computed::of([
        ("h_conv", fluxes.convection_w_m2k.into()),
        ("sweat_g_h_m", (fluxes.sweat_kg_sm * GRAMS_PER_HOUR).into()),
    ]))
}
