//! What a person can say about troubles: the six answers, how a log is read, what was seen.

use dewrun_desk::{OpenProject, Question};
use dewrun_document::{Kept, LogReading, TroublesKept, TroublesSaid};
use dewrun_drawing::escaped;
use dewrun_quantity::format::entered;
use dewrun_troubles::{EventKind, ListRead};
use dewrun_weather::MONTH_NAMES;

use super::edit::ORDERS;

const WEEKDAYS: [&str; 7] = [
    "Monday",
    "Tuesday",
    "Wednesday",
    "Thursday",
    "Friday",
    "Saturday",
    "Sunday",
];
const WHICH: [&str; 5] = ["first", "second", "third", "fourth", "last"];
/// What stands where nothing was said of daylight saving yet: month, which, day of the week, hour, for the start and the end.
const USUAL_CHANGES: [[usize; 4]; 2] = [[2, 4, 6, 2], [9, 4, 6, 3]];

/// The six questions: four to be tapped, two that the route answers.
pub(super) fn answers(project: &OpenProject) -> String {
    let mut html = String::new();
    for (number, question) in Question::TROUBLE.into_iter().enumerate() {
        let name = question.name();
        let answers = match question {
            Question::TroubleAir => as_drawn(project.open_run().map(|run| run.duct.name.as_str())),
            Question::Where => {
                let spaces: Vec<&str> =
                    project.spaces.iter().map(|one| one.name.as_str()).collect();
                as_drawn(Some(spaces.join(", ").as_str()))
            }
            _ => tapped(project, question, number),
        };
        html.push_str(&format!(
            "<div class=\"dw-question\" role=\"group\" aria-label=\"{name}\"><p class=\"dw-question__name\" aria-hidden=\"true\">{name}</p>{answers}</div>"
        ));
    }
    html
}

fn tapped(project: &OpenProject, question: Question, number: usize) -> String {
    let chosen = question.chosen(project);
    let words = question.words().iter().enumerate();
    let answers: String = words
        .map(|(place, word)| {
            format!(
                "<button type=\"button\" class=\"dw-question__answer\" data-question=\"{number}\" data-place=\"{place}\" aria-pressed=\"{}\">{word}</button>",
                chosen >> place & 1 == 1
            )
        })
        .collect();
    format!("<div class=\"dw-question__answers\">{answers}</div>")
}

fn as_drawn(words: Option<&str>) -> String {
    let words = words.filter(|words| !words.trim().is_empty());
    format!(
        "<p class=\"dw-question__answers\">as drawn{}</p>",
        words.map_or_else(String::new, |words| format!(": {}", escaped(words)))
    )
}

/// How a log was read, in sentences.
pub(super) fn read_as(list: Option<&ListRead>, told: &[String]) -> String {
    if list.is_none() {
        return String::new();
    }
    told.iter()
        .map(|one| format!("<p>{}</p>", escaped(one)))
        .collect()
}

/// The form by which that is put right.
pub(super) fn correct(list: Option<&ListRead>, project: &OpenProject) -> String {
    let Some(list) = list else {
        return String::new();
    };
    let kept = project.open_run().and_then(|run| run.troubles.as_ref());
    let kept = kept.and_then(|kept: &Kept<TroublesKept>| kept.get().ok());
    let said = kept.and_then(|kept| kept.log?.reading).unwrap_or_default();
    let column = |said: Option<f64>, found: Option<usize>, name: &str, label: &str| {
        let looked = found.map_or_else(
            || "found by looking".to_owned(),
            |column| format!("found by looking: {}", column + 1),
        );
        let columns = list.columns.iter().enumerate().map(|(at, words)| {
            let value = (at + 1).to_string();
            (value.clone(), format!("{value}: {words}"))
        });
        let chosen = said.map(entered).unwrap_or_default();
        let all: Vec<(String, String)> = [(String::new(), looked)]
            .into_iter()
            .chain(columns)
            .collect();
        select(name, label, &all, &chosen)
    };
    let orders = ORDERS
        .iter()
        .map(|(word, _, name)| (word.to_string(), name.to_string()));
    let looked = (
        String::new(),
        format!("found by looking: {}", list.order.name()),
    );
    let orders: Vec<(String, String)> = [looked].into_iter().chain(orders).collect();
    let order = said.date_order.and_then(|said| {
        let found = ORDERS.iter().find(|(_, order, _)| *order == said);
        found.map(|(word, ..)| *word)
    });
    let mut fields = vec![
        column(
            said.date_column,
            Some(list.date_column),
            "date",
            "Date in column",
        ),
        select(
            "order",
            "Order of dates",
            &orders,
            order.unwrap_or_default(),
        ),
        column(
            said.kind_column,
            list.kind_column,
            "kind",
            "What it was in column",
        ),
    ];
    fields.push(format!(
        "<div class=\"dw-sheets__field\"><label for=\"tr-offset\">Clock ahead of UTC <span class=\"dw-unit\">h</span></label><input id=\"tr-offset\" name=\"offset\" type=\"text\" inputmode=\"text\" autocomplete=\"off\" placeholder=\"as the weather\" value=\"{}\"></div>",
        said.utc_offset_h.map(entered).unwrap_or_default()
    ));
    format!(
        "<div class=\"dw-sheets__fields\">{}</div>{}{}",
        fields.concat(),
        daylight(&said),
        words(list, &said)
    )
}

