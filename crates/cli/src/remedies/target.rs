//! A target as it is said on the command line.

use dewrun_document::hour_name;
use dewrun_quantity::decimal::nearest;
use dewrun_remedies::{DesignHour, Target};

/// The target in a text such as `dry-in=1,wet-hours=100,no-frost`.
pub(super) fn read(text: &str) -> Result<Target, String> {
    let mut target = Target {
        dry_in: None,
        blind_hours: None,
        ..Target::default()
    };
    for part in text
        .split(',')
        .map(str::trim)
        .filter(|part| !part.is_empty())
    {
        let (name, value) = part.split_once('=').unwrap_or((part, ""));
        let number = || {
            nearest(value)
                .filter(|number| 0.0 <= *number)
                .ok_or_else(|| format!("`{part}` wants a number from 0 on, such as `{name}=10`"))
        };
        match name {
            "dry-in" => target.dry_in = Some(hour(value)?),
            "wet-hours" => target.wet_hours = Some(number()?),
            "litres" => target.formed_kg = Some(number()?),
            "chamber-margin" => target.chamber_margin = Some(0.01 * number()?),
            "no-frost" => target.no_frost = true,
            "blind-hours" => target.blind_hours = Some(number()?),
            "trap-days" => target.trap_days = Some(number()?),
            _ => {
                return Err(format!(
                    "`{name}` is no part of a target; there are dry-in, wet-hours, litres, chamber-margin, no-frost, blind-hours, trap-days"
                ));
            }
        }
    }
    Ok(target)
}

fn hour(value: &str) -> Result<DesignHour, String> {
    let mut all = DesignHour::ALL.into_iter();
    let found = all.find(|hour| hour_name(*hour) == value);
    found.ok_or_else(|| format!("`dry-in={value}` is no hour; there are entered, 0.4, 1, 2"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_are_read() {
        let target = read("dry-in=1, wet-hours=40.5,no-frost,chamber-margin=10").expect("a target");
        let expected = Target {
            dry_in: Some(DesignHour::Wettest1),
            wet_hours: Some(40.5),
            chamber_margin: Some(0.1),
            no_frost: true,
            blind_hours: None,
            ..Target::default()
        };
        assert_eq!(target, expected, "and nothing else is asked for");
    }

    #[test]
    fn what_is_wrong_is_told() {
        for (text, word) in [
            ("wet-hours=many", "number"),
            ("tea", "no part"),
            ("dry-in=3", "no hour"),
        ] {
            let sentence = read(text).expect_err(text);
            assert!(sentence.contains(word), "{sentence}");
        }
    }
}
