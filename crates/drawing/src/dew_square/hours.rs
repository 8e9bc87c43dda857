//! The hours of a year in the square: those of each half kelvin as one square, by class where they are wet, grey and by count where they are dry.

use super::window::Window;
use crate::geometry::Rect;
use crate::path::Path;
use crate::scene::Scene;

/// Hours of nearly the same air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SquareHours {
    /// Temperature at the middle of their square, °C.
    pub t_c: f64,
    /// Dew point there, °C.
    pub dew_point_c: f64,
    /// How many they are, h.
    pub hours: f64,
    /// The class of what forms in them, 1 to 5; 0 where they are dry.
    pub class: f64,
}

/// Side of a square, K.
const SIDE_K: f64 = 0.5;
/// Side of a square with a single dry hour, over the whole.
const LEAST: f64 = 0.35;
/// Classes of the style sheet; the first is that of dry hours.
const CLASSES: [&str; 6] = [
    "dw-y-dry", "dw-y-m1", "dw-y-m2", "dw-y-m3", "dw-y-m4", "dw-y-m5",
];

impl SquareHours {
    /// From the numbers that a year is told in; four a square, in the order of the fields.
    #[must_use]
    pub fn of(numbers: &[f64]) -> Vec<Self> {
        let (squares, _) = numbers.as_chunks::<4>();
        squares
            .iter()
            .map(|&[t_c, dew_point_c, hours, class]| Self {
                t_c,
                dew_point_c,
                hours,
                class,
            })
            .collect()
    }
}

/// Draws them, each class at once.
pub(super) fn draw(scene: &mut Scene, window: &Window, year: &[SquareHours]) {
    let dry = year.iter().filter(|one| one.class == 0.0);
    let most = dry.map(|one| one.hours).fold(1.0, f64::max);
    for (name, class) in CLASSES.into_iter().zip(0_u8..) {
        let own = year.iter().filter(|one| one.class == f64::from(class));
        let path = own.fold(Path::new(), |path, one| {
            let share = if class == 0 {
                LEAST + (1.0 - LEAST) * (one.hours / most).sqrt()
            } else {
                1.0
            };
            path.and(&Path::rect(&place(window, one, share)))
        });
        if !path.is_empty() {
            scene.path(name, path);
        }
    }
}

fn place(window: &Window, one: &SquareHours, share: f64) -> Rect {
    let side = SIDE_K * share * window.px_per_k;
    let middle = window.at((one.t_c, one.dew_point_c));
    Rect::new(middle.x - 0.5 * side, middle.y - 0.5 * side, side, side)
}

/// The lowest and the highest of their temperatures and dew points, °C; none where there are none.
pub(super) fn span_c(year: &[SquareHours]) -> Option<(f64, f64)> {
    let half = 0.5 * SIDE_K;
    let ends = year.iter().map(|one| {
        (
            one.t_c.min(one.dew_point_c) - half,
            one.t_c.max(one.dew_point_c) + half,
        )
    });
    ends.reduce(|(low, high), (next_low, next_high)| (low.min(next_low), high.max(next_high)))
}
