//! The drawings of a sheet: the route with its profile on one length axis, and the dew square.

use dewrun_drawing::{
    Room, Scene, dew_square as square, elevation_of_whole_on_paper, escaped, profile, svg,
};
use dewrun_quantity::Style;
use dewrun_run::Tube;

use super::Worked;
use super::flow::Piece;
use super::table::HEADING;
use crate::markup::{element, heading};
use crate::text_lines::PX_MM;

/// A note under a drawing, mm.
const NOTE: f64 = 5.5;
/// The square is no wider than this, px: what is over its width is its height.
const SQUARE: Room = Room {
    width: 620.0,
    text: 0.882,
};

/// A tube with its profile; none where it is not drawn.
pub(super) fn route(worked: &Worked<'_>, tube: Tube, style: Style) -> Option<Piece> {
    let [prefix, profile_prefix] = match tube {
        Tube::Intake => ["calc-intake", "calc-intake-profile"],
        Tube::Exhaust => ["calc-exhaust", "calc-exhaust-profile"],
    };
    let names = worked.told.names_as_drawn();
    let view = worked.told.view(&names, tube, style);
    view.answer()?;
    let mut drawn = elevation_of_whole_on_paper(&view, Some(worked.told.whole));
    drawn.scene.prefix = prefix;
    let mut along = profile(&view, &drawn.frame)?.scene;
    along.prefix = profile_prefix;
    let name = match tube {
        Tube::Intake => "Intake tube",
        Tube::Exhaust => "Exhaust tube",
    };
    let height = [&drawn.scene, &along].map(|scene| scene.height * PX_MM);
    let html = format!(
        "{}{}{}",
        heading(name, &drawn.scale_note),
        figure(&drawn.scene),
        figure(&along)
    );
    Some(Piece::Figure(html, HEADING + height[0] + height[1]))
}

/// The dew square with the dry boundary, and what that says in words.
pub(super) fn dew_square(worked: &Worked<'_>, style: Style) -> Option<Piece> {
    let names = worked.told.names_as_drawn();
    let view = worked.told.view(&names, Tube::Intake, style);
    let mut drawn = square(&view, worked.boundary, &[], SQUARE).scene;
    drawn.prefix = "calc-square";
    let beside = "temperature across, dew point up, on one scale; above the diagonal it is wet";
    let mut note = String::new();
    if let Some(staying) = worked.staying {
        let told = dewrun_drawing::dry_limits(&view, staying).map(|one| {
            let now = if one.now.is_empty() {
                String::new()
            } else {
                format!(" ({})", one.now)
            };
            format!("{}: {}, {}{now}", one.name, one.limit, one.words)
        });
        let words = format!(
            "What would stay dry, by one change at a time. {}.",
            told.join(". ")
        );
        note = element("p", "dw-calc__note", &escaped(&words));
    }
    let height = HEADING + drawn.height * PX_MM + 2.0 * NOTE;
    let html = format!("{}{}{note}", heading("Dew square", beside), figure(&drawn));
    Some(Piece::Figure(html, height))
}

/// A drawing in its frame.
pub(super) fn figure(scene: &Scene) -> String {
    element("figure", "dw-calc__figure", &svg(scene))
}
