//! Friction of air in a straight tube, from creeping to rough turbulent flow.

use core::f64::consts::PI;
use core::ops::Range;

use dewrun_numeric::fast::{fast_exp, fast_ln};
use dewrun_numeric::fast_cbrt;

/// Below this Reynolds number the joined formula underflows, and laminar flow is exact.
const CREEPING: f64 = 10.0;
/// Reynolds numbers between which friction is one of several possible values.
pub(crate) const BETWEEN: Range<f64> = 2100.0..4000.0;
/// Below the one and above the other nobody doubts it.
const LAMINAR: f64 = 1300.0;
const TURBULENT: f64 = 6000.0;

/// Darcy friction factor (-) of laminar, transitional and turbulent flow in one formula.
///
/// `f = 8 ((8/Re)^12 + (A + B)^(-3/2))^(1/12)`, `A = (2.457 ln(1/((7/Re)^0.9 + 0.27 e/D)))^16`, `B = (37530/Re)^16`.
///
/// Arguments: Reynolds number (-), roughness over bore (-).
///
/// # Range
/// All Reynolds numbers above zero (64/Re below 10), relative roughness from 0 to 0.05.
///
/// # Accuracy
/// The printed formula to 1e-11; within 3 % of Colebrook's equation where turbulent; between Re 2100 and 4000 it is one of several possible values.
///
/// # Errors
/// None; infinite at a Reynolds number of zero.
///
/// # Source
/// Churchill, Chem. Eng. 84 (24) (1977) 91.
///
/// ```
/// let f = dewrun_airflow::friction::churchill_1977(1.0e5, 1.0e-4);
/// assert!((f - 0.018_462_62).abs() < 1e-8);
/// ```
#[must_use]
pub fn churchill_1977(reynolds: f64, relative_roughness: f64) -> f64 {
    if reynolds < CREEPING {
        return 64.0 / reynolds;
    }
    let rough = fast_exp(0.9 * fast_ln(7.0 / reynolds)) + 0.27 * relative_roughness;
    let turbulent = sixteenth_power(-2.457 * fast_ln(rough));
    let transition = sixteenth_power(37_530.0 / reynolds);
    let creeping = fourth_power(8.0 / reynolds);
    let laminar = creeping * creeping * creeping;
    let above = turbulent + transition;
    8.0 * fast_cbrt((laminar + 1.0 / (above * above.sqrt())).sqrt().sqrt())
}

/// The same where it is known no better: multiplied by a factor where the flow is neither laminar nor turbulent.
///
/// The factor counts wholly from Re 2100 to 4000 and fades in from 1300 and out until 6000, so that the loss still rises with the flow.
///
/// Arguments: Reynolds number (-), roughness over bore (-), factor (-), 1 for the relation as published.
///
/// # Range
/// As [`churchill_1977`]; factors from 0.7 to 1.4.
///
/// # Accuracy
/// It carries a spread; where the factor fades is our own choice.
///
/// # Errors
/// As [`churchill_1977`].
///
/// # Source
/// That friction there is known to 14 % of the flow: from memory.
///
/// ```
/// use dewrun_airflow::friction::{churchill_1977, friction_between};
/// assert_eq!(friction_between(3000.0, 0.0, 1.2), 1.2 * churchill_1977(3000.0, 0.0));
/// assert_eq!(friction_between(1250.0, 0.0, 1.2), churchill_1977(1250.0, 0.0));
/// ```
#[must_use]
pub fn friction_between(reynolds: f64, relative_roughness: f64, factor: f64) -> f64 {
    let published = churchill_1977(reynolds, relative_roughness);
    if reynolds <= LAMINAR || TURBULENT <= reynolds {
        return published;
    }
    let into = (reynolds - LAMINAR) / (BETWEEN.start - LAMINAR);
    let out = (TURBULENT - reynolds) / (TURBULENT - BETWEEN.end);
    let counts = into.min(out).min(1.0);
    // Written so that a factor of 1 changes no bit.
    if counts < 1.0 {
        published * (1.0 + counts * (factor - 1.0))
    } else {
        published * factor
    }
}

