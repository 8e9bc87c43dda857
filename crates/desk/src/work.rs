//! What the page's second module is asked for by name, and how its numbers are read.
//!
//! Who asks does not know where it is done: the same function answers in a worker, on the page and in a test.

use dewrun_advice::{BoundaryPoint, Limit, SpaceLimit, StayingDry, TubeLimit};
use dewrun_document::write;
use dewrun_drawing::{Room, Sheet, SquareHours};
use dewrun_quantity::{DecimalMark, Length, Style, Temperature, Units};
use dewrun_run::Tube;

use crate::OpenProject;

/// The kinds of question.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Work {
    /// What a run would still take dry; read back by [`limits_of`].
    StayingDry,
    /// The same as rows of a table, as HTML; after the style stand the numbers that were found.
    StayingDryTold,
    /// The dry boundary over the width of the dew square; asked for as it.
    DryBoundary,
    /// The dew square, as SVG; see [`SquareAsked`].
    DewSquare,
    /// The same as tables, as HTML; asked for as it.
    DewSquareTables,
    /// How sure the answer is: numbers that may stand behind the style where the answer is asked for.
    Doubt,
    /// The answer's sentence with water and air, as HTML; of a [`Style`].
    Sentence,
    /// The same where nothing is to be opened.
    PlainSentence,
    /// What stands beside it, as HTML; of a [`Style`].
    Beside,
    /// The assumed values that the answer rests on, and how each is measured, as HTML; of a [`Style`].
    RestsOn,
    /// What is known besides, to be folded away, as HTML within its element; of a [`Style`].
    More,
    /// A figure opened, as HTML; of a [`Style`]. After the name stand the figure's id, its spot and, where there is one, the id of the figure before.
    Opened,
    /// The elevation with its water, as SVG; after the style the tube, the run whose tube is drawn thin under it and the sheet, see [`ElevationAsked`].
    Elevation,
    /// To what scale it is; asked for as it.
    ElevationNote,
    /// Where its handles and labels lie; asked for as it, and taken by [`Elevation::take_places`](dewrun_drawing::Elevation::take_places).
    ElevationPlaces,
    /// The sentence of the section Airflow, as HTML; of a [`Style`], as all its parts.
    Airflow,
    /// Its charts of pressure, budget and transport time; after the style width and size of text.
    AirflowCharts,
    /// States, faults and limits; after the style width, size of text and, while a hand holds them, the limits, %.
    AirflowLimits,
    /// All of it as tables; as for the limits.
    AirflowTables,
    /// Remedies with before and after, as HTML; of a [`Style`].
    Remedies,
    /// The project file with a remedy made; its number from 0 stands after the name.
    Remedied,
    /// The section Sheets, as HTML; of a [`Style`].
    Sheets,
    /// The calculation sheet's pages, as HTML; of a [`Style`]. After the name stand the fields `paper`, `date`, `revision` and `year`, what the sheet says of a year as text.
    Calculation,
    /// The same as a document of its own.
    CalculationDocument,
    /// The site card's sheets, as HTML; of a [`Style`]. After the name stand the fields `paper`, `page`, `date`, `revision`.
    SiteCard,
    /// The same as a document of its own.
    SiteDocument,
    /// The service card's sheets, as HTML; of a [`Style`]. After the name stand the fields of the site card and `cause`, what is told of the cause as text.
    ServiceCard,
    /// The same as a document of its own.
    ServiceDocument,
    /// What each field of a visit's form says; of a [`Style`]. After the name stand the fields.
    VisitTold,
    /// The project with the visit that a form is, or what is wrong with it; of a [`Style`]. After the name stand the fields.
    WithVisit,
    /// The stopwatch as it stands; of a [`Style`], the moment, and when its button was pressed, s. After the name stand the fields of the visit.
    Stopwatch,
    /// The open project, the number of its run and the style, parted by U+001F, for the worker that marches its year; of a [`Style`].
    YearOf,
    /// The fields of the installation, as HTML; of a [`Style`].
    Entries,
    /// The project file with a text taken into one of them; the field's name and the text stand after the name of the kind.
    Entered,
    /// The fields of the year, as HTML; of a [`Style`].
    YearEntries,
    /// As [`Work::Entered`], of those.
    YearEntered,
    /// What counts as dry enough, as a sentence with blanks, as HTML; of a [`Style`].
    Target,
    /// As [`Work::Entered`], of those.
    TargetEntered,
}

