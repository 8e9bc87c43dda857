//! Length and fall of a leg as a hand sets them: drawn to what people use, and changed by one such step at a time.

use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{Fall, FallForm, Length, Style, Units};
use dewrun_run::Leg;
use dewrun_run::range;

/// Falls that people set by a level, as the n of 1:n, from the flattest on.
const RUNGS: [f64; 6] = [100.0, 60.0, 50.0, 40.0, 30.0, 20.0];
/// Steeper than half way from the steepest rung on, a fall is any 1:n with a whole n.
const STEEPEST_SNAP: f64 = 0.06;
/// Flatter than this is level for a free hand.
const LEVEL: f64 = 0.0005;
/// A leg that goes aside by less than this share of its height is upright.
const UPRIGHT: f64 = 0.15;
/// Two numbers nearer than this are one.
const SAME: f64 = 1e-6;

/// Length and rise of a leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// Along the tube.
    pub length: Length,
    /// From its start to its end; negative where it falls.
    pub rise: Length,
}

impl Shape {
    /// That of a leg.
    #[must_use]
    pub fn of(leg: &Leg) -> Self {
        Self {
            length: leg.length,
            rise: leg.rise,
        }
    }

    /// The one that reaches so far aside and up, m; `free` takes it as it is, else it snaps to what people use.
    #[must_use]
    pub fn reaching(across_m: f64, up_m: f64, free: bool, style: Style) -> Self {
        let across_m = across_m.max(0.0);
        let long_m = (across_m * across_m + up_m * up_m).sqrt();
        let fine = if free { 0.01 } else { step(style.units) };
        let length = to_step(Length::metres(long_m), fine, style.units);
        if !free && across_m < UPRIGHT * up_m.abs() || across_m == 0.0 {
            let rise = if up_m < 0.0 { -length } else { length };
            return Self { length, rise };
        }
        let slope = -up_m / across_m;
        let number = if free { freed(slope) } else { snapped(slope) };
        Self::falling(length, number)
    }

    /// One step longer or shorter, its fall kept.
    #[must_use]
    pub fn longer(self, on: bool, style: Style) -> Self {
        let steps = steps(self.length, style.units);
        let steps = if on {
            (steps + SAME).floor() + 1.0
        } else {
            ((steps - SAME).ceil() - 1.0).max(1.0)
        };
        let length = within(of_steps(steps, style.units));
        let rise = self.rise * (length.to_metres() / self.length.to_metres());
        Self { length, rise }
    }

    /// Its end down or up to the next fall that people use, its length kept.
    #[must_use]
    pub fn tipped(self, down: bool) -> Self {
        let now = Fall::of(self.length, self.rise, FallForm::Ratio).map(Fall::slope);
        let upright = if self.rise < Length::ZERO {
            f64::INFINITY
        } else {
            f64::NEG_INFINITY
        };
        let now = now.unwrap_or(upright);
        let falls = RUNGS.map(|n| [n, -n]).into_iter().flatten();
        let rungs = falls.chain([0.0]);
        let next = if down {
            rungs
                .filter(|n| now + SAME < slope(*n))
                .min_by(|a, b| slope(*a).total_cmp(&slope(*b)))
        } else {
            rungs
                .filter(|n| slope(*n) < now - SAME)
                .max_by(|a, b| slope(*a).total_cmp(&slope(*b)))
        };
        next.map_or(self, |n| Self::falling(self.length, n))
    }

    fn falling(length: Length, number: f64) -> Self {
        let form = FallForm::Ratio;
        let rise = Fall { form, number }.rise(length);
        Self { length, rise }
    }
}

/// The step that lengths snap to, in the unit shown.
pub(crate) fn step(units: Units) -> f64 {
    match units {
        Units::Si => 0.05,
        Units::InchPound => 0.2,
    }
}

/// The n of 1:n that is meant by a slope; 0 is level.
fn snapped(now: f64) -> f64 {
    let steep = now.abs();
    if STEEPEST_SNAP <= steep {
        // Steeper than 1:1 no n says it any more.
        let n = if steep < 1.0 {
            (1.0 / steep).round()
        } else {
            1.0 / steep
        };
        return n.copysign(now);
    }
    let away = |n: &f64| (slope(*n) - steep).abs();
    let rungs = RUNGS.into_iter().chain([0.0]);
    let nearest = rungs.min_by(|a, b| away(a).total_cmp(&away(b)));
    nearest.unwrap_or(0.0).copysign(now)
}

/// The same for a free hand: to the digits that are written.
fn freed(now: f64) -> f64 {
    if now.abs() < LEVEL {
        return 0.0;
    }
    let n = 1.0 / now;
    if 10.0 <= n.abs() {
        n.round()
    } else {
        (n * 100.0).round() / 100.0
    }
}

/// Fall per horizontal length of 1:n.
fn slope(number: f64) -> f64 {
    let form = FallForm::Ratio;
    Fall { form, number }.slope()
}

/// To a whole number of steps of so much of the unit shown, one at least.
fn to_step(length: Length, step: f64, units: Units) -> Length {
    let unit = TUBE_LENGTH.unit(units);
    let steps = ((unit.read)(length) / step).round().max(1.0);
    within((unit.make)(hundredths(steps * step)))
}

fn steps(length: Length, units: Units) -> f64 {
    (TUBE_LENGTH.unit(units).read)(length) / step(units)
}

fn of_steps(steps: f64, units: Units) -> Length {
    (TUBE_LENGTH.unit(units).make)(hundredths(steps * step(units)))
}

