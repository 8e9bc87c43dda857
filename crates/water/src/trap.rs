//! The drop and the seal that a trap needs against the suction or pressure at its place.

use dewrun_quantity::{Area, Density, Length, Limits, OutOfRange, Pressure};
use thiserror::Error;

use crate::GRAVITY_M_S2;

/// What outlet and seal get beyond the head, where nobody says otherwise: 25 mm.
///
/// Common practice, no source; an inch of water beyond the head covers a level that is out and a fan that surges.
pub const USUAL_MARGIN: Length = Length::millimetres(25.0);

const PRESSURE: Limits = Limits::new("the pressure against the room", "Pa", -20_000.0, 20_000.0);
const MARGIN: Limits = Limits::new("the margin", "mm", 0.0, 1000.0);
const DIP: Limits = Limits::new("the bore area of the dip tube", "mm2", 1.0, 1e6);
const POT: Limits = Limits::new("the area of the pot outside the dip tube", "mm2", 1.0, 1e7);
const WATER: Limits = Limits::new("the density of the water", "kg/m3", 800.0, 1200.0);

/// Why a trap has no answer.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[non_exhaustive]
pub enum TrapError {
    /// A number lies where no trap is: bring it within the limits.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// No state is given: give the pressures of at least one, running or at start.
    #[error("a trap needs the pressure of at least one state")]
    NoState,
}

/// One state of duct fan and detector fan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrapState {
    /// Static pressure of the duct against the detector's room.
    pub duct_static: Pressure,
    /// What is lost between the duct and the trap.
    pub loss: Pressure,
}

impl TrapState {
    /// Pressure in the tube at the trap against the room; negative is suction.
    #[must_use]
    pub fn pressure(self) -> Pressure {
        self.duct_static - self.loss
    }
}

/// How a trap holds its seal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TrapKind {
    /// A U of one bore.
    EqualLegs,
    /// A dip tube that is open to the room stands in a pot that belongs to the sampling tube.
    DipOpenToRoom {
        /// Bore area of the dip tube.
        dip: Area,
        /// Area of the pot outside the dip tube.
        pot: Area,
    },
    /// A dip tube that belongs to the sampling tube stands in a pot that is open to the room.
    DipOnTube {
        /// Bore area of the dip tube.
        dip: Area,
        /// Area of the pot outside the dip tube.
        pot: Area,
    },
}

/// What a trap needs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Requirement {
    /// Column of water that the worst suction carries.
    pub suction_head: Length,
    /// Column of water that the worst pressure carries.
    pub pressure_head: Length,
    /// How far the outlet lies below the invert of the tube at least, so that water does not back up into it.
    pub outlet_drop: Length,
    /// Standing seal at least, so that no air is drawn in or blown out.
    pub seal: Length,
}

/// Column of water that a pressure carries, `p/(rho_w g)`; negative under pressures below zero.
///
/// # Range
/// Pressures within 20 kPa.
/// # Accuracy
/// That of the density of the water.
/// # Errors
/// None.
/// # Source
/// Hydrostatics.
///
/// ```
/// use dewrun_quantity::{Density, Pressure};
/// let water = Density::kilograms_per_cubic_metre(998.2);
/// let head = dewrun_water::trap::head(Pressure::pascals(300.0), water);
/// assert!((head.to_millimetres() - 30.6467).abs() < 1e-3);
/// ```
#[must_use]
pub fn head(pressure: Pressure, water: Density) -> Length {
    let weight = water.to_kilograms_per_cubic_metre() * GRAVITY_M_S2;
    Length::metres(pressure.to_pascals() / weight)
}

