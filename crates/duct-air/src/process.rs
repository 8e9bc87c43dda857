//! What is done to the air on its way to the duct: heated, cooled, mixed, humidified, recovered, at a standstill.
//!
//! Each keeps the balance of water and enthalpy per kilogram of dry air; what exceeds saturation becomes mist.

use dewrun_moist_air::fog::{Content, FogAir, saturation};
use dewrun_moist_air::latent::{VAPOUR_CP, VAPOUR_ENTHALPY_AT_ZERO};
use dewrun_moist_air::mixture::{humidity_ratio, mole_fraction};
use dewrun_numeric::itp;

/// Heat capacity of liquid water, J/(kg K).
const WATER_CP: f64 = 4186.0;
/// Steam of a humidifier at the pressure of the air, °C.
const STEAM_C: f64 = 100.0;
/// How near a humidifier meets its humidity ratio, kg/kg.
const RATIO_TOLERANCE: f64 = 1e-9;

/// Air warmed to a temperature, °C, at the same water; as it is where it is warmer already.
///
/// # Range
/// -60 to 95 °C.
/// # Accuracy
/// Exact.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, moist air sensible heating.
///
/// ```
/// use dewrun_duct_air::{FogAir, process::heated};
/// let air = heated(FogAir { t_c: -4.0, w: 0.002, mist: 0.0 }, 5.0, 101_325.0);
/// assert_eq!((air.t_c, air.w), (5.0, 0.002));
/// ```
#[must_use]
pub fn heated(air: FogAir, to_c: f64, p_pa: f64) -> FogAir {
    if to_c <= air.t_c {
        return air;
    }
    let water = air.w + air.mist;
    let w = water.min(saturation(to_c, p_pa).0);
    FogAir {
        t_c: to_c,
        w,
        mist: water - w,
    }
}

/// A cooling coil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coil {
    /// Apparatus dew point: the temperature of the surface that the air meets, °C.
    pub apparatus_c: f64,
    /// Share of the air that passes it untouched.
    pub bypass: f64,
}

/// Air behind a coil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cooled {
    /// The air.
    pub air: FogAir,
    /// Water left on the coil, kg per kg of dry air.
    pub condensate: f64,
}

/// Air behind a cooling coil: the part that meets it leaves saturated at its surface, or as moist as it came where that is drier; the rest passes by.
///
/// As it is where the coil is not colder than the air.
///
/// # Range
/// Apparatus dew points from 0 °C up, bypass from 0 to 1.
/// # Accuracy
/// 0.03 K between mixing by enthalpy, as here, and by temperature.
/// # Source
/// Apparatus dew point and bypass factor: Carrier's method; McQuiston, Parker & Spitler, Heating, Ventilating, and Air Conditioning, 6th ed. (2005), ch. 3.
///
/// ```
/// use dewrun_duct_air::{FogAir, process::{Coil, cooled}};
/// let air = FogAir { t_c: 32.0, w: 0.018_12, mist: 0.0 };
/// let cooled = cooled(air, Coil { apparatus_c: 10.0, bypass: 0.12 }, 101_325.0);
/// assert!((cooled.condensate - 9.202e-3).abs() < 2e-5); // CoolProp 8.0.0
/// ```
#[must_use]
pub fn cooled(air: FogAir, coil: Coil, p_pa: f64) -> Cooled {
    if air.t_c <= coil.apparatus_c {
        return Cooled {
            air,
            condensate: 0.0,
        };
    }
    let water = air.w + air.mist;
    let w = water.min(saturation(coil.apparatus_c, p_pa).0);
    let touched = FogAir {
        t_c: coil.apparatus_c,
        w,
        mist: 0.0,
    };
    let touching = 1.0 - coil.bypass;
    Cooled {
        air: mixed(&[(touched, touching), (air, coil.bypass)], p_pa),
        condensate: touching * (water - w),
    }
}

