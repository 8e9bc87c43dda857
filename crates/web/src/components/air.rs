//! The duct air, the flow, the detector, and the spaces that the tube passes.

use leptos::prelude::*;

use super::humidity_choice::DuctHumidityChoice;
use super::section_head::SectionHead;
use super::spaces_table::SpacesTable;
use super::text_field::TextField;
use crate::state::{Field, use_desk};

/// The section of the air.
#[component]
pub(crate) fn Air() -> impl IntoView {
    let desk = use_desk();
    let duct = move || desk.with(|project| project.runs.first().map(|run| run.duct.name.clone()));
    let flow_at = move || {
        let at = desk.with(|project| project.runs.first().map(|run| run.flow.at));
        match at {
            Some(dewrun_document::FlowAt::Intake) => "Flow counted at the state of the duct air.",
            _ => "Flow counted at the state of the air at the sensor.",
        }
    };
    let rating = move || {
        let known =
            desk.with(|project| Field::DetectorRating.show(project, desk.style()).is_some());
        known.then(|| view! { <TextField field=Field::DetectorRating /> })
    };
    view! {
        <section class="dw-air" aria-labelledby="air">
            <SectionHead id="air" name="Air" question="How humid is the duct air, and what surrounds the tube?" />
            <div class="dw-air__parts">
                <div class="dw-air__part" role="group" aria-labelledby="duct-air">
                    <h3 id="duct-air" class="dw-air__name">"Duct air"<span class="dw-air__which">" "{duct}</span></h3>
                    <div class="dw-air__fields">
                        <TextField field=Field::DuctFirst />
                        <DuctHumidityChoice />
                        <TextField field=Field::DuctSecond />
                        <TextField field=Field::Pressure />
                    </div>
                </div>
                <div class="dw-air__part" role="group" aria-labelledby="flow-and-detector">
                    <h3 id="flow-and-detector" class="dw-air__name">"Flow and detector"</h3>
                    <div class="dw-air__fields">
                        <TextField field=Field::Flow />
                        <TextField field=Field::DetectorHeat />
                        {rating}
                    </div>
                    <p class="dw-air__note">{flow_at}</p>
                </div>
                <div class="dw-air__part dw-air__part--spaces">
                    <SpacesTable />
                </div>
            </div>
        </section>
    }
}
