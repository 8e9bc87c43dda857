//! What truly is at a site: every assumed value somewhere within its span, and the hours of that year.

use dewrun_ensemble::{Inputs, Plan};
use dewrun_quantity::MassPerArea;
use dewrun_run::air::Over;
use dewrun_run::told::{Fault, Side};
use dewrun_run::{evaluate, water_and_air};
use dewrun_season::told::{StoreKind, chamber_humidity};
use dewrun_season::{Change, Room, Step, YearOutcome, hours_of, year_of};
use dewrun_weather::Series;

use super::Site;
use crate::routes::Draw;

/// Grams of a kilogram.
const GRAMS: f64 = 1e3;
/// A pool that is shallower than this part of the bore does not show in the airflow.
const SHALLOW: f64 = 0.05;

/// How a site may differ from what is known of it, beyond the spans of what is assumed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OtherWorld {
    /// It does not.
    No,
    /// The weather is not that of the site, walls hold more or less water, the clock of the log is off, panels show too much or too little, and something is done to the duct's air that nobody said.
    Yes,
}

/// What truly is at a site.
#[derive(Debug, Clone)]
pub struct Truth {
    /// Start of each hour, s since 1970.
    pub start_s: Vec<i64>,
    /// What runs down from the walls in each hour, g.
    pub runs_down_g: Vec<f64>,
    /// Mist at the sensor, kg/kg.
    pub mist: Vec<f64>,
    /// Humidity of the air around the sensor, 0 to 1.
    pub chamber: Vec<f64>,
    /// Frost on the walls at the end of each hour, g.
    pub frost_g: Vec<f64>,
    /// What comes down of it at thaw, g.
    pub slug_g: Vec<f64>,
    /// Reading of the airflow sensor without standing water, as a part of that as fitted.
    pub reading: Vec<f64>,
    /// Water that closes the first low point, or fills the trap, g.
    pub full_g: Option<f64>,
    /// Reading with a joint parted, one for each joint, beside the sample share.
    pub parted: Vec<f64>,
    /// Reading with a dry trap, with fouled holes, with a weak fan, with no filter; none where it has no answer.
    pub dry: Option<f64>,
    /// See [`Truth::dry`].
    pub fouled: Option<f64>,
    /// See [`Truth::dry`].
    pub weak: Option<f64>,
    /// See [`Truth::dry`].
    pub no_filter: Option<f64>,
    /// By how much the clock of the log is off, s.
    pub clock_off_s: i64,
    /// What a panel shows, as a part of what the airflow reading is.
    pub shows: f64,
    /// How far a reading that was written down may be off, as a part of it.
    pub shows_within: f64,
}

/// What truly is at a site, drawn.
///
/// # Errors
/// A sentence where its year can't be marched: some corners of the spans have no answer, and another seed has to be taken.
pub fn truth(site: &Site, weather: &Series, seed: u64, world: OtherWorld) -> Result<Truth, String> {
    let mut draw = Draw::new(seed ^ 0x7217_0000);
    // Used to put values into a run, and for nothing else.
    let plan = Plan::new(site.said.usual.clone(), 0);
    let values: Vec<f64> = plan
        .spans()
        .iter()
        .map(|span| draw.between(span.low, span.high))
        .collect();
    let mut inputs = plan.with(&values);
    let mut weather = weather.clone();
    let mut clock_off_s = 0;
    if world == OtherWorld::Yes {
        make_other(&mut inputs, &mut weather, &mut draw);
        clock_off_s = [-7200, -3600, 3600, 7200][draw.below(4)];
    }
    let said = |error: &dyn core::fmt::Display| error.to_string();
    let hourly = hours_of(&inputs.run, &inputs.season, &weather, None).map_err(|one| said(&one))?;
    let year = year_of(&inputs.run, &inputs.installation, hourly).map_err(|one| said(&one))?;
    // Of relations nothing is varied in a year's march: water is off by what they are known to.
    let off = draw.between(0.75, 1.3);
    let mut truth = of_year(&year, off)?;
    truth.clock_off_s = clock_off_s;
    if world == OtherWorld::Yes {
        // Drawn apart: all else is as it was without panels.
        truth.shows = Draw::new(seed ^ 0x5ca1_e000).between(0.9, 1.1);
        truth.shows_within = 0.1;
    }
    of_faults(&inputs, &mut truth)?;
    Ok(truth)
}

