//! The hours of a run's year: what the weather, the schedules and the spaces make of each.

use dewrun_duct_air::FogAir;
use dewrun_duct_air::process::standing;
use dewrun_duct_air::schedule::Moment;
use dewrun_duct_air::space::{Outdoors, SpaceAir};
use dewrun_moist_air::fast::dew_or_frost_point_of_c;
use dewrun_moist_air::mixture::{density_kg_m3, mole_fraction};
use dewrun_run::{FlowAt, Run};
use dewrun_weather::Series;
use dewrun_year::{Around, Hour, Hours};

use crate::error::SeasonError;
use crate::harder::Harder;
use crate::in_duct::air_in_duct;
use crate::outdoors::{moment, outdoors};
use crate::season::{Season, Source};

/// Flow that stands for none at all, kg/s.
const TRICKLE_KG_S: f64 = 1e-9;

/// The hours of a run's year and when they are.
#[derive(Debug, Clone, PartialEq)]
pub struct Hourly {
    /// The hours as they are marched.
    pub hours: Hours,
    /// Start of each, s since 1970 on the file's own clock.
    pub start_s: Vec<i64>,
    /// Row of the weather file of each.
    pub rows: Vec<usize>,
    /// Rows that were left out, as something is not known of them.
    pub left_out: usize,
    /// The year means nothing: the months come from different ones.
    pub is_typical_year: bool,
}

impl Hourly {
    /// Month of an hour, 1 to 12.
    #[must_use]
    pub fn month(&self, hour: usize) -> Option<u8> {
        self.start_s
            .get(hour)
            .and_then(|start| Some(moment(*start)?.month))
    }

    /// Dew point of the duct's air in an hour, below freezing its frost point, °C; none in bone-dry air.
    #[must_use]
    pub fn duct_dew_point_c(&self, hour: usize) -> Option<f64> {
        let hour = self.hours.hour(hour)?;
        dew_or_frost_point_of_c(mole_fraction(hour.w), hour.p_pa)
    }
}

/// The hours of a run's year; `measured` is the file of what was measured in its duct, see [`air_in_duct`].
///
/// Where a duct's fan is off its air stands, as warm as what surrounds the intake's first leg.
///
/// # Range
/// Any step; rows in which something is not known are left out.
/// # Errors
/// [`SeasonError`] where no row is left, or spaces or files do not fit.
pub fn hours_of(
    run: &Run,
    season: &Season,
    weather: &Series,
    measured: Option<&Series>,
) -> Result<Hourly, SeasonError> {
    harder_hours_of(run, season, weather, measured, Harder::AsItIs)
}

/// As [`hours_of`], in weather that is harder than that of the file.
///
/// # Errors
/// As [`hours_of`].
pub fn harder_hours_of(
    run: &Run,
    season: &Season,
    weather: &Series,
    measured: Option<&Series>,
    harder: Harder,
) -> Result<Hourly, SeasonError> {
    if season.spaces.len() != run.spaces.len() {
        return Err(SeasonError::OtherSpaces {
            told: season.spaces.len(),
            spaces: run.spaces.len(),
        });
    }
    let in_duct = in_duct(season, measured)?;
    let mut hourly = Hourly {
        hours: Hours::with_room(run.spaces.len(), weather.len()),
        start_s: Vec::with_capacity(weather.len()),
        rows: Vec::with_capacity(weather.len()),
        left_out: 0,
        is_typical_year: weather.timing.is_typical_year,
    };
    let meets = Meets::new(run);
    for (row, &start_s) in weather.start_s.iter().enumerate() {
        let known = outdoors(weather, row).map(|outdoors| harder.of(&outdoors));
        let (Some(outdoors), Some(moment)) = (known, moment(start_s)) else {
            hourly.left_out += 1;
            continue;
        };
        let step = (start_s, weather.timing.step_s);
        let read = in_duct.map(|series| air_in_duct(series, step, outdoors.p_pa));
        if read == Some(None) {
            hourly.left_out += 1;
            continue;
        }
        let seconds = step_s(weather);
        let read = read.flatten();
        hourly.push(&meets, season, (seconds, moment), &outdoors, read);
        hourly.start_s.push(start_s);
        hourly.rows.push(row);
    }
    match (hourly.hours.is_empty(), in_duct.is_some()) {
        (false, _) => Ok(hourly),
        (true, true) => Err(SeasonError::ApartInTime),
        (true, false) => Err(SeasonError::NoRows),
    }
}

/// Length of a step, s.
#[expect(clippy::cast_precision_loss, reason = "a step is far below 2^52 s")]
fn step_s(weather: &Series) -> f64 {
    weather.timing.step_s as f64
}

/// The file that says what the air of a duct was; none where it follows from something else.
fn in_duct<'a>(
    season: &Season,
    measured: Option<&'a Series>,
) -> Result<Option<&'a Series>, SeasonError> {
    if season.source != Source::Measured {
        return Ok(None);
    }
    measured.map(Some).ok_or(SeasonError::NotMeasured)
}

/// Where the air of a run meets what.
struct Meets {
    /// Position of the space at the duct.
    at_duct: usize,
    /// Position of the space in front of the detector.
    at_detector: usize,
    volume_m3_s: f64,
    flow_at: FlowAt,
}

impl Meets {
    fn new(run: &Run) -> Self {
        let space = |leg: Option<&dewrun_run::Leg>| leg.map_or(0, |leg| leg.space);
        Self {
            at_duct: space(run.intake.first()),
            at_detector: space(run.intake.last()),
            volume_m3_s: run.flow.volume.to_litres_per_minute() / 60_000.0,
            flow_at: run.flow.at,
        }
    }

    /// Dry air of the flow, kg/s, counted where the run says; at the sensor the air is taken to be as warm as what surrounds the tube before it.
    fn dry_air_kg_s(&self, duct: FogAir, around: &[SpaceAir], p_pa: f64) -> f64 {
        let t_c = match self.flow_at {
            FlowAt::Intake => duct.t_c,
            FlowAt::Sensor => around
                .get(self.at_detector)
                .map_or(duct.t_c, |air| air.air_c),
        };
        let density = density_kg_m3(t_c, duct.w, p_pa);
        (self.volume_m3_s * density / (1.0 + duct.w)).max(TRICKLE_KG_S)
    }
}

impl Hourly {
    fn push(
        &mut self,
        meets: &Meets,
        season: &Season,
        (seconds, moment): (f64, Moment),
        outdoors: &Outdoors,
        measured: Option<FogAir>,
    ) {
        let p_pa = outdoors.p_pa;
        let around: Vec<SpaceAir> = season
            .spaces
            .iter()
            .map(|space| space.at(moment, outdoors))
            .collect();
        let mut duct = season.duct_air(moment, outdoors, measured);
        let is_off = season.is_fan_off(moment);
        if let (true, Some(air)) = (is_off, around.get(meets.at_duct)) {
            duct = standing(duct, air.air_c, p_pa);
        }
        let hour = Hour {
            seconds,
            air_c: duct.t_c,
            w: duct.w + duct.mist,
            p_pa,
            dry_air_kg_s: meets.dry_air_kg_s(duct, &around, p_pa),
        };
        let around = around.iter().map(|air| Around {
            air_c: air.air_c,
            w: air.w,
            radiant_c: air.radiant_c,
            wind_m_s: air.wind_m_s,
        });
        self.hours.push(hour, around);
        if is_off {
            self.hours.duct_stands();
        }
    }
}
