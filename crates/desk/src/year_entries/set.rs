//! A text typed or chosen in a field of the year.

use dewrun_document::{
    AirFrom, AirSource, AirStep, Follows, Input, Kept, Origin, Period, Setting, Space, SpaceYear,
};
use dewrun_quantity::Style;
use dewrun_run::library;

use super::{FOLLOWS, FROM, KINDS, Kind, NO_ROW, Numbered, PARTLY, SPACE, STEP, kind_of, times};
use crate::OpenProject;
use crate::entries::{Measured, enter, no};

/// What a field that is not there any more says.
const GONE: &str = "this is no part of the project any more.";
/// By day, when plant runs; and by night, when it rests: what a new period begins with.
const BY_DAY: (f64, f64) = (6.0, 20.0);
const BY_NIGHT: (f64, f64) = (20.0, 6.0);

type Taken = Result<(), String>;

/// Takes a text into a field of the year; an empty one leaves a number out, so that its row stands in.
///
/// Names that end in `add` and `remove` make and take away what stands in a list.
///
/// # Errors
/// What is wrong with it and what would be right, as a sentence.
pub fn enter_year(project: &mut OpenProject, name: &str, text: &str, style: Style) -> Taken {
    let mut changed = project.clone();
    let text = text.trim();
    let path: Vec<&str> = name.split('.').collect();
    let typed = Typed { text, style };
    match path.as_slice() {
        ["duct", "source", rest @ ..] => source(&mut changed, rest, &typed)?,
        ["duct", "fan_off", rest @ ..] => fan_off(&mut changed, rest, &typed)?,
        ["spaces", at, "year", rest @ ..] => space(&mut changed, at, rest, &typed)?,
        ["visits", field] => enter(&mut changed, &format!("air_path.{field}"), text, style)?,
        _ => return gone(),
    }
    *project = changed;
    Ok(())
}

/// What is taken into a field.
struct Typed<'a> {
    text: &'a str,
    style: Style,
}

impl Typed<'_> {
    fn number(&self, measured: Measured) -> Result<Input<f64>, String> {
        let value = measured.parse(self.text, self.style.units);
        value
            .map(Input::typed)
            .map_err(|error| no(self.text, &error))
    }

    fn left(&self, input: &mut Option<Input<f64>>, measured: Measured) -> Taken {
        *input = if self.text.is_empty() {
            None
        } else {
            Some(self.number(measured)?)
        };
        Ok(())
    }

    fn into<P>(&self, known: &[Numbered<P>], part: &mut P, field: &str) -> Taken {
        let found = known.iter().find(|one| one.field == field).ok_or(GONE)?;
        self.left((found.of)(part), found.measured)
    }
}

fn gone() -> Taken {
    Err(GONE.to_owned())
}

fn kept<T>(kept: Result<T, dewrun_document::DocumentError>) -> Result<T, String> {
    kept.map_err(|error| format!("{error}."))
}

fn source(project: &mut OpenProject, path: &[&str], typed: &Typed<'_>) -> Taken {
    let duct = &mut project.open_run_mut().ok_or(GONE)?.duct;
    let known = duct.source.as_ref().map(Kept::<AirSource>::get);
    let known = kept(known.transpose())?;
    if path == ["from"] && typed.text.is_empty() {
        duct.source = None;
        return Ok(());
    }
    let mut source = known.unwrap_or_else(|| AirSource {
        from: AirFrom::Outdoors,
        temperature_c: None,
        percent: None,
        settings: Vec::new(),
        file: None,
        steps: Vec::new(),
    });
    match path {
        ["from"] => from(&mut source, typed)?,
        ["temperature_c"] => typed.left(&mut source.temperature_c, Measured::Temperature)?,
        ["percent"] => typed.left(&mut source.percent, Measured::In("%"))?,
        ["settings", rest @ ..] => settings(&mut source.settings, rest, typed)?,
        ["steps", rest @ ..] => steps(&mut source.steps, rest, typed)?,
        _ => return gone(),
    }
    duct.source = Some(kept(Kept::<AirSource>::of(&source))?);
    Ok(())
}

fn from(source: &mut AirSource, typed: &Typed<'_>) -> Taken {
    let found = FROM.iter().find(|(_, word, _)| *word == typed.text);
    source.from = found.map(|(from, ..)| *from).ok_or(GONE)?;
    if source.from == AirFrom::Measured && source.file.is_none() {
        return Err("No file says what was measured in this duct. Open it above, by \"Open what was measured in the duct\".".to_owned());
    }
    Ok(())
}

fn steps(steps: &mut Vec<AirStep>, path: &[&str], typed: &Typed<'_>) -> Taken {
    let kind = |word: &str| KINDS.iter().find(|kind| kind.word == word).ok_or(GONE);
    if path == ["add"] {
        steps.push(begun(kind(typed.text)?));
        return Ok(());
    }
    let [at, rest @ ..] = path else {
        return gone();
    };
    let at = place(at)?;
    if rest == ["remove"] {
        return removed(steps, at);
    }
    let step = steps.get_mut(at).ok_or(GONE)?;
    match rest {
        ["kind"] => {
            let when = core::mem::take(&mut step.when);
            *step = begun(kind(typed.text)?);
            step.when = when;
        }
        ["when", rest @ ..] => periods(&mut step.when, rest, typed, BY_DAY)?,
        [field] if typed.text.is_empty() && is_needed(step, field) => {
            return Err(
                "nothing is typed, and nothing stands in for it. A number would be right."
                    .to_owned(),
            );
        }
        [field] => typed.into(&STEP, step, field)?,
        _ => return gone(),
    }
    Ok(())
}

