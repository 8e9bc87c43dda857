//! Water and airflow of a run as text: low points, traps, hangers, states, faults, limits.

use dewrun_quantity::Style;
use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_run::figure::{Figure, Kind};
use dewrun_run::told::{Trip, Verdict};
use dewrun_run::{
    AirflowOutcome, LegWater, LowPoint, TrapOutcome, Tube, TubeWater, Whole, fault_words,
};

use crate::columns::{columns, head};
use crate::evaluate::Answered;

/// Water in both tubes, then the air through them.
pub(crate) fn whole(answered: &Answered, whole: &Whole, style: Style) -> String {
    let mut text = String::new();
    for (name, tube, ids) in [
        ("intake", Some(&whole.intake), &answered.names.intake),
        ("exhaust", whole.exhaust.as_ref(), &answered.names.exhaust),
    ] {
        if let Some(tube) = tube {
            text.push_str(&format!("\nWater in the {name} tube\n"));
            text.push_str(&water(tube, ids, style));
        }
    }
    text.push_str("\nAirflow\n");
    text.push_str(&airflow(&whole.airflow, style));
    text
}

fn water(tube: &TubeWater, ids: &[String], style: Style) -> String {
    let mut text = table(
        &[
            ("leg", None),
            ("water runs", None),
            ("hung", None),
            ("", Some(Figure::LegDrop)),
            ("", Some(Figure::LegHolds)),
            ("", Some(Figure::HangerLargest)),
            ("", Some(Figure::AirSpeed)),
        ],
        tube.legs
            .iter()
            .enumerate()
            .map(|(at, leg)| leg_row(ids.get(at), leg, style)),
        style,
    );
    if !tube.low_points.is_empty() {
        text.push('\n');
        let rows = tube.low_points.iter().map(|low| low_row(low, style));
        text.push_str(&table(&LOW_POINT, rows, style));
    }
    if !tube.traps.is_empty() {
        text.push('\n');
        let rows = tube.traps.iter().map(|trap| trap_row(trap, style));
        text.push_str(&table(&TRAP, rows, style));
    }
    for ice in &tube.ice {
        let closed = ice.closed.map_or_else(
            || DOES_NOT_APPLY.to_owned(),
            |closed| shown(Figure::TimeToIce, closed.to_hours(), style),
        );
        text.push_str(&format!(
            "Frost in leg {}: {}, most at {}, closes the bore after {}; {} come down when it thaws.\n",
            ids.get(ice.leg).map_or("", String::as_str),
            shown(Figure::LegFrost, ice.rate.to_grams_per_hour(), style),
            shown(Figure::FrostMostAt, ice.at.to_metres(), style),
            closed,
            shown(Figure::ThawSlug, ice.thaw.to_grams(), style),
        ));
    }
    for proposal in &tube.proposals {
        let place = match proposal.trap.at {
            Some(at) => format!(
                "Trap missing at {}",
                shown(Figure::TrapProposed, at.to_metres(), style)
            ),
            None => "Trap missing, no place that leads there can be reached".to_owned(),
        };
        text.push_str(&format!(
            "{place}: {} from the low point at {}, {} between emptyings; outlet {} below the tube, seal {}.\n",
            shown(Figure::LowPointWater, proposal.trap.rate.to_grams_per_hour(), style),
            shown(Figure::LowPoint, proposal.trap.low_point.to_metres(), style),
            shown(Figure::TrapSize, proposal.capacity.to_grams(), style),
            shown(Figure::TrapDropNeeded, proposal.needs.outlet_drop.to_millimetres(), style),
            shown(Figure::TrapSealNeeded, proposal.needs.seal.to_millimetres(), style),
        ));
    }
    text
}

fn leg_row(id: Option<&String>, leg: &LegWater, style: Style) -> Vec<String> {
    let report = &leg.report;
    let (hangers, largest) = leg.hung_words();
    let [start, end] = report.heights;
    vec![
        id.cloned().unwrap_or_default(),
        leg.runs_words().to_owned(),
        hangers.to_owned(),
        number(
            Figure::LegDrop,
            Some((start - end).to_millimetres().abs()),
            style,
        ),
        number(Figure::LegHolds, Some(report.holds.to_grams()), style),
        number(
            Figure::HangerLargest,
            largest.map(|largest| largest.to_metres()),
            style,
        ),
        number(
            Figure::AirSpeed,
            Some(leg.air_speed.to_metres_per_second()),
            style,
        ),
    ]
}

const LOW_POINT: [(&str, Option<Figure>); 8] = [
    ("", Some(Figure::LowPoint)),
    ("", Some(Figure::LowPointWater)),
    ("", Some(Figure::SealVolume)),
    ("", Some(Figure::PoolCapacity)),
    ("", Some(Figure::TimeToSlugs)),
    ("", Some(Figure::TimeToLimit)),
    ("", Some(Figure::TimeToSeal)),
    ("", Some(Figure::PoolStanding)),
];