/// Streams mixed by their shares of dry air, at any scale; into the fog region too.
///
/// # Range
/// Shares from 0 up, one of them above.
/// # Accuracy
/// Exact for the enthalpies of [`dewrun_moist_air::latent`].
/// # Errors
/// None; not a number where there is no share.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, adiabatic mixing of two moist airstreams.
///
/// ```
/// use dewrun_duct_air::{FogAir, process::mixed};
/// let warm = FogAir { t_c: 32.0, w: 0.018_12, mist: 0.0 };
/// let cool = FogAir { t_c: 22.0, w: 0.008_26, mist: 0.0 };
/// assert!((mixed(&[(warm, 0.3), (cool, 0.7)], 101_325.0).t_c - 25.037).abs() < 0.03); // CoolProp 8.0.0
/// ```
#[must_use]
pub fn mixed(streams: &[(FogAir, f64)], p_pa: f64) -> FogAir {
    let (mut enthalpy, mut water, mut all) = (0.0, 0.0, 0.0);
    for &(air, share) in streams {
        let content = Content::of(air);
        enthalpy += share * content.enthalpy_j_kg;
        water += share * content.water;
        all += share;
    }
    Content {
        enthalpy_j_kg: enthalpy / all,
        water: water / all,
    }
    .air(p_pa)
}

/// What a humidifier adds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Humidifier {
    /// Steam at 100 °C.
    Steam,
    /// Water of a temperature, °C, that evaporates from the air's own heat.
    Water(f64),
}

/// Air humidified to a relative humidity over water; as it is where it is as humid already.
///
/// # Range
/// Humidities from 0 to below 1; water from 0 to 100 °C.
/// # Accuracy
/// 1e-9 kg/kg of the humidity asked for.
/// # Errors
/// None: where the humidity is out of reach the air stays as it is.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, moist air humidified: the enthalpy rises by that of the water added.
///
/// ```
/// use dewrun_duct_air::{FogAir, process::{Humidifier, humidified}};
/// let dry = FogAir { t_c: 20.0, w: 0.002, mist: 0.0 };
/// let air = humidified(dry, 0.40, Humidifier::Steam, 101_325.0);
/// assert!(20.0 < air.t_c && air.t_c < 20.8 && (air.w - 0.0059).abs() < 2e-4);
/// ```
#[must_use]
pub fn humidified(air: FogAir, to_rh: f64, by: Humidifier, p_pa: f64) -> FogAir {
    let of_water = match by {
        Humidifier::Steam => VAPOUR_ENTHALPY_AT_ZERO + VAPOUR_CP * STEAM_C,
        Humidifier::Water(t_c) => WATER_CP * t_c,
    };
    let start = Content::of(air);
    let after = |added: f64| {
        Content {
            enthalpy_j_kg: start.enthalpy_j_kg + added * of_water,
            water: start.water + added,
        }
        .air(p_pa)
    };
    let missing = |added: f64| to_rh - relative_humidity(after(added), p_pa);
    if missing(0.0) <= 0.0 {
        return air;
    }
    let most = saturation(air.t_c, p_pa).0 + RATIO_TOLERANCE;
    itp(missing, 0.0, most, RATIO_TOLERANCE).map_or(air, after)
}

/// Relative humidity by mole fractions, 1 in mist; over ice below 0 °C.
///
/// # Range
/// -60 to 95 °C.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 22.
///
/// ```
/// use dewrun_duct_air::{FogAir, process::relative_humidity};
/// let air = FogAir { t_c: 25.0, w: 0.010, mist: 0.0 };
/// assert!((relative_humidity(air, 101_325.0) - 0.504).abs() < 2e-3);
/// ```
#[must_use]
pub fn relative_humidity(air: FogAir, p_pa: f64) -> f64 {
    if 0.0 < air.mist {
        return 1.0;
    }
    mole_fraction(air.w) / mole_fraction(saturation(air.t_c, p_pa).0)
}

