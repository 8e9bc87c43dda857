//! The depth at which moving air throws standing water up into slugs.

use dewrun_numeric::circular_segment::{area, chord, whole_area};
use dewrun_numeric::itp;
use dewrun_quantity::{Density, Length, Volume, VolumeFlow};

use crate::GRAVITY_M_S2;

/// Where the first slugs come.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slugs {
    /// Depth at the low point.
    pub depth: Length,
    /// Water that stands so deep.
    pub volume: Volume,
}

/// Just below the crown, as a share of the bore: at the crown itself both sides of the criterion vanish.
const BELOW_THE_CROWN: f64 = 1e-9;
const DEPTH_SHARE: f64 = 1e-12;

/// First depth at which `Q/A_g = (1 - h/D) sqrt((rho_w - rho_a) g A_g / (rho_a dA_l/dh))`: stratified flow turns intermittent.
///
/// A standing surface is level (cos = 1) and its water at rest; tested at the low point. The bore where the air moves too slowly for any lesser depth.
///
/// # Range
/// Derived and tested for pipes from 25 mm; unproven below 20 mm, where surface tension steadies the surface.
/// # Accuracy
/// The criterion itself is good to about 30 % of the speed.
/// # Errors
/// None.
/// # Source
/// Taitel & Dukler, AIChE J. 22 (1976) 47, transition from stratified to intermittent flow, <https://doi.org/10.1002/aic.690220105>.
///
/// ```
/// use dewrun_quantity::{Density, Length, VolumeFlow};
/// use dewrun_water::pool::taitel_dukler_1976_depth;
/// let of = Density::kilograms_per_cubic_metre;
/// let bore = Length::millimetres(19.0);
/// let depth = taitel_dukler_1976_depth(bore, VolumeFlow::litres_per_minute(30.0), of(1.2), of(998.2));
/// assert!((depth.to_millimetres() - 9.8213).abs() < 1e-3);
/// ```
#[must_use]
pub fn taitel_dukler_1976_depth(
    bore: Length,
    flow: VolumeFlow,
    air: Density,
    water: Density,
) -> Length {
    let d_m = bore.to_metres();
    let q_m3_s = flow.to_cubic_metres_per_second();
    let air_kg_m3 = air.to_kilograms_per_cubic_metre();
    let buoyancy = (water.to_kilograms_per_cubic_metre() - air_kg_m3) * GRAVITY_M_S2;
    // The criterion squared and freed of its denominators: negative below the depth sought.
    let excess = |h_m: f64| {
        let free_m2 = whole_area(d_m) - area(h_m, d_m);
        let above = (1.0 - h_m / d_m) * free_m2;
        q_m3_s * q_m3_s * air_kg_m3 * chord(h_m, d_m) - buoyancy * above * above * free_m2
    };
    let high_m = d_m * (1.0 - BELOW_THE_CROWN);
    let found = itp(excess, 0.0, high_m, DEPTH_SHARE * d_m);
    Length::metres(found.unwrap_or(d_m))
}
