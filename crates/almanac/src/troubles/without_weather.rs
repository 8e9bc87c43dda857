//! A run whose weather nobody knows: what it does as it is entered, in any season.

use dewrun_desk::OpenProject;
use dewrun_document::to_ensemble;
use dewrun_ensemble::Plan;
use dewrun_run::{Outcome, WET_SENSOR_MIST, WET_TUBE_G_H, evaluate};
use dewrun_troubles::{InWeather, Modelled};

/// What is modelled of it.
///
/// # Errors
/// Why it has no answer, as a sentence.
pub(super) fn modelled(project: &OpenProject) -> Result<Modelled, String> {
    let said = to_ensemble(project, project.run).map_err(|error| error.to_string())?;
    let plan = Plan::new(said.usual, 0);
    let steady = evaluate(&plan.usual().run).map_err(|error| error.to_string())?;
    Ok(Modelled::in_weathers(&plan, [as_entered(&steady.value); 4]))
}

fn as_entered(outcome: &Outcome) -> InWeather {
    let tubes = || core::iter::once(&outcome.intake).chain(&outcome.exhaust);
    let water_g_h: f64 = tubes()
        .map(|tube| tube.condensate.to_grams_per_hour())
        .sum();
    let frost_g_h: f64 = tubes()
        .flat_map(|tube| &tube.legs)
        .map(|leg| leg.frost.to_grams_per_hour())
        .sum();
    InWeather {
        water_g_h: (water_g_h - frost_g_h).max(0.0),
        is_misty: WET_SENSOR_MIST < outcome.chamber.mist.to_kilograms_per_kilogram(),
        humidity: outcome.chamber.relative_humidity.to_fraction(),
        is_icy: WET_TUBE_G_H < frost_g_h,
    }
}
