//! Tapped answers as they stand in a project's note: a line each, in the words of the page.

use crate::answers::{Answers, TouchedAnswer, TrapAnswer, TroubleAnswer, WhenAnswer};

const TROUBLE: [(&str, TroubleAnswer); 3] = [
    ("airflow low", TroubleAnswer::AirflowLow),
    ("airflow high", TroubleAnswer::AirflowHigh),
    ("alarm, no smoke", TroubleAnswer::Alarm),
];
const WHEN: [(&str, WhenAnswer); 5] = [
    ("summer, by day", WhenAnswer::SummerDay),
    ("summer, at night", WhenAnswer::SummerNight),
    ("spring or autumn", WhenAnswer::Between),
    ("winter", WhenAnswer::Winter),
    ("at any time", WhenAnswer::AnyTime),
];
const TRAP: [(&str, TrapAnswer); 4] = [
    ("none there", TrapAnswer::None),
    ("yes, water", TrapAnswer::Water),
    ("trap, dry", TrapAnswer::Dry),
    ("not sure", TrapAnswer::NotSure),
];
const TOUCHED: [(&str, TouchedAnswer); 3] = [
    ("this year", TouchedAnswer::ThisYear),
    ("longer ago", TouchedAnswer::LongerAgo),
    ("not sure", TouchedAnswer::NotSure),
];

impl Answers {
    /// The answers that a project's note holds; what it does not hold is not answered.
    ///
    /// ```
    /// use dewrun_troubles::{Answers, TrapAnswer, TroubleAnswer};
    /// let answers = Answers::of_note("Trouble: airflow low.\nTrap and water: none there.");
    /// assert_eq!(answers.trouble, Some(TroubleAnswer::AirflowLow));
    /// assert_eq!((answers.trap, answers.when), (Some(TrapAnswer::None), None));
    /// ```
    #[must_use]
    pub fn of_note(note: &str) -> Self {
        Self {
            trouble: told(note, "Trouble", &TROUBLE),
            when: told(note, "Mostly", &WHEN),
            trap: told(note, "Trap and water", &TRAP),
            touched: told(note, "Filter or fan touched", &TOUCHED),
            southern: false,
        }
    }

    /// Whether nothing was answered.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.trouble.is_none()
            && self.when.is_none()
            && self.trap.is_none()
            && self.touched.is_none()
    }
}

fn told<T: Copy>(note: &str, head: &str, words: &[(&str, T)]) -> Option<T> {
    let line = note
        .lines()
        .find_map(|line| line.strip_prefix(head)?.strip_prefix(": "))?;
    let word = line.strip_suffix('.')?;
    words
        .iter()
        .find(|(one, _)| *one == word)
        .map(|(_, answer)| *answer)
}
