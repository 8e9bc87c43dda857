//! How humid the duct air is and how humid it may be: the dew square, the air's inputs, and what would stay dry.

use dewrun_document::FlowAt;

use super::dew_square::square;
use super::humidity_kind::humidity_kind;
use super::opened_figure::opened_figure;
use super::parts::{flag, section, words};
use super::pick_row::{Place, pick_row};
use super::section_head::section_head;
use super::spaces_table::spaces_table;
use super::staying_dry::stays_dry;
use super::text_field::text_field;
use crate::element::{El, el, when};
use crate::hooks::after_paint::use_after_paint;
use crate::state::use_desk;
use dewrun_desk::{Field, HumidOf, Pick};

/// The section of the air.
pub(crate) fn air() -> El {
    let desk = use_desk();
    let duct = words(move || {
        desk.with(|project| project.open_run().map(|run| run.duct.name.clone()))
            .unwrap_or_default()
    });
    let flow_at = words(move || {
        let at = desk.with(|project| project.open_run().map(|run| run.flow.at));
        match at {
            Some(FlowAt::Intake) => "Flow counted at the state of the duct air.",
            _ => "Flow counted at the state of the air at the sensor.",
        }
        .to_owned()
    });
    let answered = use_after_paint(desk.settled());
    let has_kind = flag(move || desk.with(|project| HumidOf::Duct.kind(project).is_some()));
    let is_rated = flag(move || {
        desk.with(|project| Field::DetectorRating.show(project, desk.style()).is_some())
    });
    let fields = || el("div").class("dw-air__fields");
    let entered = fields()
        .child(text_field(Field::DuctFirst, false))
        .child(when(has_kind, || vec![humidity_kind(HumidOf::Duct, false)]))
        .child(text_field(Field::DuctSecond, false))
        .child(text_field(Field::Pressure, false));
    let which = el("span").class("dw-air__which").child(duct);
    let duct_air = part("duct-air", "Where the duct air comes from ", Some(which))
        .child(pick_row(Pick::DuctAir, Place::Told))
        .child(entered);
    let flow = part("flow-and-detector", "Flow and detector", None)
        .child(pick_row(Pick::Detector, Place::Told))
        .child(
            fields()
                .child(text_field(Field::Flow, false))
                .child(text_field(Field::DetectorHeat, false))
                .child(when(is_rated, || {
                    vec![text_field(Field::DetectorRating, false)]
                })),
        )
        .child(el("p").class("dw-air__note").child(flow_at));
    let parts = el("div").class("dw-air__parts").child([
        duct_air,
        stays_dry(answered),
        flow,
        spaces_table(),
    ]);
    let halves = el("div")
        .class("dw-air__halves")
        .child([square(answered), parts]);
    section("dw-air", "air", "air")
        .child(section_head(
            "air",
            "Air",
            "How humid is the duct air, and how far above what the route can take?",
            [],
        ))
        .child(halves)
        .child(opened_figure("air"))
}

/// A part under a name, which may say which one it is.
fn part(id: &str, name: &str, which: Option<El>) -> El {
    let which: Vec<El> = which.into_iter().collect();
    let name = el("h3")
        .attr("id", id)
        .class("dw-air__name")
        .child(name)
        .child(which);
    el("div")
        .attr("role", "group")
        .attr("aria-labelledby", id)
        .child(name)
}
