//! What was understood of a weather file, as HTML: place, rows, and every decision with its lines.

use dewrun_drawing::escaped;
use dewrun_moist_air::Over;
use dewrun_quantity::{Style, format};
use dewrun_weather::{Note, Weather};

use crate::held::Held;

/// Files whose dew points never fall below freezing need no word about ice.
const FREEZING_C: f64 = 0.0;

/// The file that the year goes by.
pub(crate) fn file_told(held: &Held, style: Style) -> String {
    let name = escaped(&held.name);
    let facts = facts(&held.weather, style);
    let over = convention(held);
    let notes = notes(&held.weather.notes);
    format!("<p><b class=\"dw-year__name\">{name}</b> {facts}</p>{over}{notes}")
}

fn facts(weather: &Weather, style: Style) -> String {
    let series = &weather.series;
    let mark = style.mark;
    let number = |value: f64| format::significant(value, 4, 2, mark);
    let mut facts = Vec::new();
    if let Some(name) = &weather.place.name {
        facts.push(name.clone());
    }
    if let Some(elevation) = weather.place.elevation_m {
        let elevation = format::fixed(elevation, 0, mark);
        facts.push(format!("{elevation}\u{a0}m above the sea"));
    }
    facts.push(counted(series.len(), "row", style));
    let lacking = series.len() - series.usable();
    if 0 < lacking {
        facts.push(format!("{} not usable", counted(lacking, "row", style)));
    }
    let step_h = series.row_hours();
    facts.push(if step_h == 1.0 {
        "every hour".to_owned()
    } else if step_h < 1.0 {
        format!("every {}\u{a0}min", number(60.0 * step_h))
    } else {
        format!("every {}\u{a0}h", number(step_h))
    });
    if series.timing.is_typical_year {
        facts.push("a typical year, which leaves extremes out".to_owned());
    } else if let (Some(first), Some(last)) = (series.first(), series.last()) {
        let day = |stamp: String| stamp.split('T').next().unwrap_or_default().to_owned();
        let (first, last) = (day(first.to_string()), day(last.to_string()));
        facts.push(format!("{first} to {last}"));
    }
    facts.push(format!("pressure: {}", weather.pressure_source.name()));
    escaped(&facts.join("; "))
}

fn counted(count: usize, word: &str, style: Style) -> String {
    let number = u32::try_from(count).map_or(f64::INFINITY, f64::from);
    let number = format::fixed(number, 0, style.mark);
    let end = if count == 1 { "" } else { "s" };
    format!("{number}\u{a0}{word}{end}")
}

/// Over what humidities below freezing are meant, and the other way to take them.
fn convention(held: &Held) -> String {
    let series = &held.weather.series;
    let is_cold = series.dew_point_c.iter().any(|point| *point < FREEZING_C);
    if !is_cold {
        return String::new();
    }
    let said = (held.said.dew_point_over, held.said.relative_over);
    let taken = match said {
        (None, None) => "as the file shows",
        _ => "as said here",
    };
    let button = |over: Option<Over>, word: &str| {
        let is_on = said == (over, over);
        let which = match over {
            None => "0",
            Some(Over::Water) => "1",
            Some(Over::Ice) => "2",
        };
        format!(
            "<button type=\"button\" class=\"dw-toggle__word\" data-over=\"{which}\" aria-pressed=\"{is_on}\">{word}</button>"
        )
    };
    let words = |over: Over| match over {
        Over::Water => "water",
        Over::Ice => "ice",
    };
    format!(
        "<div class=\"dw-year__over-what\"><span>Below 0\u{a0}°C dew points are over {}, relative humidities over {}, {taken}. Take them </span><span class=\"dw-toggle dw-toggle--words\" role=\"group\" aria-label=\"Humidity below freezing\">{}{}{}</span></div>",
        words(series.dew_point_over),
        words(series.relative_over),
        button(None, "as found"),
        button(Some(Over::Water), "over water"),
        button(Some(Over::Ice), "over ice"),
    )
}

fn notes(notes: &[Note]) -> String {
    if notes.is_empty() {
        return String::new();
    }
    let rows: String = notes.iter().map(note).collect();
    let count = notes.len();
    let end = if count == 1 { "" } else { "s" };
    format!(
        "<details class=\"dw-year__notes\"><summary>How it was read: {count} note{end}</summary><ul>{rows}</ul></details>"
    )
}

fn note(note: &Note) -> String {
    let lines: Vec<String> = note.lines.iter().map(ToString::to_string).collect();
    let mut place = String::new();
    if let Some((last, before)) = lines.split_last() {
        let word = if before.is_empty() { "line" } else { "lines" };
        let shown = u64::try_from(lines.len()).unwrap_or(u64::MAX);
        place = if shown < note.count {
            format!(" ({word} {}, ..)", lines.join(", "))
        } else if before.is_empty() {
            format!(" ({word} {last})")
        } else {
            format!(" ({word} {} and {last})", before.join(", "))
        };
    }
    format!(
        "<li><span class=\"dw-unit\">{}</span> {}{place}</li>",
        note.topic.name(),
        escaped(&note.sentence)
    )
}

#[cfg(test)]
mod tests {
    use dewrun_weather::Understanding;

    use super::*;
    use crate::held::Reading;

    fn held(text: &str) -> Held {
        let mut reading = Reading::new(Understanding::default());
        reading.take(text.as_bytes()).expect("a table");
        reading.end("a <b>.csv").expect("a table")
    }

    #[test]
    fn the_file_is_told_with_its_lines() {
        let file = held(
            "time,temp_c,rh\n2026-07-01 00:00,21.5,70\n2026-07-01 01:00,,71\n2026-07-01 02:00,21,72\n",
        );
        let html = file_told(&file, Style::default());
        assert!(html.contains("a &lt;b&gt;.csv"), "its name is text: {html}");
        assert!(
            html.contains("3\u{a0}rows; 1\u{a0}row not usable; every hour"),
            "{html}"
        );
        assert!(
            html.contains("2026-07-01 to 2026-07-01"),
            "its days: {html}"
        );
        assert!(
            html.contains("(line 4)"),
            "where readings are there again: {html}"
        );
        assert!(!html.contains("data-over"), "nothing is frozen: {html}");
        assert_eq!(file.hash().len(), 64, "a hash in letters");
    }

    #[test]
    fn what_is_cold_may_be_over_water_or_ice() {
        let file = held("time,temp_c,rh\n2026-01-01 00:00,-5,70\n2026-01-01 01:00,-6,71\n");
        let html = file_told(&file, Style::default());
        assert_eq!(html.matches("data-over").count(), 3, "three ways: {html}");
        assert!(
            html.contains("data-over=\"0\" aria-pressed=\"true\""),
            "{html}"
        );
    }
}