fn low_row(low: &LowPoint, style: Style) -> Vec<String> {
    let hours = |time: Option<dewrun_quantity::Time>| time.map(|time| time.to_hours());
    let values = [
        Some(low.at.to_metres()),
        Some(low.rate.to_grams_per_hour()),
        Some(low.seal_volume.to_millilitres()),
        Some(low.capacity.to_millilitres()),
        hours(low.first_slugs),
        hours(low.trips),
        hours(low.sealed),
        Some(low.amount.to_grams()),
    ];
    numbers(&LOW_POINT, &values, style)
}

const TRAP: [(&str, Option<Figure>); 8] = [
    ("", Some(Figure::TrapPlace)),
    ("", Some(Figure::TrapWater)),
    ("", Some(Figure::TrapFull)),
    ("", Some(Figure::TrapPressure)),
    ("", Some(Figure::TrapDropNeeded)),
    ("", Some(Figure::TrapSealNeeded)),
    ("", Some(Figure::DrainHead)),
    ("", Some(Figure::TrapDries)),
];

fn trap_row(trap: &TrapOutcome, style: Style) -> Vec<String> {
    let days = |time: Option<dewrun_quantity::Time>| time.map(|time| time.to_days());
    let values = [
        Some(trap.at.to_metres()),
        Some(trap.rate.to_grams_per_hour()),
        days(trap.full),
        Some(trap.running.to_pascals()),
        Some(trap.needs.outlet_drop.to_millimetres()),
        Some(trap.needs.seal.to_millimetres()),
        Some(trap.opened.head.to_millimetres()),
        days(trap.dries_out),
    ];
    numbers(&TRAP, &values, style)
}

/// States and faults, each with its reading and its share of duct air.
fn airflow(outcome: &AirflowOutcome, style: Style) -> String {
    let percent = |share: f64| 100.0 * share;
    let mut rows = Vec::new();
    for state in &outcome.states {
        rows.push(vec![
            state.state.words(),
            "must not trip".to_owned(),
            number(
                Figure::SensorFlow,
                Some(state.airflow.sensor.to_litres_per_minute()),
                style,
            ),
            number(Figure::FlowReading, Some(percent(state.reading)), style),
            number(
                Figure::SampleShare,
                Some(percent(state.airflow.share)),
                style,
            ),
        ]);
    }
    for fault in &outcome.faults {
        let verdict = match outcome.given {
            Some(_) => fault.given,
            None => fault.recommended,
        };
        let told = match verdict {
            Some(Verdict::Caught(Trip::Low)) => "trips the low limit",
            Some(Verdict::Caught(Trip::High)) => "trips the high limit",
            Some(Verdict::Missed { .. }) => "not seen",
            None => DOES_NOT_APPLY,
        };
        let (words, at) = fault_words(fault.fault);
        let name = at.map_or_else(
            || words.to_owned(),
            |(tube, metres)| {
                let tube = match tube {
                    Tube::Intake => "intake",
                    Tube::Exhaust => "exhaust",
                };
                format!(
                    "{tube} {words} at {}",
                    shown(Figure::FaultPlace, metres, style)
                )
            },
        );
        rows.push(vec![
            name,
            told.to_owned(),
            number(
                Figure::SensorFlow,
                Some(fault.airflow.sensor.to_litres_per_minute()),
                style,
            ),
            number(Figure::FlowReading, Some(percent(fault.reading)), style),
            number(
                Figure::SampleShare,
                Some(percent(fault.airflow.share)),
                style,
            ),
        ]);
    }
    let heads = [
        ("state or fault", None),
        ("limits", None),
        ("", Some(Figure::SensorFlow)),
        ("", Some(Figure::FlowReading)),
        ("", Some(Figure::SampleShare)),
    ];
    table(&heads, rows.into_iter(), style)
}

fn numbers(heads: &[(&str, Option<Figure>)], values: &[Option<f64>], style: Style) -> Vec<String> {
    let figures = heads.iter().filter_map(|(_, figure)| *figure);
    figures
        .zip(values)
        .map(|(figure, value)| number(figure, *value, style))
        .collect()
}

/// A number without its unit, which stands in the head.
fn number(figure: Figure, value: Option<f64>, style: Style) -> String {
    value.filter(|value| value.is_finite()).map_or_else(
        || DOES_NOT_APPLY.to_owned(),
        |value| figure.kind().show(value, style).number,
    )
}

fn shown(figure: Figure, value: f64, style: Style) -> String {
    let kind: Kind = figure.kind();
    kind.show(value, style).to_string()
}

/// A table with its heads, words at the left and numbers at the right, a line each.
fn table(
    heads: &[(&str, Option<Figure>)],
    rows: impl Iterator<Item = Vec<String>>,
    style: Style,
) -> String {
    let words = heads.iter().filter(|(_, figure)| figure.is_none()).count();
    let heads = heads.iter().map(|(word, figure)| {
        figure.map_or_else(|| (*word).to_owned(), |figure| head(figure, style))
    });
    columns(heads, rows, words)
}
