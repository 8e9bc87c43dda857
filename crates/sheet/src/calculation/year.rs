//! The year on the sheet: its sentence, its calendar, what its hours come to, its months, and how sure it is.

mod ensemble;
mod remedies;

use dewrun_document::output::{YearOutput, YearSumOutput, YearWaterOutput};
use dewrun_drawing::year::{Map, calendar_scene};
use dewrun_drawing::{Room, escaped};
use dewrun_quantity::Style;
use dewrun_run::figure::Kind;
use dewrun_season::figure::{YEAR_FIGURES, YearFigure};
use dewrun_season::told::MONTH_NAMES;

use super::drawn::figure;
use super::flow::Piece;
use super::further::YearWorked;
use super::number::number;
use super::proof::paragraphs;
use super::table::{Column, HEADING, Table};
use crate::markup::heading;
use crate::text_lines::PX_MM;

/// The year's part of a sheet.
pub(super) fn pieces(worked: &YearWorked<'_>, style: Style) -> Vec<Piece> {
    let output = worked.output;
    let mut relations = YearRelations::default();
    let mut pieces = vec![paragraphs("Year", &weather(output), &words(output))];
    if let Some(drawn) = worked.drawn {
        let mut scene = calendar_scene(drawn, Room::PAPER, Map::Water);
        scene.prefix = "calc-year";
        let height = HEADING + scene.height * PX_MM;
        let html = format!(
            "{}{}",
            heading(
                "Wet calendar",
                "days across, hours down; darker: more water forms"
            ),
            figure(&scene)
        );
        pieces.push(Piece::Figure(html, height));
    }
    if let Some(whole) = &output.whole {
        pieces.push(Piece::Table(sums(whole, &mut relations, style)));
        pieces.push(Piece::Table(months(whole, style)));
        pieces.push(Piece::Table(design_hours(whole, &mut relations, style)));
        if let Some(water) = &whole.water {
            pieces.push(Piece::Table(stores(water, &mut relations, style)));
        }
    }
    pieces.push(Piece::Table(design_states(output, &mut relations, style)));
    if let Some(told) = worked.remedies {
        pieces.extend(remedies::pieces(told, &mut relations, style));
    }
    if let Some(doubt) = worked.doubt {
        pieces.extend(ensemble::pieces(doubt));
    }
    pieces.push(Piece::Table(relations.table()));
    pieces.retain(|piece| !matches!(piece, Piece::Table(table) if table.is_empty()));
    pieces
}

/// The weather file in words.
fn weather(output: &YearOutput) -> String {
    match (&output.weather, &output.missing_file) {
        (Some(weather), _) => {
            let file = &weather.file;
            let place = if weather.place.is_empty() {
                String::new()
            } else {
                format!(", {}", weather.place)
            };
            let sha = weather.sha256.get(..12).unwrap_or_default();
            format!("{file}{place}; SHA-256 {sha}…")
        }
        (None, Some(missing)) => format!("{missing} is missing"),
        (None, None) => String::new(),
    }
}

fn words(output: &YearOutput) -> Vec<String> {
    let mut told = vec![format!("<b>{}</b>", escaped(&output.sentence))];
    told.extend(output.notes.iter().map(|note| escaped(note)));
    told.extend(output.taken_for_granted.iter().map(|note| escaped(note)));
    told
}

