//! Solved steady cases as projects: what a case says, in the words of the project file.

use dewrun_document::{
    Access, AirPair, Detector, Duct, DuctEntry, FallForm, Flow, FlowAt, Humidity, Input,
    Insulation, Leg, Pressure, Project, Route, Run, Side, Space, TubeWall,
};
use dewrun_quantity::Length;
use serde_json::Value;

use crate::reference::inputs::Inputs;

/// The project that a case of the form of `steady.json` describes, with one run.
///
/// # Errors
/// A sentence where an input is missing.
pub fn project_of(case: &Value) -> Result<Project, String> {
    let inputs = Inputs::of(case);
    let segments = case["segments"].as_array().ok_or("segments are missing")?;
    let mut spaces = Vec::new();
    let mut legs = Vec::new();
    for (number, segment) in segments.iter().enumerate() {
        spaces.push(space(&Inputs::of(segment), number)?);
        legs.push(leg(&Inputs::of(segment), number)?);
    }
    let in_intake = case["exhaust_from"]
        .as_u64()
        .map_or(Ok(legs.len()), usize::try_from);
    let in_intake = in_intake
        .map_err(|error| error.to_string())?
        .min(legs.len());
    let exhaust = legs.split_off(in_intake);
    let heat_w = if exhaust.is_empty() {
        0.0
    } else {
        inputs.number("detector_w")?
    };
    let id = case["id"].as_str().unwrap_or("case").to_owned();
    Ok(Project {
        name: id.clone(),
        note: String::new(),
        pressure: Pressure::AbsolutePa(Input::typed(inputs.number("p_pa")?)),
        weather: None,
        target: None,
        spaces,
        runs: vec![Run {
            name: id.clone(),
            id,
            variant_of: None,
            duct: duct(&inputs)?,
            flow: Flow {
                volume_l_min: Input::typed(inputs.number("q_lpm")?),
                at: FlowAt::Intake,
            },
            intake: route(legs),
            detector: Detector {
                heat_w: Input::typed(heat_w),
                humidity_rating_percent: None,
                access: Access::Floor,
            },
            exhaust: (!exhaust.is_empty()).then(|| route(exhaust)),
            air_path: None,
            visits: Vec::new(),
            troubles: None,
        }],
    })
}

fn duct(inputs: &Inputs<'_>) -> Result<Duct, String> {
    Ok(Duct {
        name: "Duct".to_owned(),
        air: AirPair::Temperature {
            temperature_c: Input::typed(inputs.number("t_in_c")?),
            humidity: Humidity::Ratio(Input::typed(inputs.number("w_in")?)),
        },
        static_pa: Input::typed(0.0),
        velocity_pa: Input::typed(0.0),
        source: None,
        fan_off: None,
    })
}

fn route(legs: Vec<Leg>) -> Route {
    Route {
        entry: DuctEntry {
            place: String::new(),
            side: Side::Side,
        },
        legs,
        traps: Vec::new(),
    }
}

fn space(segment: &Inputs<'_>, number: usize) -> Result<Space, String> {
    Ok(Space {
        id: format!("space-{number}"),
        name: format!("Space {number}"),
        temperature_c: Input::typed(segment.number("t_amb")?),
        humidity: Humidity::Ratio(Input::typed(segment.number("w_amb")?)),
        radiant_c: None,
        wind_m_s: Input::typed(segment.number("wind")?),
        pressure_pa: None,
        year: None,
    })
}

fn leg(segment: &Inputs<'_>, number: usize) -> Result<Leg, String> {
    let length_m = segment.number("length")?;
    let steep = segment.raw()["vertical"]
        .as_bool()
        .ok_or("vertical is missing")?;
    let thickness_m = segment.number("ins")?;
    let insulation = Insulation {
        thickness_mm: millimetres(thickness_m),
        conductivity_w_mk: Input::typed(segment.number("k_ins")?),
    };
    let trace = segment.number("trace")?;
    Ok(Leg {
        id: format!("leg-{number}"),
        space: format!("space-{number}"),
        length_m: Input::typed(length_m),
        rise_m: Input::typed(if steep { -length_m } else { 0.0 }),
        fall_as: FallForm::Ratio,
        tube: TubeWall {
            bore_mm: millimetres(segment.number("d_in")?),
            outside_diameter_mm: millimetres(segment.number("d_out")?),
            conductivity_w_mk: Input::typed(segment.number("k_wall")?),
            stuff: None,
        },
        emissivity: Input::typed(segment.number("emis")?),
        insulation: (0.0 < thickness_m).then_some(insulation),
        heat_tracing_w_m: (0.0 < trace).then(|| Input::typed(trace)),
        hanger_spacing_m: None,
        fittings: Vec::new(),
        access: Access::Floor,
    })
}

/// A length in metres as the millimetres that give the same metres, bit for bit.
fn millimetres(metres: f64) -> Input<f64> {
    let near = Length::metres(metres).to_millimetres();
    let same = |&mm: &f64| Length::millimetres(mm).to_metres() == metres;
    let exact = [near, near.next_up(), near.next_down()]
        .into_iter()
        .find(same);
    Input::typed(exact.unwrap_or(near))
}
