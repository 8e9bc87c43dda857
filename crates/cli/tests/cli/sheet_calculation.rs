//! `sheet calculation`: all that a sheet needs stands on it, and every number is that of `--json`.

use serde_json::Value;

use crate::running::dewrun;

const YEAR: &str = "demo/gull-harbour-roof.json";
const WET: [&str; 2] = ["demo/make-up-air.json", "demo/pool-hall-exhaust.json"];

#[track_caller]
fn sheet(words: &[&str]) -> String {
    let words: Vec<&str> = ["sheet", "calculation"]
        .iter()
        .chain(words)
        .copied()
        .collect();
    let said = dewrun(&words);
    assert_eq!(said.status, 20, "{words:?}: {}", said.complaint);
    said.out
}

#[track_caller]
fn json(words: &[&str]) -> Value {
    let said = dewrun(words);
    serde_json::from_str(&said.out).unwrap_or_else(|error| panic!("{words:?} is JSON: {error}"))
}

/// Every number of an answer, and every one of the objects in it.
fn numbers(of: &Value, found: &mut Vec<f64>) {
    match of {
        Value::Number(number) => found.extend(number.as_f64()),
        Value::Array(items) => items.iter().for_each(|item| numbers(item, found)),
        Value::Object(fields) => fields.values().for_each(|item| numbers(item, found)),
        Value::Null | Value::Bool(_) | Value::String(_) => {}
    }
}

/// The values of the numbers on a sheet, and what people read of each.
fn values(sheet: &str) -> Vec<(f64, String)> {
    let cells = sheet.split("<data value=\"").skip(1);
    cells
        .map(|cell| {
            let (value, rest) = cell.split_once("\">").expect("a value");
            let (read, _) = rest.split_once("</data>").expect("what is read");
            (value.parse().expect("a number"), read.to_owned())
        })
        .collect()
}

/// The words of a document without its marks and its style.
fn words(html: &str) -> String {
    let (_, body) = html.split_once("<body>").expect("a body");
    let mut in_tag = false;
    let mut words = String::new();
    for sign in body.chars() {
        match sign {
            '<' => in_tag = true,
            '>' => in_tag = false,
            _ if in_tag => {}
            _ => words.push(sign),
        }
    }
    words
}

/// What a run comes to and was given: each number of a sheet is one of these.
fn known(demo: &str, more: &[Value]) -> Vec<f64> {
    let mut known = Vec::new();
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let project = std::fs::read_to_string(root.join(demo)).expect("a demo");
    numbers(
        &serde_json::from_str(&project).expect("it is JSON"),
        &mut known,
    );
    numbers(&json(&["assess", demo, "--json"]), &mut known);
    more.iter().for_each(|answer| numbers(answer, &mut known));
    known
}

/// A sheet without its comparison of remedies, and that comparison: it is of runs that the answer does not hold.
#[track_caller]
fn without_remedies(html: &str) -> (String, String) {
    const NAMED: &str =
        "<table class=\"dw-card__table dw-calc__table\" aria-label=\"Remedies compared\">";
    let (before, rest) = html.split_once(NAMED).expect("remedies are compared");
    let (remedies, after) = rest.split_once("</table>").expect("the table ends");
    (format!("{before}{after}"), remedies.to_owned())
}

/// No number of a sheet is computed for it: each is one that `--json` or the project has.
#[track_caller]
fn all_are_known(demo: &str, sheet: &str, known: &[f64]) {
    let values = values(&without_remedies(sheet).0);
    assert!(100 < values.len(), "{demo}: a sheet full of numbers");
    for (value, read) in values {
        assert!(
            known.contains(&value),
            "{demo}: {value}, read as {read}, is a number of the answer"
        );
        let shown = read.replace('\u{2212}', "-").replace('\u{2009}', "");
        let Ok(shown) = shown.parse::<f64>() else {
            assert!(read.starts_with("under "), "{demo}: {read}");
            continue;
        };
        // As read it is that number to three digits or to its last one; kg are read as g, and s as h.
        let digits = read.split_once('.').map_or(0, |(_, digits)| digits.len());
        assert!(digits <= 6, "{demo}: {read} is too long for a column");
        let last = (0..digits).fold(0.5_f64, |last, _| 0.1 * last);
        let is_read = |factor: f64| {
            let meant = factor * value;
            (shown - meant).abs() <= (1.0 + 1e-9) * last.max(5e-3 * meant.abs())
        };
        assert!(
            [1.0, 1e3, 3.6e6].into_iter().any(is_read),
            "{demo}: {value} is read as {read}"
        );
    }
}

#[test]
fn every_number_is_that_of_the_answer() {
    for demo in WET {
        all_are_known(demo, &sheet(&[demo]), &known(demo, &[]));
    }
}

