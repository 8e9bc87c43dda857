//! The course of every quantity between the places that the march visits.

use dewrun_numeric::interpolate::{fritsch_butland_slopes, hermite};
use dewrun_quantity::{HumidityRatio, Length, MassFlowPerLength, Temperature};

use crate::outcome::ProfilePoint;
use dewrun_tube::frozen_share;

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

fn course_of_leg(points: &[ProfilePoint], parts: u16) -> Vec<ProfilePoint> {
    let leg = LegCourse::new(points);
    let mut course = Vec::with_capacity(points.len() * usize::from(parts));
    for (place, pair) in points.windows(2).enumerate() {
        let [from, to] = pair else { continue };
        let (x0, x1) = (from.x.to_metres(), to.x.to_metres());
        course.push(*from);
        let between = (1..parts)
            .map(|part| x0 + (x1 - x0) * f64::from(part) / f64::from(parts))
            .filter_map(|x| leg.between(place, x));
        course.extend(between);
    }
    course.extend(points.last().copied());
    course
}

/// One leg of a profile as smooth curves.
pub(crate) struct LegCourse<'a> {
    points: &'a [ProfilePoint],
    slopes: [Vec<f64>; FIELDS],
}

impl<'a> LegCourse<'a> {
    pub(crate) fn new(points: &'a [ProfilePoint]) -> Self {
        let xs: Vec<f64> = points.iter().map(|point| point.x.to_metres()).collect();
        let numbers: Vec<[f64; FIELDS]> = points.iter().map(numbers_of).collect();
        let slopes = core::array::from_fn(|field| {
            let ys: Vec<f64> = numbers
                .iter()
                .map(|point| point.get(field).copied().unwrap_or(0.0))
                .collect();
            fritsch_butland_slopes(&xs, &ys)
        });
        Self { points, slopes }
    }

    /// The point at `x_m` between the places `place` and `place + 1` of the march.
    pub(crate) fn between(&self, place: usize, x_m: f64) -> Option<ProfilePoint> {
        let (from, to) = (self.points.get(place)?, self.points.get(place + 1)?);
        let (x0, x1) = (from.x.to_metres(), to.x.to_metres());
        let (n0, n1) = (numbers_of(from), numbers_of(to));
        let slope = |slopes: &[f64], place: usize| slopes.get(place).copied().unwrap_or(0.0);
        let mut between = n0;
        for (value, (slopes, (y0, y1))) in between
            .iter_mut()
            .zip(self.slopes.iter().zip(n0.into_iter().zip(n1)))
        {
            *value = hermite(
                (x0, y0, slope(slopes, place)),
                (x1, y1, slope(slopes, place + 1)),
                x_m,
            );
        }
        Some(point(from, to, x_m, &between))
    }
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
        frozen_share: frozen_share(inner_wall),
        sweat: MassFlowPerLength::kilograms_per_second_metre(sweat),
    }
}
