//! `dewrun diagram`: every drawing as SVG, and what is drawn as CSV.

mod columns;

use std::fs;
use std::io::{self, Write};

use dewrun_advice::{BoundaryPoint, dry_boundary};
use dewrun_document::{DocumentError, Packed};
use dewrun_drawing::airflow::{Shown, limits, path};
use dewrun_drawing::year::{Map, calendar_scene};
use dewrun_drawing::{
    Names, Room, View, boundary_temperatures, dew_square, elevation_of_whole_on_paper, profile, svg,
};
use dewrun_run::{Tube, Whole};
use dewrun_sheet::drawing_alone;
use dewrun_weather::Understanding;

use crate::args::{Diagram, DiagramKind, WhichTube};
use crate::evaluate::{Answered, evaluate};
use crate::exit::Ending;
use crate::project::{self, complain_of, name_of};
use crate::year::files::Files;
use crate::year::{Wanted, of_runs};

pub(crate) fn diagram(args: &Diagram, out: &mut impl Write) -> io::Result<Ending> {
    let name = name_of(&args.project);
    let text = match made(args) {
        Ok(text) => text,
        Err(Refused::Document(error)) => {
            complain_of(&name, &error);
            return Ok(Ending::Failed);
        }
        Err(Refused::Said(sentence)) => {
            eprintln!("dewrun: {name}: {sentence}");
            return Ok(Ending::Failed);
        }
    };
    match &args.out {
        None => out.write_all(text.as_bytes())?,
        Some(file) => {
            if let Err(error) = fs::write(file, text) {
                eprintln!("dewrun: {}: {error}", file.display());
                return Ok(Ending::Failed);
            }
        }
    }
    Ok(Ending::Dry)
}

/// Why there is no drawing.
enum Refused {
    Document(DocumentError),
    Said(String),
}

impl From<DocumentError> for Refused {
    fn from(error: DocumentError) -> Self {
        Self::Document(error)
    }
}

fn made(args: &Diagram) -> Result<String, Refused> {
    let mut packed = project::load_packed(&args.project)?;
    let runs = evaluate(&packed.project, args.run.as_deref())?;
    let run = match runs.as_slice() {
        [run] => run,
        _ => {
            let sentence = "a drawing is of one run: name it by --run";
            return Err(Refused::Said(sentence.to_owned()));
        }
    };
    if let Some(error) = run.error() {
        return Err(error.clone().into());
    }
    let answered = run.result.as_ref().map_err(Clone::clone)?;
    let (whole, _) = answered.whole.as_ref().map_err(Clone::clone)?;
    if args.kind == DiagramKind::Year {
        return year(args, &mut packed, answered);
    }
    let names = names(answered, whole);
    let view = View {
        run: &answered.run,
        outcome: &answered.outcome.value,
        names: &names,
        style: args.units.style(),
        tube: match args.tube {
            WhichTube::Intake => Tube::Intake,
            WhichTube::Exhaust => Tube::Exhaust,
        },
    };
    let none = || Refused::Said("this run has no such tube".to_owned());
    let answer = view.answer().ok_or_else(none)?;
    if args.csv {
        return Ok(match args.kind {
            DiagramKind::Elevation => columns::elevation(&view, answer),
            DiagramKind::Profile => columns::profile(answer),
            DiagramKind::DewSquare => columns::dew_square(answer, &boundary(&view)),
            DiagramKind::Pressure => columns::pressure(&whole.airflow),
            DiagramKind::Budget => columns::budget(&whole.airflow),
            DiagramKind::TransportTime => columns::transport(&whole.airflow),
            DiagramKind::Limits | DiagramKind::Year => columns::limits(&whole.airflow),
        });
    }
    let shown = Shown::new(&answered.run, whole, view.style);
    let drawn = match args.kind {
        DiagramKind::Elevation => svg(&elevation_of_whole_on_paper(&view, Some(whole)).scene),
        DiagramKind::Profile => {
            let elevation = elevation_of_whole_on_paper(&view, Some(whole));
            let drawn = profile(&view, &elevation.frame).ok_or_else(none)?;
            svg(&drawn.scene)
        }
        DiagramKind::DewSquare => svg(&dew_square(&view, &boundary(&view), &[], Room::PAPER).scene),
        DiagramKind::Pressure | DiagramKind::Budget | DiagramKind::TransportTime => {
            path(&shown, Room::PAPER)
        }
        DiagramKind::Limits | DiagramKind::Year => limits(&shown, Room::PAPER),
    };
    // Pressure, budget and transport time are drawn one under the other.
    let number = match args.kind {
        DiagramKind::Budget => 1,
        DiagramKind::TransportTime => 2,
        _ => 0,
    };
    alone(&drawn, number)
}

fn alone(drawn: &str, number: usize) -> Result<String, Refused> {
    let none = || Refused::Said("there is nothing to draw: no air comes through".to_owned());
    drawing_alone(drawn, number).ok_or_else(none)
}

/// Names, traps and hangers as the run has them.
fn names(answered: &Answered, whole: &Whole) -> Names {
    let fitted = |tube: Option<&dewrun_run::TubeWater>| dewrun_drawing::Fitted {
        traps: tube
            .into_iter()
            .flat_map(|tube| tube.traps.iter().map(|trap| trap.at))
            .collect(),
        hangers: Vec::new(),
    };
    let names = &answered.names;
    Names {
        run: names.run.clone(),
        duct: names.duct.clone(),
        spaces: names.spaces.clone(),
        intake_falls: names.intake_falls.clone(),
        exhaust_falls: names.exhaust_falls.clone(),
        intake_fitted: fitted(Some(&whole.intake)),
        exhaust_fitted: fitted(whole.exhaust.as_ref()),
    }
}

/// The dry boundary over the width of the square; empty where a run on the way has no answer.
fn boundary(view: &View<'_>) -> Vec<BoundaryPoint> {
    let at = boundary_temperatures(view, &[], Room::PAPER);
    dry_boundary(view.run, view.outcome, &at).unwrap_or_default()
}

/// The calendar of the year; its hours are those of `year --csv`.
fn year(args: &Diagram, packed: &mut Packed, answered: &Answered) -> Result<String, Refused> {
    let files = core::mem::take(&mut packed.files);
    let files =
        Files::new(&args.project, files).with(args.weather.as_deref(), Understanding::default());
    let wanted = Wanted {
        csv: args.csv,
        drawn: true,
        ..Wanted::default()
    };
    let years = of_runs(
        &packed.project,
        &[answered.run_index],
        &files,
        wanted,
        || {},
    );
    let missing = || {
        let missing = files.complaints().into_iter().next();
        Refused::Said(missing.unwrap_or_else(|| "there is no year".to_owned()))
    };
    let told = years.into_iter().next().ok_or_else(missing)?.result?;
    if args.csv {
        return Ok(told.csv);
    }
    let mut year = told.drawn.ok_or_else(missing)?;
    year.style = args.units.style();
    alone(&svg(&calendar_scene(&year, Room::PAPER, Map::Water)), 0)
}
