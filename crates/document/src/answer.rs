//! From the engine's answer to the answer file's types, by hand.

use dewrun_advice::{Limit, Resting, StayingDry, SteadyDoubt};
use dewrun_quantity::{HumidityRatio, Length, MassFlow, MassFlowPerLength, Noted, Temperature};
use dewrun_run::{
    AirPoint, Balance, Grade, LegOutcome, NearWallMist, Outcome, ProfilePoint, Run, RunNote,
    Stretch, TubeOutcome, Verdict, WallPoint, Whole,
};

use crate::doubt_answer::doubt;
use crate::output::{
    ANSWER_FORMAT, ANSWER_REVISION, ANSWER_VERSION, AirOutput, AirflowAnswer, AssessOutput,
    BalanceOutput, DoubtAnswer, DuctAirLimitOutput, ErrorOutput, Figure, GradeOutput, LegOutput,
    LimitOutput, NearWallMistOutput, NotComputed, NoteOutput, ProfileOutput, RestsOnOutput,
    RunOutput, SpaceLimitOutput, StayingDryOutput, SteadyOutput, StretchOutput, TubeLimitOutput,
    TubeOutput, VerdictOutput, WallOutput,
};
use crate::remark::{airflow_note, remark};
use crate::{Assumed, DocumentError, Names, figures, given_path, note, whole_answer, year_figures};

/// What an answer is made of, beside the figures.
#[derive(Debug, Clone, Copy)]
pub struct Telling<'a> {
    /// The answer in one or a few sentences.
    pub sentence: &'a str,
    /// Whether the tubes are drawn out point by point.
    pub profile: bool,
    /// The assumed values that the answer rests on.
    pub rests_on: &'a [Resting],
    /// What the run would still take dry, where that is known.
    pub staying_dry: Option<&'a StayingDry>,
    /// Water and air, and what is assumed of them, where they are told.
    pub whole: Option<(&'a Whole, &'a [Assumed])>,
    /// How sure the answer is, where that is known.
    pub doubt: Option<&'a SteadyDoubt>,
}

/// The answer of one run.
#[must_use]
pub fn answer(
    run_index: usize,
    run: &Run,
    names: &Names,
    outcome: &Noted<Outcome, RunNote>,
    telling: Telling<'_>,
) -> SteadyOutput {
    let Noted { value, notes } = outcome;
    let rating = run.detector.humidity_rating;
    let (whole, assumed) = match telling.whole {
        Some((whole, assumed)) => (Some(whole), assumed),
        None => (None, &[][..]),
    };
    SteadyOutput {
        sentence: telling.sentence.to_owned(),
        verdict: verdict(value.verdict),
        grade: grade(value.grade),
        blind: whole.and_then(|whole| whole.blind.as_ref().map(whole_answer::blind)),
        airflow: whole.map_or(
            AirflowAnswer::NotComputed(NotComputed::NotComputed),
            |whole| AirflowAnswer::Computed(Box::new(whole_answer::airflow(&whole.airflow))),
        ),
        water: whole.map(|whole| whole_answer::water(whole, names)),
        assumed: assumed.iter().map(whole_answer::assumed).collect(),
        doubt: telling.doubt.map_or(
            DoubtAnswer::NotComputed(NotComputed::NotComputed),
            |found| {
                let told = doubt((run_index, run), found, telling.profile);
                DoubtAnswer::Computed(Box::new(told))
            },
        ),
        dry_air_kg_s: Figure(value.dry_air.to_kilograms_per_second()),
        duct_air: air(&value.duct_air),
        intake: tube(&value.intake, &names.intake, telling.profile),
        chamber: air(&value.chamber),
        chamber_over_rating: rating.map(|rating| rating < value.chamber.relative_humidity),
        exhaust: value
            .exhaust
            .as_ref()
            .map(|exhaust| tube(exhaust, &names.exhaust, telling.profile)),
        balance: balance(&value.balance),
        rests_on: telling
            .rests_on
            .iter()
            .map(|one| resting(run_index, run, one))
            .collect(),
        would_stay_dry: telling.staying_dry.map(|found| staying_dry(found, names)),
        notes: notes
            .iter()
            .map(|one| note(run_index, one))
            .chain(
                whole
                    .into_iter()
                    .flat_map(|whole| whole_notes(run_index, whole)),
            )
            .collect(),
    }
}

