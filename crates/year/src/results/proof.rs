//! Hours that need no tube relation: the duct's dew point lies below the coldest surface that surroundings and sky allow.

use dewrun_moist_air::fast::dew_or_frost_point_of_c;
use dewrun_moist_air::mixture::mole_fraction;

use crate::hours::Hours;
use crate::route::Route;

/// More than the error of a dew point, K: a proof leaves no room for it.
pub const COLDER_BY_K: f64 = 0.02;

/// Whether no wall can deposit anything from the air of an hour, by bound: none is colder than the coldest of the air around it, the surfaces it sees and the air in it.
///
/// Only where all walls are dry at its start: water that dries off one leg could deposit in the next.
///
/// # Range
/// Hours of the march.
/// # Source
/// Heat flows from warm to cold: without evaporation a wall lies between what it exchanges heat with.
#[must_use]
pub fn dry_by_bound(route: &Route, hours: &Hours, position: usize, walls_are_dry: bool) -> bool {
    if !walls_are_dry {
        return false;
    }
    let Some(hour) = hours.hour(position) else {
        return false;
    };
    let mut coldest_c = hour.air_c;
    for leg in route.legs() {
        let Some(around) = hours.around(position, leg.space) else {
            return false;
        };
        coldest_c = coldest_c.min(around.air_c).min(around.radiant_c);
    }
    if hour.w <= 0.0 {
        return true;
    }
    dew_or_frost_point_of_c(mole_fraction(hour.w), hour.p_pa)
        .is_some_and(|point_c| point_c + COLDER_BY_K < coldest_c)
}
