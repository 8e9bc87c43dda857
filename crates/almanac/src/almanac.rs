//! What the worker asks: files in pieces, the year in turns, and what is shown of it.

use dewrun_desk::style_of;
use dewrun_document::output::EnsembleOutput;
use dewrun_document::{AirFrom, AirSource, Kept, WeatherReference, read, write};
use dewrun_drawing::Room;
use dewrun_drawing::year::{
    Map, Year, cell_time, charts, hand, hour, months, sentence, square, square_told,
};
use dewrun_moist_air::Over;
use dewrun_sheet::{YearWorked, further};
use dewrun_weather::Understanding;

use crate::at_hour::project_at;
use crate::cures::Cures;
use crate::doubted;
use crate::file_told::file_told;
use crate::granted;
use crate::held::{Held, Place, Reading};
use crate::members::Ensemble;
use crate::opened;
use crate::troubles::Troubles;
use crate::year::{Found, March, Of};

/// Narrower than this, over the size of the text, months stand under each other.
const NARROW: f64 = 900.0;
/// So many files that were measured in ducts are held at once: projects have several runs.
const MOST_IN_DUCTS: usize = 4;
/// Seconds that a step to another hour goes by, as it is asked for in hours.
const HOUR_S: f64 = 3600.0;

/// What came of a turn at the year.
#[derive(Debug, Clone, PartialEq)]
pub enum Told {
    /// So much of it is done, 0 to 1.
    Going(f64),
    /// All of it: it can be shown.
    Done,
}

/// Holds a weather file and the year of the run that was asked about last.
#[derive(Default)]
pub struct Almanac {
    reading: Option<Reading>,
    pub(crate) held: Option<Held>,
    /// What was measured in ducts, the newest last.
    in_ducts: Vec<Held>,
    march: Option<March>,
    pub(crate) found: Option<Found>,
    ensemble: Option<Ensemble>,
    /// How sure the year was that was told last, and of what.
    doubt: Option<(Of, EnsembleOutput)>,
    /// Hours of a member that are done.
    done: usize,
    cures: Option<Cures>,
    pub(crate) troubles: Troubles,
}

impl Almanac {
    /// Begins to read a file for a place, as a project says of its own there, or as it is found where the text is empty; `over` says beside that over what humidities below 0 °C are, or that it is to be found.
    ///
    /// # Errors
    /// What the project says can't be understood, as a sentence.
    pub fn begin_reading(
        &mut self,
        (project, run): (&str, usize),
        place: Place,
        over: Option<Option<Over>>,
    ) -> Result<(), String> {
        let named = named(project, run)?;
        let own = match place {
            Place::Weather => named.weather,
            Place::InDuct => named.in_duct,
        };
        let mut said = own.map_or_else(
            || Ok(Understanding::default()),
            |file| file.understanding().map_err(|error| error.to_string()),
        )?;
        if let Some(over) = over {
            (said.dew_point_over, said.relative_over) = (over, over);
        }
        self.reading = Some(Reading::new(place, said));
        Ok(())
    }

    /// The files that the year of a run goes by and that are not held as the project says: for each its place and its hash.
    ///
    /// # Errors
    /// The project can't be understood, or names no weather, as a sentence.
    pub fn lacks(&self, project: &str, run: usize) -> Result<Vec<(Place, String)>, String> {
        let named = named(project, run)?;
        let weather = named.weather.ok_or("the project names no weather file")?;
        let mut lacks = Vec::new();
        if !self.held.as_ref().is_some_and(|held| held.is(&weather)) {
            lacks.push((Place::Weather, weather.sha256));
        }
        if let Some(file) = named.in_duct
            && !self.in_ducts.iter().any(|held| held.is(&file))
        {
            lacks.push((Place::InDuct, file.sha256));
        }
        Ok(lacks)
    }

    /// Takes the next piece of the file.
    ///
    /// # Errors
    /// Why the file can't be read, as a sentence; the one that is held stays.
    pub fn take_piece(&mut self, piece: &[u8]) -> Result<(), String> {
        let taken = match &mut self.reading {
            None => Err("no file is being read".to_owned()),
            Some(reading) => reading.take(piece),
        };
        if taken.is_err() {
            self.reading = None;
        }
        taken
    }

    /// The file is whole: it takes the place of the one that was held. Its hash in letters.
    ///
    /// # Errors
    /// The same.
    pub fn end_reading(&mut self, name: &str) -> Result<String, String> {
        let reading = self.reading.take().ok_or("no file is being read")?;
        let place = reading.place;
        let held = reading.end(name)?;
        let hash = held.hash();
        match place {
            Place::Weather => self.held = Some(held),
            Place::InDuct => {
                self.in_ducts.retain(|other| other.hash() != hash);
                self.in_ducts.push(held);
                let all = self.in_ducts.len();
                self.in_ducts.drain(..all.saturating_sub(MOST_IN_DUCTS));
            }
        }
        self.march = None;
        Ok(hash)
    }

