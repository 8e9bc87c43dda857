//! What the detector gets: the air around the sensor.

use dewrun_drawing::html;

use super::opened_figure::opened_figure;
use super::parts::{flag, section, words};
use super::section_head::section_head;
use crate::element::{El, el};
use crate::state::use_desk;

/// The section of the sensor.
pub(crate) fn sensor() -> El {
    let desk = use_desk();
    let figures = words(move || {
        desk.answered()
            .map(|answered| html::sensor(&answered.run, &answered.outcome, desk.style()))
            .unwrap_or_default()
    });
    let shown = el("dl")
        .class("dw-figures dw-sensor__figures")
        .class_if("dw-stale", flag(move || desk.is_stale()))
        .html(figures);
    section("dw-sensor", "sensor", "sensor")
        .child(section_head(
            "sensor",
            "Sensor",
            "What air does the detector get?",
            [],
        ))
        .child(shown)
        .child(opened_figure("sensor"))
}
