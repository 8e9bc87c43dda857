//! The year of a run as the answer file tells it.

mod notes;
mod series;

use dewrun_run::{Run, Tube, Verdict, WET_SENSOR_MIST};
use dewrun_season::told::{StoreKind, StorePlace, trouble_name};
use dewrun_season::{DesignState, Harder, Source, WaterYear, YearOutcome, run_at};
use dewrun_weather::Civil;

pub use series::{SeriesColumn, series_columns};

use crate::answer::{grade, verdict};
use crate::output::{
    CriticalWeekOutput, DesignHourOutput, DesignStateOutput, Figure, MonthOutput, StoreOutput,
    StressOutput, WorstDayOutput, YearAssumedOutput, YearOutput, YearSumOutput, YearWaterOutput,
    YearWeatherOutput,
};
use crate::{WeatherReference, YearSaid};

const GRAMS: f64 = 1000.0;
const PERCENT: f64 = 100.0;

/// What the year of a run is told from.
#[derive(Debug, Clone, Copy)]
pub struct YearTelling<'a> {
    /// The year in words.
    pub sentence: &'a str,
    /// What the project says of it.
    pub said: &'a YearSaid,
    /// The weather file that it goes by; none where none is at hand.
    pub weather: Option<&'a WeatherReference>,
    /// What it comes to; none without the weather file.
    pub outcome: Option<&'a YearOutcome>,
    /// Steady answers in the design states.
    pub design: &'a [DesignAnswer],
    /// The year in harder weather, where that was asked for.
    pub stress: &'a [(Harder, YearOutcome)],
    /// With every hour.
    pub series: bool,
}

/// The steady answer in a design state of the climate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DesignAnswer {
    /// The state.
    pub state: DesignState,
    /// Whether it is wet.
    pub verdict: Verdict,
    /// Water formed in both tubes, kg/s.
    pub condensed_kg_s: f64,
}

/// Steady answers in the design states that a weather file is known by; those without an answer are left out, and so are all where the duct's air is what was measured in it, for nobody measured it then.
#[must_use]
pub fn design_answers(run: &Run, said: &YearSaid, weather: &WeatherReference) -> Vec<DesignAnswer> {
    let answered = |state: &crate::DesignState| {
        let state = DesignState::from(state);
        let (moment, outdoors) = state.outdoors(run.pressure.to_pascals());
        let then = run_at(run, &said.season, moment, &outdoors, None);
        let found = dewrun_run::evaluate(&then).ok()?.value;
        let tubes = [Some(&found.intake), found.exhaust.as_ref()];
        let condensed = tubes.into_iter().flatten();
        Some(DesignAnswer {
            state,
            verdict: found.verdict,
            condensed_kg_s: condensed
                .map(|tube| tube.condensate.to_kilograms_per_second())
                .sum(),
        })
    };
    if said.season.source == Source::Measured {
        return Vec::new();
    }
    weather.design.iter().filter_map(answered).collect()
}

/// Wet where any hour is, or mist reaches the sensor.
#[must_use]
pub fn year_verdict(outcome: &YearOutcome) -> Verdict {
    let is_misty = outcome
        .sums
        .iter()
        .any(|hour| WET_SENSOR_MIST < hour.chamber.mist);
    if 0.0 < outcome.sum.wet_hours || is_misty {
        Verdict::Wet
    } else {
        Verdict::Dry
    }
}

/// The year of a run for the answer file.
#[must_use]
pub fn year_answer(telling: YearTelling<'_>) -> YearOutput {
    let YearTelling {
        said,
        weather,
        outcome,
        ..
    } = telling;
    let missing = said.weather.as_ref().filter(|_| weather.is_none());
    YearOutput {
        sentence: telling.sentence.to_owned(),
        notes: outcome.map_or_else(Vec::new, |outcome| notes::notes(said, outcome)),
        weather: weather.map(|file| YearWeatherOutput {
            file: file.file.clone(),
            place: file.place.clone(),
            sha256: file.sha256.clone(),
            rows: Figure(file.rows),
            step_s: Figure(file.step_s),
            is_typical_year: outcome.is_some_and(|outcome| outcome.hourly.is_typical_year),
        }),
        missing_file: missing.map(|file| file.file.clone()),
        whole: outcome.map(whole),
        design_states: telling.design.iter().map(design_state).collect(),
        stress: telling.stress.iter().map(stress).collect(),
        taken_for_granted: taken_for_granted(said, outcome),
        assumed: said
            .assumed
            .iter()
            .map(|one| YearAssumedOutput {
                path: one.path.as_str().to_owned(),
                row: one.row.to_owned(),
                value: Figure(one.value),
                low: Figure(one.low),
                high: Figure(one.high),
            })
            .collect(),
        series: outcome.filter(|_| telling.series).map(series::series),
    }
}

