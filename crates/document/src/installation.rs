//! From the project file to how a run is installed; what is left out is assumed by a row of the library.

mod tube;

use dewrun_quantity::{
    Density, FlowResistance, Length, MassPerArea, Pressure, TemperatureDifference, Time, Volume,
    VolumeFlow,
};
use dewrun_run as engine;
use dewrun_run::figure::{Figure, Given, Origin};
use dewrun_run::library::{self, Row, Span};
use dewrun_run::told::{Entry, FanCurve, FlowSensor, Hole, Reads};
use dewrun_run::{DuctEnd, DuctEnds, Place, Tube};

use crate::convert::checked_run;
use crate::givens::origin;
use crate::{AirPath, AirflowSensor, DocumentError, FieldPath, Input, Project, Run};

/// Density at which a fan's points are given.
const FAN_DENSITY: Density = Density::kilograms_per_cubic_metre(1.2);

/// A value that stands in for one that the project leaves out.
#[derive(Debug, Clone, PartialEq)]
pub struct Assumed {
    /// The field that is left out.
    pub path: FieldPath,
    /// What it is.
    pub figure: Figure,
    /// The row of the library.
    pub row: &'static str,
    /// The value assumed, in the unit of the field.
    pub value: f64,
    /// The lowest value that is plausible.
    pub low: f64,
    /// The highest.
    pub high: f64,
}

/// How a run of a project is installed, and where each number of that came from.
#[derive(Debug, Clone, PartialEq)]
pub struct Installed {
    /// As the engine takes it.
    pub installation: engine::Installation,
    /// Every number of it, those assumed included.
    pub givens: Vec<Given>,
    /// What stands in for what the project leaves out.
    pub assumed: Vec<Assumed>,
}

/// How a run of a project is installed, and where each number of that came from.
///
/// # Errors
/// [`DocumentError`] where the project has no such run, leaves a limit, or has a fan that is none.
pub fn installed(project: &Project, run_index: usize) -> Result<Installed, DocumentError> {
    let (run, here) = checked_run(project, run_index)?;
    let mut entered = Entered::default();
    let installation = entered.installation(project, run, &here)?;
    Ok(Installed {
        installation,
        givens: entered.givens,
        assumed: entered.assumed,
    })
}

/// How a run of a project is installed, and what of that is assumed.
///
/// # Errors
/// As [`installed`].
pub fn to_installation(
    project: &Project,
    run_index: usize,
) -> Result<(engine::Installation, Vec<Assumed>), DocumentError> {
    let found = installed(project, run_index)?;
    Ok((found.installation, found.assumed))
}

/// What of an installation was entered, and what stands in for what was not.
#[derive(Default)]
struct Entered {
    givens: Vec<Given>,
    assumed: Vec<Assumed>,
}

impl Entered {
    /// The value given, or that of the row, which is then on record.
    fn or_row(
        &mut self,
        given: Option<&Input<f64>>,
        path: impl FnOnce() -> FieldPath,
        (figure, place): (Figure, Place),
        row: &'static str,
    ) -> f64 {
        if let Some(given) = given {
            return self.given((figure, place), given);
        }
        let found = library::find(library::assumptions(), row);
        found.map_or(0.0, |found| {
            self.assume(path(), (figure, place), found.id(), found.value)
        })
    }

    fn given(&mut self, (figure, place): (Figure, Place), given: &Input<f64>) -> f64 {
        self.givens.push(Given {
            figure,
            place,
            value: given.value,
            origin: origin(&given.origin),
        });
        given.value
    }

    fn assume(
        &mut self,
        path: FieldPath,
        (figure, place): (Figure, Place),
        row: &'static str,
        span: Span<f64>,
    ) -> f64 {
        self.givens.push(Given {
            figure,
            place,
            value: span.usual,
            origin: Origin::Assumed {
                row: row.to_owned(),
                low: span.low,
                high: span.high,
            },
        });
        self.assumed.push(Assumed {
            path,
            figure,
            row,
            value: span.usual,
            low: span.low,
            high: span.high,
        });
        span.usual
    }

