//! The hours of a year in the dew square: how many lie in each half kelvin of temperature and dew point of the duct's air, and how much forms in them.

use std::collections::BTreeMap;

use dewrun_quantity::format;

use super::axis::count;
use super::map::Map;
use super::totals::Totals;
use super::{Step, Year};
use crate::svg::escaped;

/// Side of a square, K.
const SIDE_K: f64 = 0.5;

/// Of each square with hours in it: temperature and dew point at its middle, °C, hours, and the class of what forms in its wet hours, 1 to 5, or 0 where all are dry.
#[must_use]
pub fn square(year: &Year) -> Vec<f64> {
    let mut squares: BTreeMap<[i16; 2], Vec<&Step>> = BTreeMap::new();
    for step in &year.steps {
        if let Some(place) = place(step.air_c).zip(place(step.dew_point_c)) {
            squares.entry([place.0, place.1]).or_default().push(step);
        }
    }
    let classes = Map::Water.classes(year);
    let mut numbers = Vec::with_capacity(4 * squares.len());
    for ([across, up], steps) in squares {
        let all = Totals::of(steps.iter().copied());
        let class = if all.wet_h <= 0.0 {
            0.0
        } else {
            let mean = all.formed_g / all.wet_h;
            1.0 + classes.class(mean).map_or(0.0, count)
        };
        let middle = |place: i16| SIDE_K * (f64::from(place) + 0.5);
        numbers.extend([middle(across), middle(up), all.hours, class]);
    }
    numbers
}

/// Which square a temperature lies in; none where it is not known.
#[expect(
    clippy::cast_possible_truncation,
    reason = "temperatures of air, and the cast saturates"
)]
fn place(celsius: f64) -> Option<i16> {
    let place = (celsius / SIDE_K).floor();
    place.is_finite().then_some(place as i16)
}

/// What the squares mean and how the hours are proved, as HTML.
#[must_use]
pub fn square_told(year: &Year) -> String {
    let mark = year.style.mark;
    let totals = Totals::of(year.steps.iter());
    let hours = |hours: f64| format::fixed(hours, 0, mark);
    let ends = Map::Water.classes(year).ends;
    let swatches: String = ends
        .iter()
        .zip(1..)
        .map(|(end, class)| {
            format!(
                "<span class=\"dw-y-swatch dw-y-swatch--{class}\">{}</span>",
                escaped(end)
            )
        })
        .collect();
    let key = format!(
        "<p class=\"dw-y-key\">The year: dry hours <span class=\"dw-y-swatch dw-y-swatch--0\"></span> wet hours, g/h {swatches}</p>"
    );
    let rest = totals.hours - year.by_bound_h - totals.wet_h;
    let mut told = format!(
        "{} of {} hours are dry <b>by bound</b>: the dew point lies below the coldest surface around. ",
        hours(year.by_bound_h),
        hours(totals.hours)
    );
    told.push_str(&if 0.0 < totals.wet_h {
        format!("{} are wet <b>by model</b>. ", hours(totals.wet_h))
    } else {
        "None is wet. ".to_owned()
    });
    if 0.5 <= rest {
        told.push_str("The rest are dry by model.");
    }
    format!("{key}<p>{told}</p>")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn step(air_c: f64, dew_point_c: f64, formed_g: f64) -> Step {
        Step {
            seconds: 3600.0,
            air_c,
            dew_point_c,
            formed_g,
            is_wet: 0.01 < formed_g,
            ..Step::default()
        }
    }

    /// By hand: 10.3 and 10.4 °C lie between 10.0 and 10.5, -0.2 between -0.5 and 0; 12 g in one of two hours is the worst class, 2 g the first.
    #[test]
    fn hours_are_counted_in_their_squares() {
        let year = Year {
            steps: vec![
                step(10.3, -0.2, 0.0),
                step(10.4, -0.3, 0.0),
                step(30.1, 26.2, 12.0),
                step(30.2, 26.4, 0.0),
                step(25.0, 22.0, 2.0),
                step(25.0, f64::NAN, 0.0),
            ],
            by_bound_h: 2.0,
            ..Year::default()
        };
        let squares = square(&year);
        let expected = [
            [10.25, -0.25, 2.0, 0.0],
            [25.25, 22.25, 1.0, 1.0],
            [30.25, 26.25, 2.0, 5.0],
        ];
        assert_eq!(squares, expected.concat(), "three squares");
        let told = square_told(&year);
        assert!(
            told.contains("2 of 6 hours are dry <b>by bound</b>"),
            "{told}"
        );
        assert!(
            told.contains("2 are wet <b>by model</b>. The rest"),
            "{told}"
        );
    }
}
