//! What is written down at a visit, as a person types it, and what each reading says against what is expected.

use dewrun_document::{ExpectedReading, Occasion, Reading, Visit, VisitedTube, WaterFound, limits};
use dewrun_quantity::measure::{AIR_FLOW, DRAUGHT};
use dewrun_quantity::parse::{self, ParseError, split_unit};
use dewrun_quantity::{Length, Limits, Pressure, Style, Time, Units, VolumeFlow};
use dewrun_run::{ExpectedOnSite, FilterOnSite, Finding, OnSite, Tube};

/// A millilitre of water is a gram; an avoirdupois ounce is 28.349 523 125 g, a US fluid ounce 29.573 529 562 5 mL.
const OUNCE_G: f64 = 28.349_523_125;
const FLUID_OUNCE_G: f64 = 29.573_529_562_5;

/// A field of the form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum VisitField {
    /// Airflow at the sensor.
    Airflow,
    /// Static pressure in the duct.
    DuctStatic,
    /// Suction in the tube.
    Suction,
    /// Time to the first smoke.
    FirstSmoke,
    /// Time to nine tenths of it.
    NinetyPercent,
}

/// Where a visit looks: places at which water may stand, and where the suction is measured.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct VisitPlaces {
    /// Traps, missing traps and low points, in the order of the tubes.
    pub water: Vec<(Tube, Length)>,
    /// Along the intake tube; none where it is measured at the detector.
    pub suction: Option<Length>,
}

impl VisitField {
    /// All readings, in the order of the form.
    pub const ALL: [Self; 5] = [
        Self::Airflow,
        Self::DuctStatic,
        Self::Suction,
        Self::FirstSmoke,
        Self::NinetyPercent,
    ];

    /// Its name in the form, which is that in the file.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Airflow => "airflow_l_min",
            Self::DuctStatic => "duct_static_pa",
            Self::Suction => "suction_pa",
            Self::FirstSmoke => "first_smoke_s",
            Self::NinetyPercent => "ninety_percent_s",
        }
    }

    /// What people call it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Airflow => "Airflow",
            Self::DuctStatic => "Duct static",
            Self::Suction => "Suction in the tube",
            Self::FirstSmoke => "First smoke",
            Self::NinetyPercent => "90\u{a0}% of it",
        }
    }

    /// Its unit.
    #[must_use]
    pub fn unit(self, style: Style) -> &'static str {
        match self {
            Self::Airflow => AIR_FLOW.unit(style.units).name,
            Self::DuctStatic | Self::Suction => DRAUGHT.unit(style.units).name,
            Self::FirstSmoke | Self::NinetyPercent => "s",
        }
    }

    /// What is expected of it, in the unit of the file.
    #[must_use]
    pub fn expected(self, expected: &OnSite) -> Option<ExpectedOnSite<f64>> {
        let seconds = |span: ExpectedOnSite<Time>| span.map(Time::to_seconds);
        match self {
            Self::Airflow => Some(expected.airflow.map(VolumeFlow::to_litres_per_minute)),
            Self::DuctStatic => None,
            Self::Suction => Some(expected.suction.map(Pressure::to_pascals)),
            Self::FirstSmoke => expected.first_smoke.map(seconds),
            Self::NinetyPercent => expected.ninety_percent.map(seconds),
        }
    }

    /// A number in the unit of the file as people read it.
    #[must_use]
    pub fn show(self, value: f64, style: Style) -> String {
        match self {
            Self::Airflow => {
                AIR_FLOW
                    .show(VolumeFlow::litres_per_minute(value), style)
                    .number
            }
            Self::DuctStatic | Self::Suction => {
                DRAUGHT.show(Pressure::pascals(value), style).number
            }
            Self::FirstSmoke | Self::NinetyPercent => {
                dewrun_quantity::format::significant(value, 3, 1, style.mark)
            }
        }
    }

    /// What a reading says against what is expected, in words; nothing where nothing is expected.
    #[must_use]
    pub fn against(self, value: f64, span: &ExpectedOnSite<f64>, style: Style) -> String {
        let number = |value: f64| self.show(value, style);
        let band = format!(
            "{} to {}\u{a0}{}",
            number(span.low),
            number(span.high),
            self.unit(style)
        );
        match span.finding(value) {
            Finding::Below => format!("Below the span of {band}."),
            Finding::Within => format!("Within the span of {band}."),
            Finding::Above => format!("Above the span of {band}."),
        }
    }

    fn limits(self) -> Option<Limits> {
        let mut all = limits::READINGS.iter();
        let found = all.find(|(name, _)| *name == self.name());
        found.map(|(_, limits)| *limits)
    }

    fn read(self, text: &str, style: Style) -> Result<f64, ParseError> {
        Ok(match self {
            Self::Airflow => AIR_FLOW.parse(text, style.units)?.to_litres_per_minute(),
            Self::DuctStatic | Self::Suction => DRAUGHT.parse(text, style.units)?.to_pascals(),
            Self::FirstSmoke | Self::NinetyPercent => {
                parse::number(text.trim().trim_end_matches(['s', ' ', '\u{a0}']))?
            }
        })
    }

    /// What was typed, in the unit of the file; none where nothing was.
    ///
    /// # Errors
    /// What is wrong with it, and what would be right, as a sentence.
    pub fn take(self, text: &str, style: Style) -> Result<Option<f64>, String> {
        if text.trim().is_empty() {
            return Ok(None);
        }
        let value = self
            .read(text, style)
            .map_err(|error| sentence(&error.to_string()))?;
        let Some(limits) = self.limits() else {
            return Ok(Some(value));
        };
        match limits.check(value) {
            Ok(_) => Ok(Some(value)),
            Err(error) => Err(sentence(&error.to_string())),
        }
    }
}

