//! From the project file to how a run is installed; what is left out is assumed by a row of the library.

use dewrun_quantity::{
    Angle, Area, Density, FlowResistance, Length, Mass, MassPerArea, MassPerLength, Modulus,
    Pressure, TemperatureDifference, Time, Volume, VolumeFlow,
};
use dewrun_run as engine;
use dewrun_run::figure::Figure;
use dewrun_run::library::{self, Row, Span, TubeRow};
use dewrun_run::told::{DuctPressures, Entry, FanCurve, FlowSensor, Hole, Reads};

use crate::v1::check;
use crate::{
    Access, AirPath, AirflowSensor, BoreForm, DocumentError, FieldPath, Input, Leg, Origin,
    Project, Route, Run, Side, Trap, TrapCondition, TrapForm, TrapKind, TubeSupply,
};

/// Density at which a fan's points are given.
const FAN_DENSITY: Density = Density::kilograms_per_cubic_metre(1.2);
/// Bore of a pot over that of its dip tube, where it is left out.
const POT_OVER_DIP: f64 = 3.0;

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

/// How a run of a project is installed, and what of that is assumed.
///
/// # Errors
/// [`DocumentError`] where the project has no such run, leaves a limit, or has a fan that is none.
pub fn to_installation(
    project: &Project,
    run_index: usize,
) -> Result<(engine::Installation, Vec<Assumed>), DocumentError> {
    check(project)?;
    let run = project
        .runs
        .get(run_index)
        .ok_or(DocumentError::NoSuchRun {
            index: run_index,
            count: project.runs.len(),
        })?;
    let here = FieldPath::root().field("runs").index(run_index);
    let mut assuming = Assuming(Vec::new());
    let installation = assuming.installation(project, run, &here)?;
    Ok((installation, assuming.0))
}

struct Assuming(Vec<Assumed>);

impl Assuming {
    /// The value given, or that of the row, which is then on record.
    fn or_row(
        &mut self,
        given: Option<&Input<f64>>,
        path: impl FnOnce() -> FieldPath,
        figure: Figure,
        row: &'static str,
    ) -> f64 {
        if let Some(given) = given {
            return given.value;
        }
        let found = library::find(library::assumptions(), row);
        found.map_or(0.0, |found| {
            self.assume(path(), figure, found.id(), found.value)
        })
    }

