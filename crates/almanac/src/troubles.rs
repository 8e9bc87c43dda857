//! The troubles of a run: its ensemble summed up once, its log read and weighed, and what is shown of both.

mod edit;
mod form;
mod without_weather;

use std::borrow::Cow;

use dewrun_desk::{OpenProject, style_of};
use dewrun_document::{Project, TroublesAsked, TroublesFound, TroublesSaid, read, troubles_found};
use dewrun_drawing::troubles::{
    Found as Drawn, Modelled as Shown, causes, in_words, listed, next_check, timeline,
};
use dewrun_drawing::year::Year;
use dewrun_drawing::{Room, svg};
use dewrun_ensemble::{Gathered, Kept, Member};
use dewrun_quantity::Style;
use dewrun_troubles::{Answers, Hours, Known, Modelled, places_in};

use crate::almanac::Almanac;
use crate::held::Held;
use crate::members::Ensemble;

/// What is known of the troubles of a run.
#[derive(Default)]
pub(crate) struct Troubles {
    /// The members that were summed up, by what they are known by.
    modelled: Option<(String, Modelled, usize)>,
    /// What was told last.
    told: Option<Told>,
}

/// What was found of a run's troubles, to be shown in parts.
struct Told {
    project: OpenProject,
    said: TroublesSaid,
    found: TroublesFound,
    /// What was modelled of the log's time; none without a weather file or a log.
    shown: Option<(Hours, Vec<f64>)>,
    limits: Option<[f64; 2]>,
    /// Over how many members in which weather file; none without either.
    weighed_in: Option<(usize, String)>,
}

/// A member as it was carried here: its numbers and its hours.
pub struct Carried<'a> {
    /// For [`Member::carried`].
    pub numbers: &'a [f64],
    /// For [`Kept::carried`].
    pub hours: &'a [u8],
}

impl Almanac {
    /// Whether the members of that name are summed up.
    #[must_use]
    pub fn knows_members(&self, key: &str) -> bool {
        let known = self.troubles.modelled.as_ref();
        known.is_some_and(|(known, ..)| known == key)
    }

