//! The filter of the detector, clean and with dust.

use dewrun_quantity::{FlowResistance, Pressure, VolumeFlow};

/// Pressure that a filter costs: `r dust q`.
///
/// Arguments: resistance when clean, factor of the dust on it (1 when clean), volume flow through it.
///
/// # Range
/// Fibres and foams at the low speeds of a filter, where the loss goes with the flow itself; dust factors from 1 to 3.
///
/// # Accuracy
/// That of the resistance; the viscosity's change from -20 to 40 degC (16 %) is left out.
///
/// # Errors
/// None.
///
/// # Source
/// Darcy's law of porous media: Bear, Dynamics of Fluids in Porous Media (1972), eq. 5.1.1.
///
/// ```
/// use dewrun_airflow::filter_loss;
/// use dewrun_quantity::{FlowResistance, VolumeFlow};
/// let clean = FlowResistance::pascals_per_litre_per_minute(2.0);
/// let loss = filter_loss(clean, 1.5, VolumeFlow::litres_per_minute(30.0));
/// assert!((loss.to_pascals() - 90.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn filter_loss(clean: FlowResistance, dust: f64, flow: VolumeFlow) -> Pressure {
    let pa_s_m3 = clean.to_pascals_per_cubic_metre_per_second();
    Pressure::pascals(pa_s_m3 * dust * flow.to_cubic_metres_per_second())
}
