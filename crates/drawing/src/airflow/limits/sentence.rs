//! What the limits do, in sentences over their chart.

use dewrun_quantity::format::machine;
use dewrun_run::figure::Figure;

use crate::airflow::Shown;
use crate::airflow::head::{opens, percent};
use crate::airflow::judged::{caught, false_alarms, signed};
use crate::svg::escaped;

/// The name of the chart, what is advised, what the limits that are set do, and what would help.
pub(super) fn sentence(shown: &Shown<'_>) -> String {
    let mut told = String::new();
    let outcome = &shown.whole.airflow;
    match shown.advised() {
        None => told.push_str("Nothing flows as fitted, so that no reading is a part of it."),
        Some(advised) => {
            let [low, high] = advised.map(|limit| percent(limit, shown.style));
            let (seen, faults) = caught(shown, advised);
            told.push_str(&format!(
                "Advised {} and {}: no expected state trips them, {seen} of {faults} faults are caught.",
                opens(Figure::LimitLow, &low),
                opens(Figure::LimitHigh, &high),
            ));
        }
    }
    if let Some(set) = shown.set {
        let [low, high] = set.map(|limit| escaped(&percent(limit, shown.style)));
        let (seen, faults) = caught(shown, set);
        let (wrong, states) = false_alarms(shown, set);
        told.push_str(&format!(
            " As set, {low} and {high}: {seen} of {faults} caught, {wrong} of {states} expected states trip."
        ));
    }
    if let Some(change) = outcome.change {
        told.push_str(&format!(" What would help: {}.", change.words()));
    }
    let ducts = shown.over_duct.iter().map(|one| one.duct.to_pascals());
    let (from, to) = ducts.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), duct| {
        (low.min(duct), high.max(duct))
    });
    if from < to {
        let of = |pa| escaped(&signed(dewrun_quantity::Pressure::pascals(pa), shown.style));
        told.push_str(&format!(
            " <b>Parted joints follow the duct's pressure</b> (dotted, {} to {}): measure it.",
            of(from),
            of(to)
        ));
    }
    let differs = shown
        .advised()
        .zip(shown.limits)
        .is_some_and(|(one, other)| {
            let pairs = one.iter().zip(&other);
            pairs.into_iter().any(|(a, b)| 0.005 < (a - b).abs())
        });
    let button = if differs || (shown.set.is_none() && shown.limits.is_some()) {
        let advised = shown.advised().unwrap_or_default();
        // In whole percent, outwards, so that no expected state trips them.
        let [low, high] = advised.map(|limit| 100.0 * limit);
        let (low, high) = (machine(low.floor(), 0), machine(high.ceil(), 0));
        format!(
            "<button type=\"button\" class=\"dw-button\" data-take-limits=\"{low} {high}\">Take the advised limits</button>"
        )
    } else {
        String::new()
    };
    format!("<div class=\"dw-limits__head\"><p><b>States and limits</b> {told}</p>{button}</div>")
}
