//! The loop of a line: the flow at which fan, duct, tubes, leaks and water balance.

use dewrun_quantity::{Noted, VolumeFlow};

use crate::airflow::Airflow;
use crate::chain::{AtDetector, Chain};
use crate::error::{AirflowError, AirflowNote};
use crate::fan::Running;
use crate::friction;
use crate::line::{Line, Side};
use crate::operating::{Search, roots};
use crate::part::Section;
use crate::range;
use crate::sections::cut;
use crate::state::State;
use crate::story::Story;

/// Where the search for a flow begins in a section without a fan [kg/s], some litres a minute.
const USUAL_FLOW_KG_S: f64 = 1e-4;
/// Where the search for a pressure begins (Pa), some duct's or fan's.
const USUAL_PRESSURE_PA: f64 = 300.0;

/// The air through a line in a state.
///
/// # Range
/// Losses far below the absolute pressure (the air's density does not follow them); developed flow in round tubes.
///
/// # Accuracy
/// The balance of pressures closes to 1e-9 of the largest, less well only behind a leak where water leaves under a sixth of the bore's height;
/// the answer is as good as curve, coefficients and bores.
/// Between Re 2100 and 4000 friction, and with it the flow, is uncertain by up to 14 %.
///
/// # Errors
/// [`AirflowError`]: a number out of range, something beside its tube, several operating points.
///
/// # Source
/// Friction: Churchill 1977; minor losses: Idelchik 1994; fan: Fritsch & Butland 1984; root: Oliveira & Takahashi 2021, <https://doi.org/10.1145/3423597>.
///
/// ```
/// use dewrun_airflow::{Air, Detector, DuctPressures, FanCurve, Hole, Inlet, Line, OpenEnd, State, Stretch, Tube, airflow};
/// use dewrun_quantity::{Density, FlowResistance, Length, Pressure, Viscosity, Volume, VolumeFlow};
///
/// let air = Air {
///     density: Density::kilograms_per_cubic_metre(1.2041),
///     viscosity: Viscosity::micropascal_seconds(18.206),
/// };
/// let tube = |length_m: f64| Tube {
///     stretches: vec![Stretch {
///         length: Length::metres(length_m),
///         bore: Length::millimetres(16.0),
///         roughness: Length::millimetres(0.0015),
///         transition: 1.0,
///         rise: Length::ZERO,
///         air,
///     }],
///     fittings: Vec::new(),
///     traps: Vec::new(),
/// };
/// let points = [(0.0, 300.0), (25.0, 150.0), (50.0, 0.0)]
///     .map(|(q, p)| (VolumeFlow::litres_per_minute(q), Pressure::pascals(p)));
/// let line = Line {
///     inlet: Inlet::Holes(vec![Hole { diameter: Length::millimetres(3.0), discharge: 0.61 }; 8]),
///     intake: tube(12.0),
///     detector: Detector {
///         filter: FlowResistance::pascals_per_litre_per_minute(2.0),
///         filter_volume: Volume::millilitres(50.0),
///         chamber_loss_coefficient: 0.0,
///         chamber_bore: Length::millimetres(16.0),
///         chamber_volume: Volume::millilitres(200.0),
///         fan: FanCurve::new(&points, air.density)?,
///         air,
///     },
///     exhaust: tube(0.0),
///     outlet: OpenEnd { inward: 0.0, outward: 3.5 },
///     duct: DuctPressures { intake: Pressure::ZERO, exhaust: Pressure::ZERO },
///     room: air.density,
/// };
/// let flow = airflow(&line, &State::default())?.value;
/// assert!((flow.sensor.to_litres_per_minute() - 21.95).abs() < 0.01);
/// assert_eq!(flow.share, 1.0);
/// # Ok::<(), dewrun_airflow::AirflowError>(())
/// ```
pub fn airflow(line: &Line, state: &State) -> Result<Noted<Airflow, AirflowNote>, AirflowError> {
    line.check()?;
    state.check(line)?;
    let mut notes = Vec::new();
    let sections = cut(line, state, &mut notes);
    let operating = Operating::of(line, state, &sections.main)?;
    let mut story = Story::of(line, state, operating.detector);
    if let Some(value) = operating.value {
        story.tell_main(&sections, value);
    }
    let parted = state.parted.map(|parted| parted.side);
    for section in sections.before.iter().chain(&sections.after) {
        if let Some(value) = beside(section)? {
            story.tell_beside(section, value, parted);
        }
    }
    let value = story.end();
    notes.extend(said_of(line, state, &value));
    Ok(Noted { value, notes })
}

