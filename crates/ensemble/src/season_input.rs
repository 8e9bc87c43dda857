//! Numbers of a season that may lie anywhere within a span, and those that are the run's own.

use dewrun_run::air::{MoistAir, Over, Pair};
use dewrun_run::{Run, Space as RunSpace};
use dewrun_season::told::{Humidifier, Space};
use dewrun_season::{Change, Season, Source};

/// A number of a season, by where it stands; positions are those of the season's spaces and steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SeasonInput {
    /// How far a space follows outdoors, 0 to 1.
    SpaceShare(usize),
    /// Temperature of the rooms beside it, °C.
    RoomTemperature(usize),
    /// Relative humidity of the rooms beside it, 0 to 1.
    RoomHumidity(usize),
    /// What its roof takes up of the sun, 0 to 1.
    RoofAbsorbs(usize),
    /// Share of sky in what a tube outdoors sees.
    SkyShare(usize),
    /// Share of the weather's wind that reaches a tube outdoors.
    WindShare(usize),
    /// Temperature of the room that the duct's air comes from, °C.
    SourceTemperature,
    /// Its relative humidity, 0 to 1.
    SourceHumidity,
    /// Temperature of a step: behind a heater, of a coil, of return or extract air, °C.
    StepTemperature(usize),
    /// Relative humidity of a step, 0 to 1.
    StepHumidity(usize),
    /// Share of a step: past a coil, of return air, of the heat recovered.
    StepShare(usize),
    /// Share of the moisture recovered.
    StepMoisture(usize),
}

/// A number of a season and how far it may lie off.
#[derive(Debug, Clone, PartialEq)]
pub struct SeasonSpan {
    /// Which.
    pub input: SeasonInput,
    /// Its value.
    pub value: f64,
    /// The row of the library that it was taken from.
    pub row: String,
    /// The lowest value that is plausible.
    pub low: f64,
    /// The highest.
    pub high: f64,
}

/// A part of a season that is as the run says, and varies with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Follow {
    /// A space is as entered, where no setting says otherwise.
    Space(usize),
    /// The air that moves in a space is as entered.
    Wind(usize),
    /// The room that the duct's air comes from is as warm as the duct's air.
    SourceTemperature,
    /// It is as humid.
    SourceHumidity,
    /// A step makes the air as warm as the duct's.
    StepTemperature(usize),
    /// It makes it as humid.
    StepHumidity(usize),
}

impl SeasonInput {
    /// A short name that stands for it in files.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::SpaceShare(_) => "space-share",
            Self::RoomTemperature(_) => "room-temperature",
            Self::RoomHumidity(_) => "room-relative",
            Self::RoofAbsorbs(_) => "roof-absorbs",
            Self::SkyShare(_) => "sky-share",
            Self::WindShare(_) => "wind-share",
            Self::SourceTemperature => "source-temperature",
            Self::SourceHumidity => "source-relative",
            Self::StepTemperature(_) => "step-temperature",
            Self::StepHumidity(_) => "step-relative",
            Self::StepShare(_) => "step-share",
            Self::StepMoisture(_) => "step-moisture",
        }
    }

    /// What it is, in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::SpaceShare(_) => "how far the space follows outdoors",
            Self::RoomTemperature(_) => "temperature of the rooms beside the space",
            Self::RoomHumidity(_) => "relative humidity of the rooms beside the space",
            Self::RoofAbsorbs(_) => "sun that the roof takes up",
            Self::SkyShare(_) => "share of sky that the tube sees",
            Self::WindShare(_) => "share of the wind that reaches the tube",
            Self::SourceTemperature => "temperature of the room that the duct's air comes from",
            Self::SourceHumidity => "relative humidity of the room that the duct's air comes from",
            Self::StepTemperature(_) => "temperature of what is done to the duct's air",
            Self::StepHumidity(_) => "relative humidity of what is done to the duct's air",
            Self::StepShare(_) => "share of what is done to the duct's air",
            Self::StepMoisture(_) => "share of the moisture that is recovered",
        }
    }

    /// How it can be measured.
    #[must_use]
    pub const fn how_to_measure(self) -> &'static str {
        match self {
            Self::SpaceShare(_) => {
                "One logger in the space, one in the room beside it and one outdoors for a cold or a hot week: by what part of the difference the space follows."
            }
            Self::RoomTemperature(_) | Self::RoomHumidity(_) => {
                "A logger in the room beside the space for one week of the season that matters."
            }
            Self::RoofAbsorbs(_) => {
                "A logger under the roof on clear and on dull days; dark roofs take up 0.9, bright ones 0.3."
            }
            Self::SkyShare(_) => {
                "Look up from the tube: the part of what is seen that is open sky."
            }
            Self::WindShare(_) => {
                "A hot-wire anemometer held beside the tube on a windy day, against the weather station."
            }
            Self::SourceTemperature | Self::SourceHumidity => {
                "A logger in the room that the air comes from for one week of the season that matters."
            }
            Self::StepTemperature(_) | Self::StepHumidity(_) => {
                "A logger in the duct behind the plant for one week of the season that matters; or its set point."
            }
            Self::StepShare(_) | Self::StepMoisture(_) => {
                "Temperature and humidity before and behind it, at the same time; or its data sheet."
            }
        }
    }
}