/// Water that was taken out, as a person types it: grams or millilitres, or what the unit behind it says.
///
/// # Errors
/// What is wrong with it, as a sentence.
pub fn water_g(text: &str, style: Style) -> Result<Option<f64>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let (number, unit) = match split_unit(text.trim()) {
        ("", _) => (text.trim(), ""),
        parts => parts,
    };
    let number = parse::number(number).map_err(|error| sentence(&error.to_string()))?;
    let factor = match (unit, style.units) {
        ("", Units::Si) | ("g" | "mL" | "ml", _) => 1.0,
        ("kg" | "L" | "l", _) => 1000.0,
        ("", Units::InchPound) | ("oz", _) => OUNCE_G,
        ("fl oz", _) => FLUID_OUNCE_G,
        _ => {
            return Err(format!(
                "Water in {unit} is not understood: g, mL, L, kg, oz or fl oz."
            ));
        }
    };
    let water = number * factor;
    match limits::WATER_G.check(water) {
        Ok(_) => Ok(Some(water)),
        Err(error) => Err(sentence(&error.to_string())),
    }
}

/// The visit that a filled form is, each reading with what is expected of it.
///
/// `fields` are names and what was typed: those of [`VisitField`], `water-0` and on for the places, `on`, `by`, `occasion`, `note`.
///
/// # Errors
/// For each field that is wrong, its name and a sentence; of a form without anything in it that one thing is needed.
pub fn visit_of(
    fields: &[(&str, &str)],
    places: &VisitPlaces,
    expected: &OnSite,
    style: Style,
) -> Result<Visit, Vec<(String, String)>> {
    let text = |name: &str| {
        let found = fields.iter().find(|(known, _)| *known == name);
        found.map_or("", |(_, text)| *text)
    };
    let mut wrong = Vec::new();
    let mut reading = |field: VisitField| {
        let taken = field.take(text(field.name()), style);
        let value = taken.unwrap_or_else(|sentence| {
            wrong.push((field.name().to_owned(), sentence));
            None
        })?;
        let expected = field.expected(expected).map(|span| ExpectedReading {
            usual: span.usual,
            low: span.low,
            high: span.high,
        });
        Some(Reading { value, expected })
    };
    let mut visit = Visit {
        on: text("on").to_owned(),
        by: text("by").to_owned(),
        occasion: occasion(fields),
        airflow_l_min: reading(VisitField::Airflow),
        duct_static_pa: reading(VisitField::DuctStatic),
        suction_pa: reading(VisitField::Suction),
        suction_at_m: None,
        first_smoke_s: reading(VisitField::FirstSmoke),
        ninety_percent_s: reading(VisitField::NinetyPercent),
        water: Vec::new(),
        note: text("note").to_owned(),
    };
    if visit.suction_pa.is_some() {
        visit.suction_at_m = places.suction.map(Length::to_metres);
    }
    for (number, (tube, at)) in places.water.iter().enumerate() {
        let name = format!("water-{number}");
        match water_g(text(&name), style) {
            Ok(None) => {}
            Ok(Some(water_g)) => visit.water.push(WaterFound {
                tube: match tube {
                    Tube::Intake => VisitedTube::Intake,
                    Tube::Exhaust => VisitedTube::Exhaust,
                },
                at_m: at.to_metres(),
                water_g,
            }),
            Err(sentence) => wrong.push((name, sentence)),
        }
    }
    if visit.on.is_empty() {
        wrong.push(("on".to_owned(), "The day is needed.".to_owned()));
    }
    if wrong.is_empty() && is_empty(&visit) {
        let sentence = "Nothing is written down yet: a reading, water or a note.";
        wrong.push(("note".to_owned(), sentence.to_owned()));
    }
    if wrong.is_empty() {
        Ok(visit)
    } else {
        Err(wrong)
    }
}

/// Why somebody came, as the form has it.
#[must_use]
pub fn occasion(fields: &[(&str, &str)]) -> Occasion {
    if fields.contains(&("occasion", "as_fitted")) {
        Occasion::AsFitted
    } else {
        Occasion::Service
    }
}

/// The filter that is in place at a visit.
#[must_use]
pub const fn filter_at(occasion: Occasion) -> FilterOnSite {
    match occasion {
        Occasion::AsFitted => FilterOnSite::New,
        Occasion::Service => FilterOnSite::InUse,
    }
}

