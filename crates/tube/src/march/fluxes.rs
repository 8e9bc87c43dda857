//! Everything that a metre of tube exchanges, as one vector, so that means and linear changes treat all parts alike.

use core::ops::{Add, Mul, Sub};

/// What a metre of tube exchanges at one place, or how that changes with the air.
///
/// At every place and in every linear change `energy = loss - tracing - sweat_heat + condensate_heat`, the balance of the wall.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Fluxes {
    /// Energy that leaves the air with heat and vapour, W/m.
    pub(crate) energy: f64,
    /// Vapour that leaves the air, kg/(s m).
    pub(crate) vapour: f64,
    /// Heat to the space by convection and radiation, W/m.
    pub(crate) loss: f64,
    /// Heat that sweat gives to the surface, W/m.
    pub(crate) sweat_heat: f64,
    /// Energy that stays with what has deposited, W/m.
    pub(crate) condensate_heat: f64,
    /// Sweat, kg/(s m).
    pub(crate) sweat: f64,
    /// Temperature of the inner wall, °C.
    pub(crate) wall_c: f64,
    /// Temperature of the outer surface, °C.
    pub(crate) surface_c: f64,
}

impl Fluxes {
    /// Nothing exchanged.
    pub(crate) const NONE: Self = Self {
        energy: 0.0,
        vapour: 0.0,
        loss: 0.0,
        sweat_heat: 0.0,
        condensate_heat: 0.0,
        sweat: 0.0,
        wall_c: 0.0,
        surface_c: 0.0,
    };

    fn zip(self, other: Self, f: impl Fn(f64, f64) -> f64) -> Self {
        Self {
            energy: f(self.energy, other.energy),
            vapour: f(self.vapour, other.vapour),
            loss: f(self.loss, other.loss),
            sweat_heat: f(self.sweat_heat, other.sweat_heat),
            condensate_heat: f(self.condensate_heat, other.condensate_heat),
            sweat: f(self.sweat, other.sweat),
            wall_c: f(self.wall_c, other.wall_c),
            surface_c: f(self.surface_c, other.surface_c),
        }
    }
}

impl Add for Fluxes {
    type Output = Self;
    #[inline]
    fn add(self, other: Self) -> Self {
        self.zip(other, |a, b| a + b)
    }
}

impl Sub for Fluxes {
    type Output = Self;
    #[inline]
    fn sub(self, other: Self) -> Self {
        self.zip(other, |a, b| a - b)
    }
}

impl Mul<f64> for Fluxes {
    type Output = Self;
    #[inline]
    fn mul(self, factor: f64) -> Self {
        self.zip(self, |a, _| a * factor)
    }
}
