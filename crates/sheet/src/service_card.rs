//! The service card: what whoever comes to a trouble holds in hand, after its cause and before the next.

mod cause;
mod history;
mod intervals;
mod order;

use dewrun_document::DocumentError;
use dewrun_quantity::Style;
use dewrun_run::Tube;

use crate::markup::{element, heading, to_tick};
use crate::printed_code::printed_code;
use crate::site_card::{
    CardOptions, SiteCard, as_card, blind, card_sheet, drawing, foot, measured, traps,
};
use crate::title_block::Numbered;
use crate::told::Told;

pub use cause::CauseTold;

/// What this card is called, and who signs it.
pub(crate) const SERVICE: foot::Kind = foot::Kind {
    name: "Service card",
    by: ["Serviced by, date", "Checked by, date"],
};
/// Rows of the history on the first sheet; more of them stand on sheets of their own.
const VISITS_ON_FIRST: usize = 4;
const VISITS_ON_FURTHER: usize = 34;

/// The service card of a run: the cause as far as it is told, what cures it, intervals and limits, baseline readings, the order of checks, access, cautions, the history of visits and the printed code.
///
/// # Errors
/// [`DocumentError`] where the project leaves one of its limits.
pub fn service_card(
    told: &Told<'_>,
    cause: &CauseTold,
    options: &CardOptions<'_>,
) -> Result<SiteCard, DocumentError> {
    let style = options.style;
    let code = printed_code(told.project, told.run_index, options.page)?;
    let rows = history::rows(told, style);
    let on_first = rows.len().min(VISITS_ON_FIRST);
    let (first, rest) = rows.split_at(on_first);
    let further: Vec<&[String]> = rest.chunks(VISITS_ON_FURTHER).collect();
    let of = 2 + further.len();
    let mut sheets =
        vec![
        [
            blind(told, style),
            cause::block(cause),
            drawing(told, Tube::Intake, style).0,
            halves(
                ("Trap and drain", &traps::items(told, style)),
                ("Intervals and limits", &intervals::items(told, style)),
            ),
            heading("History of visits", "the last first"),
            history::table(first, style),
            fill(),
            foot::title_block(told, options, &SERVICE, Numbered { sheet: 1, of }),
        ]
        .concat(),
        [
            halves(
                ("Order of checks", &order::items(told, cause)),
                ("Access", &order::access(told, style)),
            ),
            heading(
                "Measure and write down",
                "baseline, with the span of fan speed and season that a good installation gives",
            ),
            measured::table(&measured::rows(told, style)),
            foot::first(told, options, &SERVICE, code.as_ref(), Numbered { sheet: 2, of }),
        ]
        .concat(),
    ];
    for (place, rows) in further.iter().enumerate() {
        let numbered = Numbered {
            sheet: place + 3,
            of,
        };
        sheets.push(
            [
                heading("History of visits", "continued"),
                history::table(rows, style),
                fill(),
                foot::title_block(told, options, &SERVICE, numbered),
            ]
            .concat(),
        );
    }
    let body: String = sheets
        .iter()
        .map(|content| card_sheet(told, options, &SERVICE, content))
        .collect();
    Ok(as_card(&body, of, code, (told, options, &SERVICE)))
}

fn fill() -> String {
    element("div", "dw-card__fill", "")
}

/// Two lists beside each other.
fn halves(one: (&str, &[String]), other: (&str, &[String])) -> String {
    let list = |(name, items): (&str, &[String])| {
        let list = format!("{}{}", heading(name, ""), to_tick(items));
        element("div", "", &list)
    };
    element("div", "dw-card__halves", &[list(one), list(other)].concat())
}

/// A number with its digits.
pub(crate) fn whole(value: f64, style: Style) -> String {
    dewrun_quantity::format::fixed(value, 0, style.mark)
}
