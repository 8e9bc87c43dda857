//! The labels of an elevation: what each says, in its fuller and shorter forms, and where it would best lie.

use dewrun_quantity::measure::TEMPERATURE;
use dewrun_run::{LegOutcome, WET_TUBE_G_H};

use super::building::Band;
use super::course::Stretch;
use crate::block::{Block, Line, Slope};
use crate::geometry::{Point, Rect, kept};
use crate::place::{Board, Wanted};
use crate::scene::Scene;
use crate::states::{State, StateStretch};
use crate::text::{Size, Tone};
use crate::view::View;
use crate::wording;

/// What a label is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LabelKind {
    /// Number of a leg, with its fall where there is room.
    Leg(usize),
    /// Water that forms in a leg.
    LegWater(usize),
    /// A stretch in one state.
    Stretch(usize),
    /// Length of a leg at its dimension line.
    Dimension(usize),
    /// Name of a space.
    Space(usize),
    /// A trap.
    Trap(usize),
    /// A low point and what stands there.
    LowPoint(usize),
    /// The low point once more, enlarged.
    Detail(usize),
    /// A trap that is missing.
    Proposed(usize),
    /// How a leg is hung, and those after it that are hung alike.
    Hangers(usize),
    /// Frost or ice in a leg.
    Ice(usize),
    /// A bore that water locks.
    Lock(usize),
    /// Water that runs out of an end of the tube.
    RunsOut(bool),
    /// Level of a joint, the start of the tube first.
    Level(usize),
    /// The duct.
    Duct,
    /// The detector.
    Detector,
    /// The stub of the other tube.
    Stub,
}

/// A label that has found its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// What it is about.
    pub kind: LabelKind,
    /// What it covers, px.
    pub rect: Rect,
    /// Which of its forms fits, 0 the fullest.
    pub form: usize,
}

/// Places labels and keeps them until they are drawn, so that all lie above all lines.
pub(crate) struct Labels<'a> {
    pub(crate) board: &'a mut Board,
    pub(crate) scale: f64,
    pub(crate) placed: Vec<Label>,
    blocks: Vec<(Block, Rect)>,
    leaders: Vec<(Point, Point)>,
}

/// Where a label would best lie and how far it may move.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Spot {
    pub(crate) at: Point,
    pub(crate) room: Rect,
    pub(crate) reach: Point,
    pub(crate) needed: bool,
    /// The thing it belongs to, to which a line leads from further away.
    pub(crate) thing: Option<Point>,
}

impl<'a> Labels<'a> {
    pub(crate) fn new(board: &'a mut Board, scale: f64) -> Self {
        Self {
            board,
            scale,
            placed: Vec::new(),
            blocks: Vec::new(),
            leaders: Vec::new(),
        }
    }

    /// Places a label in the fullest of its forms that fits, or drops it and says so.
    pub(crate) fn place(&mut self, kind: LabelKind, forms: Vec<Block>, spot: Spot) -> bool {
        let wanted = Wanted {
            forms: forms.iter().map(|block| block.size(self.scale)).collect(),
            at: spot.at,
            room: spot.room,
            reach: spot.reach,
            needed: spot.needed,
        };
        let Some(placed) = self.board.place(&wanted) else {
            return false;
        };
        let Some(block) = forms.into_iter().nth(placed.form) else {
            return false;
        };
        if let Some(thing) = spot.thing {
            self.lead(&placed.rect, thing);
        }
        self.placed.push(Label {
            kind,
            rect: placed.rect,
            form: placed.form,
        });
        self.blocks.push((block, placed.rect));
        true
    }

    /// Keeps a place free for something that is drawn by itself.
    #[cfg(feature = "water-and-air")]
    pub(crate) fn reserve(
        &mut self,
        kind: LabelKind,
        size: (f64, f64),
        spot: Spot,
    ) -> Option<Rect> {
        let placed = self.board.place(&Wanted {
            forms: vec![size],
            at: spot.at,
            room: spot.room,
            reach: spot.reach,
            needed: spot.needed,
        })?;
        let rect = placed.rect;
        self.placed.push(Label {
            kind,
            rect,
            form: 0,
        });
        Some(rect)
    }

    /// Draws the leaders, then the labels.
    pub(crate) fn draw(self, scene: &mut Scene) -> Vec<Label> {
        for (from, to) in &self.leaders {
            scene.line("dw-d-leader", *from, *to);
        }
        for (block, rect) in &self.blocks {
            block.draw(scene, rect, self.scale);
        }
        self.placed
    }

    fn lead(&mut self, rect: &Rect, thing: Point) {
        let nearest = Point::new(
            kept(thing.x, rect.x, rect.right()),
            kept(thing.y, rect.y, rect.bottom()),
        );
        let far = if nearest.x == thing.x { 26.0 } else { 14.0 };
        if far < nearest.distance(thing) {
            self.leaders.push((nearest, thing));
        }
    }
}

/// A leg's balloon, on a wide drawing with triangle and fall where there is room.
pub(crate) fn leg(view: &View<'_>, place: usize, drawn: &Stretch, narrow: bool) -> Vec<Block> {
    let Some(leg) = view.legs().get(place) else {
        return Vec::new();
    };
    let balloon = Some(view.leg_number(place).to_string());
    let fall = |signed| Line::new(wording::fall(view, place, leg, signed));
    let slope = if drawn.to.point.y < drawn.from.point.y {
        Slope::Rising
    } else {
        Slope::Falling
    };
    let level = drawn.to.point.y == drawn.from.point.y;
    let words = Block {
        balloon: balloon.clone(),
        slope: None,
        lines: vec![fall(true)],
    };
    let bare = Block {
        balloon,
        ..Block::default()
    };
    if narrow {
        return vec![bare];
    }
    if drawn.steep || level {
        return vec![words, bare];
    }
    let full = Block {
        slope: Some(slope),
        lines: vec![fall(false)],
        ..words.clone()
    };
    vec![full, words, bare]
}