/// Puts another value into a season; none where it has no such number.
#[must_use = "none tells that nothing was changed"]
pub fn set_season(season: &mut Season, input: SeasonInput, value: f64) -> Option<()> {
    match input {
        SeasonInput::SpaceShare(at)
        | SeasonInput::RoomTemperature(at)
        | SeasonInput::RoomHumidity(at)
        | SeasonInput::RoofAbsorbs(at)
        | SeasonInput::SkyShare(at)
        | SeasonInput::WindShare(at) => {
            set_space(&mut season.spaces.get_mut(at)?.space, input, value)
        }
        SeasonInput::SourceTemperature | SeasonInput::SourceHumidity => {
            set_source(&mut season.source, input, value)
        }
        SeasonInput::StepTemperature(at)
        | SeasonInput::StepHumidity(at)
        | SeasonInput::StepShare(at)
        | SeasonInput::StepMoisture(at) => {
            set_step(&mut season.steps.get_mut(at)?.change, input, value)
        }
    }
}

fn set_space(space: &mut Space, input: SeasonInput, value: f64) -> Option<()> {
    match (space, input) {
        (Space::Coupled { share, .. }, SeasonInput::SpaceShare(_)) => *share = value,
        (Space::Coupled { room_c, .. }, SeasonInput::RoomTemperature(_)) => *room_c = value,
        (Space::Coupled { room_humidity, .. }, SeasonInput::RoomHumidity(_)) => {
            *room_humidity = value.min(1.0);
        }
        (Space::Coupled { roof_absorbs, .. }, SeasonInput::RoofAbsorbs(_)) => {
            *roof_absorbs.as_mut()? = value;
        }
        (Space::Outdoors { sky_share, .. }, SeasonInput::SkyShare(_)) => *sky_share = value,
        (Space::Outdoors { wind_share, .. }, SeasonInput::WindShare(_)) => *wind_share = value,
        _ => return None,
    }
    Some(())
}

fn set_source(source: &mut Source, input: SeasonInput, value: f64) -> Option<()> {
    let Source::Room {
        temperature_c,
        humidity,
    } = source
    else {
        return None;
    };
    match input {
        SeasonInput::SourceTemperature => temperature_c.otherwise = value,
        SeasonInput::SourceHumidity => humidity.otherwise = value.min(1.0),
        _ => return None,
    }
    Some(())
}

fn set_step(change: &mut Change, input: SeasonInput, value: f64) -> Option<()> {
    match (change, input) {
        (Change::Heated(to_c), SeasonInput::StepTemperature(_)) => *to_c = value,
        (Change::Cooled(coil), SeasonInput::StepTemperature(_)) => coil.apparatus_c = value,
        (Change::Cooled(coil), SeasonInput::StepShare(_)) => coil.bypass = value,
        (Change::Mixed(room, _) | Change::Recovered(room, ..), SeasonInput::StepTemperature(_)) => {
            room.temperature_c = value
        }
        (Change::Mixed(room, _) | Change::Recovered(room, ..), SeasonInput::StepHumidity(_)) => {
            room.humidity = value.min(1.0);
        }
        (Change::Mixed(_, share) | Change::Recovered(_, share, _), SeasonInput::StepShare(_)) => {
            *share = value;
        }
        (Change::Recovered(_, _, moisture), SeasonInput::StepMoisture(_)) => *moisture = value,
        (Change::Humidified(to, _), SeasonInput::StepHumidity(_)) => *to = value.min(1.0),
        (Change::Humidified(_, Humidifier::Water(water_c)), SeasonInput::StepTemperature(_)) => {
            *water_c = value;
        }
        _ => return None,
    }
    Some(())
}

/// Makes a part of a season as the run says; none where the run's air is none.
pub(crate) fn follow(season: &mut Season, run: &Run, what: Follow) -> Option<()> {
    let duct = || air_of(run.duct_air, run);
    match what {
        Follow::Space(at) => {
            let entered = run.spaces.get(at)?;
            let (celsius, relative) = air_of(air_in(entered), run)?;
            let around = season.spaces.get_mut(at)?;
            if let Space::Room {
                temperature_c,
                humidity,
            } = &mut around.space
            {
                (temperature_c.otherwise, humidity.otherwise) = (celsius, relative);
            }
            around.radiant_minus_air_k = entered
                .radiant
                .map_or(0.0, |radiant| radiant.to_celsius() - celsius);
        }
        Follow::Wind(at) => {
            let wind = run.spaces.get(at)?.wind;
            season.spaces.get_mut(at)?.wind_m_s = wind.to_metres_per_second();
        }
        Follow::SourceTemperature => {
            set_source(
                &mut season.source,
                SeasonInput::SourceTemperature,
                duct()?.0,
            )?;
        }
        Follow::SourceHumidity => {
            set_source(&mut season.source, SeasonInput::SourceHumidity, duct()?.1)?;
        }
        Follow::StepTemperature(at) => {
            set_season(season, SeasonInput::StepTemperature(at), duct()?.0)?;
        }
        Follow::StepHumidity(at) => {
            set_season(season, SeasonInput::StepHumidity(at), duct()?.1)?;
        }
    }
    Some(())
}

fn air_in(space: &RunSpace) -> Pair {
    Pair::Temperature(space.temperature, space.humidity)
}

/// Temperature, °C, and relative humidity, 0 to 1, of an air that is entered, counted as seasons count it.
fn air_of(pair: Pair, run: &Run) -> Option<(f64, f64)> {
    let air = MoistAir::new(pair, run.pressure).ok()?.value;
    let celsius = air.temperature().to_celsius();
    let over = if celsius < 0.0 {
        Over::Ice
    } else {
        Over::Water
    };
    Some((celsius, air.relative_humidity(over).to_fraction().min(1.0)))
}
