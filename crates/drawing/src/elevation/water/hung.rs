//! How the legs are hung, and how far apart their hangers may be for them to drain.

use dewrun_quantity::{Length, Style};
use dewrun_run::{HangerAdvice, TubeWater};

use crate::block::{Block, Line};
use crate::elevation::labels::{LabelKind, Labels, Spot};
use crate::elevation::layout::Plan;
use crate::geometry::Point;
use crate::text::Tone;
use crate::view::View;
use crate::wording;

/// Legs in a row that are hung alike.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Row {
    first: usize,
    last: usize,
    how: How,
}

/// How a row of legs is hung.
#[derive(Debug, Clone, Copy, PartialEq)]
enum How {
    /// From a coil.
    AllAlong,
    /// The spacing as it is, and the largest that drains.
    Spaced(Option<Length>, Length),
    /// So far apart that it does not drain, and the largest that does.
    TooWide(Length, Length),
}

/// Notes over each row of legs.
pub(super) fn note(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan, water: &TubeWater) {
    for row in rows(water) {
        let legs = &plan.course.legs;
        let (Some(first), Some(last)) = (legs.get(row.first), legs.get(row.last)) else {
            continue;
        };
        let middle = first.from.point.towards(last.to.point, 0.5);
        let band = plan.band_at(middle);
        let is_wrong = matches!(row.how, How::TooWide(..));
        let thing = plan
            .course
            .at((first.from.along_m + last.to.along_m) / 2.0)
            .point;
        let spot = Spot {
            at: Point::new(middle.x, band.y + 10.0 * labels.scale),
            room: plan.floor_at(middle),
            reach: Point::new(200.0, 90.0),
            needed: false,
            thing: is_wrong.then_some(thing),
        };
        labels.place(
            LabelKind::Hangers(row.first),
            forms(row.how, view.style),
            spot,
        );
    }
}

fn rows(water: &TubeWater) -> Vec<Row> {
    let mut rows: Vec<Row> = Vec::new();
    for (leg, told) in water.legs.iter().enumerate() {
        let how = match told.hangers {
            HangerAdvice::Steep | HangerAdvice::Level => continue,
            HangerAdvice::AllAlong => How::AllAlong,
            HangerAdvice::Spacing { largest, now } => match now {
                Some((spacing, _)) if largest < spacing => How::TooWide(spacing, largest),
                other => How::Spaced(other.map(|(spacing, _)| spacing), largest),
            },
        };
        let joined = rows
            .last()
            .filter(|row| row.last + 1 == leg)
            .and_then(|row| row.how.with(how));
        match (joined, rows.last_mut()) {
            (Some(how), Some(row)) => {
                row.last = leg;
                row.how = how;
            }
            _ => rows.push(Row {
                first: leg,
                last: leg,
                how,
            }),
        }
    }
    rows
}

impl How {
    /// Both as one, where they are hung alike: the leg that asks for the closest hangers counts.
    fn with(self, next: Self) -> Option<Self> {
        match (self, next) {
            (Self::AllAlong, Self::AllAlong) => Some(Self::AllAlong),
            (Self::Spaced(one, a), Self::Spaced(other, b)) if one == other => {
                Some(Self::Spaced(one, a.min(b)))
            }
            (Self::TooWide(one, a), Self::TooWide(other, b)) if one == other => {
                Some(Self::TooWide(one, a.min(b)))
            }
            _ => None,
        }
    }
}

fn forms(how: How, style: Style) -> Vec<Block> {
    let length = |length: Length| wording::metres(length.to_metres(), style);
    let quiet = |words: String| Block::of(vec![Line::new(words).toned(Tone::Second)]);
    let bold = |words: String| Line::new(words).bold();
    match how {
        How::AllAlong => vec![quiet("support all along".to_owned())],
        How::Spaced(None, largest) => {
            vec![quiet(format!("hangers at most {} apart", length(largest)))]
        }
        How::Spaced(Some(now), largest) => vec![
            quiet(format!(
                "hangers every {}; up to {} still drains",
                length(now),
                length(largest)
            )),
            quiet(format!("hangers every {}", length(now))),
        ],
        How::TooWide(now, largest) => vec![
            Block::of(vec![bold(format!(
                "sags: hangers every {}, at most {} drains",
                length(now),
                length(largest)
            ))]),
            Block::of(vec![
                bold(format!("sags: hangers every {}", length(now))),
                bold(format!("at most {} drains", length(largest))),
            ]),
        ],
    }
}
