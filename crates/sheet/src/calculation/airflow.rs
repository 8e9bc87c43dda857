//! What still comes through: flow, transport time, limits, states and faults.

use dewrun_drawing::escaped;
use dewrun_quantity::{Style, Time};
use dewrun_run::figure::Figure;
use dewrun_run::told::{Trip, Verdict};
use dewrun_run::{FaultOutcome, Tube, fault_words};

use super::Worked;
use super::flow::Piece;
use super::legs::head;
use super::number::{number, with_unit};
use super::relations::Relations;
use super::results::capital;
use super::table::{Column, Table};

const COLUMNS: [Figure; 3] = [Figure::SensorFlow, Figure::FlowReading, Figure::SampleShare];

/// What comes through as it is, then states and faults.
pub(super) fn pieces(worked: &Worked<'_>, relations: &mut Relations, style: Style) -> Vec<Piece> {
    vec![
        Piece::Table(now(worked, relations, style)),
        Piece::Table(states(worked, relations, style)),
    ]
}

fn now(worked: &Worked<'_>, relations: &mut Relations, style: Style) -> Table {
    let air = &worked.told.whole.airflow;
    let transport = air.now.transport;
    let seconds = |time: Option<Time>| time.map(Time::to_seconds);
    let recommended = air.recommended.map(|(limits, ..)| limits);
    let given = air.given.as_ref().map(|given| given.limits);
    let percent = |share: f64| 100.0 * share;
    let rows = [
        (
            Figure::SensorFlow,
            "",
            Some(air.now.sensor.to_litres_per_minute()),
        ),
        (Figure::SampleShare, "", Some(percent(air.now.share))),
        (Figure::FlowReading, "", Some(percent(air.reading_now))),
        (Figure::FanSpeed, "", Some(air.fan_speed)),
        (
            Figure::TransportFirst,
            "",
            seconds(transport.map(|band| band.first)),
        ),
        (
            Figure::TransportPlug,
            "",
            seconds(transport.map(|band| band.plug)),
        ),
        (
            Figure::TransportNinety,
            "",
            seconds(transport.map(|band| band.ninety_percent)),
        ),
        (
            Figure::LimitLow,
            "recommended",
            recommended.map(|limits| percent(limits.low())),
        ),
        (
            Figure::LimitHigh,
            "recommended",
            recommended.map(|limits| percent(limits.high())),
        ),
        (
            Figure::AirflowLimit,
            "low, in use",
            given.map(|limits| percent(limits.low())),
        ),
        (
            Figure::AirflowLimit,
            "high, in use",
            given.map(|limits| percent(limits.high())),
        ),
    ];
    let columns = vec![
        Column::words("Quantity", 70.0),
        Column::words("", 36.0),
        Column::number("Value", 26.0),
        Column::words("", 26.0),
        Column::number("Relation", 16.0),
    ];
    let mut table = Table::new("Airflow", "as drawn", columns);
    for (figure, beside, value) in rows {
        if value.is_none() {
            continue;
        }
        table.row(&[
            escaped(&capital(figure.name())),
            beside.to_owned(),
            format!("<b>{}</b>", number(figure.kind(), value, style)),
            figure.kind().unit(style).to_owned(),
            relations.cell(figure),
        ]);
    }
    table
}

fn states(worked: &Worked<'_>, relations: &mut Relations, style: Style) -> Table {
    let air = &worked.told.whole.airflow;
    let mut columns = vec![
        Column::words("State or fault", 60.0),
        Column::words("By the limits", 40.0),
    ];
    columns.extend(
        COLUMNS.map(|figure| Column::number(&head(figure.name(), figure, relations, style), 28.0)),
    );
    let beside = if air.given.is_some() {
        "judged by the limits in use; a fault that is not seen is named as such"
    } else {
        "judged by the limits recommended; a fault that is not seen is named as such"
    };
    let mut table = Table::new("States and faults of the airflow", beside, columns);
    let mut row = |name: String, limits: &str, flow: f64, reading: f64, share: f64| {
        let values = [flow, 100.0 * reading, 100.0 * share];
        let mut cells = vec![name, limits.to_owned()];
        let numbers = COLUMNS.into_iter().zip(values);
        cells.extend(numbers.map(|(figure, value)| number(figure.kind(), Some(value), style)));
        table.row(&cells);
    };
    for state in &air.states {
        row(
            escaped(&state.state.words()),
            "must not trip",
            state.airflow.sensor.to_litres_per_minute(),
            state.reading,
            state.airflow.share,
        );
    }
    for fault in &air.faults {
        let verdict = match air.given {
            Some(_) => fault.given,
            None => fault.recommended,
        };
        let told = match verdict {
            Some(Verdict::Caught(Trip::Low)) => "trips the low limit",
            Some(Verdict::Caught(Trip::High)) => "trips the high limit",
            Some(Verdict::Missed { .. }) => "<b>not seen</b>",
            None => "",
        };
        row(
            fault_name(fault, style),
            told,
            fault.airflow.sensor.to_litres_per_minute(),
            fault.reading,
            fault.airflow.share,
        );
    }
    table
}

fn fault_name(fault: &FaultOutcome, style: Style) -> String {
    let (words, at) = fault_words(fault.fault);
    let Some((tube, metres)) = at else {
        return capital(words);
    };
    let tube = match tube {
        Tube::Intake => "Intake",
        Tube::Exhaust => "Exhaust",
    };
    let place = with_unit(Figure::FaultPlace.kind(), metres, style);
    format!("{tube} {words} at {place}")
}
