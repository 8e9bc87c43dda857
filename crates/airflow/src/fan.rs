//! The fan's pressure at a flow: a curve through points, at another speed and density.

use dewrun_numeric::interpolate::{fritsch_butland_slopes, hermite};
use dewrun_quantity::{Density, Pressure, VolumeFlow};

use crate::error::AirflowError;
use crate::range;

/// A fan's curve: pressure by volume flow at the fan, at full speed and a reference density.
///
/// Between its points a monotone cubic; beyond them a straight line with the slope of the end chord, never rising.
/// At another speed n and density the fan laws hold: `p = n^2 (rho/rho_ref) p_ref(q/n)`.
///
/// ```
/// use dewrun_airflow::FanCurve;
/// use dewrun_quantity::{Density, Pressure, VolumeFlow};
/// let points = [(0.0, 260.0), (8.0, 250.0), (16.0, 232.0), (24.0, 200.0), (32.0, 152.0), (40.0, 86.0), (48.0, 0.0)]
///     .map(|(q, p)| (VolumeFlow::litres_per_minute(q), Pressure::pascals(p)));
/// let reference = Density::kilograms_per_cubic_metre(1.2);
/// let fan = FanCurve::new(&points, reference)?;
/// let pressure = fan.pressure(VolumeFlow::litres_per_minute(20.0), reference, 1.0);
/// assert!((pressure.to_pascals() - 217.92).abs() < 0.05);
/// # Ok::<(), dewrun_airflow::AirflowError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct FanCurve {
    /// Flow [m3/s], pressure (Pa), slope of the curve there; flows rise.
    points: Vec<(f64, f64, f64)>,
    reference_kg_m3: f64,
}

impl FanCurve {
    /// A curve through points of flow and pressure, in the order of rising flow.
    ///
    /// # Errors
    /// [`AirflowError::TooFewFanPoints`] below two points, [`AirflowError::FanFlowsNotRising`] where two flows do not rise,
    /// [`AirflowError::OutOfRange`] where a number is out of its range.
    pub fn new(
        points: &[(VolumeFlow, Pressure)],
        reference: Density,
    ) -> Result<Self, AirflowError> {
        let reference_kg_m3 = range::DENSITY.check(reference.to_kilograms_per_cubic_metre())?;
        let mut flows = Vec::with_capacity(points.len());
        let mut pressures = Vec::with_capacity(points.len());
        for (flow, pressure) in points {
            range::FAN_FLOW.check(flow.to_litres_per_minute())?;
            flows.push(flow.to_cubic_metres_per_second());
            pressures.push(range::PRESSURE.check(pressure.to_pascals())?);
        }
        if points.len() < 2 {
            return Err(AirflowError::TooFewFanPoints {
                count: points.len(),
            });
        }
        for pair in points.windows(2) {
            if let &[(before, _), (after, _)] = pair
                && after <= before
            {
                return Err(AirflowError::FanFlowsNotRising {
                    before_l_min: before.to_litres_per_minute(),
                    after_l_min: after.to_litres_per_minute(),
                });
            }
        }
        let slopes = fritsch_butland_slopes(&flows, &pressures);
        let points = flows.into_iter().zip(pressures).zip(slopes);
        Ok(Self {
            points: points.map(|((q, p), slope)| (q, p, slope)).collect(),
            reference_kg_m3,
        })
    }

    /// Rise of total pressure across the fan at a volume flow, a density at the fan and a speed (1 is full speed).
    ///
    /// # Range
    /// Any flow, negative ones too; a speed above zero. Beyond the points it is a guess.
    ///
    /// # Source
    /// Fan laws: ISO 5801; interpolation: Fritsch & Butland 1984, [`fritsch_butland_slopes`].
    #[must_use]
    pub fn pressure(&self, flow: VolumeFlow, density: Density, speed: f64) -> Pressure {
        let running = Running::of(self, density.to_kilograms_per_cubic_metre(), speed);
        Pressure::pascals(running.pressure_pa(flow.to_cubic_metres_per_second()))
    }

    /// Least and largest flow of the points at a speed.
    #[must_use]
    pub fn span(&self, speed: f64) -> (VolumeFlow, VolumeFlow) {
        let flow = |point: Option<&(f64, f64, f64)>| {
            VolumeFlow::cubic_metres_per_second(point.map_or(0.0, |(q, ..)| q * speed))
        };
        (flow(self.points.first()), flow(self.points.last()))
    }

    /// Stretches of flow over which the pressure rises with the flow, at a speed: there several operating points may lie.
    #[must_use]
    pub fn humps(&self, speed: f64) -> Vec<(VolumeFlow, VolumeFlow)> {
        let flow = |q: f64| VolumeFlow::cubic_metres_per_second(q * speed);
        let mut humps: Vec<(VolumeFlow, VolumeFlow)> = Vec::new();
        for pair in self.points.windows(2) {
            let &[(from, before, _), (to, after, _)] = pair else {
                continue;
            };
            if after <= before {
                continue;
            }
            match humps.last_mut() {
                Some((_, end)) if *end == flow(from) => *end = flow(to),
                _ => humps.push((flow(from), flow(to))),
            }
        }
        humps
    }

