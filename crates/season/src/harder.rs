//! Weather that is harder than a typical year, which leaves extremes out.

use dewrun_duct_air::FogAir;
use dewrun_duct_air::space::Outdoors;
use dewrun_moist_air::fast::dew_or_frost_point_of_c;
use dewrun_moist_air::fog::saturation;
use dewrun_moist_air::mixture::mole_fraction;

/// By how much dew points are higher, K.
const MORE_HUMID_K: f64 = 2.0;
/// By how much it is colder, K.
const COLDER_K: f64 = 5.0;

/// How much harder the weather is than that of the file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Harder {
    /// Not at all.
    AsItIs,
    /// Dew points are 2 K higher; the air is as warm as before, or as its dew point.
    MoreHumid,
    /// The air is 5 K colder, and holds no more than it can.
    Colder,
}

impl Harder {
    /// The weather of an hour, so much harder.
    ///
    /// # Range
    /// Air from -55 to 90 °C.
    /// # Source
    /// Choices of this project: the spread of extreme years about a typical one.
    ///
    /// ```
    /// use dewrun_duct_air::FogAir;
    /// use dewrun_duct_air::space::Outdoors;
    /// use dewrun_season::Harder;
    /// let air = FogAir { t_c: 25.0, w: 0.020_17, mist: 0.0 }; // saturated
    /// let outdoors = Outdoors { air, p_pa: 101_325.0, wind_m_s: 0.0, sky_c: None, sun_w_m2: 0.0 };
    /// assert!((Harder::MoreHumid.of(&outdoors).air.t_c - 27.0).abs() < 0.02);
    /// assert_eq!(Harder::Colder.of(&outdoors).air.t_c, 20.0);
    /// ```
    #[must_use]
    pub fn of(self, outdoors: &Outdoors) -> Outdoors {
        let FogAir { t_c, w, mist } = outdoors.air;
        let p_pa = outdoors.p_pa;
        let air = match self {
            Self::AsItIs => return *outdoors,
            Self::MoreHumid => {
                let Some(point_c) = dew_or_frost_point_of_c(mole_fraction(w), p_pa) else {
                    return *outdoors;
                };
                let point_c = point_c + MORE_HUMID_K;
                FogAir {
                    t_c: t_c.max(point_c),
                    w: saturation(point_c, p_pa).0,
                    mist,
                }
            }
            Self::Colder => FogAir {
                t_c: t_c - COLDER_K,
                w: w.min(saturation(t_c - COLDER_K, p_pa).0),
                mist,
            },
        };
        let sky_c = outdoors.sky_c.map(|sky_c| sky_c + air.t_c - t_c);
        Outdoors {
            air,
            sky_c,
            ..*outdoors
        }
    }
}
