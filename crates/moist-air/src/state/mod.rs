//! One state of moist air and every quantity of it.

mod clip;
mod given;
mod make;

use crate::error::{AirError, AirNote};
use crate::humidity::{saturated_over_ice, saturated_over_water};
use crate::latent::DRY_AIR_CP;
use crate::pair::{Over, Pair};
use crate::saturation::TRIPLE_POINT_C;
use crate::{fast, mixture, transport, wet_bulb};
use dewrun_numeric::RootError;
use dewrun_quantity::{
    Density, HumidityRatio, Noted, Pressure, RelativeHumidity, SpecificEnthalpy, SpecificVolume,
    Temperature,
};

/// A state of moist air: temperature, pressure, humidity ratio; never over saturation over water.
///
/// # Range
/// -60 to 95 °C, 50 to 120 kPa, bone-dry to saturated.
/// # Accuracy
/// Dew and frost point within 0.01 K, humidity ratio within 0.07 %, wet bulb within 0.02 K of the real gas.
/// # Source
/// Definitions of ASHRAE Handbook Fundamentals 2017, ch. 1, real gas through the enhancement factor; see the functions named in each method.
///
/// ```
/// use dewrun_moist_air::{Humidity, MoistAir, Over, Pair};
/// use dewrun_quantity::{Pressure, RelativeHumidity, Temperature};
/// let humidity = Humidity::Relative { value: RelativeHumidity::percent(60.0), over: Over::Water };
/// let pair = Pair::Temperature(Temperature::celsius(28.0), humidity);
/// let air = MoistAir::new(pair, Pressure::pascals(101_325.0)).unwrap().value;
/// assert!((air.dew_point().unwrap().to_celsius() - 19.5171).abs() < 0.01); // CoolProp 8.0.0, HAPropsSI
/// assert!((air.humidity_ratio().to_grams_per_kilogram() / 14.3145 - 1.0).abs() < 7e-4);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MoistAir {
    temperature: Temperature,
    pressure: Pressure,
    ratio: HumidityRatio,
}

impl MoistAir {
    /// The state that a pair makes at a pressure.
    ///
    /// What lies a little over saturation is clipped to it, with a note; a missing, impossible or inconsistent pair is an error.
    ///
    /// # Errors
    /// [`AirError`], each with what to do.
    ///
    /// ```
    /// use dewrun_moist_air::{AirNote, Humidity, MoistAir, Over, Pair};
    /// use dewrun_quantity::{Pressure, RelativeHumidity, Temperature};
    /// let at = |percent| {
    ///     let humidity = Humidity::Relative { value: RelativeHumidity::percent(percent), over: Over::Water };
    ///     MoistAir::new(Pair::Temperature(Temperature::celsius(20.0), humidity), Pressure::pascals(101_325.0))
    /// };
    /// let clipped = at(101.0).unwrap();
    /// assert!(matches!(clipped.notes[..], [AirNote::Clipped { .. }]));
    /// assert!((clipped.value.dew_point().unwrap().to_celsius() - 20.0).abs() < 1e-4);
    /// assert_eq!(at(120.0).unwrap_err().to_string(), "relative humidity is 120 %, over 105 %: its sensor is at fault");
    /// assert_eq!(at(f64::NAN).unwrap_err().to_string(), "relative humidity is missing");
    /// ```
    pub fn new(pair: Pair, pressure: Pressure) -> Result<Noted<Self, AirNote>, AirError> {
        make::state(pair, pressure)
    }

    /// Temperature of the air (dry bulb).
    #[must_use]
    pub const fn temperature(&self) -> Temperature {
        self.temperature
    }

    /// Pressure of the air.
    #[must_use]
    pub const fn pressure(&self) -> Pressure {
        self.pressure
    }

    /// Mass of vapour per mass of dry air.
    #[must_use]
    pub const fn humidity_ratio(&self) -> HumidityRatio {
        self.ratio
    }

    /// Mole fraction of vapour [-].
    #[must_use]
    pub fn mole_fraction(&self) -> f64 {
        mixture::mole_fraction(self.w())
    }

    /// Partial pressure of the vapour: its mole fraction of the pressure.
    #[must_use]
    pub fn vapour_pressure(&self) -> Pressure {
        self.pressure * self.mole_fraction()
    }

    /// Mole fraction of vapour over that at saturation; past 1 over ice where frost would form.
    #[must_use]
    pub fn relative_humidity(&self, over: Over) -> RelativeHumidity {
        RelativeHumidity::fraction(self.mole_fraction() / self.saturated(over))
    }

    /// Humidity ratio over that at saturation [-]; 0 where water boils and saturated air holds no air.
    #[must_use]
    pub fn degree_of_saturation(&self, over: Over) -> f64 {
        let saturated = self.saturated(over);
        if 1.0 <= saturated {
            return 0.0;
        }
        self.w() / mixture::humidity_ratio(saturated)
    }

    /// Dew point over liquid water, supercooled below 0 °C; none for bone-dry air, nor below -100 °C. See [`fast::dew_point_of_c`].
    #[must_use]
    pub fn dew_point(&self) -> Option<Temperature> {
        let dew_point_c = fast::dew_point_of_c(self.mole_fraction(), self.p_pa())?;
        // The state is not over saturation, so what is above the dry bulb is the fit's last digit.
        Some(Temperature::celsius(dew_point_c).min(self.temperature))
    }

