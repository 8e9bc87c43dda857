//! The film between the air and the inner wall: which relation holds, and its value at a place.
//!
//! Heat and mass use the same function, with the Prandtl or the Schmidt number.

mod gnielinski;
mod laminar;

use dewrun_numeric::fast_cbrt as cbrt;

pub use gnielinski::{gnielinski_1976, konakov_friction};
pub use laminar::{FAR_FROM_ENTRY, vdi_g1_laminar};

use gnielinski::entry_factor;
use laminar::vdi_g1_laminar_by_root;

/// Highest Reynolds number of laminar flow.
pub const LAMINAR_UP_TO: f64 = 2300.0;
/// Lowest Reynolds number of turbulent flow.
pub const TURBULENT_FROM: f64 = 4000.0;

/// Relation that holds at a Reynolds number.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Regime {
    Laminar,
    /// With the share of the turbulent value.
    Between(f64),
    Turbulent,
}

/// The inside film at one place: what heat and mass transfer share there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FilmInside {
    regime: Regime,
    reynolds: f64,
    friction: f64,
    /// Cube root of D/x.
    inlet_root: f64,
}

impl FilmInside {
    /// The film at distance `x_m` behind an inlet of a tube of bore `d_m`.
    ///
    /// # Range
    /// Reynolds number from 0 to 1e6; the number is unbounded at `x_m` = 0.
    ///
    /// # Source
    /// The transition: Gnielinski, Int. J. Heat Mass Transfer 63 (2013) 134, <https://doi.org/10.1016/j.ijheatmasstransfer.2013.04.015>:
    /// linear in Re between the laminar value at 2300 and the turbulent one at 4000, both at the local x and the own Pr or Sc.
    ///
    /// ```
    /// use dewrun_tube::film_inside::FilmInside;
    /// let film = FilmInside::at(1500.0, 10.0, 0.019);
    /// assert!((film.number(0.71) - 3.66).abs() < 0.1);
    /// ```
    #[must_use]
    pub fn at(reynolds: f64, x_m: f64, d_m: f64) -> Self {
        let regime = regime(reynolds);
        let friction = match regime {
            Regime::Laminar => 0.0,
            Regime::Between(_) => konakov_friction(TURBULENT_FROM),
            Regime::Turbulent => konakov_friction(reynolds),
        };
        Self {
            regime,
            reynolds,
            friction,
            inlet_root: cbrt(d_m / x_m),
        }
    }

    /// Nusselt number of a Prandtl number, Sherwood number of a Schmidt number [-].
    #[must_use]
    #[inline]
    pub fn number(&self, prandtl: f64) -> f64 {
        match self.regime {
            Regime::Laminar => laminar(self.reynolds, prandtl, self.inlet_root),
            Regime::Turbulent => turbulent(self.reynolds, prandtl, self.friction, self.inlet_root),
            Regime::Between(share) => {
                let low = laminar(LAMINAR_UP_TO, prandtl, self.inlet_root);
                let high = turbulent(TURBULENT_FROM, prandtl, self.friction, self.inlet_root);
                low + share * (high - low)
            }
        }
    }
}

/// Local Nusselt number of a Prandtl number, or Sherwood number of a Schmidt number [-].
///
/// Arguments: Reynolds number [-], Prandtl or Schmidt number [-], distance behind the inlet over the bore [-].
///
/// # Range
/// Re 0 to 1e6, Pr or Sc 0.5 to 2000, `x_over_d` above 0.
///
/// # Accuracy
/// Laminar 6 % on the exact series, turbulent 10 %; mixed convection at low speed is not counted and may add 25 %.
///
/// # Errors
/// None.
///
/// # Source
/// The relations of this module; see [`FilmInside::at`] for how they are joined.
///
/// ```
/// let nu = dewrun_tube::film_inside::local(1500.0, 0.71, 500.0);
/// assert!((nu - 3.68).abs() < 0.05);
/// ```
#[must_use]
pub fn local(reynolds: f64, prandtl: f64, x_over_d: f64) -> f64 {
    FilmInside::at(reynolds, x_over_d, 1.0).number(prandtl)
}

fn regime(reynolds: f64) -> Regime {
    if reynolds <= LAMINAR_UP_TO {
        return Regime::Laminar;
    }
    if reynolds < TURBULENT_FROM {
        return Regime::Between((reynolds - LAMINAR_UP_TO) / (TURBULENT_FROM - LAMINAR_UP_TO));
    }
    Regime::Turbulent
}

#[inline]
fn laminar(reynolds: f64, prandtl: f64, inlet_root: f64) -> f64 {
    vdi_g1_laminar_by_root(cbrt(reynolds * prandtl) * inlet_root)
}

#[inline]
fn turbulent(reynolds: f64, prandtl: f64, friction: f64, inlet_root: f64) -> f64 {
    gnielinski_1976(reynolds, prandtl, friction) * entry_factor(inlet_root)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_regimes_join() {
        for edge in [LAMINAR_UP_TO, TURBULENT_FROM] {
            let below = local(edge - 1e-6, 0.7, 40.0);
            let above = local(edge + 1e-6, 0.7, 40.0);
            assert!(
                (below - above).abs() < 1e-6,
                "{below} and {above} at Re {edge}"
            );
        }
    }
}