/// What has to be said beside water and air.
#[must_use]
pub fn whole_notes(run_index: usize, whole: &Whole) -> Vec<NoteOutput> {
    let remarks = whole.remarks.iter().map(|one| remark(run_index, one));
    let notes = whole.airflow.notes.iter();
    remarks
        .chain(notes.map(|one| airflow_note(run_index, one)))
        .collect()
}

pub(crate) const fn verdict(verdict: Verdict) -> VerdictOutput {
    match verdict {
        Verdict::Dry => VerdictOutput::Dry,
        Verdict::Wet => VerdictOutput::Wet,
    }
}

pub(crate) const fn grade(grade: Grade) -> GradeOutput {
    match grade {
        Grade::ByBound => GradeOutput::ByBound,
        Grade::ByModel => GradeOutput::ByModel,
    }
}

fn air(air: &AirPoint) -> AirOutput {
    AirOutput {
        temperature_c: celsius(air.temperature),
        humidity_ratio_kg_kg: ratio(air.humidity_ratio),
        mist_kg_kg: ratio(air.mist),
        relative_humidity_percent: Figure(air.relative_humidity.to_percent()),
        dew_point_c: air.dew_point.map(celsius),
    }
}

fn tube(tube: &TubeOutcome, ids: &[String], drawn_out: bool) -> TubeOutput {
    let profile = || tube.profile.iter().map(profile_point).collect();
    TubeOutput {
        condensate_g_h: grams(tube.condensate),
        sweat_g_h: grams(tube.sweat),
        first_wet_m: tube.first_wet().map(metres),
        wet: tube.wet.iter().map(stretch).collect(),
        coldest_wall: tube.coldest_wall.as_ref().map(wall),
        most_mist_kg_kg: ratio(tube.most_mist),
        near_wall_mist: tube.near_wall_mist.as_ref().map(near_wall_mist),
        outlet: air(&tube.outlet),
        legs: tube
            .legs
            .iter()
            .enumerate()
            .map(|(at, one)| leg(one, ids.get(at).map_or("", String::as_str)))
            .collect(),
        profile: drawn_out.then(profile),
    }
}

fn leg(leg: &LegOutcome, id: &str) -> LegOutput {
    LegOutput {
        id: id.to_owned(),
        from_m: metres(leg.from),
        to_m: metres(leg.to),
        condensate_g_h: grams(leg.condensate),
        frost_g_h: grams(leg.frost),
        sweat_g_h: grams(leg.sweat),
        rime_g_h: grams(leg.rime),
        first_wet_m: leg.first_wet.map(metres),
        lowest_wall_c: celsius(leg.lowest_wall),
        air_at_end: air(&leg.air_at_end),
        heat_to_space_w: Figure(leg.heat_to_space.to_watts()),
    }
}

fn stretch(stretch: &Stretch) -> StretchOutput {
    StretchOutput {
        from_m: metres(stretch.from),
        to_m: metres(stretch.to),
    }
}

fn wall(wall: &WallPoint) -> WallOutput {
    WallOutput {
        x_m: metres(wall.x),
        temperature_c: celsius(wall.temperature),
    }
}

fn near_wall_mist(mist: &NearWallMist) -> NearWallMistOutput {
    NearWallMistOutput {
        x_m: metres(mist.x),
        saturation_ratio: Figure(mist.saturation_ratio),
        upper_bound_g_h: grams(mist.upper_bound),
    }
}

fn profile_point(point: &ProfilePoint) -> ProfileOutput {
    ProfileOutput {
        x_m: metres(point.x),
        air_c: celsius(point.air),
        inner_wall_c: celsius(point.inner_wall),
        outer_surface_c: celsius(point.outer_surface),
        dew_point_c: point.dew_point.map(celsius),
        humidity_ratio_kg_kg: ratio(point.humidity_ratio),
        mist_kg_kg: ratio(point.mist),
        deposit_g_h_m: grams_per_metre(point.deposit),
        frozen_share: Figure(point.frozen_share),
        sweat_g_h_m: grams_per_metre(point.sweat),
    }
}

fn balance(balance: &Balance) -> BalanceOutput {
    BalanceOutput {
        water_in_g_h: grams(balance.water_in),
        water_left_over_g_h: grams(balance.water_left_over),
        energy_turned_over_w: Figure(balance.energy_turned_over.to_watts()),
        energy_left_over_w: Figure(balance.energy_left_over.to_watts()),
    }
}