/// What is taken for granted of a year, in sentences; more of it where there is an outcome.
#[must_use]
pub fn taken_for_granted(said: &YearSaid, outcome: Option<&YearOutcome>) -> Vec<String> {
    let mut all = said.said.clone();
    if let Some(outcome) = outcome {
        all.push("The pressure of the air is that of the weather file, hour by hour.".to_owned());
        if outcome.water.is_ok() {
            all.push("The filter is new as the year begins and gathers its year of dust evenly; no visit changes it.".to_owned());
        }
        if outcome.hourly.is_typical_year {
            all.push("Days of the week mean nothing in a typical year: its months come from different ones.".to_owned());
        }
    }
    all
}

fn stress((harder, outcome): &(Harder, YearOutcome)) -> StressOutput {
    let water = outcome.water.as_ref().ok();
    StressOutput {
        weather: harder_name(*harder).to_owned(),
        wet_hours: Figure(outcome.sum.wet_hours),
        mist_hours: Figure(outcome.sum.mist_hours),
        frost_hours: Figure(outcome.sum.frost_hours),
        condensed_g: Figure(GRAMS * outcome.sum.condensed_kg),
        blind_hours: water.map(|water| Figure(water.sum.hours.blind)),
    }
}

/// How much harder a weather is, in words.
const fn harder_name(harder: Harder) -> &'static str {
    match harder {
        Harder::AsItIs => "as it is",
        Harder::MoreHumid => "dew points 2 K higher",
        Harder::Colder => "air 5 K colder",
    }
}

fn whole(outcome: &YearOutcome) -> YearSumOutput {
    let sum = &outcome.sum;
    let grams = |kg: f64| Figure(GRAMS * kg);
    let at = |hour: usize| stamp(outcome, hour);
    YearSumOutput {
        verdict: verdict(year_verdict(outcome)),
        grade: grade(outcome.grade),
        hours: Figure(sum.hours),
        left_out_rows: count(outcome.hourly.left_out),
        wet_hours: Figure(sum.wet_hours),
        mist_hours: Figure(sum.mist_hours),
        outlet_mist_hours: Figure(sum.outlet_mist_hours),
        frost_hours: Figure(sum.frost_hours),
        hours_above_rating: sum.hours_above_rating.map(Figure),
        most_humid_chamber_percent: Figure(PERCENT * sum.most_humid_chamber),
        condensed_g: grams(sum.condensed_kg),
        evaporated_g: grams(sum.evaporated_kg),
        drained_g: grams(sum.drained_kg),
        slug_g: grams(sum.slug_kg),
        mist_g: grams(sum.mist_kg),
        thaws: Figure(f64::from(sum.thaws)),
        coldest_wall_c: Some(sum.coldest_wall_c)
            .filter(|celsius| celsius.is_finite())
            .map(Figure),
        by_bound_hours: Figure(outcome.by_bound_hours),
        first_wet: sum.first_wet_hour.and_then(at),
        worst_day: sum.worst_day.and_then(|(hour, kg)| {
            Some(WorstDayOutput {
                from: at(hour)?,
                condensed_g: grams(kg),
            })
        }),
        months: outcome
            .months
            .iter()
            .map(|month| MonthOutput {
                hours: Figure(month.hours),
                wet_hours: Figure(month.wet_hours),
                condensed_g: grams(month.condensed_kg),
                evaporated_g: grams(month.evaporated_kg),
                drained_g: grams(month.drained_kg),
            })
            .collect(),
        design_hours: outcome
            .design
            .iter()
            .filter_map(|design| {
                Some(DesignHourOutput {
                    exceeded_percent: Figure(PERCENT * design.rank),
                    at: at(design.hour)?,
                    condensed_g_h: grams(design.condensed_kg_h),
                })
            })
            .collect(),
        water: outcome.water.as_ref().ok().map(|year| water(outcome, year)),
    }
}