/// All kinds.
const ALL: &[Work] = &[
    Work::StayingDry,
    Work::StayingDryTold,
    Work::DryBoundary,
    Work::DewSquare,
    Work::DewSquareTables,
    Work::Doubt,
    Work::Sentence,
    Work::PlainSentence,
    Work::Beside,
    Work::RestsOn,
    Work::More,
    Work::Opened,
    Work::Elevation,
    Work::ElevationNote,
    Work::ElevationPlaces,
    Work::Airflow,
    Work::AirflowCharts,
    Work::AirflowLimits,
    Work::AirflowTables,
    Work::Remedies,
    Work::Remedied,
    Work::Sheets,
    Work::Calculation,
    Work::CalculationDocument,
    Work::SiteCard,
    Work::SiteDocument,
    Work::ServiceCard,
    Work::ServiceDocument,
    Work::VisitTold,
    Work::WithVisit,
    Work::Stopwatch,
    Work::YearOf,
    Work::Entries,
    Work::Entered,
    Work::YearEntries,
    Work::YearEntered,
    Work::Target,
    Work::TargetEntered,
];

impl Work {
    /// The word by which it is asked for.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::StayingDry => "staying-dry",
            Self::StayingDryTold => "staying-dry-told",
            Self::DryBoundary => "dry-boundary",
            Self::DewSquare => "dew-square",
            Self::DewSquareTables => "dew-square-tables",
            Self::Doubt => "doubt",
            Self::Sentence => "sentence",
            Self::PlainSentence => "plain-sentence",
            Self::Beside => "beside",
            Self::RestsOn => "rests-on",
            Self::More => "more",
            Self::Opened => "opened",
            Self::Elevation => "elevation",
            Self::ElevationNote => "elevation-note",
            Self::ElevationPlaces => "elevation-places",
            Self::Airflow => "airflow",
            Self::AirflowCharts => "airflow-charts",
            Self::AirflowLimits => "airflow-limits",
            Self::AirflowTables => "airflow-tables",
            Self::Remedies => "remedies",
            Self::Remedied => "remedied",
            Self::Sheets => "sheets",
            Self::Calculation => "calculation",
            Self::CalculationDocument => "calculation-document",
            Self::SiteCard => "site-card",
            Self::SiteDocument => "site-document",
            Self::ServiceCard => "service-card",
            Self::ServiceDocument => "service-document",
            Self::VisitTold => "visit-told",
            Self::WithVisit => "with-visit",
            Self::Stopwatch => "stopwatch",
            Self::YearOf => "year-of",
            Self::Entries => "entries",
            Self::Entered => "entered",
            Self::YearEntries => "year-entries",
            Self::YearEntered => "year-entered",
            Self::Target => "target",
            Self::TargetEntered => "target-entered",
        }
    }

    /// The kind of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        ALL.iter().copied().find(|work| work.name() == name)
    }
}

/// The text that a question gives of the project.
///
/// # Errors
/// The project can't be written, as a sentence.
pub fn project_text(project: &OpenProject) -> Result<String, String> {
    write(project).map_err(|error| error.to_string())
}

/// How numbers are shown, for those questions whose numbers begin with it.
#[must_use]
pub fn style_as_numbers(style: Style) -> [f64; 2] {
    let number = |is: bool| f64::from(u8::from(is));
    [
        number(style.units == Units::InchPound),
        number(style.mark == DecimalMark::Comma),
    ]
}

/// The style that numbers begin with, the usual one where they do not, and the rest of them.
#[must_use]
pub fn style_of(numbers: &[f64]) -> (Style, &[f64]) {
    let [units, mark, rest @ ..] = numbers else {
        return (Style::default(), &[]);
    };
    let units = if *units == 0.0 {
        Units::Si
    } else {
        Units::InchPound
    };
    let mark = if *mark == 0.0 {
        DecimalMark::Point
    } else {
        DecimalMark::Comma
    };
    (Style { units, mark }, rest)
}