    /// Pressure of the curve itself at a flow (Pa).
    fn reference_pa(&self, q_m3_s: f64) -> f64 {
        let mut ends = (None, None);
        for pair in self.points.windows(2) {
            if let &[from, to] = pair {
                if from.0 <= q_m3_s && q_m3_s <= to.0 {
                    return hermite(from, to, q_m3_s);
                }
                ends.0 = ends.0.or(Some((from, chord(from, to))));
                ends.1 = Some((to, chord(from, to)));
            }
        }
        let beyond = match ends {
            (Some(((first, ..), _)), _) if q_m3_s < first => ends.0,
            _ => ends.1,
        };
        beyond.map_or(0.0, |((q, p, _), slope)| p + slope.min(0.0) * (q_m3_s - q))
    }
}

/// A fan at a speed in air of a density, on bare numbers.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Running<'a> {
    curve: &'a FanCurve,
    speed: f64,
    /// `n^2 rho/rho_ref`.
    factor: f64,
}

impl<'a> Running<'a> {
    pub(crate) fn of(curve: &'a FanCurve, density_kg_m3: f64, speed: f64) -> Self {
        Self {
            curve,
            speed,
            factor: speed * speed * density_kg_m3 / curve.reference_kg_m3,
        }
    }

    pub(crate) fn pressure_pa(&self, q_m3_s: f64) -> f64 {
        self.factor * self.curve.reference_pa(q_m3_s / self.speed)
    }
}

fn chord((q0, p0, _): (f64, f64, f64), (q1, p1, _): (f64, f64, f64)) -> f64 {
    (p1 - p0) / (q1 - q0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve(points: &[(f64, f64)]) -> Result<FanCurve, AirflowError> {
        let points: Vec<(VolumeFlow, Pressure)> = points
            .iter()
            .map(|&(q, p)| (VolumeFlow::litres_per_minute(q), Pressure::pascals(p)))
            .collect();
        FanCurve::new(&points, Density::kilograms_per_cubic_metre(1.2))
    }

    #[track_caller]
    fn check(fan: &FanCurve, q_l_min: f64, density: f64, speed: f64, expected_pa: f64) {
        let got = fan.pressure(
            VolumeFlow::litres_per_minute(q_l_min),
            Density::kilograms_per_cubic_metre(density),
            speed,
        );
        let off = (got.to_pascals() - expected_pa).abs();
        assert!(off < 1e-9, "{got:?} at {q_l_min} L/min, not {expected_pa}");
    }

    /// Points on a line stay on it: p = 300 - 6 q, beyond both ends too.
    #[test]
    fn straight_curve_is_a_straight_line() {
        let fan = curve(&[(0.0, 300.0), (25.0, 150.0), (50.0, 0.0)]).unwrap();
        for q in [-10.0, 0.0, 7.0, 25.0, 49.0, 60.0] {
            check(&fan, q, 1.2, 1.0, 300.0 - 6.0 * q);
        }
    }

    /// Half speed at 40 L/min is the curve's 80 L/min, a quarter of its pressure; half the density half of it.
    #[test]
    fn fan_laws() {
        let fan = curve(&[(0.0, 300.0), (50.0, 0.0)]).unwrap();
        check(&fan, 10.0, 1.2, 0.5, 0.25 * (300.0 - 6.0 * 20.0));
        check(&fan, 10.0, 0.6, 1.0, 0.5 * (300.0 - 6.0 * 10.0));
    }

    /// A first chord that rises is not followed below the first point: the pressure stays.
    #[test]
    fn never_rises_beyond_its_points() {
        let fan = curve(&[(0.0, 180.0), (20.0, 265.0), (65.0, 0.0)]).unwrap();
        check(&fan, -10.0, 1.2, 1.0, 180.0);
        check(&fan, 74.0, 1.2, 1.0, -265.0 / 45.0 * 9.0);
        let humps = fan.humps(0.5);
        assert_eq!(humps.len(), 1, "one hump: {humps:?}");
        let end = humps.first().map(|(_, end)| end.to_litres_per_minute());
        assert!(
            end.is_some_and(|end| (end - 10.0).abs() < 1e-12),
            "{end:?} at half speed"
        );
    }

    #[test]
    fn points_that_are_no_curve_are_refused() {
        assert_eq!(
            curve(&[(0.0, 300.0)]),
            Err(AirflowError::TooFewFanPoints { count: 1 }),
            "one point"
        );
        assert!(
            matches!(
                curve(&[(0.0, 300.0), (0.0, 200.0)]),
                Err(AirflowError::FanFlowsNotRising { .. })
            ),
            "twice the same flow"
        );
        assert!(
            matches!(
                curve(&[(0.0, f64::NAN), (1.0, 0.0)]),
                Err(AirflowError::OutOfRange(_))
            ),
            "no number"
        );
    }
}
