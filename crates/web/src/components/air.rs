//! How humid the duct air is and how humid it may be: the dew square, the air's inputs, and what would stay dry.

use dewrun_document::FlowAt;
use leptos::prelude::*;

use super::dew_square::DewSquare;
use super::humidity_kind::HumidityKindChoice;
use super::opened_figure::OpenedFigure;
use super::parts::{When, flag, words};
use super::pick_row::PickRow;
use super::section_head::SectionHead;
use super::spaces_table::SpacesTable;
use super::staying_dry::StayingDry;
use super::text_field::TextField;
use crate::hooks::after_paint::use_after_paint;
use crate::state::{Field, HumidOf, Pick, use_desk};

/// The section of the air.
#[component]
pub(crate) fn Air() -> impl IntoView {
    let desk = use_desk();
    let duct = words(move || {
        desk.with(|project| project.runs.first().map(|run| run.duct.name.clone()))
            .unwrap_or_default()
    });
    let flow_at = words(move || {
        let at = desk.with(|project| project.runs.first().map(|run| run.flow.at));
        match at {
            Some(FlowAt::Intake) => "Flow counted at the state of the duct air.",
            _ => "Flow counted at the state of the air at the sensor.",
        }
        .to_owned()
    });
    let answered = use_after_paint(Signal::derive(move || desk.answered()));
    let has_kind = flag(move || desk.with(|project| HumidOf::Duct.kind(project).is_some()));
    let is_rated = flag(move || {
        desk.with(|project| Field::DetectorRating.show(project, desk.style()).is_some())
    });
    view! {
        <section class="dw-air" aria-labelledby="air" data-opens="air">
            <SectionHead id="air" name="Air" question="How humid is the duct air, and how far above what the route can take?" />
            <div class="dw-air__halves">
            <DewSquare answered=answered />
            <div class="dw-air__parts">
                <div role="group" aria-labelledby="duct-air">
                    <h3 id="duct-air" class="dw-air__name">
                        "Where the duct air comes from "
                        <span class="dw-air__which">{duct}</span>
                    </h3>
                    <PickRow pick=Pick::DuctAir />
                    <div class="dw-air__fields">
                        <TextField field=Field::DuctFirst />
                        <When holds=has_kind>
                            <HumidityKindChoice of=HumidOf::Duct />
                        </When>
                        <TextField field=Field::DuctSecond />
                        <TextField field=Field::Pressure />
                    </div>
                </div>
                <StayingDry answered=answered />
                <div role="group" aria-labelledby="flow-and-detector">
                    <h3 id="flow-and-detector" class="dw-air__name">"Flow and detector"</h3>
                    <PickRow pick=Pick::Detector />
                    <div class="dw-air__fields">
                        <TextField field=Field::Flow />
                        <TextField field=Field::DetectorHeat />
                        <When holds=is_rated>
                            <TextField field=Field::DetectorRating />
                        </When>
                    </div>
                    <p class="dw-air__note">{flow_at}</p>
                </div>
                <SpacesTable />
            </div>
            </div>
            <OpenedFigure section="air" />
        </section>
    }
}