fn water(outcome: &YearOutcome, year: &WaterYear) -> YearWaterOutput {
    let sum = &year.sum;
    let grams = |kg: f64| Figure(GRAMS * kg);
    let times = |count: u32| Figure(f64::from(count));
    YearWaterOutput {
        blind_hours: Figure(sum.hours.blind),
        sealed_hours: Figure(sum.hours.sealed),
        iced_hours: Figure(sum.hours.iced),
        slug_hours: Figure(sum.hours.slugs),
        low_flow_hours: Figure(sum.hours.low),
        high_flow_hours: Figure(sum.hours.high),
        reversed_hours: Figure(sum.hours.reversed),
        trap_full_hours: Figure(sum.hours.trap_full),
        trap_fillings: times(sum.fillings),
        emptyings: times(sum.emptyings),
        thaws: times(sum.thaws),
        most_standing_g: grams(sum.most_standing_kg),
        evaporated_g: grams(sum.went.evaporated_kg),
        drained_g: grams(sum.went.drained_kg),
        into_duct_g: grams(sum.went.into_duct_kg),
        into_detector_g: grams(sum.went.into_detector_kg),
        let_out_g: grams(sum.went.let_out_kg),
        leaked_g: grams(sum.went.leaked_kg),
        overflowed_g: grams(sum.went.overflowed_kg),
        first_critical_week: sum.first_critical.and_then(|week| {
            Some(CriticalWeekOutput {
                at: stamp(outcome, week.hour)?,
                trouble: trouble_name(week.trouble).to_owned(),
            })
        }),
        stores: year
            .stores
            .iter()
            .enumerate()
            .map(|(at, store)| store_output(year, at, store))
            .collect(),
    }
}

fn store_output(year: &WaterYear, at: usize, store: &StorePlace) -> StoreOutput {
    let levels = year.levels_kg.chunks(year.stores.len().max(1));
    let most_kg = levels
        .filter_map(|stores| stores.get(at).copied())
        .fold(0.0, f64::max);
    let holds_g = GRAMS * store.capacity_kg;
    StoreOutput {
        kind: match store.kind {
            StoreKind::Pool { .. } => "pool",
            StoreKind::Trap(_) => "trap",
        }
        .to_owned(),
        tube: match store.tube {
            Tube::Intake => "intake",
            Tube::Exhaust => "exhaust",
        }
        .to_owned(),
        at_m: Figure(store.at.to_metres()),
        holds_g: holds_g.is_finite().then_some(Figure(holds_g)),
        most_g: Figure(GRAMS * most_kg),
    }
}

fn design_state(answer: &DesignAnswer) -> DesignStateOutput {
    let state = &answer.state;
    DesignStateOutput {
        by: match state.by {
            dewrun_season::DesignBy::DewPoint => "dew_point",
            dewrun_season::DesignBy::Temperature => "temperature",
        }
        .to_owned(),
        exceeded_percent: Figure(state.exceeded_percent),
        outdoor_c: Figure(state.t_c),
        outdoor_dew_point_c: Figure(state.dew_point_c),
        verdict: verdict(answer.verdict),
        condensed_g_h: Figure(GRAMS * 3600.0 * answer.condensed_kg_s),
    }
}

/// Start of an hour on the file's own clock; of a typical year without its year.
#[must_use]
pub fn stamp(outcome: &YearOutcome, hour: usize) -> Option<String> {
    let civil = Civil::of(*outcome.hourly.start_s.get(hour)?)?;
    let text = civil.to_string();
    if outcome.hourly.is_typical_year {
        return text.split_once('-').map(|(_, rest)| rest.to_owned());
    }
    Some(text)
}

#[expect(clippy::cast_precision_loss, reason = "rows are far fewer than 2^52")]
const fn count(rows: usize) -> Figure {
    Figure(rows as f64)
}
