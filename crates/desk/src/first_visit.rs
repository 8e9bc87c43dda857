//! The sentence with blanks of the empty page: a whole run of the few things that somebody knows at once.
//!
//! The blanks are numbers of a project like any other, so that it is answered, checked and drawn as one.

use dewrun_document::{
    Access, AirPair, Detector, Duct, DuctEntry, FallForm, Flow, FlowAt, Humidity, Input, Leg,
    Origin, Pressure, Project, Route, Run, Side, TubeWall,
};
use dewrun_quantity::Style;
use dewrun_run::library;

use super::OpenProject;
use super::field::{TubeName, route, route_mut};
use super::kind::Kind;
use super::rows;

/// Rows of the library that the sentence begins with.
const DUCT_AIR: &str = "make-up-untreated";
const SPACE: &str = "corridor";
const TUBE: &str = "tube-rigid-plastic-19";
const DETECTOR: &str = "detector-generic";
const LEVEL: &str = "route-level";
const DROP: &str = "route-drop";

/// What a space is called that nobody has named yet.
pub(crate) const UNNAMED: &str = "Space along the tube";

/// A muggy day within the span of its row.
const DUCT_C: f64 = 32.0;
const DEW_POINT_C: f64 = 26.0;
/// Length of the whole tube, and the height of the duct over the detector, m.
const LENGTH_M: f64 = 12.0;
const HEIGHT_M: f64 = 1.2;

/// A blank that says something of the whole tube.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Blank {
    /// Length of the tube from the duct to the detector.
    Length,
    /// Bore of all of it.
    Bore,
    /// Height of the detector above or below the duct.
    Height,
}

/// The run that the sentence describes before anything is typed; none if the library lacks a row.
pub fn project() -> Option<Project> {
    let space = library::find(library::spaces(), SPACE)?;
    let space = dewrun_document::Space {
        id: "space-1".to_owned(),
        name: UNNAMED.to_owned(),
        ..rows::space(space)?
    };
    let run = Run {
        id: "run-1".to_owned(),
        name: "First route".to_owned(),
        variant_of: None,
        duct: Duct {
            name: "Duct".to_owned(),
            air: AirPair::Temperature {
                temperature_c: rows::within(DUCT_AIR, "temperature_c", DUCT_C)?,
                humidity: Humidity::DewPoint(rows::within(DUCT_AIR, "dew_point_c", DEW_POINT_C)?),
            },
            static_pa: rows::usual_of("duct-static", "static_pa")?,
            velocity_pa: rows::usual_of("duct-velocity", "velocity_pa")?,
            source: None,
            fan_off: None,
        },
        flow: Flow {
            volume_l_min: rows::usual_of(DETECTOR, "volume_l_min")?,
            at: FlowAt::Sensor,
        },
        intake: Route {
            entry: DuctEntry {
                place: String::new(),
                side: Side::Side,
            },
            legs: vec![level(&space.id)?, drop(&space.id)?],
            traps: Vec::new(),
        },
        detector: Detector {
            heat_w: rows::usual_of(DETECTOR, "heat_w")?,
            humidity_rating_percent: rows::usual_of(DETECTOR, "humidity_rating_percent"),
            access: Access::Floor,
        },
        exhaust: None,
        air_path: None,
        visits: Vec::new(),
        troubles: None,
    };
    Some(Project {
        name: "New project".to_owned(),
        note: String::new(),
        pressure: Pressure::AbsolutePa(rows::usual_of("sea-level", "absolute_pa")?),
        weather: None,
        target: None,
        spaces: vec![space],
        runs: vec![run],
    })
}

fn level(space: &str) -> Option<Leg> {
    let length_m = rows::within(LEVEL, "length_m", LENGTH_M - HEIGHT_M)?;
    leg("leg-1", space, length_m, rows::usual_of(LEVEL, "rise_m")?)
}

fn drop(space: &str) -> Option<Leg> {
    let length_m = rows::within(DROP, "length_m", HEIGHT_M)?;
    leg(
        "leg-2",
        space,
        length_m,
        rows::within(DROP, "rise_m", -HEIGHT_M)?,
    )
}

fn leg(id: &str, space: &str, length_m: Input<f64>, rise_m: Input<f64>) -> Option<Leg> {
    Some(Leg {
        id: id.to_owned(),
        space: space.to_owned(),
        length_m,
        rise_m,
        fall_as: FallForm::Ratio,
        tube: TubeWall {
            bore_mm: rows::usual_of(TUBE, "bore_mm")?,
            outside_diameter_mm: rows::usual_of(TUBE, "outside_diameter_mm")?,
            conductivity_w_mk: rows::usual_of(TUBE, "conductivity_w_mk")?,
            stuff: None,
        },
        emissivity: rows::usual_of(TUBE, "emissivity")?,
        insulation: None,
        heat_tracing_w_m: None,
        hanger_spacing_m: None,
        fittings: Vec::new(),
        access: Access::Ladder,
    })
}

impl Blank {
    pub(crate) const fn kind(self) -> Kind {
        match self {
            Self::Length => Kind::Length,
            Self::Height => Kind::Height,
            Self::Bore => Kind::Bore,
        }
    }

