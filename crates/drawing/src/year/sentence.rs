//! The year in a sentence or two.

use dewrun_quantity::format;

use super::Year;
use super::calendar::{in_hours, rate};
use super::opened::opens;
use super::totals::Totals;
use crate::svg::escaped;

/// A piece of the sentence, heavy or not, and the figure that it opens; empty for none.
type Piece = (String, bool, &'static str);

/// The sentence over the section, as HTML.
#[must_use]
pub fn sentence(year: &Year) -> String {
    let piece = |(words, is_heavy, figure): Piece| {
        let words = if figure.is_empty() {
            escaped(&words)
        } else {
            opens(figure, &words)
        };
        if is_heavy {
            format!("<b>{words}</b>")
        } else {
            words
        }
    };
    pieces(year).into_iter().map(piece).collect()
}

/// The same as plain words.
#[must_use]
pub fn plain(year: &Year) -> String {
    pieces(year).into_iter().map(|(words, ..)| words).collect()
}

fn pieces(year: &Year) -> Vec<Piece> {
    let totals = Totals::of(year.steps.iter());
    let mark = year.style.mark;
    let whole = format::fixed(totals.hours, 0, mark);
    let mut pieces = Vec::new();
    if 0.0 < totals.wet_h {
        let wet = format::fixed(totals.wet_h, 0, mark);
        let litres = litres(year, totals.formed_g);
        pieces.push((format!("{wet} wet hours"), true, "year-wet-hours"));
        pieces.push(plain_piece(", "));
        pieces.push((format!("{litres}\u{a0}L"), true, "year-water"));
        pieces.push(plain_piece(" in "));
        pieces.push((format!("{whole}\u{a0}h"), false, "year-hours"));
    } else {
        pieces.push(("No wet hour".to_owned(), true, "year-wet-hours"));
        pieces.push(plain_piece(" in "));
        pieces.push((format!("{whole}\u{a0}h"), false, "year-hours"));
        pieces.push(plain_piece(", in the weather of this file"));
    }
    let mut also = |hours: f64, words: &str, figure: &'static str| {
        if 0.0 < hours {
            pieces.push(plain_piece("; "));
            let is_heavy = figure == "year-troubles";
            pieces.push((
                format!("{} {words}", in_hours(hours, year)),
                is_heavy,
                figure,
            ));
        }
    };
    also(totals.mist_h, "with mist at the sensor", "year-mist");
    also(totals.frost_h, "with ice on a wall", "year-frost");
    also(
        totals.over_h,
        "with a chamber above its rating",
        "year-chamber",
    );
    also(totals.blind_h, "blind", "year-troubles");
    pieces.push(plain_piece("."));
    if let Some(step) = year.wettest().and_then(|at| year.steps.get(at)) {
        let rate = rate(year, step);
        let stamp = year.stamp(step.start_s);
        pieces.push(plain_piece(&format!(" Most forms on {stamp}: ")));
        pieces.push((rate, false, "year-design"));
        pieces.push(plain_piece("."));
    }
    if let Some((range, trouble)) = &year.first_critical {
        let end = range.end.max(range.start + 1) - 1;
        if let (Some(first), Some(last)) = (year.steps.get(range.start), year.steps.get(end)) {
            let days = year.span(first.start_s, last.start_s);
            pieces.push(plain_piece(&format!(
                " The first critical week is {days}: {trouble}."
            )));
        }
    }
    pieces
}

fn plain_piece(words: &str) -> Piece {
    (words.to_owned(), false, "")
}

/// Grams of water in litres.
pub(super) fn litres(year: &Year, grams: f64) -> String {
    format::amount(grams / 1000.0, 2, year.style.mark)
}