    /// Sums up the members of a run's ensemble, by their numbers from 0 on; they are known by a name from then on.
    ///
    /// # Errors
    /// Why there is no ensemble, as a sentence.
    pub fn take_members(
        &mut self,
        key: &str,
        project: &str,
        run: usize,
        members: &[Carried<'_>],
    ) -> Result<(), String> {
        let of = self.of(project, run)?;
        let rows_each = crate::members::rows_of(&of.weather);
        let ensemble = Ensemble::new(of)?;
        let mut gathered = Gathered::default();
        for (number, one) in (0..).zip(members) {
            let member = Member::carried(ensemble.plan(), Some(number), one.numbers);
            let hours = Kept::carried(rows_each, one.hours);
            match member.zip(hours) {
                Some((member, hours)) => gathered.take(number, Ok(Member { hours, ..member })),
                None => gathered.has_none(number),
            }
        }
        let start_s = ensemble.start_s()?;
        let modelled = Modelled::of(&Known {
            plan: ensemble.plan(),
            gathered: &gathered,
            weights: None,
            start_s: &start_s,
        });
        let modelled = modelled.ok_or("no member of the ensemble has an answer")?;
        self.troubles.modelled = Some((key.to_owned(), modelled, gathered.count()));
        Ok(())
    }

    /// Ranks the causes of a run's troubles: by its answers, by the bytes of a log where there is one, and by what was seen; by the members of that name, or where there are none by what the run does as it is entered.
    ///
    /// # Errors
    /// Why the log can't be read, as a sentence; then they are ranked without it.
    pub fn rank_troubles(
        &mut self,
        key: &str,
        project: &str,
        run: usize,
        log: Option<&[u8]>,
    ) -> Result<(), String> {
        self.troubles.told = None;
        let project = opened(project, run)?;
        let said = TroublesSaid::of(&project, run).map_err(|error| error.to_string())?;
        let known = self.troubles.modelled.as_ref();
        let known = known.filter(|(known, ..)| known == key);
        let has_weather = known.is_some();
        let (modelled, members) = match known {
            Some((_, modelled, count)) => (Cow::Borrowed(modelled), *count),
            None => (Cow::Owned(without_weather::modelled(&project)?), 0),
        };
        let place = self.held.as_ref().map(|held| &held.weather.place);
        let mut answers = Answers::of_note(&project.note);
        answers.southern = place
            .and_then(|place| place.latitude_deg)
            .is_some_and(|degrees| degrees < 0.0);
        let run_id = project.open_run().map_or("", |run| run.id.as_str());
        // Days of a log mean nothing where no weather is known of them.
        let log = log.filter(|_| has_weather);
        let asked = |log| TroublesAsked {
            run: run_id,
            weather_file: self.held.as_ref().map_or("", |held| held.name.as_str()),
            weather_offset_h: self.held.as_ref().map_or(0.0, offset_h),
            members,
            modelled: &modelled,
            answers: &answers,
            log,
        };
        let (found, refused) = match troubles_found(&said, &asked(log)) {
            Ok(found) => (found, None),
            Err(sentence) => (troubles_found(&said, &asked(None))?, Some(sentence)),
        };
        let year = self.found.as_ref().map(|found| &found.year);
        let hours = (found.log.as_ref()).and_then(|log| Hours::of(&modelled, log));
        let shown = hours.map(|hours| {
            let dew_points = year.map_or_else(Vec::new, |year| dew_points(year, &hours));
            (hours, dew_points)
        });
        self.troubles.told = Some(Told {
            limits: year.and_then(|year| year.flow.as_ref()?.limits),
            weighed_in: has_weather.then(|| {
                let file = self.held.as_ref().map(|held| held.name.clone());
                (members, file.unwrap_or_default())
            }),
            project,
            said,
            found,
            shown,
        });
        refused.map_or(Ok(()), Err)
    }

    /// A part of what was found, as HTML; after the style stand width and size of text.
    #[must_use]
    pub fn troubles_shown(&self, part: &str, numbers: &[f64]) -> String {
        let (style, rest) = style_of(numbers);
        let Some(told) = &self.troubles.told else {
            return String::new();
        };
        let room = Room {
            width: rest.first().copied().unwrap_or(Room::PAPER.width),
            text: rest.get(1).copied().unwrap_or(1.0),
        };
        told.part(part, room, style)
    }

    /// The project with one thing about a run's troubles entered: its words stand at the head of `troubles::edit`.
    ///
    /// # Errors
    /// What is wrong with it, as a sentence.
    pub fn troubles_entered(
        &self,
        project: &str,
        run: usize,
        what: &str,
        log: Option<&[u8]>,
    ) -> Result<String, String> {
        let offset_h = self.held.as_ref().map_or(0.0, offset_h);
        edit::entered(opened(project, run)?, what, log, offset_h)
    }
}

impl Told {
    fn part(&self, part: &str, room: Room, style: Style) -> String {
        let drawn = Drawn {
            log: self.found.log.as_ref(),
            ranking: &self.found.ranking,
            spans: &self.found.spans,
            checks: &self.found.checks,
            low_point: self.found.low_point,
            style,
        };
        let shown = self.shown.as_ref().map(|(hours, dew_point_c)| Shown {
            hours,
            dew_point_c,
            limits: self.limits,
            style,
        });
        match part {
            "answers" => form::answers(&self.project),
            "read" => form::read_as(self.found.list.as_ref(), &self.found.read),
            "correct" => form::correct(self.found.list.as_ref(), &self.project),
            "seen" => form::seen(&self.said),
            "causes" => causes(&drawn),
            "words" if self.found.is_looked_for(&self.project.note) => in_words(&drawn),
            "check" => next_check(&drawn, true),
            "advice" => next_check(&drawn, false),
            "timeline" => shown
                .and_then(|shown| timeline(&drawn, &shown, room))
                .map_or_else(String::new, |scene| svg(&scene)),
            "table" => shown.map_or_else(String::new, |shown| listed(&drawn, &shown)),
            "rests" => self.rests(),
            _ => String::new(),
        }
    }

    /// On what the shares rest, in a sentence.
    fn rests(&self) -> String {
        let Some((members, file)) = &self.weighed_in else {
            return "Ranked by the answers and by what the run does as it is entered. A weather file under Year, that of the log\u{2019}s own days best of all, says in which hours water comes; only then is a log weighed.".to_owned();
        };
        let climate = if self.found.ranking.is_climate {
            " Its hours are those of another year."
        } else {
            ""
        };
        format!("Weighed over {members} plausible years of this run in {file}.{climate}")
    }
}

/// The project of a text, with a run open.
fn opened(project: &str, run: usize) -> Result<OpenProject, String> {
    let project: Project = read(project).map_err(|error| error.to_string())?;
    Ok(OpenProject { project, run })
}

/// Hours that the clock of a weather file is ahead of UTC.
fn offset_h(held: &Held) -> f64 {
    let weather = &held.weather;
    let said = weather.series.timing.utc_offset_h;
    said.or(weather.place.zone_h).unwrap_or(0.0)
}

/// The dew point of the duct's air in each hour of a log: its own, or else that of the same hour of another year.
fn dew_points(year: &Year, hours: &Hours) -> Vec<f64> {
    const HOUR_S: i64 = 3600;
    let start_s: Vec<i64> = year.steps.iter().map(|step| step.start_s).collect();
    let until_s = hours.first_s + i64::try_from(hours.len()).unwrap_or(0) * HOUR_S;
    let places = places_in(&start_s, hours.first_s, until_s);
    let places = places.map_or_else(Vec::new, |(places, _)| places);
    let at = |place: usize| {
        year.steps
            .get(place)
            .map_or(f64::NAN, |step| step.dew_point_c)
    };
    places.into_iter().map(at).collect()
}
