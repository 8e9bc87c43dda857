//! Measuring the fall of a leg with a phone that lies on it: what is asked, what is found, and how the project takes it.

use dewrun_document::{Input, Leg, Origin, limits};
use dewrun_quantity::format::entered_with;
use dewrun_quantity::{Angle, Fall, FallForm, Length, Style, Units};
use dewrun_run::phone_level::{LevelError, Levelled, Lying, Sample, fall_of, levelled};

use crate::field::{leg_mut, route};
use crate::{OpenProject, TubeName};

/// How far the measuring of a leg has come.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Levelling {
    first: Option<Lying>,
    found: Option<Levelled>,
    refused: Option<LevelError>,
}

impl Levelling {
    /// Takes a reading: heading, pitch and roll in degrees, moment by moment, NaN where the sensor says nothing.
    ///
    /// A reading that can't be used leaves things as they were.
    pub fn take(&mut self, said: &[f64]) {
        let samples: Vec<Sample> = said.chunks_exact(3).filter_map(sample).collect();
        let read = Lying::of(&samples).and_then(|lying| match self.first {
            None => {
                self.first = Some(lying);
                Ok(())
            }
            Some(first) => {
                self.found = Some(levelled(&first, &lying)?);
                Ok(())
            }
        });
        self.refused = read.err();
    }

    /// What two readings have found.
    #[must_use]
    pub fn found(&self) -> Option<Levelled> {
        self.found
    }

    /// What is to be done next, or what was found.
    #[must_use]
    pub fn told(&self, style: Style) -> String {
        match (self.first, self.found) {
            (_, Some(found)) => told(&found, style),
            (None, None) => {
                "Lay the phone flat along the leg, screen up, its top the way the air goes."
                    .to_owned()
            }
            (Some(_), None) => {
                "Now turn it end for end on the same place, its top against the air.".to_owned()
            }
        }
    }

    /// Why the last reading could not be used, and what would be right.
    #[must_use]
    pub fn refused(&self) -> Option<String> {
        let error = self.refused?;
        let instead = match error {
            LevelError::NoSensor => "Type the fall instead.",
            _ => "Lay it down, let it come to rest and read again.",
        };
        let mut sentence = error.to_string();
        if let Some(first) = sentence.get_mut(..1) {
            first.make_ascii_uppercase();
        }
        Some(format!("{sentence}. {instead}"))
    }

    /// Whether there is nothing to read.
    #[must_use]
    pub fn is_blind(&self) -> bool {
        self.refused == Some(LevelError::NoSensor)
    }
}

/// Writes what was found into the leg, as measured on that day by that person.
pub fn measured_fall(
    project: &mut OpenProject,
    tube: TubeName,
    at: usize,
    found: &Levelled,
    [on, by]: [&str; 2],
) {
    let Some(leg) = leg_mut(project, tube, at) else {
        return;
    };
    let fall = fall_in(form_of(leg), fall_of(found.rise));
    leg.rise_m = Input {
        value: fall.rise(Length::metres(leg.length_m.value)).to_metres(),
        origin: Origin::Measured {
            on: on.to_owned(),
            by: by.trim().chars().take(limits::NAME).collect(),
        },
    };
    leg.fall_as = fall.form.into();
}

/// Who has measured a fall of the open run before; empty where nobody has.
#[must_use]
pub fn measurer(project: &OpenProject) -> String {
    let tubes = [TubeName::Exhaust, TubeName::Intake];
    let routes = tubes.into_iter().filter_map(|tube| route(project, tube));
    let mut legs = routes.flat_map(|route| route.legs.iter().rev());
    let by = legs.find_map(|leg| match &leg.rise_m.origin {
        Origin::Measured { by, .. } if !by.is_empty() => Some(by.clone()),
        _ => None,
    });
    by.unwrap_or_default()
}

fn sample(said: &[f64]) -> Option<Sample> {
    let [heading, pitch, roll] = <[f64; 3]>::try_from(said).ok()?.map(Angle::degrees);
    Some(Sample {
        heading: heading.is_finite().then_some(heading),
        pitch,
        roll,
    })
}

fn told(found: &Levelled, style: Style) -> String {
    let form = match style.units {
        Units::Si => FallForm::MillimetresPerMetre,
        Units::InchPound => FallForm::InchesPerFoot,
    };
    let size = |angle: Angle| fall_in(form, fall_of(angle).max(-fall_of(angle)));
    let (fall, doubt, offset) = (size(found.rise), size(found.doubt), size(found.offset));
    let number = |number: f64| entered_with(number, style.mark);
    let off = if offset.number == 0.0 {
        "the phone itself is not off".to_owned()
    } else {
        format!(
            "the phone itself is off by {}, which cancels",
            offset.show(style.mark)
        )
    };
    if fall.number == 0.0 {
        return format!("The leg is level within {}; {off}.", doubt.show(style.mark));
    }
    let way = if found.rise < Angle::ZERO {
        "falls"
    } else {
        "rises"
    };
    let (low, high) = (
        fall_in(form, fall.slope() - doubt.slope()),
        fall_in(form, fall.slope() + doubt.slope()),
    );
    format!(
        "The leg {way} {} ({} to {}); {off}.",
        fall.show(style.mark),
        number(low.number),
        number(high.number)
    )
}

