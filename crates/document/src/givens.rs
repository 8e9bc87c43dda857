//! From the inputs of a project to those of the engine's run, each with where it came from.

use dewrun_run::figure::{Figure, Given, Origin};
use dewrun_run::{Place, Tube};

use crate::{AirPair, Humidity, Input, Leg, Pressure, Project, Relative, Route, Space, v1};

/// Every number of a run that its answer is computed from, and where it came from.
///
/// Empty where the project has no such run.
///
/// ```
/// use dewrun_run::figure::{Figure, Origin};
/// let text = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json"));
/// let project = dewrun_document::read(text)?;
/// let givens = dewrun_document::givens(&project, 0);
/// let flow = givens.iter().find(|given| given.figure == Figure::Flow).unwrap();
/// assert_eq!(flow.value, 30.0);
/// assert!(matches!(&flow.origin, Origin::Measured { on, .. } if on == "2026-05-12"));
/// # Ok::<(), dewrun_document::DocumentError>(())
/// ```
#[must_use]
pub fn givens(project: &Project, run_index: usize) -> Vec<Given> {
    let Some(run) = project.runs.get(run_index) else {
        return Vec::new();
    };
    let mut found = Givens(Vec::new());
    match &project.pressure {
        Pressure::AbsolutePa(input) => found.add(Figure::Pressure, Place::Run, input),
        Pressure::AltitudeM(input) => found.add(Figure::Altitude, Place::Run, input),
    }
    found.duct(&run.duct.air);
    found.add(Figure::Flow, Place::Flow, &run.flow.volume_l_min);
    for (at, space) in project.spaces.iter().enumerate() {
        let is_met = |route: &Route| route.legs.iter().any(|leg| leg.space == space.id);
        if is_met(&run.intake) || run.exhaust.as_ref().is_some_and(is_met) {
            found.space(space, Place::Space(at));
        }
    }
    found.route(&run.intake, Tube::Intake);
    let detector = &run.detector;
    found.add(Figure::DetectorHeat, Place::Detector, &detector.heat_w);
    if let Some(rating) = &detector.humidity_rating_percent {
        found.add(Figure::HumidityRating, Place::Detector, rating);
    }
    if let Some(exhaust) = &run.exhaust {
        found.route(exhaust, Tube::Exhaust);
    }
    found.0
}

struct Givens(Vec<Given>);

impl Givens {
    fn add(&mut self, figure: Figure, place: Place, input: &Input<f64>) {
        self.0.push(Given {
            figure,
            place,
            value: input.value,
            origin: origin(&input.origin),
        });
    }

    fn duct(&mut self, pair: &AirPair) {
        let here = Place::DuctAir;
        let relative: &Relative = match pair {
            AirPair::Temperature {
                temperature_c,
                humidity,
            } => {
                self.add(Figure::DuctTemperature, here, temperature_c);
                let (figure, input) = match humidity {
                    Humidity::Relative(relative) => (Figure::DuctRelative, &relative.percent),
                    Humidity::DewPoint(input) => (Figure::DuctDewPoint, input),
                    Humidity::FrostPoint(input) => (Figure::DuctFrostPoint, input),
                    Humidity::Ratio(input) => (Figure::DuctRatio, input),
                    Humidity::WetBulb(input) => (Figure::DuctWetBulb, input),
                    Humidity::Enthalpy(input) => (Figure::DuctEnthalpy, input),
                };
                return self.add(figure, here, input);
            }
            AirPair::DewPointAndRelative {
                dew_point_c,
                relative,
            } => {
                self.add(Figure::DuctDewPoint, here, dew_point_c);
                relative
            }
            AirPair::FrostPointAndRelative {
                frost_point_c,
                relative,
            } => {
                self.add(Figure::DuctFrostPoint, here, frost_point_c);
                relative
            }
            AirPair::RatioAndRelative {
                ratio_kg_kg,
                relative,
            } => {
                self.add(Figure::DuctRatio, here, ratio_kg_kg);
                relative
            }
        };
        self.add(Figure::DuctRelative, here, &relative.percent);
    }

    fn space(&mut self, space: &Space, here: Place) {
        self.add(Figure::SpaceTemperature, here, &space.temperature_c);
        let (figure, input) = match &space.humidity {
            Humidity::Relative(relative) => (Figure::SpaceRelative, &relative.percent),
            Humidity::DewPoint(input) => (Figure::SpaceDewPoint, input),
            Humidity::FrostPoint(input) => (Figure::SpaceFrostPoint, input),
            Humidity::Ratio(input) => (Figure::SpaceRatio, input),
            Humidity::WetBulb(input) => (Figure::SpaceWetBulb, input),
            Humidity::Enthalpy(input) => (Figure::SpaceEnthalpy, input),
        };
        self.add(figure, here, input);
        if let Some(radiant) = &space.radiant_c {
            self.add(Figure::RadiantTemperature, here, radiant);
        }
        self.add(Figure::Wind, here, &space.wind_m_s);
    }

    fn route(&mut self, route: &Route, tube: Tube) {
        for (at, leg) in route.legs.iter().enumerate() {
            self.leg(leg, Place::Leg(tube, at));
        }
    }

    fn leg(&mut self, leg: &Leg, here: Place) {
        self.add(Figure::Length, here, &leg.length_m);
        self.add(Figure::Rise, here, &leg.rise_m);
        let tube = &leg.tube;
        self.add(Figure::Bore, here, &tube.bore_mm);
        self.add(Figure::OutsideDiameter, here, &tube.outside_diameter_mm);
        self.add(Figure::TubeConductivity, here, &tube.conductivity_w_mk);
        self.add(Figure::Emissivity, here, &leg.emissivity);
        if let Some(layer) = &leg.insulation {
            self.add(Figure::InsulationThickness, here, &layer.thickness_mm);
            let conductivity = &layer.conductivity_w_mk;
            self.add(Figure::InsulationConductivity, here, conductivity);
        }
        if let Some(tracing) = &leg.heat_tracing_w_m {
            self.add(Figure::Tracing, here, tracing);
        }
    }
}

/// Where a value came from, in the engine's words.
pub(crate) fn origin(origin: &v1::Origin) -> Origin {
    match origin {
        v1::Origin::Typed => Origin::Typed,
        v1::Origin::Assumed { row, low, high } => Origin::Assumed {
            row: row.clone(),
            low: *low,
            high: *high,
        },
        v1::Origin::Measured { on, by } => Origin::Measured {
            on: on.clone(),
            by: by.clone(),
        },
    }
}
