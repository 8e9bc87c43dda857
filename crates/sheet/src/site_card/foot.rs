//! The foot of a card: room for remarks, the cautions, the printed code, the title block.

use dewrun_drawing::html::CAUTIONS;

use super::CardOptions;
use crate::markup::{element, heading};
use crate::printed_code::{PrintedCode, QUIET_MODULES};
use crate::title_block::{Numbered, TitleBlock, is_example};
use crate::told::Told;

/// A kind of card.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Kind {
    /// What it is called.
    pub(crate) name: &'static str,
    /// Who signs it.
    pub(crate) by: [&'static str; 2],
}

/// The foot of the first sheet.
pub(crate) fn first(
    told: &Told<'_>,
    options: &CardOptions<'_>,
    kind: &Kind,
    code: Option<&PrintedCode>,
    numbered: Numbered,
) -> String {
    let remarks = format!(
        "{}<div class=\"dw-card__lines\"></div>",
        heading("Remarks", "")
    );
    let cautions = element("div", "dw-card__cautions", CAUTIONS);
    let remarks = element("div", "dw-card__remarks", &remarks);
    let title = title_block(told, options, kind, numbered);
    let left = element(
        "div",
        "dw-card__left",
        &format!("{remarks}{cautions}{title}"),
    );
    let code = element("div", "dw-card__code", &code_of(code, options));
    element("div", "dw-card__lower", &format!("{left}{code}"))
}

/// The code with what it does, or why there is none.
fn code_of(code: Option<&PrintedCode>, options: &CardOptions<'_>) -> String {
    let Some(code) = code else {
        return element(
            "p",
            "",
            "No code: even without names and origins this run is too long for one. Carry its file.",
        );
    };
    let side = code.modules + 2 * QUIET_MODULES;
    let side_mm = code.module_mm() * f64::from(u32::try_from(side).unwrap_or(u32::MAX));
    let svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"Printed code that opens this project\" width=\"{mm}mm\" height=\"{mm}mm\" viewBox=\"0 0 {side} {side}\" shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h{side}v{side}h-{side}z\"/><path fill=\"#000\" d=\"{}\"/></svg>",
        code.path,
        mm = dewrun_quantity::format::machine(side_mm, 3),
    );
    let opens = match options.page {
        Some(_) => "<b>Opens this run</b>, offline where Dewrun was opened before.",
        None => "<b>Carries this run</b>: scan it, or paste what it says, inside an opened Dewrun.",
    };
    let without = if code.left_out.is_empty() {
        String::new()
    } else {
        let words: Vec<&str> = code.left_out.iter().map(|one| one.words()).collect();
        format!(" Left out: {}.", words.join(", "))
    };
    format!("{svg}{}", element("p", "", &format!("{opens}{without}")))
}

/// The title block of a card.
pub(crate) fn title_block(
    told: &Told<'_>,
    options: &CardOptions<'_>,
    kind: &Kind,
    numbered: Numbered,
) -> String {
    let block = TitleBlock {
        sheet: kind.name,
        note: if is_example(told) {
            "Example, not your site"
        } else {
            "do not scale off"
        },
        by: kind.by,
        revision: options.revision,
        date: options.date,
    };
    block.html(told, numbered)
}
