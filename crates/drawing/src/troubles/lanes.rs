//! What was modelled of a log's time: the water that gathers, the airflow, the dew point of the duct's air.

use dewrun_quantity::Temperature;
use dewrun_quantity::Units;
use dewrun_quantity::format::fixed;
use dewrun_quantity::measure::TEMPERATURE;
use dewrun_troubles::Log;

use super::Modelled;
use super::axis::Axis;
use crate::extremes::extremes;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::scale::Scale;
use crate::scene::Scene;
use crate::text::{Size, Text, Tone};
use crate::ticks::{rounded_span, ticks};
use crate::wording::volume;
use crate::year::stamp::HOUR_S;
use crate::year::written;

/// Values closer together than this share the points of a curve, px.
const FINE: f64 = 1.5;
/// A US fluid ounce, mL.
const OUNCE_ML: f64 = 29.573_529_562_5;
/// Rings of what was found, px.
const RING: f64 = 3.5;

/// Water that gathers, let out when the log says so; rings are what was found.
pub(super) fn water(
    scene: &mut Scene,
    axis: &Axis,
    rect: &Rect,
    (log, modelled, level_g): (&Log, &Modelled<'_>, &[f64]),
    closes_g: Option<f64>,
) {
    let style = modelled.style;
    let (unit, each) = match style.units {
        Units::Si => ("mL", 1.0),
        Units::InchPound => ("fl oz", OUNCE_ML),
    };
    let most = level_g.iter().copied().fold(0.0, f64::max);
    let closes = closes_g.filter(|closes| *closes < 6.0 * most.max(1.0));
    let found = log.entries().iter().filter_map(|one| one.grams);
    let found = found.fold(0.0, f64::max);
    let top = 1.15 * most.max(closes.unwrap_or(0.0)).max(found).max(1.0) / each;
    let (_, top, marks) = rounded_span(0.0, top, 4);
    let scale = Scale::new((0.0, top), (rect.bottom(), rect.y));
    for value in marks.values.iter().filter(|value| **value <= top) {
        number(
            scene,
            axis,
            scale.px(*value),
            fixed(*value, marks.decimals, style.mark),
        );
    }
    let let_out = |hour: usize| {
        hour.checked_sub(1).is_some_and(|before| {
            level_g
                .get(hour)
                .zip(level_g.get(before))
                .is_some_and(|(now, then)| now < then)
        })
    };
    let points = level_g.iter().enumerate().map(|(hour, grams)| {
        let here = Point::new(px(axis, modelled, hour), scale.px(grams / each));
        (here, let_out(hour))
    });
    let curve = extremes(points, axis.left, FINE);
    let ends = curve.first().zip(curve.last());
    if let Some((first, last)) = ends {
        let down = [
            Point::new(last.x, rect.bottom()),
            Point::new(first.x, rect.bottom()),
        ];
        scene.path("dw-s-water", Path::area(curve.iter().copied().chain(down)));
    }
    if let Some(grams) = closes {
        let words = format!("closes at {}", volume(grams, style));
        limit(scene, axis, rect, scale.px(grams / each), words);
    }
    for entry in log.entries() {
        let Some(grams) = entry.grams else { continue };
        let at = Point::new(axis.px(entry.at_s), scale.px(grams / each));
        scene.circle("dw-tr-ring", at, RING * axis.text);
    }
    let name = format!("Water, {unit}");
    let told = if modelled.hours.is_climate {
        "of another year"
    } else {
        "modelled"
    };
    axis.names(scene, rect, &[&name, told, "rings: found"]);
}

/// The airflow without standing water, between its limits.
pub(super) fn airflow(scene: &mut Scene, axis: &Axis, rect: &Rect, modelled: &Modelled<'_>) {
    let mark = modelled.style.mark;
    let percent: Vec<f64> = modelled
        .hours
        .reading
        .iter()
        .map(|part| 100.0 * part)
        .collect();
    let high = modelled.limits.map_or(110.0, |[_, high]| 1.1 * high);
    let top = percent.iter().copied().fold(high, f64::max).min(200.0);
    let scale = Scale::new((0.0, top), (rect.bottom(), rect.y));
    for value in ticks(0.0, top, 3).values {
        number(scene, axis, scale.px(value), fixed(value, 0, mark));
    }
    scene.path("dw-c-air", curve(axis, modelled, &percent, &scale));
    for (name, value) in [("low limit", 0), ("high limit", 1)] {
        let Some(value) = modelled
            .limits
            .and_then(|limits| limits.get(value).copied())
        else {
            continue;
        };
        let words = format!("{name} {}\u{a0}%", fixed(value, 0, mark));
        limit(scene, axis, rect, scale.px(value), words);
    }
    axis.names(scene, rect, &["Airflow, %", "modelled, mean"]);
}

/// The dew point of the duct's air.
pub(super) fn air(scene: &mut Scene, axis: &Axis, rect: &Rect, modelled: &Modelled<'_>) {
    let style = modelled.style;
    let unit = TEMPERATURE.unit(style.units);
    let shown = |celsius: f64| (unit.read)(Temperature::celsius(celsius));
    let values: Vec<f64> = modelled.dew_point_c.iter().map(|one| shown(*one)).collect();
    let known = || values.iter().copied().filter(|value| value.is_finite());
    let (low, high) = known().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| {
        (low.min(one), high.max(one))
    });
    let name = format!("Dew point, {}", unit.name);
    axis.names(scene, rect, &[&name, "of the duct\u{2019}s air"]);
    if high < low {
        return;
    }
    let (low, high, marks) = rounded_span(low, high.max(low + 1.0), 4);
    let scale = Scale::new((low, high), (rect.bottom(), rect.y));
    for value in &marks.values {
        number(
            scene,
            axis,
            scale.px(*value),
            fixed(*value, marks.decimals, style.mark),
        );
    }
    scene.path("dw-c-formed", curve(axis, modelled, &values, &scale));
}

/// Where an hour lies.
fn px(axis: &Axis, modelled: &Modelled<'_>, hour: usize) -> f64 {
    let since = i64::try_from(hour).unwrap_or(0) * HOUR_S;
    axis.px(modelled.hours.first_s + since)
}

fn curve(axis: &Axis, modelled: &Modelled<'_>, values: &[f64], scale: &Scale) -> Path {
    let known = values
        .iter()
        .enumerate()
        .filter(|(_, value)| value.is_finite());
    let points = known.map(|(hour, value)| {
        (
            Point::new(px(axis, modelled, hour), scale.px(*value)),
            false,
        )
    });
    Path::through(extremes(points, axis.left, FINE))
}

/// A number beside its line, where there is room.
fn number(scene: &mut Scene, axis: &Axis, y: f64, words: String) {
    if !axis.is_narrow {
        written::tick(scene, Point::new(axis.left, y), words, axis.text);
    }
}

/// A broken line across with its words on it.
fn limit(scene: &mut Scene, axis: &Axis, rect: &Rect, y: f64, words: String) {
    if y < rect.y {
        return;
    }
    scene.line(
        "dw-d-planned",
        Point::new(rect.x, y),
        Point::new(rect.right(), y),
    );
    let at = Point::new(rect.x + 6.0, y - 4.0 * axis.text);
    let words = Text::new(at, words).sized(Size::Least).toned(Tone::Second);
    scene.text(words.haloed());
}
