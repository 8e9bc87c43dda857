//! The elevation: duct, tube, spaces and detector to scale, with the water where it is.

mod building;
mod course;
mod crossing;
mod describe;
mod fitted;
mod furniture;
mod handles;
mod labels;
mod layout;
mod notes;
mod outline;
mod places;
mod rows;
mod running;
mod site;
mod structure;
mod tube;
#[cfg(feature = "water-and-air")]
mod water;

use crate::block::Line;
use crate::frame::{Frame, Room};
use crate::geometry::{Point, Rect};
use crate::place::Board;
use crate::pointer::flag_height;
use crate::scene::Scene;
use crate::states::states;
use crate::view::View;

pub(crate) use course::{Course, FLAT_BELOW, Stretch};
pub use fitted::DrawnTrap;
pub use handles::Handle;
pub use labels::{Label, LabelKind};
pub use layout::Held;
pub(crate) use layout::bends_of;
pub use places::{Sheet, elevation_undrawn};
pub use site::{elevation_for_site, level, site_length, site_place};
#[cfg(feature = "water-and-air")]
pub use water::{elevation_of_whole, elevation_of_whole_on_paper};

/// An elevation drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Elevation {
    /// The shapes and texts.
    pub scene: Scene,
    /// The length axis, which the profile under it shares.
    pub frame: Frame,
    /// The labels and where they lie.
    pub labels: Vec<Label>,
    /// By how much heights and falls are drawn larger than lengths.
    pub heights_factor: f64,
    /// The same for falls of legs flatter than 1:5.
    pub falls_factor: f64,
    /// What lengths, heights and falls are drawn to, in words.
    pub scale_note: String,
    /// Where each bend of the tube lies, inlet and outlet included, px.
    pub bends: Vec<Point>,
    /// Of each leg the diamond at its end; none on a sheet of paper.
    pub handles: Vec<Handle>,
    /// Its traps, in the order of the view.
    pub traps: Vec<DrawnTrap>,
    /// What the things at the tube's inlet and outlet cover, px.
    pub ends: [Rect; 2],
    /// What a drawing of the changed tube keeps as long as a hand is on it.
    pub held: Held,
    /// Where the tube lies over the axis.
    pub(crate) ground: Ground,
    /// What is drawn and no label.
    pub(crate) solids: Vec<Rect>,
}

/// What leads from a place on the tube down to the length axis, px.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Ground {
    pub(crate) course: Course,
    /// Half of the bore.
    pub(crate) half: f64,
    /// Under the hatched edge of the floor, where joints turn off to their place on the axis.
    pub(crate) floor: f64,
}

/// What stands in and hangs at the tube beside what the steady answer shows.
pub(crate) trait Standing {
    /// Draws it, and tells the board where it lies.
    fn draw(&self, scene: &mut Scene, board: &mut Board, plan: &layout::Plan);