    /// Frost point over ice; none above 0.01 °C, for bone-dry air, nor below -100 °C. See [`fast::frost_point_of_c`].
    #[must_use]
    pub fn frost_point(&self) -> Option<Temperature> {
        fast::frost_point_of_c(self.mole_fraction(), self.p_pa()).map(Temperature::celsius)
    }

    /// Wet bulb: ice on the wick at or below 0 °C, water above; where both are possible the one with water, with a note.
    ///
    /// See [`wet_bulb`] for the relation.
    #[must_use]
    pub fn wet_bulb(&self) -> Noted<Temperature, AirNote> {
        let (t_c, w, p_pa) = (self.temperature.to_celsius(), self.w(), self.p_pa());
        let water = bracketed(wet_bulb::over_water_c(t_c, w, p_pa));
        if t_c <= 0.0 || water.value <= 0.0 {
            // Where ice would read above 0 °C and water below it, the wick stands at 0 °C, half frozen.
            let ice = bracketed(wet_bulb::over_ice_c(t_c, w, p_pa));
            return ice.map(|wet_bulb_c| Temperature::celsius(wet_bulb_c.min(0.0)));
        }
        let mut answer = water;
        if answer.value < BOTH_WICKS_C {
            let ice = bracketed(wet_bulb::over_ice_c(t_c, w, p_pa)).value;
            if ice <= 0.0 {
                answer
                    .notes
                    .push(AirNote::IceOnWickReads { wet_bulb_c: ice });
            }
        }
        // Water on the wick never warms it above air that is not over saturation.
        answer.map(|wet_bulb_c| Temperature::celsius(wet_bulb_c).min(self.temperature))
    }

    /// Enthalpy per mass of dry air, counted from dry air at 0 °C and liquid water at the triple point.
    #[must_use]
    pub fn enthalpy(&self) -> SpecificEnthalpy {
        let h = mixture::enthalpy_j_kg(self.temperature.to_celsius(), self.w());
        SpecificEnthalpy::joules_per_kilogram(h)
    }

    /// Enthalpy per mass of dry air as inch-pound tables count it, from dry air at 0 °F.
    #[must_use]
    pub fn enthalpy_from_zero_fahrenheit(&self) -> SpecificEnthalpy {
        self.enthalpy() + ZERO_FAHRENHEIT_OFFSET
    }

    /// Volume per mass of dry air.
    #[must_use]
    pub fn specific_volume(&self) -> SpecificVolume {
        let per_mixture = self.density().to_kilograms_per_cubic_metre();
        SpecificVolume::cubic_metres_per_kilogram((1.0 + self.w()) / per_mixture)
    }

    /// Density of air and vapour together.
    #[must_use]
    pub fn density(&self) -> Density {
        let density = mixture::density_kg_m3(self.temperature.to_celsius(), self.w(), self.p_pa());
        Density::kilograms_per_cubic_metre(density)
    }

    /// Heat capacity per mass of air and vapour [J/(kg K)].
    #[must_use]
    pub fn heat_capacity_j_kgk(&self) -> f64 {
        mixture::heat_capacity_j_kgk(self.w())
    }

    /// Viscosity [Pa s]. See [`transport::viscosity_pa_s`].
    #[must_use]
    pub fn viscosity_pa_s(&self) -> f64 {
        transport::viscosity_pa_s(self.temperature.to_celsius(), self.mole_fraction())
    }

    /// Thermal conductivity [W/(m K)]. See [`transport::conductivity_w_mk`].
    #[must_use]
    pub fn conductivity_w_mk(&self) -> f64 {
        transport::conductivity_w_mk(self.temperature.to_celsius(), self.mole_fraction())
    }

    /// Diffusivity of vapour in the air [m2/s]. See [`transport::diffusivity_m2_s`].
    #[must_use]
    pub fn diffusivity_m2_s(&self) -> f64 {
        transport::diffusivity_m2_s(self.temperature.to_celsius(), self.p_pa())
    }

    /// Mole fraction at saturation; 1 or more where water boils.
    fn saturated(&self, over: Over) -> f64 {
        saturated(self.temperature.to_celsius(), self.p_pa(), over)
    }

    const fn w(&self) -> f64 {
        self.ratio.to_kilograms_per_kilogram()
    }

    const fn p_pa(&self) -> f64 {
        self.pressure.to_pascals()
    }
}

/// Dry air from 0 °F to 0 °C: what the inch-pound custom counts besides.
pub const ZERO_FAHRENHEIT_OFFSET: SpecificEnthalpy =
    SpecificEnthalpy::joules_per_kilogram(DRY_AIR_CP * 32.0 / 1.8);

/// Above this wet bulb with water on the wick, °C, ice on it would read above 0 °C; the band is 0.35 K wide.
const BOTH_WICKS_C: f64 = 1.0;

/// Mole fraction of vapour at saturation, by the custom that `over` names.
fn saturated(t_c: f64, p_pa: f64, over: Over) -> f64 {
    if over == Over::Ice && t_c < TRIPLE_POINT_C {
        saturated_over_ice(t_c, p_pa)
    } else {
        saturated_over_water(t_c, p_pa)
    }
}

/// The root, or the middle of its bracket with a note; every state that is not over saturation has a root.
fn bracketed(root: Result<f64, RootError>) -> Noted<f64, AirNote> {
    let (low_c, high_c) = match root {
        Ok(root) => return Noted::plain(root),
        Err(RootError::NoSignChange { low, high }) => (low.0, high.0),
        Err(RootError::NotConverged { low, high }) => (low, high),
    };
    Noted {
        value: 0.5 * (low_c + high_c),
        notes: vec![AirNote::WetBulbBracket { low_c, high_c }],
    }
}
