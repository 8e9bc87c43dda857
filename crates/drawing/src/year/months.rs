//! The months as a table.

use dewrun_quantity::format::{self, DOES_NOT_APPLY};
use dewrun_quantity::{MassFlow, measure::WATER};

use super::opened::opens;
use super::sentence::litres;
use super::stamp::{month_of, short};
use super::totals::Totals;
use super::{Standing, TRAP, Year};
use crate::html::element;

/// A row: its name as HTML that opens its figure, and what it says of some hours, of which month and how many emptyings lie in them.
type Row = (String, Told);
type Told = Box<dyn Fn(&Totals, Option<u8>) -> String>;

/// Months across and figures down on a wide page; on a narrow one months down, in a region that scrolls.
#[must_use]
pub fn months(year: &Year, is_narrow: bool) -> String {
    let mut of_months = [Totals::default(); 12];
    for step in &year.steps {
        let place = usize::from(month_of(step.start_s)).wrapping_sub(1);
        if let Some(month) = of_months.get_mut(place) {
            month.add(step);
        }
    }
    let all = Totals::of(year.steps.iter());
    let rows = rows(year);
    let numbered = || (1_u8..).zip(&of_months);
    let cell = |row: &Row, totals: &Totals, month| {
        let text = if 0.0 < totals.hours {
            row.1(totals, month)
        } else {
            DOES_NOT_APPLY.to_owned()
        };
        element("td", " class=\"dw-number\"", &text)
    };
    let head = |words: &str| format!("<th scope=\"col\" class=\"dw-number\">{words}</th>");
    let (heads, lines): (String, Vec<String>) = if is_narrow {
        let heads = rows.iter().map(|row| head(&row.0)).collect();
        let line = |name: &str, totals: &Totals, month| {
            let cells: String = rows.iter().map(|row| cell(row, totals, month)).collect();
            element("th", " scope=\"row\"", name) + &cells
        };
        let mut lines: Vec<String> = numbered()
            .map(|(number, totals)| line(short(number, 3), totals, Some(number)))
            .collect();
        lines.push(line("All", &all, None));
        (heads, lines)
    } else {
        let mut heads: String = numbered()
            .map(|(number, _)| head(short(number, 3)))
            .collect();
        heads.push_str(&head("All"));
        let line = |row: &Row| {
            let cells: String = numbered()
                .map(|(number, totals)| cell(row, totals, Some(number)))
                .collect();
            format!("<th scope=\"row\">{}</th>", row.0) + &cells + &cell(row, &all, None)
        };
        (heads, rows.iter().map(line).collect())
    };
    let way = if is_narrow {
        " dw-year__months--down"
    } else {
        ""
    };
    let lines: String = lines
        .iter()
        .map(|line| format!("<tr>{line}</tr>"))
        .collect();
    format!(
        "<table class=\"dw-table dw-year__months{way}\"><caption class=\"dw-spoken\">The months</caption><thead><tr><td></td>{heads}</tr></thead><tbody>{lines}</tbody></table>"
    )
}

fn rows(year: &Year) -> Vec<Row> {
    let mark = year.style.mark;
    let hours = move |value: f64| format::fixed(value, 0, mark);
    let mut rows: Vec<Row> = Vec::new();
    let mut row = |name: &str, figure: &str, of: Told| {
        rows.push((opens(figure, name), of));
    };
    row(
        "Wet hours",
        "year-wet-hours",
        Box::new(move |sum, _| hours(sum.wet_h)),
    );
    let only_style = Year {
        style: year.style,
        ..Year::default()
    };
    row(
        "Water formed, L",
        "year-water",
        Box::new(move |sum, _| litres(&only_style, sum.formed_g)),
    );
    let style = year.style;
    let unit = WATER.show(MassFlow::default(), style).unit;
    row(
        &format!("Most in an hour, {unit}"),
        "year-design",
        Box::new(move |sum, _| {
            WATER
                .show(MassFlow::grams_per_hour(sum.most_g_h), style)
                .number
        }),
    );
    row(
        "Mist at the sensor, h",
        "year-mist",
        Box::new(move |sum, _| hours(sum.mist_h)),
    );
    row(
        "Ice on a wall, h",
        "year-frost",
        Box::new(move |sum, _| hours(sum.frost_h)),
    );
    if let Some(rating) = year.rating_percent {
        let rating = format::significant(rating, 3, 0, mark);
        let name = format!("Chamber over {rating}\u{a0}%, h");
        row(
            &name,
            "year-chamber",
            Box::new(move |sum, _| hours(sum.over_h)),
        );
    }
    // Nobody empties a low point.
    let is_emptied = |one: &&Standing| one.what == TRAP || !one.emptied.is_empty();
    for standing in year.standing.iter().filter(is_emptied) {
        let months: Vec<u8> = standing
            .emptied
            .iter()
            .filter_map(|at| year.steps.get(*at))
            .map(|step| month_of(step.start_s))
            .collect();
        let name = format!("Emptied, times: {}", standing.name(year.style));
        row(
            &name,
            "year-standing",
            Box::new(move |_, month| {
                let times = months
                    .iter()
                    .filter(|own| month.is_none_or(|month| month == **own));
                hours(super::axis::count(times.count()))
            }),
        );
    }
    if year.follows_water {
        row(
            "Low point closed, h",
            "year-troubles",
            Box::new(move |sum, _| hours(sum.closed_h)),
        );
        row(
            "Blind hours",
            "year-troubles",
            Box::new(move |sum, _| hours(sum.blind_h)),
        );
    }
    if year.flow.as_ref().is_some_and(|flow| flow.limits.is_some()) {
        row(
            "Airflow beyond a limit, h",
            "year-troubles",
            Box::new(move |sum, _| hours(sum.beyond_h)),
        );
    }
    rows
}
