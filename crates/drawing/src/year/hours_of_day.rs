//! What forms at each hour of the day, on the mean of all days.

use dewrun_quantity::{MassFlow, measure::WATER};

use super::Year;
use super::calendar::Layout;
use super::grid::HOURS;
use super::stamp::HOUR_S;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::scene::Scene;
use crate::text::{Size, Text, Tone};

/// The bars, at the right of the calendar.
pub(super) fn draw(scene: &mut Scene, layout: &Layout, year: &Year) {
    let means = means(year);
    let most = means.iter().copied().fold(0.0, f64::max);
    if most <= 0.0 {
        return;
    }
    let axis = &layout.axis;
    let left = layout.calendar.right() + 12.0 * axis.text;
    let wide = axis.width - left;
    let mut path = Path::new();
    for (hour, mean) in means.iter().enumerate() {
        let cell = layout.cell(0, hour, 1);
        let bar = Rect::new(left, cell.y + 1.0, wide * mean / most, cell.height - 2.0);
        path = path.and(&Path::rect(&bar));
    }
    scene.path("dw-y-m4", path);
    scene.line(
        "dw-d-measure",
        Point::new(left, layout.calendar.y),
        Point::new(left, layout.calendar.bottom()),
    );
    let most = WATER.show(MassFlow::grams_per_hour(most), year.style);
    let at = Point::new(left, layout.calendar.y - 5.0 * axis.text);
    let words = Text::new(at, format!("mean, up to {most}"));
    scene.text(words.sized(Size::Least).toned(Tone::Second));
}

/// What forms on the mean in each hour of the day, g/h.
fn means(year: &Year) -> [f64; HOURS] {
    let mut sums = [(0.0, 0.0); HOURS];
    for step in &year.steps {
        let hour = usize::try_from(step.start_s.div_euclid(HOUR_S).rem_euclid(24));
        let sum = hour.ok().and_then(|hour| sums.get_mut(hour));
        if let Some((grams, seconds)) = sum {
            *grams += step.formed_g;
            *seconds += step.seconds;
        }
    }
    sums.map(|(grams, seconds)| {
        if 0.0 < seconds {
            3600.0 * grams / seconds
        } else {
            0.0
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::year::Step;

    /// Two days: 4 g at 17 h on the first, 2 g on the second: 3 g/h on the mean.
    #[test]
    fn means_over_the_days() {
        let step = |at: i64| Step {
            start_s: at * HOUR_S,
            seconds: 3600.0,
            formed_g: match at {
                17 => 4.0,
                41 => 2.0,
                _ => 0.0,
            },
            ..Step::default()
        };
        let year = Year {
            steps: (0..48).map(step).collect(),
            ..Year::default()
        };
        let means = means(&year);
        assert_eq!((means[17], means[16]), (3.0, 0.0), "by hand");
    }
}