/// The form in which a leg's fall is told; as a ratio a phone's steps would be of many sizes.
fn form_of(leg: &Leg) -> FallForm {
    match leg.fall_as.into() {
        FallForm::Ratio => FallForm::MillimetresPerMetre,
        form => form,
    }
}

/// A fall in steps of about 1 mm/m, the mean of two of a phone's.
fn fall_in(form: FallForm, slope: f64) -> Fall {
    let (per, steps) = match form {
        FallForm::Ratio | FallForm::MillimetresPerMetre => (1000.0, 1.0),
        FallForm::Percent => (100.0, 10.0),
        FallForm::InchesPerFoot => (12.0, 100.0),
    };
    let number = (slope * per * steps).round() / steps;
    // A level leg has no sign.
    Fall {
        form,
        number: number + 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;
    use dewrun_document::FallForm as Written;
    use dewrun_quantity::DecimalMark;

    const SI: Style = Style {
        units: Units::Si,
        mark: DecimalMark::Point,
    };

    /// A reading of three moments.
    fn said(heading: f64, pitch: f64) -> [f64; 9] {
        [
            heading, pitch, 1.0, heading, pitch, 1.0, heading, pitch, 1.0,
        ]
    }

    fn levelled_from(first: f64, then: f64) -> Levelling {
        let mut levelling = Levelling::default();
        levelling.take(&said(30.0, first));
        levelling.take(&said(210.0, then));
        levelling
    }

    fn project() -> OpenProject {
        let example = example("#example=make-up-air").expect("it is an example");
        example.project().expect("it can be read").into()
    }

    /// A fall of 1:50 is 1.1458 degrees by any table of tangents, 20 mm/m or 0.24 in/ft.
    #[test]
    fn two_readings_are_a_fall_whatever_the_phone_is_off_by() {
        let levelling = levelled_from(-1.1458 + 0.4, 1.1458 + 0.4);
        let falls =
            "The leg falls 20 mm/m (19 to 21); the phone itself is off by 7 mm/m, which cancels.";
        assert_eq!(levelling.told(SI), falls, "in SI");
        let style = Style {
            units: Units::InchPound,
            mark: DecimalMark::Comma,
        };
        let falls = "The leg falls 0,24 in/ft (0,23 to 0,25); the phone itself is off by 0,08 in/ft, which cancels.";
        assert_eq!(levelling.told(style), falls, "in inch-pound");
        let rises = levelled_from(1.1458, -1.1458).told(SI);
        assert_eq!(
            rises, "The leg rises 20 mm/m (19 to 21); the phone itself is not off.",
            "the other way"
        );
        let level = levelled_from(0.3, 0.3).told(SI);
        assert_eq!(
            level,
            "The leg is level within 1 mm/m; the phone itself is off by 5 mm/m, which cancels.",
            "and level"
        );
    }

    #[test]
    fn what_was_found_is_written_as_measured() {
        let mut project = project();
        let found = levelled_from(-1.1458, 1.1458)
            .found()
            .expect("two readings");
        let day = ["2026-11-25", " R. Abel "];
        measured_fall(&mut project, TubeName::Intake, 1, &found, day);
        let leg = &project.runs[0].intake.legs[1];
        let origin = Origin::Measured {
            on: "2026-11-25".to_owned(),
            by: "R. Abel".to_owned(),
        };
        assert_eq!(leg.rise_m.origin, origin, "day and person");
        assert_eq!(leg.fall_as, Written::MmPerM, "in steps of the sensor");
        assert_eq!(
            leg.fall().map(|fall| fall.to_string()),
            Some("20 mm/m".to_owned()),
            "the fall"
        );
        assert_eq!(
            measurer(&project),
            "R. Abel",
            "who is asked for the next leg"
        );
        let file = dewrun_document::write(&project);
        assert!(file.is_ok(), "and it can be saved: {file:?}");
    }

    #[test]
    fn a_reading_that_cannot_be_used_says_why_and_costs_nothing() {
        let mut levelling = Levelling::default();
        let asks = levelling.told(SI);
        levelling.take(&[0.0, 1.0, 0.0, 0.0, 2.0, 0.0]);
        assert_eq!(
            levelling.refused().as_deref(),
            Some(
                "The phone moved by 1\u{b0} while it was read, more than 0.4\u{b0}. Lay it down, let it come to rest and read again."
            ),
            "it moved"
        );
        assert_eq!(levelling.told(SI), asks, "the same is asked again");
        levelling.take(&said(0.0, 1.0));
        assert_eq!(levelling.refused(), None, "mended");
        levelling.take(&said(20.0, 1.0));
        assert!(levelling.found().is_none(), "it was not turned round");
        levelling.take(&said(170.0, -1.0));
        assert!(levelling.found().is_some(), "now it was");
    }

    #[test]
    fn where_nothing_is_read_the_fall_is_typed() {
        for said in [&[][..], &[f64::NAN, f64::NAN, f64::NAN]] {
            let mut levelling = Levelling::default();
            levelling.take(said);
            let sentence = levelling.refused().unwrap_or_default();
            assert!(levelling.is_blind(), "{said:?}");
            assert!(sentence.ends_with("Type the fall instead."), "{sentence}");
        }
    }
}
