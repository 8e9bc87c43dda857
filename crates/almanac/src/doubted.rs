//! How sure a year is, as HTML: sentences, between what its numbers lie, what makes that, what decides, where it is wet, and what readings make of it.

use dewrun_document::output::{Figure, MeasuredOutput, QuantityOutput, SpreadOutput};
use dewrun_drawing::escaped;
use dewrun_quantity::decimal::shortest;
use dewrun_quantity::format::{DOES_NOT_APPLY, amount, entered_with, fixed, machine};
use dewrun_quantity::{Style, Units};

use crate::members::Doubted;

/// A US fluid ounce holds so much water, kg, at 4 °C: 29.573 529 562 5 mL.
const OUNCE_KG: f64 = 0.029_573_529_562_5;
/// Width of a whisker, px.
const WHISKER: f64 = 120.0;
/// Height of the chance of water along a tube, px, and its scale, px per place.
const CHANCE: (f64, f64) = (56.0, 6.0);
/// Places of a metre.
const PLACES_A_METRE: usize = 10;
/// So many parts of a spread are listed.
const LISTED: usize = 6;

/// All of it.
pub(crate) fn html(doubted: &Doubted, style: Style) -> String {
    let doubt = &doubted.output;
    let sentences: Vec<String> = doubt.sentences.iter().map(|one| escaped(one)).collect();
    let mut parts = vec![
        format!("<p class=\"dw-year__sentence\">{}</p>", sentences.join(" ")),
        deciding(doubted),
        quantities("How sure the year is", &doubt.quantities, style),
        shares(doubted, style),
        along("intake", &doubt.wet_along.intake_of_100, style),
        along("exhaust", &doubt.wet_along.exhaust_of_100, style),
    ];
    if let Some(measured) = &doubt.measured {
        parts.push(with_readings(doubted, measured, style));
    }
    if 0 < doubt.unanswered {
        parts.push(format!(
            "<p>{} years have no answer: their values leave what the relations hold for.</p>",
            doubt.unanswered
        ));
    }
    parts.concat()
}

/// The assumed values that decide, and how to measure each.
fn deciding(doubted: &Doubted) -> String {
    let doubt = &doubted.output;
    let items: String = doubt
        .deciding
        .iter()
        .filter_map(|one| {
            let at = usize::try_from(one.span).ok()?;
            let span = doubt.spans.get(at)?;
            Some(format!(
                "<li><b>{}</b>, {} to {}, decides. {}</li>",
                named(doubted, at),
                number(span.low, 4),
                number(span.high, 4),
                escaped(&one.how_to_measure)
            ))
        })
        .collect();
    if items.is_empty() {
        return items;
    }
    format!("<ul class=\"dw-year__deciding\">{items}</ul>")
}

/// What a quantity is called, its unit, what one of that is in the answer, and its decimals.
fn told(id: &str, style: Style) -> (&'static str, &'static str, f64, usize) {
    let (unit, of) = match style.units {
        Units::Si => ("L", 1.0),
        Units::InchPound => ("fl oz", OUNCE_KG),
    };
    match id {
        "water_kg" => ("Water formed", unit, of, 2),
        "ran_off_kg" => ("Ran off the walls", unit, of, 2),
        "wet_hours" => ("Wet hours", "h", 1.0, 0),
        "mist_hours" => ("Hours with mist at the sensor", "h", 1.0, 0),
        "frost_hours" => ("Hours with ice on a wall", "h", 1.0, 0),
        "blind_hours" => ("Blind hours", "h", 1.0, 0),
        "limit_hours" => ("Hours beyond the airflow limits", "h", 1.0, 0),
        "humid_hours" => ("Hours over the humidity rating", "h", 1.0, 0),
        _ => ("Times a trap becomes full", "", 1.0, 0),
    }
}

fn quantities(name: &str, all: &[QuantityOutput], style: Style) -> String {
    let rows: String = all.iter().map(|one| quantity(one, style)).collect();
    let heads = [
        "In the year",
        "As entered",
        "One of ten under",
        "Half under",
        "Nine of ten under",
        "From the least to nine of ten",
        "Unit",
    ];
    let heads: String = heads
        .iter()
        .map(|head| format!("<th scope=\"col\">{head}</th>"))
        .collect();
    format!(
        "<div class=\"dw-scroll\" role=\"region\" aria-label=\"{name}\" tabindex=\"0\"><table class=\"dw-table dw-year__doubts\" aria-label=\"{name}\"><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table></div>"
    )
}