/// Pressure that friction costs along a straight tube (Pa): `f (L/D) rho v^2 / 2`.
///
/// Arguments: Darcy friction factor (-), length (m), bore (m), density of the air [kg/m3], mean speed [m/s].
///
/// # Range
/// Developed flow; the entry costs more, and at more than a tenth of the absolute pressure the air expands noticeably.
///
/// # Accuracy
/// That of the friction factor.
///
/// # Errors
/// None; infinite in a tube without bore.
///
/// # Source
/// Darcy and Weisbach; Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), eq. 2.2.
///
/// ```
/// let loss = dewrun_airflow::friction::straight_tube_pa(0.04, 10.0, 0.02, 1.2, 5.0);
/// assert!((loss - 300.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn straight_tube_pa(
    friction: f64,
    length_m: f64,
    bore_m: f64,
    density_kg_m3: f64,
    speed_m_s: f64,
) -> f64 {
    friction * length_m / bore_m * 0.5 * density_kg_m3 * speed_m_s * speed_m_s
}

/// Mean speed in a tube [m/s]: `4 q / (pi D^2)`.
///
/// Arguments: volume flow [m3/s], bore (m).
///
/// # Range
/// A bore above zero.
///
/// # Accuracy
/// Exact.
///
/// # Errors
/// None; infinite in a tube without bore.
///
/// # Source
/// Continuity.
///
/// ```
/// let speed = dewrun_airflow::friction::mean_speed_m_s(10.0 / 60_000.0, 0.010);
/// assert!((speed - 2.122_066).abs() < 1e-6);
/// ```
#[must_use]
pub fn mean_speed_m_s(flow_m3_s: f64, bore_m: f64) -> f64 {
    4.0 * flow_m3_s / (PI * bore_m * bore_m)
}

fn fourth_power(x: f64) -> f64 {
    let square = x * x;
    square * square
}

fn sixteenth_power(x: f64) -> f64 {
    fourth_power(fourth_power(x))
}

#[cfg(test)]
mod tests {
    use dewrun_numeric::elementary::{ln, pow};

    use super::*;

    /// Written as printed, with the powers of the library.
    #[test]
    fn products_and_roots_are_the_powers() {
        for step in 0..400 {
            let reynolds = 10.0 * pow(1.04, f64::from(step));
            for roughness in [0.0, 1e-4, 0.05] {
                let a = pow(
                    2.457 * ln(1.0 / (pow(7.0 / reynolds, 0.9) + 0.27 * roughness)),
                    16.0,
                );
                let b = pow(37_530.0 / reynolds, 16.0);
                let printed = 8.0 * pow(pow(8.0 / reynolds, 12.0) + pow(a + b, -1.5), 1.0 / 12.0);
                let got = churchill_1977(reynolds, roughness);
                assert!(
                    (got / printed - 1.0).abs() < 1e-11,
                    "{got} and {printed} at Re {reynolds}"
                );
            }
        }
    }

    #[test]
    fn laminar_flow_is_sixty_four_over_reynolds() {
        for reynolds in [1e-3, 1.0, 9.999, 10.0, 100.0, 1000.0] {
            let f = churchill_1977(reynolds, 0.0);
            assert!(
                (f * reynolds / 64.0 - 1.0).abs() < 1e-5,
                "{f} at Re {reynolds}"
            );
        }
    }

    /// However far friction is off, more flow costs more.
    #[test]
    fn loss_rises_with_the_flow_whatever_the_factor() {
        for factor in [0.75, 0.9, 1.0, 1.15, 1.36] {
            let mut last = 0.0;
            for step in 0..2000 {
                let reynolds = 1000.0 + 3.0 * f64::from(step);
                let loss = friction_between(reynolds, 1e-4, factor) * reynolds * reynolds;
                assert!(last < loss, "{factor} at Re {reynolds}");
                last = loss;
            }
        }
    }

    #[test]
    fn a_factor_of_one_changes_no_bit() {
        for step in 0..400 {
            let reynolds = 1000.0 + 15.0 * f64::from(step);
            assert_eq!(
                friction_between(reynolds, 1e-3, 1.0),
                churchill_1977(reynolds, 1e-3),
                "at Re {reynolds}"
            );
        }
    }

    #[test]
    fn roughness_never_helps() {
        for reynolds in [10.0, 1500.0, 2500.0, 5000.0, 1e5, 1e7] {
            let smooth = churchill_1977(reynolds, 0.0);
            let rough = churchill_1977(reynolds, 0.01);
            assert!(smooth <= rough, "{smooth} and {rough} at Re {reynolds}");
        }
    }
}
