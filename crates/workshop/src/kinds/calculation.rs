//! The calculation sheet of the open run, to be shown and printed or saved as a document.

use dewrun_advice::{SteadyDoubts, dry_boundary, seed_of, staying_dry};
use dewrun_desk::style_of;
use dewrun_drawing::{Room, boundary_temperatures, rests, whole_answer};
use dewrun_run::Tube;
use dewrun_sheet::{
    Calculation, CalculationOptions, Further, Worked, calculation, calculation_document,
};

use super::doubt::CASES;
use super::site_card::{names, paper, told};
use super::visits::{fields, text};
use crate::asked::Asked;

/// Its pages, to stand in the page.
pub(super) fn body(asked: &Asked<'_>) -> Result<String, String> {
    made(asked).map(|sheet| sheet.body)
}

/// A document of its own.
pub(super) fn whole_document(asked: &Asked<'_>) -> Result<String, String> {
    made(asked).map(|sheet| calculation_document(&[sheet]))
}

fn made(asked: &Asked<'_>) -> Result<Calculation, String> {
    let (style, _) = style_of(asked.numbers);
    let names = names(asked)?;
    let told = told(asked, &names)?;
    let (run, outcome) = (told.run, told.outcome);
    let answered = &asked.open.answered;
    let mut doubts = SteadyDoubts::new(run, &answered.givens, seed_of(&names.run));
    doubts.take(CASES);
    let doubt = doubts.so_far();
    let mut answer = whole_answer(run, outcome, told.whole, style);
    if let Some(doubt) = &doubt {
        answer = answer.with_doubt(outcome, doubt, style);
    }
    let at = boundary_temperatures(&answered.view(Tube::Intake, style), &[], Room::PAPER);
    let staying = staying_dry(run, outcome).ok();
    let fields = fields(asked.words);
    let worked = Worked {
        told,
        answer: &answer,
        rests: &rests(run, &names.spaces, asked.open.ranked(), style),
        givens: asked.open.givens(),
        notes: &answered.notes,
        doubt: doubt.as_ref(),
        staying: staying.as_ref(),
        boundary: &dry_boundary(run, outcome, &at).unwrap_or_default(),
        remedies: asked.open.remedies(),
        further: &Further::of_text(text(&fields, "year")),
    };
    let options = CalculationOptions {
        style,
        paper: paper(&fields),
        date: text(&fields, "date"),
        revision: text(&fields, "revision"),
    };
    Ok(calculation(&worked, &options))
}