    fn installation(
        &mut self,
        project: &Project,
        run: &Run,
        here: &FieldPath,
    ) -> Result<engine::Installation, DocumentError> {
        let nothing = AirPath::default();
        let path = run.air_path.as_ref().unwrap_or(&nothing);
        let at = |field: &str| here.clone().field("air_path").field(field);
        let exhaust = match &run.exhaust {
            Some(route) => self.tube(Tube::Exhaust, route, &here.clone().field("exhaust")),
            None => engine::TubeInstallation {
                entry: Entry::Side,
                legs: Vec::new(),
                traps: Vec::new(),
            },
        };
        let season = [
            ("season-cold", "season_cold_k"),
            ("season-warm", "season_warm_k"),
        ];
        Ok(engine::Installation {
            intake: self.tube(Tube::Intake, &run.intake, &here.clone().field("intake")),
            exhaust,
            holes: self.holes(path, &at),
            duct: self.duct(run, path, &at),
            detector: self.detector(path, &at)?,
            spaces: self.spaces(project),
            sensor: FlowSensor {
                reads: match path.sensor {
                    AirflowSensor::Volume => Reads::Volume,
                    AirflowSensor::Mass => Reads::Mass,
                    AirflowSensor::VelocityPressure => Reads::VelocityPressure,
                },
                sees_direction: false,
            },
            limits: limits(path),
            limit_margin: 0.01
                * self.or_row(
                    path.limit_margin_percent.as_ref(),
                    || at("limit_margin_percent"),
                    (Figure::LimitMargin, Place::Run),
                    "limit-margin",
                ),
            drain_interval: Time::days(self.or_row(
                path.drain_interval_days.as_ref(),
                || at("drain_interval_days"),
                (Figure::DrainInterval, Place::Run),
                "drain-interval",
            )),
            film: MassPerArea::grams_per_square_metre(self.or_row(
                None,
                || at("film_g_m2"),
                (Figure::RetainedFilm, Place::Run),
                "film-retained",
            )),
            season: season.map(|(row, field)| {
                let kelvins = self.or_row(None, || at(field), (Figure::Season, Place::Run), row);
                TemperatureDifference::kelvins(kelvins)
            }),
            transition: 1.0,
            dust_after_year: self.or_row(
                None,
                || at("filter_after_year"),
                (Figure::FilterDust, Place::Run),
                "filter-year",
            ),
        })
    }

    fn holes(&mut self, path: &AirPath, at: &impl Fn(&str) -> FieldPath) -> Vec<Hole> {
        let count = self.or_row(
            path.hole_count.as_ref(),
            || at("hole_count"),
            (Figure::HoleCount, Place::Run),
            "holes-count",
        );
        let hole = Hole {
            diameter: Length::millimetres(self.or_row(
                path.hole_diameter_mm.as_ref(),
                || at("hole_diameter_mm"),
                (Figure::HoleDiameter, Place::Run),
                "holes-diameter",
            )),
            discharge: self.or_row(
                path.hole_discharge.as_ref(),
                || at("hole_discharge"),
                (Figure::HoleDischarge, Place::Run),
                "holes-discharge",
            ),
        };
        // Holes are counted one by one: a number between two counts is the lower one.
        let mut holes = Vec::new();
        let mut counted = 1.0;
        while counted <= count {
            holes.push(hole);
            counted += 1.0;
        }
        holes
    }

    fn duct(&mut self, run: &Run, path: &AirPath, at: &impl Fn(&str) -> FieldPath) -> DuctEnds {
        let duct = &run.duct;
        let mut end =
            |tube, static_pa: &Input<f64>, velocity_pa: &Input<f64>, catch, field, row| {
                let here = Place::Duct(tube);
                DuctEnd {
                    static_pressure: Pressure::pascals(
                        self.given((Figure::DuctStatic, here), static_pa),
                    ),
                    velocity_pressure: Pressure::pascals(
                        self.given((Figure::DuctVelocity, here), velocity_pa),
                    ),
                    catch: self.or_row(catch, || at(field), (Figure::Catch, here), row),
                }
            };
        DuctEnds {
            intake: end(
                Tube::Intake,
                &duct.static_pa,
                &duct.velocity_pa,
                path.intake_catch.as_ref(),
                "intake_catch",
                "catch-intake",
            ),
            // Left out, they are those of the intake.
            exhaust: end(
                Tube::Exhaust,
                path.exhaust_static_pa.as_ref().unwrap_or(&duct.static_pa),
                path.exhaust_velocity_pa
                    .as_ref()
                    .unwrap_or(&duct.velocity_pa),
                path.exhaust_catch.as_ref(),
                "exhaust_catch",
                "catch-exhaust",
            ),
        }
    }

