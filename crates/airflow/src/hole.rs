//! Sharp-edged holes: sampling holes and leaks.

use core::f64::consts::PI;

use dewrun_quantity::{Area, Density, MassFlow, Pressure};

use crate::line::Hole;

/// Area that holes side by side act with: `sum of open Cd pi d^2 / 4`.
///
/// Arguments: the holes, what is open of each as a factor on its area (1 where the list ends).
///
/// # Range
/// Holes that open from one space into another; discharge coefficients from 0.5 to 1.
///
/// # Accuracy
/// Exact.
///
/// # Errors
/// None; nothing where there is no hole.
///
/// # Source
/// Definition of the discharge coefficient: Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), section 4.
///
/// ```
/// use dewrun_airflow::{Hole, effective_area};
/// use dewrun_quantity::Length;
/// let hole = Hole { diameter: Length::millimetres(8.0), discharge: 0.62 };
/// let area = effective_area(&[hole; 4], &[]);
/// assert!((area.to_square_millimetres() - 124.66).abs() < 0.01);
/// ```
#[must_use]
pub fn effective_area(holes: &[Hole], open: &[f64]) -> Area {
    let shares = open.iter().copied().chain(core::iter::repeat(1.0));
    let area = |(hole, open): (&Hole, f64)| {
        let d_m = hole.diameter.to_metres();
        open * hole.discharge * 0.25 * PI * d_m * d_m
    };
    Area::square_metres(holes.iter().zip(shares).map(area).sum())
}

/// Mass flow through a sharp-edged hole: `Cd A sqrt(2 rho |dp|)` with the sign of the pressure difference.
///
/// Arguments: effective area (discharge coefficient times area), density of the air, pressure before less pressure behind.
///
/// # Range
/// Differences far below the absolute pressure; holes much smaller than what they open into.
///
/// # Accuracy
/// That of the discharge coefficient, 3 to 10 % below a Reynolds number of 1000.
///
/// # Errors
/// None.
///
/// # Source
/// Bernoulli; Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), section 4.
///
/// ```
/// use dewrun_airflow::hole_flow;
/// use dewrun_quantity::{Area, Density, Pressure};
/// // 0.61 pi (2 mm)^2/4 at 100 Pa: 1.9164e-6 m2 times sqrt(2 x 1.2 x 100) = 15.492 kg/(s m2).
/// let flow = hole_flow(Area::square_millimetres(1.9164), Density::kilograms_per_cubic_metre(1.2), Pressure::pascals(-100.0));
/// assert!((flow.to_kilograms_per_second() + 2.9689e-5).abs() < 1e-9);
/// ```
#[must_use]
pub fn hole_flow(effective_area: Area, density: Density, difference: Pressure) -> MassFlow {
    let conductance = conductance(
        effective_area.to_square_metres(),
        density.to_kilograms_per_cubic_metre(),
    );
    MassFlow::kilograms_per_second(conductance * signed_sqrt(difference.to_pascals()))
}

/// Mass flow per square root of pressure of an effective area [kg/(s Pa^0.5)].
pub(crate) fn conductance(effective_area_m2: f64, density_kg_m3: f64) -> f64 {
    effective_area_m2 * (2.0 * density_kg_m3).sqrt()
}

/// The square root of a size, with its sign.
pub(crate) fn signed_sqrt(x: f64) -> f64 {
    x.abs().sqrt().copysign(x)
}
