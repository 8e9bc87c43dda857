//! Every quantity at any one place along a tube, on the same smooth curves that are drawn.

use dewrun_quantity::{Length, MassFlow, Pressure, RelativeHumidity};

use crate::course::LegCourse;
use crate::outcome::{LegOutcome, ProfilePoint, TubeOutcome};
use crate::report::relative_humidity;

/// Places and weights of the three-point rule of Gauss and Legendre on 0 to 1.
///
/// It is exact up to the fifth power; a cubic deposit times a straight frozen share has the fourth.
const GAUSS: [(f64, f64); 3] = [
    (0.112_701_665_379_258_3, 5.0 / 18.0),
    (0.5, 8.0 / 18.0),
    (0.887_298_334_620_741_7, 5.0 / 18.0),
];

/// What is read at one place along a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// The quantities of the profile at this place.
    pub point: ProfilePoint,
    /// Relative humidity of the bulk, over water.
    pub relative_humidity: RelativeHumidity,
    /// Water deposited inside between the inlet and here, frost included.
    pub deposited: MassFlow,
    /// The part of it that freezes to the wall.
    pub frozen: MassFlow,
}

/// Reads every quantity at a place along a tube; at a joint, those of the leg that begins there.
///
/// # Range
/// `x` from the tube's inlet to its outlet; elsewhere there is nothing to read.
///
/// # Accuracy
/// At the places of the march as the march; between them as [`crate::course()`], of which this is a point.
/// What is deposited so far follows the drawn curve and meets the sum of each leg at its end.
///
/// # Source
/// Three-point rule of Gauss and Legendre: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 25.4.30 and table 25.4.
///
/// ```
/// # use dewrun_quantity::{Conductivity, HumidityRatio, Length, Power, PowerPerLength, Pressure, RelativeHumidity, Speed, Temperature, VolumeFlow};
/// # use dewrun_run::air::{Humidity, Over, Pair};
/// # use dewrun_run::{Detector, Flow, FlowAt, Leg, Run, Space, TubeWall, evaluate};
/// # let leg = Leg {
/// #     space: 0, length: Length::metres(8.0), rise: Length::metres(-0.16),
/// #     tube: TubeWall { bore: Length::millimetres(19.0), outside_diameter: Length::millimetres(22.0), conductivity: Conductivity::watts_per_metre_kelvin(0.19) },
/// #     insulation: None, emissivity: 0.9, tracing: PowerPerLength::ZERO,
/// # };
/// # let run = Run {
/// #     pressure: Pressure::pascals(101_325.0),
/// #     duct_air: Pair::Temperature(Temperature::celsius(32.0), Humidity::DewPoint(Temperature::celsius(26.0))),
/// #     flow: Flow { volume: VolumeFlow::litres_per_minute(30.0), at: FlowAt::Intake },
/// #     spaces: vec![Space {
/// #         temperature: Temperature::celsius(20.0),
/// #         humidity: Humidity::Relative { value: RelativeHumidity::percent(50.0), over: Over::Water },
/// #         radiant: None, wind: Speed::ZERO,
/// #     }],
/// #     intake: vec![leg], detector: Detector::default(), exhaust: vec![],
/// # };
/// use dewrun_run::reading;
/// let tube = evaluate(&run)?.value.intake;
/// let inlet = reading(&tube, run.pressure, Length::ZERO).ok_or("past the end")?;
/// // Air of 32 °C with a dew point of 26 °C: 3363.8 Pa over 4759.6 Pa, IAPWS SR1-86.
/// assert!((inlet.relative_humidity.to_percent() - 70.7).abs() < 0.1);
/// assert_eq!(inlet.deposited.to_grams_per_hour(), 0.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn reading(tube: &TubeOutcome, pressure: Pressure, x: Length) -> Option<Reading> {
    let x_m = x.to_metres();
    let points = leg_at(&tube.profile, x_m)?;
    let leg = LegCourse::new(points);
    let point = point_at(&leg, points, x_m)?;
    let before = tube.legs.get(..point.leg)?;
    let (liquid, frozen) = formed_in_leg(tube.legs.get(point.leg)?, &leg, points, x_m);
    let earlier = |read: fn(&LegOutcome) -> MassFlow| before.iter().map(read).sum::<MassFlow>();
    let frozen = earlier(|leg| leg.frost) + frozen;
    let air = (
        point.air.to_celsius(),
        point.humidity_ratio.to_kilograms_per_kilogram(),
    );
    Some(Reading {
        point,
        relative_humidity: relative_humidity(air.0, air.1, pressure.to_pascals()),
        deposited: earlier(|leg| leg.condensate - leg.frost) + liquid + frozen,
        frozen,
    })
}

/// The last leg that reaches over a place.
fn leg_at(profile: &[ProfilePoint], x_m: f64) -> Option<&[ProfilePoint]> {
    let reaches = |leg: &&[ProfilePoint]| {
        let ends = (leg.first(), leg.last());
        matches!(ends, (Some(from), Some(to)) if from.x.to_metres() <= x_m && x_m <= to.x.to_metres())
    };
    profile.chunk_by(|a, b| a.leg == b.leg).rfind(reaches)
}

fn point_at(leg: &LegCourse<'_>, points: &[ProfilePoint], x_m: f64) -> Option<ProfilePoint> {
    let place = points.iter().rposition(|p| p.x.to_metres() <= x_m)?;
    let here = points.get(place)?;
    if here.x.to_metres() == x_m {
        return Some(*here);
    }
    leg.between(place, x_m)
}

/// What has formed in a leg up to a place, liquid and frozen: the share under the drawn curve of what forms in all of it.
fn formed_in_leg(
    leg: &LegOutcome,
    course: &LegCourse<'_>,
    points: &[ProfilePoint],
    x_m: f64,
) -> (MassFlow, MassFlow) {
    let (from, to) = (leg.from.to_metres(), leg.to.to_metres());
    let long = if from < to {
        (x_m - from) / (to - from)
    } else {
        1.0
    };
    let (here, all) = (
        under_curve(course, points, x_m),
        under_curve(course, points, f64::INFINITY),
    );
    let share = |here: f64, all: f64| if 0.0 < all { here / all } else { long };
    (
        (leg.condensate - leg.frost) * share(here.0, all.0),
        leg.frost * share(here.1, all.1),
    )
}

/// The areas under the curves of what forms as water and as frost up to a place, in one unit for both.
fn under_curve(course: &LegCourse<'_>, points: &[ProfilePoint], x_m: f64) -> (f64, f64) {
    let mut areas = (0.0, 0.0);
    for (place, pair) in points.windows(2).enumerate() {
        let [from, to] = pair else { continue };
        let from_m = from.x.to_metres();
        let width = to.x.to_metres().min(x_m) - from_m;
        if width <= 0.0 {
            break;
        }
        for (at, weight) in GAUSS {
            let Some(point) = course.between(place, from_m + at * width) else {
                continue;
            };
            let formed = weight * width * point.deposit.to_kilograms_per_second_metre();
            areas.0 += formed * (1.0 - point.frozen_share);
            areas.1 += formed * point.frozen_share;
        }
    }
    areas
}