    /// The hash of the file that is held, in letters; none where none is.
    #[must_use]
    pub fn hash(&self) -> Option<String> {
        self.held.as_ref().map(Held::hash)
    }

    /// What was understood of the files that a run's year goes by, as HTML; numbers begin with the style.
    #[must_use]
    pub fn files_told(&self, project: &str, run: usize, numbers: &[f64]) -> String {
        let (style, _) = style_of(numbers);
        let told = |held, place| file_told(held, place, style);
        let weather = self.held.as_ref();
        let mut all = weather.map_or_else(String::new, |held| told(held, Place::Weather));
        if let Some(held) = self.in_duct_of(project, run) {
            all.push_str(&told(held, Place::InDuct));
        }
        all
    }

    /// The project with the file that is held as its weather.
    ///
    /// # Errors
    /// Why there is none, as a sentence.
    pub fn with_weather(&self, project: &str) -> Result<String, String> {
        let held = self.held.as_ref().ok_or("no weather file is held")?;
        let mut project = read(project).map_err(|error| error.to_string())?;
        let kept = Kept::<WeatherReference>::of(&held.reference());
        project.weather = Some(kept.map_err(|error| error.to_string())?);
        write(&project).map_err(|error| error.to_string())
    }

    /// The project with the file that was read last of those measured in ducts as what the air of a run's duct is.
    ///
    /// Steps that were to bring outdoor air or a room's to the duct go: they lie before the place where it was measured.
    ///
    /// # Errors
    /// Why there is none, as a sentence.
    pub fn with_air_in_duct(&self, project: &str, run: usize) -> Result<String, String> {
        let held = self.in_ducts.last().ok_or("no such file is held")?;
        let mut project = read(project).map_err(|error| error.to_string())?;
        let entered = project.runs.get_mut(run).ok_or("there is no such run")?;
        let source = AirSource {
            from: AirFrom::Measured,
            temperature_c: None,
            percent: None,
            settings: Vec::new(),
            file: Some(held.reference()),
            steps: Vec::new(),
        };
        let kept = Kept::<AirSource>::of(&source).map_err(|error| error.to_string())?;
        entered.duct.source = Some(kept);
        write(&project).map_err(|error| error.to_string())
    }

    /// What was measured in the duct of a run, where its air is said to be that and the file is held.
    fn in_duct_of(&self, project: &str, run: usize) -> Option<&Held> {
        let file = named(project, run).ok()?.in_duct?;
        self.in_ducts.iter().find(|held| held.is(&file))
    }

    /// What the year of a run is that of.
    ///
    /// # Errors
    /// No weather file is held.
    pub(crate) fn of(&self, project: &str, run: usize) -> Result<Of, String> {
        let held = self.held.as_ref().ok_or("no weather file is held")?;
        Ok(Of::new(project, run, held, self.in_duct_of(project, run)))
    }

    /// Begins the year of a run; true where it is the one that was found last.
    ///
    /// # Errors
    /// Why there is none, as a sentence.
    pub fn begin_year(&mut self, project: &str, run: usize) -> Result<bool, String> {
        self.march = None;
        let of = self.of(project, run)?;
        let held = self.held.as_ref().ok_or("no weather file is held")?;
        if self.found.as_ref().is_some_and(|found| found.of.is(&of)) {
            return Ok(true);
        }
        self.march = Some(March::begin(of, held)?);
        Ok(false)
    }

    /// Goes on with it for a moment.
    pub fn turn(&mut self) -> Told {
        if let Some(share) = self.march.as_mut().and_then(March::turn) {
            return Told::Going(share);
        }
        if let Some(march) = self.march.take() {
            self.found = Some(march.end());
            self.cures = None;
        }
        Told::Done
    }

    /// Begins a member of the ensemble of a run's year, by its number, without one the year as it is entered; false where it has no answer.
    ///
    /// # Errors
    /// Why there is no ensemble, as a sentence.
    pub fn begin_member(
        &mut self,
        project: &str,
        run: usize,
        number: Option<u32>,
    ) -> Result<bool, String> {
        self.done = 0;
        self.ensemble(project, run).map(|all| all.begin(number))
    }

