//! Entries of a log over what was modelled of their time, on one axis.

use super::axis::Axis;
use super::{Found, Modelled, entries, lanes};
use crate::frame::Room;
use crate::geometry::Point;
use crate::scene::Scene;
use crate::text::{Size, Text};

/// Heights of lanes and of what stands between them, px.
const HEAD: f64 = 22.0;
const LOG: f64 = 56.0;
const WATER: f64 = 104.0;
const AIRFLOW: f64 = 60.0;
const AIR: f64 = 60.0;
const SAYS: f64 = 84.0;
const BETWEEN: f64 = 16.0;
const NAME: f64 = 18.0;

/// The log over modelled water, airflow and duct air, and what each of its entries says; nothing without a log.
#[must_use]
pub fn timeline(found: &Found<'_>, modelled: &Modelled<'_>, room: Room) -> Option<Scene> {
    let log = found.log?;
    let axis = Axis::new(log.period(), room);
    let text = axis.text;
    let mut y = HEAD * text;
    let mut lane = |height: f64| {
        if axis.is_narrow {
            y += NAME * text;
        }
        let rect = axis.lane(y, height * text);
        y = rect.bottom() + BETWEEN * text;
        rect
    };
    let [of_log, water, airflow, air, says] = [LOG, WATER, AIRFLOW, AIR, SAYS].map(&mut lane);
    let mut scene = Scene {
        prefix: "dw-tr",
        width: axis.width,
        height: says.bottom() + 2.0 * text,
        title: "The log over what was modelled of its time".to_owned(),
        description: description(found, modelled),
        items: Vec::new(),
    };
    for ground in [&water, &airflow, &air] {
        scene.rect("dw-g-sheet", ground);
    }
    for (at, name) in axis.periods() {
        let (top, bottom) = (Point::new(at, 2.0), Point::new(at, says.bottom()));
        scene.line("dw-d-grid", top, bottom);
        let words = Text::new(Point::new(at + 4.0 * text, 12.0 * text), name);
        scene.text(words.sized(Size::Least).bold());
    }
    let level_g = modelled.hours.levels_g(log);
    entries::lines(&mut scene, &axis, log, (of_log.y, says.y));
    let closes_g = found.low_point.map(|one| one.closes_g);
    lanes::water(
        &mut scene,
        &axis,
        &water,
        (log, modelled, &level_g),
        closes_g,
    );
    lanes::airflow(&mut scene, &axis, &airflow, modelled);
    lanes::air(&mut scene, &axis, &air, modelled);
    entries::marks(&mut scene, &axis, &of_log, (log, modelled.style));
    entries::says(&mut scene, &axis, &says, (found, log, modelled.style));
    Some(scene)
}

/// What it shows, from its data.
fn description(found: &Found<'_>, modelled: &Modelled<'_>) -> String {
    let Some(log) = found.log else {
        return String::new();
    };
    let each: Vec<String> = entries::counted(log)
        .into_iter()
        .map(|(kind, count)| format!("{} {count}", kind.name()))
        .collect();
    let mut causes = found.ranking.causes.iter();
    let (first, second) = (causes.next(), causes.next());
    let against = first
        .zip(second)
        .map_or_else(String::new, |(first, second)| {
            format!(
                " Bars weigh each trouble for \u{201c}{}\u{201d} against \u{201c}{}\u{201d}.",
                first.cause.name(),
                second.cause.name()
            )
        });
    let climate = if modelled.hours.is_climate {
        " Its hours are those of another year."
    } else {
        ""
    };
    format!(
        "{} entries: {}. Under them the water that gathers as it is modelled, let out when the log says so, the airflow, and the dew point of the duct\u{2019}s air.{climate}{against}",
        log.entries().len(),
        each.join(", ")
    )
}
