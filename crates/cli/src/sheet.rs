//! `dewrun sheet`: sheets of paper as documents in HTML.

mod calculation;
mod service;

use std::fs;
use std::io::{self, Write};
use std::path::Path;

use dewrun_document::{DocumentError, Project};
use dewrun_sheet::{CardOptions, Paper, SiteCard, Told, document, site_card};

use crate::args::{PaperSize, Sheet, SheetKind, SiteSheet};
use crate::evaluate::{Answered, Evaluated, evaluate};
use crate::exit::Ending;
use crate::project::{self, complain_of, name_of};

pub(crate) fn sheet(args: &Sheet, out: &mut impl Write) -> io::Result<Ending> {
    match &args.kind {
        SheetKind::Site(args) => site(args, out),
        SheetKind::Service(args) => service::service(args, out),
        SheetKind::Calculation(args) => calculation::calculation_sheets(args, out),
    }
}

/// The cards of all runs asked for; what has none is said on the standard error.
fn site(args: &SiteSheet, out: &mut impl Write) -> io::Result<Ending> {
    cards(args, project::load(&args.project), out, site_card)
}

/// What makes a card of a run.
type Made = Result<SiteCard, DocumentError>;

/// The cards of all runs asked for of a project, each made by a function.
fn cards(
    args: &SiteSheet,
    loaded: Result<Project, DocumentError>,
    out: &mut impl Write,
    make: impl Fn(&Told<'_>, &CardOptions<'_>) -> Made,
) -> io::Result<Ending> {
    let name = name_of(&args.project);
    let loaded = loaded
        .and_then(|project| evaluate(&project, args.run.as_deref()).map(|runs| (project, runs)));
    let (project, runs) = match loaded {
        Ok(loaded) => loaded,
        Err(error) => {
            complain_of(&name, &error);
            return Ok(Ending::Failed);
        }
    };
    let mut cards = Vec::new();
    let mut ending = Ending::Dry;
    for run in &runs {
        match card(args, &project, run, &make) {
            Ok(card) => {
                cards.extend(card);
                ending = ending.max(run.ending());
            }
            Err(error) => {
                complain_of(&name, &error);
                ending = Ending::Failed;
            }
        }
    }
    if cards.is_empty() {
        return Ok(ending);
    }
    write(&document(&cards), args.out.as_deref(), ending, out)
}

/// Writes a document to a file, or where there is none to the standard output.
fn write(
    text: &str,
    file: Option<&Path>,
    ending: Ending,
    out: &mut impl Write,
) -> io::Result<Ending> {
    match file {
        None => out.write_all(text.as_bytes())?,
        Some(path) => {
            if let Err(error) = fs::write(path, text) {
                eprintln!("dewrun: {}: {error}", path.display());
                return Ok(Ending::Failed);
            }
        }
    }
    Ok(ending)
}

const fn paper(size: PaperSize) -> Paper {
    match size {
        PaperSize::A4 => Paper::A4,
        PaperSize::Letter => Paper::Letter,
    }
}

/// What a sheet of a run is made of; none where it has no answer.
fn told<'a>(project: &'a Project, answered: &'a Answered) -> Option<Told<'a>> {
    let (whole, installed) = answered.whole.as_ref().ok()?;
    Some(Told {
        project,
        run_index: answered.run_index,
        run: &answered.run,
        names: &answered.names,
        installation: &installed.installation,
        outcome: &answered.outcome.value,
        whole,
        resting: &answered.ranked,
    })
}

/// The card of a run; none where the run has no answer, which it says itself.
fn card(
    args: &SiteSheet,
    project: &Project,
    run: &Evaluated,
    make: &impl Fn(&Told<'_>, &CardOptions<'_>) -> Made,
) -> Result<Option<SiteCard>, DocumentError> {
    if let Some(error) = run.error() {
        return Err(error.clone());
    }
    let Ok(answered) = &run.result else {
        return Ok(None);
    };
    let Some(told) = told(project, answered) else {
        return Ok(None);
    };
    let options = CardOptions {
        style: args.units.style(),
        paper: paper(args.paper),
        page: args.page.as_deref(),
        date: args.date.as_deref().unwrap_or_default(),
        revision: args.revision.as_deref().unwrap_or_default(),
    };
    make(&told, &options).map(Some)
}