#[test]
fn remedies_are_compared_with_what_is_drawn() {
    for demo in WET {
        let (_, remedies) = without_remedies(&sheet(&[demo]));
        let steady = &json(&["assess", demo, "--json"])["runs"][0]["steady"];
        let water = |tube: &str| steady[tube]["condensate_g_h"].as_f64().expect("water");
        let (as_drawn, _) = remedies
            .split_once("</tr><tr><td>P")
            .unwrap_or((&remedies, ""));
        let (forms, _) = values(as_drawn).into_iter().next().expect("what forms");
        let expected = water("intake") + water("exhaust");
        assert!(
            (forms - expected).abs() < 1e-9,
            "{demo}: {forms} as drawn, {expected} by the answer"
        );
        assert!(remedies.contains("<td>Put a trap at"), "{demo}: {remedies}");
    }
}

#[test]
fn every_number_of_the_year_is_that_of_its_answers() {
    let answers = [
        json(&["year", YEAR, "--json"]),
        json(&["doubt", YEAR, "--members", "8", "--json"]),
        json(&["remedies", YEAR, "--json"]),
    ];
    let sheet = sheet(&[YEAR, "--doubt", "--members", "8"]);
    all_are_known(YEAR, &sheet, &known(YEAR, &answers));
    let words = words(&sheet);
    let sentence = answers[0]["runs"][0]["year"]["sentence"]
        .as_str()
        .expect("a sentence");
    assert!(
        words.contains(sentence),
        "the year's own sentence: {sentence}"
    );
    for (answer, of) in [(1, "doubt"), (2, "remedies")] {
        let told = &answers[answer]["runs"][0][of]["sentences"];
        for sentence in told.as_array().expect("sentences") {
            let sentence = sentence.as_str().expect("words");
            assert!(words.contains(sentence), "its own: {sentence}");
        }
    }
    let remedies = &answers[2]["runs"][0]["remedies"]["remedies"];
    for remedy in remedies.as_array().expect("remedies") {
        let what = remedy["what"].as_str().expect("words");
        assert!(words.contains(what), "each is compared: {what}");
    }
}

#[test]
fn all_that_another_engineer_needs_stands_on_it() {
    for demo in WET {
        let html = sheet(&[demo, "--revision", "C", "--date", "26 November"]);
        let words = words(&html);
        let answer = json(&["assess", demo, "--json"]);
        let sentence = answer["runs"][0]["steady"]["sentence"]
            .as_str()
            .expect("a sentence");
        for part in sentence.split(". ") {
            let part = part.trim_end_matches('.');
            assert!(words.contains(part), "{demo}: {part}");
        }
        for name in [
            "Inputs",
            "Intake tube",
            "Exhaust tube",
            "Results, steady",
            "Legs, steady",
            "Where water runs",
            "Airflow",
            "States and faults",
            "Doubt, steady",
            "Remedies compared",
            "Dew square",
            "Relations",
            "Grade of proof",
            "Notes",
            "Calculated by, date",
            "Checked by, date",
            "Revision",
            "C 26 November",
            "the local code and the authority having jurisdiction come first",
        ] {
            assert!(words.contains(name), "{demo}: {name}");
        }
        let pages = html.matches("class=\"dw-card__sheet").count();
        for page in 1..=pages {
            assert!(
                words.contains(&format!("page {page} of {pages}")),
                "{demo}: page {page}"
            );
        }
        let assumed = html.matches("<b>assumed</b>").count();
        assert!(10 < assumed, "{demo}: what is assumed is named as such");
        assert!(
            !html.contains("style=\""),
            "{demo}: nothing is styled but by class"
        );
        assert!(!html.contains("<script"), "{demo}: nothing runs in it");
    }
}

/// Relations are numbered from 1 on, each once, and every number that a result names is there.
#[test]
fn every_relation_that_is_named_is_listed() {
    let html = sheet(&[WET[0]]);
    let mut listed = Vec::new();
    for part in html.split("aria-label=\"Relations\"").skip(1) {
        let (table, _) = part.split_once("</table>").expect("it ends");
        for row in table
            .split("<tr><td class=\"\"><b>")
            .skip(1)
            .chain(table.split("<tr><td><b>").skip(1))
        {
            let (number, _) = row.split_once("</b>").expect("a number");
            listed.push(number.parse::<usize>().expect("a whole number"));
        }
    }
    assert!(60 < listed.len(), "{} relations", listed.len());
    let counted: Vec<usize> = (1..=listed.len()).collect();
    assert_eq!(listed, counted, "each once, in order");
    for part in words(&html).split("\u{a0}(").skip(1) {
        let (number, _) = part.split_once(')').expect("it closes");
        if let Ok(number) = number.parse::<usize>() {
            assert!(listed.contains(&number), "relation {number} is listed");
        }
    }
}