/// The place nearest to one along the tube at which a leg is split and a trap set: to 0.05 m, whatever unit is shown.
///
/// ```
/// use dewrun_drawing::snapped_place;
/// use dewrun_quantity::Length;
/// assert_eq!(snapped_place(Length::metres(5.21)), Length::metres(5.2));
/// ```
#[must_use]
pub fn snapped_place(along: Length) -> Length {
    of_steps(steps(along, Units::Si).round(), Units::Si)
}

/// Seven steps of 0.05 are 0.35, and no more digits than that.
fn hundredths(number: f64) -> f64 {
    (number * 100.0).round() / 100.0
}

/// No leg is longer than what can be entered.
fn within(length: Length) -> Length {
    length.min(Length::metres(range::LENGTH.max))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SI: Style = Style {
        units: Units::Si,
        mark: dewrun_quantity::DecimalMark::Point,
    };

    /// The fall as it would be typed.
    fn fall(shape: Shape) -> String {
        let fall = Fall::of(shape.length, shape.rise, FallForm::Ratio);
        fall.map_or_else(|| "upright".to_owned(), |fall| fall.to_string())
    }

    #[track_caller]
    fn check(across_m: f64, up_m: f64, length_m: f64, expected: &str) {
        let shape = Shape::reaching(across_m, up_m, false, SI);
        let length = shape.length.to_metres();
        assert!(
            (length - length_m).abs() < 1e-9,
            "{length} m, expected {length_m}"
        );
        assert_eq!(fall(shape), expected, "{across_m} m aside, {up_m} m up");
    }

    /// The falls of the list are told apart half way between two: 1:100 and level at 0.5 %, 1:50 and 1:60 at 1.83 %.
    #[test]
    fn a_hand_snaps_to_what_people_set() {
        check(4.21, -0.084, 4.2, "1:50");
        check(4.21, 0.07, 4.2, "\u{2212}1:60");
        check(3.0, -0.0149, 3.0, "level");
        check(3.0, -0.0151, 3.0, "1:100");
        check(3.0, -0.0551, 3.0, "1:50");
        check(3.0, -0.0549, 3.0, "1:60");
        check(3.0, -0.11, 3.0, "1:30");
        check(3.0, -0.17, 3.0, "1:20");
    }

    #[test]
    fn steeper_falls_are_whole_and_a_drop_is_upright() {
        check(3.0, -0.34, 3.0, "1:9");
        check(0.1, -1.52, 1.5, "upright");
        let drop = Shape::reaching(0.1, -1.52, false, SI);
        assert_eq!(drop.rise, -drop.length, "all of it goes down");
        let riser = Shape::reaching(0.0, 0.8, false, SI);
        assert_eq!(riser.rise, riser.length, "all of it goes up");
    }

    #[test]
    fn a_leg_keeps_one_step_and_stays_within_what_can_be_entered() {
        check(0.0, 0.0, 0.05, "upright");
        check(-2.0, -0.001, 0.05, "upright");
        check(5000.0, 0.0, 1000.0, "level");
    }

    #[test]
    fn a_free_hand_gets_what_it_draws() {
        let shape = Shape::reaching(4.213, -0.1, true, SI);
        assert_eq!(shape.length, Length::metres(4.21), "to the centimetre");
        assert_eq!(fall(shape), "1:42", "0.1 in 4.213 is 1:42.13");
    }

    #[test]
    fn keys_go_by_one_step() {
        let leg = Shape::reaching(4.2, -0.084, false, SI);
        let longer = leg.longer(true, SI);
        assert_eq!(longer.length, Length::metres(4.25), "0.05 m more");
        assert_eq!(fall(longer), "1:50", "its fall is kept");
        let odd = Shape {
            length: Length::metres(4.22),
            rise: Length::ZERO,
        };
        assert_eq!(odd.longer(true, SI).length, Length::metres(4.25), "up");
        assert_eq!(odd.longer(false, SI).length, Length::metres(4.2), "down");
        let least = Shape {
            length: Length::metres(0.05),
            rise: Length::ZERO,
        };
        assert_eq!(least.longer(false, SI), least, "nothing is left of none");
    }

    #[test]
    fn keys_walk_the_falls_from_up_to_down() {
        let mut leg = Shape {
            length: Length::metres(2.0),
            rise: Length::metres(2.0),
        };
        let mut seen = Vec::new();
        for _ in 0..14 {
            leg = leg.tipped(true);
            seen.push(fall(leg));
        }
        let up = ["20", "30", "40", "50", "60", "100"].map(|n| format!("\u{2212}1:{n}"));
        let down = ["100", "60", "50", "40", "30", "20", "20"].map(|n| format!("1:{n}"));
        let expected: Vec<String> = up
            .into_iter()
            .chain(["level".to_owned()])
            .chain(down)
            .collect();
        assert_eq!(seen, expected, "from a riser to 1:20, where it stays");
        let back = leg.tipped(false);
        assert_eq!(fall(back), "1:30", "and back");
    }

    #[test]
    fn in_feet_the_steps_are_a_fifth_of_a_foot() {
        let style = Style {
            units: Units::InchPound,
            ..SI
        };
        let leg = Shape::reaching(Length::feet(10.07).to_metres(), 0.0, false, style);
        assert!(
            (leg.length.to_feet() - 10.0).abs() < 1e-9,
            "{} ft",
            leg.length.to_feet()
        );
        let longer = leg.longer(true, style).length.to_feet();
        assert!((longer - 10.2).abs() < 1e-9, "{longer} ft");
    }
}
