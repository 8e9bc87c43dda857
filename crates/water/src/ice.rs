//! Ice: water that stands below 0 °C and freezes, frost that narrows the bore, and what comes down when it thaws.

use core::f64::consts::PI;

use dewrun_moist_air::latent::FUSION;
use dewrun_quantity::{
    Conductivity, Density, Length, Mass, MassFlowPerLength, MassPerLength, Power, Temperature,
    TemperatureDifference, Time,
};

/// Density of frost where nobody says otherwise: 200 kg/m3, 100 when it grows fast and cold, 500 when it is old or grows near 0 °C.
///
/// O'Neal & Tree, ASHRAE Trans. 91 (1985) 267, a review (from memory).
pub const FROST_DENSITY: Density = Density::kilograms_per_cubic_metre(200.0);

/// How far small clean volumes of water cool below 0 °C before they freeze, least and most.
///
/// Common practice, no source; the larger and the dirtier the volume, the less.
pub const SUPERCOOLING: [TemperatureDifference; 2] = [
    TemperatureDifference::kelvins(0.0),
    TemperatureDifference::kelvins(8.0),
];

/// Whether water on a wall freezes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Freezes {
    /// The wall is not below 0 °C.
    No,
    /// It is, but by no more than water may supercool.
    Perhaps,
    /// It is, by more than that.
    Surely,
}

/// Whether water freezes on a wall of that temperature.
///
/// # Range
/// Pure water; salt and glycol freeze lower.
/// # Accuracy
/// Between 0 °C and the band of [`SUPERCOOLING`] either may happen; take it as frozen where it matters.
/// # Errors
/// None.
/// # Source
/// [`SUPERCOOLING`].
///
/// ```
/// use dewrun_quantity::Temperature;
/// use dewrun_water::ice::{Freezes, freezes};
/// assert_eq!(freezes(Temperature::celsius(-3.0)), Freezes::Perhaps);
/// assert_eq!(freezes(Temperature::celsius(-9.0)), Freezes::Surely);
/// ```
#[must_use]
pub fn freezes(wall: Temperature) -> Freezes {
    let below_k = -wall.to_celsius();
    let [_, most] = SUPERCOOLING;
    if below_k <= 0.0 {
        Freezes::No
    } else if below_k <= most.to_kelvins() {
        Freezes::Perhaps
    } else {
        Freezes::Surely
    }
}

/// Heat that leaves standing water through the wall it wets while that wall is at 0 °C; negative where it comes in.
///
/// Arguments: what a metre of tube with its insulation passes for each kelvin [W/(m K)], the share of the circumference that is wet,
/// the wetted length, and the temperature outside.
///
/// # Range
/// Shares from 0 to 1.
/// # Accuracy
/// That of the outside film, 20 %; wind shortens the wait, insulation only delays it.
/// # Errors
/// None.
/// # Source
/// Steady conduction with the wall held at the melting point.
///
/// ```
/// use dewrun_quantity::{Conductivity, Length, Temperature};
/// let passes = Conductivity::watts_per_metre_kelvin(0.30);
/// let heat = dewrun_water::ice::heat_out(passes, 0.4, Length::metres(1.0), Temperature::celsius(-10.0));
/// assert!((heat.to_watts() - 1.2).abs() < 1e-12);
/// ```
#[must_use]
pub fn heat_out(
    passes_per_length: Conductivity,
    wetted_share: f64,
    length: Length,
    outside: Temperature,
) -> Power {
    let per_kelvin = passes_per_length.to_watts_per_metre_kelvin() * length.to_metres();
    Power::watts(-per_kelvin * wetted_share * outside.to_celsius())
}

/// Time in which water at 0 °C freezes through, or ice at 0 °C thaws, under a steady flow of heat; none where no heat flows.
///
/// `m L_f / q`: it waits at 0 °C until the last of it is frozen.
///
/// # Range
/// Masses from zero; heat out of the water to freeze it, into the ice to thaw it, taken as positive here.
/// # Accuracy
/// That of the heat; the heat kept back by the ice itself is left out, which is an early answer.
/// # Errors
/// None.
/// # Source
/// Heat of fusion 333.46 kJ/kg: IAPWS R10-06(2009) and R6-95(2018).
///
/// ```
/// use dewrun_quantity::{Mass, Power};
/// let time = dewrun_water::ice::time_to_freeze(Mass::grams(100.0), Power::watts(1.2)).unwrap();
/// assert!((time.to_hours() - 7.719).abs() < 1e-3);
/// ```
#[must_use]
pub fn time_to_freeze(mass: Mass, heat: Power) -> Option<Time> {
    let seconds = mass.to_kilograms() * FUSION / heat.to_watts();
    let flows = 0.0 < heat.to_watts() && seconds.is_finite();
    flows.then(|| Time::seconds(seconds))
}

