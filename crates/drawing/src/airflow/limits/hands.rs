//! What a hand takes hold of: the two limits as sliders, and steps beside them on a phone.

use dewrun_quantity::format::machine;

use crate::airflow::Shown;
use crate::airflow::head::number;
use crate::airflow::judged::{caught, false_alarms};
use crate::airflow::strip::Strip;
use crate::path::push_number;

/// The limits have no meaning outside this, %.
const SPAN: [f64; 2] = [0.0, 200.0];

/// Both limits as sliders over the chart.
pub(super) fn hands(shown: &Shown<'_>, strip: &Strip) -> String {
    let Some(limits) = shown.limits else {
        return String::new();
    };
    let mut html = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dw-drawing dw-limits__hands\" role=\"group\" aria-label=\"Airflow limits\"".to_owned();
    let zero = strip.scale.px(0.0);
    let per = strip.scale.px(1.0) - zero;
    for (name, value, decimals) in [
        ("width", strip.width, 1),
        ("height", strip.height(), 1),
        ("data-from", zero, 2),
        ("data-per", per, 4),
    ] {
        html.push_str(&format!(" {name}=\"{}\"", machine(value, decimals)));
    }
    html.push('>');
    let told = told(shown, limits);
    let [low, high] = limits.map(|limit| (100.0 * limit).round());
    for (limit, value, from, to) in [("low", low, SPAN[0], high), ("high", high, low, SPAN[1])] {
        let name = named(limit);
        html.push_str(&format!(
            "<g class=\"dw-limits__hand\" role=\"slider\" tabindex=\"0\" data-limit=\"{limit}\" aria-label=\"{name}\" aria-valuemin=\"{}\" aria-valuemax=\"{}\" aria-valuenow=\"{}\" aria-valuetext=\"{}\u{a0}%; {told}\" transform=\"translate(",
            machine(from, 0),
            machine(to, 0),
            machine(value, 0),
            number(value / 100.0, shown.style),
        ));
        push_number(&mut html, strip.px(value / 100.0));
        html.push(' ');
        push_number(&mut html, strip.band.0 - 8.0);
        html.push_str(")\"><rect class=\"dw-limits__touch\" x=\"-22\" y=\"-26\" width=\"44\" height=\"44\"/><path class=\"dw-limits__sign\" d=\"M-8 -10H8V0L0 8L-8 0Z\"/></g>");
    }
    html.push_str("</svg>");
    html
}

/// Each limit with a step down and a step up.
pub(super) fn steppers(shown: &Shown<'_>) -> String {
    let Some(limits) = shown.limits else {
        return String::new();
    };
    let row = |(limit, value): (&str, f64)| {
        let name = named(limit);
        let value = number(value, shown.style);
        format!(
            "<div class=\"dw-limits__step\"><span>{name}, %</span><button type=\"button\" data-limit=\"{limit}\" data-step=\"-1\" aria-label=\"{name} down\">\u{2212}</button><b>{value}</b><button type=\"button\" data-limit=\"{limit}\" data-step=\"1\" aria-label=\"{name} up\">+</button></div>"
        )
    };
    let [low, high] = limits;
    [("low", low), ("high", high)].map(row).concat()
}

fn named(limit: &str) -> &'static str {
    if limit == "low" {
        "Low limit"
    } else {
        "High limit"
    }
}

/// What the limits do, in a few words.
fn told(shown: &Shown<'_>, limits: [f64; 2]) -> String {
    let (seen, faults) = caught(shown, limits);
    let (wrong, states) = false_alarms(shown, limits);
    format!("{seen} of {faults} faults caught, {wrong} of {states} expected states trip")
}