/// What all hours come to.
fn sums(whole: &YearSumOutput, relations: &mut YearRelations, style: Style) -> Table {
    let mut table = Table::new(
        "What the hours of the year come to",
        "",
        vec![
            Column::words("Quantity", 96.0),
            Column::number("Value", 28.0),
            Column::words("", 28.0),
            Column::number("Relation of the year", 22.0),
        ],
    );
    let mut row = |name: &str, kind: Kind, value: Option<f64>, id: &str| {
        if value.is_none() {
            return;
        }
        table.row(&[
            name.to_owned(),
            format!("<b>{}</b>", number(kind, value, style)),
            kind.unit(style).to_owned(),
            relations.cell(id),
        ]);
    };
    let w = whole;
    row("Hours", Kind::Hours, Some(w.hours.0), "year-hours");
    row(
        "Wet hours",
        Kind::Hours,
        Some(w.wet_hours.0),
        "year-wet-hours",
    );
    row(
        "Hours with mist at the sensor",
        Kind::Hours,
        Some(w.mist_hours.0),
        "year-mist",
    );
    row(
        "Hours with ice on a wall",
        Kind::Hours,
        Some(w.frost_hours.0),
        "year-frost",
    );
    row(
        "Hours that are dry by bound",
        Kind::Hours,
        Some(w.by_bound_hours.0),
        "year-hours",
    );
    row(
        "Hours above the humidity rating",
        Kind::Hours,
        w.hours_above_rating.map(|one| one.0),
        "year-chamber",
    );
    row(
        "Most humid chamber",
        Kind::Percent,
        Some(w.most_humid_chamber_percent.0),
        "year-chamber",
    );
    row(
        "Coldest wall",
        Kind::Temperature,
        w.coldest_wall_c.map(|one| one.0),
        "year-coldest-wall",
    );
    row(
        "Water formed in the tubes",
        Kind::Mass,
        Some(w.condensed_g.0),
        "year-water",
    );
    row(
        "Dried off the walls",
        Kind::Mass,
        Some(w.evaporated_g.0),
        "year-dried",
    );
    row(
        "Ran off the walls",
        Kind::Mass,
        Some(w.drained_g.0),
        "year-drained",
    );
    if let Some(water) = &w.water {
        row(
            "Blind hours",
            Kind::Hours,
            Some(water.blind_hours.0),
            "year-troubles",
        );
        row(
            "Hours in which a low point is sealed",
            Kind::Hours,
            Some(water.sealed_hours.0),
            "year-troubles",
        );
        row(
            "Hours in which frost or ice closes a bore",
            Kind::Hours,
            Some(water.iced_hours.0),
            "year-troubles",
        );
        row(
            "Hours under the low airflow limit",
            Kind::Hours,
            Some(water.low_flow_hours.0),
            "year-troubles",
        );
        row(
            "Hours over the high airflow limit",
            Kind::Hours,
            Some(water.high_flow_hours.0),
            "year-troubles",
        );
        row(
            "Hours in which a trap is full",
            Kind::Hours,
            Some(water.trap_full_hours.0),
            "year-troubles",
        );
        row(
            "Visits that found something to let out",
            Kind::Count,
            Some(water.emptyings.0),
            "year-troubles",
        );
        row(
            "Let out at visits",
            Kind::Mass,
            Some(water.let_out_g.0),
            "year-standing",
        );
        row(
            "Ran into the detector",
            Kind::Mass,
            Some(water.into_detector_g.0),
            "year-standing",
        );
        row(
            "Most that stood in pools and puddles",
            Kind::Mass,
            Some(water.most_standing_g.0),
            "year-standing",
        );
    }
    table
}

fn months(whole: &YearSumOutput, style: Style) -> Table {
    let head =
        |name: &str, kind: Kind| Column::number(&format!("{name}, {}", kind.unit(style)), 26.0);
    let mut table = Table::new(
        "Months",
        "",
        vec![
            Column::words("Month", 40.0),
            head("hours", Kind::Hours),
            head("wet hours", Kind::Hours),
            head("formed", Kind::Mass),
            head("dried", Kind::Mass),
            head("ran off", Kind::Mass),
        ],
    );
    for (name, month) in MONTH_NAMES.iter().zip(&whole.months) {
        let mut cells = vec![(*name).to_owned()];
        for (kind, value) in [
            (Kind::Hours, month.hours.0),
            (Kind::Hours, month.wet_hours.0),
            (Kind::Mass, month.condensed_g.0),
            (Kind::Mass, month.evaporated_g.0),
            (Kind::Mass, month.drained_g.0),
        ] {
            cells.push(number(kind, Some(value), style));
        }
        table.row(&cells);
    }
    table
}

fn design_hours(whole: &YearSumOutput, relations: &mut YearRelations, style: Style) -> Table {
    let relation = relations.cell("year-design");
    let mut table = Table::new(
        "Design hours of the route",
        &format!("relation {relation} of the year"),
        vec![
            Column::number("wetter hours, %", 30.0),
            Column::words("at, on the file's own clock", 80.0),
            Column::number(&format!("forms, {}", Kind::Water.unit(style)), 30.0),
            Column::words("", 50.0),
        ],
    );
    for one in &whole.design_hours {
        table.row(&[
            number(Kind::Percent, Some(one.exceeded_percent.0), style),
            escaped(&one.at),
            number(Kind::Water, Some(one.condensed_g_h.0), style),
            String::new(),
        ]);
    }
    table
}