/// Drop of the outlet and standing seal that the worst of all states asks for.
///
/// Suction side: drop `h + m`; seal of equal legs `(h + m)/2`, of a dip tube open to the room `h/(1 + a/A) + m`, of a dip tube on the sampling tube `h/(1 + A/a) + m`.
/// Pressure side: drop `m`, seal `h`. The larger counts.
/// Start of the fan and the static pressure of the duct belong among the states: both are often worse than running.
///
/// # Range
/// Pressures within 20 kPa against the room.
/// # Accuracy
/// Exact for standing water; the margin stands for surges.
/// # Errors
/// [`TrapError`] where there is no state or a number is none.
/// # Source
/// Hydrostatics of both water surfaces when air just reaches the bend or the mouth of the dip tube.
/// The rule of head plus an inch for the outlet and half of that for the seal of a draw-through unit is common practice, no source.
///
/// ```
/// use dewrun_quantity::{Density, Pressure};
/// use dewrun_water::trap::{TrapKind, TrapState, USUAL_MARGIN, requirement};
/// let state = |loss| TrapState { duct_static: Pressure::pascals(-200.0), loss: Pressure::pascals(loss) };
/// let water = Density::kilograms_per_cubic_metre(998.2);
/// let needs = requirement(TrapKind::EqualLegs, &[state(60.0), state(95.0)], USUAL_MARGIN, water).unwrap();
/// assert!((needs.outlet_drop.to_millimetres() - 55.1359).abs() < 1e-3);
/// assert!((needs.seal.to_millimetres() - 27.5679).abs() < 1e-3);
/// ```
pub fn requirement(
    kind: TrapKind,
    states: &[TrapState],
    margin: Length,
    water: Density,
) -> Result<Requirement, TrapError> {
    let (suction_head, pressure_head) = heads(states.iter().map(|state| state.pressure()), water)?;
    MARGIN.check(margin.to_millimetres())?;
    let share = head_share(kind)?;
    // Equal legs share the margin as well: what one falls, the other rises.
    let margin_share = if matches!(kind, TrapKind::EqualLegs) {
        0.5
    } else {
        1.0
    };
    let suction_seal = if Length::ZERO < suction_head {
        suction_head * share + margin * margin_share
    } else {
        Length::ZERO
    };
    Ok(Requirement {
        suction_head,
        pressure_head,
        outlet_drop: suction_head + margin,
        seal: suction_seal.max(pressure_head),
    })
}

/// The worst suction and the worst pressure, each as a column of water and not below zero.
pub(crate) fn heads(
    pressures: impl Iterator<Item = Pressure>,
    water: Density,
) -> Result<(Length, Length), TrapError> {
    WATER.check(water.to_kilograms_per_cubic_metre())?;
    let mut worst: Option<(Length, Length)> = None;
    for pressure in pressures {
        PRESSURE.check(pressure.to_pascals())?;
        let column = head(pressure, water);
        let (suction, overpressure) = worst.unwrap_or_default();
        worst = Some((suction.max(-column), overpressure.max(column)));
    }
    worst.ok_or(TrapError::NoState)
}

