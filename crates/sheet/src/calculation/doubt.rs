//! How sure the steady answer is: between what four of five plausible cases lie, and what makes that.

use dewrun_advice::{Spread, SteadyDoubt, Varied};
use dewrun_drawing::{assumed_name, escaped};
use dewrun_quantity::Style;
use dewrun_run::figure::{Figure, Kind};

use super::Worked;
use super::flow::Piece;
use super::number::{number, with_value};
use super::relations::Relations;
use super::results::capital;
use super::table::{Column, Table};

/// Smaller parts of a spread are noise.
const LEAST_SHARE: f64 = 0.01;

/// Both tables; nothing where doubt is not computed.
pub(super) fn pieces(worked: &Worked<'_>, relations: &mut Relations, style: Style) -> Vec<Piece> {
    let Some(doubt) = worked.doubt else {
        return Vec::new();
    };
    vec![
        Piece::Table(spreads(doubt, relations, style)),
        Piece::Table(shares(worked, doubt, relations)),
    ]
}

fn spreads(doubt: &SteadyDoubt, relations: &mut Relations, style: Style) -> Table {
    let columns = vec![
        Column::words("Quantity", 76.0),
        Column::number("one of ten under", 24.0),
        Column::number("half under", 24.0),
        Column::number("nine of ten under", 24.0),
        Column::words("", 20.0),
        Column::number("Relation", 16.0),
    ];
    let mut table = Table::new(
        "Doubt, steady",
        "assumed values and relations anywhere within their spans at once",
        columns,
    );
    let mut row = |name: &str, kind: Kind, spread: Spread, figure: Figure| {
        let values = [spread.p10, spread.p50, spread.p90];
        let [low, middle, high] = values.map(|value| number(kind, Some(value), style));
        table.row(&[
            name.to_owned(),
            low,
            format!("<b>{middle}</b>"),
            high,
            kind.unit(style).to_owned(),
            relations.cell(figure),
        ]);
    };
    row(
        "Water formed in the intake tube",
        Kind::Water,
        doubt.intake.water_g_h,
        Figure::DoubtLow,
    );
    row(
        "Sweat on the intake tube",
        Kind::Water,
        doubt.intake.sweat_g_h,
        Figure::DoubtLow,
    );
    if let Some(exhaust) = &doubt.exhaust {
        row(
            "Water formed in the exhaust tube",
            Kind::Water,
            exhaust.water_g_h,
            Figure::DoubtLow,
        );
        row(
            "Sweat on the exhaust tube",
            Kind::Water,
            exhaust.sweat_g_h,
            Figure::DoubtLow,
        );
    }
    row(
        "Mist at the sensor",
        Kind::Mist,
        doubt.mist,
        Figure::DoubtMist,
    );
    let wet = 100.0 * f64::from(doubt.wet) / f64::from(doubt.cases.max(1));
    let cases = |value: f64| number(Kind::Number, Some(value), style);
    table.row(&[
        "Plausible cases that are wet, of 100".to_owned(),
        String::new(),
        format!("<b>{}</b>", cases(wet)),
        String::new(),
        String::new(),
        relations.cell(Figure::DoubtWet),
    ]);
    let count = |count: u32| {
        with_value(Some(f64::from(count)), |value| {
            Kind::Count.show(value, style).number
        })
    };
    table.row(&[
        format!(
            "Cases computed; {} more have no answer",
            count(doubt.unanswered)
        ),
        String::new(),
        count(doubt.cases),
        String::new(),
        String::new(),
        relations.cell(Figure::DoubtCases),
    ]);
    table
}

fn shares(worked: &Worked<'_>, doubt: &SteadyDoubt, relations: &mut Relations) -> Table {
    let columns = vec![
        Column::words("What varies", 130.0),
        Column::number("part, %", 24.0),
        Column::number("Relation", 16.0),
    ];
    let mut table = Table::new(
        "What makes the spread of the water",
        "the part that each makes alone; under 1 % left out",
        columns,
    );
    for share in doubt.shares.iter().filter(|one| LEAST_SHARE <= one.share) {
        let name = match &share.varied {
            Varied::Assumed(one) => assumed_name(
                &worked.told.names.spaces,
                one.figure,
                one.places.first().copied(),
            ),
            Varied::Relation(relation) => relation.name().to_owned(),
        };
        table.row(&[
            escaped(&capital(&name)),
            with_value(Some(100.0 * share.share), |value| {
                Kind::Percent.show(value, Style::default()).number
            }),
            relations.cell(Figure::DoubtShare),
        ]);
    }
    table
}