fn design_states(output: &YearOutput, relations: &mut YearRelations, style: Style) -> Table {
    let mut table = Table::new(
        "Design states of the climate, steady",
        "counted from the weather file or held by the project",
        vec![
            Column::words("Ranked by", 34.0),
            Column::number("exceeded, %", 26.0),
            Column::number(
                &format!("outdoors, {}", Kind::Temperature.unit(style)),
                26.0,
            ),
            Column::number(
                &format!("dew point, {}", Kind::Temperature.unit(style)),
                26.0,
            ),
            Column::number(&format!("forms, {}", Kind::Water.unit(style)), 26.0),
            Column::number("Relation of the year", 24.0),
        ],
    );
    for state in &output.design_states {
        table.row(&[
            state.by.replace('_', " "),
            number(Kind::Percent, Some(state.exceeded_percent.0), style),
            number(Kind::Temperature, Some(state.outdoor_c.0), style),
            number(Kind::Temperature, Some(state.outdoor_dew_point_c.0), style),
            number(Kind::Water, Some(state.condensed_g_h.0), style),
            relations.cell("year-design-state"),
        ]);
    }
    table
}

fn stores(water: &YearWaterOutput, relations: &mut YearRelations, style: Style) -> Table {
    let mut table = Table::new(
        "Pools and traps through the year",
        "",
        vec![
            Column::words("What", 24.0),
            Column::words("Tube", 24.0),
            Column::number(&format!("at, {}", Kind::Place.unit(style)), 30.0),
            Column::number(&format!("holds, {}", Kind::Mass.unit(style)), 30.0),
            Column::number(
                &format!("most that stood, {}", Kind::Mass.unit(style)),
                36.0,
            ),
            Column::number("Relation of the year", 24.0),
        ],
    );
    for store in &water.stores {
        table.row(&[
            escaped(&store.kind),
            escaped(&store.tube),
            number(Kind::Place, Some(store.at_m.0), style),
            number(Kind::Mass, store.holds_g.map(|one| one.0), style),
            number(Kind::Mass, Some(store.most_g.0), style),
            relations.cell("year-standing"),
        ]);
    }
    table
}

/// The relations of the year, numbered as they are met.
#[derive(Debug, Default)]
struct YearRelations(Vec<&'static YearFigure>);

impl YearRelations {
    fn cell(&mut self, id: &str) -> String {
        let Some(figure) = YEAR_FIGURES.iter().find(|one| one.id == id) else {
            return String::new();
        };
        let at = match self.0.iter().position(|one| one.id == id) {
            Some(at) => at,
            None => {
                self.0.push(figure);
                self.0.len() - 1
            }
        };
        format!("Y{}", at + 1)
    }

    fn table(&self) -> Table {
        let mut table = Table::new(
            "Relations of the year",
            "hour by hour those of the steady answer",
            vec![
                Column::words("No.", 8.0),
                Column::words("Quantity", 32.0),
                Column::words("How it follows", 74.0),
                Column::words("Holds for", 36.0),
                Column::words("Source", 40.0),
            ],
        );
        for (at, figure) in self.0.iter().enumerate() {
            let earlier = self.0.get(..at).unwrap_or_default();
            let holds = or_as_before(figure.holds, earlier, |one| one.holds);
            let source = or_as_before(figure.source, earlier, |one| one.source);
            table.row(&[
                format!("<b>Y{}</b>", at + 1),
                escaped(figure.name),
                escaped(figure.relation),
                escaped(&holds),
                escaped(&source),
            ]);
        }
        table
    }
}

/// Words, or where they stand already.
fn or_as_before(
    words: &str,
    earlier: &[&YearFigure],
    of: impl Fn(&YearFigure) -> &'static str,
) -> String {
    const SHORT: usize = 40;
    let before = earlier.iter().position(|one| of(one) == words);
    match before.filter(|_| SHORT < words.len()) {
        Some(at) => format!("as Y{}", at + 1),
        None => words.to_owned(),
    }
}

/// A figure of a document with no more digits than it deserves.
fn shown(value: f64, style: Style) -> String {
    number(Kind::Number, Some(value), style)
}