fn is_empty(visit: &Visit) -> bool {
    visit.readings() == [None; 5] && visit.water.is_empty() && visit.note.trim().is_empty()
}

/// With a capital letter first and a full stop.
fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}.", first.to_ascii_uppercase(), letters.as_str())
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_quantity::DecimalMark;

    fn span(low: f64, usual: f64, high: f64) -> ExpectedOnSite<f64> {
        ExpectedOnSite { low, usual, high }
    }

    fn expected() -> OnSite {
        OnSite {
            airflow: span(25.7, 29.3, 31.6).map(VolumeFlow::litres_per_minute),
            suction: span(54.0, 58.0, 64.0).map(Pressure::pascals),
            first_smoke: Some(span(3.9, 4.2, 4.7).map(Time::seconds)),
            ninety_percent: None,
        }
    }

    fn places() -> VisitPlaces {
        VisitPlaces {
            water: vec![
                (Tube::Intake, Length::metres(5.2)),
                (Tube::Exhaust, Length::metres(1.5)),
            ],
            suction: Some(Length::metres(5.2)),
        }
    }

    fn form(fields: &[(&str, &str)]) -> Result<Visit, Vec<(String, String)>> {
        visit_of(fields, &places(), &expected(), Style::default())
    }

    #[test]
    fn a_form_becomes_a_visit_with_what_was_expected() {
        let visit = form(&[
            ("on", "2026-08-30"),
            ("by", "J. Orre"),
            ("occasion", "as_fitted"),
            ("airflow_l_min", "29,1"),
            ("suction_pa", "61 Pa"),
            ("ninety_percent_s", "12 s"),
            ("water-0", "1.2 L"),
            ("water-1", ""),
            ("note", "Filter changed."),
        ]);
        let visit = visit.expect("nothing is wrong");
        let airflow = visit.airflow_l_min.expect("it was read");
        assert_eq!(airflow.value, 29.1, "a comma is a decimal mark");
        let then = airflow.expected.expect("something was expected");
        assert_eq!(
            (then.low, then.usual, then.high),
            (25.7, 29.3, 31.6),
            "then"
        );
        assert_eq!(visit.occasion, Occasion::AsFitted, "at hand-over");
        assert_eq!(visit.suction_at_m, Some(5.2), "where it was measured");
        let ninety = visit.ninety_percent_s.expect("it was timed");
        assert_eq!(
            (ninety.value, ninety.expected),
            (12.0, None),
            "nothing was expected"
        );
        let [water] = visit.water.as_slice() else {
            panic!("at one place, not {:?}", visit.water);
        };
        assert_eq!(
            (water.at_m, water.water_g),
            (5.2, 1200.0),
            "a litre is a thousand grams"
        );
    }

    #[test]
    fn what_is_wrong_is_said_at_its_field() {
        let wrong = form(&[
            ("on", "2026-08-30"),
            ("airflow_l_min", "much"),
            ("first_smoke_s", "-3"),
            ("water-1", "3 cups"),
        ]);
        let wrong = wrong.expect_err("three fields are");
        let named: Vec<&str> = wrong.iter().map(|(name, _)| name.as_str()).collect();
        assert_eq!(
            named,
            ["airflow_l_min", "first_smoke_s", "water-1"],
            "each of them"
        );
        assert_eq!(
            wrong[1].1, "Transport time is \u{2212}3 s, must be from 0 to 36\u{2009}000 s.",
            "what would be right"
        );
        assert_eq!(
            wrong[2].1, "Water in cups is not understood: g, mL, L, kg, oz or fl oz.",
            "which units are"
        );
        let nothing = form(&[("on", "2026-08-30"), ("by", "J. Orre")]).expect_err("nothing");
        assert_eq!(nothing[0].0, "note", "one thing is needed");
        let no_day = form(&[("airflow_l_min", "29")]).expect_err("no day");
        assert_eq!(
            no_day,
            [("on".to_owned(), "The day is needed.".to_owned())],
            "the day"
        );
    }

    #[test]
    fn inch_pound_is_read_and_told() {
        let style = Style {
            units: Units::InchPound,
            mark: DecimalMark::Point,
        };
        // NIST SP 811: a cubic foot is 28.316 846 592 L; a conventional inch of water 249.0889 Pa.
        let flow = VisitField::Airflow
            .take("1", style)
            .expect("cfm")
            .expect("a number");
        assert!((flow - 28.316_846_592).abs() < 1e-9, "{flow} L/min");
        let suction = VisitField::Suction
            .take("0.25", style)
            .expect("inches")
            .expect("a number");
        assert!((suction - 0.25 * 249.088_91).abs() < 1e-3, "{suction} Pa");
        assert_eq!(water_g("10", style), Ok(Some(283.495_231_25)), "ounces");
        assert_eq!(
            VisitField::Airflow.against(22.0, &span(25.7, 29.3, 31.6), Style::default()),
            "Below the span of 25.7 to 31.6\u{a0}L/min.",
            "in words"
        );
    }
}
