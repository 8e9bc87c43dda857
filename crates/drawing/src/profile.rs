//! The profile: air, inner wall and dew point along the tube, what forms per metre, and which lengths are in which state.

mod axis;
mod curves;
mod describe;
mod lanes;
mod layout;
mod names;
mod water;

use dewrun_run::{TubeOutcome, course};

use crate::frame::Frame;
use crate::geometry::Rect;
use crate::place::Board;
use crate::scale::Scale;
use crate::scene::Scene;
use crate::states::states;
use crate::view::View;

/// Straight pieces that a curve is drawn with between two places of the march.
const CURVE_PARTS: u16 = 8;

/// A profile drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// The shapes and texts.
    pub scene: Scene,
    /// Where temperatures are plotted, px.
    pub plot: Rect,
    /// Where water per metre is plotted, px.
    pub strip: Rect,
    /// The labels at the curves, px.
    pub labels: Vec<Rect>,
    /// Base line of the length axis.
    pub(crate) axis: f64,
    /// From a temperature in the unit shown to px.
    pub(crate) temperature: Scale,
}

/// Draws the profile of a tube on the length axis of its elevation; none where the tube is not drawn.
#[must_use]
pub fn profile(view: &View<'_>, frame: &Frame) -> Option<Profile> {
    let answer = view.answer()?;
    let found = states(answer);
    let answer = &TubeOutcome {
        profile: course(&answer.profile, CURVE_PARTS),
        ..answer.clone()
    };
    let plan = layout::plan(view, frame, answer, &found);
    let mut scene = Scene {
        prefix: "profile",
        width: frame.width,
        height: plan.height,
        title: describe::title(view),
        description: describe::sentence(view, answer),
        items: Vec::new(),
    };
    let mut board = Board::new(plan.plot);
    axis::draw(&mut scene, view, &plan);
    curves::draw(&mut scene, &mut board, view, &plan, answer, &found);
    let mut labels = names::draw(&mut scene, &mut board, view, &plan, answer);
    labels.extend(water::draw(&mut scene, view, &plan, answer));
    lanes::draw(&mut scene, view, &plan, &found);
    Some(Profile {
        scene,
        plot: plan.plot,
        strip: plan.strip,
        labels,
        axis: plan.axis,
        temperature: plan.temperature,
    })
}
