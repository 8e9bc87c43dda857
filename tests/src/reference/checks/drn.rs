//! Drainage: what holds water, what moves it, low points, traps, hangers.

use dewrun_airflow::friction::{churchill_1977, mean_speed_m_s};
use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_moist_air::transport::dry_air_viscosity_pa_s;
use dewrun_quantity::{
    Angle, Area, Density, ForcePerLength, Length, MassPerArea, Modulus, Pressure, Speed,
    Temperature, Time, Volume, VolumeFlow,
};
use dewrun_water::drying::{film_left, wetted_share};
use dewrun_water::hanger::{HungTube, Support, largest_spacing, load, sag};
use dewrun_water::held::{Puddle, incline_that_moves, puddle_section};
use dewrun_water::moving::{
    furmidge_1962, incline_that_air_holds, sliding_angle, wall_shear, wallis_1969_flooding,
};
use dewrun_water::pool::PoolShape;
use dewrun_water::trap::{TrapKind, TrapState, requirement};
use dewrun_water::water_lock::{bretherton_1961_bore, level_bore, manning_2011_bond};
use dewrun_water::{Incline, Water};
use serde_json::{Value, json};

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("DRN-01", capillary_length),
    ("DRN-02", upright_lock),
    ("DRN-03", level_lock),
    ("DRN-09", flooding),
    ("DRN-51", sealing_volume),
    ("DRN-52", depth_of_volume),
    ("DRN-53", furmidge),
    ("DRN-54", drag_on_a_film),
    ("DRN-55", hangers),
    ("DRN-56", heads_and_traps),
    ("DRN-57", drying),
    ("DRN-58", pinned_puddle),
    ("DRN-59", first_slugs),
];

fn water(t_c: f64) -> Water {
    Water::at(Temperature::celsius(t_c))
}

fn said(error: impl ToString) -> String {
    error.to_string()
}

/// IAPWS R1-76 and IAPWS-95, g = 9.80665.
fn capillary_length(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let of = |t_c| water(t_c).capillary_length().to_millimetres();
    Ok(Computed::of([("lc_mm", inputs.each("T_C", of)?)]))
}

/// Bretherton, J. Fluid Mech. 10 (1961) 166, recomputed by integrating Young and Laplace.
fn upright_lock(_: &Inputs<'_>) -> Result<Computed, String> {
    let bore = bretherton_1961_bore(water(20.0));
    let radii = 0.5 * (bore / water(20.0).capillary_length());
    Ok(Computed::of([
        ("Bo_R", json!(radii * radii)),
        ("ID_water_20C_mm", json!(bore.to_millimetres())),
    ]))
}

/// Criterion of Manning, Collicott & Finn, J. Fluid Mech. 682 (2011) 397, solved by variation of 2-D extremals.
fn level_lock(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (mut bonds, mut bores) = (Vec::new(), Vec::new());
    for degrees in inputs.list("contact_angle_deg")? {
        let angle = Angle::degrees(degrees);
        bonds.push(manning_2011_bond(angle).map_err(said)?);
        let bore = level_bore(angle, water(20.0)).map_err(said)?;
        bores.push(bore.to_millimetres());
    }
    Ok(Computed::of([
        ("Bo_R", json!(bonds)),
        ("ID_water_20C_mm", json!(bores)),
    ]))
}

/// Wallis, One-dimensional Two-phase Flow (1969).
fn flooding(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (constant, t_c) = (inputs.number("C")?, inputs.number("T_C")?);
    let air = dry_air(t_c, 101_325.0);
    let of = |d_m| {
        let bore = Length::metres(d_m);
        wallis_1969_flooding(bore, air, water(t_c).density, constant).to_metres_per_second()
    };
    Ok(Computed::of([("V_m_s", inputs.each("D_m", of)?)]))
}

fn dry_air(t_c: f64, p_pa: f64) -> Density {
    Density::kilograms_per_cubic_metre(density_kg_m3(t_c, 0.0, p_pa))
}

fn between(d_m: f64, before: f64, after: f64) -> Result<PoolShape, String> {
    let [before, after] = [before, after].map(Incline::per_horizontal);
    PoolShape::between(Length::metres(d_m), before, after).map_err(said)
}

