//! The year in a sentence or two.

use dewrun_quantity::format;

use super::Year;
use super::calendar::{in_hours, rate};
use super::totals::Totals;
use crate::svg::escaped;

/// A piece of the sentence, heavy or not.
type Piece = (String, bool);

/// The sentence over the section, as HTML.
#[must_use]
pub fn sentence(year: &Year) -> String {
    let piece = |(words, is_heavy): Piece| {
        let words = escaped(&words);
        if is_heavy {
            format!("<b>{words}</b>")
        } else {
            words
        }
    };
    pieces(year).into_iter().map(piece).collect()
}

/// The same as plain words.
pub(super) fn plain(year: &Year) -> String {
    pieces(year).into_iter().map(|(words, _)| words).collect()
}

fn pieces(year: &Year) -> Vec<Piece> {
    let totals = Totals::of(year.steps.iter());
    let mark = year.style.mark;
    let whole = format::fixed(totals.hours, 0, mark);
    let mut pieces = Vec::new();
    if 0.0 < totals.wet_h {
        let wet = format::fixed(totals.wet_h, 0, mark);
        let litres = litres(year, totals.formed_g);
        pieces.push((format!("{wet} wet hours, {litres}\u{a0}L"), true));
        pieces.push((format!(" in {whole}\u{a0}h"), false));
    } else {
        pieces.push(("No wet hour".to_owned(), true));
        pieces.push((
            format!(" in {whole}\u{a0}h, in the weather of this file"),
            false,
        ));
    }
    let mut also = |hours: f64, words: &str, is_heavy: bool| {
        if 0.0 < hours {
            pieces.push(("; ".to_owned(), false));
            pieces.push((format!("{} {words}", in_hours(hours, year)), is_heavy));
        }
    };
    also(totals.mist_h, "with mist at the sensor", false);
    also(totals.frost_h, "with ice on a wall", false);
    also(totals.over_h, "with a chamber above its rating", false);
    also(totals.blind_h, "blind", true);
    pieces.push((".".to_owned(), false));
    if let Some(step) = year.wettest().and_then(|at| year.steps.get(at)) {
        let rate = rate(year, step);
        let stamp = year.stamp(step.start_s);
        pieces.push((format!(" Most forms on {stamp}: {rate}."), false));
    }
    if let Some((range, trouble)) = &year.first_critical {
        let end = range.end.max(range.start + 1) - 1;
        if let (Some(first), Some(last)) = (year.steps.get(range.start), year.steps.get(end)) {
            let days = year.span(first.start_s, last.start_s);
            pieces.push((
                format!(" The first critical week is {days}: {trouble}."),
                false,
            ));
        }
    }
    pieces
}

/// Grams of water in litres.
pub(super) fn litres(year: &Year, grams: f64) -> String {
    format::amount(grams / 1000.0, 2, year.style.mark)
}