/// What is asked of an elevation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ElevationAsked {
    /// How numbers are shown.
    pub style: Style,
    /// The tube.
    pub tube: Tube,
    /// The run whose tube is drawn thin under it.
    pub compared: Option<usize>,
    /// What it is drawn on.
    pub sheet: Sheet,
}

impl ElevationAsked {
    /// The question in numbers.
    #[must_use]
    pub fn as_numbers(&self) -> Vec<f64> {
        let mut numbers = style_as_numbers(self.style).to_vec();
        numbers.push(f64::from(u8::from(self.tube == Tube::Exhaust)));
        numbers.push(self.compared.map_or(NONE, count_as_number));
        numbers.extend(self.sheet.as_numbers());
        numbers
    }

    /// What numbers ask for; none where they are no such question.
    #[must_use]
    pub fn of(numbers: &[f64]) -> Option<Self> {
        let (style, [tube, compared, sheet @ ..]) = style_of(numbers) else {
            return None;
        };
        Some(Self {
            style,
            tube: if *tube == 0.0 {
                Tube::Intake
            } else {
                Tube::Exhaust
            },
            compared: count_of(*compared),
            sheet: Sheet::of(sheet)?,
        })
    }
}

/// What is asked of the dew square.
#[derive(Debug, Clone, PartialEq)]
pub struct SquareAsked {
    /// How numbers are shown.
    pub style: Style,
    /// The room that there is.
    pub room: Room,
    /// The dry boundary, as far as it is known.
    pub boundary: Vec<BoundaryPoint>,
    /// The hours of a year.
    pub year: Vec<SquareHours>,
}

impl SquareAsked {
    /// What numbers ask for: after the style width and size of text, how many numbers of a boundary there are, these, and those of a year; none where they are no such question.
    #[must_use]
    pub fn of(numbers: &[f64]) -> Option<Self> {
        let (style, [width, text, count, rest @ ..]) = style_of(numbers) else {
            return None;
        };
        let (boundary, year) = rest.split_at_checked(count_of(*count)?)?;
        Some(Self {
            style,
            room: Room {
                width: *width,
                text: *text,
            },
            boundary: boundary_of(boundary)?,
            year: SquareHours::of(year),
        })
    }
}

/// Duct temperature; then of duct air, spaces and tube whether there is a limit and where; the tube's leg and whether it ends there; the spaces.
#[must_use]
pub fn limits_as_numbers(found: &StayingDry) -> Vec<f64> {
    let t_c = |t: Temperature| t.to_celsius();
    let mut numbers = vec![found.duct_temperature.to_celsius()];
    numbers.extend(limit_as_numbers(found.duct_air.map(t_c)));
    numbers.extend(limit_as_numbers(found.space.temperature.map(t_c)));
    numbers.extend(limit_as_numbers(found.tube.length.map(Length::to_metres)));
    numbers.push(count_as_number(found.tube.leg));
    numbers.push(f64::from(u8::from(found.tube.at_end_of_leg)));
    numbers.extend(found.space.spaces.iter().copied().map(count_as_number));
    numbers
}

/// What [`Work::StayingDry`] found; none where the numbers are no such answer.
#[must_use]
pub fn limits_of(numbers: &[f64]) -> Option<StayingDry> {
    let [
        t,
        air_is,
        air,
        space_is,
        space,
        tube_is,
        tube,
        leg,
        ends,
        spaces @ ..,
    ] = numbers
    else {
        return None;
    };
    Some(StayingDry {
        duct_temperature: Temperature::celsius(*t),
        duct_air: limit_of(*air_is, *air)?.map(Temperature::celsius),
        space: SpaceLimit {
            temperature: limit_of(*space_is, *space)?.map(Temperature::celsius),
            spaces: spaces
                .iter()
                .map(|at| count_of(*at))
                .collect::<Option<_>>()?,
        },
        tube: TubeLimit {
            length: limit_of(*tube_is, *tube)?.map(Length::metres),
            leg: count_of(*leg)?,
            at_end_of_leg: *ends != 0.0,
        },
    })
}