/// The operating point of the section with the detector.
struct Operating<'a> {
    detector: AtDetector<'a>,
    /// Trial value of the section; none where nothing can flow and nothing says what pressure there is.
    value: Option<f64>,
}

impl<'a> Operating<'a> {
    fn of(line: &'a Line, state: &State, main: &Section) -> Result<Self, AirflowError> {
        let fan = &line.detector.fan;
        let density_kg_m3 = line.detector.air.density.to_kilograms_per_cubic_metre();
        let detector = AtDetector {
            fan: Running::of(fan, density_kg_m3, state.fan_speed),
            density_kg_m3,
        };
        let mass = |flow: VolumeFlow| flow.to_cubic_metres_per_second() * density_kg_m3;
        let humps = fan.humps(state.fan_speed);
        let humps: Vec<(f64, f64)> = humps.iter().map(|&(a, b)| (mass(a), mass(b))).collect();
        let chain = Chain::of(main, Some(detector));
        if chain.is_sealed() {
            return Ok(Self {
                detector,
                value: None,
            });
        }
        let (first, last) = fan.span(state.fan_speed);
        let usual = mass(first).abs().max(mass(last).abs());
        let search = Search {
            stride: stride(&chain, usual.max(USUAL_FLOW_KG_S)),
            humps: &humps,
        };
        let roots = roots(&chain, search)?;
        if let &[value] = roots.as_slice() {
            return Ok(Self {
                detector,
                value: Some(value),
            });
        }
        let flow = |&value: &f64| {
            VolumeFlow::cubic_metres_per_second(chain.try_out(value).fan_kg_s / density_kg_m3)
        };
        Err(AirflowError::SeveralOperatingPoints {
            flows: roots.iter().map(flow).collect(),
        })
    }
}

/// How far around nothing a section's flow, or its pressure, is looked for first.
fn stride(chain: &Chain<'_>, usual_kg_s: f64) -> f64 {
    if chain.starts_closed() {
        USUAL_PRESSURE_PA
    } else {
        usual_kg_s
    }
}

/// The flow of a section beside the detector, as a trial value; none where nothing can flow in it.
fn beside(section: &Section) -> Result<Option<f64>, AirflowError> {
    let chain = Chain::of(section, None);
    if chain.is_sealed() {
        return Ok(None);
    }
    let search = Search {
        stride: stride(&chain, USUAL_FLOW_KG_S),
        humps: &[],
    };
    Ok(roots(&chain, search)?.first().copied())
}

fn said_of(line: &Line, state: &State, flow: &Airflow) -> Vec<AirflowNote> {
    let fan = &line.detector.fan;
    let humps = fan.humps(state.fan_speed);
    let mut notes: Vec<AirflowNote> = humps
        .into_iter()
        .map(|(from, to)| AirflowNote::FanHump { from, to })
        .collect();
    let (first, last) = fan.span(state.fan_speed);
    let nearest = flow.sensor.max(first).min(last);
    if nearest != flow.sensor {
        notes.push(AirflowNote::BeyondFanPoints {
            flow: flow.sensor,
            last: nearest,
        });
    }
    for (side, reynolds) in [
        (Side::Intake, flow.reynolds_intake),
        (Side::Exhaust, flow.reynolds_exhaust),
    ] {
        if friction::BETWEEN.contains(&reynolds) {
            notes.push(AirflowNote::Transitional { side, reynolds });
        }
        let stretches = line.tube(side).stretches.iter();
        let roughest = stretches
            .map(|stretch| stretch.roughness / stretch.bore)
            .fold(0.0, f64::max);
        if range::MEASURED_ROUGHNESS < roughest {
            let roughness = roughest;
            notes.push(AirflowNote::VeryRough { side, roughness });
        }
    }
    notes
}
