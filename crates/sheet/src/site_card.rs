//! The site card: what the installer holds in hand, on one sheet as a rule.

mod checks;
mod fit;
pub(crate) mod foot;
mod joints;
mod legs;
pub(crate) mod measured;
pub(crate) mod traps;

use dewrun_document::DocumentError;
use dewrun_drawing::{Emphasis, elevation_for_site, escaped, svg, whole_answer};
use dewrun_quantity::measure::BORE;
use dewrun_quantity::{Style, Units};
use dewrun_run::{Leg, Tube};

use crate::markup::{element, heading, to_tick};
use crate::paper::Paper;
use crate::printed_code::{PrintedCode, printed_code};
use crate::standalone::standalone;
use crate::title_block::{MARK, Numbered, is_example};
use crate::told::Told;
use fit::{Content, Density, fit};

/// How a card is made.
#[derive(Debug, Clone, Copy, Default)]
pub struct CardOptions<'a> {
    /// Units and decimal mark.
    pub style: Style,
    /// The paper.
    pub paper: Paper,
    /// Address of the page that the code opens; without one the code carries the project alone.
    pub page: Option<&'a str>,
    /// The day that stands on it, as people write it; may be empty.
    pub date: &'a str,
    /// Its revision; may be empty.
    pub revision: &'a str,
}

/// What this card is called, and who signs it.
const SITE: foot::Kind = foot::Kind {
    name: "Site card",
    by: ["Fitted by, date", "Checked by, date"],
};

/// A site card, or a service card.
#[derive(Debug, Clone, PartialEq)]
pub struct SiteCard {
    /// Its sheets, to stand in a page that has their style.
    pub body: String,
    /// How many sheets.
    pub sheets: usize,
    /// Its printed code; none where the run is too long for one.
    pub code: Option<PrintedCode>,
    /// What it is called.
    title: String,
    paper: Paper,
}

/// Cards as a document of its own, which needs nothing besides.
#[must_use]
pub fn document(cards: &[SiteCard]) -> String {
    let title = cards.first().map_or("", |card| card.title.as_str());
    let paper = cards.first().map_or_else(Paper::default, |card| card.paper);
    let bodies: Vec<&str> = cards.iter().map(|card| card.body.as_str()).collect();
    standalone(title, &bodies.join("\n"), paper)
}

/// The site card of a run.
///
/// # Errors
/// [`DocumentError`] where the project leaves one of its limits.
pub fn site_card(told: &Told<'_>, options: &CardOptions<'_>) -> Result<SiteCard, DocumentError> {
    let code = printed_code(told.project, told.run_index, options.page)?;
    let rows = legs::rows(told, options.style);
    let parts = Parts::of(told, options.style);
    let (density, on_first) = fit(&parts.content(rows.len()), options.paper);
    let (first, rest) = rows.split_at(on_first);
    let further: Vec<&[String]> = rest.chunks(options.paper.legs_on_further()).collect();
    let of = 1 + further.len();
    let content = first_sheet(told, options, &parts, code.as_ref(), (first, of));
    let mut body = sheet((told, options, &SITE), &content, density);
    for (place, rows) in further.iter().enumerate() {
        let numbered = Numbered {
            sheet: place + 2,
            of,
        };
        let content = further_sheet(told, options, rows, numbered);
        body.push_str(&sheet((told, options, &SITE), &content, Density::Close));
    }
    Ok(as_card(&body, of, code, (told, options, &SITE)))
}

/// A card around so many sheets.
pub(crate) fn as_card(
    sheets: &str,
    count: usize,
    code: Option<PrintedCode>,
    (told, options, kind): (&Told<'_>, &CardOptions<'_>, &foot::Kind),
) -> SiteCard {
    SiteCard {
        body: element("article", "dw-card", sheets),
        sheets: count,
        code,
        title: format!("{}, {}", kind.name, told.names.run),
        paper: options.paper,
    }
}

/// A sheet with its head, set as roomily as can be.
pub(crate) fn card_sheet(
    told: &Told<'_>,
    options: &CardOptions<'_>,
    kind: &foot::Kind,
    content: &str,
) -> String {
    sheet((told, options, kind), content, Density::Dense)
}

/// What stands on the first sheet beside legs and foot.
struct Parts {
    lead: String,
    drawing: String,
    drawing_px: f64,
    traps: Vec<String>,
    checks: Vec<String>,
    measured: Vec<String>,
    last: String,
}

impl Parts {
    fn of(told: &Told<'_>, style: Style) -> Self {
        let (drawing, drawing_px) = drawing(told, Tube::Intake, style);
        Self {
            lead: blind(told, style),
            drawing,
            drawing_px,
            traps: traps::items(told, style),
            checks: checks::items(told, style),
            measured: measured::rows(told, style),
            last: measured::last_visit(told, style).unwrap_or_default(),
        }
    }

    fn content(&self, legs: usize) -> Content<'_> {
        Content {
            lead: &self.lead,
            drawing_px: self.drawing_px,
            legs,
            lists: [&self.traps, &self.checks],
            measured: self.measured.len(),
            last: &self.last,
        }
    }
}

