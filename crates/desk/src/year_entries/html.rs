//! The fields of the year as mark-up, as those of the installation; a button with `data-entry` takes its value into a field.

use dewrun_document::{
    AirFrom, AirSource, AirStep, Follows, Input, Kept, Period, Setting, Space, SpaceYear, to_season,
};
use dewrun_drawing::escaped;
use dewrun_quantity::Style;

use super::{FOLLOWS, FROM, KINDS, Numbered, SPACE, STEP, counts, kind_of, times};
use crate::OpenProject;
use crate::entries::{Measured, choice, group, one, plain};

/// What an empty choice stands for.
const UNSAID: (&str, &str) = ("", "not said");

/// What is entered of the year of the open run, in groups.
#[must_use]
pub fn year_entries_html(project: &OpenProject, style: Style) -> String {
    let Some(run) = project.open_run() else {
        return String::new();
    };
    let mut said = match to_season(&project.project, project.run) {
        Ok(year) => year.said.into_iter(),
        Err(error) => return format!("<p class=\"dw-fault\">{}.</p>", escaped(&error.to_string())),
    };
    let source = run.duct.source.as_ref().and_then(|kept| kept.get().ok());
    // What is not said is told in order: first of the duct, then of each space.
    let unsaid = match &source {
        Some(_) => String::new(),
        None => said.next().unwrap_or_default(),
    };
    let off = run
        .duct
        .fan_off
        .as_ref()
        .and_then(|kept: &Kept<Vec<Period>>| kept.get().ok());
    let mut html = duct(source.as_ref(), &unsaid, style);
    html.push_str(&fan(&off.unwrap_or_default()));
    for (at, space) in project.project.spaces.iter().enumerate() {
        let year = space.year.as_ref().and_then(|kept| kept.get().ok());
        let unsaid = match &year {
            Some(_) => String::new(),
            None => said.next().unwrap_or_default(),
        };
        html.push_str(&of_space(at, space, year.as_ref(), &unsaid, style));
    }
    let path = run.air_path.as_ref();
    let interval = path.and_then(|path| path.drain_interval_days.as_ref());
    let visits = one(
        "visits.drain_interval_days",
        "A visit empties the traps every",
        (interval, "drain-interval"),
        Measured::In("days"),
        style,
    );
    html.push_str(&group("Visits", &visits));
    html
}

/// Where the air of the duct comes from, then each step of its way.
fn duct(source: Option<&AirSource>, unsaid: &str, style: Style) -> String {
    let Some(source) = source else {
        let mut fields = from(UNSAID.0, unsaid, None);
        fields.push_str(&add_steps());
        return group("Where the duct air comes from", &fields);
    };
    let chosen = FROM.iter().find(|(from, ..)| *from == source.from);
    let file = source.file.as_ref().map(|file| file.file.as_str());
    let mut fields = from(chosen.map_or("", |(_, word, _)| word), "", file);
    let mut times = String::new();
    if source.from == AirFrom::Room {
        let room = (source.temperature_c.as_ref(), source.percent.as_ref());
        fields.push_str(&air("duct.source", room, style));
        fields.push_str(&add(
            "duct.source.settings",
            "Add a time when it is otherwise",
        ));
        times = settings("duct.source", "The room", &source.settings, style);
    }
    fields.push_str(&add_steps());
    let steps = source.steps.iter().enumerate();
    let steps: String = steps.map(|(at, one)| step(at, one, style)).collect();
    group("Where the duct air comes from", &fields) + &times + &steps
}

/// What it is; as measured only where a file says what was.
fn from(chosen: &str, said: &str, file: Option<&str>) -> String {
    let mut options = vec![UNSAID];
    let offered = FROM
        .iter()
        .filter(|(from, ..)| *from != AirFrom::Measured || file.is_some());
    options.extend(offered.map(|(_, word, words)| (*word, *words)));
    let told = file.map_or_else(
        || "Was it measured in this duct? Then open what the logger wrote, above, beside the weather file.".to_owned(),
        |file| format!("Measured: {}", escaped(file)),
    );
    let choice = choice(
        "duct.source.from",
        "The duct air is",
        chosen,
        &options,
        said,
    );
    format!("{choice}<p class=\"dw-entries__wide\">{told}</p>")
}

