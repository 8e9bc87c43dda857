//! Readings as they are typed: `airflow=29.1`, `suction=118,at=3.2`, `drained=310,since=2026-03-01,until=2026-06-01`.

use dewrun_document::day_of;
use dewrun_ensemble::{Measured, Measurement, usual_error};
use dewrun_quantity::Length;
use dewrun_quantity::parse;

/// A reading as it was said.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Said {
    what: Measured,
    value: f64,
    error: Option<f64>,
}

impl Said {
    /// With its error: as said, or as such readings have it; `climate` says that the hours are of a typical year.
    pub(super) fn measurement(&self, climate: bool) -> Measurement {
        let usual = || usual_error(self.what, self.value, climate);
        Measurement {
            what: self.what,
            value: self.value,
            error: self.error.unwrap_or_else(usual),
        }
    }
}

/// Reads all that was typed.
///
/// # Errors
/// A sentence: what is wrong, and what would be right.
pub(super) fn read(typed: &[String]) -> Result<Vec<Said>, String> {
    typed.iter().map(|text| one(text)).collect()
}

fn one(text: &str) -> Result<Said, String> {
    let mut parts = text.split(',');
    let first = parts.next().unwrap_or_default();
    let (name, value) = pair(text, first)?;
    let value = number(text, value)?;
    let (mut error, mut at, mut since, mut until) = (None, None, None, None);
    for part in parts {
        match pair(text, part)? {
            ("error", value) => error = Some(number(text, value)?),
            ("at", value) => at = Some(Length::metres(number(text, value)?)),
            ("since", value) => since = Some(day(text, value)?),
            ("until", value) => until = Some(day(text, value)?),
            (other, _) => {
                return Err(wrong(
                    text,
                    &format!("{other} is none of error, at, since, until"),
                ));
            }
        }
    }
    if error.is_some_and(|error| error <= 0.0) {
        return Err(wrong(text, "its error must be above 0"));
    }
    let what = match name {
        "airflow" => Measured::Airflow,
        "first-smoke" => Measured::FirstSmoke,
        "ninety-percent" => Measured::NinetyPercent,
        "suction" => Measured::Suction { at },
        "drained" => Measured::Drained {
            since,
            until: until.ok_or_else(|| {
                wrong(
                    text,
                    "say until which day it was drained, as until=2026-06-01",
                )
            })?,
        },
        other => {
            return Err(wrong(
                text,
                &format!(
                    "{other} is none of airflow, first-smoke, ninety-percent, suction, drained"
                ),
            ));
        }
    };
    Ok(Said { what, value, error })
}

fn pair<'a>(text: &str, part: &'a str) -> Result<(&'a str, &'a str), String> {
    part.trim()
        .split_once('=')
        .ok_or_else(|| wrong(text, "write it as airflow=29.1"))
}

fn number(text: &str, value: &str) -> Result<f64, String> {
    parse::number(value).map_err(|_| wrong(text, &format!("{value} is no number")))
}

fn day(text: &str, value: &str) -> Result<i64, String> {
    day_of(value).ok_or_else(|| wrong(text, &format!("{value} is no day such as 2026-06-01")))
}

fn wrong(text: &str, why: &str) -> String {
    format!("--measured {text}: {why}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn readings_are_read() {
        let said = one("suction=118,at=3.2,error=4").expect("a reading");
        let at = Some(Length::metres(3.2));
        assert_eq!(said.what, Measured::Suction { at }, "where");
        assert_eq!((said.value, said.error), (118.0, Some(4.0)), "and how much");
        let drained = one("drained=310,until=1970-01-11").expect("a reading");
        let what = Measured::Drained {
            since: None,
            until: 10,
        };
        assert_eq!(drained.what, what, "the tenth day after the first");
        assert_eq!(drained.measurement(false).error, 31.0, "a tenth");
    }

    #[test]
    fn what_is_wrong_is_said() {
        for (text, why) in [
            ("airflow", "write it as airflow=29.1"),
            ("flow=3", "flow is none of airflow"),
            ("airflow=much", "much is no number"),
            ("drained=3", "until which day"),
            ("drained=3,until=2026-02-30", "2026-02-30 is no day"),
            ("airflow=30,error=0", "above 0"),
        ] {
            let said = one(text).expect_err("it is wrong");
            assert!(said.contains(why), "{text}: {said}");
        }
    }
}
