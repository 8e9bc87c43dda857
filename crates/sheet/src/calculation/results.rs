//! The results of the steady answer, each with the number of its relation.

use dewrun_drawing::escaped;
use dewrun_quantity::Style;
use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot, value};

use super::Worked;
use super::flow::Piece;
use super::number::number;
use super::relations::Relations;
use super::table::{Column, Table};

const DUCT: [Figure; 4] = [
    Figure::InletTemperature,
    Figure::InletDewPoint,
    Figure::InletRatio,
    Figure::DryAir,
];
const TUBE: [Figure; 9] = [
    Figure::TubeWater,
    Figure::TubeFrost,
    Figure::TubeSweat,
    Figure::WetFrom,
    Figure::WetTo,
    Figure::ColdestWall,
    Figure::ColdestWallAt,
    Figure::MostMist,
    Figure::NearWallBound,
];
const SENSOR: [Figure; 4] = [
    Figure::SensorTemperature,
    Figure::SensorHumidity,
    Figure::SensorDewPoint,
    Figure::SensorMist,
];
const BALANCE: [Figure; 4] = [
    Figure::WaterIn,
    Figure::WaterLeftOver,
    Figure::EnergyTurnedOver,
    Figure::EnergyLeftOver,
];

/// The table of results.
pub(super) fn pieces(worked: &Worked<'_>, relations: &mut Relations, style: Style) -> Vec<Piece> {
    let columns = vec![
        Column::words("Of", 30.0),
        Column::words("Quantity", 76.0),
        Column::number("Value", 26.0),
        Column::words("", 26.0),
        Column::number("Relation", 16.0),
    ];
    let mut table = Table::new("Results, steady, in the conditions entered", "", columns);
    let mut rows = |of: &str, figures: &[Figure], tube: Tube| {
        for figure in figures {
            let found = value(
                worked.told.run,
                worked.told.outcome,
                *figure,
                Spot::tube(tube),
            );
            let Some(found) = found else { continue };
            table.row(&[
                of.to_owned(),
                escaped(&capital(figure.name())),
                format!("<b>{}</b>", number(figure.kind(), Some(found), style)),
                figure.kind().unit(style).to_owned(),
                relations.cell(*figure),
            ]);
        }
    };
    rows("duct air", &DUCT, Tube::Intake);
    rows("intake tube", &TUBE, Tube::Intake);
    rows("sensor", &SENSOR, Tube::Intake);
    if worked.told.outcome.exhaust.is_some() {
        rows("exhaust tube", &TUBE, Tube::Exhaust);
    }
    rows("balance", &BALANCE, Tube::Intake);
    vec![Piece::Table(table)]
}

/// With a capital letter first.
pub(super) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_ascii_uppercase(), letters.as_str())
    })
}