/// A step with what one of its kind is usually like.
fn begun(kind: &Kind) -> AirStep {
    let [temperature_c, percent, share, moisture_share] = kind
        .begins
        .map(|span| span.map(|span| assumed(NO_ROW, span)));
    AirStep {
        kind: kind.kind,
        temperature_c,
        percent,
        share,
        moisture_share,
        when: Vec::new(),
    }
}

/// Whether a step can't be without a number.
fn is_needed(step: &AirStep, field: &str) -> bool {
    let numbers = STEP
        .iter()
        .zip(kind_of(step.kind).map_or([None; 4], |kind| kind.begins));
    numbers
        .filter(|(_, begins)| begins.is_some())
        .any(|(one, _)| one.field == field)
}

fn assumed(row: &str, [low, value, high]: [f64; 3]) -> Input<f64> {
    Input {
        value,
        origin: Origin::Assumed {
            row: row.to_owned(),
            low,
            high,
        },
    }
}

fn fan_off(project: &mut OpenProject, path: &[&str], typed: &Typed<'_>) -> Taken {
    let duct = &mut project.open_run_mut().ok_or(GONE)?.duct;
    let known = duct.fan_off.as_ref().map(Kept::<Vec<Period>>::get);
    let mut off = kept(known.transpose())?.unwrap_or_default();
    periods(&mut off, path, typed, BY_NIGHT)?;
    duct.fan_off = if off.is_empty() {
        None
    } else {
        Some(kept(Kept::<Vec<Period>>::of(&off))?)
    };
    Ok(())
}

fn space(project: &mut OpenProject, at: &str, path: &[&str], typed: &Typed<'_>) -> Taken {
    let space = project.project.spaces.get_mut(place(at)?).ok_or(GONE)?;
    if path == ["follows"] && typed.text.is_empty() {
        space.year = None;
        return Ok(());
    }
    let known = space.year.as_ref().map(Kept::<SpaceYear>::get);
    let mut year =
        kept(known.transpose())?.unwrap_or_else(|| SpaceYear::following(Follows::Settings));
    match path {
        ["follows"] => {
            let found = FOLLOWS.iter().find(|(_, word, _)| *word == typed.text);
            year.follows = found.map(|(follows, ..)| *follows).ok_or(GONE)?;
            if year.follows == Follows::Partly && year.share.is_none() {
                year.share = Some(share_of(space));
            }
        }
        ["share"] if typed.text.is_empty() => year.share = Some(share_of(space)),
        ["settings", rest @ ..] => settings(&mut year.settings, rest, typed)?,
        [field] => typed.into(&SPACE, &mut year, field)?,
        _ => return gone(),
    }
    space.year = Some(kept(Kept::<SpaceYear>::of(&year))?);
    Ok(())
}

/// How far its row says that a space follows outdoors.
fn share_of(space: &Space) -> Input<f64> {
    let row = match &space.temperature_c.origin {
        Origin::Assumed { row, .. } => library::find(library::spaces(), row),
        Origin::Typed | Origin::Measured { .. } => None,
    };
    match row.filter(|row| 0.0 < row.coupling.usual) {
        Some(row) => {
            let span = row.coupling;
            assumed(row.id, [span.low, span.usual, span.high])
        }
        None => assumed(NO_ROW, PARTLY),
    }
}

fn settings(settings: &mut Vec<Setting>, path: &[&str], typed: &Typed<'_>) -> Taken {
    if path == ["add"] {
        settings.push(Setting {
            when: between(BY_NIGHT),
            temperature_c: None,
            percent: None,
        });
        return Ok(());
    }
    let [at, field] = path else {
        return gone();
    };
    let at = place(at)?;
    if *field == "remove" {
        return removed(settings, at);
    }
    let setting = settings.get_mut(at).ok_or(GONE)?;
    match *field {
        "temperature_c" => typed.left(&mut setting.temperature_c, Measured::Temperature),
        "percent" => typed.left(&mut setting.percent, Measured::In("%")),
        field => times::take(&mut setting.when, field, typed.text),
    }
}

fn periods(
    periods: &mut Vec<Period>,
    path: &[&str],
    typed: &Typed<'_>,
    begins: (f64, f64),
) -> Taken {
    if path == ["add"] {
        periods.push(between(begins));
        return Ok(());
    }
    let [at, field] = path else {
        return gone();
    };
    let at = place(at)?;
    if *field == "remove" {
        return removed(periods, at);
    }
    times::take(periods.get_mut(at).ok_or(GONE)?, field, typed.text)
}

fn between((from_h, until_h): (f64, f64)) -> Period {
    Period {
        from_h: Some(from_h),
        until_h: Some(until_h),
        ..Period::default()
    }
}

fn removed<T>(all: &mut Vec<T>, at: usize) -> Taken {
    if all.len() <= at {
        return gone();
    }
    all.remove(at);
    Ok(())
}

fn place(at: &str) -> Result<usize, String> {
    at.parse().map_err(|_| GONE.to_owned())
}