/// What forms in a leg: nothing to say where that is less than counts as wet.
pub(crate) fn leg_water(view: &View<'_>, leg: &LegOutcome) -> Option<Vec<Block>> {
    if leg.condensate.to_grams_per_hour() <= WET_TUBE_G_H {
        return None;
    }
    let tone = if leg.condensate.to_grams_per_hour() <= 2.0 * leg.frost.to_grams_per_hour() {
        Tone::Frost
    } else {
        Tone::Water
    };
    let words = wording::water(leg.condensate, view.style);
    Some(vec![Block::of(vec![Line::new(words).toned(tone).bold()])])
}

/// A stretch in one state.
pub(crate) fn stretch(view: &View<'_>, stretch: &StateStretch) -> Vec<Block> {
    let (word, tone) = state(stretch.state);
    let span = wording::span(stretch.from_m, stretch.to_m, view.style);
    let line = |words: String| Line::new(words).toned(tone).bold();
    let full = Block::of(vec![line(format!("{word}, {span}"))]);
    vec![full, Block::of(vec![line(span)])]
}

/// The words for a state and its ink.
pub(crate) fn state(state: State) -> (&'static str, Tone) {
    match state {
        State::Water => ("wet inside", Tone::Water),
        State::Frost => ("frost inside", Tone::Frost),
        State::Mist => ("mist", Tone::Mist),
        State::Sweat => ("sweats outside", Tone::Sweat),
    }
}

/// A space's name and temperature.
pub(crate) fn space(view: &View<'_>, band: &Band, narrow: bool) -> Vec<Block> {
    let Some(space) = view.run.spaces.get(band.space) else {
        return Vec::new();
    };
    let name = view.space_name(band.space);
    let temperature = TEMPERATURE
        .show_entered(space.temperature, view.style)
        .to_string();
    let air = || Line::new(temperature.clone()).toned(Tone::Second);
    let bold = |size| Line::new(name).sized(size).bold();
    let mut forms = vec![
        Block::of(vec![bold(Size::Name), air()]),
        Block::of(vec![bold(Size::Label), air()]),
    ];
    forms.extend(broken(name).map(|(first, second)| {
        let line = |words: &str| Line::new(words).bold();
        Block::of(vec![line(first), line(second), air()])
    }));
    forms.push(Block::of(vec![air()]));
    if narrow {
        forms.remove(0);
    }
    forms
}

/// The duct and its air.
pub(crate) fn duct(view: &View<'_>) -> Vec<Block> {
    let air = &view.outcome.duct_air;
    let name = || Line::new(view.names.duct.clone()).bold();
    let temperature = wording::celsius(air.temperature, view.style);
    let dew_point = wording::dew_point(air, view.style);
    let line = |words: String| Line::new(words).toned(Tone::Second);
    vec![
        Block::of(vec![
            name(),
            line(format!("{temperature}, dew point {dew_point}")),
        ]),
        Block::of(vec![
            name(),
            line(temperature.clone()),
            line(format!("dew point {dew_point}")),
        ]),
        Block::of(vec![name()]),
        Block::of(vec![
            line(temperature),
            line(format!("dew point {dew_point}")),
        ]),
    ]
}

/// The detector and how far it lies from the duct in height.
pub(crate) fn detector(view: &View<'_>) -> Vec<Block> {
    let rise: f64 = view.run.intake.iter().map(|leg| leg.rise.to_metres()).sum();
    let word = || Line::new("Detector").bold();
    let height = if rise.abs() < 0.05 {
        "level with the duct".to_owned()
    } else {
        let side = if rise < 0.0 { "below" } else { "above" };
        format!(
            "{} {side} the duct",
            wording::metres(rise.abs(), view.style)
        )
    };
    let quiet = |words: String| Line::new(words).toned(Tone::Second);
    let mut forms = vec![Block::of(vec![word(), quiet(height.clone())])];
    if let Some((first, second)) = broken(&height) {
        let lines = vec![word(), quiet(first.to_owned()), quiet(second.to_owned())];
        forms.push(Block::of(lines));
    }
    forms.push(Block::of(vec![word()]));
    forms
}

/// The other tube, which is broken off here.
pub(crate) fn stub(view: &View<'_>) -> Vec<Block> {
    let (name, way, legs) = match view.tube {
        dewrun_run::Tube::Intake => ("exhaust tube", "to the duct", &view.run.exhaust),
        dewrun_run::Tube::Exhaust => ("intake tube", "from the duct", &view.run.intake),
    };
    let length: f64 = legs.iter().map(|leg| leg.length.to_metres()).sum();
    let length = wording::metres(length, view.style);
    let quiet = |words: String| Line::new(words).toned(Tone::Second);
    vec![
        Block::of(vec![Line::new(name), quiet(format!("{length}, {way}"))]),
        Block::of(vec![Line::new(name)]),
    ]
}

/// A name in two lines, broken near its middle.
fn broken(name: &str) -> Option<(&str, &str)> {
    let middle = name.len() / 2;
    let place = name
        .match_indices(' ')
        .map(|(place, _)| place)
        .min_by_key(|place| place.abs_diff(middle))?;
    Some((name.get(..place)?, name.get(place + 1..)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_break_near_their_middle() {
        assert_eq!(
            broken("Make-up air duct"),
            Some(("Make-up", "air duct")),
            "two lines of much the same length"
        );
        assert_eq!(broken("Lobby"), None, "nothing to break at");
    }
}
