//! Drying: of the film on a wall while air takes it up, and of the seal of a trap that nothing refills.

use dewrun_moist_air::MoistAir;
use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::mixture::{GAS_CONSTANT, WATER_MOLAR_MASS};
use dewrun_moist_air::transport::diffusivity_m2_s;
use dewrun_moist_air::{ZERO_CELSIUS_K, liquid};
use dewrun_numeric::elementary::{cbrt, ln_1p};
use dewrun_quantity::{Length, MassPerArea, Time};

/// Share of the wall that a film wets: `min(1, (M/R)^(2/3))`.
///
/// Arguments: the film and the retained amount that wets all of it.
///
/// # Range
/// Any; with nothing retained a film wets all.
/// # Accuracy
/// The slow-drying bound: drops that stand close together dry faster.
/// # Errors
/// None.
/// # Source
/// Drops of like shape: their base goes with the 2/3 power of their mass.
///
/// ```
/// use dewrun_quantity::MassPerArea;
/// let film = MassPerArea::grams_per_square_metre;
/// let share = dewrun_water::drying::wetted_share(film(12.5), film(50.0));
/// assert!((share - 0.3969).abs() < 1e-4);
/// ```
#[must_use]
pub fn wetted_share(film: MassPerArea, retained: MassPerArea) -> f64 {
    if retained <= film {
        return if film == MassPerArea::ZERO { 0.0 } else { 1.0 };
    }
    let root = cbrt((film / retained).max(0.0));
    root * root
}

/// What is left of a film after a time in which the air takes a constant amount from each wetted area.
///
/// `dM/dt = -g min(1, (M/R)^(2/3))`: above the retained amount it falls evenly, below it its cube root does.
/// Arguments: film at the start, retained amount, what a fully wetted area loses in an hour, the time.
///
/// # Range
/// Films and losses from zero up.
/// # Accuracy
/// Exact for a constant loss.
/// # Errors
/// None.
/// # Source
/// As [`wetted_share`], integrated.
///
/// ```
/// use dewrun_quantity::{MassPerArea, Time};
/// let film = MassPerArea::grams_per_square_metre;
/// let left = dewrun_water::drying::film_left(film(50.0), film(50.0), film(20.0), Time::hours(3.0));
/// assert!((left.to_grams_per_square_metre() - 10.8).abs() < 1e-9);
/// ```
#[must_use]
pub fn film_left(
    start: MassPerArea,
    retained: MassPerArea,
    loss_in_an_hour: MassPerArea,
    time: Time,
) -> MassPerArea {
    let (m0, r) = (
        start.to_kilograms_per_square_metre(),
        retained.to_kilograms_per_square_metre(),
    );
    let lost = loss_in_an_hour.to_kilograms_per_square_metre() * time.to_hours();
    let evenly = (m0 - r).max(0.0);
    if lost <= evenly {
        return MassPerArea::kilograms_per_square_metre(m0 - lost);
    }
    let below = m0.min(r);
    let root = cbrt(below) - (lost - evenly) / (3.0 * cbrt(r) * cbrt(r));
    let root = root.max(0.0);
    MassPerArea::kilograms_per_square_metre(root * root * root)
}

/// Still air over one of the water surfaces of a trap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StillColumn {
    /// Height of still air over the water at the start; zero where the air sweeps the surface.
    pub height: Length,
    /// The air at its upper end.
    pub air: MoistAir,
}

impl StillColumn {
    /// What a path of one metre lets through [kg/(m s)]: `M p D/(R T) ln((1 - x_air)/(1 - x_sat))`; negative where water condenses.
    fn conductance_kg_ms(&self) -> f64 {
        let (t_c, p_pa) = (
            self.air.temperature().to_celsius(),
            self.air.pressure().to_pascals(),
        );
        let moles_m3 = p_pa / (GAS_CONSTANT * (t_c + ZERO_CELSIUS_K));
        let (wet, air) = (saturated_over_water(t_c, p_pa), self.air.mole_fraction());
        let driving = ln_1p((wet - air) / (1.0 - wet));
        WATER_MOLAR_MASS * moles_m3 * diffusivity_m2_s(t_c, p_pa) * driving
    }
}

/// Panels of Simpson's rule over the falling seal: the integrand is smooth, four digits need two.
const PANELS: u32 = 16;