/// Outdoor air behind a recovery of heat and moisture from extract air; shares of the differences of temperature and humidity ratio that it bridges.
///
/// # Range
/// Shares from 0 to 1; 0 of moisture for a plate.
/// # Accuracy
/// That of the shares, which hold at equal streams.
/// # Source
/// Definition of effectiveness: ASHRAE Handbook Systems and Equipment 2020, ch. 26, air-to-air energy recovery equipment.
///
/// ```
/// use dewrun_duct_air::{FogAir, process::recovered};
/// let outdoors = FogAir { t_c: 0.0, w: 0.003, mist: 0.0 };
/// let extract = FogAir { t_c: 22.0, w: 0.007, mist: 0.0 };
/// let supply = recovered(outdoors, extract, 0.75, 0.5, 101_325.0);
/// assert!((supply.t_c - 16.5).abs() < 1e-9 && (supply.w - 0.005).abs() < 1e-12);
/// ```
#[must_use]
pub fn recovered(
    outdoors: FogAir,
    extract: FogAir,
    of_heat: f64,
    of_moisture: f64,
    p_pa: f64,
) -> FogAir {
    let t_c = outdoors.t_c + of_heat * (extract.t_c - outdoors.t_c);
    let water = outdoors.w + outdoors.mist;
    let water = water + of_moisture * (extract.w + extract.mist - water);
    let clear = FogAir {
        t_c,
        w: water,
        mist: 0.0,
    };
    Content::of(clear).air(p_pa)
}

/// Air that a power, W, warms on its way, the dry air given in kg/s; as it is where none flows.
///
/// # Range
/// Any power that the air can bear.
/// # Accuracy
/// All heat goes into the air.
/// # Source
/// Heat over the flow of dry air, added to the enthalpy: ASHRAE Handbook Fundamentals 2017, ch. 1.
///
/// ```
/// use dewrun_duct_air::{FogAir, process::warmed};
/// let air = warmed(FogAir { t_c: 15.0, w: 0.009_05, mist: 0.0 }, 2.0, 2.015e-4, 101_325.0);
/// assert!((air.t_c - 24.71).abs() < 0.05); // CoolProp 8.0.0
/// ```
#[must_use]
pub fn warmed(air: FogAir, power_w: f64, dry_air_kg_s: f64, p_pa: f64) -> FogAir {
    if dry_air_kg_s <= 0.0 {
        return air;
    }
    let content = Content::of(air);
    Content {
        enthalpy_j_kg: content.enthalpy_j_kg + power_w / dry_air_kg_s,
        ..content
    }
    .air(p_pa)
}

/// Air that stands in a duct whose fan is off: at the temperature around it, with the water that it can bear there; the rest has settled.
///
/// # Range
/// -60 to 95 °C.
/// # Accuracy
/// A bound: air that stands for less than an hour is still on its way there.
/// # Source
/// A choice of this project.
///
/// ```
/// use dewrun_duct_air::{FogAir, process::standing};
/// let air = standing(FogAir { t_c: 28.0, w: 0.018, mist: 0.0 }, 18.0, 101_325.0);
/// assert!(air.t_c == 18.0 && (air.w - 0.0130).abs() < 2e-4 && air.mist == 0.0);
/// ```
#[must_use]
pub fn standing(air: FogAir, around_c: f64, p_pa: f64) -> FogAir {
    FogAir {
        t_c: around_c,
        w: (air.w + air.mist).min(saturation(around_c, p_pa).0),
        mist: 0.0,
    }
}

/// Air of a temperature, °C, and a relative humidity over water or, below 0 °C, over ice: a room's, or as measured.
///
/// # Range
/// -60 to 95 °C, humidities from 0 to 1.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 22.
///
/// ```
/// let air = dewrun_duct_air::process::of_humidity(25.0, 0.504, 101_325.0);
/// assert!((air.w - 0.010).abs() < 1e-4);
/// ```
#[must_use]
pub fn of_humidity(t_c: f64, rh: f64, p_pa: f64) -> FogAir {
    let saturated = mole_fraction(saturation(t_c, p_pa).0);
    FogAir {
        t_c,
        w: humidity_ratio(rh.clamp(0.0, 1.0) * saturated),
        mist: 0.0,
    }
}
