//! What surrounds a leg: a room, outdoors, or something between.

use dewrun_moist_air::fog::{FogAir, saturation};

use crate::process::of_humidity;
use crate::schedule::{Moment, Schedule};

/// 0 °C on the thermodynamic scale, K.
const ZERO_CELSIUS_K: f64 = 273.15;
/// Heat that a roof's surface exchanges with outdoors, W/(m2 K): ASHRAE Handbook Fundamentals 2017, ch. 18, summer.
const ROOF_W_M2K: f64 = 17.0;
/// By how much a level roof is colder for what it radiates to the sky, K: the same source.
const ROOF_TO_SKY_K: f64 = 4.0;

/// The weather of an hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outdoors {
    /// The air.
    pub air: FogAir,
    /// Pressure, Pa.
    pub p_pa: f64,
    /// Wind, m/s.
    pub wind_m_s: f64,
    /// Temperature of the sky, °C, where the weather tells it.
    pub sky_c: Option<f64>,
    /// Sun on a level surface, W/m2.
    pub sun_w_m2: f64,
}

/// What a space is like.
#[derive(Debug, Clone, PartialEq)]
pub enum Space {
    /// A room of its own temperature, °C, and relative humidity, always the same or by the clock.
    Room {
        /// Temperature, °C.
        temperature_c: Schedule,
        /// Relative humidity, 0 to 1.
        humidity: Schedule,
    },
    /// Outdoors: with wind and sky.
    Outdoors {
        /// Share of the surroundings that is sky, 0 to 1: half for a tube in the open, none under a roof.
        sky_share: f64,
        /// Share of the weather's wind that reaches the tube.
        wind_share: f64,
    },
    /// Between a room and outdoors: an attic, a plant room, a shaft.
    Coupled {
        /// Temperature of the room beside it, °C.
        room_c: f64,
        /// Its relative humidity, 0 to 1.
        room_humidity: f64,
        /// How far it follows outdoors, 0 to 1.
        share: f64,
        /// What its roof takes up of the sun, 0 to 1; none where it has no roof.
        roof_absorbs: Option<f64>,
    },
}

/// A space in an hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpaceAir {
    /// Temperature of the air, °C.
    pub air_c: f64,
    /// Humidity ratio, kg/kg; never above saturation.
    pub w: f64,
    /// Temperature of the surfaces around, °C.
    pub radiant_c: f64,
    /// Air speed, m/s.
    pub wind_m_s: f64,
}

impl Space {
    /// The space in an hour.
    ///
    /// A coupled space follows the sol-air temperature of its roof, `t + a I/h - 4 K`, by its share, and outdoor moisture likewise.
    ///
    /// # Range
    /// Air from -60 to 95 °C.
    /// # Accuracy
    /// A coupled space is a weighted mean without heat capacity; its share is an assumption.
    /// # Source
    /// Sol-air temperature: ASHRAE Handbook Fundamentals 2017, ch. 18, eq. 30; sky and ground by the fourth powers of their temperatures.
    ///
    /// ```
    /// use dewrun_duct_air::FogAir;
    /// use dewrun_duct_air::schedule::Moment;
    /// use dewrun_duct_air::space::{Outdoors, Space};
    /// let attic = Space::Coupled { room_c: 22.0, room_humidity: 0.5, share: 0.7, roof_absorbs: Some(0.8) };
    /// let noon = Outdoors { air: FogAir { t_c: 30.0, w: 0.014, mist: 0.0 }, p_pa: 101_325.0, wind_m_s: 2.0, sky_c: None, sun_w_m2: 850.0 };
    /// let air = attic.at(Moment { month: 7, weekday: 0, hour: 12 }, &noon);
    /// // 30 + 0.8 · 850/17 − 4 = 66 °C on the roof; 22 + 0.7 · 44 = 52.8 °C under it.
    /// assert!((air.air_c - 52.8).abs() < 1e-9 && air.wind_m_s == 0.0);
    /// ```
    #[must_use]
    pub fn at(&self, moment: Moment, outdoors: &Outdoors) -> SpaceAir {
        match self {
            Self::Room {
                temperature_c,
                humidity,
            } => room(temperature_c.at(moment), humidity.at(moment), outdoors.p_pa),
            &Self::Outdoors {
                sky_share,
                wind_share,
            } => SpaceAir {
                air_c: outdoors.air.t_c,
                w: outdoors.air.w,
                radiant_c: radiant_c(outdoors, sky_share),
                wind_m_s: wind_share * outdoors.wind_m_s,
            },
            &Self::Coupled {
                room_c,
                room_humidity,
                share,
                roof_absorbs,
            } => {
                let outside_c = outdoors.air.t_c
                    + roof_absorbs.map_or(0.0, |absorbs| {
                        absorbs * outdoors.sun_w_m2 / ROOF_W_M2K - ROOF_TO_SKY_K
                    });
                let air_c = room_c + share * (outside_c - room_c);
                let inside = of_humidity(room_c, room_humidity, outdoors.p_pa).w;
                let w = inside + share * (outdoors.air.w - inside);
                still(air_c, w, outdoors.p_pa)
            }
        }
    }
}

fn room(air_c: f64, rh: f64, p_pa: f64) -> SpaceAir {
    still(air_c, of_humidity(air_c, rh, p_pa).w, p_pa)
}

/// Still air among surfaces of its own temperature.
fn still(air_c: f64, w: f64, p_pa: f64) -> SpaceAir {
    SpaceAir {
        air_c,
        w: w.min(saturation(air_c, p_pa).0),
        radiant_c: air_c,
        wind_m_s: 0.0,
    }
}

/// Surroundings that are partly sky and else as warm as the air.
fn radiant_c(outdoors: &Outdoors, sky_share: f64) -> f64 {
    let air_c = outdoors.air.t_c;
    let fourth = |t_c: f64| {
        let t_k = t_c + ZERO_CELSIUS_K;
        t_k * t_k * t_k * t_k
    };
    let sky = fourth(outdoors.sky_c.unwrap_or(air_c));
    let both = sky_share * sky + (1.0 - sky_share) * fourth(air_c);
    both.sqrt().sqrt() - ZERO_CELSIUS_K
}

#[cfg(test)]
mod tests {
    use super::*;

    fn clear_night() -> Outdoors {
        Outdoors {
            air: FogAir {
                t_c: 5.0,
                w: 0.004,
                mist: 0.0,
            },
            p_pa: 101_325.0,
            wind_m_s: 4.0,
            sky_c: Some(-15.0),
            sun_w_m2: 0.0,
        }
    }

    const MIDNIGHT: Moment = Moment {
        month: 1,
        weekday: 0,
        hour: 0,
    };

    /// By hand: (0.5 · 258.15⁴ + 0.5 · 278.15⁴)^(1/4) = (0.5 · 4.4412e9 + 0.5 · 5.9856e9)^(1/4) = 268.71 K.
    #[test]
    fn the_sky_counts_outdoors_only() {
        let open = Space::Outdoors {
            sky_share: 0.5,
            wind_share: 0.5,
        };
        let air = open.at(MIDNIGHT, &clear_night());
        assert!((air.radiant_c - -4.44).abs() < 0.02, "{air:?}");
        assert_eq!(air.wind_m_s, 2.0, "half the wind");
        let room = Space::Room {
            temperature_c: Schedule::fixed(20.0),
            humidity: Schedule::fixed(0.5),
        };
        let air = room.at(MIDNIGHT, &clear_night());
        assert_eq!((air.radiant_c, air.wind_m_s), (20.0, 0.0), "{air:?}");
    }
}
