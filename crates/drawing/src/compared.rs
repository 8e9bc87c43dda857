//! Another layout of the same detector, drawn thin under the thick one on the same scales.

use dewrun_quantity::measure::TEMPERATURE;
use dewrun_quantity::{Style, Temperature};
use dewrun_run::ProfilePoint;

use crate::elevation::{Elevation, bends_of};
use crate::frame::Frame;
use crate::geometry::{Point, kept};
use crate::path::Path;
use crate::profile::Profile;
use crate::scene::{Item, Scene};
use crate::view::View;

/// The line of the other layout, for the style sheet.
const OTHER: &str = "dw-o-line";

/// Draws the middle of another tube under the one of an elevation, from the same inlet and to the same scale.
pub fn compare_elevation(elevation: &mut Elevation, other: &View<'_>) {
    let factors = elevation.ground.course.factors;
    let inlet = elevation.bends.first().copied().unwrap_or_default();
    let points = bends_of(other, &elevation.frame, factors, inlet);
    let line = Path::through(points);
    put_under(&mut elevation.scene, "dw-d-bore", vec![line]);
    let note = format!("; thin: {}", other.names.run);
    elevation.scale_note.push_str(&note);
}

/// Draws air, inner wall and dew point along another tube under the curves of a profile, on the same scales.
pub fn compare_profile(profile: &mut Profile, frame: &Frame, other: &View<'_>) {
    let Some(answer) = other.answer() else {
        return;
    };
    let values: [fn(&ProfilePoint) -> Option<Temperature>; 3] = [
        |point| Some(point.air),
        |point| Some(point.inner_wall),
        |point| point.dew_point,
    ];
    let curve = |value: fn(&ProfilePoint) -> Option<Temperature>| {
        let place = |point: &ProfilePoint| place(profile, frame, other.style, point, value(point)?);
        Path::through(answer.profile.iter().filter_map(place))
    };
    let curves = values.into_iter().map(curve).collect();
    put_under(&mut profile.scene, "dw-c-wall", curves);
}

/// Where a temperature lies; none past the end of the axis.
fn place(
    profile: &Profile,
    frame: &Frame,
    style: Style,
    point: &ProfilePoint,
    temperature: Temperature,
) -> Option<Point> {
    let x = frame.px(point.x.to_metres());
    let read = TEMPERATURE.unit(style.units).read;
    let y = profile.temperature.px(read(temperature));
    let plot = &profile.plot;
    (x <= plot.right()).then(|| Point::new(x, kept(y, plot.y, plot.bottom())))
}

/// Puts paths under the first item of a class.
fn put_under(scene: &mut Scene, class: &str, paths: Vec<Path>) {
    let is_it = |item: &Item| matches!(item, Item::Path { class: own, .. } if *own == class);
    let at = scene.items.iter().position(is_it).unwrap_or(0);
    let paths = paths.into_iter().filter(|path| !path.is_empty());
    scene
        .items
        .splice(at..at, paths.map(|path| Item::Path { class: OTHER, path }));
}
