//! The line and the state that a solved case describes.

use dewrun_airflow::{
    Air, Detector, DuctPressures, FanCurve, Fitting, Hole, Inlet, Leak, Line, OpenEnd, Parted,
    Pool, PoolShape, Side, State, Stretch, Trap, Tube, duct_pressure,
};
use dewrun_quantity::{
    Density, FlowResistance, Length, Pressure, Speed, Viscosity, Volume, VolumeFlow,
};
use serde_json::Value;

use crate::reference::inputs::Inputs;

/// The line as it was fitted.
///
/// # Errors
/// A sentence where an input is missing or the fan's points are no curve.
pub fn line_of(given: &Value) -> Result<Line, String> {
    let inputs = Inputs::of(given);
    let detector = inputs.within("detector");
    let exhaust = inputs.within("exhaust");
    let [intake_air, detector_air, exhaust_air] = airs(given)?;
    Ok(Line {
        inlet: Inlet::Holes(each(&given["holes"], hole)?),
        intake: tube(
            &inputs.within("intake"),
            intake_air,
            &given["detector"]["trap"],
        )?,
        detector: Detector {
            filter: FlowResistance::pascals_per_litre_per_minute(
                detector.number("filter_pa_per_lpm")?,
            ),
            filter_volume: Volume::millilitres(detector.number("filter_ml")?),
            chamber_loss_coefficient: detector.number("chamber_k")?,
            chamber_bore: millimetres(&detector, "chamber_bore_mm")?,
            chamber_volume: Volume::millilitres(detector.number("chamber_ml")?),
            fan: fan(&inputs.within("fan"))?,
            air: detector_air,
        },
        exhaust: tube(&exhaust, exhaust_air, &Value::Null)?,
        outlet: OpenEnd {
            inward: exhaust.number("end_k_in")?,
            outward: exhaust.number("end_k_out")?,
        },
        duct: duct(&given["duct"])?,
        room: intake_air.density,
    })
}

/// What is otherwise than as fitted.
///
/// # Errors
/// A sentence where an input is missing.
pub fn state_of(given: &Value) -> Result<State, String> {
    let state = &given["state"];
    let number = |key: &str| state[key].as_f64();
    let fitted = State::default();
    Ok(State {
        fan_speed: number("fan_speed").unwrap_or(fitted.fan_speed),
        dust: number("dust").unwrap_or(fitted.dust),
        filter_missing: state["filter_missing"].as_bool().unwrap_or(false),
        hole_open: match &state["hole_open"] {
            Value::Null => Vec::new(),
            _ => Inputs::of(state).list("hole_open")?,
        },
        duct: match &state["duct"] {
            Value::Null => None,
            ends => Some(duct(ends)?),
        },
        leaks: each(&state["leaks"], leak)?,
        parted: match &state["parted"] {
            Value::Null => None,
            joint => Some(parted(&Inputs::of(joint))?),
        },
        pools: each(&state["pools"], pool)?,
    })
}

/// What a function makes of each of a list; nothing where there is no list.
fn each<T>(list: &Value, of: impl Fn(&Inputs<'_>) -> Result<T, String>) -> Result<Vec<T>, String> {
    let items = list.as_array().into_iter().flatten();
    items.map(|item| of(&Inputs::of(item))).collect()
}

/// Those of intake, detector and exhaust.
fn airs(given: &Value) -> Result<[Air; 3], String> {
    let air = |part: &str| {
        let inputs = match &given["air_by_part"][part] {
            Value::Null => Inputs::of(&given["air"]),
            own => Inputs::of(own),
        };
        Ok::<_, String>(Air {
            density: Density::kilograms_per_cubic_metre(inputs.number("rho")?),
            viscosity: Viscosity::pascal_seconds(inputs.number("mu")?),
        })
    };
    Ok([air("intake")?, air("detector")?, air("exhaust")?])
}

fn fan(inputs: &Inputs<'_>) -> Result<FanCurve, String> {
    let flows = inputs.list("q_lpm")?.into_iter();
    let points: Vec<(VolumeFlow, Pressure)> = flows
        .zip(inputs.list("p_pa")?)
        .map(|(q, p)| (VolumeFlow::litres_per_minute(q), Pressure::pascals(p)))
        .collect();
    let reference = Density::kilograms_per_cubic_metre(inputs.number("rho_ref")?);
    FanCurve::new(&points, reference).map_err(|error| error.to_string())
}

fn tube(inputs: &Inputs<'_>, air: Air, trap: &Value) -> Result<Tube, String> {
    let stretch = Stretch {
        length: metres(inputs, "length_m")?,
        bore: millimetres(inputs, "bore_mm")?,
        roughness: millimetres(inputs, "roughness_mm")?,
        transition: 1.0,
        rise: Length::ZERO,
        air,
    };
    let fitting = |fitting: &Inputs<'_>| {
        Ok(Fitting {
            at: metres(fitting, "x_m")?,
            loss_coefficient: fitting.number("k")?,
        })
    };
    let traps = match trap {
        Value::Null => Vec::new(),
        trap => {
            let trap = Inputs::of(trap);
            vec![Trap {
                at: metres(&trap, "x_m")?,
                volume: Volume::millilitres(trap.number("volume_ml")?),
            }]
        }
    };
    Ok(Tube {
        stretches: vec![stretch],
        fittings: each(&inputs.raw()["fittings"], fitting)?,
        traps,
    })
}

