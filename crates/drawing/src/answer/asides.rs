//! What stands beside the sentence: the proof, what is not computed, and what else a reader should know.

use dewrun_quantity::measure::{RELATIVE_HUMIDITY, WATER};
use dewrun_quantity::{RelativeHumidity, Style};
use dewrun_run::figure::{Figure, Spot};
use dewrun_run::{Grade, Outcome, Run, Tube};

use super::part::{Emphasis, Part};
use crate::wording;

/// The tube at whose end the sensor is.
const INTAKE: Spot = Spot::tube(Tube::Intake);

/// The asides, the most important first.
pub(super) fn asides(run: &Run, outcome: &Outcome, style: Style) -> Vec<Vec<Part>> {
    let mut asides = vec![proof(outcome.grade), no_airflow()];
    asides.extend(rating(run, outcome, style));
    asides.extend(near_wall_mist(outcome, style));
    asides
}

/// What is said of the airflow where none is computed.
pub(super) fn no_airflow() -> Vec<Part> {
    vec![Part::words("Airflow not computed.")]
}

/// How the verdict is proved.
pub(super) fn proof(grade: Grade) -> Vec<Part> {
    let word = wording::capital(super::grade(grade));
    let because = match grade {
        Grade::ByBound => ": the duct's dew point lies below the coldest surroundings of any leg.",
        Grade::ByModel => ".",
    };
    vec![Part::words(format!("{word}{because}"))]
}

/// That the chamber is more humid than the device is rated for.
fn rating(run: &Run, outcome: &Outcome, style: Style) -> Option<Vec<Part>> {
    let rating = run.detector.humidity_rating?;
    let humidity = outcome.chamber.relative_humidity;
    if humidity <= rating {
        return None;
    }
    let show = |humidity: RelativeHumidity| RELATIVE_HUMIDITY.show(humidity, style).to_string();
    Some(vec![
        Part::words("The chamber is at "),
        Part::figure(
            show(humidity),
            Emphasis::Strong,
            Figure::SensorHumidity,
            INTAKE,
        ),
        Part::words(", the device is rated for "),
        Part::figure(show(rating), Emphasis::None, Figure::HumidityRating, INTAKE),
        Part::words("."),
    ])
}

/// That mist may form at the wall though the bulk has none.
fn near_wall_mist(outcome: &Outcome, style: Style) -> Option<Vec<Part>> {
    let found = outcome.intake.near_wall_mist?;
    let most = WATER.show(found.upper_bound, style).to_string();
    Some(vec![
        Part::words("Mist may form close to the cold wall of the intake tube, no more than "),
        Part::figure(most, Emphasis::Mist, Figure::NearWallBound, INTAKE),
        Part::words("."),
    ])
}
