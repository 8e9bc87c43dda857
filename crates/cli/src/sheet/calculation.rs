//! `dewrun sheet calculation`: the calculation sheet, with the year where there is weather.

use std::io::{self, Write};

use dewrun_advice::{BoundaryPoint, Subject, dry_boundary, remedies_of_geometry};
use dewrun_document::output::NoteOutput;
use dewrun_document::{DocumentError, Packed, givens, note};
use dewrun_drawing::{Room, boundary_temperatures};
use dewrun_quantity::Style;
use dewrun_remedies::RankBy;
use dewrun_run::Tube;
use dewrun_sheet::{
    Calculation, CalculationOptions, Further, Told, Worked, YearWorked, calculation,
    calculation_document, further,
};

use super::{paper, told, write};
use crate::args::CalculationSheet;
use crate::doubt;
use crate::evaluate::{Answered, Evaluated, evaluate};
use crate::exit::Ending;
use crate::project::{self, complain_of, name_of};
use crate::remedies;
use crate::weather::given;
use crate::year::files::Files;
use crate::year::{Wanted, of_runs};

/// The sheets of all runs asked for; what has none is said on the standard error.
pub(super) fn calculation_sheets(
    args: &CalculationSheet,
    out: &mut impl Write,
) -> io::Result<Ending> {
    let said = match given(&args.said, args.units) {
        Ok(said) => said,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    let name = name_of(&args.project);
    let loaded = project::load_packed(&args.project).and_then(|packed| {
        evaluate(&packed.project, args.run.as_deref()).map(|runs| (packed, runs))
    });
    let (mut packed, runs) = match loaded {
        Ok(loaded) => loaded,
        Err(error) => {
            complain_of(&name, &error);
            return Ok(Ending::Failed);
        }
    };
    let files = core::mem::take(&mut packed.files);
    let files = Files::new(&args.project, files).with(args.weather.as_deref(), said);
    let mut sheets = Vec::new();
    let mut ending = Ending::Dry;
    for run in &runs {
        match sheet(args, &packed, run, &files) {
            Ok(sheet) => {
                sheets.extend(sheet);
                ending = ending.max(run.ending());
            }
            Err(error) => {
                complain_of(&name, &error);
                ending = Ending::Failed;
            }
        }
    }
    if packed.project.weather.is_some() || args.weather.is_some() {
        for missing in files.complaints() {
            eprintln!("dewrun: {name}: {missing}");
            ending = ending.max(Ending::Failed);
        }
    }
    if sheets.is_empty() {
        return Ok(ending);
    }
    write(
        &calculation_document(&sheets),
        args.out.as_deref(),
        ending,
        out,
    )
}

/// The sheet of a run; none where the run has no answer, which it says itself.
fn sheet(
    args: &CalculationSheet,
    packed: &Packed,
    run: &Evaluated,
    files: &Files,
) -> Result<Option<Calculation>, DocumentError> {
    if let Some(error) = run.error() {
        return Err(error.clone());
    }
    let project = &packed.project;
    let Ok(answered) = &run.result else {
        return Ok(None);
    };
    let Some(told) = told(project, answered) else {
        return Ok(None);
    };
    let style = args.units.style();
    let mut all = givens(project, answered.run_index);
    if let Ok((_, installed)) = &answered.whole {
        all.extend(installed.givens.iter().cloned());
    }
    let remedies = remedies_of_geometry(&Subject {
        run: told.run,
        installation: told.installation,
        outcome: told.outcome,
        whole: told.whole,
    });
    let notes: Vec<NoteOutput> = answered
        .outcome
        .notes
        .iter()
        .map(|one| note(answered.run_index, one))
        .collect();
    let worked = Worked {
        told,
        answer: &answered.told(style),
        rests: &answered.rests(style),
        givens: &all,
        notes: &notes,
        doubt: answered.doubt.as_ref(),
        staying: answered.staying.as_ref(),
        boundary: &boundary(answered, &told, style),
        remedies: &remedies,
        further: &year(args, packed, answered.run_index, files)?,
    };
    let options = CalculationOptions {
        style,
        paper: paper(args.paper),
        date: args.date.as_deref().unwrap_or_default(),
        revision: args.revision.as_deref().unwrap_or_default(),
    };
    Ok(Some(calculation(&worked, &options)))
}

/// The dry boundary over the width of the square; empty where a run on the way has no answer.
fn boundary(answered: &Answered, told: &Told<'_>, style: Style) -> Vec<BoundaryPoint> {
    let names = dewrun_drawing::Names {
        spaces: answered.names.spaces.clone(),
        ..dewrun_drawing::Names::default()
    };
    let view = dewrun_drawing::View {
        run: told.run,
        outcome: told.outcome,
        names: &names,
        style,
        tube: Tube::Intake,
    };
    let at = boundary_temperatures(&view, &[], Room::PAPER);
    dry_boundary(told.run, told.outcome, &at).unwrap_or_default()
}

/// What stands on the sheet of the year; nothing where the project knows of none.
fn year(
    args: &CalculationSheet,
    packed: &Packed,
    position: usize,
    files: &Files,
) -> Result<Further, DocumentError> {
    let project = &packed.project;
    if project.weather.is_none() && args.weather.is_none() {
        return Ok(Further::default());
    }
    let wanted = Wanted {
        drawn: true,
        ..Wanted::default()
    };
    let answered = of_runs(project, &[position], files, wanted, || {});
    let Some(answered) = answered.into_iter().next() else {
        return Ok(Further::default());
    };
    let year = answered.result?;
    let asked = doubt::Asked {
        members: args.members,
        readings: &[],
        without_visits: false,
        style: args.units.style(),
    };
    let doubted = if args.doubt && year.drawn.is_some() {
        Some(doubt::of_run(asked, project, position, files)?.output)
    } else {
        None
    };
    let remedies = if year.drawn.is_some() {
        let asked = remedies::Asked {
            target: None,
            rank: RankBy::default(),
            style: args.units.style(),
        };
        Some(remedies::of_run(asked, (project, position), files)?.output)
    } else {
        None
    };
    let worked = YearWorked {
        output: &year.output,
        drawn: year.drawn.as_ref(),
        remedies: remedies.as_ref(),
        doubt: doubted.as_ref(),
    };
    Ok(further(&worked, args.units.style()))
}