fn quantity(one: &QuantityOutput, style: Style) -> String {
    let (name, unit, of, decimals) = told(&one.id, style);
    let cell = |figure: Figure| {
        let read = amount(figure.0 / of, decimals, style.mark);
        format!(
            "<td class=\"dw-number\"><data value=\"{}\">{read}</data></td>",
            shortest(figure.0)
        )
    };
    let as_entered = one.as_entered.map_or_else(
        || format!("<td class=\"dw-number\">{DOES_NOT_APPLY}</td>"),
        cell,
    );
    format!(
        "<tr data-quantity=\"{}\"><th scope=\"row\">{name}</th>{as_entered}{}{}{}<td>{}</td><td class=\"dw-unit\">{unit}</td></tr>",
        one.id,
        cell(one.spread.p10),
        cell(one.spread.p50),
        cell(one.spread.p90),
        whisker(&one.spread),
    )
}

/// From nothing on: a line between the ends, thick at the middle.
fn whisker(spread: &SpreadOutput) -> String {
    if spread.p90.0 <= 0.0 {
        return String::new();
    }
    let at = |figure: Figure| machine((WHISKER - 2.0) * figure.0 / spread.p90.0 + 1.0, 1);
    let (low, middle, high) = (at(spread.p10), at(spread.p50), at(spread.p90));
    format!(
        "<svg class=\"dw-drawing\" viewBox=\"0 0 {w} 12\" width=\"{w}\" height=\"12\" aria-hidden=\"true\"><path class=\"dw-d-measure\" d=\"M.5 2v8M{low} 6H{high}M{low} 3v6M{high} 3v6\"/><path class=\"dw-d-cut\" d=\"M{middle} 2v8\"/></svg>",
        w = machine(WHISKER, 0)
    )
}

/// What makes the spread of the water, and of blind hours where there are any.
fn shares(doubted: &Doubted, style: Style) -> String {
    let doubt = &doubted.output;
    let mut parts = String::new();
    for (id, what) in [
        ("water_kg", "the water"),
        ("blind_hours", "the blind hours"),
    ] {
        let found = doubt.quantities.iter().find(|one| one.id == id);
        let Some(one) = found.filter(|one| !one.shares.is_empty()) else {
            continue;
        };
        let items: String = one
            .shares
            .iter()
            .take(LISTED)
            .filter_map(|share| {
                let at = usize::try_from(share.span).ok()?;
                let span = doubt.spans.get(at)?;
                let part = fixed(share.share_percent.0, 0, style.mark);
                Some(format!(
                    "<li data-share=\"{}\">{}\u{a0}% {}, {} to {}</li>",
                    shortest(share.share_percent.0),
                    part,
                    named(doubted, at),
                    number(span.low, 4),
                    number(span.high, 4)
                ))
            })
            .collect();
        parts.push_str(&format!(
            "<p class=\"dw-year__part\">What makes the spread of {what}</p><ul>{items}</ul>"
        ));
    }
    parts
}

/// In how many of a hundred years it is wet at each place in the wettest hour of some month.
fn along(tube: &str, places: &[Figure], style: Style) -> String {
    if places.iter().all(|place| place.0 <= 0.0) {
        return String::new();
    }
    let (high, wide) = CHANCE;
    let mut path = format!("M0 {}", machine(high, 0));
    let mut x = 0.0;
    for place in places {
        path.push_str(&format!("V{}", machine(high * (1.0 - place.0 / 100.0), 1)));
        x += wide;
        path.push_str(&format!("H{}", machine(x, 0)));
    }
    path.push_str(&format!("V{}z", machine(high, 0)));
    let metres: Vec<String> = places
        .chunks(PLACES_A_METRE)
        .zip(1_u32..)
        .map(|(places, metre)| {
            let most = places.iter().map(|place| place.0).fold(0.0, f64::max);
            format!(
                "{} to {metre}\u{a0}m: {}",
                metre - 1,
                fixed(most, 0, style.mark)
            )
        })
        .collect();
    let (w, h) = (machine(x, 0), machine(high, 0));
    let words = metres.join("; ");
    format!(
        "<p class=\"dw-year__part\">Of 100 plausible years wet along the {tube} tube, in the wettest hour of some month</p><div class=\"dw-scroll\" role=\"region\" aria-label=\"Chance of water along the {tube} tube\" tabindex=\"0\"><svg class=\"dw-drawing\" role=\"img\" aria-label=\"{words}\" viewBox=\"0 -1 {w} {h}\" width=\"{w}\" height=\"{h}\"><path class=\"dw-y-chance\" d=\"{path}\"/></svg></div><p>{words}.</p>"
    )
}