    fn assume(
        &mut self,
        path: FieldPath,
        figure: Figure,
        row: &'static str,
        span: Span<f64>,
    ) -> f64 {
        self.0.push(Assumed {
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
            Some(route) => self.tube(route, &here.clone().field("exhaust")),
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
            intake: self.tube(&run.intake, &here.clone().field("intake")),
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
                    Figure::LimitMargin,
                    "limit-margin",
                ),
            drain_interval: Time::days(self.or_row(
                path.drain_interval_days.as_ref(),
                || at("drain_interval_days"),
                Figure::DrainInterval,
                "drain-interval",
            )),
            film: MassPerArea::grams_per_square_metre(self.or_row(
                None,
                || at("film_g_m2"),
                Figure::RetainedFilm,
                "film-retained",
            )),
            season: season.map(|(row, field)| {
                let kelvins = self.or_row(None, || at(field), Figure::Season, row);
                TemperatureDifference::kelvins(kelvins)
            }),
            dust_after_year: self.or_row(
                None,
                || at("filter_after_year"),
                Figure::FilterDust,
                "filter-year",
            ),
        })
    }

    fn holes(&mut self, path: &AirPath, at: &impl Fn(&str) -> FieldPath) -> Vec<Hole> {
        let count = self.or_row(
            path.hole_count.as_ref(),
            || at("hole_count"),
            Figure::HoleCount,
            "holes-count",
        );
        let hole = Hole {
            diameter: Length::millimetres(self.or_row(
                path.hole_diameter_mm.as_ref(),
                || at("hole_diameter_mm"),
                Figure::HoleDiameter,
                "holes-diameter",
            )),
            discharge: self.or_row(
                path.hole_discharge.as_ref(),
                || at("hole_discharge"),
                Figure::HoleDischarge,
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

    fn duct(
        &mut self,
        run: &Run,
        path: &AirPath,
        at: &impl Fn(&str) -> FieldPath,
    ) -> DuctPressures {
        let duct = &run.duct;
        let mut total = |static_pa: f64, velocity_pa: f64, catch, field, row| {
            let caught = self.or_row(catch, || at(field), Figure::Catch, row);
            Pressure::pascals(static_pa + caught * velocity_pa)
        };
        let or_intake = |given: &Option<Input<f64>>, intake: &Input<f64>| {
            given.as_ref().map_or(intake.value, |given| given.value)
        };
        DuctPressures {
            intake: total(
                duct.static_pa.value,
                duct.velocity_pa.value,
                path.intake_catch.as_ref(),
                "intake_catch",
                "catch-intake",
            ),
            exhaust: total(
                or_intake(&path.exhaust_static_pa, &duct.static_pa),
                or_intake(&path.exhaust_velocity_pa, &duct.velocity_pa),
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
            Figure::FilterResistance,
            "filter-clean",
        );
        Ok(engine::DetectorPath {
            filter: FlowResistance::pascals_per_litre_per_minute(filter),
            chamber_loss: self.or_row(
                path.chamber_loss.as_ref(),
                || at("chamber_loss"),
                Figure::ChamberLoss,
                "chamber-loss",
            ),
            chamber_volume: Volume::millilitres(self.or_row(
                path.chamber_volume_ml.as_ref(),
                || at("chamber_volume_ml"),
                Figure::ChamberVolume,
                "chamber-volume",
            )),
            fan: self.fan(path, at)?,
            start_suction: Pressure::pascals(self.or_row(
                path.start_suction_pa.as_ref(),
                || at("start_suction_pa"),
                Figure::StartSuction,
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
            let standing = self.or_row(None, || at("fan"), Figure::FanPressure, "fan-standing");
            let free = self.or_row(None, || at("fan"), Figure::FanFlow, "fan-free");
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
            Pressure::pascals(self.or_row(given, path, Figure::SpacePressure, "space-pressure"))
        })
        .collect()
    }

    fn tube(&mut self, route: &Route, here: &FieldPath) -> engine::TubeInstallation {
        let legs = route.legs.iter().enumerate();
        let legs =
            legs.map(|(number, leg)| self.leg(leg, &here.clone().field("legs").index(number)));
        let legs: Vec<engine::LegInstallation> = legs.collect();
        let traps = route.traps.iter().enumerate();
        let traps = traps.map(|(number, trap)| {
            let bore_mm = route.legs.last().map_or(10.0, |leg| leg.tube.bore_mm.value);
            self.trap(trap, bore_mm, &here.clone().field("traps").index(number))
        });
        engine::TubeInstallation {
            entry: match route.entry.side {
                Side::Side => Entry::Side,
                Side::Top => Entry::Top,
                Side::Bottom => Entry::Bottom,
            },
            traps: traps.collect(),
            legs,
        }
    }

    fn leg(&mut self, leg: &Leg, here: &FieldPath) -> engine::LegInstallation {
        let row = row_of(leg);
        let stuff = leg.tube.stuff.as_ref();
        let at = |field: &str| here.clone().field("tube.stuff").field(field);
        let mut from_row = |given: Option<&Input<f64>>, field: &'static str, figure: Figure| {
            let entry = row.and_then(|row| Some((row.id(), row.entry(field)?.span)));
            match (given, entry) {
                (Some(given), _) => given.value,
                (None, Some((id, span))) => self.assume(at(field), figure, id, span),
                (None, None) => 0.0,
            }
        };
        let roughness = from_row(
            stuff.and_then(|stuff| stuff.roughness_mm.as_ref()),
            "roughness_mm",
            Figure::Roughness,
        );
        let modulus = from_row(
            stuff.and_then(|stuff| stuff.long_term_modulus_mpa.as_ref()),
            "long_term_modulus_mpa",
            Figure::Modulus,
        );
        let density = from_row(
            stuff.and_then(|stuff| stuff.density_kg_m3.as_ref()),
            "density_kg_m3",
            Figure::TubeDensity,
        );
        let corrugated = stuff.map_or_else(
            || row.is_some_and(|row| row.bore_form == library::BoreForm::Corrugated),
            |stuff| stuff.bore_form == BoreForm::Corrugated,
        );
        let coiled = stuff.map_or_else(
            || row.is_some_and(|row| row.supply == library::Supply::Coiled),
            |stuff| stuff.supply == TubeSupply::Coiled,
        );
        let ribs = if corrugated {
            self.or_row(
                None,
                || at("corrugations_g_m"),
                Figure::Corrugations,
                "corrugations",
            )
        } else {
            0.0
        };
        let spacing = leg.hanger_spacing_m.as_ref();
        engine::LegInstallation {
            roughness: Length::millimetres(roughness),
            corrugations: MassPerLength::grams_per_metre(ribs),
            coiled,
            density: Density::kilograms_per_cubic_metre(density),
            long_term_modulus: Modulus::megapascals(modulus),
            hanger_spacing: spacing.map(|spacing| Length::metres(spacing.value)),
            fittings: leg
                .fittings
                .iter()
                .map(|one| (Length::metres(one.at_m.value), one.loss_coefficient.value))
                .collect(),
            reachable: leg.access != Access::None,
        }
    }

    fn trap(&mut self, trap: &Trap, tube_bore_mm: f64, here: &FieldPath) -> engine::Trap {
        let at = |field: &str| here.clone().field(field);
        let bore_mm = trap
            .bore_mm
            .as_ref()
            .map_or(tube_bore_mm, |bore| bore.value);
        let capacity = trap.capacity_ml.as_ref();
        let capacity_ml = if trap.kind == TrapKind::HandDrained {
            self.or_row(
                capacity,
                || at("capacity_ml"),
                Figure::TrapCapacity,
                "trap-capacity",
            )
        } else {
            capacity.map_or(0.0, |capacity| capacity.value)
        };
        let seal_mm = if trap.kind == TrapKind::SelfDraining {
            self.or_row(
                trap.seal_mm.as_ref(),
                || at("seal_mm"),
                Figure::TrapSeal,
                "trap-seal",
            )
        } else {
            trap.seal_mm.as_ref().map_or(0.0, |seal| seal.value)
        };
        engine::Trap {
            at: Length::metres(trap.at_m.value),
            drain: match trap.kind {
                TrapKind::HandDrained => engine::Drain::ByHand,
                TrapKind::SelfDraining => engine::Drain::ByItself,
                TrapKind::OpenStub => engine::Drain::OpenStub,
            },
            open: trap.condition == TrapCondition::Open,
            kind: trap_kind(trap, bore_mm),
            // A millilitre of water is a gram, within what a trap's capacity is known to.
            capacity: Mass::grams(capacity_ml),
            seal: Length::millimetres(seal_mm),
            outlet_drop: Length::millimetres(self.or_row(
                trap.outlet_drop_mm.as_ref(),
                || at("outlet_drop_mm"),
                Figure::TrapDrop,
                "trap-drop",
            )),
            bore: Length::millimetres(bore_mm),
        }
    }
}

/// The row of the library that a leg's bore was taken from; where it was typed, rigid plastic of no known kind.
fn row_of(leg: &Leg) -> Option<&'static TubeRow> {
    const PLAIN: &str = "tube-rigid-plastic-19";
    let tubes = library::tubes();
    let named = match &leg.tube.bore_mm.origin {
        Origin::Assumed { row, .. } => library::find(tubes, row),
        Origin::Typed | Origin::Measured { .. } => None,
    };
    named.or_else(|| library::find(tubes, PLAIN))
}

fn trap_kind(trap: &Trap, bore_mm: f64) -> engine::told::TrapKind {
    let round = |bore_mm: f64| {
        let bore_m = Length::millimetres(bore_mm).to_metres();
        0.25 * Angle::degrees(180.0).to_radians() * bore_m * bore_m
    };
    let pot_mm = trap
        .pot_bore_mm
        .as_ref()
        .map_or(POT_OVER_DIP * bore_mm, |pot| pot.value);
    let dip = Area::square_metres(round(bore_mm));
    let pot = Area::square_metres(round(pot_mm) - round(bore_mm));
    match trap.form {
        TrapForm::EqualLegs => engine::told::TrapKind::EqualLegs,
        TrapForm::DipOpenToRoom => engine::told::TrapKind::DipOpenToRoom { dip, pot },
        TrapForm::DipOnTube => engine::told::TrapKind::DipOnTube { dip, pot },
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

/// What keeps water and air of a run from being answered, at its field.
#[must_use]
pub fn located_whole(run_index: usize, error: &engine::WholeError) -> DocumentError {
    use engine::told::{AirflowError, DrainageError, Side as LineSide};
    let run = FieldPath::root().field("runs").index(run_index);
    let tube_path = |tube: engine::Tube| {
        run.clone().field(match tube {
            engine::Tube::Intake => "intake",
            engine::Tube::Exhaust => "exhaust",
        })
    };
    let path = match error {
        engine::WholeError::Drainage { tube, source } => match source {
            DrainageError::TrapOffTube { trap, .. } => {
                tube_path(*tube).field("traps").index(*trap).field("at_m")
            }
            DrainageError::SteeperThanUpright { leg, .. } => {
                tube_path(*tube).field("legs").index(*leg).field("rise_m")
            }
            DrainageError::Leg { leg, .. } => tube_path(*tube).field("legs").index(*leg),
            _ => tube_path(*tube),
        },
        engine::WholeError::Hanger { place, .. } => crate::path_of(run_index, *place).field("tube"),
        engine::WholeError::Trap { tube, trap, .. } => tube_path(*tube).field("traps").index(*trap),
        engine::WholeError::Airflow { source } => match source {
            AirflowError::SeveralOperatingPoints { .. } => run.clone().field("air_path.fan"),
            AirflowError::OffTube { side, .. } | AirflowError::NoStretch { side } => {
                tube_path(match side {
                    LineSide::Intake => engine::Tube::Intake,
                    LineSide::Exhaust => engine::Tube::Exhaust,
                })
            }
            _ => run.clone().field("air_path"),
        },
        _ => run.clone(),
    };
    DocumentError::Told {
        path,
        sentence: error.to_string(),
    }
}
