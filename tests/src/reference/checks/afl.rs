//! Airflow: operating points, fan curve, transport time.

use dewrun_airflow::{
    Air, Airflow, Detector, DuctPressures, FanCurve, Fitting, Hole, Inlet, Line, OpenEnd, State,
    Stretch, Tube, airflow, arrival, fill_time,
};
use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_quantity::{
    Density, FlowResistance, Length, MassFlow, Pressure, Viscosity, Volume, VolumeFlow,
};
use serde_json::{Value, json};

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("AFL-51", operating_points),
    ("AFL-52", fan_curve),
    ("AFL-53", transport_time),
    ("AFL-54", laminar_spread),
];

/// The density that both fans of the rows are given at: air at 20 °C.
const RATED: Density = Density::kilograms_per_cubic_metre(1.2041);

/// `fluids` 1.3.1 and SciPy's `brentq`. The row's four states are 12 m of tube; 3 m of tube without holes; the filter three times as dense; 25 Pa from the duct.
fn operating_points(inputs: &Inputs<'_>) -> Result<Computed, String> {
    const STATES: [(f64, bool, f64, f64); 4] = [
        (12.0, true, 1.0, 0.0),
        (3.0, false, 1.0, 0.0),
        (12.0, true, 3.0, 0.0),
        (12.0, true, 1.0, 25.0),
    ];
    let mut flows = Vec::new();
    for (length_m, holes, dust, duct_pa) in STATES {
        let line = line(inputs, length_m, holes, duct_pa)?;
        let state = State {
            dust,
            ..State::default()
        };
        flows.push(
            airflow(&line, &state)
                .map_err(|error| error.to_string())?
                .value,
        );
    }
    let each = |of: fn(&Airflow) -> Pressure| -> Value {
        flows.iter().map(|flow| of(flow).to_pascals()).collect()
    };
    let litres = flows.iter().map(|flow| flow.sensor.to_litres_per_minute());
    Ok(Computed::of([
        ("Q_L_min", litres.collect()),
        ("dp_tube_Pa", each(|flow| flow.budget.intake.spent())),
        ("dp_holes_Pa", each(|flow| flow.budget.inlet)),
        ("dp_filter_Pa", each(|flow| flow.budget.filter)),
    ]))
}

fn line(inputs: &Inputs<'_>, length_m: f64, holes: bool, duct_pa: f64) -> Result<Line, String> {
    const NO_LOSS: OpenEnd = OpenEnd {
        inward: 0.0,
        outward: 0.0,
    };
    let air = Air {
        density: Density::kilograms_per_cubic_metre(inputs.number("rho")?),
        viscosity: Viscosity::pascal_seconds(inputs.number("mu")?),
    };
    let bore = Length::metres(inputs.number("D_m")?);
    let roughness = Length::metres(inputs.number("eps_m")?);
    let tube = |length_m: f64, loss_coefficient: f64| Tube {
        stretches: vec![Stretch {
            length: Length::metres(length_m),
            bore,
            roughness,
            transition: 1.0,
            rise: Length::ZERO,
            air,
        }],
        fittings: vec![Fitting {
            at: Length::ZERO,
            loss_coefficient,
        }],
        traps: Vec::new(),
    };
    let hole = Hole {
        diameter: Length::metres(inputs.number("d_hole_m")?),
        discharge: inputs.number("Cd")?,
    };
    let count = inputs.raw()["holes"].as_u64().ok_or("holes is no count")?;
    let count = usize::try_from(count).map_err(|error| error.to_string())?;
    let clean = inputs.number("filter_Pa_per_L_min")?;
    Ok(Line {
        inlet: if holes {
            Inlet::Holes(vec![hole; count])
        } else {
            Inlet::OpenEnd(NO_LOSS)
        },
        intake: tube(length_m, inputs.number("K_sum")?),
        detector: Detector {
            filter: FlowResistance::pascals_per_litre_per_minute(clean),
            filter_volume: Volume::ZERO,
            chamber_loss_coefficient: 0.0,
            chamber_bore: bore,
            chamber_volume: Volume::ZERO,
            fan: fan(inputs, air.density)?,
            air,
        },
        exhaust: tube(0.0, 0.0),
        outlet: NO_LOSS,
        duct: DuctPressures {
            intake: Pressure::pascals(duct_pa),
            exhaust: Pressure::ZERO,
        },
        room: air.density,
    })
}

fn fan(inputs: &Inputs<'_>, reference: Density) -> Result<FanCurve, String> {
    let pairs = inputs.raw()["fan_L_min_Pa"].as_array();
    let mut points = Vec::new();
    for pair in pairs.into_iter().flatten() {
        let (Some(q), Some(p)) = (pair[0].as_f64(), pair[1].as_f64()) else {
            return Err(format!("{pair} is no point of a fan"));
        };
        points.push((VolumeFlow::litres_per_minute(q), Pressure::pascals(p)));
    }
    FanCurve::new(&points, reference).map_err(|error| error.to_string())
}

/// SciPy 1.17.1, `PchipInterpolator`.
fn fan_curve(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let fan = fan(inputs, RATED)?;
    let pascals = |q: f64| {
        fan.pressure(VolumeFlow::litres_per_minute(q), RATED, 1.0)
            .to_pascals()
    };
    Ok(Computed::of([("p_Pa", inputs.each("Q_L_min", pascals)?)]))
}

/// Volume times density over the mass flow, leg by leg, with densities by CoolProp 8.0.
fn transport_time(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (lengths, bores) = (inputs.list("length_m")?, inputs.list("D_m")?);
    let temperatures = inputs.list("T_C")?;
    let p_pa = inputs.number("p_Pa")?;
    let density = |t_c: f64| Density::kilograms_per_cubic_metre(density_kg_m3(t_c, 0.0, p_pa));
    let intake = temperatures.first().ok_or("there is no leg")?;
    let q_m3_s = inputs.number("Q_L_min_at_intake")? / 60_000.0;
    let mass = density(*intake).to_kilograms_per_cubic_metre() * q_m3_s;
    let mut seconds = 0.0;
    for ((l_m, d_m), t_c) in lengths.into_iter().zip(bores).zip(temperatures) {
        let volume = Volume::cubic_metres(core::f64::consts::PI / 4.0 * d_m * d_m * l_m);
        let flow = MassFlow::kilograms_per_second(mass);
        seconds += fill_time(volume, density(t_c), flow).to_seconds();
    }
    Ok(Computed::of([("t_s", json!(seconds))]))
}

/// SciPy's quadrature over the parabola.
fn laminar_spread(inputs: &Inputs<'_>) -> Result<Computed, String> {
    const LAMINAR: f64 = 1500.0;
    Ok(Computed::of([(
        "t_over_volume_by_flow",
        inputs.each("share_arrived", |share| arrival(share, LAMINAR))?,
    )]))
}