/// SciPy quadrature of circular segments over the wedge.
fn sealing_volume(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let slopes = inputs.list("slope_1")?.into_iter();
    let slopes = slopes.zip(inputs.list("slope_2")?);
    let mut volumes = Vec::new();
    for (d_m, (before, after)) in inputs.list("D_m")?.into_iter().zip(slopes) {
        volumes.push(between(d_m, before, after)?.seal_volume().to_millilitres());
    }
    Ok(Computed::of([("V_mL", json!(volumes))]))
}

/// SciPy quadrature and root of the volume.
fn depth_of_volume(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (before, after) = (inputs.number("slope_1")?, inputs.number("slope_2")?);
    let shape = between(inputs.number("D_m")?, before, after)?;
    let (mut depths, mut areas) = (Vec::new(), Vec::new());
    for millilitres in inputs.list("V_mL")? {
        let stand = shape.stand(Volume::millilitres(millilitres));
        let stand = stand.map_err(said)?;
        depths.push(stand.depth.to_millimetres());
        areas.push(stand.free_area.to_square_millimetres());
    }
    Ok(Computed::of([
        ("depth_mm", json!(depths)),
        ("free_area_mm2", json!(areas)),
    ]))
}

/// Furmidge, J. Colloid Sci. 17 (1962) 309.
fn furmidge(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let force = furmidge_1962(
        ForcePerLength::newtons_per_metre(inputs.number("sigma")?),
        Length::metres(inputs.number("width_m")?),
        Angle::degrees(inputs.number("theta_r_deg")?),
        Angle::degrees(inputs.number("theta_a_deg")?),
    );
    let volume = Volume::cubic_metres(inputs.number("V_uL")? * 1e-9);
    let density = Density::kilograms_per_cubic_metre(inputs.number("rho")?);
    let angle = sliding_angle(force, volume, density).map(Angle::to_degrees);
    Ok(Computed::of([
        ("F_N", json!(force.to_newtons())),
        ("angle_deg", json!(angle)),
    ]))
}

/// Churchill 1977 by fluids 1.3.1, CoolProp air and water.
fn drag_on_a_film(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (d_m, t_c) = (inputs.number("D_m")?, inputs.number("T_C")?);
    let air = dry_air(t_c, inputs.number("p_Pa")?);
    let speed_m_s = mean_speed_m_s(inputs.number("Q_L_min")? / 60_000.0, d_m);
    let reynolds =
        speed_m_s * d_m * air.to_kilograms_per_cubic_metre() / dry_air_viscosity_pa_s(t_c);
    let friction = churchill_1977(reynolds, inputs.number("eps")? / d_m);
    let shear = wall_shear(friction, air, Speed::metres_per_second(speed_m_s));
    let film = MassPerArea::grams_per_square_metre(inputs.number("film_g_m2")?);
    Ok(Computed::of([
        ("f", json!(friction)),
        ("tau_Pa", json!(shear.to_pascals())),
        (
            "slope_at_balance",
            json!(incline_that_air_holds(shear, film).sine()),
        ),
    ]))
}

/// SciPy boundary-value solution of the beam equation.
fn hangers(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let density = |name| Ok::<_, String>(Density::kilograms_per_cubic_metre(inputs.number(name)?));
    let tube = HungTube {
        bore: Length::metres(inputs.number("di_m")?),
        outside_diameter: Length::metres(inputs.number("do_m")?),
        density: density("rho_tube")?,
        long_term_modulus: Modulus::pascals(inputs.number("E_Pa")?),
        water: density("rho_water")?,
    };
    let spacing = Length::metres(inputs.number("L_m")?);
    let fall = Incline::per_horizontal(inputs.number("fall")?);
    let sag_mm = |support| {
        let span = sag(&tube, support, spacing);
        span.map(|span| json!(span.depth.to_millimetres()))
            .map_err(said)
    };
    let largest_m = |support| {
        let largest = largest_spacing(&tube, support, fall);
        largest
            .map(|length| json!(length.to_metres()))
            .map_err(said)
    };
    let weight = load(&tube).map_err(said)?;
    Ok(Computed::of([
        ("w_N_m", json!(weight.to_newtons_per_metre())),
        ("sag_simple_mm", sag_mm(Support::Simple)?),
        ("sag_clamped_mm", sag_mm(Support::Clamped)?),
        ("sag_end_span_mm", sag_mm(Support::EndSpanOfTwo)?),
        ("L_max_simple_m", largest_m(Support::Simple)?),
        ("L_max_clamped_m", largest_m(Support::Clamped)?),
        ("L_max_end_span_m", largest_m(Support::EndSpanOfTwo)?),
    ]))
}

