//! What a run's year is made of beside its weather: the source of the duct's air, its spaces, and when.

use dewrun_duct_air::process::{Coil, Humidifier};
use dewrun_duct_air::schedule::{Moment, Rule, Schedule};
use dewrun_duct_air::space::{Outdoors, Space, SpaceAir};

/// What a run's year is made of beside its weather.
#[derive(Debug, Clone, PartialEq)]
pub struct Season {
    /// Where the duct's air comes from.
    pub source: Source,
    /// What is done to it on its way, in this order.
    pub steps: Vec<Step>,
    /// What surrounds the legs, in the order of the run's spaces.
    pub spaces: Vec<Surroundings>,
    /// When the duct's fan is off; never where there is none.
    pub fan_off: Vec<Rule>,
}

/// What surrounds a leg through the year.
#[derive(Debug, Clone, PartialEq)]
pub struct Surroundings {
    /// What it follows.
    pub space: Space,
    /// Air speed across a tube beside that of the weather, m/s.
    pub wind_m_s: f64,
    /// Temperature of the surfaces around less that of the air, K, where they do not follow the sky.
    pub radiant_minus_air_k: f64,
}

/// What the duct's air was before anything was done to it.
#[derive(Debug, Clone, PartialEq)]
pub enum Source {
    /// Air from outdoors.
    Outdoors,
    /// The air of a room.
    Room {
        /// Its temperature, °C.
        temperature_c: Schedule,
        /// Its relative humidity, 0 to 1, over water or, below 0 °C, over ice.
        humidity: Schedule,
    },
    /// Air that was measured in the duct, row by row.
    Measured,
}

/// Something that is done to the air.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// What.
    pub change: Change,
    /// When; always where there is no rule.
    pub when: Vec<Rule>,
}

/// What is done to the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Change {
    /// It is warmed to a temperature, °C.
    Heated(f64),
    /// It passes a cooling coil.
    Cooled(Coil),
    /// It is mixed with a share of return air.
    Mixed(Room, f64),
    /// It is humidified to a relative humidity, 0 to 1.
    Humidified(f64, Humidifier),
    /// It passes extract air, which gives shares of the differences in heat and in moisture.
    Recovered(Room, f64, f64),
}

/// The air of a room, always the same.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Relative humidity, 0 to 1.
    pub humidity: f64,
}

impl Surroundings {
    /// The space in an hour.
    ///
    /// # Range
    /// As [`Space::at`].
    /// # Source
    /// As [`Space::at`].
    #[must_use]
    pub fn at(&self, moment: Moment, outdoors: &Outdoors) -> SpaceAir {
        let air = self.space.at(moment, outdoors);
        SpaceAir {
            radiant_c: air.radiant_c + self.radiant_minus_air_k,
            wind_m_s: air.wind_m_s + self.wind_m_s,
            ..air
        }
    }
}

impl From<Space> for Surroundings {
    fn from(space: Space) -> Self {
        Self {
            space,
            wind_m_s: 0.0,
            radiant_minus_air_k: 0.0,
        }
    }
}

impl Season {
    /// Whether the duct's fan is off at a moment.
    #[must_use]
    pub fn is_fan_off(&self, moment: Moment) -> bool {
        self.fan_off.iter().any(|rule| rule.holds(moment))
    }
}

impl Step {
    pub(crate) fn is_done(&self, moment: Moment) -> bool {
        self.when.is_empty() || self.when.iter().any(|rule| rule.holds(moment))
    }
}
