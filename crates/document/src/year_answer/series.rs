//! A year hour by hour: its columns, for CSV and JSON alike.

use dewrun_run::air::fast::dew_or_frost_point_of_c;
use dewrun_run::air::mixture::mole_fraction;
use dewrun_season::YearOutcome;
use dewrun_season::told::{HourSum, StateShares, WaterHour, chamber_humidity};

use super::{GRAMS, PERCENT, stamp};
use crate::output::{Figure, SeriesColumnOutput, SeriesOutput};

/// How a quantity of an hour is found in a year.
type OfYear = dyn Fn(&YearOutcome, usize) -> Option<f64>;

/// A quantity hour by hour.
pub struct SeriesColumn {
    /// What it is, with its unit at the end.
    pub name: String,
    of: Box<OfYear>,
}

impl SeriesColumn {
    fn new(
        name: impl Into<String>,
        of: impl Fn(&YearOutcome, usize) -> Option<f64> + 'static,
    ) -> Self {
        Self {
            name: name.into(),
            of: Box::new(of),
        }
    }

    /// Its value in an hour; none where it is not known.
    #[must_use]
    pub fn value(&self, outcome: &YearOutcome, hour: usize) -> Option<f64> {
        (self.of)(outcome, hour).filter(|value| value.is_finite())
    }
}

type OfHour = fn(&HourSum) -> f64;
type OfWater = fn(&WaterHour) -> f64;
type OfState = fn(&StateShares) -> f64;

/// The columns of a year: the duct's air, what came of the walls, the chamber, and, where it was followed, water and airflow.
#[must_use]
pub fn series_columns(outcome: &YearOutcome) -> Vec<SeriesColumn> {
    let mut columns = of_air();
    let of_walls: [(&str, OfHour); 10] = [
        ("condensed_g", |hour| GRAMS * hour.condensed_kg),
        ("evaporated_g", |hour| GRAMS * hour.evaporated_kg),
        ("ran_off_g", |hour| GRAMS * hour.drained_kg),
        ("film_g", |hour| GRAMS * hour.film_kg),
        ("frost_g", |hour| GRAMS * hour.frost_kg),
        ("thaw_slug_g", |hour| GRAMS * hour.slug_kg),
        ("coldest_wall_c", |hour| hour.coldest_wall_c),
        ("chamber_c", |hour| hour.chamber.t_c),
        ("chamber_mist_kg_kg", |hour| hour.chamber.mist),
        ("outlet_mist_kg_kg", |hour| hour.outlet.mist),
    ];
    columns.extend(
        of_walls
            .map(|(name, of)| SeriesColumn::new(name, move |year, at| year.sums.get(at).map(of))),
    );
    columns.push(SeriesColumn::new("chamber_percent", |year, at| {
        let sum = year.sums.get(at)?;
        Some(PERCENT * chamber_humidity(&year.hourly.hours, at, sum))
    }));
    columns.extend(of_water(outcome));
    columns
}

fn of_air() -> Vec<SeriesColumn> {
    let hour = |year: &YearOutcome, at| year.hourly.hours.hour(at).copied();
    vec![
        SeriesColumn::new("duct_c", move |year, at| Some(hour(year, at)?.air_c)),
        SeriesColumn::new("duct_dew_point_c", move |year, at| {
            let hour = hour(year, at)?;
            dew_or_frost_point_of_c(mole_fraction(hour.w), hour.p_pa)
        }),
        SeriesColumn::new("duct_kg_kg", move |year, at| Some(hour(year, at)?.w)),
        SeriesColumn::new("pressure_pa", move |year, at| Some(hour(year, at)?.p_pa)),
        SeriesColumn::new("duct_fan_off", move |year, at| {
            hour(year, at)?;
            Some(f64::from(u8::from(!year.hourly.hours.duct_runs(at))))
        }),
    ]
}

fn of_water(outcome: &YearOutcome) -> Vec<SeriesColumn> {
    let Ok(water) = &outcome.water else {
        return Vec::new();
    };
    let amounts: [(&str, OfWater); 8] = [
        ("standing_g", |hour| GRAMS * hour.standing_kg),
        ("standing_ice_g", |hour| GRAMS * hour.ice_kg),
        ("trapped_g", |hour| GRAMS * hour.trapped_kg),
        ("let_out_g", |hour| GRAMS * hour.went.let_out_kg),
        ("into_detector_g", |hour| GRAMS * hour.went.into_detector_kg),
        ("dry_air_kg_s", |hour| hour.dry_air_kg_s),
        ("reading_percent", |hour| PERCENT * hour.reading),
        ("share_percent", |hour| PERCENT * hour.share),
    ];
    let states: [(&str, OfState); 6] = [
        ("blind", |states| states.blind),
        ("sealed", |states| states.sealed),
        ("iced", |states| states.iced),
        ("slugs", |states| states.slugs),
        ("low_flow", |states| states.low),
        ("trap_full", |states| states.trap_full),
    ];
    let hour = |year: &YearOutcome, at: usize| year.water.as_ref().ok()?.hours.get(at).copied();
    let mut columns: Vec<SeriesColumn> = Vec::new();
    columns.extend(
        amounts
            .map(|(name, of)| SeriesColumn::new(name, move |year, at| Some(of(&hour(year, at)?)))),
    );
    columns.extend(states.map(|(name, of)| {
        SeriesColumn::new(name, move |year, at| Some(of(&hour(year, at)?.states)))
    }));
    for number in 0..water.stores.len() {
        columns.push(SeriesColumn::new(
            format!("store_{}_g", number + 1),
            move |year, at| {
                let water = year.water.as_ref().ok()?;
                let level = water.levels_kg.get(at * water.stores.len() + number)?;
                Some(GRAMS * level)
            },
        ));
    }
    columns
}

/// Every hour, column by column.
pub(super) fn series(outcome: &YearOutcome) -> SeriesOutput {
    let hours = 0..outcome.sums.len();
    let stamps = hours.clone().map(|hour| stamp(outcome, hour));
    let column = |column: &SeriesColumn| SeriesColumnOutput {
        name: column.name.clone(),
        values: hours
            .clone()
            .map(|hour| column.value(outcome, hour).map(Figure))
            .collect(),
    };
    SeriesOutput {
        time: stamps.map(Option::unwrap_or_default).collect(),
        columns: series_columns(outcome).iter().map(column).collect(),
    }
}
