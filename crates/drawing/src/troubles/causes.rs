//! Causes with their shares, what speaks for and against each, and the likeliest in a sentence.

use dewrun_quantity::decimal;
use dewrun_quantity::format::{DecimalMark, fixed, machine};
use dewrun_troubles::{Evidence, Ranked, cannot_tell, contradiction, evidence};

use super::Found;
use crate::html::element;

/// Causes below this share of a hundred are told by name alone.
const TOLD: f64 = 2.0;
/// A share from which on none is told any finer.
const SURE: f64 = 99.0;

/// The likeliest cause with its share and between which that lies.
#[must_use]
pub fn sentence(found: &Found<'_>) -> String {
    let Some(first) = found.ranking.causes.first() else {
        return String::new();
    };
    let what = if found.ranking.troubles == 0 {
        "is the likeliest by what was answered"
    } else if found.ranking.too_few {
        "is the likeliest so far"
    } else {
        "explains this log best"
    };
    let share = told_share(100.0 * first.share, DecimalMark::Point);
    let span = span(found, first, DecimalMark::Point);
    format!("{} {what}, {share} of 100{span}.", found.name(first.cause))
}

/// The likeliest cause for paper, a line each: its sentence, what cures it, what to look at next, then what speaks for it.
#[must_use]
pub fn in_words(found: &Found<'_>) -> String {
    let Some(first) = found.ranking.causes.first() else {
        return String::new();
    };
    let check = found.checks.first().map_or_else(String::new, |one| {
        format!("{} {}", one.check.name(), one.check.takes())
    });
    let told = found.log.map(|log| evidence(log, found.ranking, first));
    let head = [sentence(found), first.cause.cure().to_owned(), check];
    let evidence = told.map(|told| told.for_it).unwrap_or_default();
    let lines: Vec<String> = head.into_iter().chain(evidence).collect();
    lines.join("\n")
}

/// The likeliest cause, what contradicts and what can't be told, then the causes as a table: share, for, against.
#[must_use]
pub fn causes(found: &Found<'_>) -> String {
    let style = found.style;
    let mut html = element(
        "p",
        " class=\"dw-troubles__sentence\" data-troubles=\"sentence\"",
        &sentence(found),
    );
    let contradicts = contradiction(found.ranking);
    if let Some(sentence) = &contradicts {
        html.push_str(&element(
            "p",
            " class=\"dw-troubles__contradicts\"",
            sentence,
        ));
    }
    // Without a log there is nothing that it could not tell.
    if found.log.is_some() {
        let cannot = cannot_tell(found.ranking);
        let cannot = cannot
            .iter()
            .map(|one| element("p", " class=\"dw-troubles__cannot\"", one));
        html.extend(cannot);
    }
    let (likely, rest): (Vec<&Ranked>, Vec<&Ranked>) =
        (found.ranking.causes.iter()).partition(|one| TOLD <= 100.0 * one.share);
    let rows: String = likely.iter().map(|one| row(found, one)).collect();
    // Without a log nothing speaks for a cause or against it but the answers themselves.
    let (evidence, none) = if found.log.is_some() {
        (
            "<th scope=\"col\">For</th><th scope=\"col\">Against</th>",
            "<td></td><td></td>",
        )
    } else {
        ("", "")
    };
    let rest: Vec<&str> = rest.iter().map(|one| one.cause.name()).collect();
    let rest = if rest.is_empty() {
        String::new()
    } else {
        let names = element("th", " scope=\"row\"", &rest.join(", "));
        let share = element(
            "td",
            " class=\"dw-number\"",
            &format!("under {}", fixed(TOLD, 0, style.mark)),
        );
        format!("<tr class=\"dw-troubles__rest\">{names}<td></td>{share}{none}</tr>")
    };
    html.push_str(&format!(
        "<table class=\"dw-table dw-troubles__causes\"><caption class=\"dw-spoken\">Likely causes</caption><thead><tr><th scope=\"col\">Cause</th><th scope=\"colgroup\" colspan=\"2\">Share of 100</th>{evidence}</tr></thead><tbody>{rows}{rest}</tbody></table>"
    ));
    html
}

fn row(found: &Found<'_>, one: &Ranked) -> String {
    let style = found.style;
    let told = found.log.map(|log| evidence(log, found.ranking, one));
    let share = 100.0 * one.share;
    let (least, most) = found.span(one.cause.place(), one.share);
    let shown = format!(
        "<data value=\"{}\"><b>{}</b></data>{}",
        decimal::shortest(share),
        told_share(share, style.mark),
        element(
            "span",
            " class=\"dw-troubles__span\"",
            &span(found, one, style.mark)
        ),
    );
    let words = |head: &str, sentences: &[String]| {
        let sentences: String = sentences.iter().map(|one| element("p", "", one)).collect();
        format!("<td data-head=\"{head}\">{sentences}</td>")
    };
    let told = told.map_or_else(String::new, |Evidence { for_it, against }| {
        [words("For", &for_it), words("Against", &against)].concat()
    });
    format!(
        "<tr data-cause=\"{}\"><th scope=\"row\">{}</th><td class=\"dw-troubles__bar\">{}</td><td class=\"dw-number\">{shown}</td>{told}</tr>",
        one.cause.id(),
        found.name(one.cause),
        bar(share, least, most),
    )
}

/// The share as a bar, with a whisker where it may lie elsewhere.
fn bar(share: f64, least: f64, most: f64) -> String {
    let at = |part: f64| machine(part, 1);
    let whisker = if most - least < 0.5 {
        String::new()
    } else {
        format!(
            "<path class=\"dw-tr-whisker\" d=\"M{low} 6H{high}M{low} 2v8M{high} 2v8\"/>",
            low = at(least),
            high = at(most)
        )
    };
    format!(
        "<svg class=\"dw-drawing\" viewBox=\"0 0 100 12\" width=\"100%\" height=\"12\" preserveAspectRatio=\"none\" aria-hidden=\"true\"><path class=\"dw-d-solid\" d=\"M0 2H{}V10H0Z\"/>{whisker}</svg>",
        at(share.max(0.3))
    )
}

/// A share of a hundred, whole; none is sure.
pub(super) fn told_share(share: f64, mark: DecimalMark) -> String {
    if SURE < share {
        return "over 99".to_owned();
    }
    fixed(share, 0, mark)
}

/// Between which a share lies, where that is not one number.
fn span(found: &Found<'_>, one: &Ranked, mark: DecimalMark) -> String {
    let (least, most) = found.span(one.cause.place(), one.share);
    let (least, most) = (told_share(least, mark), told_share(most, mark));
    if least == most {
        return String::new();
    }
    format!(" ({least} to {most})")
}