/// A bore with frost on its wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frosted {
    /// What is left of the bore; zero where it is closed.
    pub free_bore: Length,
    /// What is left of its area, 1 where there is no frost.
    pub free_share: f64,
}

/// What frost of that density leaves of a bore, spread evenly round it: `sqrt(D^2 - 4 m'/(pi rho))`.
///
/// # Range
/// Any frost; past the closing amount the bore stays closed.
/// # Accuracy
/// A factor of two, as the density; frost grows thickest at the coldest place and on the floor.
/// # Errors
/// None.
/// # Source
/// Geometry; density see [`FROST_DENSITY`].
///
/// ```
/// use dewrun_quantity::{Length, MassPerLength};
/// use dewrun_water::ice::{FROST_DENSITY, frosted};
/// let left = frosted(Length::millimetres(20.0), MassPerLength::grams_per_metre(20.0), FROST_DENSITY);
/// assert!((left.free_bore.to_millimetres() - 16.513).abs() < 1e-3);
/// ```
#[must_use]
pub fn frosted(bore: Length, frost: MassPerLength, density: Density) -> Frosted {
    let d_m = bore.to_metres();
    let frost_m2 = frost.to_kilograms_per_metre() / density.to_kilograms_per_cubic_metre();
    let squared = (d_m * d_m - 4.0 * frost_m2 / PI).max(0.0);
    Frosted {
        free_bore: Length::metres(squared.sqrt()),
        free_share: squared / (d_m * d_m),
    }
}

/// Time until frost that grows evenly leaves no more than that bore; none where none grows.
///
/// # Range
/// Bores to be left from zero (closed) to the bore.
/// # Accuracy
/// As [`frosted`]; as the bore narrows the air and with it the growth falls off, so it is an early answer.
/// # Errors
/// None.
/// # Source
/// As [`frosted`].
///
/// ```
/// use dewrun_quantity::{Length, MassFlowPerLength};
/// use dewrun_water::ice::{FROST_DENSITY, time_to_narrow};
/// let grows = MassFlowPerLength::grams_per_hour_metre(2.0);
/// let closed = time_to_narrow(Length::millimetres(20.0), Length::ZERO, grows, FROST_DENSITY).unwrap();
/// assert!((closed.to_hours() - 31.416).abs() < 1e-3, "pi/4 (20 mm)^2 200 kg/m3 = 62.83 g/m");
/// ```
#[must_use]
pub fn time_to_narrow(
    bore: Length,
    left: Length,
    grows: MassFlowPerLength,
    density: Density,
) -> Option<Time> {
    let (d_m, left_m) = (bore.to_metres(), left.to_metres());
    let area_m2 = 0.25 * PI * (d_m * d_m - left_m * left_m).max(0.0);
    let rate = grows.to_kilograms_per_second_metre();
    let seconds = area_m2 * density.to_kilograms_per_cubic_metre() / rate;
    (0.0 < rate && seconds.is_finite()).then(|| Time::seconds(seconds))
}

/// What comes down at once when frost thaws.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThawSlug {
    /// What runs to the low point: the frost less what the walls keep of it.
    pub runs: Mass,
    /// What of it a trap has no room for.
    pub beyond_trap: Mass,
}