/// A temperature and a humidity, which may be left out.
fn air(
    name: &str,
    (temperature_c, percent): (Option<&Input<f64>>, Option<&Input<f64>>),
    style: Style,
) -> String {
    let number = |field: &str, label, given, measured| {
        one(
            &format!("{name}.{field}"),
            label,
            (given, ""),
            measured,
            style,
        )
    };
    number(
        "temperature_c",
        "Temperature",
        temperature_c,
        Measured::Temperature,
    ) + &number("percent", "Relative humidity", percent, Measured::In("%"))
}

fn step(at: usize, step: &AirStep, style: Style) -> String {
    let Some(kind) = kind_of(step.kind) else {
        return String::new();
    };
    let name = format!("duct.source.steps.{at}");
    let options = KINDS.map(|kind| (kind.word, kind.words));
    let mut fields = choice(
        &format!("{name}.kind"),
        "What is done",
        kind.word,
        &options,
        "",
    );
    for (number, label) in STEP.iter().zip(kind.labels) {
        if !label.is_empty() {
            fields.push_str(&numbered(&name, number, label, step, style));
        }
    }
    let when = format!("{name}.when");
    fields.push_str(&periods(&when, &step.when, "Remove this time"));
    fields.push_str(&add(
        &when,
        if step.when.is_empty() {
            "Only at times"
        } else {
            "Add another time"
        },
    ));
    fields.push_str(&button(&format!("{name}.remove"), "", "Remove this step"));
    group(&format!("Step {}: {}", at + 1, kind.words), &fields)
}

fn numbered<P: Clone>(
    name: &str,
    number: &Numbered<P>,
    label: &str,
    part: &P,
    style: Style,
) -> String {
    let mut part = part.clone();
    let given = (number.of)(&mut part).clone();
    let name = format!("{name}.{}", number.field);
    one(
        &name,
        label,
        (given.as_ref(), number.row),
        number.measured,
        style,
    )
}

fn fan(off: &[Period]) -> String {
    let name = "duct.fan_off";
    let told = if off.is_empty() {
        "<p class=\"dw-entries__wide\">It never stops.</p>"
    } else {
        ""
    };
    let times = periods(name, off, "Remove this time");
    let more = add(name, "Add a time when it is off");
    group("Duct fan off", &[told, &times, &more].concat())
}

fn of_space(
    at: usize,
    space: &Space,
    year: Option<&SpaceYear>,
    unsaid: &str,
    style: Style,
) -> String {
    let name = format!("spaces.{at}.year");
    let follows = year.map(|year| year.follows);
    let chosen = FOLLOWS.iter().find(|(known, ..)| Some(*known) == follows);
    let mut options = vec![UNSAID];
    options.extend(FOLLOWS.iter().map(|(_, word, words)| (*word, *words)));
    let chosen = chosen.map_or("", |(_, word, _)| word);
    let mut fields = choice(
        &format!("{name}.follows"),
        "Through the year it",
        chosen,
        &options,
        unsaid,
    );
    let mut times = String::new();
    if let Some(year) = year {
        for number in SPACE.iter().filter(|one| counts(year.follows, one.field)) {
            fields.push_str(&numbered(&name, number, number.label, year, style));
        }
        if year.follows == Follows::Settings {
            fields.push_str(&add(
                &format!("{name}.settings"),
                "Add a time when it is otherwise",
            ));
            times = settings(&name, &space.name, &year.settings, style);
        }
    }
    group(&space.name, &fields) + &times
}