/// Nobody knows any of this.
fn make_other(inputs: &mut Inputs, weather: &mut Series, draw: &mut Draw) {
    let film = inputs.installation.film.to_grams_per_square_metre();
    let film = (film * draw.between(0.5, 2.0)).clamp(10.0, 200.0);
    inputs.installation.film = MassPerArea::grams_per_square_metre(film);
    let (warmer, damper) = (draw.between(-1.5, 1.5), draw.between(-1.5, 1.5));
    let mut gust = 0.0;
    for (t_c, dew_c) in weather
        .temperature_c
        .iter_mut()
        .zip(&mut weather.dew_point_c)
    {
        gust = 0.9 * gust + draw.between(-0.5, 0.5);
        *t_c += warmer;
        *dew_c = (*dew_c + damper + gust).min(*t_c);
    }
    for ((percent, t_c), dew_c) in (weather.relative_percent.iter_mut())
        .zip(&weather.temperature_c)
        .zip(&weather.dew_point_c)
    {
        // Magnus' formula is near enough for a wrong weather.
        let e = |c: f64| dewrun_numeric::elementary::exp(17.6 * c / (243.0 + c));
        *percent = (100.0 * e(*dew_c) / e(*t_c)).min(100.0);
    }
    weather.relative_over = Over::Water;
    let share = draw.between(0.05, 0.35);
    let room = Room {
        temperature_c: draw.between(20.0, 26.0),
        humidity: draw.between(0.3, 0.6),
    };
    inputs.season.steps.push(Step {
        change: Change::Mixed(room, share),
        when: Vec::new(),
    });
}

fn of_year(year: &YearOutcome, off: f64) -> Result<Truth, String> {
    let water = year.water.as_ref().map_err(ToString::to_string)?;
    let full = water.stores.iter().map(|store| match store.kind {
        StoreKind::Pool { seals_at_kg, .. } => seals_at_kg,
        StoreKind::Trap(_) => store.capacity_kg,
    });
    let full = full.filter(|kg| kg.is_finite() && 0.0 < *kg);
    let mut reading = Vec::new();
    let mut last = 1.0;
    for hour in &water.hours {
        if hour.deepest < SHALLOW && 0.2 < hour.reading {
            last = hour.reading;
        }
        reading.push(last);
    }
    let grams = |of: fn(&dewrun_season::told::HourSum) -> f64| -> Vec<f64> {
        year.sums
            .iter()
            .map(|hour| off * GRAMS * of(hour))
            .collect()
    };
    Ok(Truth {
        start_s: year.hourly.start_s.clone(),
        runs_down_g: grams(|hour| hour.drained_kg),
        mist: year
            .sums
            .iter()
            .map(|hour| off * hour.chamber.mist)
            .collect(),
        chamber: (year.sums.iter().enumerate())
            .map(|(at, hour)| chamber_humidity(&year.hourly.hours, at, hour))
            .collect(),
        frost_g: grams(|hour| hour.frost_kg),
        slug_g: grams(|hour| hour.slug_kg),
        reading,
        full_g: full.map(|kg| GRAMS * kg).min_by(f64::total_cmp),
        parted: Vec::new(),
        dry: None,
        fouled: None,
        weak: None,
        no_filter: None,
        clock_off_s: 0,
        shows: 1.0,
        shows_within: 0.05,
    })
}

fn of_faults(inputs: &Inputs, truth: &mut Truth) -> Result<(), String> {
    let steady = evaluate(&inputs.run)
        .map_err(|error| error.to_string())?
        .value;
    let whole = water_and_air(&inputs.run, &inputs.installation, &steady);
    let whole = whole.map_err(|error| error.to_string())?;
    for fault in &whole.airflow.faults {
        let reading = Some(fault.reading);
        match fault.fault {
            Fault::Parted(Side::Intake | Side::Exhaust, _) => truth.parted.push(fault.reading),
            Fault::TrapDry(_) => truth.dry = reading,
            Fault::HolesFouled => truth.fouled = reading,
            Fault::FanWeak => truth.weak = reading,
            Fault::FilterMissing => truth.no_filter = reading,
            Fault::Sealed(..) => {}
        }
    }
    Ok(())
}