/// Readings against what was expected, and what is left of the year and of the inputs.
fn with_readings(doubted: &Doubted, measured: &MeasuredOutput, style: Style) -> String {
    let doubt = &doubted.output;
    let show = |figure: Figure| amount(figure.0, 1, style.mark);
    let span = |spread: &Option<SpreadOutput>| match spread {
        Some(spread) => format!("{} to {}", show(spread.p10), show(spread.p90)),
        None => DOES_NOT_APPLY.to_owned(),
    };
    let rows: String = measured
        .readings
        .iter()
        .map(|one| {
            format!(
                "<tr><th scope=\"row\">{}</th><td>{} ± {}</td><td>{}</td><td>{}</td></tr>",
                reading_name(&one.what),
                show(one.value),
                show(one.error),
                span(&one.before),
                if one.contradicts.is_some() {
                    "contradicts the model, left out".to_owned()
                } else {
                    span(&one.after)
                }
            )
        })
        .collect();
    let revised: String = doubt
        .spans
        .iter()
        .zip(&measured.spans)
        .enumerate()
        .filter(|(_, (_, one))| has_moved(&one.before, &one.after))
        .map(|(at, (_, one))| {
            format!(
                "<tr><th scope=\"row\">{}</th><td>{} to {}</td><td>{} to {}</td></tr>",
                named(doubted, at),
                number(one.before.p10, 3),
                number(one.before.p90, 3),
                number(one.after.p10, 3),
                number(one.after.p90, 3)
            )
        })
        .collect();
    let revised = if revised.is_empty() {
        String::new()
    } else {
        format!(
            "<table class=\"dw-table\" aria-label=\"Inputs before and after the readings\"><thead><tr><th scope=\"col\">Input</th><th scope=\"col\">Four of five before</th><th scope=\"col\">After</th></tr></thead><tbody>{revised}</tbody></table>"
        )
    };
    format!(
        "<p class=\"dw-year__part\">With what was measured at visits; the years left are worth <data value=\"{}\">{}</data> of {}. Undo the visit, and all of them count again.</p><table class=\"dw-table\" aria-label=\"Readings\"><thead><tr><th scope=\"col\">Reading</th><th scope=\"col\">Read</th><th scope=\"col\">Expected before</th><th scope=\"col\">After</th></tr></thead><tbody>{rows}</tbody></table>{}{revised}",
        shortest(measured.worth.0),
        fixed(measured.worth.0, 0, style.mark),
        doubt.members,
        quantities("The year after the readings", &measured.quantities, style)
    )
}

/// A span that readings moved or narrowed by more than noise.
fn has_moved(before: &SpreadOutput, after: &SpreadOutput) -> bool {
    const LEAST: f64 = 0.1;
    let width = before.p90.0 - before.p10.0;
    let moved = (after.p10.0 - before.p10.0).abs();
    let moved = moved.max((after.p90.0 - before.p90.0).abs());
    LEAST * width <= moved
}

fn reading_name(what: &str) -> &'static str {
    match what {
        "airflow_l_min" => "Airflow, L/min",
        "first_smoke_s" => "First smoke, s",
        "ninety_percent_s" => "Nine tenths of the smoke, s",
        "suction_pa" => "Suction, Pa",
        _ => "Water let out of traps, g",
    }
}

/// A span by its name; where others have the same, with the field that holds it.
fn named(doubted: &Doubted, at: usize) -> String {
    let name = doubted.names.get(at).map_or("", String::as_str);
    let mut letters = name.chars();
    let capital = letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_ascii_uppercase(), letters.as_str())
    });
    let capital = escaped(&capital);
    let is_one_of_many = 1 < doubted.names.iter().filter(|one| *one == name).count();
    let paths = doubted.output.spans.get(at).map(|span| &span.paths);
    match paths.and_then(|paths| paths.first()) {
        Some(path) if is_one_of_many => format!("{capital} ({})", escaped(path)),
        _ => capital,
    }
}

/// A value of an input, to so many decimals.
fn number(figure: Figure, decimals: i32) -> String {
    let mut fine = 1.0;
    for _ in 0..decimals {
        fine *= 10.0;
    }
    entered_with(
        (fine * figure.0).round() / fine,
        dewrun_quantity::DecimalMark::Point,
    )
}
