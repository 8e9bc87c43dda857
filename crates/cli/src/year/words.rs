//! The year of a run in a few sentences.

use dewrun_document::{DesignAnswer, WeatherReference, YearSaid, stamp, year_verdict};
use dewrun_quantity::DecimalMark;
use dewrun_quantity::format::{amount, entered, fixed};
use dewrun_run::{Grade, Verdict};
use dewrun_season::told::trouble_name;
use dewrun_season::{DesignBy, YearOutcome};

/// The year of a run in a few sentences.
pub(super) fn sentence(
    said: &YearSaid,
    weather: Option<&WeatherReference>,
    outcome: Option<&YearOutcome>,
    design: &[DesignAnswer],
) -> String {
    let told = match (weather, outcome) {
        (Some(weather), Some(outcome)) => of_year(weather, outcome),
        _ => without_file(said, design),
    };
    told.join(" ")
}

fn of_year(weather: &WeatherReference, outcome: &YearOutcome) -> Vec<String> {
    let mut told = Vec::new();
    let water = outcome.water.as_ref().ok().map(|water| &water.sum);
    if let Some(water) = water.filter(|water| 0.0 < water.hours.blind) {
        told.push(format!(
            "This detector may not be sampling the duct in {} of the year.",
            hours(water.hours.blind)
        ));
    }
    let (all, sum) = (hours(outcome.sum.hours), &outcome.sum);
    let place = match weather.place.trim() {
        "" => weather.file.as_str(),
        place => place,
    };
    told.push(match year_verdict(outcome) {
        Verdict::Dry => format!(
            "In the weather of {place} every hour of {all} is dry in the conditions entered; doubt not computed yet."
        ),
        Verdict::Wet => format!(
            "In the weather of {place} {} of {all} are wet: {} of water form in the tubes.",
            hours(sum.wet_hours),
            litres(sum.condensed_kg)
        ),
    });
    if let Some((day, kg)) = sum.worst_day {
        let on = stamp(outcome, day).unwrap_or_default();
        let day = on.split_once('T').map_or(on.as_str(), |(day, _)| day);
        told.push(format!("Most forms on {day}: {}.", litres(kg)));
    }
    let mut also = |held: f64, what: &str| {
        if 0.0 < held {
            told.push(format!("{what} in {}.", hours(held)));
        }
    };
    also(sum.mist_hours, "Mist reaches the sensor");
    also(sum.frost_hours, "Ice lies on a wall");
    also(
        sum.hours_above_rating.unwrap_or(0.0),
        "The chamber is more humid than the device's rating",
    );
    if let Some(week) = water.and_then(|water| water.first_critical) {
        let at = stamp(outcome, week.hour).unwrap_or_default();
        let at = at.replace('T', " ");
        told.push(format!(
            "The first trouble with standing water or airflow comes on {at}: {}.",
            trouble_name(week.trouble)
        ));
    }
    told.push(proof(outcome, &all));
    if outcome.hourly.is_typical_year {
        told.push("A typical year leaves extremes out.".to_owned());
    }
    told
}

/// What the answer rests on.
fn proof(outcome: &YearOutcome, all: &str) -> String {
    match outcome.grade {
        Grade::ByBound => {
            "By bound: the duct's dew point lies below the coldest surface in every hour."
                .to_owned()
        }
        Grade::ByModel => format!(
            "By model; {} of {all} are dry by bound.",
            hours(outcome.by_bound_hours)
        ),
    }
}

/// Design states answer where the file does not.
fn without_file(said: &YearSaid, design: &[DesignAnswer]) -> Vec<String> {
    let mut told = vec![match &said.weather {
        Some(file) => format!(
            "The weather file {} is missing, so there is no year.",
            file.file
        ),
        None => "There is no weather file, so there is no year.".to_owned(),
    }];
    for answer in design {
        let state = &answer.state;
        let by = match state.by {
            DesignBy::DewPoint => "dew point",
            DesignBy::Temperature => "temperature",
        };
        let exceeded = entered(state.exceeded_percent);
        let found = match answer.verdict {
            Verdict::Wet => format!(
                "{} g/h of water form",
                amount(3.6e6 * answer.condensed_kg_s, 1, DecimalMark::Point)
            ),
            Verdict::Dry => "it is dry in the conditions entered".to_owned(),
        };
        told.push(format!("In the {exceeded} % design {by} {found}."));
    }
    told
}

fn hours(hours: f64) -> String {
    format!("{}\u{a0}h", fixed(hours, 0, DecimalMark::Point))
}

fn litres(kg: f64) -> String {
    format!("{}\u{a0}L", amount(kg, 2, DecimalMark::Point))
}
