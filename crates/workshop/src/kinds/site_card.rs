//! The site card of the open run, to be shown and printed or saved as a document.

use dewrun_desk::style_of;
use dewrun_document::{DocumentError, to_run};
use dewrun_sheet::{CardOptions, Paper, SiteCard, Told, document, site_card};

use super::visits::{fields, text, whole};
use crate::asked::Asked;

/// Its sheets, to stand in the page.
pub(super) fn body(asked: &Asked<'_>) -> Result<String, String> {
    made(asked).map(|card| card.body)
}

/// A document of its own.
pub(super) fn whole_document(asked: &Asked<'_>) -> Result<String, String> {
    made(asked).map(|card| document(&[card]))
}

fn made(asked: &Asked<'_>) -> Result<SiteCard, String> {
    let (style, _) = style_of(asked.numbers);
    let answered = &asked.open.answered;
    let open = &answered.project;
    let told = |error: DocumentError| error.sentence();
    let whole = whole(asked)?;
    let (_, names) = to_run(&open.project, open.run).map_err(told)?;
    let installed = asked.open.installed().map_err(DocumentError::sentence)?;
    let card = Told {
        project: &open.project,
        run_index: open.run,
        run: &answered.run,
        names: &names,
        installation: &installed.installation,
        outcome: &answered.outcome,
        whole,
        resting: asked.open.ranked(),
    };
    let fields = fields(asked.words);
    let page = text(&fields, "page");
    let options = CardOptions {
        style,
        paper: if text(&fields, "paper") == Paper::Letter.name() {
            Paper::Letter
        } else {
            Paper::A4
        },
        page: (!page.is_empty()).then_some(page),
        date: text(&fields, "date"),
        revision: text(&fields, "revision"),
    };
    site_card(&card, &options).map_err(told)
}