    fn detector(
        &mut self,
        path: &AirPath,
        at: &impl Fn(&str) -> FieldPath,
    ) -> Result<engine::DetectorPath, DocumentError> {
        let filter = self.or_row(
            path.filter_pa_min_l.as_ref(),
            || at("filter_pa_min_l"),
            (Figure::FilterResistance, Place::Run),
            "filter-clean",
        );
        Ok(engine::DetectorPath {
            filter: FlowResistance::pascals_per_litre_per_minute(filter),
            chamber_loss: self.or_row(
                path.chamber_loss.as_ref(),
                || at("chamber_loss"),
                (Figure::ChamberLoss, Place::Run),
                "chamber-loss",
            ),
            chamber_volume: Volume::millilitres(self.or_row(
                path.chamber_volume_ml.as_ref(),
                || at("chamber_volume_ml"),
                (Figure::ChamberVolume, Place::Run),
                "chamber-volume",
            )),
            fan: self.fan(path, at)?,
            start_suction: Pressure::pascals(self.or_row(
                path.start_suction_pa.as_ref(),
                || at("start_suction_pa"),
                (Figure::StartSuction, Place::Run),
                "start-suction",
            )),
        })
    }

    fn fan(
        &mut self,
        path: &AirPath,
        at: &impl Fn(&str) -> FieldPath,
    ) -> Result<engine::Fan, DocumentError> {
        if path.fan.is_empty() {
            let standing = self.or_row(
                None,
                || at("fan"),
                (Figure::FanPressure, Place::Run),
                "fan-standing",
            );
            let free = self.or_row(
                None,
                || at("fan"),
                (Figure::FanFlow, Place::Run),
                "fan-free",
            );
            return Ok(engine::Fan::Generic {
                standing: Pressure::pascals(standing),
                free: VolumeFlow::litres_per_minute(free),
            });
        }
        let points: Vec<(VolumeFlow, Pressure)> = path
            .fan
            .iter()
            .map(|point| {
                (
                    VolumeFlow::litres_per_minute(point.flow_l_min.value),
                    Pressure::pascals(point.pressure_pa.value),
                )
            })
            .collect();
        let curve = FanCurve::new(&points, FAN_DENSITY);
        curve
            .map(engine::Fan::Curve)
            .map_err(|error| DocumentError::Told {
                path: at("fan"),
                sentence: error.to_string(),
            })
    }

    fn spaces(&mut self, project: &Project) -> Vec<Pressure> {
        let all = project.spaces.iter().enumerate();
        all.map(|(number, space)| {
            let path = || {
                FieldPath::root()
                    .field("spaces")
                    .index(number)
                    .field("pressure_pa")
            };
            let given = space.pressure_pa.as_ref();
            let here = (Figure::SpacePressure, Place::Space(number));
            Pressure::pascals(self.or_row(given, path, here, "space-pressure"))
        })
        .collect()
    }
}

/// Both limits in use as parts of the reading as fitted; one alone has no limit on its other side.
fn limits(path: &AirPath) -> Option<[f64; 2]> {
    /// A limit that nothing passes.
    const NONE: [f64; 2] = [0.0, 10.0];
    let part = |input: &Option<Input<f64>>| input.as_ref().map(|input| 0.01 * input.value);
    let (low, high) = (
        part(&path.low_limit_percent),
        part(&path.high_limit_percent),
    );
    if low.is_none() && high.is_none() {
        return None;
    }
    let [none_low, none_high] = NONE;
    Some([low.unwrap_or(none_low), high.unwrap_or(none_high)])
}
