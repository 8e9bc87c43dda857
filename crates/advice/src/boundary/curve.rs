//! The dry boundary of the dew square: the most humid duct air that stays dry, over the temperature of the duct air.

use dewrun_quantity::Temperature;
use dewrun_run::{Outcome, Run};

use super::Limit;
use super::duct_air::{CURVE_TOLERANCE_K, coldest_wall, most_humid_near, warmest_saturated};
use super::error::BoundaryError;
use super::probe::Prober;

/// One point of the dry boundary.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoundaryPoint {
    /// Temperature of the duct air.
    pub temperature: Temperature,
    /// Highest dew point (over water) of duct air of that temperature which stays dry.
    pub dew_point: Limit<Temperature>,
}

/// The dry boundary at each of the duct temperatures given, in their order, and where it leaves saturation between two of them.
///
/// Neighbours help each other: given in rising or falling order each takes about three evaluations.
///
/// # Range
/// As [`dewrun_run::evaluate`].
///
/// # Accuracy
/// 0.04 K, on the dry side, of the model's own threshold.
///
/// # Errors
/// [`BoundaryError`] where one of the runs on the way has no answer.
///
/// # Source
/// By search over the whole model; no relation of its own.
///
/// ```
/// use dewrun_advice::{Limit, dry_boundary};
/// # use dewrun_quantity::{Conductivity, Length, PowerPerLength, Pressure, RelativeHumidity, Speed, Temperature, VolumeFlow};
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
/// // 8 m of bare tube in a space of 20 °C.
/// let now = evaluate(&run).unwrap().value;
/// let curve = dry_boundary(&run, &now, &[15.0, 30.0, 40.0].map(Temperature::celsius)).unwrap();
/// assert_eq!(curve[0].dew_point, Limit::Any); // colder than the space: the tube warms it
/// let leaves = curve[1]; // up to this temperature even saturated air stays dry
/// assert!(leaves.dew_point == Limit::At(leaves.temperature) && (leaves.temperature.to_celsius() - 20.0).abs() < 0.5);
/// let [at_30, at_40] = [&curve[2], &curve[3]].map(|point| point.dew_point.at().unwrap().to_celsius());
/// assert!(20.0 < at_30 && at_30 < at_40 && at_40 < 22.0); // hotter air keeps the wall a little warmer
/// ```
pub fn dry_boundary(
    run: &Run,
    now: &Outcome,
    temperatures: &[Temperature],
) -> Result<Vec<BoundaryPoint>, BoundaryError> {
    let mut guess = coldest_wall(now).unwrap_or(now.duct_air.temperature);
    let mut prober = Prober::new(run, now);
    let mut curve: Vec<BoundaryPoint> = Vec::with_capacity(temperatures.len() + 1);
    for &temperature in temperatures {
        let point = BoundaryPoint {
            temperature,
            dew_point: most_humid_near(&mut prober, temperature, guess, CURVE_TOLERANCE_K)?,
        };
        guess = point.dew_point.at().unwrap_or(guess);
        if let Some(last) = curve.last() {
            curve.extend(leaving_saturation(&mut prober, last, &point)?);
        }
        curve.push(point);
    }
    Ok(curve)
}

/// The warmest saturated air that stays dry, where one of two neighbours takes saturated air dry and the other does not.
fn leaving_saturation(
    prober: &mut Prober,
    a: &BoundaryPoint,
    b: &BoundaryPoint,
) -> Result<Option<BoundaryPoint>, BoundaryError> {
    let (dry, limited) = match (a.dew_point, b.dew_point) {
        (Limit::Any, Limit::At(_)) => (a, b),
        (Limit::At(_), Limit::Any) => (b, a),
        _ => return Ok(None),
    };
    let found = warmest_saturated(prober, dry.temperature, limited)?;
    Ok(found.map(|temperature| BoundaryPoint {
        temperature,
        dew_point: Limit::At(temperature),
    }))
}
