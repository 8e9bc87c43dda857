//! Where the water goes: legs, low points, traps, frost, and traps that are missing.

use dewrun_quantity::{Style, Time};
use dewrun_run::figure::Figure;
use dewrun_run::{LegWater, Tube};

use super::Worked;
use super::flow::Piece;
use super::legs::head;
use super::number::number;
use super::relations::Relations;
use super::table::{Column, Table};

const LOW: [Figure; 8] = [
    Figure::LowPoint,
    Figure::LowPointWater,
    Figure::SealVolume,
    Figure::PoolCapacity,
    Figure::TimeToSlugs,
    Figure::TimeToLimit,
    Figure::TimeToSeal,
    Figure::PoolStanding,
];
const TRAP: [Figure; 8] = [
    Figure::TrapPlace,
    Figure::TrapWater,
    Figure::TrapFull,
    Figure::TrapPressure,
    Figure::TrapDropNeeded,
    Figure::TrapSealNeeded,
    Figure::DrainHead,
    Figure::TrapDries,
];
const MISSING: [Figure; 6] = [
    Figure::TrapProposed,
    Figure::LowPoint,
    Figure::LowPointWater,
    Figure::TrapSize,
    Figure::TrapDropNeeded,
    Figure::TrapSealNeeded,
];
const ICE: [Figure; 4] = [
    Figure::LegFrost,
    Figure::FrostMostAt,
    Figure::TimeToIce,
    Figure::ThawSlug,
];
const LEG: [Figure; 4] = [
    Figure::LegDrop,
    Figure::LegHolds,
    Figure::HangerLargest,
    Figure::AirSpeed,
];

/// The tables that have rows.
pub(super) fn pieces(worked: &Worked<'_>, relations: &mut Relations, style: Style) -> Vec<Piece> {
    let mut legs = table(
        "Where water runs",
        &["Leg", "Water runs", "Hung"],
        &LEG,
        relations,
        style,
    );
    let mut low = table("Low points", &["Tube"], &LOW, relations, style);
    let mut traps = table("Traps", &["Tube"], &TRAP, relations, style);
    let mut missing = table(
        "Traps that are missing",
        &["Tube"],
        &MISSING,
        relations,
        style,
    );
    let mut ice = table("Frost", &["Leg"], &ICE, relations, style);
    let told = &worked.told;
    for (tube, before) in [(Tube::Intake, 0), (Tube::Exhaust, told.run.intake.len())] {
        let Some(water) = told.water(tube) else {
            continue;
        };
        let name = match tube {
            Tube::Intake => "intake",
            Tube::Exhaust => "exhaust",
        };
        for (at, leg) in water.legs.iter().enumerate() {
            let (words, values) = of_leg(leg);
            let leg = (before + at + 1).to_string();
            row(
                &mut legs,
                &[&leg, words[0], words[1]],
                (&LEG, &values),
                style,
            );
        }
        for one in &water.low_points {
            let values = [
                Some(one.at.to_metres()),
                Some(one.rate.to_grams_per_hour()),
                Some(one.seal_volume.to_millilitres()),
                Some(one.capacity.to_millilitres()),
                one.first_slugs.map(Time::to_hours),
                one.trips.map(Time::to_hours),
                one.sealed.map(Time::to_hours),
                Some(one.amount.to_grams()),
            ];
            row(&mut low, &[name], (&LOW, &values), style);
        }
        for one in &water.traps {
            let values = [
                Some(one.at.to_metres()),
                Some(one.rate.to_grams_per_hour()),
                one.full.map(Time::to_days),
                Some(one.running.to_pascals()),
                Some(one.needs.outlet_drop.to_millimetres()),
                Some(one.needs.seal.to_millimetres()),
                Some(one.opened.head.to_millimetres()),
                one.dries_out.map(Time::to_days),
            ];
            row(&mut traps, &[name], (&TRAP, &values), style);
        }
        for one in &water.proposals {
            let values = [
                one.trap.at.map(dewrun_quantity::Length::to_metres),
                Some(one.trap.low_point.to_metres()),
                Some(one.trap.rate.to_grams_per_hour()),
                Some(one.capacity.to_grams()),
                Some(one.needs.outlet_drop.to_millimetres()),
                Some(one.needs.seal.to_millimetres()),
            ];
            row(&mut missing, &[name], (&MISSING, &values), style);
        }
        for one in &water.ice {
            let values = [
                Some(one.rate.to_grams_per_hour()),
                Some(one.at.to_metres()),
                one.closed.map(Time::to_hours),
                Some(one.thaw.to_grams()),
            ];
            let leg = (before + one.leg + 1).to_string();
            row(&mut ice, &[&leg], (&ICE, &values), style);
        }
    }
    let tables = [legs, low, traps, missing, ice].into_iter();
    tables
        .filter(|table| !table.is_empty())
        .map(Piece::Table)
        .collect()
}

fn of_leg(leg: &LegWater) -> ([&'static str; 2], [Option<f64>; 4]) {
    let report = &leg.report;
    let (hung, largest) = leg.hung_words();
    let [start, end] = report.heights;
    let values = [
        Some((start - end).to_millimetres().abs()),
        Some(report.holds.to_grams()),
        largest.map(dewrun_quantity::Length::to_metres),
        Some(leg.air_speed.to_metres_per_second()),
    ];
    ([leg.runs_words(), hung], values)
}

fn table(
    name: &str,
    words: &[&str],
    figures: &[Figure],
    relations: &mut Relations,
    style: Style,
) -> Table {
    let mut columns: Vec<Column> = words.iter().map(|word| Column::words(word, 16.0)).collect();
    columns.extend(
        figures
            .iter()
            .map(|figure| Column::number(&head(figure.name(), *figure, relations, style), 20.0)),
    );
    Table::new(
        name,
        "steady, walls dry at first; in brackets the relation",
        columns,
    )
}

fn row(
    table: &mut Table,
    words: &[&str],
    (figures, values): (&[Figure], &[Option<f64>]),
    style: Style,
) {
    let mut cells: Vec<String> = words.iter().map(|word| (*word).to_owned()).collect();
    let numbers = figures.iter().zip(values);
    cells.extend(numbers.map(|(figure, value)| number(figure.kind(), *value, style)));
    table.row(&cells);
}
