//! The fall of a leg, in the form in which it was typed.

use core::fmt;

use crate::decimal::Digits;
use crate::format::{self, MINUS};
use crate::parse::{self, ParseError};
use crate::{DecimalMark, Length};

/// A form in which falls are written; all count along the horizontal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum FallForm {
    /// 1:50.
    #[default]
    Ratio,
    /// 2 %.
    Percent,
    /// 20 mm/m.
    MillimetresPerMetre,
    /// 0.25 in/ft.
    InchesPerFoot,
}

/// The fall of a leg in the direction of flow: a form and the number in it, negative where the leg rises, 0 where it is level.
///
/// ```
/// use dewrun_quantity::{Fall, FallForm, Length};
/// let fall = Fall::parse("1:50", FallForm::Percent)?;
/// assert_eq!(fall.to_string(), "1:50");
/// let rise = fall.rise(Length::metres(4.2));
/// assert!((rise.to_millimetres() + 83.983).abs() < 1e-3);
/// assert_eq!(Fall::of(Length::metres(4.2), rise, FallForm::Percent).map(|fall| fall.to_string()), Some("2 %".to_owned()));
/// # Ok::<(), dewrun_quantity::parse::ParseError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fall {
    /// How it is written.
    pub form: FallForm,
    /// The number in that form: the n of 1:n, the percent, the mm/m or the in/ft.
    pub number: f64,
}

impl Fall {
    /// The fall of a leg of that length and rise; none where the leg is upright, for which a fall says nothing.
    #[must_use]
    pub fn of(length: Length, rise: Length, form: FallForm) -> Option<Self> {
        let (length_m, rise_m) = (length.to_metres(), rise.to_metres());
        let horizontal_m = ((length_m - rise_m) * (length_m + rise_m)).sqrt();
        let slope = -rise_m / horizontal_m;
        if !slope.is_finite() {
            return None;
        }
        let number = match form {
            FallForm::Ratio if slope == 0.0 => 0.0,
            FallForm::Ratio => 1.0 / slope,
            FallForm::Percent => slope * 100.0,
            FallForm::MillimetresPerMetre => slope * 1000.0,
            FallForm::InchesPerFoot => slope * 12.0,
        };
        number.is_finite().then_some(Self { form, number })
    }

    /// Fall per horizontal length.
    #[must_use]
    pub fn slope(self) -> f64 {
        match self.form {
            FallForm::Ratio if self.number == 0.0 => 0.0,
            FallForm::Ratio => 1.0 / self.number,
            FallForm::Percent => self.number / 100.0,
            FallForm::MillimetresPerMetre => self.number / 1000.0,
            FallForm::InchesPerFoot => self.number / 12.0,
        }
    }

    /// The rise of a leg of that length along the tube; negative where it falls.
    #[must_use]
    pub fn rise(self, length: Length) -> Length {
        let slope = self.slope();
        length * (-slope / (1.0 + slope * slope).sqrt())
    }

    /// Reads `1:50`, `1 in 50`, `2 %`, `20 mm/m`, `1/4 in/ft` or `level`; a bare number is in the form given.
    ///
    /// # Errors
    /// [`ParseError`] says what keeps it from being a fall.
    pub fn parse(text: &str, form: FallForm) -> Result<Self, ParseError> {
        let text = text.trim();
        if text.eq_ignore_ascii_case("level") {
            return Ok(Self { form, number: 0.0 });
        }
        if let Some((one, n)) = text.split_once(':').or_else(|| text.split_once(" in ")) {
            return Self::ratio(one, n);
        }
        if let Some((whole, rest)) = text.split_once('/')
            && let (parts, unit) = parse::split_unit(rest)
            && let Ok(parts) = parse::number(parts)
        {
            let whole = parse::number(whole)?;
            return match unit {
                "" => Self::finite(FallForm::Ratio, parts / whole),
                _ => Self::with_unit(whole / parts, unit, form),
            };
        }
        let (number, unit) = parse::split_unit(text);
        Self::with_unit(parse::number(number)?, unit, form)
    }

    /// As people read it, with the decimal mark of one's choice.
    #[must_use]
    pub fn show(self, mark: DecimalMark) -> String {
        if self.number == 0.0 {
            return "level".to_owned();
        }
        let digits = format::entered_with(rounded(self.number), mark);
        match self.form {
            FallForm::Ratio => digits
                .strip_prefix(MINUS)
                .map_or_else(|| format!("1:{digits}"), |n| format!("{MINUS}1:{n}")),
            FallForm::Percent => format!("{digits} %"),
            FallForm::MillimetresPerMetre => format!("{digits} mm/m"),
            FallForm::InchesPerFoot => format!("{digits} in/ft"),
        }
    }

    fn ratio(one: &str, n: &str) -> Result<Self, ParseError> {
        Self::finite(FallForm::Ratio, parse::number(n)? / parse::number(one)?)
    }