/// Of each point the duct temperature, whether there is a limit and where.
#[must_use]
pub fn boundary_as_numbers(found: &[BoundaryPoint]) -> Vec<f64> {
    let point = |point: &BoundaryPoint| {
        let [is, at] = limit_as_numbers(point.dew_point.map(|t| t.to_celsius()));
        [point.temperature.to_celsius(), is, at]
    };
    found.iter().flat_map(point).collect()
}

/// What [`Work::DryBoundary`] found; none where the numbers are no such answer.
#[must_use]
pub fn boundary_of(numbers: &[f64]) -> Option<Vec<BoundaryPoint>> {
    let (points, rest) = numbers.as_chunks::<3>();
    let point = |[t, is, at]: &[f64; 3]| {
        Some(BoundaryPoint {
            temperature: Temperature::celsius(*t),
            dew_point: limit_of(*is, *at)?.map(Temperature::celsius),
        })
    };
    rest.is_empty()
        .then(|| points.iter().map(point).collect())
        .flatten()
}

/// No position.
const NONE: f64 = -1.0;
const AT: f64 = 0.0;
const ANY: f64 = 1.0;
const NEVER: f64 = 2.0;

fn limit_as_numbers(limit: Limit<f64>) -> [f64; 2] {
    match limit {
        Limit::At(value) => [AT, value],
        Limit::Any => [ANY, 0.0],
        Limit::Never => [NEVER, 0.0],
    }
}

fn limit_of(is: f64, at: f64) -> Option<Limit<f64>> {
    match is {
        AT => Some(Limit::At(at)),
        ANY => Some(Limit::Any),
        NEVER => Some(Limit::Never),
        _ => None,
    }
}

/// A count or a position as a number; no project has so many parts that it would not be one.
#[must_use]
pub fn count_as_number(at: usize) -> f64 {
    u32::try_from(at).map_or(f64::INFINITY, f64::from)
}

/// The count or the position that a number says; none where it is no count.
#[must_use]
#[allow(
    clippy::cast_possible_truncation,
    reason = "what the cast changed is noticed in the line after it"
)]
pub fn count_of(number: f64) -> Option<usize> {
    let at = number as usize;
    (count_as_number(at) == number).then_some(at)
}

#[cfg(test)]
mod tests {
    use dewrun_drawing::{Held, Point, Room};

    use super::*;

    #[test]
    fn numbers_of_no_answer_are_none() {
        assert_eq!(limits_of(&[1.0, 2.0]), None, "too few");
        assert_eq!(boundary_of(&[1.0, 7.0, 0.0]), None, "no such limit");
        assert_eq!(boundary_of(&[1.0, 0.0]), None, "half a point");
    }

    #[test]
    fn styles_come_back() {
        for units in [Units::Si, Units::InchPound] {
            for mark in [DecimalMark::Point, DecimalMark::Comma] {
                let style = Style { units, mark };
                let mut numbers = style_as_numbers(style).to_vec();
                numbers.push(7.0);
                assert_eq!(style_of(&numbers), (style, &[7.0][..]), "and what follows");
            }
        }
    }

    #[test]
    fn questions_about_an_elevation_come_back() {
        let room = Room {
            width: 720.5,
            text: 1.25,
        };
        let held = Held {
            px_per_m: 61.0,
            heights: 2.0,
            falls: 6.0,
            inlet: Point::new(120.0, 80.5),
            floor: 340.0,
        };
        for (tube, compared, held) in [
            (Tube::Intake, None, None),
            (Tube::Exhaust, Some(0), Some(held)),
            (Tube::Intake, Some(7), Some(held)),
        ] {
            let sheet = Sheet {
                room,
                on_paper: compared.is_none(),
                held,
            };
            let asked = ElevationAsked {
                style: Style::default(),
                tube,
                compared,
                sheet,
            };
            let numbers = asked.as_numbers();
            assert_eq!(ElevationAsked::of(&numbers), Some(asked), "{numbers:?}");
            let short = numbers.get(..4).unwrap_or_default();
            assert_eq!(ElevationAsked::of(short), None, "without a sheet");
        }
    }

    #[test]
    fn each_kind_is_found_by_its_name() {
        for work in ALL {
            assert_eq!(Work::named(work.name()), Some(*work), "its own");
        }
        assert_eq!(Work::named("tea"), None, "no such work");
    }
}
