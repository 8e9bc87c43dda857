//! Drains without a trap: the valve that is opened by hand, and the open stub.

use core::f64::consts::PI;

use dewrun_quantity::{Area, Density, Length, Limits, Mass, Pressure};

use crate::trap::{TrapError, heads};

const BORE: Limits = Limits::new("the bore", "mm", 0.5, 500.0);
const COLUMN: Limits = Limits::new("the height of the water", "mm", 0.0, 100_000.0);

/// What comes out of a valve that is opened by hand while the fan runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HandDrain {
    /// Height of water over the valve below which it draws in air instead.
    pub head: Length,
    /// Whether any water comes.
    pub gives_water: bool,
    /// What comes until the suction holds the rest.
    pub runs_out: Mass,
}

/// What stands in an open stub.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrainStub {
    /// Column of water that the suction holds in it.
    pub column: Length,
    /// Its mass.
    pub held: Mass,
    /// Whether it lets water out: only where no state is under suction.
    pub drains: bool,
}

/// A valve at the foot of a water-filled drop, opened by hand under the worst of the pressures given.
///
/// Under suction it draws air in and gives no water until the head over it exceeds the suction.
/// To empty it: fan off under the impairment procedure, or a pot between two valves.
///
/// # Range
/// Pressures within 20 kPa against the room, bores from 0.5 to 500 mm.
/// # Accuracy
/// Exact for standing water without surface tension; a bore under about 15 mm may hold more.
/// # Errors
/// [`TrapError`] where there is no pressure or a number is none.
/// # Source
/// Hydrostatics.
///
/// ```
/// use dewrun_quantity::{Density, Length, Pressure};
/// use dewrun_water::drain::hand_drain;
/// let water = Density::kilograms_per_cubic_metre(998.2);
/// let valve = hand_drain(&[Pressure::pascals(-300.0)], Length::millimetres(19.0), Length::millimetres(80.0), water).unwrap();
/// assert!(valve.gives_water && (valve.runs_out.to_grams() - 13.968).abs() < 1e-3);
/// ```
pub fn hand_drain(
    pressures: &[Pressure],
    bore: Length,
    column: Length,
    water: Density,
) -> Result<HandDrain, TrapError> {
    let (head, _) = heads(pressures.iter().copied(), water)?;
    COLUMN.check(column.to_millimetres())?;
    let above = (column - head).max(Length::ZERO);
    Ok(HandDrain {
        head,
        gives_water: head < column,
        runs_out: column_mass(bore, above, water)?,
    })
}

/// A stub that is open at its lower end, under the worst of the pressures given.
///
/// Suction carries a column `p/(rho_w g)` in it, through which air bubbles in: it does not drain.
///
/// # Range
/// Pressures within 20 kPa against the room, bores from 0.5 to 500 mm.
/// # Accuracy
/// Exact for standing water; surface tension holds more in a bore under about 15 mm.
/// # Errors
/// [`TrapError`] where there is no pressure or a number is none.
/// # Source
/// Hydrostatics.
///
/// ```
/// use dewrun_quantity::{Density, Length, Pressure};
/// use dewrun_water::drain::drain_stub;
/// let water = Density::kilograms_per_cubic_metre(998.2);
/// let stub = drain_stub(&[Pressure::pascals(-240.0)], Length::millimetres(12.0), Length::millimetres(100.0), water).unwrap();
/// assert!(!stub.drains && (stub.column.to_millimetres() - 24.5173).abs() < 1e-3);
/// ```
pub fn drain_stub(
    pressures: &[Pressure],
    bore: Length,
    length: Length,
    water: Density,
) -> Result<DrainStub, TrapError> {
    let (head, _) = heads(pressures.iter().copied(), water)?;
    COLUMN.check(length.to_millimetres())?;
    let column = head.min(length);
    Ok(DrainStub {
        column,
        held: column_mass(bore, column, water)?,
        drains: head <= Length::ZERO,
    })
}

fn column_mass(bore: Length, height: Length, water: Density) -> Result<Mass, TrapError> {
    BORE.check(bore.to_millimetres())?;
    let area = Area::square_metres(0.25 * PI * bore.to_metres() * bore.to_metres());
    let volume_m3 = area.to_square_metres() * height.to_metres();
    Ok(Mass::kilograms(
        volume_m3 * water.to_kilograms_per_cubic_metre(),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    const WATER: Density = Density::kilograms_per_cubic_metre(998.2);
    const BORE: Length = Length::millimetres(19.0);

    #[test]
    fn a_valve_with_less_water_than_head_gives_none() {
        let valve = hand_drain(
            &[Pressure::pascals(-300.0)],
            BORE,
            Length::millimetres(30.0),
            WATER,
        );
        let gives = valve.map(|valve| (valve.gives_water, valve.runs_out));
        assert_eq!(gives, Ok((false, Mass::ZERO)), "300 Pa hold 30.6 mm");
    }

    #[test]
    fn a_stub_drains_where_no_state_is_under_suction() {
        let pressures = [Pressure::pascals(40.0), Pressure::ZERO];
        let stub = drain_stub(&pressures, BORE, Length::millimetres(50.0), WATER);
        assert!(stub.is_ok_and(|stub| stub.drains), "it blows out");
        let one_under_suction = [Pressure::pascals(40.0), Pressure::pascals(-1.0)];
        let stub = drain_stub(&one_under_suction, BORE, Length::millimetres(50.0), WATER);
        assert!(stub.is_ok_and(|stub| !stub.drains), "it sometimes draws in");
    }

    #[test]
    fn a_stub_holds_no_more_than_its_length() {
        let stub = drain_stub(
            &[Pressure::pascals(-400.0)],
            BORE,
            Length::millimetres(20.0),
            WATER,
        );
        assert_eq!(
            stub.map(|stub| stub.column),
            Ok(Length::millimetres(20.0)),
            "40.9 mm would be held"
        );
    }
}
