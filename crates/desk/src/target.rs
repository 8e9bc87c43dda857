//! The target as a sentence with blanks: what counts as dry enough.
//!
//! A blank goes by its place in the project, such as `target.wet_hours`; an empty one asks for nothing.

use dewrun_document::{DryEnough, DryIn};
use dewrun_drawing::escaped;
use dewrun_quantity::{Style, format, parse};

use crate::OpenProject;
use crate::entries::no;

/// The hours in which there may be no water, as chosen.
const HOURS: [(Option<DryIn>, &str, &str); 5] = [
    (Some(DryIn::Entered), "entered", "the conditions entered"),
    (Some(DryIn::Wettest04), "0.4", "the 0.4\u{a0}% design hour"),
    (Some(DryIn::Wettest1), "1", "the 1\u{a0}% design hour"),
    (Some(DryIn::Wettest2), "2", "the 2\u{a0}% design hour"),
    (None, "", "no certain hour"),
];
/// Whether ice counts.
const FROST: [(bool, &str, &str); 2] = [(false, "", "frost or not"), (true, "none", "no frost")];

/// A number of the target: its field, what stands before and after it, and what it is called.
struct Blank {
    field: &'static str,
    before: &'static str,
    after: &'static str,
    label: &'static str,
    of: fn(&mut DryEnough) -> &mut Option<f64>,
}

/// In the order of the sentence.
const BLANKS: [Blank; 5] = [
    Blank {
        field: "wet_hours",
        before: ", at most ",
        after: " wet hours",
        label: "Wet hours at most",
        of: |target| &mut target.wet_hours,
    },
    Blank {
        field: "formed_l",
        before: ", ",
        after: "\u{a0}L of water",
        label: "Water at most, litres",
        of: |target| &mut target.formed_l,
    },
    Blank {
        field: "blind_hours",
        before: " and ",
        after: " blind hours a year",
        label: "Blind hours at most",
        of: |target| &mut target.blind_hours,
    },
    Blank {
        field: "chamber_margin_percent",
        before: ", the chamber ",
        after: "\u{a0}% below its rating",
        label: "Chamber below its rating by, percent",
        of: |target| &mut target.chamber_margin_percent,
    },
    Blank {
        field: "trap_days",
        before: ", and traps emptied not more often than every ",
        after: " days.",
        label: "Days between emptyings at least",
        of: |target| &mut target.trap_days,
    },
];

/// The sentence; a fault of what is kept, where something else stands there.
#[must_use]
pub fn target_html(project: &OpenProject, style: Style) -> String {
    let mut target = match DryEnough::of(&project.project) {
        Ok(target) => target,
        Err(error) => return format!("<p class=\"dw-fault\">{}.</p>", escaped(&error.to_string())),
    };
    let hours = HOURS.map(|(hour, word, words)| (hour == target.dry_in, word, words));
    let frost = FROST.map(|(is, word, words)| (is == target.no_frost, word, words));
    let mut html = format!(
        "Dry enough means: no water in {}",
        choice("dry_in", "No water in", &hours)
    );
    let mut faults = fault("dry_in") + &fault("no_frost");
    for blank in &BLANKS {
        if blank.field == "trap_days" {
            html.push_str(", ");
            html.push_str(&choice("no_frost", "Frost", &frost));
        }
        let shown = (blank.of)(&mut target).map(|value| format::entered_with(value, style.mark));
        html.push_str(&format!(
            "{}<span class=\"dw-cures__blank\"><input id=\"target-{field}\" inputmode=\"decimal\" autocomplete=\"off\" size=\"4\" data-entry=\"target.{field}\" aria-label=\"{}\" aria-describedby=\"target-{field}-fault\" value=\"{}\">{}</span>",
            blank.before,
            blank.label,
            shown.unwrap_or_default(),
            blank.after,
            field = blank.field,
        ));
        faults.push_str(&fault(blank.field));
    }
    format!("<p class=\"dw-cures__target\">{html}</p>{faults}")
}

