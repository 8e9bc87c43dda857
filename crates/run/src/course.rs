//! The course of every quantity between the places that the march visits.

use dewrun_numeric::interpolate::{fritsch_butland_slopes, hermite};
use dewrun_quantity::{HumidityRatio, Length, MassFlowPerLength, Temperature};

use crate::outcome::ProfilePoint;

/// Quantities of a point that are interpolated, as bare numbers.
const FIELDS: usize = 8;

/// The profile with `parts - 1` more points between each two, on smooth curves that never overshoot.
///
/// A march visits few places where little changes; drawn with straight lines its curves would have corners that the air has not.
/// Each leg is a curve of its own, since a joint may change the wall at once.
///
/// # Range
/// `parts` from 1 (nothing added) on.
///
/// # Accuracy
/// The points of the march are kept; between them within a few hundredths of the change over a cell.
///
/// # Source
/// Monotone cubics: [`fritsch_butland_slopes`].
///
/// ```
/// use dewrun_run::course;
/// assert!(course(&[], 8).is_empty());
/// ```
#[must_use]
pub fn course(profile: &[ProfilePoint], parts: u16) -> Vec<ProfilePoint> {
    profile
        .chunk_by(|a, b| a.leg == b.leg)
        .flat_map(|leg| course_of_leg(leg, parts))
        .collect()
}

fn course_of_leg(leg: &[ProfilePoint], parts: u16) -> Vec<ProfilePoint> {
    let xs: Vec<f64> = leg.iter().map(|point| point.x.to_metres()).collect();
    let numbers: Vec<[f64; FIELDS]> = leg.iter().map(numbers_of).collect();
    let slopes: Vec<Vec<f64>> = (0..FIELDS)
        .map(|field| {
            let ys: Vec<f64> = numbers
                .iter()
                .map(|point| point.get(field).copied().unwrap_or(0.0))
                .collect();
            fritsch_butland_slopes(&xs, &ys)
        })
        .collect();
    let slope = |field: usize, place: usize| {
        slopes
            .get(field)
            .and_then(|slopes| slopes.get(place))
            .copied()
            .unwrap_or(0.0)
    };
    let mut course = Vec::with_capacity(leg.len() * usize::from(parts));
    for (place, pair) in leg.windows(2).enumerate() {
        let [from, to] = pair else { continue };
        let (x0, x1) = (from.x.to_metres(), to.x.to_metres());
        let (n0, n1) = (numbers_of(from), numbers_of(to));
        course.push(*from);
        for part in 1..parts {
            let x = x0 + (x1 - x0) * f64::from(part) / f64::from(parts);
            let mut between = n0;
            for (field, (value, (y0, y1))) in
                between.iter_mut().zip(n0.into_iter().zip(n1)).enumerate()
            {
                *value = hermite(
                    (x0, y0, slope(field, place)),
                    (x1, y1, slope(field, place + 1)),
                    x,
                );
            }
            course.push(point(from, to, x, &between));
        }
    }
    course.extend(leg.last().copied());
    course
}

fn numbers_of(point: &ProfilePoint) -> [f64; FIELDS] {
    [
        point.air.to_celsius(),
        point.inner_wall.to_celsius(),
        point.outer_surface.to_celsius(),
        point.dew_point.map_or(0.0, Temperature::to_celsius),
        point.humidity_ratio.to_kilograms_per_kilogram(),
        point.mist.to_kilograms_per_kilogram(),
        point.deposit.to_kilograms_per_second_metre(),
        point.sweat.to_kilograms_per_second_metre(),
    ]
}

fn point(from: &ProfilePoint, to: &ProfilePoint, x: f64, numbers: &[f64; FIELDS]) -> ProfilePoint {
    let &[
        air,
        inner_wall,
        outer_surface,
        dew_point,
        humidity_ratio,
        mist,
        deposit,
        sweat,
    ] = numbers;
    let share = (x - from.x.to_metres()) / (to.x - from.x).to_metres();
    ProfilePoint {
        x: Length::metres(x),
        leg: from.leg,
        air: Temperature::celsius(air),
        inner_wall: Temperature::celsius(inner_wall),
        outer_surface: Temperature::celsius(outer_surface),
        dew_point: from
            .dew_point
            .and(to.dew_point)
            .map(|_| Temperature::celsius(dew_point)),
        humidity_ratio: HumidityRatio::kilograms_per_kilogram(humidity_ratio),
        mist: HumidityRatio::kilograms_per_kilogram(mist),
        deposit: MassFlowPerLength::kilograms_per_second_metre(deposit),
        frozen_share: from.frozen_share + share * (to.frozen_share - from.frozen_share),
        sweat: MassFlowPerLength::kilograms_per_second_metre(sweat),
    }
}
