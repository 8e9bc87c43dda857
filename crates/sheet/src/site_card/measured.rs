//! What is measured and written down, with what is expected, and what the last visit found.

use dewrun_document::{Origin, Reading, Visit};
use dewrun_drawing::{assumed_name, escaped, site_place};
use dewrun_quantity::format::{DOES_NOT_APPLY, fixed};
use dewrun_quantity::measure::Written;
use dewrun_quantity::{Length, Style, Units};
use dewrun_run::figure::{Figure, Kind};
use dewrun_run::{ExpectedOnSite, FilterOnSite, Finding, Tube, on_site};

use crate::markup::{cell, element, strong, table_head};
use crate::told::Told;

/// So many assumed values are asked for.
const ASKED: usize = 3;

/// The rows of what is measured.
pub(crate) fn rows(told: &Told<'_>, style: Style) -> Vec<String> {
    let mut rows = readings(told, style);
    rows.extend(limits(told, style));
    rows.extend(assumed(told, style));
    rows
}

/// The table around them.
pub(crate) fn table(rows: &[String]) -> String {
    let head = table_head(&[
        ("", "Quantity"),
        ("dw-card__n", "Expected"),
        ("dw-card__n", "Span"),
        ("", "Unit"),
        ("dw-card__blank", "Found"),
        ("", "If outside"),
    ]);
    let body = element("tbody", "", &rows.concat());
    element(
        "table",
        "dw-card__table dw-card__measured",
        &format!("{head}{body}"),
    )
}

/// What the last visit found, in a sentence; none where nobody noted one.
pub(crate) fn last_visit(told: &Told<'_>, style: Style) -> Option<String> {
    let visit = told.entered()?.visits.last()?;
    let mut found = Vec::new();
    for (name, reading, kind) in [
        ("airflow", &visit.airflow_l_min, Kind::Flow),
        ("duct static", &visit.duct_static_pa, Kind::Gauge),
        ("suction", &visit.suction_pa, Kind::Gauge),
        ("first smoke", &visit.first_smoke_s, Kind::Seconds),
        ("90\u{a0}% of it", &visit.ninety_percent_s, Kind::Seconds),
    ] {
        if let Some(reading) = reading {
            let value = shown(kind, reading.value, style);
            found.push(format!("{name} {value}{}", against(reading)));
        }
    }
    let water_g: f64 = visit.water.iter().map(|found| found.water_g).sum();
    if 0.0 < water_g {
        found.push(format!("water {}", shown(Kind::Mass, water_g, style)));
    }
    let who = who(visit);
    let what = if found.is_empty() {
        "nothing measured".to_owned()
    } else {
        found.join("; ")
    };
    let words = format!("{who}: {what}.");
    Some(element(
        "p",
        "dw-card__last",
        &format!("{} {}", strong("Last visit"), escaped(&words)),
    ))
}

fn who(visit: &Visit) -> String {
    if visit.by.trim().is_empty() {
        return visit.on.clone();
    }
    format!("{}, {}", visit.on, visit.by)
}

/// What a reading said against what was expected then.
fn against(reading: &Reading) -> &'static str {
    let Some(expected) = &reading.expected else {
        return "";
    };
    let span = ExpectedOnSite {
        low: expected.low,
        usual: expected.usual,
        high: expected.high,
    };
    match span.finding(reading.value) {
        Finding::Below => ", below the span",
        Finding::Within => ", within the span",
        Finding::Above => ", above the span",
    }
}

/// Rows of airflow, suction and transport time.
fn readings(told: &Told<'_>, style: Style) -> Vec<String> {
    let trap = told.trap_places(Tube::Intake).into_iter().next();
    let expected = on_site(&told.whole.airflow, FilterOnSite::New, trap);
    let at = trap.map_or_else(
        || "Suction at the detector".to_owned(),
        |at: Length| format!("Suction in the tube at {}", site_place(at, style)),
    );
    let flow = expected.airflow.map(|flow| flow.to_litres_per_minute());
    let suction = expected.suction.map(|suction| suction.to_pascals());
    let seconds = |span: Option<ExpectedOnSite<dewrun_quantity::Time>>| {
        span.map(|span| span.map(|time| time.to_seconds()))
    };
    [
        reading(
            "Airflow, filter new, duct fan on",
            Figure::SensorFlow,
            Some(flow),
            "high: leak, open valve; low: holes, water",
            style,
        ),
        reading(
            &at,
            Figure::TrapPressure,
            Some(suction),
            "check holes, joints and duct static",
            style,
        ),
        reading(
            "First smoke, duct to detector",
            Figure::TransportFirst,
            seconds(expected.first_smoke),
            "check length, bore, airflow",
            style,
        ),
        reading(
            "90\u{a0}% of the smoke",
            Figure::TransportNinety,
            seconds(expected.ninety_percent),
            "check length, bore, airflow",
            style,
        ),
    ]
    .into()
}

