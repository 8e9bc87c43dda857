//! Where the handles and labels of an elevation lie, as numbers: what a hand and the pointer must know of a drawing that somebody else made.

use super::labels::LabelKind;
use super::layout::{Held, Plan, plan};
use super::{Elevation, Label, fitted, handles, made};
use crate::frame::Room;
use crate::geometry::{Point, Rect};
use crate::place::Board;
use crate::pointer::flag_height;
use crate::scene::Scene;
use crate::view::View;

/// Numbers that a rectangle is written with.
const RECT: usize = 4;
/// The mark of a label that is not a leg's.
const OTHER: f64 = -1.0;

/// What an elevation is drawn on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sheet {
    /// Its room.
    pub room: Room,
    /// As a sheet of paper takes it, whatever the room.
    pub on_paper: bool,
    /// What it keeps of the drawing before it.
    pub held: Option<Held>,
}

impl Sheet {
    /// Room, paper, and what is kept.
    #[must_use]
    pub fn as_numbers(&self) -> Vec<f64> {
        let on_paper = f64::from(u8::from(self.on_paper));
        let mut numbers = vec![self.room.width, self.room.text, on_paper];
        if let Some(held) = self.held {
            let Point { x, y } = held.inlet;
            numbers.extend([held.px_per_m, held.heights, held.falls, x, y, held.floor]);
        }
        numbers
    }

    /// What numbers ask for; none where they are no such question.
    #[must_use]
    pub fn of(numbers: &[f64]) -> Option<Self> {
        let [width, text, on_paper, held @ ..] = numbers else {
            return None;
        };
        let held = match *held {
            [] => None,
            [px_per_m, heights, falls, x, y, floor] => Some(Held {
                px_per_m,
                heights,
                falls,
                inlet: Point::new(x, y),
                floor,
            }),
            _ => return None,
        };
        Some(Self {
            room: Room {
                width: *width,
                text: *text,
            },
            on_paper: *on_paper != 0.0,
            held,
        })
    }

    fn plan(&self, view: &View<'_>) -> (Room, Plan) {
        if self.on_paper {
            return (Room::PAPER, plan(view, Room::PAPER, 0.0, None));
        }
        let flag = flag_height(view, self.room.text);
        (self.room, plan(view, self.room, flag, self.held.as_ref()))
    }
}

/// What a hand meets of an elevation that is drawn elsewhere; where its handles and labels lie is taken from there.
#[must_use]
pub fn elevation_undrawn(view: &View<'_>, sheet: &Sheet) -> Elevation {
    let (room, plan) = sheet.plan(view);
    let mut scene = Scene {
        prefix: "",
        width: room.width,
        height: plan.height,
        title: String::new(),
        description: String::new(),
        items: Vec::new(),
    };
    let mut board = Board::new(scene.bounds());
    let traps = fitted::draw_traps(&mut scene, &mut board, view, &plan);
    let handles = if plan.frame.on_paper {
        Vec::new()
    } else {
        handles::draw(&mut scene, &mut board, &plan)
    };
    let scene = Scene {
        items: Vec::new(),
        ..scene
    };
    made(plan, scene, Vec::new(), (traps, handles), Vec::new(), false)
}

impl Elevation {
    /// Where its handles and labels lie and what else it covers, as numbers.
    #[must_use]
    pub fn places(&self) -> Vec<f64> {
        let mut numbers = Vec::new();
        let handles = self.handles.iter().map(|handle| handle.at);
        numbers.extend(handles.flat_map(|at| [at.x, at.y]));
        for label in &self.labels {
            numbers.push(match label.kind {
                LabelKind::Leg(leg) => u32::try_from(leg).map_or(OTHER, f64::from),
                _ => OTHER,
            });
            numbers.extend(written(label.rect));
        }
        // No label has this mark.
        numbers.push(f64::NAN);
        numbers.extend(self.solids.iter().copied().flat_map(written));
        numbers
    }

    /// Takes the places that the same elevation has elsewhere.
    pub fn take_places(&mut self, numbers: &[f64]) {
        let (handles, labels) = numbers.split_at(numbers.len().min(2 * self.handles.len()));
        let handles = handles.as_chunks::<2>().0.iter();
        for (handle, &[x, y]) in self.handles.iter_mut().zip(handles) {
            handle.at = Point::new(x, y);
        }
        let end = labels.iter().step_by(RECT + 1);
        let end = end.take_while(|mark| !mark.is_nan()).count() * (RECT + 1);
        let (labels, solids) = labels.split_at(labels.len().min(end));
        let labels = labels.as_chunks::<{ RECT + 1 }>().0.iter();
        self.labels = labels
            .map(|&[mark, x, y, width, height]| Label {
                kind: kind(mark),
                rect: Rect::new(x, y, width, height),
                form: 0,
            })
            .collect();
        let solids = solids.get(1..).unwrap_or_default();
        let solids = solids.as_chunks::<RECT>().0.iter();
        self.solids = solids
            .map(|&[x, y, width, height]| Rect::new(x, y, width, height))
            .collect();
    }
}

const fn written(rect: Rect) -> [f64; RECT] {
    [rect.x, rect.y, rect.width, rect.height]
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a mark is a small number that was a position"
)]
fn kind(mark: f64) -> LabelKind {
    if mark < 0.0 {
        LabelKind::Duct
    } else {
        LabelKind::Leg(mark as usize)
    }
}