    /// Says what lies close under the tube, before the rows of dimensions take their places.
    fn first(&self, labels: &mut labels::Labels<'_>, plan: &layout::Plan);

    /// Says what must not be missing.
    fn label(&self, scene: &mut Scene, labels: &mut labels::Labels<'_>, plan: &layout::Plan);

    /// Says the rest, where there is room.
    fn note(&self, labels: &mut labels::Labels<'_>, plan: &layout::Plan);

    /// What becomes of a trap, under its name.
    fn trap(&self, trap: usize) -> Vec<Line>;

    /// All of it in sentences.
    fn tell(&self) -> String;
}

/// Draws the elevation of a tube.
///
/// Lengths and heights are to one scale; the fall of legs flatter than 1:5 is drawn larger by one common factor.
/// Where there is no room for that, heights are drawn smaller, and the note says so.
#[must_use]
pub fn elevation(view: &View<'_>, room: Room) -> Elevation {
    let flag = flag_height(view, room.text);
    drawn(view, room, layout::plan(view, room, flag, None), None)
}

/// The same at the scale and place that a drawing before had, so that nothing slips away under the hand that draws a leg.
#[must_use]
pub fn elevation_held(view: &View<'_>, room: Room, held: &Held) -> Elevation {
    let flag = flag_height(view, room.text);
    drawn(view, room, layout::plan(view, room, flag, Some(held)), None)
}

/// Draws the elevation as a sheet of paper takes it: in its width, and without the room that the pointer's flag has on the screen.
#[must_use]
pub fn elevation_on_paper(view: &View<'_>) -> Elevation {
    drawn(
        view,
        Room::PAPER,
        layout::plan(view, Room::PAPER, 0.0, None),
        None,
    )
}

/// What an elevation shows of its tube.
#[derive(Clone, Copy)]
pub(crate) enum Shows<'a> {
    /// The answer, and what stands in the tube besides.
    Answer(Option<&'a dyn Standing>),
    /// What is set out on site.
    Site,
}

fn drawn(
    view: &View<'_>,
    room: Room,
    plan: layout::Plan,
    standing: Option<&dyn Standing>,
) -> Elevation {
    drawn_as(view, room, plan, Shows::Answer(standing))
}

fn drawn_as(view: &View<'_>, room: Room, plan: layout::Plan, shows: Shows<'_>) -> Elevation {
    let (for_site, standing) = match shows {
        Shows::Answer(standing) => (false, standing),
        Shows::Site => (true, None),
    };
    let mut scene = Scene {
        prefix: if for_site { "site" } else { "elevation" },
        width: room.width,
        height: plan.height,
        title: describe::title(view),
        description: describe::sentence(view, !for_site),
        items: Vec::new(),
    };
    let mut board = Board::new(scene.bounds());
    let answer = view.answer().filter(|_| !for_site);
    let states = answer.map(states).unwrap_or_default();
    structure::draw(&mut scene, &mut board, &plan);
    let tube = tube::Tube {
        course: &plan.course,
        half: plan.half,
    };
    if !for_site {
        structure::carry_joints(&mut scene, &plan);
    }
    fitted::draw_hangers(&mut scene, view, &plan);
    tube.draw(&mut scene, view);
    tube.draw_states(&mut scene, view, &states);
    for (device, end) in [(&plan.inlet, plan.start()), (&plan.outlet, plan.end())] {
        device.draw(&mut scene, end, plan.half);
        board.keep_off(device.place(end).grown(2.0));
    }
    structure::keep_off_ends(&mut board, &plan);
    structure::keep_off_tube(&mut board, &plan);
    let arrows = tube.arrows(&mut scene, view);
    structure::keep_off_arrows(&mut board, &arrows);
    let traps = fitted::draw_traps(&mut scene, &mut board, view, &plan);
    if let Some(standing) = standing {
        scene.description.push_str(&standing.tell());
        standing.draw(&mut scene, &mut board, &plan);
    }
    let handles = if plan.frame.on_paper {
        Vec::new()
    } else {
        handles::draw(&mut scene, &mut board, &plan)
    };
    let labels = match shows {
        Shows::Site => site::draw_labels(&mut scene, &mut board, view, &plan, &traps),
        Shows::Answer(standing) => notes::draw(
            &mut scene,
            &mut board,
            view,
            &plan,
            (&states, &traps),
            standing,
        ),
    };
    let solids = board.solids().to_vec();
    made(
        plan,
        scene,
        labels,
        (traps, handles),
        solids,
        standing.is_some(),
    )
}

/// The elevation that a plan and what was drawn by it make.
fn made(
    plan: layout::Plan,
    scene: Scene,
    labels: Vec<Label>,
    (traps, handles): (Vec<DrawnTrap>, Vec<Handle>),
    solids: Vec<Rect>,
    has_water: bool,
) -> Elevation {
    Elevation {
        scene,
        frame: plan.frame,
        labels,
        heights_factor: plan.course.factors.heights,
        falls_factor: plan.course.factors.falls,
        scale_note: describe::scale_note(&plan, has_water),
        handles,
        traps,
        ends: [
            plan.inlet.place(plan.start()),
            plan.outlet.place(plan.end()),
        ],
        held: plan.held(),
        bends: tube::points(&plan.course.vertices),
        solids,
        ground: Ground {
            half: plan.half,
            floor: plan.outer.bottom() + layout::EDGE,
            course: plan.course,
        },
    }
}
