//! The dew square in words, made from its data, for those who can't see it.

use dewrun_advice::{BoundaryPoint, Limit};
use dewrun_quantity::Temperature;

use super::course::Course;
use crate::view::View;
use crate::wording::celsius;

/// What the plot is.
pub(super) fn title() -> String {
    "Dew square: temperature across, dew point up, with the path of the air and the dry boundary"
        .to_owned()
}

/// What it shows.
pub(super) fn sentence(view: &View<'_>, course: &Course, boundary: &[BoundaryPoint]) -> String {
    let (Some(duct), Some(sensor)) = (course.duct(), course.sensor) else {
        return "The duct air is bone-dry: it has no dew point.".to_owned();
    };
    let words = |t_c| celsius(Temperature::celsius(t_c), view.style);
    let wall = if view.outcome.intake.wet.is_empty() {
        "stays above"
    } else {
        "goes below"
    };
    format!(
        "From the duct at {}, dew point {}, the air goes to {}, dew point {} at the sensor; the inner wall {wall} the dew point. {}",
        words(duct.0),
        words(duct.1),
        words(sensor.0),
        words(sensor.1),
        limit(view, boundary)
    )
}

/// How humid the duct air may be.
fn limit(view: &View<'_>, boundary: &[BoundaryPoint]) -> String {
    let found = || boundary.iter().filter_map(|point| point.dew_point.at());
    let ends = (
        found().reduce(Temperature::min),
        found().reduce(Temperature::max),
    );
    if let (Some(low), Some(high)) = ends {
        let (low, high) = (celsius(low, view.style), celsius(high, view.style));
        return format!("The dry boundary runs from a dew point of {low} to {high}.");
    }
    if boundary.is_empty() {
        return String::new();
    }
    let all_wet = boundary.iter().any(|point| point.dew_point == Limit::Never);
    if all_wet {
        return "However dry the duct air, the route is wet.".to_owned();
    }
    "Even saturated duct air stays dry here.".to_owned()
}
