//! The site card of the open run, to be shown and printed or saved as a document.

use dewrun_desk::style_of;
use dewrun_document::{DocumentError, Names, to_run};
use dewrun_sheet::{
    CardOptions, CauseTold, Paper, SiteCard, Told, document, service_card, site_card,
};

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

/// The sheets of the service card, to stand in the page.
pub(super) fn service_body(asked: &Asked<'_>) -> Result<String, String> {
    service(asked).map(|card| card.body)
}

/// The same as a document of its own.
pub(super) fn service_document(asked: &Asked<'_>) -> Result<String, String> {
    service(asked).map(|card| document(&[card]))
}

fn made(asked: &Asked<'_>) -> Result<SiteCard, String> {
    with_options(asked, site_card)
}

fn service(asked: &Asked<'_>) -> Result<SiteCard, String> {
    let cause = CauseTold::of_text(text(&fields(asked.words), "cause"));
    with_options(asked, |card, options| service_card(card, &cause, options))
}

fn with_options(
    asked: &Asked<'_>,
    make: impl Fn(&Told<'_>, &CardOptions<'_>) -> Result<SiteCard, DocumentError>,
) -> Result<SiteCard, String> {
    let (style, _) = style_of(asked.numbers);
    let names = names(asked)?;
    let card = told(asked, &names)?;
    let fields = fields(asked.words);
    let page = text(&fields, "page");
    let options = CardOptions {
        style,
        paper: paper(&fields),
        page: (!page.is_empty()).then_some(page),
        date: text(&fields, "date"),
        revision: text(&fields, "revision"),
    };
    make(&card, &options).map_err(|error| error.sentence())
}

/// The paper that a form names.
pub(super) fn paper(fields: &[(&str, &str)]) -> Paper {
    if text(fields, "paper") == Paper::Letter.name() {
        Paper::Letter
    } else {
        Paper::A4
    }
}

/// What the parts of the open run are called.
pub(super) fn names(asked: &Asked<'_>) -> Result<Names, String> {
    let open = &asked.open.answered.project;
    let found = to_run(&open.project, open.run).map_err(|error| error.sentence());
    found.map(|(_, names)| names)
}

/// What a sheet of the open run is made of.
pub(super) fn told<'a>(asked: &'a Asked<'_>, names: &'a Names) -> Result<Told<'a>, String> {
    let answered = &asked.open.answered;
    let open = &answered.project;
    let whole = whole(asked)?;
    let installed = asked.open.installed().map_err(DocumentError::sentence)?;
    Ok(Told {
        project: &open.project,
        run_index: open.run,
        run: &answered.run,
        names,
        installation: &installed.installation,
        outcome: &answered.outcome,
        whole,
        resting: asked.open.ranked(),
    })
}
