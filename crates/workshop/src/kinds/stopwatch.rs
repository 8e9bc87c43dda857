//! The stopwatch as it stands: what the next press says, the time, what was taken, and how it is written down.

use dewrun_desk::{Stopwatch, VisitField, filter_at, occasion, style_of};
use dewrun_drawing::html::opening;
use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot};

use super::visits::{expected, fields, whole};
use crate::asked::Asked;

/// Words are the form of the visit; numbers a style, the moment, and when the button was pressed, s.
pub(super) fn told(asked: &Asked<'_>) -> Result<String, String> {
    let (style, moments) = style_of(asked.numbers);
    let (now, pressed) = moments.split_first().unwrap_or((&0.0, &[]));
    let watch = Stopwatch::pressed(pressed);
    let filter = filter_at(occasion(&fields(asked.words)));
    let expected = expected(whole(asked)?, filter);
    let spot = Spot::tube(Tube::Intake);
    let lines: String = watch
        .told(&expected, style)
        .iter()
        .zip([Figure::TransportFirst, Figure::TransportNinety])
        .map(|(line, figure)| format!("<p>{}</p>", opening(figure, spot, "", line)))
        .collect();
    let taken = |field: VisitField, seconds: Option<f64>| {
        seconds.map_or_else(String::new, |seconds| field.show(seconds, style))
    };
    let parts = [
        watch.button().to_owned(),
        watch.counted(*now, style),
        lines,
        taken(VisitField::FirstSmoke, watch.first_smoke_s()),
        taken(VisitField::NinetyPercent, watch.ninety_percent_s()),
    ];
    Ok(parts.join("\u{1f}"))
}
