//! Which numbers of a year are assumed, and which are those of the run.

use dewrun_ensemble::{Follow, SeasonInput, SeasonSpan};
use dewrun_run::Run;
use dewrun_season::told::Space as Around;
use dewrun_season::{Change, Source};

use crate::field_path::Here;
use crate::{
    AirFrom, AirSource, DocumentError, FieldPath, Input, Origin, Project, SpaceYear, YearSaid,
};

/// What was found so far.
#[derive(Default)]
pub(super) struct Spans {
    /// Assumed numbers and their fields.
    pub(super) found: Vec<(SeasonSpan, FieldPath)>,
    pub(super) follows: Vec<Follow>,
}

/// Per cent in one.
const PERCENT: f64 = 0.01;

impl Spans {
    /// A number, if it is assumed: by its own origin or, where it is left out, by a row.
    fn add(
        &mut self,
        (input, scale): (SeasonInput, f64),
        given: Option<&Input<f64>>,
        path: FieldPath,
        said: &YearSaid,
    ) {
        let span = match given.map(|given| (&given.origin, given.value)) {
            Some((Origin::Assumed { row, low, high }, value)) => (row.clone(), value, *low, *high),
            Some(_) => return,
            None => {
                let Some(one) = said.assumed.iter().find(|one| one.path == path) else {
                    return;
                };
                (one.row.to_owned(), one.value, one.low, one.high)
            }
        };
        let (row, value, low, high) = span;
        let span = SeasonSpan {
            input,
            value: scale * value,
            row,
            low: scale * low,
            high: scale * high,
        };
        self.found.push((span, path));
    }

    /// The spaces that the run passes.
    pub(super) fn spaces(
        &mut self,
        project: &Project,
        run: &Run,
        said: &YearSaid,
    ) -> Result<(), DocumentError> {
        let all = Here::at("spaces");
        let is_met = |at: usize| {
            let mut legs = run.intake.iter().chain(&run.exhaust);
            legs.any(|leg| leg.space == at)
        };
        let pairs = project.spaces.iter().zip(&said.season.spaces).enumerate();
        for (at, (space, around)) in pairs.filter(|(at, _)| is_met(*at)) {
            let place = all.index(at);
            let here = place.field("year");
            let year = space.year.as_ref();
            let year = year.map(|year| year.get_at(&here)).transpose()?;
            let year = year.as_ref();
            let mut add =
                |field: &'static str, (input, scale), of: fn(&SpaceYear) -> &Option<Input<f64>>| {
                    let given = year.and_then(|year| of(year).as_ref());
                    self.add((input, scale), given, here.field(field).path(), said);
                };
            match around.space {
                Around::Room { .. } => self.follows.extend([Follow::Space(at), Follow::Wind(at)]),
                Around::Coupled { .. } => {
                    add("share", (SeasonInput::SpaceShare(at), 1.0), |year| {
                        &year.share
                    });
                    add("room_c", (SeasonInput::RoomTemperature(at), 1.0), |year| {
                        &year.room_c
                    });
                    add(
                        "room_percent",
                        (SeasonInput::RoomHumidity(at), PERCENT),
                        |year| &year.room_percent,
                    );
                    add(
                        "roof_absorbs",
                        (SeasonInput::RoofAbsorbs(at), 1.0),
                        |year| &year.roof_absorbs,
                    );
                    self.follows.push(Follow::Wind(at));
                }
                Around::Outdoors { .. } => {
                    add("sky_share", (SeasonInput::SkyShare(at), 1.0), |year| {
                        &year.sky_share
                    });
                    add("wind_share", (SeasonInput::WindShare(at), 1.0), |year| {
                        &year.wind_share
                    });
                }
            }
        }
        Ok(())
    }

    /// Where the air of the duct comes from.
    pub(super) fn duct(
        &mut self,
        project: &Project,
        run_index: usize,
        said: &YearSaid,
    ) -> Result<(), DocumentError> {
        let Some(source) = project.runs.get(run_index).map(|run| &run.duct.source) else {
            return Ok(());
        };
        let runs = Here::at("runs");
        let run = runs.index(run_index);
        let duct = run.field("duct");
        let here = duct.field("source");
        match source {
            Some(source) => self.source(&source.get_at(&here)?, &here, said),
            None => self.as_the_duct(said),
        }
        Ok(())
    }

    /// Nothing is said: room and steps are those of the duct's air as entered.
    fn as_the_duct(&mut self, said: &YearSaid) {
        if matches!(said.season.source, Source::Room { .. }) {
            let both = [Follow::SourceTemperature, Follow::SourceHumidity];
            self.follows.extend(both);
        }
        for (at, step) in said.season.steps.iter().enumerate() {
            match step.change {
                Change::Humidified(..) => self.follows.push(Follow::StepHumidity(at)),
                _ => self.follows.push(Follow::StepTemperature(at)),
            }
        }
    }

    /// Fields of one place: what each is called, what it is, in which scale, and what is given of it.
    fn add_all<const N: usize>(
        &mut self,
        fields: [(&'static str, SeasonInput, f64, &Option<Input<f64>>); N],
        here: &Here<'_>,
        said: &YearSaid,
    ) {
        for (field, input, scale, given) in fields {
            let path = here.field(field).path();
            self.add((input, scale), given.as_ref(), path, said);
        }
    }

    fn source(&mut self, source: &AirSource, here: &Here<'_>, said: &YearSaid) {
        if source.from == AirFrom::Room {
            let fields = [
                (
                    "temperature_c",
                    SeasonInput::SourceTemperature,
                    1.0,
                    &source.temperature_c,
                ),
                (
                    "percent",
                    SeasonInput::SourceHumidity,
                    PERCENT,
                    &source.percent,
                ),
            ];
            self.add_all(fields, here, said);
            if source.temperature_c.is_none() {
                self.follows.push(Follow::SourceTemperature);
            }
            if source.percent.is_none() {
                self.follows.push(Follow::SourceHumidity);
            }
        }
        let steps = here.field("steps");
        for (at, step) in source.steps.iter().enumerate() {
            let here = steps.index(at);
            let fields = [
                (
                    "temperature_c",
                    SeasonInput::StepTemperature(at),
                    1.0,
                    &step.temperature_c,
                ),
                (
                    "percent",
                    SeasonInput::StepHumidity(at),
                    PERCENT,
                    &step.percent,
                ),
                ("share", SeasonInput::StepShare(at), 1.0, &step.share),
                (
                    "moisture_share",
                    SeasonInput::StepMoisture(at),
                    1.0,
                    &step.moisture_share,
                ),
            ];
            self.add_all(fields, &here, said);
        }
    }
}
