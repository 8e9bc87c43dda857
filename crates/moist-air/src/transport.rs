//! Viscosity, conductivity and diffusivity of moist air.

use crate::ZERO_CELSIUS_K;
use crate::mixture::{DRY_AIR_MOLAR_MASS, WATER_MOLAR_MASS};
use dewrun_numeric::elementary::{exp, ln, pow};
use dewrun_numeric::polynomial::polynomial;

/// Viscosity of dry air at low density, `t_c` in °C [Pa s].
///
/// # Range
/// -200 to 1700 °C; the pressure is worth less than 0.1 % at 120 kPa.
/// # Accuracy
/// 1 % as its source states.
/// # Source
/// Lemmon & Jacobsen, Int. J. Thermophys. 25 (2004) 21, eq. 2 and 3, tables I to III, <https://doi.org/10.1023/B:IJOT.0000022327.04529.f3>.
///
/// ```
/// use dewrun_moist_air::transport::dry_air_viscosity_pa_s;
/// assert!((dry_air_viscosity_pa_s(26.85) / 1.8523e-5 - 1.0).abs() < 1e-4); // their table V, 300 K
/// ```
#[must_use]
pub fn dry_air_viscosity_pa_s(t_c: f64) -> f64 {
    let t_k = t_c + ZERO_CELSIUS_K;
    let ln_reduced = ln(t_k / 103.3);
    let collision = exp(polynomial(
        &[0.431, -0.4623, 0.084_06, 0.005_341, -0.003_31],
        ln_reduced,
    ));
    1.0e-6 * 0.026_695_8 * (28.9586 * t_k).sqrt() / (0.360 * 0.360 * collision)
}

/// Thermal conductivity of dry air at low density, `t_c` in °C [W/(m K)].
///
/// # Range
/// -200 to 1700 °C; the pressure is worth less than 0.2 % at 120 kPa.
/// # Accuracy
/// 2 % as its source states.
/// # Source
/// Lemmon & Jacobsen 2004, eq. 5, table IV, as [`dry_air_viscosity_pa_s`].
///
/// ```
/// use dewrun_moist_air::transport::dry_air_conductivity_w_mk;
/// assert!((dry_air_conductivity_w_mk(26.85) / 0.0263529 - 1.0).abs() < 1e-4); // their table V, 300 K
/// ```
#[must_use]
pub fn dry_air_conductivity_w_mk(t_c: f64) -> f64 {
    let tau = 132.6312 / (t_c + ZERO_CELSIUS_K);
    let viscosity_micro = dry_air_viscosity_pa_s(t_c) * 1.0e6;
    1.0e-3 * (1.308 * viscosity_micro + 1.405 * pow(tau, -1.1) - 1.036 * pow(tau, -0.3))
}

/// Viscosity of water vapour in the limit of low density, `t_c` in °C [Pa s].
///
/// # Range
/// -60 to 900 °C; below 0 °C the relation runs on smoothly.
/// # Accuracy
/// 2 %; at 1 kg/m3 and 160 °C the low-density limit is 0.74 % higher than the full formulation.
/// # Source
/// IAPWS R12-08, eq. 11, table 1; Huber et al., J. Phys. Chem. Ref. Data 38 (2009) 101, <https://doi.org/10.1063/1.3088050>.
///
/// ```
/// use dewrun_moist_air::transport::steam_viscosity_pa_s;
/// assert!((steam_viscosity_pa_s(160.0) / 14.53832e-6 - 1.0).abs() < 0.01); // R12-08, table 4
/// ```
#[must_use]
pub fn steam_viscosity_pa_s(t_c: f64) -> f64 {
    let reduced = (t_c + ZERO_CELSIUS_K) / 647.096;
    let sum = polynomial(
        &[1.677_52, 2.204_62, 0.636_656_4, -0.241_605],
        reduced.recip(),
    );
    1.0e-6 * 100.0 * reduced.sqrt() / sum
}

/// Thermal conductivity of water vapour in the limit of low density, `t_c` in °C [W/(m K)].
///
/// # Range
/// -60 to 900 °C; below 0 °C the relation runs on smoothly.
/// # Accuracy
/// 2 %.
/// # Source
/// IAPWS R15-11, eq. 16, table 1; Huber et al., J. Phys. Chem. Ref. Data 41 (2012) 033102, <https://doi.org/10.1063/1.4738955>.
///
/// ```
/// use dewrun_moist_air::transport::steam_conductivity_w_mk;
/// assert!((steam_conductivity_w_mk(25.0) / 0.0184341883 - 1.0).abs() < 1e-6); // R15-11, table 4, zero density
/// ```
#[must_use]
pub fn steam_conductivity_w_mk(t_c: f64) -> f64 {
    let reduced = (t_c + ZERO_CELSIUS_K) / 647.096;
    let coefficients = [
        2.443_221e-3,
        1.323_095e-2,
        6.770_357e-3,
        -3.454_586e-3,
        4.096_266e-4,
    ];
    1.0e-3 * reduced.sqrt() / polynomial(&coefficients, reduced.recip())
}