/// When the clock is put forward and back.
fn daylight(said: &LogReading) -> String {
    let changes = said.daylight_saving.as_ref();
    let ends = ["starts", "ends"].into_iter().zip(USUAL_CHANGES);
    let ends: String = ends
        .map(|(end, [month, which, weekday, hour])| {
            let change = changes.map(|both| {
                if end == "starts" {
                    &both.starts
                } else {
                    &both.ends
                }
            });
            let place = |found: Option<usize>, usual: usize| found.unwrap_or(usual).to_string();
            let months = change.and_then(|one| {
                let mut all = dewrun_document::MonthName::ALL.iter();
                all.position(|month| *month == one.month)
            });
            let days = change.and_then(|one| {
                let mut all = dewrun_document::Weekday::ALL.iter();
                all.position(|day| *day == one.weekday)
            });
            let name = if end == "starts" {
                "Put forward"
            } else {
                "Put back"
            };
            let numbered = |names: &[&str], from: usize| -> Vec<(String, String)> {
                let each = names.iter().enumerate();
                each.map(|(at, name)| ((at + from).to_string(), (*name).to_owned()))
                    .collect()
            };
            let which = change.map_or_else(|| (which + 1).to_string(), |one| entered(one.which));
            let hour = change.map_or_else(|| hour.to_string(), |one| entered(one.hour));
            let hours: Vec<(String, String)> = (0..24)
                .map(|hour| (hour.to_string(), format!("{hour}\u{a0}h")))
                .collect();
            let field = |what: &str| format!("{end}-{what}");
            [
                select(
                    &field("which"),
                    &format!("{name}: which"),
                    &numbered(&WHICH, 1),
                    &which,
                ),
                select(
                    &field("weekday"),
                    &format!("{name}: day"),
                    &numbered(&WEEKDAYS, 0),
                    &place(days, weekday),
                ),
                select(
                    &field("month"),
                    &format!("{name}: month"),
                    &numbered(&MONTH_NAMES, 0),
                    &place(months, month),
                ),
                select(&field("hour"), &format!("{name}: at"), &hours, &hour),
            ]
            .concat()
        })
        .collect();
    let (checked, hidden) = if changes.is_some() {
        (" checked", "")
    } else {
        ("", " hidden")
    };
    format!(
        "<p><label class=\"dw-troubles__tick\"><input type=\"checkbox\" name=\"daylight\" value=\"yes\"{checked}> The clock is put forward and back by an hour</label></p><div class=\"dw-sheets__fields\" data-troubles=\"daylight\"{hidden}>{ends}</div>"
    )
}

/// Words that are not known, each with the kinds that it may mean.
fn words(list: &ListRead, said: &LogReading) -> String {
    let known = said
        .words
        .iter()
        .map(|one| (one.words.as_str(), one.kind.as_str()));
    let unknown = list.unknown.iter().map(|words| (words.as_str(), ""));
    let mut seen: Vec<&str> = Vec::new();
    let mut fields = String::new();
    for (words, kind) in known.chain(unknown) {
        if seen.contains(&words) {
            continue;
        }
        seen.push(words);
        let kinds = EventKind::ALL
            .iter()
            .map(|kind| (kind.id().to_owned(), kind.name().to_owned()));
        let all: Vec<(String, String)> = [(String::new(), "not known: other".to_owned())]
            .into_iter()
            .chain(kinds)
            .collect();
        fields.push_str(&select(
            &format!("means {words}"),
            &format!("\u{201c}{words}\u{201d} means"),
            &all,
            kind,
        ));
    }
    if fields.is_empty() {
        return fields;
    }
    format!("<div class=\"dw-sheets__fields\">{fields}</div>")
}

fn select(name: &str, label: &str, all: &[(String, String)], chosen: &str) -> String {
    let options: String = all
        .iter()
        .map(|(value, words)| {
            let selected = if value == chosen { " selected" } else { "" };
            format!(
                "<option value=\"{value}\"{selected}>{}</option>",
                escaped(words)
            )
        })
        .collect();
    let (name, label) = (escaped(name), escaped(label));
    format!(
        "<div class=\"dw-sheets__field\"><label>{label}<select name=\"{name}\">{options}</select></label></div>"
    )
}

/// What was seen at checks, each to be taken back.
pub(super) fn seen(said: &TroublesSaid) -> String {
    let items: String = said
        .seen
        .iter()
        .enumerate()
        .map(|(at, (check, outcome))| {
            let names = check.outcome_names();
            format!(
                "<li>{} <b>{}.</b> <button type=\"button\" class=\"dw-link\" data-unseen=\"{at}\">Take it back<span class=\"dw-spoken\">: {}</span></button></li>",
                check.name(),
                names.get(*outcome).copied().unwrap_or_default(),
                check.name()
            )
        })
        .collect();
    if items.is_empty() {
        return items;
    }
    format!("<ul class=\"dw-troubles__seen\" aria-label=\"Seen at checks\">{items}</ul>")
}