/// The times at which a room is otherwise, each under its own name.
fn settings(name: &str, whose: &str, settings: &[Setting], style: Style) -> String {
    let one = |(at, setting): (usize, &Setting)| {
        let name = format!("{name}.settings.{at}");
        let then = (setting.temperature_c.as_ref(), setting.percent.as_ref());
        let fields = [
            times_of(&name, &setting.when),
            air(&name, then, style),
            button(&format!("{name}.remove"), "", "Remove this time"),
        ];
        group(&format!("{whose}, time {}", at + 1), &fields.concat())
    };
    settings.iter().enumerate().map(one).collect()
}

fn periods(name: &str, periods: &[Period], remove: &str) -> String {
    let one = |(at, period): (usize, &Period)| {
        let name = format!("{name}.{at}");
        times_of(&name, period) + &button(&format!("{name}.remove"), "", remove)
    };
    periods.iter().enumerate().map(one).collect()
}

fn times_of(name: &str, period: &Period) -> String {
    let shown = times::shown(period);
    let field = |(field, label, words, right): &(&str, &str, String, &str)| {
        plain(&format!("{name}.{field}"), label, words, right)
    };
    shown.iter().map(field).collect()
}

fn add_steps() -> String {
    let one = |kind: &super::Kind| button("duct.source.steps.add", kind.word, kind.words);
    let all: String = KINDS.iter().map(one).collect();
    format!("<div class=\"dw-entries__wide dw-entries__add\"><span>Then add</span>{all}</div>")
}

fn add(name: &str, words: &str) -> String {
    button(&format!("{name}.add"), "", words)
}

/// A button that takes a value into a field.
fn button(name: &str, value: &str, words: &str) -> String {
    let id = format!("entry-{}-{value}", name.replace('.', "-"));
    format!(
        "<button id=\"{id}\" type=\"button\" class=\"dw-link dw-entries__act\" data-entry=\"{name}\" value=\"{value}\">{}</button>",
        escaped(words)
    )
}

#[cfg(test)]
mod tests {
    use dewrun_document::Origin;

    use super::*;
    use crate::{OpenProject, enter_year};

