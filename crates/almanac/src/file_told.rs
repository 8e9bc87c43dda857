//! What was understood of a weather file, as HTML: place, rows, and every decision with its lines.

use dewrun_drawing::escaped;
use dewrun_moist_air::Over;
use dewrun_quantity::{Style, format};
use dewrun_weather::{Note, Weather};

use crate::held::{Held, Place};

/// Files whose dew points never fall below freezing need no word about ice.
const FREEZING_C: f64 = 0.0;

/// A file that the year goes by.
pub(crate) fn file_told(held: &Held, place: Place, style: Style) -> String {
    let name = escaped(&held.name);
    let facts = facts(&held.weather, place, style);
    let over = convention(held, place);
    let notes = notes(&held.weather.notes);
    let what = match place {
        Place::Weather => "",
        Place::InDuct => "Measured in the duct: ",
    };
    format!("<p>{what}<b class=\"dw-year__name\">{name}</b> {facts}</p>{over}{notes}")
}

fn facts(weather: &Weather, place: Place, style: Style) -> String {
    let series = &weather.series;
    let mark = style.mark;
    let number = |value: f64| format::entered_with((100.0 * value).round() / 100.0, mark);
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
    // Of what was measured in the duct the year takes the weather's.
    if place == Place::Weather {
        facts.push(format!("pressure: {}", weather.pressure_source.name()));
    }
    escaped(&facts.join("; "))
}

fn counted(count: usize, word: &str, style: Style) -> String {
    let number = u32::try_from(count).map_or(f64::INFINITY, f64::from);
    let number = format::fixed(number, 0, style.mark);
    let end = if count == 1 { "" } else { "s" };
    format!("{number}\u{a0}{word}{end}")
}

/// Over what humidities below freezing are meant, and the other way to take them.
fn convention(held: &Held, place: Place) -> String {
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
    let act = match place {
        Place::Weather => "data-over",
        Place::InDuct => "data-over-in-duct",
    };
    let button = |over: Option<Over>, word: &str| {
        let is_on = said == (over, over);
        let which = match over {
            None => "0",
            Some(Over::Water) => "1",
            Some(Over::Ice) => "2",
        };
        format!(
            "<button type=\"button\" class=\"dw-toggle__word\" {act}=\"{which}\" aria-pressed=\"{is_on}\">{word}</button>"
        )
    };
    let of = match place {
        Place::Weather => "",
        Place::InDuct => " in the duct",
    };
    let words = |over: Over| match over {
        Over::Water => "water",
        Over::Ice => "ice",
    };
    format!(
        "<div class=\"dw-year__over-what\"><span>Below 0\u{a0}°C dew points are over {}, relative humidities over {}, {taken}. Take them </span><span class=\"dw-toggle dw-toggle--words\" role=\"group\" aria-label=\"Humidity below freezing{of}\">{}{}{}</span></div>",
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
        let mut reading = Reading::new(Place::Weather, Understanding::default());
        reading.take(text.as_bytes()).expect("a table");
        reading.end("a <b>.csv").expect("a table")
    }

    #[test]
    fn a_step_is_told_with_the_digits_it_has() {
        let rows = |step: i32| -> String {
            let row = |at| {
                format!(
                    "2026-07-01 {:02}:{:02},21.5,70\n",
                    at * step / 60,
                    at * step % 60
                )
            };
            (0..4).map(row).collect()
        };
        for (step, words) in [
            (10, "every 10\u{a0}min"),
            (15, "every 15\u{a0}min"),
            (60, "every hour"),
            (180, "every 3\u{a0}h"),
        ] {
            let file = held(&format!("time,temp_c,rh\n{}", rows(step)));
            let html = file_told(&file, Place::InDuct, Style::default());
            assert!(html.contains(words), "{words} in {html}");
            assert!(
                !html.contains("pressure:"),
                "the weather's is taken: {html}"
            );
        }
    }

    #[test]
    fn the_file_is_told_with_its_lines() {
        let file = held(
            "time,temp_c,rh\n2026-07-01 00:00,21.5,70\n2026-07-01 01:00,,71\n2026-07-01 02:00,21,72\n",
        );
        let html = file_told(&file, Place::Weather, Style::default());
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
        let html = file_told(&file, Place::Weather, Style::default());
        assert_eq!(html.matches("data-over").count(), 3, "three ways: {html}");
        assert!(
            html.contains("data-over=\"0\" aria-pressed=\"true\""),
            "{html}"
        );
    }
}