fn reading(
    name: &str,
    figure: Figure,
    span: Option<ExpectedOnSite<f64>>,
    outside: &str,
    style: Style,
) -> String {
    let kind = figure.kind();
    let number = |value: f64| kind.show(value, style).number;
    let (usual, from_to) = span.map_or_else(
        || ("none".to_owned(), DOES_NOT_APPLY.to_owned()),
        |span| {
            (
                number(span.usual),
                format!("{} to {}", number(span.low), number(span.high)),
            )
        },
    );
    row(
        &escaped(name),
        ("", &usual),
        &from_to,
        kind.unit(style),
        outside,
    )
}

fn row(name: &str, (class, usual): (&str, &str), span: &str, unit: &str, outside: &str) -> String {
    let usual = if class.is_empty() {
        usual.to_owned()
    } else {
        element("span", class, usual)
    };
    let cells = [
        cell("", name),
        cell("dw-card__n", &usual),
        cell("dw-card__n", span),
        cell("dw-card__unit", unit),
        cell("dw-card__blank", ""),
        cell("dw-card__outside", outside),
    ];
    element("tr", "", &cells.concat())
}

/// The limits to set, low and high.
fn limits(told: &Told<'_>, style: Style) -> Option<String> {
    let airflow = &told.whole.airflow;
    let percent = |share: f64| fixed(100.0 * share, 0, style.mark);
    let both = |low: f64, high: f64| format!("{}, {}", percent(low), percent(high));
    let (limits, ..) = airflow.recommended?;
    let in_use = airflow.given.as_ref().map_or_else(String::new, |given| {
        format!("in use: {}", both(given.limits.low(), given.limits.high()))
    });
    Some(row(
        "Airflow limits, within the listed range",
        ("", &strong(&both(limits.low(), limits.high()))),
        &in_use,
        "%",
        "of the airflow found as fitted, filter new",
    ))
}

/// Assumed values that the answer rests on, and the duct's pressure where nobody measured it.
fn assumed(told: &Told<'_>, style: Style) -> Vec<String> {
    let deciding = told.resting.iter().filter(|one| one.decides);
    let mut rows = Vec::new();
    let mut asks_duct = false;
    for one in deciding.take(ASKED) {
        asks_duct |= one.assumed.figure == Figure::DuctStatic;
        let name = assumed_name(
            &told.names.spaces,
            one.assumed.figure,
            one.assumed.places.first().copied(),
        );
        rows.push(asked(
            &name,
            one.assumed.figure.kind(),
            [one.assumed.value, one.assumed.low, one.assumed.high],
            "the answer rests on it",
            style,
        ));
    }
    let duct = told.entered().map(|run| &run.duct.static_pa);
    if let Some(input) = duct
        && let Origin::Assumed { low, high, .. } = &input.origin
        && !asks_duct
    {
        rows.push(asked(
            "Duct static at the tube",
            Kind::Gauge,
            [input.value, *low, *high],
            "flow and limits follow it",
            style,
        ));
    }
    rows
}

fn asked(name: &str, kind: Kind, [value, low, high]: [f64; 3], why: &str, style: Style) -> String {
    let number = |value: f64| shown(kind, value, style).number;
    let span = format!("{} to {}", number(low), number(high));
    let mut letters = name.chars();
    let name = letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_ascii_uppercase(), letters.as_str())
    });
    let why = format!("{}: {why}", strong("assumed"));
    row(
        &escaped(&name),
        ("dw-card__assumed", &number(value)),
        &span,
        kind.unit(style),
        &why,
    )
}

/// A value that was entered in SI: with its digits there, rounded in other units.
pub(crate) fn shown(kind: Kind, value: f64, style: Style) -> Written {
    match style.units {
        Units::Si => kind.show_entered(value, style),
        Units::InchPound => kind.show(value, style),
    }
}
