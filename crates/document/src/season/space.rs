//! A space through the year.

use dewrun_run::library::{self, SpaceRow};
use dewrun_season::told::Space as Engine;
use dewrun_season::{Room, Surroundings};

use super::period::schedule;
use super::{YearAssumed, YearSaid};
use crate::field_path::Here;
use crate::{DocumentError, Follows, Input, Origin, Space, SpaceYear};

/// A space that follows outdoors by less than this is as entered where nothing is said.
const FOLLOWS: f64 = 0.25;
/// Rows of the library that lie in the open.
const IN_THE_OPEN: &str = "roof-";

impl YearSaid {
    /// What is said of a space, or assumed by its row.
    pub(super) fn space(
        &mut self,
        number: usize,
        space: &Space,
        name: &str,
        air: Room,
    ) -> Result<(), DocumentError> {
        let spaces = Here::at("spaces");
        let place = spaces.index(number);
        let at = place.field("year");
        let year = match &space.year {
            Some(year) => year.get_at(&at)?,
            None => self.by_row_of(&at, space, name),
        };
        let engine = match year.follows {
            Follows::Settings => Engine::Room {
                temperature_c: schedule(
                    &year.settings,
                    |one| one.temperature_c.as_ref(),
                    1.0,
                    air.temperature_c,
                ),
                humidity: schedule(
                    &year.settings,
                    |one| one.percent.as_ref(),
                    0.01,
                    air.humidity,
                ),
            },
            Follows::Outdoors => Engine::Outdoors {
                sky_share: self.share(&at, "sky_share", year.sky_share.as_ref(), "year-sky-share"),
                wind_share: self.share(
                    &at,
                    "wind_share",
                    year.wind_share.as_ref(),
                    "year-wind-share",
                ),
            },
            Follows::Partly => self.partly(&at, &year),
        };
        // Outdoors, sky and wind are those of the weather.
        let is_indoors = year.follows != Follows::Outdoors;
        let radiant = space
            .radiant_c
            .as_ref()
            .filter(|_| year.follows == Follows::Settings);
        self.season.spaces.push(Surroundings {
            space: engine,
            wind_m_s: if is_indoors {
                space.wind_m_s.value
            } else {
                0.0
            },
            radiant_minus_air_k: radiant
                .map_or(0.0, |radiant| radiant.value - space.temperature_c.value),
        });
        Ok(())
    }

    fn share(
        &mut self,
        at: &Here<'_>,
        field: &'static str,
        given: Option<&Input<f64>>,
        row: &'static str,
    ) -> f64 {
        self.or_row(given, || at.field(field).path(), row)
    }

    fn partly(&mut self, at: &Here<'_>, year: &SpaceYear) -> Engine {
        let room_percent = self.share(
            at,
            "room_percent",
            year.room_percent.as_ref(),
            "year-room-humidity",
        );
        Engine::Coupled {
            room_c: self.share(at, "room_c", year.room_c.as_ref(), "year-room-temperature"),
            room_humidity: (0.01 * room_percent).min(1.0),
            share: year.share.as_ref().map_or(0.0, |share| share.value),
            roof_absorbs: year.roof_absorbs.as_ref().map(|absorbs| absorbs.value),
        }
    }

    /// What the row of a space says of how far it follows outdoors; a space of no row is as entered.
    fn by_row_of(&mut self, at: &Here<'_>, space: &Space, name: &str) -> SpaceYear {
        let mut year = SpaceYear::following(Follows::Settings);
        let said = match row_of(space) {
            Some(row) if row.id.starts_with(IN_THE_OPEN) => {
                year.follows = Follows::Outdoors;
                "it is taken as outdoors, with wind and sky"
            }
            Some(row) if FOLLOWS <= row.coupling.usual => {
                year.follows = Follows::Partly;
                year.share = Some(Input::typed(row.coupling.usual));
                self.assumed.push(YearAssumed {
                    path: at.field("share").path(),
                    row: row.id,
                    value: row.coupling.usual,
                    low: row.coupling.low,
                    high: row.coupling.high,
                });
                "it is taken to follow outdoors by a share, without sun on its roof"
            }
            _ => "it is taken as entered, all year",
        };
        self.said.push(format!(
            "Nothing says what {name} is like through the year; {said}."
        ));
        year
    }
}

/// The row of the library that the temperature of a space was taken from.
fn row_of(space: &Space) -> Option<&'static SpaceRow> {
    match &space.temperature_c.origin {
        Origin::Assumed { row, .. } => library::find(library::spaces(), row),
        Origin::Typed | Origin::Measured { .. } => None,
    }
}