fn duct(ends: &Value) -> Result<DuctPressures, String> {
    Ok(DuctPressures {
        intake: duct_end(&Inputs::of(&ends["in"]))?,
        exhaust: duct_end(&Inputs::of(&ends["out"]))?,
    })
}

fn duct_end(end: &Inputs<'_>) -> Result<Pressure, String> {
    if !end.raw()["p_pa"].is_null() {
        return pascals(end, "p_pa");
    }
    Ok(duct_pressure(
        pascals(end, "static_pa")?,
        end.number("coef")?,
        Density::kilograms_per_cubic_metre(end.number("rho")?),
        Speed::metres_per_second(end.number("speed_m_s")?),
    ))
}

fn hole(hole: &Inputs<'_>) -> Result<Hole, String> {
    Ok(Hole {
        diameter: millimetres(hole, "d_mm")?,
        discharge: hole.number("cd")?,
    })
}

fn leak(leak: &Inputs<'_>) -> Result<Leak, String> {
    Ok(Leak {
        side: side(leak)?,
        at: metres(leak, "x_m")?,
        hole: hole(leak)?,
        space: pascals(leak, "p_space_pa")?,
    })
}

fn parted(joint: &Inputs<'_>) -> Result<Parted, String> {
    Ok(Parted {
        side: side(joint)?,
        at: metres(joint, "x_m")?,
        space: pascals(joint, "p_space_pa")?,
    })
}

fn pool(pool: &Inputs<'_>) -> Result<Pool, String> {
    let shape = match pool.raw()["kind"].as_str() {
        Some("uniform") => PoolShape::Uniform {
            from: metres(pool, "x_m")?,
            length: metres(pool, "length_m")?,
            depth: millimetres(pool, "depth_mm")?,
        },
        Some("wedge") => PoolShape::Wedge {
            at: metres(pool, "x_m")?,
            volume: Volume::millilitres(pool.number("v_ml")?),
            fall_before: pool.number("t1")?,
            fall_after: pool.number("t2")?,
        },
        _ => return Err(format!("a pool of kind {}", pool.raw()["kind"])),
    };
    Ok(Pool {
        side: side(pool)?,
        shape,
    })
}

fn side(inputs: &Inputs<'_>) -> Result<Side, String> {
    match inputs.raw()["leg"].as_str() {
        Some("intake") => Ok(Side::Intake),
        Some("exhaust") => Ok(Side::Exhaust),
        _ => Err(format!("a tube called {}", inputs.raw()["leg"])),
    }
}

fn metres(inputs: &Inputs<'_>, key: &str) -> Result<Length, String> {
    inputs.number(key).map(Length::metres)
}

fn millimetres(inputs: &Inputs<'_>, key: &str) -> Result<Length, String> {
    inputs.number(key).map(Length::millimetres)
}

fn pascals(inputs: &Inputs<'_>, key: &str) -> Result<Pressure, String> {
    inputs.number(key).map(Pressure::pascals)
}