/// Hydrostatics with IAPWS-95 water at 20 °C, g = 9.80665.
fn heads_and_traps(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let density = water(inputs.number("T_C")?).density;
    let margin = Length::millimetres(inputs.number("margin_mm")?);
    let pot = Area::square_millimetres(1000.0);
    let dip = pot * inputs.number("dip_tube_area_share")?;
    let (mut heads, mut drops, mut equal, mut dips) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for suction_pa in inputs.list("suction_Pa")? {
        let state = [TrapState {
            duct_static: Pressure::pascals(-suction_pa),
            loss: Pressure::ZERO,
        }];
        let of = |kind| requirement(kind, &state, margin, density).map_err(said);
        let legs = of(TrapKind::EqualLegs)?;
        heads.push(legs.suction_head.to_millimetres());
        drops.push(legs.outlet_drop.to_millimetres());
        equal.push(legs.seal.to_millimetres());
        let seal = of(TrapKind::DipOpenToRoom { dip, pot })?.seal;
        dips.push((seal - margin).to_millimetres());
    }
    Ok(Computed::of([
        ("head_mm", json!(heads)),
        ("outlet_below_invert_mm", json!(drops)),
        ("seal_equal_legs_mm", json!(equal)),
        ("seal_dip_tube_before_margin_mm", json!(dips)),
    ]))
}

/// Hand integration.
fn drying(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let film = MassPerArea::grams_per_square_metre;
    let retained = film(inputs.number("retained_g_m2")?);
    let start = film(inputs.number("start_g_m2")?);
    let rate = film(inputs.number("full_rate_g_m2h")?);
    let left = |hours| film_left(start, retained, rate, Time::hours(hours));
    Ok(Computed::of([
        (
            "wetted_share",
            inputs.each("film_g_m2", |given| wetted_share(film(given), retained))?,
        ),
        (
            "film_left_g_m2",
            inputs.each("t_h", |hours| left(hours).to_grams_per_square_metre())?,
        ),
    ]))
}

/// Hand calculation with IAPWS surface tension and water.
fn pinned_puddle(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let water = water(inputs.number("T_C")?);
    let given = inputs
        .list("D_m")?
        .into_iter()
        .zip(inputs.list("theta_deg")?)
        .zip(inputs.list("cos_difference")?)
        .zip(inputs.list("L_m")?);
    let mut rows: [Vec<Value>; 4] = Default::default();
    for (((d_m, degrees), cosine_difference), length_m) in given {
        let puddle = Puddle {
            mean_angle: Angle::degrees(degrees),
            cosine_difference,
            length: Length::metres(length_m),
        };
        let bore = Length::metres(d_m);
        let section = puddle_section(bore, &puddle, water);
        let values = [
            section.depth.to_millimetres(),
            section.area.to_square_millimetres(),
            section.width.to_millimetres(),
            incline_that_moves(bore, &puddle, water).sine(),
        ];
        for (row, value) in rows.iter_mut().zip(values) {
            row.push(json!(value));
        }
    }
    let [depths, areas, widths, sines] = rows.map(Value::from);
    Ok(Computed::of([
        ("depth_mm", depths),
        ("area_mm2", areas),
        ("width_mm", widths),
        ("sin_a", sines),
    ]))
}

/// SciPy root of the criterion of Taitel & Dukler 1976, CoolProp air.
fn first_slugs(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let t_c = inputs.number("T_C")?;
    let air = dry_air(t_c, inputs.number("p_Pa")?);
    let (mut depths, mut shares) = (Vec::new(), Vec::new());
    let flows = inputs.list("Q_L_min")?;
    for (d_m, lpm) in inputs.list("D_m")?.into_iter().zip(flows) {
        let shape = between(d_m, 0.02, 0.02)?;
        let flow = VolumeFlow::litres_per_minute(lpm);
        let slugs = shape.first_slugs(flow, air, water(t_c).density);
        depths.push(slugs.depth / shape.bore());
        shares.push(slugs.volume / shape.seal_volume());
    }
    Ok(Computed::of([
        ("depth_over_D", json!(depths)),
        ("share_of_sealing_volume", json!(shares)),
    ]))
}