fn resting(run_index: usize, run: &Run, resting: &Resting) -> RestsOnOutput {
    let path = |place| {
        let path = given_path(run_index, run, resting.assumed.figure, place);
        path.as_str().to_owned()
    };
    RestsOnOutput {
        figure: resting.assumed.figure.id().to_owned(),
        paths: resting
            .assumed
            .places
            .iter()
            .map(|place| path(*place))
            .collect(),
        row: resting.assumed.row.clone(),
        value: Figure(resting.assumed.value),
        low: Figure(resting.assumed.low),
        high: Figure(resting.assumed.high),
        change_g_h: Figure(resting.change_g_h),
        changes_verdict: resting.changes_verdict,
        changes_blindness: resting.changes_blindness,
        decides: resting.decides,
    }
}

fn staying_dry(found: &StayingDry, names: &Names) -> StayingDryOutput {
    let StayingDry {
        duct_temperature,
        duct_air,
        space,
        tube,
    } = found;
    let name = |at: &usize| names.spaces.get(*at).cloned().unwrap_or_default();
    StayingDryOutput {
        duct_air: DuctAirLimitOutput {
            limit: limit(duct_air),
            temperature_c: celsius(*duct_temperature),
            dew_point_c: duct_air.at().map(celsius),
        },
        space: SpaceLimitOutput {
            limit: limit(&space.temperature),
            temperature_c: space.temperature.at().map(celsius),
            spaces: space.spaces.iter().map(name).collect(),
        },
        tube: TubeLimitOutput {
            limit: limit(&tube.length),
            length_m: tube.length.at().map(metres),
            leg: names.intake.get(tube.leg).cloned().unwrap_or_default(),
            at_end_of_leg: tube.at_end_of_leg,
        },
    }
}

const fn limit<T>(found: &Limit<T>) -> LimitOutput {
    match found {
        Limit::At(_) => LimitOutput::At,
        Limit::Any => LimitOutput::Any,
        Limit::Never => LimitOutput::Never,
    }
}

const fn celsius(temperature: Temperature) -> Figure {
    Figure(temperature.to_celsius())
}

const fn metres(length: Length) -> Figure {
    Figure(length.to_metres())
}

const fn grams(flow: MassFlow) -> Figure {
    Figure(flow.to_grams_per_hour())
}

const fn grams_per_metre(flow: MassFlowPerLength) -> Figure {
    Figure(flow.to_grams_per_hour_metre())
}

const fn ratio(ratio: HumidityRatio) -> Figure {
    Figure(ratio.to_kilograms_per_kilogram())
}

impl AssessOutput {
    /// The answers of a project's runs.
    #[must_use]
    pub fn new(project: &str, runs: Vec<RunOutput>) -> Self {
        Self {
            project: Some(project.to_owned()),
            runs,
            ..Self::empty()
        }
    }

    /// The same with the entries of all its figures.
    #[must_use]
    pub fn with_figures(self) -> Self {
        Self {
            figures: if self.runs.iter().any(|run| run.year.is_some()) {
                figures().into_iter().chain(year_figures()).collect()
            } else {
                figures()
            },
            ..self
        }
    }

    /// Why a project could not be read.
    #[must_use]
    pub fn failed(error: &DocumentError) -> Self {
        Self {
            error: Some(ErrorOutput::from(error)),
            ..Self::empty()
        }
    }

    /// As JSON on one line, or spread over many.
    ///
    /// # Errors
    /// [`DocumentError::NotFinite`] where a figure is no number; nothing is written then.
    pub fn to_json(&self, on_one_line: bool) -> Result<String, DocumentError> {
        let written = if on_one_line {
            serde_json::to_string(self)
        } else {
            serde_json::to_string_pretty(self)
        };
        written.map_err(|_| DocumentError::NotFinite)
    }

    fn empty() -> Self {
        Self {
            format: ANSWER_FORMAT.to_owned(),
            version: ANSWER_VERSION,
            revision: ANSWER_REVISION,
            file: None,
            line: None,
            project: None,
            runs: Vec::new(),
            figures: Vec::new(),
            error: None,
        }
    }
}

impl From<&DocumentError> for ErrorOutput {
    fn from(error: &DocumentError) -> Self {
        let place = error.line_column();
        let counted = |number: usize| u64::try_from(number).unwrap_or(u64::MAX);
        Self {
            sentence: error.sentence(),
            path: error.path().map(|path| path.as_str().to_owned()),
            text_line: place.map(|(line, _)| counted(line)),
            text_column: place.map(|(_, column)| counted(column)),
        }
    }
}