/// The part of the head that the standing water on the side of the seal has to make up.
fn head_share(kind: TrapKind) -> Result<f64, TrapError> {
    let ratio = |dip: Area, pot: Area| {
        DIP.check(dip.to_square_millimetres())?;
        POT.check(pot.to_square_millimetres())?;
        Ok::<_, TrapError>(dip / pot)
    };
    Ok(match kind {
        TrapKind::EqualLegs => 0.5,
        TrapKind::DipOpenToRoom { dip, pot } => 1.0 / (1.0 + ratio(dip, pot)?),
        TrapKind::DipOnTube { dip, pot } => {
            let ratio = ratio(dip, pot)?;
            ratio / (ratio + 1.0)
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{prop_assert, proptest};

    const WATER: Density = Density::kilograms_per_cubic_metre(998.2);

    fn state(duct_static_pa: f64, loss_pa: f64) -> TrapState {
        TrapState {
            duct_static: Pressure::pascals(duct_static_pa),
            loss: Pressure::pascals(loss_pa),
        }
    }

    /// A trap under 150 Pa of suction, by hand.
    ///
    /// Water at 20 °C weighs 998.2 · 9.80665 = 9789.0 N/m3.
    /// The suction lifts h = 150 / 9789.0 = 0.015 323 m = 15.32 mm of it.
    /// The outlet has to lie h + 25 = 40.32 mm below the invert, else the water that the suction lifts stands in the tube.
    /// In a U the water rises in one leg by what it falls in the other, so each leg stands (h + 25)/2 = 20.16 mm deep.
    #[test]
    fn under_150_pa_of_suction_a_trap_needs_its_drop_and_its_seal() {
        let needs = requirement(
            TrapKind::EqualLegs,
            &[state(-100.0, 50.0)],
            USUAL_MARGIN,
            WATER,
        );
        let millimetres = needs.map(|needs| {
            [needs.suction_head, needs.outlet_drop, needs.seal].map(Length::to_millimetres)
        });
        let expected = [15.323, 40.323, 20.162];
        assert!(
            millimetres.is_ok_and(|got| got
                .iter()
                .zip(expected)
                .all(|(got, expected)| (got - expected).abs() < 1e-3)),
            "{millimetres:?}, by hand {expected:?}"
        );
    }

    #[test]
    fn on_the_pressure_side_the_margin_is_the_drop_and_the_head_the_seal() {
        let needs = requirement(
            TrapKind::EqualLegs,
            &[state(200.0, 20.0)],
            USUAL_MARGIN,
            WATER,
        );
        let needs = needs.map(|needs| (needs.suction_head, needs.outlet_drop, needs.seal));
        let seal = head(Pressure::pascals(180.0), WATER);
        assert_eq!(
            needs,
            Ok((Length::ZERO, USUAL_MARGIN, seal)),
            "180 Pa blow out"
        );
    }

    #[test]
    fn without_a_state_there_is_no_answer() {
        let none = requirement(TrapKind::EqualLegs, &[], USUAL_MARGIN, WATER);
        assert_eq!(none, Err(TrapError::NoState), "which suction?");
        let unknown = [state(f64::NAN, 0.0)];
        let refused = requirement(TrapKind::EqualLegs, &unknown, USUAL_MARGIN, WATER);
        assert!(refused.is_err(), "a pressure that is no number");
    }

    /// By hand: with a dip tube of no bore to speak of the pot does not fall, so all of the head stands in the dip tube;
    /// with a pot of no area to speak of all of the head is taken from the pot.
    #[test]
    fn areas_decide_which_surface_moves() {
        let (thin, wide) = (Area::square_millimetres(1.0), Area::square_millimetres(1e6));
        let full = head(Pressure::pascals(300.0), WATER);
        for (kind, share) in [
            (
                TrapKind::DipOpenToRoom {
                    dip: thin,
                    pot: wide,
                },
                1.0,
            ),
            (
                TrapKind::DipOnTube {
                    dip: thin,
                    pot: wide,
                },
                0.0,
            ),
        ] {
            let needs = requirement(kind, &[state(-300.0, 0.0)], Length::ZERO, WATER);
            let off = needs.map(|needs| (needs.seal - full * share).to_millimetres().abs());
            assert!(off.is_ok_and(|off| off < 1e-3), "{kind:?}: {off:?}");
        }
    }

    proptest! {
        #[test]
        fn one_more_state_never_asks_for_less(
            suctions in proptest::collection::vec((-500.0..500.0_f64, 0.0..200.0_f64), 2..6),
        ) {
            let states: Vec<TrapState> = suctions.iter().map(|(duct, loss)| state(*duct, *loss)).collect();
            let of = |states: &[TrapState]| requirement(TrapKind::EqualLegs, states, USUAL_MARGIN, WATER);
            let fewer = states.split_last().map_or(&states[..], |(_, fewer)| fewer);
            let (fewer, all) = (of(fewer)?, of(&states)?);
            prop_assert!(fewer.seal <= all.seal && fewer.outlet_drop <= all.outlet_drop, "{fewer:?} {all:?}");
        }
    }
}