    /// Goes on with it for a moment; true when all of it is done.
    pub fn member_turn(&mut self) -> bool {
        let done = self.done;
        let until = self.ensemble.as_mut().and_then(|all| all.turn(done));
        self.done = until.unwrap_or(0);
        until.is_none()
    }

    /// What it came to, as numbers and hours to be carried; none of either where it has no answer.
    pub fn member(&mut self) -> (Vec<f64>, Vec<u8>) {
        self.ensemble
            .as_mut()
            .map_or_else(Default::default, Ensemble::end)
    }

    /// What the year of a run as it is entered came to, as numbers and hours to be carried; none where that is not the year that was found.
    pub fn entered_member(&mut self, project: &str, run: usize) -> Option<(Vec<f64>, Vec<u8>)> {
        let of = self.of(project, run).ok()?;
        let found = self.found.take_if(|found| found.of.is(&of))?;
        let member = self.ensemble(project, run);
        let member = member.map(|all| all.entered(&found.outcome)).ok();
        self.found = Some(found);
        member
    }

    /// How sure the year of a run is, as HTML: numbers begin with the style; the first of the members is the year as it is entered.
    ///
    /// # Errors
    /// Why that can't be told, as a sentence.
    pub fn doubt(
        &mut self,
        project: &str,
        run: usize,
        numbers: &[f64],
        members: &[&[f64]],
    ) -> Result<String, String> {
        let (style, _) = style_of(numbers);
        let held = self.held.clone().ok_or("no weather file is held")?;
        let (usual, members) = members.split_first().ok_or("there is no member")?;
        let told = self
            .ensemble(project, run)?
            .told(&held, usual, members, style)?;
        let html = doubted::html(&told, style);
        self.doubt = Some((self.of(project, run)?, told.output));
        Ok(html)
    }

    /// What a calculation sheet says of the year that was found, and of how sure it is where that was told, as text; numbers begin with the style.
    #[must_use]
    pub fn sheet(&mut self, numbers: &[f64]) -> String {
        let (style, _) = style_of(numbers);
        let Some(found) = &mut self.found else {
            return String::new();
        };
        found.year.style = style;
        let doubt = self.doubt.as_ref().filter(|(of, _)| found.of.is(of));
        let cures = self.cures.as_ref().filter(|cures| cures.are_of(&found.of));
        let remedies = cures.and_then(|cures| cures.output(style));
        let worked = YearWorked {
            output: &found.output,
            drawn: Some(&found.year),
            remedies: remedies.as_ref(),
            doubt: doubt.map(|(_, doubt)| doubt),
        };
        further(&worked, style).as_text()
    }

    fn ensemble(&mut self, project: &str, run: usize) -> Result<&mut Ensemble, String> {
        let of = self.of(project, run)?;
        let known = self.ensemble.take().filter(|known| known.is(&of));
        let ensemble = match known {
            Some(known) => known,
            None => Ensemble::new(of)?,
        };
        Ok(self.ensemble.insert(ensemble))
    }

    /// Begins to seek remedies of the year that was found, for the target of its project.
    ///
    /// # Errors
    /// Why there are none, as a sentence.
    pub fn begin_cures(&mut self) -> Result<(), String> {
        let found = self.found.as_ref().ok_or("no year is known")?;
        self.cures = None;
        self.cures = Some(Cures::begin(found)?);
        Ok(())
    }

    /// Goes on with that for a moment: how much is done, 1 when all is, and how many remedies are known.
    pub fn cure_turn(&mut self) -> (f64, usize) {
        let cures = self.cures.as_mut();
        cures.map_or((1.0, 0), |cures| (cures.turn(), cures.count()))
    }

    /// The remedies that are known as a table; after the style stands the column that ranks them.
    #[must_use]
    pub fn cures_told(&self, numbers: &[f64]) -> String {
        let (style, rest) = style_of(numbers);
        let rank = rest.first().copied().unwrap_or(0.0);
        let cures = self.cures.as_ref();
        cures.map_or_else(String::new, |cures| cures.told(style, rank))
    }

    /// The first of them as rows for the answer; numbers as there.
    #[must_use]
    pub fn first_cures(&self, numbers: &[f64]) -> String {
        let (style, rest) = style_of(numbers);
        let rank = rest.first().copied().unwrap_or(0.0);
        let cures = self.cures.as_ref();
        cures.map_or_else(String::new, |cures| cures.first(style, rank))
    }

    /// The project with the remedy of a number made.
    ///
    /// # Errors
    /// There is no such remedy, as a sentence.
    pub fn cured(&self, number: usize) -> Result<String, String> {
        let cures = self.cures.as_ref().ok_or("no remedies are known")?;
        cures.made(number)
    }

