//! Narrower and wider tubes of the library, nearest first.

use dewrun_quantity::Length;
use dewrun_run::library::{self, BoreForm, TubeRow};

use super::Ladder;
use crate::alteration::Alteration;
use crate::kind::Kind;
use crate::subject::Subject;

/// Narrower bores lock by water, and wider ones are none of a detector's, mm.
const BETWEEN_MM: core::ops::RangeInclusive<f64> = 10.0..=40.0;
/// Another bore differs by this at least, mm.
const OTHER_MM: f64 = 1.0;

/// All legs of both tubes of another row whose wall conducts about as well, as that of the first leg does.
pub(super) fn bores(subject: &Subject) -> Vec<Ladder> {
    let Some(first) = subject.inputs.run.intake.first() else {
        return Vec::new();
    };
    let bore = first.tube.bore;
    let k_w_mk = |row: &TubeRow| row.conductivity.usual.to_watts_per_metre_kelvin();
    let now_w_mk = first.tube.conductivity.to_watts_per_metre_kelvin();
    let is_alike = |row: &&TubeRow| {
        let times = k_w_mk(row) / now_w_mk;
        let bore_mm = row.bore.usual.to_millimetres();
        row.bore_form == BoreForm::Plain
            && BETWEEN_MM.contains(&bore_mm)
            && (0.5..=2.0).contains(&times)
    };
    let mut rows: Vec<&'static TubeRow> = library::tubes().iter().filter(is_alike).collect();
    let away = |row: &TubeRow| (row.bore.usual - bore).to_millimetres().abs();
    rows.sort_by(|one, next| away(one).total_cmp(&away(next)));
    let rungs = |is_wanted: &dyn Fn(Length) -> bool| {
        let mut rungs: Vec<Vec<Alteration>> = Vec::new();
        let mut last_mm: Option<f64> = None;
        for row in &rows {
            let mm = row.bore.usual.to_millimetres();
            let is_new = last_mm.is_none_or(|last| OTHER_MM <= (mm - last).abs());
            if is_wanted(row.bore.usual) && OTHER_MM <= away(row) && is_new {
                last_mm = Some(mm);
                rungs.push(all_of(subject, row));
            }
        }
        rungs
    };
    let narrower = Ladder::in_order(Kind::Narrower, rungs(&|one| one < bore));
    let wider = Ladder::in_order(Kind::Wider, rungs(&|one| bore < one));
    narrower.into_iter().chain(wider).collect()
}

fn all_of(subject: &Subject, row: &TubeRow) -> Vec<Alteration> {
    let legs = subject.all_legs().into_iter();
    legs.map(|(tube, leg)| Alteration::Tube {
        tube,
        leg,
        row: row.id,
    })
    .collect()
}