/// Takes a text into a blank of the target.
///
/// # Errors
/// What is wrong with it and what would be right, as a sentence.
pub fn enter_target(project: &mut OpenProject, name: &str, text: &str) -> Result<(), String> {
    let told = |error: dewrun_document::DocumentError| format!("{error}.");
    let mut target = DryEnough::of(&project.project).map_err(told)?;
    let (text, field) = (text.trim(), name.strip_prefix("target.").unwrap_or(name));
    match field {
        "dry_in" => {
            let found = HOURS.iter().find(|(_, word, _)| *word == text);
            target.dry_in = found.and_then(|(hour, ..)| *hour);
        }
        "no_frost" => target.no_frost = !text.is_empty(),
        field => {
            let blank = BLANKS.iter().find(|blank| blank.field == field);
            let blank = blank.ok_or("this is no part of a target.")?;
            *(blank.of)(&mut target) = if text.is_empty() {
                None
            } else {
                Some(parse::number(text).map_err(|error| no(text, &error))?)
            };
        }
    }
    target.put(&mut project.project).map_err(told)
}

fn choice(field: &str, label: &str, options: &[(bool, &str, &str)]) -> String {
    let option = |(is_chosen, word, words): &(bool, &str, &str)| {
        let selected = if *is_chosen { " selected" } else { "" };
        format!("<option value=\"{word}\"{selected}>{words}</option>")
    };
    let options: String = options.iter().map(option).collect();
    format!(
        "<select id=\"target-{field}\" data-entry=\"target.{field}\" aria-label=\"{label}\" aria-describedby=\"target-{field}-fault\">{options}</select>"
    )
}

fn fault(field: &str) -> String {
    format!("<p class=\"dw-fault\" id=\"target-{field}-fault\"></p>")
}

#[cfg(test)]
mod tests {
    use super::*;

    const DEMO: &str = include_str!(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../demo/make-up-air.json"
    ));

    fn project() -> OpenProject {
        dewrun_document::read(DEMO)
            .expect("the example opens")
            .into()
    }

    #[test]
    fn blanks_are_taken_and_told_back() {
        let mut project = project();
        for (name, text) in [
            ("target.dry_in", "1"),
            ("target.no_frost", "none"),
            ("target.wet_hours", "70"),
            ("target.formed_l", "2,5"),
            ("target.blind_hours", ""),
        ] {
            assert_eq!(enter_target(&mut project, name, text), Ok(()), "{name}");
        }
        let said = DryEnough::of(&project.project).expect("a target");
        let expected = DryEnough {
            dry_in: Some(DryIn::Wettest1),
            wet_hours: Some(70.0),
            formed_l: Some(2.5),
            no_frost: true,
            ..DryEnough::default()
        };
        assert_eq!(said, expected, "and nothing else is asked for");
        let html = target_html(&project, Style::default());
        for told in [
            "value=\"1\" selected",
            "value=\"none\" selected",
            "value=\"70\"",
            "value=\"2.5\"",
        ] {
            assert!(html.contains(told), "{told}: {html}");
        }
        let back = [
            ("target.dry_in", "entered"),
            ("target.no_frost", ""),
            ("target.wet_hours", ""),
            ("target.formed_l", ""),
            ("target.blind_hours", "0"),
        ];
        for (name, text) in back {
            assert_eq!(enter_target(&mut project, name, text), Ok(()), "{name}");
        }
        assert_eq!(project.project.target, None, "what is usual needs no words");
    }

    #[test]
    fn what_is_wrong_is_told_and_changes_nothing() {
        for (name, text, word) in [
            ("target.wet_hours", "many", "not a number"),
            ("target.wet_hours", "9999", "must be from 0"),
            ("target.trap_days", "-1", "0"),
            ("target.tea", "1", "no part"),
        ] {
            let mut project = project();
            let sentence = enter_target(&mut project, name, text).expect_err(text);
            assert!(sentence.contains(word), "{name} as {text}: {sentence}");
            assert_eq!(project.project.target, None, "{name}");
        }
    }
}