    /// The project with the duct's air and the spaces of one step of the year that was found.
    ///
    /// # Errors
    /// Why there is none, as a sentence.
    pub fn project_at(&self, at: usize) -> Result<String, String> {
        let found = self.found.as_ref().ok_or("no year is known")?;
        project_at(found, at)
    }

    /// A part of the year that was found, as text; after the style stand width and size of text, then the number of the map and of the step.
    #[must_use]
    pub fn shown(&mut self, part: &str, numbers: &[f64]) -> String {
        let (style, rest) = style_of(numbers);
        let Some(found) = &mut self.found else {
            return String::new();
        };
        found.year.style = style;
        match part {
            "granted" => granted::told(&found.granted),
            "square-told" => square_told(&found.year),
            _ => match part.strip_prefix("opened ") {
                Some(id) => opened::figure(&found.year, id),
                None => Asked::of(rest, &found.year).part(part, &found.year),
            },
        }
    }

    /// The hours of the year that was found in the dew square: see [`square`].
    #[must_use]
    pub fn square(&self) -> Vec<f64> {
        self.found
            .as_ref()
            .map_or_else(Vec::new, |found| square(&found.year))
    }

    /// The step at so many hours from another, or at a place in the calendar given as shares of its width and height; that with most water where neither is given.
    #[must_use]
    pub fn step(&self, numbers: &[f64]) -> usize {
        let Some(year) = self.found.as_ref().map(|found| &found.year) else {
            return 0;
        };
        match numbers {
            [at, by_h] => {
                let from = year.steps.get(whole(*at));
                let by = by_h * HOUR_S;
                from.map_or(0, |step| year.step_at(step.start_s + seconds(by)))
            }
            [_, across, down] => year.step_at(cell_time(year, *across, *down)),
            _ => year.worst_step(),
        }
    }
}

/// The files that the year of a run goes by.
#[derive(Default)]
struct Named {
    weather: Option<WeatherReference>,
    /// Where the air of its duct is said to be what was measured in it.
    in_duct: Option<WeatherReference>,
}

/// Those that a project names for a run; none for an empty text.
fn named(project: &str, run: usize) -> Result<Named, String> {
    if project.is_empty() {
        return Ok(Named::default());
    }
    let project = read(project).map_err(|error| error.to_string())?;
    let weather = project.weather.as_ref().map(Kept::<WeatherReference>::get);
    let run = project.runs.get(run);
    let source = run.and_then(|run| run.duct.source.as_ref());
    let source = source.map(Kept::<AirSource>::get).transpose();
    let source = source.map_err(|error| error.to_string())?;
    let measured = source.filter(|source| source.from == AirFrom::Measured);
    Ok(Named {
        weather: weather.transpose().map_err(|error| error.to_string())?,
        in_duct: measured.and_then(|source| source.file),
    })
}

/// What is asked of the year.
struct Asked {
    room: Room,
    map: Map,
    at: usize,
}

impl Asked {
    fn of(rest: &[f64], year: &Year) -> Self {
        let number = |place: usize| rest.get(place).copied();
        let map = number(2).and_then(|map| Map::ALL.get(whole(map)).copied());
        let at = number(3).map_or_else(|| year.worst_step(), whole);
        Self {
            room: Room {
                width: number(0).unwrap_or(Room::PAPER.width),
                text: number(1).unwrap_or(1.0),
            },
            map: map.unwrap_or_default(),
            at: at.min(year.steps.len().saturating_sub(1)),
        }
    }

    fn part(&self, part: &str, year: &Year) -> String {
        match part {
            "sentence" => sentence(year),
            "charts" => charts(year, self.room, self.map),
            "hand" => hand(year, self.room, self.at),
            "hour" => hour(year, self.at),
            "months" => months(year, self.room.width / self.room.text < NARROW),
            "maps" => self.maps(),
            _ => String::new(),
        }
    }

    /// The words by which another map is chosen.
    fn maps(&self) -> String {
        let word = |(number, map): (usize, Map)| {
            format!(
                "<button type=\"button\" class=\"dw-toggle__word\" data-map=\"{number}\" aria-pressed=\"{}\">{}</button>",
                map == self.map,
                map.word()
            )
        };
        Map::ALL.into_iter().enumerate().map(word).collect()
    }
}

/// A count that came as a number.
fn whole(number: f64) -> usize {
    dewrun_desk::count_of(number).unwrap_or(0)
}

/// Whole seconds.
#[expect(
    clippy::cast_possible_truncation,
    reason = "hours of a year in seconds, and the cast saturates"
)]
fn seconds(number: f64) -> i64 {
    number as i64
}