    const DEMO: &str = include_str!(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../demo/make-up-air.json"
    ));

    fn project() -> OpenProject {
        dewrun_document::read(DEMO)
            .expect("the example opens")
            .into()
    }

    fn entered(entries: &[(&str, &str)]) -> OpenProject {
        let mut project = project();
        for (name, text) in entries {
            let taken = enter_year(&mut project, name, text, Style::default());
            assert_eq!(taken, Ok(()), "{name} as {text}");
        }
        project
    }

    fn html(project: &OpenProject) -> String {
        year_entries_html(project, Style::default())
    }

    /// Every field of the mark-up by its name and what it holds.
    fn fields(html: &str) -> Vec<(String, String)> {
        let fields = html.split("data-entry=\"").skip(1);
        let quoted = |text: &str| text.split('"').next().unwrap_or_default().to_owned();
        fields
            .map(|rest| {
                let value = rest.split("value=\"").nth(1).unwrap_or_default();
                (quoted(rest), quoted(value))
            })
            .collect()
    }

    #[test]
    fn what_is_not_said_is_told_at_its_field() {
        let html = html(&project());
        assert!(
            html.contains("Nothing says where the air of the duct comes from"),
            "{html}"
        );
        let spaces = project().project.spaces.len();
        let told = html.matches("is like through the year").count();
        assert_eq!(told, spaces, "every space");
        assert!(html.contains("assumed 30 to 180"), "the interval of visits");
    }

    #[test]
    fn a_process_is_entered_step_by_step_and_told_back() {
        let project = entered(&[
            ("duct.source.from", "outdoors"),
            ("duct.source.steps.add", "recovered"),
            ("duct.source.steps.add", "cooled"),
            ("duct.source.steps.0.share", "75 %"),
            ("duct.source.steps.1.temperature_c", "9,5"),
            ("duct.source.steps.1.when.add", ""),
            ("duct.source.steps.1.when.0.days", "Mon to Fri"),
            ("duct.fan_off.add", ""),
            ("duct.fan_off.0.until_h", "5"),
        ]);
        let duct = &project.project.runs[0].duct;
        let source = duct.source.as_ref().expect("it is said").get();
        let steps = source.expect("it is a source").steps;
        let value = |input: &Option<Input<f64>>| input.as_ref().map(|input| input.value);
        assert_eq!(value(&steps[0].share), Some(0.75), "of the heat");
        assert_eq!(
            steps[0].share.as_ref().map(|one| &one.origin),
            Some(&Origin::Typed),
            "typed"
        );
        assert_eq!(value(&steps[1].temperature_c), Some(9.5), "of the coil");
        assert_eq!(steps[1].when[0].from_h, Some(6.0), "by day");
        let off = duct
            .fan_off
            .as_ref()
            .expect("it stops")
            .get()
            .expect("periods");
        assert_eq!(
            (off[0].from_h, off[0].until_h),
            (Some(20.0), Some(5.0)),
            "by night"
        );
        let shown = fields(&html(&project));
        for (name, value) in [
            ("duct.source.steps.0.share", "75"),
            ("duct.source.steps.1.temperature_c", "9.5"),
            ("duct.source.steps.1.share", "10"),
            ("duct.source.steps.1.when.0.days", "Mon to Fri"),
            ("duct.fan_off.0.until_h", "5"),
        ] {
            let found = shown.iter().find(|(known, _)| known == name);
            assert_eq!(
                found.map(|(_, value)| value.as_str()),
                Some(value),
                "{name}"
            );
        }
        let less = {
            let mut project = project;
            let taken = enter_year(
                &mut project,
                "duct.source.steps.0.remove",
                "",
                Style::default(),
            );
            assert_eq!(taken, Ok(()), "it is removed");
            html(&project)
        };
        assert!(
            less.contains("Step 1: cooling coil"),
            "the second is the first now"
        );
        assert!(!less.contains("Step 2"), "and the last");
    }

    #[test]
    fn a_space_has_the_numbers_of_what_it_follows() {
        for (follows, has, lacks) in [
            ("partly", "spaces.0.year.share", "spaces.0.year.sky_share"),
            (
                "outdoors",
                "spaces.0.year.wind_share",
                "spaces.0.year.share",
            ),
            (
                "settings",
                "spaces.0.year.settings.add",
                "spaces.0.year.room_c",
            ),
        ] {
            let project = entered(&[("spaces.0.year.follows", follows)]);
            let shown = fields(&html(&project));
            let is_there = |name: &str| shown.iter().any(|(known, _)| known == name);
            assert!(is_there(has), "{follows} has {has}");
            assert!(!is_there(lacks), "{follows} has no {lacks}");
        }
        let back = entered(&[
            ("spaces.0.year.follows", "partly"),
            ("spaces.0.year.follows", ""),
        ]);
        assert_eq!(back, project(), "not said any more");
    }

    #[test]
    fn what_can_not_be_is_refused_in_words_and_changes_nothing() {
        let mut project = entered(&[
            ("duct.source.from", "room"),
            ("duct.source.settings.add", ""),
            ("duct.source.steps.add", "mixed"),
        ]);
        let before = project.clone();
        for (name, text, words) in [
            ("duct.source.temperature_c", "warm", "is not a number"),
            ("duct.source.temperature_c", "500", "must be"),
            ("duct.source.steps.0.share", "140", "must be"),
            ("duct.source.steps.0.share", "", "nothing is typed"),
            ("duct.source.settings.0.from_h", "25", "must be"),
            ("duct.source.settings.0.from_h", "6.5", "whole hour"),
            ("duct.source.settings.0.days", "Frosday", "is none of"),
            ("duct.source.from", "measured", "No file"),
            ("duct.source.steps.7.share", "50", "no part of the project"),
        ] {
            let told = enter_year(&mut project, name, text, Style::default());
            let told = told.expect_err(name);
            assert!(told.contains(words), "{name} as {text}: {told}");
            assert!(told.ends_with('.'), "{told} is a sentence");
            assert_eq!(project, before, "{name} as {text}");
        }
    }
}