/// A sheet with its head.
fn sheet(
    (told, options, kind): (&Told<'_>, &CardOptions<'_>, &foot::Kind),
    content: &str,
    density: Density,
) -> String {
    let (paper, density) = (options.paper.name(), density.name());
    let class = format!("dw-card__sheet dw-card__sheet--{paper} dw-card__sheet--{density}");
    element(
        "section",
        &class,
        &format!("{}{content}", head(told, kind.name, options.style)),
    )
}

fn head(told: &Told<'_>, name: &str, style: Style) -> String {
    let name = element("h1", "", &format!("{MARK}{name}"));
    let run = element("span", "dw-card__run", &escaped(&told.names.run));
    let example = if is_example(told) {
        element("b", "dw-card__example", "Example, not your site")
    } else {
        String::new()
    };
    let tube = element("span", "dw-card__tube", &escaped(&tube_words(told, style)));
    element(
        "header",
        "dw-card__head",
        &format!("{name}{run}{example}{tube}"),
    )
}

/// What the tube is made of, where all of it is alike.
fn tube_words(told: &Told<'_>, style: Style) -> String {
    let legs: Vec<&Leg> = told.run.intake.iter().chain(&told.run.exhaust).collect();
    let Some(first) = legs.first() else {
        return String::new();
    };
    if legs.iter().any(|leg| leg.tube != first.tube) {
        return "Tubes of several bores".to_owned();
    }
    let wall = (first.tube.outside_diameter - first.tube.bore) * 0.5;
    let shown = |length| match style.units {
        Units::Si => BORE.show_entered(length, style),
        Units::InchPound => BORE.show(length, style),
    };
    let outside = shown(first.tube.outside_diameter).number;
    let (wall, bore) = (shown(wall), shown(first.tube.bore));
    let insulated = legs.iter().filter(|leg| leg.insulation.is_some()).count();
    let cover = if insulated == 0 {
        "bare"
    } else if insulated == legs.len() {
        "insulated"
    } else {
        "insulated in part"
    };
    format!("Tube {outside} × {wall}, bore {bore}, {cover}")
}

fn first_sheet(
    told: &Told<'_>,
    options: &CardOptions<'_>,
    parts: &Parts,
    code: Option<&PrintedCode>,
    (rows, of): (&[String], usize),
) -> String {
    let beside = if of == 1 {
        "water must run to the low ends named; check every leg with a level"
    } else {
        "more on the next sheet; check every leg with a level"
    };
    let list = |name: &str, items: &[String]| {
        element(
            "div",
            "",
            &format!("{}{}", heading(name, ""), to_tick(items)),
        )
    };
    let halves = [
        list("Trap and drain", &parts.traps),
        list("Before you leave", &parts.checks),
    ];
    [
        parts.lead.clone(),
        parts.drawing.clone(),
        heading("Legs", beside),
        legs::table(rows, options.style),
        element("div", "dw-card__halves", &halves.concat()),
        heading(
            "Measure and write down",
            "expected, with the span of fan speed and season that a good installation gives",
        ),
        measured::table(&parts.measured),
        parts.last.clone(),
        foot::first(told, options, &SITE, code, Numbered { sheet: 1, of }),
    ]
    .concat()
}

fn further_sheet(
    told: &Told<'_>,
    options: &CardOptions<'_>,
    rows: &[String],
    numbered: Numbered,
) -> String {
    let drawing = if numbered.sheet == 2 && !told.run.exhaust.is_empty() {
        drawing(told, Tube::Exhaust, options.style).0
    } else {
        String::new()
    };
    [
        drawing,
        heading("Legs", "continued"),
        legs::table(rows, options.style),
        "<div class=\"dw-card__fill\"></div>".to_owned(),
        foot::title_block(told, options, &SITE, numbered),
    ]
    .concat()
}

/// A detector that may not be sampling its duct comes first; then what is done first.
pub(crate) fn blind(told: &Told<'_>, style: Style) -> String {
    if told.whole.blind.is_none() {
        return String::new();
    }
    let answer = whole_answer(told.run, told.outcome, told.whole, style);
    let parts = answer.sentence.iter();
    let end = parts.clone().position(|part| part.text.starts_with(". "));
    let words: String = parts
        .take(end.unwrap_or(0))
        .map(|part| match part.emphasis {
            Emphasis::None => escaped(&part.text),
            _ => element("b", "", &escaped(&part.text)),
        })
        .collect();
    element(
        "p",
        "dw-card__blind",
        &format!("{words}, as it is drawn and entered."),
    )
}

/// The elevation of a tube with its note, and its height, px.
pub(crate) fn drawing(told: &Told<'_>, tube: Tube, style: Style) -> (String, f64) {
    let names = told.drawing_names();
    let drawn = elevation_for_site(&told.view(&names, tube, style));
    let unit = match style.units {
        Units::Si => "m",
        Units::InchPound => "ft",
    };
    let note = format!(
        "levels in {unit} from the middle of the tube where it begins; {}",
        drawn.scale_note
    );
    let note = element("figcaption", "", &escaped(&note));
    let figure = format!("{}{note}", svg(&drawn.scene));
    (
        element("figure", "dw-card__drawing", &figure),
        drawn.scene.height,
    )
}