    /// Its name, where the sentence around it says whose it is.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Length => "Length",
            Self::Bore => "Bore",
            Self::Height => "Height",
        }
    }

    /// Its name where nothing around says whose it is.
    pub const fn full_name(self) -> &'static str {
        match self {
            Self::Length => "Length of the tube",
            Self::Bore => "Bore of the tube",
            Self::Height => "Height of the detector",
        }
    }

    /// Its value and origin.
    pub fn input(self, project: &OpenProject) -> Option<Input<f64>> {
        let legs = &route(project, TubeName::Intake)?.legs;
        let first = legs.first()?;
        Some(match self {
            Self::Length => Input {
                value: tidy(legs.iter().map(|leg| leg.length_m.value).sum()),
                origin: first.length_m.origin.clone(),
            },
            Self::Bore => first.tube.bore_mm.clone(),
            // Only somebody who typed it has a detector level with the duct.
            Self::Height => drop_of(legs).map_or(Input::typed(0.0), |leg| leg.length_m.clone()),
        })
    }

    /// Why a value can't be used though it is within the limits of its kind.
    pub fn refuse(self, project: &OpenProject, value: f64, style: Style) -> Result<(), String> {
        let held = |blank: Self| blank.input(project).map_or(0.0, |input| input.value);
        let (length, height) = match self {
            Self::Length => (value, held(Self::Height)),
            Self::Height => (held(Self::Length), value),
            Self::Bore => return Ok(()),
        };
        if height < length {
            return Ok(());
        }
        let (length, height) = (
            Kind::Length.show(length, style),
            Kind::Length.show(height, style),
        );
        Err(format!(
            "{length} of tube can\u{2019}t reach a detector {height} away in height. A tube longer than that would be right."
        ))
    }

    /// Writes a value that somebody typed; the other blanks keep theirs.
    pub fn set(self, project: &mut OpenProject, value: f64) -> Option<()> {
        let length = Self::Length.input(project)?;
        let height = Self::Height.input(project)?;
        let legs = &mut route_mut(project, TubeName::Intake)?.legs;
        match self {
            Self::Length => {
                for leg in level_mut(legs, value - height.value) {
                    leg.length_m = Input::typed(leg.length_m.value);
                }
            }
            Self::Height => {
                level_mut(legs, length.value - value);
                set_height(legs, value)?;
            }
            Self::Bore => {
                for leg in legs {
                    let by = value - leg.tube.bore_mm.value;
                    // The wall stays as thick as it was.
                    leg.tube.outside_diameter_mm = rows::shifted(&leg.tube.outside_diameter_mm, by);
                    leg.tube.bore_mm = Input::typed(value);
                }
            }
        }
        Some(())
    }
}

/// Makes the level legs as long as that together, each by the same share; an assumed length stays one.
fn level_mut(legs: &mut [Leg], length_m: f64) -> &mut [Leg] {
    let count = legs.len() - usize::from(has_drop(legs));
    let (level, _) = legs.split_at_mut(count);
    let before: f64 = level.iter().map(|leg| leg.length_m.value).sum();
    for leg in &mut *level {
        let length = tidy(leg.length_m.value * length_m / before);
        leg.length_m = rows::moved(&leg.length_m, length);
    }
    level
}

fn set_height(legs: &mut Vec<Leg>, height: f64) -> Option<()> {
    if height == 0.0 {
        if has_drop(legs) {
            legs.pop();
        }
        return Some(());
    }
    if !has_drop(legs) {
        let mut added = legs.last()?.clone();
        added.id = format!("leg-{}", legs.len() + 1);
        added.rise_m = Input::typed(-height);
        legs.push(added);
    }
    let last = legs.last_mut()?;
    let rise = if is_up(last) { height } else { -height };
    last.length_m = Input::typed(height);
    last.rise_m = Input::typed(rise);
    Some(())
}

/// Whether the last of several legs is upright, from the height of the duct to the detector.
pub(crate) fn has_drop(legs: &[Leg]) -> bool {
    drop_of(legs).is_some()
}

fn drop_of(legs: &[Leg]) -> Option<&Leg> {
    let (last, before) = legs.split_last()?;
    let is_upright = last.rise_m.value.abs() == last.length_m.value;
    (is_upright && !before.is_empty()).then_some(last)
}

fn is_up(leg: &Leg) -> bool {
    0.0 < leg.rise_m.value
}

/// Whether the detector stands above the duct; none where it is level with it.
pub fn is_above(project: &OpenProject) -> Option<bool> {
    drop_of(&route(project, TubeName::Intake)?.legs).map(is_up)
}

/// Whether nobody has said yet on which side of the duct the detector stands.
pub fn is_side_assumed(project: &OpenProject) -> bool {
    let leg = route(project, TubeName::Intake).and_then(|route| drop_of(&route.legs));
    leg.is_some_and(|leg| matches!(leg.rise_m.origin, Origin::Assumed { .. }))
}

/// Puts the detector above or below the duct.
pub fn put_above(project: &mut OpenProject, above: bool) -> Option<()> {
    let legs = &mut route_mut(project, TubeName::Intake)?.legs;
    let leg = legs.last_mut().filter(|leg| leg.rise_m.value != 0.0)?;
    let height = leg.length_m.value;
    leg.rise_m = Input::typed(if above { height } else { -height });
    Some(())
}

/// Sums and differences of lengths without the dust of binary fractions.
pub(crate) fn tidy(metres: f64) -> f64 {
    (metres * 1e6).round() / 1e6
}
