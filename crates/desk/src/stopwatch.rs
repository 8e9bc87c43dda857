//! Timing smoke from the duct to the detector: one button, pressed as the smoke is put in, as its first trace is read, and as nine tenths of it are.

use dewrun_quantity::format::{fixed, significant};
use dewrun_quantity::{Style, Time};
use dewrun_run::{ExpectedOnSite, Finding, OnSite};

/// A stopwatch that knows only when its button was pressed, in seconds of any clock that goes on.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Stopwatch {
    smoke: Option<f64>,
    first: Option<f64>,
    ninety: Option<f64>,
}

impl Stopwatch {
    /// A stopwatch whose button was pressed at those moments; of more than three the first three count.
    #[must_use]
    pub fn pressed(moments: &[f64]) -> Self {
        let at = |place: usize| moments.get(place).copied();
        Self {
            smoke: at(0),
            first: at(1),
            ninety: at(2),
        }
    }

    /// It counts.
    #[must_use]
    pub const fn is_running(&self) -> bool {
        self.smoke.is_some() && self.ninety.is_none()
    }

    /// What the next press says.
    #[must_use]
    pub const fn button(&self) -> &'static str {
        match (self.smoke, self.first, self.ninety) {
            (None, ..) => "Smoke is at the duct",
            (_, None, _) => "First trace",
            (.., None) => "90\u{a0}% of it",
            _ => "Time again",
        }
    }

    /// From the duct to the first trace, s.
    #[must_use]
    pub fn first_smoke_s(&self) -> Option<f64> {
        Some(self.first? - self.smoke?)
    }

    /// From the duct until nine tenths are there, s.
    #[must_use]
    pub fn ninety_percent_s(&self) -> Option<f64> {
        Some(self.ninety? - self.smoke?)
    }

    /// The time that runs, or the last that was taken, to a tenth of a second.
    #[must_use]
    pub fn counted(&self, now: f64, style: Style) -> String {
        let since = |smoke: f64| (self.ninety.unwrap_or(now) - smoke).max(0.0);
        let seconds = self.smoke.map_or(0.0, since);
        format!("{}\u{a0}s", fixed(seconds, 1, style.mark))
    }

    /// What was taken, each against what is expected; before that what to do.
    #[must_use]
    pub fn told(&self, expected: &OnSite, style: Style) -> Vec<String> {
        let mut told = Vec::new();
        for (name, taken, span) in [
            ("First smoke", self.first_smoke_s(), expected.first_smoke),
            (
                "90\u{a0}% of it",
                self.ninety_percent_s(),
                expected.ninety_percent,
            ),
        ] {
            told.push(match taken {
                Some(seconds) => format!(
                    "{name} after {}\u{a0}s: {}.",
                    fixed(seconds, 1, style.mark),
                    against(seconds, span, style)
                ),
                None => format!("{name}: {}.", awaited(span, style)),
            });
        }
        told
    }
}

/// A time against its span.
fn against(seconds: f64, span: Option<ExpectedOnSite<Time>>, style: Style) -> String {
    let Some(span) = span else {
        return "none is expected to arrive".to_owned();
    };
    let band = band(&span, style);
    match span.finding(Time::seconds(seconds)) {
        Finding::Within => format!("within {band}"),
        Finding::Below => {
            format!("sooner than {band}; more air than expected, or smoke that came another way")
        }
        Finding::Above => format!("later than {band}; check length, bore and airflow"),
    }
}

fn awaited(span: Option<ExpectedOnSite<Time>>, style: Style) -> String {
    span.map_or_else(
        || "none is expected to arrive".to_owned(),
        |span| format!("expected after {}", band(&span, style)),
    )
}

fn band(span: &ExpectedOnSite<Time>, style: Style) -> String {
    let number = |time: Time| significant(time.to_seconds(), 3, 1, style.mark);
    format!("{} to {}\u{a0}s", number(span.low), number(span.high))
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_quantity::{Pressure, VolumeFlow};

    fn expected() -> OnSite {
        let span = |low, usual, high| ExpectedOnSite { low, usual, high };
        let seconds =
            |[low, usual, high]: [f64; 3]| Some(span(low, usual, high).map(Time::seconds));
        OnSite {
            airflow: span(25.7, 29.3, 31.6).map(VolumeFlow::litres_per_minute),
            suction: span(54.0, 58.0, 64.0).map(Pressure::pascals),
            first_smoke: seconds([3.9, 4.2, 4.7]),
            ninety_percent: seconds([10.8, 11.8, 13.4]),
        }
    }

    #[track_caller]
    fn check(moments: &[f64], button: &str, told: [&str; 2]) {
        let watch = Stopwatch::pressed(moments);
        assert_eq!(watch.button(), button, "{moments:?}");
        assert_eq!(
            watch.told(&expected(), Style::default()),
            told,
            "{moments:?}"
        );
    }

    #[test]
    fn each_press_takes_a_time_and_names_the_next() {
        let awaited = [
            "First smoke: expected after 3.9 to 4.7\u{a0}s.",
            "90\u{a0}% of it: expected after 10.8 to 13.4\u{a0}s.",
        ];
        check(&[], "Smoke is at the duct", awaited);
        check(&[100.0], "First trace", awaited);
        check(
            &[100.0, 104.3],
            "90\u{a0}% of it",
            [
                "First smoke after 4.3\u{a0}s: within 3.9 to 4.7\u{a0}s.",
                awaited[1],
            ],
        );
        check(
            &[100.0, 103.0, 120.0],
            "Time again",
            [
                "First smoke after 3.0\u{a0}s: sooner than 3.9 to 4.7\u{a0}s; more air than expected, or smoke that came another way.",
                "90\u{a0}% of it after 20.0\u{a0}s: later than 10.8 to 13.4\u{a0}s; check length, bore and airflow.",
            ],
        );
    }

    #[test]
    fn it_counts_from_the_smoke_to_the_last_press() {
        let style = Style::default();
        let counted = |moments: &[f64], now| Stopwatch::pressed(moments).counted(now, style);
        assert_eq!(counted(&[], 7.0), "0.0\u{a0}s", "it stands");
        assert_eq!(counted(&[5.0], 7.26), "2.3\u{a0}s", "it runs");
        assert_eq!(counted(&[5.0, 9.0], 11.0), "6.0\u{a0}s", "and runs on");
        assert_eq!(
            counted(&[5.0, 9.0, 17.0], 99.0),
            "12.0\u{a0}s",
            "until the last press"
        );
        let watch = Stopwatch::pressed(&[5.0, 9.0, 17.0, 30.0]);
        assert_eq!(
            (
                watch.first_smoke_s(),
                watch.ninety_percent_s(),
                watch.is_running()
            ),
            (Some(4.0), Some(12.0), false),
            "a press more changes nothing"
        );
        assert!(Stopwatch::pressed(&[5.0, 9.0]).is_running(), "two of three");
    }

    #[test]
    fn where_no_smoke_arrives_none_is_awaited() {
        let nothing = OnSite {
            first_smoke: None,
            ninety_percent: None,
            ..expected()
        };
        let told = Stopwatch::default().told(&nothing, Style::default());
        assert_eq!(
            told[0], "First smoke: none is expected to arrive.",
            "no number"
        );
    }
}