/// Wilke's weight of the second gas in the neighbourhood of the first, from the ratio of viscosities and of molar masses, first over second.
fn wilke_1950(viscosity_ratio: f64, mass_ratio: f64) -> f64 {
    let sum = 1.0 + viscosity_ratio.sqrt() / mass_ratio.sqrt().sqrt();
    sum * sum / (8.0 * (1.0 + mass_ratio)).sqrt()
}

/// Weights of the mixing rules at `t_c` [°C]: of vapour beside air, and of air beside vapour.
pub(crate) fn mixing_weights(t_c: f64) -> (f64, f64) {
    let viscosity_ratio = dry_air_viscosity_pa_s(t_c) / steam_viscosity_pa_s(t_c);
    let mass_ratio = DRY_AIR_MOLAR_MASS / WATER_MOLAR_MASS;
    (
        wilke_1950(viscosity_ratio, mass_ratio),
        wilke_1950(viscosity_ratio.recip(), mass_ratio.recip()),
    )
}

/// Factor of Mason & Saxena on the weights of the mixing rule for conductivity.
pub(crate) const MASON_SAXENA: f64 = 1.065;

/// A property of the mixture from those of air and vapour, their weights and the mole fraction of vapour.
pub(crate) fn mix(air: f64, vapour: f64, weights: (f64, f64), x_vapour: f64) -> f64 {
    let x_air = 1.0 - x_vapour;
    let by_air = x_air + x_vapour * weights.0;
    let by_vapour = x_vapour + x_air * weights.1;
    // Both parts over one denominator: a division takes as long as all the rest.
    (x_air * air * by_vapour + x_vapour * vapour * by_air) / (by_air * by_vapour)
}

/// Viscosity of moist air, `t_c` in °C, `x_vapour` mole fraction [Pa s].
///
/// # Range
/// -60 to 95 °C, mole fraction 0 to 1.
/// # Accuracy
/// The rule adds about 1 % to the parts' own.
/// # Source
/// Wilke, J. Chem. Phys. 18 (1950) 517, eq. 13 and 14, <https://doi.org/10.1063/1.1747673>, on [`dry_air_viscosity_pa_s`] and [`steam_viscosity_pa_s`] at the mixture's temperature.
///
/// ```
/// use dewrun_moist_air::transport::viscosity_pa_s;
/// assert!((viscosity_pa_s(60.0, 0.198) / 1.818811e-5 - 1.0).abs() < 5e-3);
/// ```
#[must_use]
pub fn viscosity_pa_s(t_c: f64, x_vapour: f64) -> f64 {
    mix(
        dry_air_viscosity_pa_s(t_c),
        steam_viscosity_pa_s(t_c),
        mixing_weights(t_c),
        x_vapour,
    )
}

/// Thermal conductivity of moist air, `t_c` in °C, `x_vapour` mole fraction [W/(m K)].
///
/// # Range
/// -60 to 95 °C, mole fraction 0 to 1.
/// # Accuracy
/// A few percent; no measured table of warm saturated air decides.
/// # Source
/// Mason & Saxena, Phys. Fluids 1 (1958) 361, eq. 21 with the factor 1.065, <https://doi.org/10.1063/1.1724352>, on [`dry_air_conductivity_w_mk`] and [`steam_conductivity_w_mk`].
///
/// ```
/// use dewrun_moist_air::transport::conductivity_w_mk;
/// assert!((conductivity_w_mk(20.0, 0.0) / 0.02587383 - 1.0).abs() < 0.01);
/// ```
#[must_use]
pub fn conductivity_w_mk(t_c: f64, x_vapour: f64) -> f64 {
    let (vapour, air) = mixing_weights(t_c);
    let weights = (MASON_SAXENA * vapour, MASON_SAXENA * air);
    mix(
        dry_air_conductivity_w_mk(t_c),
        steam_conductivity_w_mk(t_c),
        weights,
        x_vapour,
    )
}

/// Diffusivity of water vapour in air, `t_c` in °C, `p_pa` in Pa [m2/s].
///
/// `2.178e-5 (T / 273.15 K)^1.81 (101325 Pa / p)`
///
/// # Range
/// -60 to 100 °C, low pressure.
/// # Accuracy
/// 3 %, by the spread of the published relations.
/// # Source
/// Massman, Atmos. Environ. 32 (1998) 1111, eq. 7 and table 1, <https://doi.org/10.1016/S1352-2310(97)00391-9>.
///
/// ```
/// use dewrun_moist_air::transport::diffusivity_m2_s;
/// assert!((diffusivity_m2_s(20.0, 101_325.0) / 2.475166e-5 - 1.0).abs() < 1e-4);
/// ```
#[must_use]
pub fn diffusivity_m2_s(t_c: f64, p_pa: f64) -> f64 {
    2.178e-5 * pow((t_c + ZERO_CELSIUS_K) / ZERO_CELSIUS_K, 1.81) * (101_325.0 / p_pa)
}
