//! In which order to look, and how to get there.

use dewrun_document::Access;
use dewrun_drawing::{escaped, site_place};
use dewrun_quantity::Style;
use dewrun_run::Tube;

use super::cause::CauseTold;
use crate::markup::strong;
use crate::told::{Told, called, reached};

/// Drains and traps first, electronics last: common practice, no source. What settles most of the doubt comes before them.
const ORDER: [&str; 6] = [
    "Drains and traps: water, grams, seal; opened only with the fan off under the impairment procedure.",
    "Falls and insulation: every leg with a level, no sag, no gap in the insulation.",
    "Joints, sleeves and holes: pushed home and sealed, holes open; from outside first.",
    "Filter and airflow: as found, then with a new filter; against the baseline below.",
    "Heating and margin over the dew point at the coldest place, where there is any.",
    "Electronics, supply and limits last.",
];

/// Things to tick off, in their order.
pub(super) fn items(told: &Told<'_>, cause: &CauseTold) -> Vec<String> {
    let first = (!cause.check.is_empty())
        .then(|| format!("{} {}", strong("First:"), escaped(&cause.check)));
    let mut items: Vec<String> = first.into_iter().collect();
    items.extend(ORDER.iter().map(|one| escaped(one)));
    if told.whole.blind.is_some() {
        items.push(
            "This detector may not be sampling its duct: say so to whoever answers for it before you leave."
                .to_owned(),
        );
    }
    items
}

/// How the detector and each trap or low point is reached.
pub(super) fn access(told: &Told<'_>, style: Style) -> Vec<String> {
    let from = |access: Access| match access {
        Access::None => "out of reach".to_owned(),
        access => format!("from {}", reached(access)),
    };
    let mut items = Vec::new();
    if let Some(run) = told.entered() {
        items.push(format!(
            "{}: {}",
            strong("Detector"),
            from(run.detector.access)
        ));
    }
    for tube in [Tube::Intake, Tube::Exhaust] {
        let Some(water) = told.water(tube) else {
            continue;
        };
        let traps = told.traps(tube).iter().map(|trap| ("Trap", trap.at));
        let low_points = water.low_points.iter().map(|one| ("Low point", one.at));
        for (what, at) in traps.chain(low_points) {
            let reach = told.access(tube, at).map_or_else(String::new, from);
            let place = format!(
                "{what} at {} of the {}",
                site_place(at, style),
                called(tube)
            );
            items.push(format!("{}: {reach}", strong(&place)));
        }
    }
    items
}