/// The slug of water when frost and ice on a slope thaw.
///
/// Arguments: the frost on all walls that drain there, what these walls keep as a film, the room left in the trap.
///
/// # Range
/// Masses from zero.
/// # Accuracy
/// An upper bound: thaw takes hours, and some of it evaporates.
/// # Errors
/// None.
/// # Source
/// Conservation of water.
///
/// ```
/// use dewrun_quantity::Mass;
/// let slug = dewrun_water::ice::thaw_slug(Mass::grams(180.0), Mass::grams(25.0), Mass::grams(100.0));
/// assert!((slug.beyond_trap.to_grams() - 55.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn thaw_slug(frost: Mass, walls_keep: Mass, room_in_trap: Mass) -> ThawSlug {
    let runs = (frost - walls_keep).max(Mass::ZERO);
    ThawSlug {
        runs,
        beyond_trap: (runs - room_in_trap).max(Mass::ZERO),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{prop_assert, proptest};

    /// Standing water that freezes and thaws, by hand.
    ///
    /// 100 g stand on 1 m of tube that passes 0.30 W/(m K) and wet 0.4 of its circumference.
    /// At −10 °C outside 0.30 · 0.4 · 1 · 10 = 1.2 W leave. 0.1 kg · 333.46 kJ/kg = 33.346 kJ, so it is ice after 27 788 s = 7.719 h.
    /// At +5 °C outside 0.6 W come in: it is water again after 55 577 s = 15.438 h.
    #[test]
    fn standing_water_freezes_and_thaws() {
        let passes = Conductivity::watts_per_metre_kelvin(0.30);
        let at = |t_c| heat_out(passes, 0.4, Length::metres(1.0), Temperature::celsius(t_c));
        let water = Mass::grams(100.0);
        let freezes = time_to_freeze(water, at(-10.0)).map(Time::to_hours);
        let thaws = time_to_freeze(water, -at(5.0)).map(Time::to_hours);
        for (got, expected) in [(freezes, 7.719), (thaws, 15.438)] {
            assert!(
                got.is_some_and(|got| (got - expected).abs() < 1e-3),
                "{got:?} h, by hand {expected}"
            );
        }
        assert_eq!(
            time_to_freeze(water, at(5.0)),
            None,
            "it does not freeze above 0 °C"
        );
    }

    /// The deeper below 0 °C it is outside, the sooner in proportion; insulation that lets half through doubles the wait.
    #[test]
    fn colder_freezes_sooner_and_insulation_only_delays() {
        let time = |passes, t_c| {
            let passes = Conductivity::watts_per_metre_kelvin(passes);
            let heat = heat_out(passes, 0.5, Length::metres(2.0), Temperature::celsius(t_c));
            time_to_freeze(Mass::grams(50.0), heat).map_or(f64::NAN, Time::to_hours)
        };
        let bare = time(0.4, -5.0);
        assert!(
            (time(0.4, -20.0) / bare - 0.25).abs() < 1e-12,
            "four times as cold"
        );
        assert!(
            (time(0.2, -5.0) / bare - 2.0).abs() < 1e-12,
            "half lets half through"
        );
    }

    #[test]
    fn a_slug_is_what_the_walls_do_not_keep() {
        let grams = Mass::grams;
        let slug = thaw_slug(grams(20.0), grams(25.0), grams(0.0));
        assert_eq!(slug.runs, Mass::ZERO, "the walls keep all of it");
        let slug = thaw_slug(grams(60.0), grams(25.0), grams(100.0));
        assert_eq!(
            (slug.runs, slug.beyond_trap),
            (grams(60.0) - grams(25.0), Mass::ZERO),
            "the trap has room"
        );
    }

    #[test]
    fn frost_closes_a_bore_sooner_than_ice_would() {
        let bore = Length::millimetres(20.0);
        let frost = MassPerLength::grams_per_metre(70.0);
        let ice = Density::kilograms_per_cubic_metre(916.7);
        assert_eq!(
            frosted(bore, frost, FROST_DENSITY).free_bore,
            Length::ZERO,
            "62.8 g/m of frost close it"
        );
        assert!(
            0.7 < frosted(bore, frost, ice).free_share,
            "as much ice fills a quarter"
        );
    }

    proptest! {
        #[test]
        fn narrowing_and_its_time_agree(bore_mm in 2.0..50.0_f64, left_share in 0.0..0.99_f64, rate in 0.01..100.0_f64) {
            let bore = Length::millimetres(bore_mm);
            let grows = MassFlowPerLength::grams_per_hour_metre(rate);
            let time = time_to_narrow(bore, bore * left_share, grows, FROST_DENSITY).map_or(f64::NAN, Time::to_hours);
            let frost = MassPerLength::grams_per_metre(rate * time);
            let left = frosted(bore, frost, FROST_DENSITY).free_bore / bore;
            prop_assert!((left - left_share).abs() < 1e-6, "{left} of {left_share}");
        }
    }
}