/// Time in which a seal that nothing refills dries out; none where the air takes nothing.
///
/// Vapour diffuses through the still air over each surface, the more slowly the farther the water has fallen (Stefan's tube).
/// Both surfaces fall together, since they are joined; the seal is lost when each has fallen by its depth.
/// Arguments: the still air over the surface on the side of the tube and on the side of the room, depth of the seal.
///
/// # Range
/// Water at the temperature of the air, above 0 °C and below boiling; surfaces alike in area.
/// # Accuracy
/// An upper bound: air that moves over the trap, and a warmer room, dry it faster. Half of it is a prudent interval.
/// # Errors
/// None.
/// # Source
/// Bird, Stewart & Lightfoot, Transport Phenomena, 2nd ed. (2002), ch. 18.2, eq. 18.2-14.
///
/// ```
/// use dewrun_moist_air::{Humidity, MoistAir, Over, Pair};
/// use dewrun_quantity::{Length, Pressure, RelativeHumidity, Temperature};
/// use dewrun_water::drying::{StillColumn, seal_dries_out};
/// let half = Humidity::Relative { value: RelativeHumidity::percent(50.0), over: Over::Water };
/// let air = MoistAir::new(Pair::Temperature(Temperature::celsius(20.0), half), Pressure::pascals(101_325.0)).unwrap().value;
/// let over = StillColumn { height: Length::millimetres(50.0), air };
/// let weeks = seal_dries_out([over, over], Length::millimetres(50.0)).unwrap().to_days() / 7.0;
/// assert!((weeks - 28.3).abs() < 0.3);
/// ```
#[must_use]
pub fn seal_dries_out(over: [StillColumn; 2], seal: Length) -> Option<Time> {
    let [tube, room] = over.map(|column| (column.conductance_kg_ms(), column.height.to_metres()));
    let t_c = over.map(|column| column.air.temperature().to_celsius());
    let density = 0.5 * t_c.map(liquid::density_kg_m3).iter().sum::<f64>();
    let seal_m = seal.to_metres();
    // Seconds for each metre by which both surfaces fall.
    let slowness = |fallen_m: f64| {
        let through = |(conductance, height_m): (f64, f64)| {
            let path_m = height_m.max(0.0) + fallen_m;
            conductance / path_m.max(1e-9)
        };
        let flux = through(tube) + through(room);
        (0.0 < flux).then(|| 2.0 * density / flux)
    };
    let step = seal_m / f64::from(PANELS);
    let mut seconds = 0.0;
    for panel in 0..PANELS {
        let from = f64::from(panel) * step;
        let at = [
            slowness(from)?,
            slowness(from + 0.5 * step)?,
            slowness(from + step)?,
        ];
        let [start, middle, end] = at;
        seconds += step / 6.0 * (start + 4.0 * middle + end);
    }
    Some(Time::seconds(seconds))
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_moist_air::{Humidity, Over, Pair};
    use dewrun_quantity::{Pressure, RelativeHumidity, Temperature};
    use proptest::prelude::{prop_assert, proptest};

    fn air(t_c: f64, percent: f64) -> MoistAir {
        let humidity = Humidity::Relative {
            value: RelativeHumidity::percent(percent),
            over: Over::Water,
        };
        MoistAir::new(
            Pair::Temperature(Temperature::celsius(t_c), humidity),
            Pressure::pascals(101_325.0),
        )
        .map(|air| air.value)
        .expect("a plain state")
    }

    /// By hand, both sides alike: saturation at 20 °C 2339 Pa · 1.0039 = 2348 Pa, x = 0.023 17; half of it 0.011 59.
    /// ln((1 − 0.011 59)/(1 − 0.023 17)) = 0.011 79; c = 101 325/(8.3145 · 293.15) = 41.57 mol/m3; D = 2.475e-5 m2/s.
    /// K = 0.018 015 · 41.57 · 2.475e-5 · 0.011 79 = 2.185e-7 kg/(m s).
    /// From 50 to 100 mm: t = 998.2 · (0.1² − 0.05²)/(2 · 2.185e-7) = 1.713e7 s = 198 days.
    #[test]
    fn a_seal_of_50_mm_under_50_mm_of_room_air_by_hand() {
        let over = StillColumn {
            height: Length::millimetres(50.0),
            air: air(20.0, 50.0),
        };
        let days = seal_dries_out([over, over], Length::millimetres(50.0)).map(Time::to_days);
        assert!(
            days.is_some_and(|days| (days / 198.3 - 1.0).abs() < 0.01),
            "{days:?}"
        );
    }

    #[test]
    fn saturated_air_takes_nothing() {
        let over = StillColumn {
            height: Length::millimetres(50.0),
            air: air(20.0, 100.0),
        };
        let time = seal_dries_out([over, over], Length::millimetres(50.0));
        assert!(
            time.is_none_or(|time| 1e4 < time.to_days()),
            "it stays: {time:?}"
        );
    }

    proptest! {
        #[test]
        fn drying_in_two_spans_is_drying_in_one(
            start in 0.0..200.0_f64, retained in 1.0..100.0_f64, loss in 0.0..60.0_f64, first in 0.0..6.0_f64, second in 0.0..6.0_f64,
        ) {
            let film = MassPerArea::grams_per_square_metre;
            let left = |start, hours| film_left(start, film(retained), film(loss), Time::hours(hours));
            let (once, twice) = (left(film(start), first + second), left(left(film(start), first), second));
            let off = (once - twice).to_grams_per_square_metre().abs();
            prop_assert!(off <= 1e-9 * start.max(1.0), "{once:?} {twice:?}");
        }
    }
}
