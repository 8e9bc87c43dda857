//! The calculation sheet: inputs, relations and results of a run, so that another engineer can check it.

mod airflow;
mod doubt;
mod drawn;
mod flow;
mod further;
mod inputs;
mod lead;
mod legs;
mod number;
mod proof;
mod relations;
mod remedies;
mod results;
mod table;
mod water;
mod year;

use dewrun_advice::{BoundaryPoint, Remedy, StayingDry, SteadyDoubt};
use dewrun_document::output::NoteOutput;
use dewrun_drawing::{Answer, Rests, escaped};
use dewrun_quantity::Style;
use dewrun_run::Tube;
use dewrun_run::figure::Given;

use crate::markup::element;
use crate::paper::Paper;
use crate::standalone::standalone;
use crate::title_block::{MARK, Numbered, TitleBlock, is_example};
use crate::told::Told;
use flow::{Piece, pages};
use inputs::Inputs;
use relations::Relations;

pub use further::{Further, YearWorked, further};

/// How a calculation sheet is made.
#[derive(Debug, Clone, Copy, Default)]
pub struct CalculationOptions<'a> {
    /// Units and decimal mark.
    pub style: Style,
    /// The paper.
    pub paper: Paper,
    /// The day that stands on it, as people write it; may be empty.
    pub date: &'a str,
    /// Its revision; may be empty.
    pub revision: &'a str,
}

/// What was worked out of a run beside its answer.
#[derive(Debug, Clone, Copy)]
pub struct Worked<'a> {
    /// The run with its answer.
    pub told: Told<'a>,
    /// The answer in words.
    pub answer: &'a Answer,
    /// What it rests on, in words.
    pub rests: &'a Rests,
    /// Every input, how the run is installed included.
    pub givens: &'a [Given],
    /// What has to be said beside the steady answer.
    pub notes: &'a [NoteOutput],
    /// How sure the steady answer is, where that is known.
    pub doubt: Option<&'a SteadyDoubt>,
    /// What the run would still take dry, where that is known.
    pub staying: Option<&'a StayingDry>,
    /// The dry boundary over the width of the dew square.
    pub boundary: &'a [BoundaryPoint],
    /// Remedies to be compared.
    pub remedies: &'a [Remedy],
    /// The year, where there is weather.
    pub further: &'a Further,
}

/// A calculation sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Calculation {
    /// Its pages, to stand in a page that has their style.
    pub body: String,
    /// How many pages.
    pub pages: usize,
    title: String,
    paper: Paper,
}

/// Calculation sheets as a document of its own, which needs nothing besides.
#[must_use]
pub fn calculation_document(sheets: &[Calculation]) -> String {
    let title = sheets.first().map_or("", |sheet| sheet.title.as_str());
    let paper = sheets
        .first()
        .map_or_else(Paper::default, |sheet| sheet.paper);
    let bodies: Vec<&str> = sheets.iter().map(|sheet| sheet.body.as_str()).collect();
    standalone(title, &bodies.join("\n"), paper)
}

/// The calculation sheet of a run.
#[must_use]
pub fn calculation(worked: &Worked<'_>, options: &CalculationOptions<'_>) -> Calculation {
    let pages = pages(pieces(worked, options.style), options.paper);
    let of = pages.len();
    let sheets: String = pages
        .iter()
        .enumerate()
        .map(|(at, content)| page(worked, options, content, Numbered { sheet: at + 1, of }))
        .collect();
    Calculation {
        body: element("article", "dw-card dw-calc", &sheets),
        pages: of,
        title: format!("Calculation sheet, {}", worked.told.names.run),
        paper: options.paper,
    }
}

/// All that stands on it, in order.
fn pieces(worked: &Worked<'_>, style: Style) -> Vec<Piece> {
    let inputs = Inputs::of(worked, style);
    let mut relations = Relations::default();
    let results = [
        results::pieces(worked, &mut relations, style),
        legs::pieces(worked, &mut relations, style),
        water::pieces(worked, &mut relations, style),
        airflow::pieces(worked, &mut relations, style),
        doubt::pieces(worked, &mut relations, style),
        remedies::pieces(worked, style),
    ];
    let mut pieces = vec![lead::piece(worked)];
    pieces.extend(drawn::route(worked, Tube::Intake, style));
    pieces.extend(drawn::route(worked, Tube::Exhaust, style));
    pieces.push(inputs.piece());
    pieces.extend(drawn::dew_square(worked, style));
    pieces.extend(results.into_iter().flatten());
    pieces.extend(worked.further.pieces().iter().cloned());
    pieces.push(relations.piece());
    pieces.extend(proof::pieces(worked));
    pieces
}

/// A page with head and title block.
fn page(
    worked: &Worked<'_>,
    options: &CalculationOptions<'_>,
    content: &str,
    numbered: Numbered,
) -> String {
    let told = &worked.told;
    let paper = options.paper.name();
    let name = element("h1", "", &format!("{MARK}Calculation sheet"));
    let run = format!("Water in the tubes of {}", told.names.run);
    let run = element("span", "dw-card__run", &escaped(&run));
    let example = if is_example(told) {
        element("b", "dw-card__example", "Example, not your site")
    } else {
        String::new()
    };
    let Numbered { sheet, of } = numbered;
    let place = element("span", "dw-card__tube", &format!("page {sheet} of {of}"));
    let head = element(
        "header",
        "dw-card__head",
        &format!("{name}{run}{example}{place}"),
    );
    let block = TitleBlock {
        sheet: "Calculation",
        note: &fingerprint(told),
        by: ["Calculated by, date", "Checked by, date"],
        revision: options.revision,
        date: options.date,
    };
    let block = block.html(told, numbered);
    element(
        "section",
        &format!("dw-card__sheet dw-card__sheet--{paper} dw-calc__page"),
        &format!("{head}{content}<div class=\"dw-card__fill\"></div>{block}"),
    )
}

/// By which a sheet is told from one of other inputs: the check of the project's text.
fn fingerprint(told: &Told<'_>) -> String {
    dewrun_document::fingerprint(told.project)
        .map(|print| format!("inputs {print}"))
        .unwrap_or_default()
}
