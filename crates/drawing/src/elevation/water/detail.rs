//! The low point that makes trouble first, enlarged, with its levels.

use dewrun_run::LowPoint;

use super::enlarged::Lens;
use super::pool::{Pool, level_mark};
use super::{Water, ice, told};
use crate::block::{Block, Line};
use crate::elevation::labels::{LabelKind, Labels, Spot};
use crate::elevation::layout::Plan;
use crate::elevation::outline::beside;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::text::{Anchor, Text, Tone};
use crate::wording;

/// Half of the bore in the circle, px.
const BORE: f64 = 22.0;
/// Radius of the circle, px.
const RADIUS: f64 = 58.0;
/// Words of the levels left of the circle take so much, px.
const LEVELS: f64 = 44.0;
/// Between circle and words, px.
const GAP: f64 = 12.0;

/// Draws the detail of the worst low point where there is room, and says which one it is.
pub(super) fn place(
    scene: &mut Scene,
    labels: &mut Labels<'_>,
    plan: &Plan,
    water: &Water<'_>,
) -> Option<usize> {
    let rows = plan.rows?;
    let after = |low: &LowPoint| low.sealed.or(low.first_slugs).map(|time| time.to_hours());
    let sooner = |one: &LowPoint, next: &LowPoint| {
        let [one, next] = [one, next].map(|low| after(low).unwrap_or(f64::INFINITY));
        one.total_cmp(&next)
    };
    let (number, low, pool) = water
        .pools(plan)
        .min_by(|(_, one, _), (_, next, _)| sooner(one, next))?;
    let words = words(low, water);
    let (wide, high) = words.size(labels.scale);
    let (levels, radius) = (LEVELS * labels.scale, RADIUS);
    let width = levels + 2.0 * radius + GAP + wide;
    let height = (2.0 * radius + 4.0).max(high);
    let top = rows.dimensions.unwrap_or(rows.bar) + 6.0;
    let room = Rect::new(
        plan.outer.x + 4.0,
        top,
        plan.outer.width - 8.0,
        plan.outer.bottom() - top - 2.0,
    );
    let spot = Spot {
        at: Point::new(
            pool.at.x + width / 2.0 - levels - radius + 70.0,
            room.y + height / 2.0,
        ),
        room,
        reach: Point::new(264.0, 40.0),
        needed: false,
        thing: None,
    };
    let rect = labels.reserve(LabelKind::Detail(number), (width, height), spot)?;
    let lens = Lens {
        over: pool.at,
        centre: Point::new(rect.x + levels + radius, rect.centre().y),
        radius,
        times: BORE / plan.half,
    };
    draw(scene, plan, &lens, (&pool, low), water);
    let corner = Rect::new(
        rect.x + width - wide,
        rect.centre().y - high / 2.0,
        wide,
        high,
    );
    words.draw(scene, &corner, labels.scale);
    Some(number)
}

/// What is said beside the circle.
///
/// Of water that seals the bore the circle shows the level of the first trouble, before it does.
fn words(low: &LowPoint, water: &Water<'_>) -> Block {
    let style = water.view.style;
    let place = wording::metres(low.at.to_metres(), style);
    let standing = told::standing(low, style);
    let mut lines = vec![Line::new(format!("A\u{a0} Low point, {place}")).bold()];
    let blue = |words: String| Line::new(words).toned(Tone::Water).bold();
    let quiet = |words: String| Line::new(words).toned(Tone::Second);
    let first = told::first_trouble(low, style);
    if low.stand.sealed {
        lines.extend(first.map(blue));
        lines.push(Line::new(told::outcome(low, style)).bold());
        lines.push(quiet(format!("{standing} when traps")));
        lines.push(quiet("are next emptied".to_owned()));
    } else {
        lines.push(blue(standing));
        lines.push(quiet("when traps are next emptied".to_owned()));
        lines.push(Line::new(told::outcome(low, style)).bold());
        lines.extend(first.map(quiet));
    }
    if let (true, Some(time)) = (ice::is_frozen(low), low.freezing_time) {
        let words = format!("freezes in {}", wording::time(time, style));
        lines.push(Line::new(words).toned(Tone::Frost).bold());
    }
    Block::of(lines)
}

fn draw(
    scene: &mut Scene,
    plan: &Plan,
    lens: &Lens,
    (pool, low): (&Pool, &LowPoint),
    whole: &Water<'_>,
) {
    let Lens { centre, radius, .. } = *lens;
    let ring = Pool::ring(plan);
    let far = pool.at.distance(centre).max(1e-6);
    scene.line(
        "dw-d-leader",
        pool.at.towards(centre, ring / far),
        centre.towards(pool.at, radius / far),
    );
    scene.circle("dw-d-lens", centre, radius);
    let half = plan.half;
    let shown = if low.stand.sealed {
        pool.level_of(first_share(whole, low))
    } else {
        pool.level
    };
    scene.path("dw-d-bore", Path::area(lens.area(&pool.bore)));
    let water = Path::area(lens.area(&pool.filled(shown)));
    scene.path("dw-s-water", water.clone());
    if ice::is_frozen(low) {
        scene.hatched(Hatch::Ice, water);
    }
    for side in [half, -half] {
        for [from, to] in lens.line(&beside(&pool.tube, side)) {
            scene.line("dw-d-seen", from, to);
        }
    }
    let mut level = |y: f64, class: &'static str, word: Text| {
        let y = lens.at(Point::new(0.0, y)).y;
        let up = y - centre.y;
        let reach = (radius * radius - up * up).max(0.0).sqrt();
        let (left, right) = (centre.x - reach, centre.x + reach);
        if 0.0 < reach {
            scene.line(class, Point::new(left, y), Point::new(right, y));
            let at = Point::new(centre.x - radius - 6.0, y + 4.0);
            scene.text(Text { at, ..word }.anchored(Anchor::End));
        }
        y
    };
    let word = Text::new(centre, "seals").toned(Tone::Second);
    let seals = level(pool.seals, "dw-d-planned", word);
    let y = lens.at(Point::new(0.0, shown)).y;
    // Words on two lines that touch would run into each other.
    if 15.0 < (y - seals).abs() {
        let word = if low.stand.sealed { "slugs" } else { "level" };
        let word = Text::new(centre, word).toned(Tone::Water).bold();
        level(shown, "dw-d-flow", word);
    }
    let tip = Point::new(centre.x - radius * 0.55, y);
    scene.path("dw-d-level", level_mark(tip, 6.0));
    scene.circle("dw-d-ring", centre, radius);
}

/// The depth at which water that seals the bore makes its first trouble, over the bore.
fn first_share(water: &Water<'_>, low: &LowPoint) -> f64 {
    let pool = water.water.drainage.pools.get(low.pool);
    let stand = pool.map(|pool| pool.shape.stand(low.slug_volume.min(low.seal_volume)));
    match (stand, low.first_slugs) {
        (Some(Ok(stand)), Some(_)) => stand.share,
        _ => 1.0,
    }
}
