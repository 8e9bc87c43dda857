//! The path of the air on the paper: tubes to scale, what lies between them in columns of one width.

use dewrun_quantity::{Length, Pressure};
use dewrun_run::told::{AirPlace, Side};

use crate::airflow::Shown;
use crate::frame::Room;
use crate::geometry::Rect;

/// Width of the column of a part that has no length, px: on a wide page and on a phone.
const COLUMN: (f64, f64) = (48.0, 20.0);

/// The path on the paper.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Course {
    /// Where the pressure changes, from the duct to the duct.
    pub(super) points: Vec<(f64, Pressure)>,
    pub(super) parts: Vec<Part>,
    pub(super) legs: Vec<LegAt>,
    intake: Tube,
}

/// A part of the path.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Part {
    pub(super) name: &'static str,
    pub(super) from: f64,
    pub(super) to: f64,
    /// It has no length of tube.
    pub(super) is_device: bool,
}

/// The middle of a leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LegAt {
    pub(super) number: usize,
    pub(super) at: f64,
}

/// A tube on the paper.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Tube {
    from: f64,
    per_m: f64,
}

impl Tube {
    fn px(&self, at: Length) -> f64 {
        self.from + at.to_metres() * self.per_m
    }
}

impl Course {
    pub(super) fn new(shown: &Shown<'_>, plot: &Rect, room: Room) -> Self {
        let run = shown.run;
        let column = room.text * if room.is_narrow() { COLUMN.1 } else { COLUMN.0 };
        let long = |legs: &[dewrun_run::Leg]| -> f64 {
            legs.iter().map(|leg| leg.length.to_metres()).sum()
        };
        let (intake_m, exhaust_m) = (long(&run.intake), long(&run.exhaust));
        let left = plot.width - 5.0 * column;
        let per_m = left / (intake_m + exhaust_m).max(1e-9);
        let intake = Tube {
            from: plot.x + column,
            per_m,
        };
        let detector = intake.from + intake_m * per_m;
        let exhaust = Tube {
            from: detector + 3.0 * column,
            per_m,
        };
        let end = exhaust.from + exhaust_m * per_m;
        let device = |name, from| Part {
            name,
            from,
            to: from + column,
            is_device: true,
        };
        let tube = |name, from, to| Part {
            name,
            from,
            to,
            is_device: false,
        };
        let parts = vec![
            device("holes", plot.x),
            tube("intake tube", intake.from, detector),
            device("filter", detector),
            device("chamber", detector + column),
            device("fan", detector + 2.0 * column),
            tube("exhaust tube", exhaust.from, end),
            device("outlet", end),
        ];
        let xs = [plot.x, detector, detector + column, end];
        Self {
            points: points(shown, [intake, exhaust], xs, column),
            parts: parts
                .into_iter()
                .filter(|part| part.from < part.to)
                .collect(),
            legs: legs(shown, [intake, exhaust]),
            intake,
        }
    }

    /// Where a place of the intake tube lies, and the pressure there.
    pub(super) fn in_intake(&self, at: Length) -> (f64, Pressure) {
        let x = self.intake.px(at);
        let mut found = (x, Pressure::ZERO);
        for pair in self.points.windows(2) {
            if let [(a, p), (b, q)] = pair
                && *a <= x
                && x <= *b
                && a < b
            {
                found.1 = *p + (*q - *p) * ((x - a) / (b - a));
            }
        }
        found
    }
}

fn points(
    shown: &Shown<'_>,
    [intake, exhaust]: [Tube; 2],
    [duct, detector, chamber, end]: [f64; 4],
    column: f64,
) -> Vec<(f64, Pressure)> {
    let now = &shown.whole.airflow.now;
    let mut points = Vec::new();
    let at = |place: AirPlace, x: f64| now.pressure(place).map(|pressure| (x, pressure));
    points.extend(at(AirPlace::DuctAtIntake, duct));
    let side = |side: Side, tube: Tube| {
        let course = now.course.iter().filter(move |point| point.side == side);
        course.map(move |point| (tube.px(point.at), point.pressure))
    };
    points.extend(at(AirPlace::Inlet, intake.from));
    points.extend(side(Side::Intake, intake));
    points.extend(at(AirPlace::DetectorInlet, detector));
    points.extend(at(AirPlace::FilterOutlet, chamber));
    points.extend(at(AirPlace::FanInlet, chamber + column));
    points.extend(at(AirPlace::FanOutlet, chamber + 2.0 * column));
    points.extend(side(Side::Exhaust, exhaust));
    points.extend(at(AirPlace::ExhaustEnd, end));
    points.extend(at(AirPlace::DuctAtExhaust, end + column));
    points
}

fn legs(shown: &Shown<'_>, tubes: [Tube; 2]) -> Vec<LegAt> {
    let run = shown.run;
    let mut legs = Vec::new();
    let mut number = 0;
    for (tube, all) in tubes.into_iter().zip([&run.intake, &run.exhaust]) {
        let mut from = Length::ZERO;
        for leg in all {
            number += 1;
            let middle = from + leg.length * 0.5;
            from += leg.length;
            legs.push(LegAt {
                number,
                at: tube.px(middle),
            });
        }
    }
    legs
}