    fn with_unit(number: f64, unit: &str, form: FallForm) -> Result<Self, ParseError> {
        let form = match unit {
            "" => form,
            "%" => FallForm::Percent,
            "mm/m" => FallForm::MillimetresPerMetre,
            "in/ft" | "\"/ft" => FallForm::InchesPerFoot,
            _ => {
                return Err(ParseError::UnknownUnit {
                    quantity: "fall",
                    unit: unit.to_owned(),
                    known: "1:n, %, mm/m, in/ft".to_owned(),
                });
            }
        };
        Self::finite(form, number)
    }

    fn finite(form: FallForm, number: f64) -> Result<Self, ParseError> {
        if !number.is_finite() {
            let text = match (number.is_nan(), number < 0.0) {
                (true, _) => "NaN",
                (_, true) => "-inf",
                _ => "inf",
            };
            return Err(ParseError::TooLarge {
                text: text.to_owned(),
            });
        }
        Ok(Self { form, number })
    }
}

impl fmt::Display for Fall {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.show(DecimalMark::Point))
    }
}

/// A fall read off a drawing to a thousandth is finer than any level can set it.
fn rounded(number: f64) -> f64 {
    Digits::of(number).significant(4).value().copysign(number)
}

#[cfg(test)]
mod tests {
    use super::{Fall, FallForm};
    use crate::{DecimalMark, Length};
    use proptest::prelude::{prop_assert, prop_assert_eq, proptest};
    use proptest::sample::select;

    #[track_caller]
    fn check(text: &str, form: FallForm, number: f64) {
        let expected = Fall { form, number };
        assert_eq!(
            Fall::parse(text, FallForm::Ratio),
            Ok(expected),
            "`{text}` is a fall"
        );
    }

    #[test]
    fn every_form_is_read() {
        check("1:50", FallForm::Ratio, 50.0);
        check(" 1 : 50 ", FallForm::Ratio, 50.0);
        check("1 in 50", FallForm::Ratio, 50.0);
        check("1/50", FallForm::Ratio, 50.0);
        check("50", FallForm::Ratio, 50.0);
        check("\u{2212}1:60", FallForm::Ratio, -60.0);
        check("2,5 %", FallForm::Percent, 2.5);
        check("20mm/m", FallForm::MillimetresPerMetre, 20.0);
        check("1/4 in/ft", FallForm::InchesPerFoot, 0.25);
        check("0.25\"/ft", FallForm::InchesPerFoot, 0.25);
        check("level", FallForm::Ratio, 0.0);
    }

    #[test]
    fn what_is_no_fall_says_why() {
        for text in ["", "1:", ":50", "fifty", "1:50 m", "2 deg", "1/0 in/ft"] {
            assert!(
                Fall::parse(text, FallForm::Ratio).is_err(),
                "`{text}` is no fall"
            );
        }
    }

    #[test]
    fn an_upright_leg_has_no_fall() {
        let drop = Fall::of(Length::metres(1.5), Length::metres(-1.5), FallForm::Ratio);
        assert_eq!(drop, None, "it drops");
        let impossible = Fall::of(Length::metres(1.5), Length::metres(2.0), FallForm::Ratio);
        assert_eq!(impossible, None, "it rises more than it is long");
    }

    #[test]
    fn a_leg_without_rise_is_level() {
        let level = Fall::of(Length::metres(1.5), Length::ZERO, FallForm::Ratio);
        assert_eq!(
            level.map(|fall| fall.to_string()),
            Some("level".to_owned()),
            "in words"
        );
    }

    /// A quarter inch a foot is 1:48 and 2.083 %: 0.25/12.
    #[test]
    fn forms_agree_with_each_other() {
        let fall = Fall {
            form: FallForm::InchesPerFoot,
            number: 0.25,
        };
        let (length, rise) = (Length::feet(10.0), fall.rise(Length::feet(10.0)));
        let shown = |form| Fall::of(length, rise, form).map(|fall| fall.show(DecimalMark::Comma));
        assert_eq!(
            shown(FallForm::Ratio).as_deref(),
            Some("1:48"),
            "as a ratio"
        );
        assert_eq!(
            shown(FallForm::Percent).as_deref(),
            Some("2,083 %"),
            "in percent"
        );
        assert_eq!(
            shown(FallForm::MillimetresPerMetre).as_deref(),
            Some("20,83 mm/m"),
            "in mm/m"
        );
    }

    proptest! {
        #[test]
        fn a_typed_fall_survives_the_length_and_rise_of_its_leg(
            form in select(vec![FallForm::Ratio, FallForm::Percent, FallForm::MillimetresPerMetre, FallForm::InchesPerFoot]),
            hundredths in -9_999_i32..9_999,
            length_m in 0.01..200.0_f64,
        ) {
            let typed = Fall { form, number: f64::from(hundredths) / 100.0 };
            let length = Length::metres(length_m);
            let back = Fall::of(length, typed.rise(length), form);
            prop_assert_eq!(back.map(Fall::to_text), Some(typed.to_text()));
            prop_assert!(Fall::parse(&typed.to_text(), form) == Ok(typed), "{} is read back", typed.to_text());
        }
    }

    impl Fall {
        fn to_text(self) -> String {
            self.to_string()
        }
    }
}
