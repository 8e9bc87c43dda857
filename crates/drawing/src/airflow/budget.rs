//! Where the pressure goes: every loss to scale, side by side.

use dewrun_quantity::Pressure;
use dewrun_run::figure::Kind;

use super::Shown;
use super::put::put;
use crate::block::{Block, Line};
use crate::frame::Room;
use crate::geometry::{Point, Rect};
use crate::measure::text_width;
use crate::place::Board;
use crate::scene::Scene;
use crate::text::{Anchor, Size, Text, Tone};
use crate::wording;

/// Height of the bar, px.
const BAR: f64 = 24.0;

/// The losses in the order in which the air meets them, with what lifts the air counted against them.
pub(super) fn losses(shown: &Shown<'_>) -> Vec<(&'static str, Pressure)> {
    let budget = &shown.whole.airflow.now.budget;
    vec![
        ("Sampling holes", budget.inlet),
        ("Intake tube", budget.intake.walls),
        (
            "Bends, valves",
            budget.intake.fittings + budget.exhaust.fittings,
        ),
        ("Water", budget.intake.water + budget.exhaust.water),
        ("Filter", budget.filter),
        ("Chamber", budget.chamber),
        ("Exhaust tube", budget.exhaust.walls),
        ("Outlet", budget.outlet),
    ]
}

/// The bar.
pub(super) fn draw(shown: &Shown<'_>, room: Room) -> Scene {
    let text = room.text;
    let mut scene = super::blank("budget", room, (BAR + 44.0) * text);
    scene.title = "Where the pressure goes".to_owned();
    let parts: Vec<(&str, f64)> = losses(shown)
        .into_iter()
        .map(|(name, pressure)| (name, pressure.to_pascals().abs()))
        .filter(|(_, size)| 0.05 < *size)
        .collect();
    let sum: f64 = parts.iter().map(|(_, size)| size).sum();
    if sum <= 0.0 {
        return scene;
    }
    let mut board = Board::new(scene.bounds());
    let (left, wide) = (1.0, room.width - 2.0);
    board.take(Rect::new(0.0, 0.0, room.width, BAR * text + 2.0));
    let (mut x, mut told) = (left, Vec::new());
    for (place, (name, size)) in parts.iter().enumerate() {
        let part = Rect::new(x, 1.0, wide * size / sum, BAR * text);
        let ground = if place % 2 == 0 {
            "dw-g-raise"
        } else {
            "dw-g-sheet"
        };
        scene.rect(ground, &part);
        scene.rect("dw-d-seen", &part);
        let number = wording::gauge_number(Pressure::pascals(*size), shown.style);
        let middle = Point::new(part.centre().x, part.centre().y + 4.0 * text);
        if text_width(&number, Size::Label.px() * text) + 8.0 < part.width {
            scene.text(
                Text::new(middle, number.clone())
                    .anchored(Anchor::Middle)
                    .bold(),
            );
        }
        told.push(format!("{name} {number}"));
        let under = Point::new(middle.x, part.bottom() + 12.0 * text);
        let label = Block::of(vec![Line::new(*name).toned(Tone::Second)]);
        let placed = put(
            &mut scene,
            &mut board,
            &[label],
            (under, Point::new(72.0, 24.0)),
            text,
        );
        if let Some(rect) = placed
            .filter(|rect| 3.0 < (rect.centre().x - middle.x).abs() || BAR * text + 10.0 < rect.y)
        {
            let to = Point::new(rect.centre().x, rect.y);
            scene.line("dw-d-leader", Point::new(middle.x, part.bottom()), to);
        }
        x = part.right();
    }
    let unit = Kind::Gauge.unit(shown.style);
    scene.description = format!("In {unit}: {}.", told.join(", "));
    scene
}

/// What fan and duct give, in words.
pub(super) fn given(shown: &Shown<'_>) -> String {
    let budget = &shown.whole.airflow.now.budget;
    let of = |pressure: Pressure| wording::gauge(pressure, shown.style);
    format!(
        "the fan gives {}, the duct {}",
        of(budget.fan),
        of(budget.ends)
    )
}
